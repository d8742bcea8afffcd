// SPDX-License-Identifier: GPL-3.0-or-later
// A form for one entry, new or amended, with its buttons and its keys: what is begun is asked about before something
// else takes its place, a fault goes to its field and the form stays.
#pragma once

#include "ui/present/session.h"
#include "ui/widgets/fact_form.h"

#include <QFrame>

#include <functional>

class QLabel;
class QPushButton;

namespace staveline::ui {

class MessageLabel;

class EntryFrame : public QFrame {
    Q_OBJECT
public:
    [[nodiscard]] bool active() const { return active_; }
    [[nodiscard]] bool started() const; ///< something is typed that is not recorded
    [[nodiscard]] bool asking() const;  ///< whether what is begun may go
    void goOn();                        ///< with what is begun
    void setAside(bool aside);          ///< out of sight, with all that is typed
    [[nodiscard]] FactForm& fields() const { return *form_; }
    [[nodiscard]] QString words() const; ///< of the message shown
    void record();                       ///< or amends
    void leave();                        ///< nothing is kept

Q_SIGNALS:
    void closed();

protected:
    struct Amended {
        std::string table;
        std::int64_t id = 0;
        bool operator==(const Amended&) const = default;
    };
    /// `room` for the message, in lines.
    EntryFrame(Session& session, double room, QWidget* parent);
    /// At once, or when what is begun is given up for it. `instead` names it.
    void unlessStarted(const QString& instead, std::function<void()> open);
    void open(const facts::Fact& fact, const FormContext& context, const QString& title,
              const std::optional<Amended>& amended);
    [[nodiscard]] Session& session() const { return session_; }
    [[nodiscard]] const std::optional<Amended>& amended() const { return amended_; }
    [[nodiscard]] MessageLabel& message() const { return *message_; }
    void showFault(const Fault& fault, bool goThere);
    void keyPressEvent(QKeyEvent* event) override;

    [[nodiscard]] virtual QString inWords() const = 0; ///< "draw-off of Heron"
    /// Under which what is typed is told to be unstored.
    [[nodiscard]] virtual std::string unstoredKey() const = 0;
    virtual void opened() {}
    virtual void edited() {} ///< by the brewer
    [[nodiscard]] virtual bool mayRecord() { return true; }
    virtual Result<desk::Recorded> store(const facts::Fact& fact);
    virtual void stored(const facts::Fact&) {}
    virtual void left() {}
    virtual void unitsChanged() {}

private:
    QWidget* makeQuestion();
    void endQuestion();
    void tell(); ///< for who looks whether all is stored

    Session& session_;
    std::optional<Amended> amended_;
    bool active_ = false;
    QLabel* title_;
    FactForm* form_;
    MessageLabel* message_;
    QWidget* asking_;
    MessageLabel* question_;
    QPushButton* goOn_;
    QPushButton* instead_;
    std::function<void()> afterwards_; ///< what is opened when the entry in hand is given up
    QPushButton* record_;
    QPushButton* leave_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// One entry of the ledger, new or amended: fields, what it would do before it is recorded, and what speaks against it.
#pragma once

#include "ui/present/session.h"
#include "ui/widgets/fact_form.h"

#include <QFrame>

#include <functional>

class QLabel;
class QPushButton;

namespace staveline::ui {

class MessageLabel;

class EntryForm : public QFrame {
    Q_OBJECT
public:
    explicit EntryForm(Session& session, QWidget* parent = nullptr);
    /// A new entry of this kind for a vessel. One that is begun already goes on; one of another kind that is begun is
    /// asked about first.
    void begin(vessel::EntryKind kind, const facts::VesselName& vessel);
    /// An entry that is recorded already; one that is begun is asked about first.
    void amend(const std::string& table, std::int64_t id);
    [[nodiscard]] bool active() const { return active_; }
    [[nodiscard]] bool started() const; ///< something is typed that is not recorded
    [[nodiscard]] bool asking() const;  ///< whether what is begun may go
    void goOn();                        ///< with what is begun
    void setAside(bool aside);          ///< out of sight, with all that is typed
    [[nodiscard]] FactForm& fields() const { return *form_; }
    [[nodiscard]] QString words() const; ///< of the message shown
    void refresh();                      ///< the ledger changed under an entry in hand
    void record();                       ///< or amends; a fault goes to its field and the form stays
    void leave();                        ///< nothing is kept

Q_SIGNALS:
    /// What the entry would do; none while it cannot be said.
    void previewed(const std::optional<staveline::desk::LedgerPreview>& preview);
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct Amended {
        std::string table;
        std::int64_t id = 0;
    };
    void makeQuestion();
    void unlessStarted(const QString& instead, std::function<void()> open);
    void endQuestion();
    void open(const facts::Fact& fact, vessel::EntryKind kind);
    [[nodiscard]] Day dayFor(const facts::VesselName& vessel) const;
    void rememberDay(const facts::Fact& fact);
    void openRecorded(const Amended& entry);
    void edited();
    void preview();
    void tell();
    [[nodiscard]] QString inWords() const;
    void showFault(const Fault& fault, bool goThere);
    void addHint();
    void askForEvent();
    [[nodiscard]] std::vector<Offer> lotOffers(vessel::EntryKind kind, const facts::VesselName& vessel) const;
    [[nodiscard]] FormContext context(vessel::EntryKind kind, const facts::VesselName& vessel) const;

    Session& session_;
    vessel::EntryKind kind_ = vessel::EntryKind::reading;
    facts::VesselName vessel_;
    std::optional<Amended> amended_;
    std::optional<std::pair<facts::VesselName, Day>> dayTyped_; ///< for what else of that day is entered
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

// SPDX-License-Identifier: GPL-3.0-or-later
// One entry about a lot, new or amended: what was read, added, moved, packed or opened, and what speaks against it.
#pragma once

#include "desk/lots.h"
#include "ui/present/session.h"
#include "ui/widgets/fact_form.h"

#include <QFrame>

class QPushButton;

namespace staveline::ui {

class MessageLabel;

class LotForm : public QFrame {
    Q_OBJECT
public:
    explicit LotForm(Session& session, QWidget* parent = nullptr);
    /// Of the lots there are, for what the form offers.
    void knowLots(const std::vector<desk::LotView>& lots);
    void begin(const facts::Fact& fact, const facts::LotName& lot);
    void amend(const std::string& table, std::int64_t id, const facts::LotName& lot);
    [[nodiscard]] bool active() const { return active_; }
    void focusFirst();
    void record(); ///< or amends; a fault goes to its field and the form stays
    void leave();  ///< nothing is kept

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct Amended {
        std::string table;
        std::int64_t id = 0;
    };
    void open(const facts::Fact& fact);
    [[nodiscard]] FormContext context(const facts::Fact& fact) const;
    void tell(); ///< for who looks whether all is stored

    Session& session_;
    std::vector<desk::LotView> lots_;
    facts::LotName lot_;
    std::optional<Amended> amended_;
    bool active_ = false;
    QLabel* title_;
    FactForm* form_;
    MessageLabel* message_;
    QPushButton* record_;
    QPushButton* leave_;
};

} // namespace staveline::ui

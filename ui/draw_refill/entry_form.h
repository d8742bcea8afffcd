// SPDX-License-Identifier: GPL-3.0-or-later
// One entry of the ledger, new or amended: fields, what it would do before it is recorded, and what speaks against it.
#pragma once

#include "ui/present/session.h"
#include "ui/widgets/fact_form.h"

#include <QFrame>

class QLabel;
class QPushButton;

namespace staveline::ui {

class MessageLabel;

class EntryForm : public QFrame {
    Q_OBJECT
public:
    explicit EntryForm(Session& session, QWidget* parent = nullptr);
    /// A new entry of this kind for a vessel.
    void begin(EntryKind kind, const VesselName& vessel);
    /// An entry that is recorded already.
    void amend(const std::string& table, std::int64_t id);
    [[nodiscard]] bool active() const { return active_; }
    [[nodiscard]] FactForm& fields() const { return *form_; }
    [[nodiscard]] QString words() const; ///< of the message shown
    void refresh();                      ///< the ledger changed under an entry in hand
    void record();                       ///< or amends; a fault goes to its field and the form stays
    void leave();                        ///< nothing is kept

Q_SIGNALS:
    /// What the entry would do; none while it cannot be said.
    void previewed(const std::optional<staveline::LedgerPreview>& preview);
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct Amended {
        std::string table;
        std::int64_t id = 0;
    };
    void open(const Fact& fact, EntryKind kind);
    void preview();
    void showFault(const Fault& fault, bool goThere);
    void addHint();
    [[nodiscard]] FormContext context(EntryKind kind, const VesselName& vessel) const;

    Session& session_;
    EntryKind kind_ = EntryKind::reading;
    VesselName vessel_;
    std::optional<Amended> amended_;
    bool active_ = false;
    bool recording_ = false;
    QLabel* title_;
    FactForm* form_;
    MessageLabel* message_;
    QPushButton* record_;
    QPushButton* leave_;
};

[[nodiscard]] QString wordOf(EntryKind kind);

} // namespace staveline::ui

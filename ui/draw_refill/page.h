// SPDX-License-Identifier: GPL-3.0-or-later
// Draw & refill: the ledger beside the vessel, entries as they are made, what each changes, and the next dates.
#pragma once

#include "desk/ledger.h"
#include "ui/present/ledger_model.h"
#include "ui/widgets/work_page.h"

#include <map>

class QLabel;
class QPushButton;

namespace staveline::ui {

class EntryForm;
class FindBar;
class LedgerTable;
class MessageLabel;
class VesselPanel;

class DrawRefillPage : public WorkPage {
    Q_OBJECT
public:
    explicit DrawRefillPage(Session& session, QWidget* parent = nullptr);
    /// Opens the form for a new entry; does nothing in a book for reading only.
    void begin(vessel::EntryKind kind);
    void amendSelected();
    void removeSelected();                  ///< without a question: undo takes it back
    [[nodiscard]] bool hasSelected() const; ///< an entry of this vessel's own, which can be amended
    void focusWork() override;              ///< an entry in hand, the ledger, else the first button

    void find();            ///< in the ledger
    void findAgain(int by); ///< the next entry found, or the one before
    [[nodiscard]] LedgerTable& table() const { return *table_; }
    [[nodiscard]] LedgerModel& model() const { return *model_; }
    [[nodiscard]] EntryForm& form() const { return *form_; }
    [[nodiscard]] VesselPanel& panel() const { return *panel_; }

Q_SIGNALS:
    void selectionChanged();

protected:
    void refresh() override;     ///< what was entered is selected; an entry in hand stays
    void leaveVessel() override; ///< an entry that is begun waits for the vessel

private:
    QWidget* makeLeft();
    EntryForm* makeForm();
    void takeUp();
    void closed(EntryForm* form);
    void showLedger(const desk::LedgerView& view);
    [[nodiscard]] int rowAfter(const std::optional<book::RowKey>& before, int row) const;
    void addEntryButtons(QWidget& row);
    void select(int row);
    [[nodiscard]] const desk::LedgerLine* selected() const;

    LedgerModel* model_;
    LedgerTable* table_;
    FindBar* find_;
    QWidget* empty_;
    QLabel* emptyWords_;
    QWidget* formPlace_;
    EntryForm* form_;
    std::map<facts::VesselName, EntryForm*> aside_; ///< begun, while another vessel is in front
    facts::VesselName shown_;                       ///< whose ledger the table holds
    VesselPanel* panel_;
    std::vector<std::pair<vessel::EntryKind, QPushButton*>> entryButtons_;
    QPushButton* amend_;
    QPushButton* remove_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Draw & refill: the ledger beside the vessel, entries as they are made, what each changes, and the next dates.
#pragma once

#include "ui/present/ledger_model.h"
#include "ui/widgets/station_page.h"

class QLabel;
class QPushButton;

namespace staveline::ui {

class EntryForm;
class LedgerTable;
class MessageLabel;
class VesselPanel;

class DrawRefillStation : public StationPage {
    Q_OBJECT
public:
    explicit DrawRefillStation(Session& session, QWidget* parent = nullptr);
    /// Opens the form for a new entry; does nothing in a book for reading only.
    void begin(EntryKind kind);
    void amendSelected();
    void removeSelected();     ///< without a question: undo takes it back
    void focusWork() override; ///< the ledger, else the first button

    [[nodiscard]] LedgerTable& table() const { return *table_; }
    [[nodiscard]] LedgerModel& model() const { return *model_; }
    [[nodiscard]] EntryForm& form() const { return *form_; }
    [[nodiscard]] VesselPanel& panel() const { return *panel_; }

Q_SIGNALS:
    void selectionChanged();

protected:
    void refresh() override; ///< selection and an entry in hand stay
    void leaveVessel() override;

private:
    void addEntryButtons(QWidget& row);
    void select(int row);
    [[nodiscard]] const LedgerLine* selected() const;

    LedgerModel* model_;
    LedgerTable* table_;
    QWidget* empty_;
    QLabel* emptyWords_;
    EntryForm* form_;
    VesselPanel* panel_;
    std::vector<std::pair<EntryKind, QPushButton*>> entryButtons_;
    QPushButton* amend_;
    QPushButton* remove_;
};

} // namespace staveline::ui

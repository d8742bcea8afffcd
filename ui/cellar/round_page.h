// SPDX-License-Identifier: GPL-3.0-or-later
// The round: a row for each vessel with what is seen there, and a walk sheet to fill in, in the same order. All of it
// is recorded in one act that undo takes back; a row in which nothing stands was not looked at.
#pragma once

#include "desk/ledger.h"
#include "desk/round_entry.h"
#include "ui/present/session.h"
#include "ui/print/printout.h"
#include "ui/widgets/aside_page.h"

#include <deque>
#include <memory>

class QCheckBox;
class QGridLayout;
class QLineEdit;
class QPushButton;

namespace staveline::ui {

class ChoiceField;
class DateField;
class MessageLabel;
class NumberField;

/// The fields of one vessel, in the order of the sheet.
struct RoundRow {
    facts::VesselName vessel;
    NumberField* level;
    ChoiceField *bung, *weep, *pellicle, *smell;
    NumberField *room, *topped;
    ChoiceField* with;
    QCheckBox* purged;
    QLineEdit* note;
    std::vector<QWidget*> cells; ///< all of it, the name too
};

class RoundPage : public AsidePage {
    Q_OBJECT
public:
    RoundPage(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    /// What is begun stays in hand; else all vessels in use, as they stand.
    void begin();
    void finish() override; ///< records it
    [[nodiscard]] bool started() const;
    [[nodiscard]] const std::vector<RoundRow>& rows() const { return rows_; }
    [[nodiscard]] Printout& printout() { return printout_; }
    [[nodiscard]] DateField& dayOfRound() const { return *on_; }
    [[nodiscard]] DateField& nextLook() const { return *next_; }
    [[nodiscard]] QString words() const;

Q_SIGNALS:
    void recorded();

private:
    void build(const std::vector<desk::VesselSummary>& vessels);
    void addRow(const desk::VesselSummary& vessel, int at);
    void addSome(int rows);
    void tell();
    [[nodiscard]] bool allUsable();
    [[nodiscard]] desk::RoundEntry entryOf(const RoundRow& row) const;
    [[nodiscard]] QWidget* fieldOf(const Fault& fault, const facts::Fact& fact, const RoundRow& row) const;
    void showFault(const Fault& fault, const std::vector<facts::Fact>& facts,
                   const std::vector<std::size_t>& rowOfFact);

    Session& session_;
    Printout printout_;
    DateField *on_, *next_;
    QWidget* table_;
    QGridLayout* grid_;
    std::vector<RoundRow> rows_;
    std::deque<desk::VesselSummary> waiting_; ///< for their rows
    MessageLabel* message_;
    QPushButton* finish_;
    bool active_ = false;
};

} // namespace staveline::ui

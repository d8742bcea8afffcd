// SPDX-License-Identifier: GPL-3.0-or-later
// Brew: the plan that follows the liquid, the sheet for the brew day, and the brew as it was made.
#pragma once

#include "ui/brew_sheet/page.h"
#include "ui/widgets/work_page.h"

class QStackedWidget;

namespace staveline::ui {

class AsBrewedPage;
class PartChoice;
class PlanPage;

class BrewPage : public WorkPage {
    Q_OBJECT
public:
    BrewPage(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void focusWork() override;
    void showPlan();
    void showKit(); ///< open, below the plan
    void showSheet();
    void showAsBrewed();
    enum class Part { plan, sheet, asBrewed };
    void showPart(Part part);
    [[nodiscard]] Part part() const;

    [[nodiscard]] BrewSheetPage& sheet() const { return *sheet_; }
    /// Findings and cautions of the plan, from water to vessel.
    [[nodiscard]] QStringList notes() const;

Q_SIGNALS:
    void partChanged();
    void refillAsked(); ///< the brew is recorded: its refill goes into the ledger

protected:
    void refresh() override;
    void leaveVessel() override;

private:
    PartChoice* choice_;
    QStackedWidget* pages_;
    PlanPage* plan_;
    BrewSheetPage* sheet_;
    AsBrewedPage* asBrewed_;
};

} // namespace staveline::ui

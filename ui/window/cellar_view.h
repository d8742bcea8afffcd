// SPDX-License-Identifier: GPL-3.0-or-later
// One open book: the rail on the left, the vessel in hand and its pages on the right.
#pragma once

#include "desk/first_steps.h"
#include "ui/present/cellar_model.h"
#include "ui/print/printout.h"
#include "ui/widgets/cycle_timeline.h"
#include "ui/window/settings.h"

#include <QWidget>

class QAction;
class QPushButton;
class QStackedWidget;

namespace staveline::ui {

class AdjustPage;
class BrewSheetPage;
class AsidePage;
class BrewPage;
class CellarPage;
class DrawRefillPage;
class FirstStepsBar;
class FinishPage;
class HistoryPage;
class IngredientsPage;
class Rail;
class RoomPage;
class RoundPage;
class UnderlinedTabs;
class WorkPage;
class TastePage;
class VesselHeader;
class VesselPage;

/// What the page in front can print and save; if nothing, why.
struct PaperInFront {
    Printout* printout = nullptr;
    QString whyNot;
};

class CellarView : public QWidget {
    Q_OBJECT
public:
    CellarView(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(facts::VesselName name); ///< an unknown name changes nothing
    void showPage(PageId workPage);
    void showBrewSheet();
    void showAll();                          ///< all vessels at once
    void showStart();                        ///< all vessels where there is more than one, else what is due
    void showDue();                          ///< the vessel whose work comes first, at the page where it is done
    void beginEntry(vessel::EntryKind kind); ///< in Draw & refill
    void addVessel();
    void showRound();
    void showIngredients();
    void showRooms();
    void changeVessel(); ///< the one in hand: its facts, its culture, retiring it
    void setPaper(PaperSize size);
    void addToRail(const QList<QAction*>& actions); ///< to its menu
    void stepVessel(int by);                        ///< along the rail; stays at its ends
    void stepFocus(int by);                         ///< rail, tabs, page
    /// Where work goes on: in the page in front, or the first question.
    void focusWork();

    [[nodiscard]] const facts::VesselName& vessel() const { return vessel_; }
    [[nodiscard]] bool atVessel() const; ///< a vessel's pages are in front
    [[nodiscard]] bool atAll() const;
    [[nodiscard]] bool atRound() const;
    [[nodiscard]] bool atIngredients() const;
    [[nodiscard]] bool atRooms() const;
    [[nodiscard]] bool atBrewSheet() const;
    [[nodiscard]] PageId workPage() const;
    [[nodiscard]] PaperInFront paperInFront();
    [[nodiscard]] FirstStepsBar& firstSteps() const { return *firstSteps_; }
    [[nodiscard]] CellarPage& all() const { return *cellarPage_; }
    [[nodiscard]] const Printout& cards() const { return cards_; }   ///< of all vessels in use
    [[nodiscard]] const Printout& labels() const { return labels_; } ///< of what is asked about in Finish
    [[nodiscard]] DrawRefillPage& drawRefill() const { return *drawRefill_; }
    [[nodiscard]] TastePage& taste() const { return *taste_; }
    [[nodiscard]] AdjustPage& adjust() const { return *adjust_; }
    [[nodiscard]] BrewPage& brew() const { return *brew_; }
    [[nodiscard]] BrewSheetPage& brewSheet() const;
    [[nodiscard]] FinishPage& finish() const { return *finish_; }
    [[nodiscard]] HistoryPage& history() const { return *history_; }
    [[nodiscard]] RoundPage& round() const { return *round_; }
    [[nodiscard]] IngredientsPage& ingredients() const { return *ingredients_; }
    [[nodiscard]] RoomPage& rooms() const { return *rooms_; }

Q_SIGNALS:
    void moved();     ///< another vessel or page
    void frontMade(); ///< the page in front has another paper, or none
    void paperChanged(PaperSize size);

private:
    QWidget* makeRail();
    QWidget* makeVesselPart(Prompt& prompt);
    void makePages(Prompt& prompt);
    void connectPages();
    void connectVesselPage();
    void connectAside();
    [[nodiscard]] bool isAside() const; ///< a page beside the vessels' own is in front
    void showAside(AsidePage& page);
    void goBack(); ///< to where it was opened from
    QWidget* makeEmptyPart();
    void refresh(); ///< the cellar changed: the vessel in hand may be gone
    void takeStep(desk::FirstStep step);
    void openMilestone(MilestoneKind kind);
    void openWork(const QString& vessel, vessel::DueKind work);
    void selectInRail();
    [[nodiscard]] std::optional<Printout::Made> ledger() const;
    [[nodiscard]] std::optional<Printout::Made> vesselCards() const;

    Session& session_;
    Printout ledgerPrintout_, packing_, labels_, cards_;
    facts::VesselName vessel_;
    CellarModel* model_;
    Rail* rail_;
    QPushButton* add_;
    FirstStepsBar* firstSteps_;
    QStackedWidget* parts_;
    QWidget* vesselPart_;
    VesselHeader* header_;
    UnderlinedTabs* bar_;
    QStackedWidget* pages_;
    TastePage* taste_;
    AdjustPage* adjust_;
    BrewPage* brew_;
    DrawRefillPage* drawRefill_;
    FinishPage* finish_;
    HistoryPage* history_;
    std::vector<WorkPage*> workPages_; ///< in the order of PageId
    VesselPage* vesselPage_;
    CellarPage* cellarPage_;
    QPushButton* toAll_;
    RoundPage* round_;
    RoomPage* rooms_;
    IngredientsPage* ingredients_;
    QWidget* emptyPart_;
    bool cameFromAll_ = false; ///< to the page beside the vessels' own
};

} // namespace staveline::ui

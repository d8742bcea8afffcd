// SPDX-License-Identifier: GPL-3.0-or-later
// One open book: the rail on the left, the vessel in hand and its stations on the right.
#pragma once

#include "ui/present/cellar_model.h"
#include "ui/widgets/prompt.h"
#include "ui/widgets/time_ribbon.h"
#include "ui/window/settings.h"

#include <QWidget>

class QPushButton;
class QStackedWidget;

namespace staveline::ui {

class AdjustStation;
class BrewSheetStation;
class BrewStation;
class DrawRefillStation;
class HistoryStation;
class Rail;
class StationBar;
class StationPage;
class TasteStation;
class VesselHeader;
class VesselPage;

class CellarView : public QWidget {
    Q_OBJECT
public:
    CellarView(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(VesselName name); ///< an unknown name changes nothing
    void showStation(Station station);
    void showBrewSheet();
    void beginEntry(EntryKind kind); ///< in Draw & refill
    void addVessel();
    void changeVessel(); ///< the one in hand: its facts, its culture, retiring it
    void setPaper(PaperSize size);
    void stepVessel(int by); ///< along the rail; stays at its ends
    void stepFocus(int by);  ///< rail, stations, page
    /// Where work goes on: in the station in front, or the first question.
    void focusWork();

    [[nodiscard]] const VesselName& vessel() const { return vessel_; }
    [[nodiscard]] bool atVessel() const; ///< a vessel's stations are in front
    [[nodiscard]] bool atBrewSheet() const;
    [[nodiscard]] Station station() const;
    [[nodiscard]] DrawRefillStation& drawRefill() const { return *drawRefill_; }
    [[nodiscard]] TasteStation& taste() const { return *taste_; }
    [[nodiscard]] AdjustStation& adjust() const { return *adjust_; }
    [[nodiscard]] BrewStation& brew() const { return *brew_; }
    [[nodiscard]] BrewSheetStation& brewSheet() const;
    [[nodiscard]] HistoryStation& history() const { return *history_; }

Q_SIGNALS:
    void moved(); ///< another vessel, station or page
    void paperChanged(PaperSize size);

private:
    QWidget* makeRail();
    QWidget* makeVesselPart(Prompt& prompt);
    void makeStations(Prompt& prompt);
    void connectStations();
    void connectVesselPage();
    QWidget* makeEmptyPart();
    void refresh(); ///< the cellar changed: the vessel in hand may be gone
    void openKnot(KnotKind kind);
    void selectInRail();

    Session& session_;
    VesselName vessel_;
    CellarModel* model_;
    Rail* rail_;
    QPushButton* add_;
    QStackedWidget* parts_;
    QWidget* vesselPart_;
    VesselHeader* header_;
    StationBar* bar_;
    QStackedWidget* pages_;
    TasteStation* taste_;
    AdjustStation* adjust_;
    BrewStation* brew_;
    DrawRefillStation* drawRefill_;
    HistoryStation* history_;
    std::vector<StationPage*> stations_; ///< in the order of Station
    VesselPage* vesselPage_;
    QWidget* emptyPart_;
};

} // namespace staveline::ui

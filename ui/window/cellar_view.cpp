// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/cellar_view.h"

#include "desk/ledger.h"
#include "ui/adjust/station.h"
#include "ui/brew/station.h"
#include "ui/brew_sheet/station.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/station.h"
#include "ui/history/station.h"
#include "ui/taste/blank_sheet.h"
#include "ui/taste/station.h"
#include "ui/widgets/station_bar.h"
#include "ui/window/vessel_header.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace staveline::ui {

CellarView::CellarView(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session), model_(new CellarModel(session, this)), parts_(new QStackedWidget(this)),
      vesselPage_(new VesselPage(session, parts_)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, 1));
    row->addWidget(makeRail());
    row->addWidget(parts_, 1);
    parts_->addWidget(vesselPart_ = makeVesselPart(prompt));
    parts_->addWidget(vesselPage_);
    parts_->addWidget(emptyPart_ = makeEmptyPart());
    connect(&session, &Session::changed, this, &CellarView::refresh);
    connect(&session, &Session::unitsChanged, this, &CellarView::refresh);
    connect(rail_, &Rail::chosen, this, [this](const QString& vessel) { showVessel(toStd(vessel)); });
    connectVesselPage();
    refresh();
}

void CellarView::connectVesselPage() {
    connect(vesselPage_, &VesselPage::left, this, [this] {
        parts_->setCurrentWidget(vesselPart_);
        refresh();
        focusWork();
    });
    connect(vesselPage_, &VesselPage::added, this, [this](const QString& vessel) {
        showVessel(toStd(vessel));
        beginEntry(EntryKind::opening);
    });
    connect(vesselPage_, &VesselPage::changed, this, [this](const QString& vessel) {
        showVessel(toStd(vessel));
        focusWork();
    });
}

QWidget* CellarView::makeRail() {
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, lines(*this, .4));
    rail_ = new Rail(*model_, side);
    add_ = new QPushButton(tr("Add a vessel"), side);
    add_->setFlat(true);
    column->addWidget(rail_, 1);
    column->addWidget(add_);
    side->setFixedWidth(rail_->sizeHint().width());
    connect(add_, &QPushButton::clicked, this, &CellarView::addVessel);
    return side;
}

QWidget* CellarView::makeVesselPart(Prompt& prompt) {
    auto* part = new QWidget(this);
    header_ = new VesselHeader(session_, part);
    bar_ = new StationBar(part);
    pages_ = new QStackedWidget(part);
    makeStations(prompt);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, 1), lines(*this, .4));
    column->setSpacing(lines(*this, .4));
    column->addWidget(header_);
    column->addWidget(bar_);
    column->addWidget(pages_, 1);
    connectStations();
    return part;
}

/// Each with its words on the bar; the order is that of Station.
void CellarView::makeStations(Prompt& prompt) {
    const auto add = [this](auto* station, const QString& words) {
        bar_->addTab(words);
        pages_->addWidget(station);
        stations_.push_back(station);
        return station;
    };
    taste_ = add(new TasteStation(session_, prompt, pages_), tr("Taste"));
    adjust_ = add(new AdjustStation(session_, pages_), tr("Adjust"));
    brew_ = add(new BrewStation(session_, prompt, pages_), tr("Brew"));
    drawRefill_ = add(new DrawRefillStation(session_, pages_), tr("Draw && refill"));
    history_ = add(new HistoryStation(session_, prompt, pages_), tr("History"));
}

/// What one station asks of another, and what all of them tell the window.
void CellarView::connectStations() {
    connect(bar_, &QTabBar::currentChanged, this, [this](int index) {
        pages_->setCurrentIndex(index);
        Q_EMIT moved();
    });
    connect(&header_->ribbon(), &TimeRibbon::opened, this, &CellarView::openKnot);
    connect(header_, &VesselHeader::changeAsked, this, &CellarView::changeVessel);
    const auto opening = [this] { beginEntry(EntryKind::opening); };
    connect(taste_, &TasteStation::openingAsked, this, opening);
    connect(history_, &HistoryStation::firstEntryAsked, this, [this] {
        showStation(Station::drawRefill);
        focusWork();
    });
    connect(adjust_, &AdjustStation::openingAsked, this, opening);
    connect(adjust_, &AdjustStation::tasteAsked, this, [this] {
        showStation(Station::taste);
        focusWork();
    });
    connect(adjust_, &AdjustStation::drawAsked, this, [this] { beginEntry(EntryKind::drawOff); });
    connect(brew_, &BrewStation::partChanged, this, &CellarView::moved);
    connect(brew_, &BrewStation::refillAsked, this, [this] { beginEntry(EntryKind::refill); });
    for (PaperPage* page : {&taste_->blankSheet().page(), &brewSheet().page()})
        connect(page, &PaperPage::paperChanged, this, &CellarView::paperChanged);
    bar_->setCurrentIndex(static_cast<int>(Station::drawRefill));
}

BrewSheetStation& CellarView::brewSheet() const {
    return brew_->sheet();
}

void CellarView::setPaper(PaperSize size) {
    for (PaperPage* page : {&taste_->blankSheet().page(), &brewSheet().page()})
        page->setPaper(size);
}

QWidget* CellarView::makeEmptyPart() {
    auto* part = new QWidget(this);
    auto* words = new QLabel(own("ui.empty.cellar"), part);
    words->setWordWrap(true);
    auto* button = new QPushButton(tr("Add the first vessel"), part);
    auto* column = new QVBoxLayout(part);
    column->addStretch(1);
    column->addWidget(words);
    column->addWidget(button, 0, Qt::AlignLeft);
    column->addStretch(2);
    connect(button, &QPushButton::clicked, this, &CellarView::addVessel);
    return part;
}

void CellarView::refresh() {
    if (model_->rowOf(vessel_) < 0)
        vessel_ = model_->rowCount() > 0 ? model_->at(0)->name : VesselName();
    add_->setEnabled(!session_.desk().readOnly());
    if (vessel_.empty()) {
        if (parts_->currentWidget() != vesselPage_) // the first vessel may be half described
            parts_->setCurrentWidget(emptyPart_);
    } else {
        header_->showVessel(*model_->at(model_->rowOf(vessel_)));
        if (parts_->currentWidget() == emptyPart_)
            parts_->setCurrentWidget(vesselPart_);
        if (drawRefill_->vessel() != vessel_)
            showVessel(vessel_);
    }
    selectInRail();
    Q_EMIT moved();
}

void CellarView::selectInRail() {
    const QSignalBlocker quiet(rail_->selectionModel());
    rail_->setCurrentIndex(model_->index(model_->rowOf(vessel_)));
    rail_->viewport()->update();
}

void CellarView::showVessel(VesselName name) {
    if (model_->rowOf(name) < 0)
        return;
    vessel_ = name;
    parts_->setCurrentWidget(vesselPart_);
    for (StationPage* station : stations_)
        station->showVessel(name); // stores what is in hand: the rows are read anew
    if (const VesselSummary* vessel = model_->at(model_->rowOf(name)))
        header_->showVessel(*vessel);
    selectInRail();
    Q_EMIT moved();
}

void CellarView::showStation(Station station) {
    if (vessel_.empty())
        return;
    parts_->setCurrentWidget(vesselPart_);
    bar_->setCurrentIndex(static_cast<int>(station));
    Q_EMIT moved();
}

void CellarView::showBrewSheet() {
    showStation(Station::brew);
    brew_->showSheet();
    Q_EMIT moved();
}

void CellarView::beginEntry(EntryKind kind) {
    showStation(Station::drawRefill);
    drawRefill_->begin(kind);
}

bool CellarView::atVessel() const {
    return parts_->currentWidget() == vesselPart_;
}

bool CellarView::atBrewSheet() const {
    return atVessel() && station() == Station::brew && brew_->part() == BrewStation::Part::sheet;
}

Station CellarView::station() const {
    return static_cast<Station>(bar_->currentIndex());
}

void CellarView::addVessel() {
    if (session_.desk().readOnly())
        return;
    parts_->setCurrentWidget(vesselPage_);
    vesselPage_->begin();
    Q_EMIT moved();
}

void CellarView::changeVessel() {
    if (session_.desk().readOnly() || vessel_.empty())
        return;
    parts_->setCurrentWidget(vesselPage_);
    vesselPage_->change(vessel_);
    Q_EMIT moved();
}

void CellarView::stepVessel(int by) {
    if (const VesselSummary* next = model_->at(model_->rowOf(vessel_) + by))
        showVessel(next->name);
}

/// A knot of the ribbon opens the station where its work is done.
void CellarView::openKnot(KnotKind kind) {
    if (kind == KnotKind::brew) {
        showStation(Station::brew);
    } else if (kind == KnotKind::taste || kind == KnotKind::nextTaste) {
        showStation(Station::taste);
    } else {
        beginEntry(EntryKind::drawOff);
        return;
    }
    focusWork();
}

void CellarView::stepFocus(int by) {
    const std::array<QWidget*, 3> places = {rail_, bar_, pages_};
    int at = by > 0 ? -1 : 3;
    for (int i = 0; i < 3; ++i)
        if (QWidget* focus = focusWidget(); focus && (places[static_cast<std::size_t>(i)] == focus ||
                                                      places[static_cast<std::size_t>(i)]->isAncestorOf(focus)))
            at = i;
    const int next = (at + by + 3) % 3;
    if (next == 2)
        focusWork();
    else
        places[static_cast<std::size_t>(next)]->setFocus(Qt::TabFocusReason);
}

void CellarView::focusWork() {
    if (atVessel() && !vessel_.empty())
        stations_[static_cast<std::size_t>(bar_->currentIndex())]->focusWork();
    else if (QWidget* page = parts_->currentWidget())
        if (QWidget* first = page->nextInFocusChain())
            first->setFocus(Qt::TabFocusReason);
}

} // namespace staveline::ui

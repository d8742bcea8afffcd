// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/cellar_view.h"

#include "desk/ledger.h"
#include "ui/adjust/page.h"
#include "ui/brew/page.h"
#include "ui/brew_sheet/page.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/first_steps_bar.h"
#include "ui/cellar/rail.h"
#include "ui/cellar/room_page.h"
#include "ui/cellar/round_page.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_paper.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/pantry/ingredients_page.h"
#include "ui/taste/blank_sheet.h"
#include "ui/taste/page.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/window/vessel_header.h"
#include "vessel/schedule.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using sheet::PaperFormat;
using vessel::EntryKind;

CellarView::CellarView(Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session),
      ledgerPrintout_(session, prompt, tr("ledger"), {PaperFormat::pdf, PaperFormat::html, PaperFormat::markdown},
                      [this] { return ledger(); }),
      packing_(session, prompt, tr("packaging sheet"),
               {PaperFormat::pdf, PaperFormat::html, PaperFormat::markdown, PaperFormat::csv},
               [this] { return finish_->paper(); }),
      labels_(session, prompt, tr("bottle labels"), {PaperFormat::pdf}, [this] { return finish_->labels(); }),
      cards_(session, prompt, tr("vessel cards"), {PaperFormat::pdf}, [this] { return vesselCards(); }),
      model_(new CellarModel(session, this)), firstSteps_(new FirstStepsBar(session, this)),
      parts_(new QStackedWidget(this)), vesselPage_(new VesselPage(session, parts_)),
      cellarPage_(new CellarPage(*model_, session, prompt, parts_)), round_(new RoundPage(session, prompt, parts_)),
      rooms_(new RoomPage(session, parts_)), ingredients_(new IngredientsPage(session, parts_)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, 1));
    row->addWidget(makeRail());
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    column->addWidget(firstSteps_);
    column->addWidget(parts_, 1);
    row->addLayout(column, 1);
    parts_->addWidget(vesselPart_ = makeVesselPart(prompt));
    parts_->addWidget(vesselPage_);
    parts_->addWidget(cellarPage_);
    parts_->addWidget(round_);
    parts_->addWidget(ingredients_);
    parts_->addWidget(rooms_);
    parts_->addWidget(emptyPart_ = makeEmptyPart());
    connect(&session, &Session::changed, this, &CellarView::refresh);
    connect(&session, &Session::unitsChanged, this, &CellarView::refresh);
    connect(firstSteps_, &FirstStepsBar::asked, this, &CellarView::takeStep);
    connect(rail_, &Rail::chosen, this, [this](const QString& vessel) { showVessel(toStd(vessel)); });
    connect(cellarPage_, &CellarPage::opened, this, &CellarView::openWork);
    connectVesselPage();
    connectAside();
    refresh();
}

void CellarView::connectVesselPage() {
    connect(vesselPage_, &VesselPage::added, this, [this](const QString& vessel) {
        showVessel(toStd(vessel));
        beginEntry(EntryKind::opening);
    });
    connect(vesselPage_, &VesselPage::changed, this, [this](const QString& vessel) {
        showVessel(toStd(vessel));
        goBack();
    });
}

void CellarView::connectAside() {
    for (const AsidePage* page : std::initializer_list<AsidePage*>{vesselPage_, round_, ingredients_, rooms_})
        connect(page, &AsidePage::left, this, &CellarView::goBack);
    connect(round_, &RoundPage::recorded, this, &CellarView::goBack);
}

bool CellarView::isAside() const {
    return qobject_cast<const AsidePage*>(parts_->currentWidget()) != nullptr;
}

void CellarView::showAside(AsidePage& page) {
    if (!isAside())
        cameFromAll_ = atAll();
    parts_->setCurrentWidget(&page);
}

void CellarView::goBack() {
    parts_->setCurrentWidget(vesselPart_);
    refresh();
    if (cameFromAll_ && model_->rowCount() > 1)
        showAll();
    else
        focusWork();
}

QWidget* CellarView::makeRail() {
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, lines(*this, .4));
    toAll_ = new QPushButton(tr("All vessels"), side);
    toAll_->setFlat(true);
    rail_ = new Rail(*model_, side);
    add_ = new QPushButton(tr("Add a vessel"), side);
    add_->setFlat(true);
    column->addWidget(toAll_);
    column->addWidget(rail_, 1);
    column->addWidget(add_);
    side->setFixedWidth(rail_->sizeHint().width());
    connect(add_, &QPushButton::clicked, this, &CellarView::addVessel);
    connect(toAll_, &QPushButton::clicked, this, &CellarView::showAll);
    return side;
}

QWidget* CellarView::makeVesselPart(Prompt& prompt) {
    auto* part = new QWidget(this);
    header_ = new VesselHeader(session_, part);
    bar_ = new UnderlinedTabs(part);
    pages_ = new QStackedWidget(part);
    makePages(prompt);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, 1), lines(*this, .4));
    column->setSpacing(lines(*this, .4));
    column->addWidget(header_);
    column->addWidget(bar_);
    column->addWidget(pages_, 1);
    connectPages();
    return part;
}

/// Each with its words on the bar; the order is that of PageId.
void CellarView::makePages(Prompt& prompt) {
    const auto add = [this](auto* workPage, const QString& words) {
        bar_->addTab(words);
        pages_->addWidget(workPage);
        workPages_.push_back(workPage);
        return workPage;
    };
    taste_ = add(new TastePage(session_, prompt, pages_), tr("Taste"));
    adjust_ = add(new AdjustPage(session_, pages_), tr("Adjust"));
    brew_ = add(new BrewPage(session_, prompt, pages_), tr("Brew"));
    drawRefill_ = add(new DrawRefillPage(session_, pages_), tr("Draw && refill"));
    finish_ = add(new FinishPage(session_, pages_), tr("Finish"));
    connect(finish_, &FinishPage::answered, this, &CellarView::frontMade);
    history_ = add(new HistoryPage(session_, prompt, pages_), tr("History"));
}

/// What one page asks of another, and what all of them tell the window.
void CellarView::connectPages() {
    connect(bar_, &QTabBar::currentChanged, this, [this](int index) {
        pages_->setCurrentIndex(index);
        Q_EMIT moved();
    });
    connect(&header_->timeline(), &CycleTimeline::opened, this, &CellarView::openMilestone);
    connect(header_, &VesselHeader::changeAsked, this, &CellarView::changeVessel);
    const auto firstEntry = [this](EntryKind kind) { beginEntry(kind); };
    connect(taste_, &TastePage::firstEntryAsked, this, firstEntry);
    connect(history_, &HistoryPage::firstEntryAsked, this, [this] {
        showPage(PageId::drawRefill);
        focusWork();
    });
    connect(history_, &HistoryPage::faceChanged, this, &CellarView::moved);
    connect(adjust_, &AdjustPage::firstEntryAsked, this, firstEntry);
    connect(adjust_, &AdjustPage::tasteAsked, this, [this] {
        showPage(PageId::taste);
        focusWork();
    });
    connect(adjust_, &AdjustPage::drawAsked, this, [this] { beginEntry(EntryKind::drawOff); });
    connect(taste_, &TastePage::blankSheetShown, this, &CellarView::moved);
    connect(brew_, &BrewPage::partChanged, this, &CellarView::moved);
    connect(brew_, &BrewPage::refillAsked, this, [this] { beginEntry(EntryKind::refill); });
    for (PaperPage* page : {&taste_->blankSheet().page(), &brewSheet().page()})
        connect(page, &PaperPage::paperChanged, this, &CellarView::paperChanged);
    bar_->setCurrentIndex(static_cast<int>(PageId::drawRefill));
}

BrewSheetPage& CellarView::brewSheet() const {
    return brew_->sheet();
}

void CellarView::setPaper(PaperSize size) {
    for (PaperPage* page : {&taste_->blankSheet().page(), &brewSheet().page()})
        page->setPaper(size);
    for (Printout* printout : {&ledgerPrintout_, &packing_, &labels_, &cards_, &history_->printout(),
                               &cellarPage_->printout(), &round_->printout()})
        printout->setSize(size);
}

std::optional<Printout::Made> CellarView::ledger() const {
    const Day today = session_.desk().today();
    auto paper = ledgerPaper(vessel_, drawRefill_->model(), today);
    if (!paper)
        return std::nullopt;
    return Printout::Made{std::move(*paper), tr("%1 ledger %2").arg(qs(vessel_), qs(isoDay(today)))};
}

std::optional<Printout::Made> CellarView::vesselCards() const {
    auto paper = session_.desk().vesselCards({}, session_.units());
    if (!paper)
        return std::nullopt;
    return Printout::Made{*std::move(paper), tr("vessel cards %1").arg(qs(isoDay(session_.desk().today())))};
}

PaperInFront CellarView::paperInFront() {
    if (atAll())
        return {&cellarPage_->printout(), {}};
    if (atRound())
        return {&round_->printout(), {}};
    if (!atVessel() || vessel_.empty())
        return {nullptr, tr("this page has no paper")};
    switch (workPage()) {
    case PageId::taste:
        return taste_->atBlankSheet() ? PaperInFront{&taste_->blankSheet().page().printout(), {}}
                                      : PaperInFront{nullptr, tr("open the blank sheet first")};
    case PageId::adjust:
        return {nullptr, tr("the brew sheet says what changes")};
    case PageId::brew:
        if (brew_->part() == BrewPage::Part::asBrewed)
            return {nullptr, tr("the plan and the brew sheet can be printed")};
        if (brew_->part() == BrewPage::Part::sheet && !brewSheet().page().hasPaper())
            return {nullptr, tr("there is no brew sheet yet")};
        return {&brewSheet().page().printout(), {}};
    case PageId::drawRefill:
        return drawRefill_->model().rowCount() > 0 ? PaperInFront{&ledgerPrintout_, {}}
                                                   : PaperInFront{nullptr, tr("nothing is recorded yet")};
    case PageId::finish:
        return finish_->paper() ? PaperInFront{&packing_, {}} : PaperInFront{nullptr, tr("ask about a filling first")};
    case PageId::history:
        return history_->hasHistory() ? PaperInFront{&history_->printout(), {}}
                                      : PaperInFront{nullptr, tr("nothing is recorded yet")};
    }
    return {};
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
        vessel_ = model_->rowCount() > 0 ? model_->at(0)->name : facts::VesselName();
    add_->setEnabled(!session_.desk().readOnly());
    toAll_->setVisible(model_->rowCount() > 1);
    if (vessel_.empty()) {
        if (!isAside()) // the first vessel may be half described
            parts_->setCurrentWidget(emptyPart_);
    } else {
        header_->showVessel(*model_->at(model_->rowOf(vessel_)));
        if (parts_->currentWidget() == emptyPart_)
            parts_->setCurrentWidget(vesselPart_);
        if (drawRefill_->vessel() != vessel_)
            showVessel(vessel_);
        if (atAll() && model_->rowCount() < 2)
            parts_->setCurrentWidget(vesselPart_);
    }
    firstSteps_->showVessel(vessel_);
    selectInRail();
    Q_EMIT moved();
}

void CellarView::selectInRail() {
    const QSignalBlocker quiet(rail_->selectionModel());
    rail_->setCurrentIndex(model_->index(model_->rowOf(vessel_)));
    rail_->viewport()->update();
}

void CellarView::showVessel(facts::VesselName name) {
    if (model_->rowOf(name) < 0)
        return;
    vessel_ = name;
    parts_->setCurrentWidget(vesselPart_);
    for (WorkPage* workPage : workPages_)
        workPage->showVessel(name); // stores what is in hand: the rows are read anew
    if (const desk::VesselSummary* vessel = model_->at(model_->rowOf(name)))
        header_->showVessel(*vessel);
    firstSteps_->showVessel(name);
    selectInRail();
    Q_EMIT moved();
}

void CellarView::showPage(PageId workPage) {
    if (vessel_.empty())
        return;
    parts_->setCurrentWidget(vesselPart_);
    bar_->setCurrentIndex(static_cast<int>(workPage));
    Q_EMIT moved();
}

void CellarView::showBrewSheet() {
    showPage(PageId::brew);
    brew_->showSheet();
    Q_EMIT moved();
}

namespace {

PageId pageOf(vessel::DueKind kind) {
    switch (kind) {
    case vessel::DueKind::taste:
        return PageId::taste;
    case vessel::DueKind::brew:
        return PageId::brew;
    case vessel::DueKind::draw:
    case vessel::DueKind::refill:
    case vessel::DueKind::nothing:
        break;
    }
    return PageId::drawRefill;
}

} // namespace

void CellarView::showAll() {
    if (vessel_.empty())
        return;
    parts_->setCurrentWidget(cellarPage_);
    cellarPage_->showVessel(vessel_);
    cellarPage_->focusWork();
    Q_EMIT moved();
}

void CellarView::showStart() {
    if (model_->rowCount() > 1)
        showAll();
    else
        showDue();
}

void CellarView::openWork(const QString& vessel, vessel::DueKind work) {
    showVessel(toStd(vessel));
    showPage(pageOf(work));
    focusWork();
}

void CellarView::showDue() {
    const auto first = session_.desk().firstDue();
    if (!first || !*first)
        return;
    openWork(qs((*first)->name), (*first)->due.kind);
}

void CellarView::beginEntry(EntryKind kind) {
    showPage(PageId::drawRefill);
    drawRefill_->begin(kind);
}

bool CellarView::atVessel() const {
    return parts_->currentWidget() == vesselPart_;
}

bool CellarView::atAll() const {
    return parts_->currentWidget() == cellarPage_;
}

bool CellarView::atRound() const {
    return parts_->currentWidget() == round_;
}

bool CellarView::atIngredients() const {
    return parts_->currentWidget() == ingredients_;
}

bool CellarView::atRooms() const {
    return parts_->currentWidget() == rooms_;
}

bool CellarView::atBrewSheet() const {
    return atVessel() && workPage() == PageId::brew && brew_->part() == BrewPage::Part::sheet;
}

PageId CellarView::workPage() const {
    return static_cast<PageId>(bar_->currentIndex());
}

void CellarView::addVessel() {
    if (session_.desk().readOnly())
        return;
    showAside(*vesselPage_);
    vesselPage_->begin();
    Q_EMIT moved();
}

void CellarView::showRound() {
    if (session_.desk().readOnly() || vessel_.empty())
        return;
    round_->begin();
    showAside(*round_);
    Q_EMIT moved();
    if (!round_->rows().empty())
        round_->rows().front().level->edit()->setFocus(Qt::OtherFocusReason);
}

void CellarView::showIngredients() {
    showAside(*ingredients_);
    Q_EMIT moved();
    ingredients_->begin();
}

void CellarView::showRooms() {
    if (session_.desk().readOnly())
        return;
    showAside(*rooms_);
    rooms_->begin();
    Q_EMIT moved();
}

void CellarView::changeVessel() {
    if (session_.desk().readOnly() || vessel_.empty())
        return;
    showAside(*vesselPage_);
    vesselPage_->change(vessel_);
    Q_EMIT moved();
}

void CellarView::addToRail(const QList<QAction*>& actions) {
    rail_->addActions(actions);
    rail_->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void CellarView::stepVessel(int by) {
    if (const desk::VesselSummary* next = model_->at(model_->rowOf(vessel_) + by))
        showVessel(next->name);
}

/// To where it is taken, or where it was.
void CellarView::takeStep(desk::FirstStep step) {
    using desk::FirstStep;
    if (vessel_.empty()) {
        addVessel();
        return;
    }
    switch (step) {
    case FirstStep::vessel:
        changeVessel();
        return;
    case FirstStep::beer:
        beginEntry(EntryKind::opening);
        return;
    case FirstStep::kit:
        showPage(PageId::brew);
        brew_->showKit();
        return;
    case FirstStep::recipe:
        showPage(PageId::brew);
        brew_->showPlan();
        break;
    case FirstStep::character:
        showPage(PageId::adjust);
        adjust_->openTarget(true);
        return;
    case FirstStep::tasting:
        showPage(PageId::taste);
        break;
    }
    focusWork();
}

/// A milestone of the timeline opens the page where its work is done.
void CellarView::openMilestone(MilestoneKind kind) {
    if (kind == MilestoneKind::brew) {
        showPage(PageId::brew);
    } else if (kind == MilestoneKind::taste || kind == MilestoneKind::nextTaste || kind == MilestoneKind::firstTaste) {
        showPage(PageId::taste);
    } else if (kind == MilestoneKind::fill) {
        beginEntry(EntryKind::refill);
        return;
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
        workPages_[static_cast<std::size_t>(bar_->currentIndex())]->focusWork();
    else if (atAll())
        cellarPage_->focusWork();
    else if (QWidget* page = parts_->currentWidget())
        if (QWidget* first = page->nextInFocusChain())
            first->setFocus(Qt::TabFocusReason);
}

} // namespace staveline::ui

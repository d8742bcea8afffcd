// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/cellar_page.h"

#include "ui/cellar/overview_filter.h"
#include "ui/cellar/overview_table.h"
#include "ui/cellar/work_date_line.h"
#include "ui/print/model_table.h"
#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

using sheet::PaperFormat;

namespace {

constexpr int brewDaysShown = 4;
const std::vector<int> printed = {OverviewModel::due,     OverviewModel::name, OverviewModel::level,
                                  OverviewModel::acidity, OverviewModel::funk, OverviewModel::body,
                                  OverviewModel::plan,    OverviewModel::age};

OverviewFilter::Which whichOf(const std::string& word) {
    return word == "due"      ? OverviewFilter::Which::due
           : word == "faulty" ? OverviewFilter::Which::faulty
           : word == "off"    ? OverviewFilter::Which::offTarget
                              : OverviewFilter::Which::all;
}

} // namespace

CellarPage::CellarPage(CellarModel& cellar, Session& session, Prompt& prompt, QWidget* parent)
    : QWidget(parent), session_(session), model_(new OverviewModel(cellar, session, this)),
      shown_(new OverviewFilter(*model_, this)),
      printout_(session, prompt, tr("list of vessels"), {PaperFormat::pdf, PaperFormat::html, PaperFormat::markdown},
                [this] { return paper(); }),
      words_(new QLineEdit(this)), which_(new ChoiceField(this)), count_(new QLabel(this)),
      tableFace_(new QPushButton(tr("Table"), this)), yearFace_(new QPushButton(tr("Year"), this)),
      table_(new OverviewTable(*model_, *shown_, this)), dates_(new WorkDateLine(session, this)),
      brewDays_(new QWidget(this)) {
    auto* tools = new QWidget(this);
    addTools(*tools);
    new QVBoxLayout(brewDays_);
    brewDays_->layout()->setContentsMargins(0, 0, 0, 0);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), lines(*this, 1), lines(*this, .4));
    column->setSpacing(lines(*this, .5));
    column->addWidget(tools);
    column->addWidget(table_, 1);
    column->addWidget(dates_);
    column->addWidget(brewDays_);
    connect(table_, &OverviewTable::openAsked, this, &CellarPage::openInHand);
    connect(table_, &OverviewTable::handChanged, this, &CellarPage::showHand);
    connect(table_, &OverviewTable::moveAsked, this,
            [this](const QString& vessel, vessel::DueKind work, Day to) { dates_->move(toStd(vessel), work, to); });
    connect(&cellar, &CellarModel::allRead, this, &CellarPage::showBrewDays);
    for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
        connect(shown_, signal, this, &CellarPage::tellCount);
    connect(shown_, &QAbstractItemModel::modelReset, this, &CellarPage::tellCount);
    showYear(false);
    tellCount();
}

void CellarPage::addTools(QWidget& row) {
    auto* layout = new WrapLayout(&row, lines(*this, .4));
    auto* title = new QLabel(tr("All vessels"), &row);
    setType(*title, Type::title);
    layout->addWidget(title);
    layout->addSpacing(lines(*this, 1));
    words_->setObjectName(QStringLiteral("find"));
    words_->setPlaceholderText(tr("Find a vessel or its work"));
    words_->setAccessibleName(tr("Find a vessel or its work"));
    words_->setClearButtonEnabled(true);
    words_->setMinimumWidth(lines(*this, 13));
    layout->addWidget(words_);
    which_->setAccessibleName(tr("Vessels shown"));
    which_->add(tr("all"), "all");
    which_->add(tr("due within ten days"), "due");
    which_->add(tr("with a fault"), "faulty");
    which_->add(tr("off target"), "off");
    layout->addWidget(which_);
    layout->addWidget(count_);
    layout->addStretch();
    for (QPushButton* face : {tableFace_, yearFace_}) {
        face->setCheckable(true);
        tellAsOneOfSeveral(*face);
        layout->addWidget(face);
        connect(face, &QPushButton::clicked, this, [this, face] { showYear(face == yearFace_); });
    }
    connect(words_, &QLineEdit::textChanged, this, [this](const QString& words) {
        shown_->setWords(words);
        tellCount();
    });
    connect(words_, &QLineEdit::returnPressed, this, &CellarPage::focusWork);
    connect(which_, &ChoiceField::activated, this, [this] {
        shown_->setWhich(whichOf(which_->word()));
        tellCount();
    });
}

void CellarPage::showYear(bool year) {
    table_->showYear(year);
    tableFace_->setChecked(!year);
    yearFace_->setChecked(year);
}
bool CellarPage::isYear() const {
    return table_->isYear();
}

void CellarPage::showEvent(QShowEvent* event) {
    QWidget::showEvent(event);
    model_->workOut(true);
}
void CellarPage::hideEvent(QHideEvent* event) {
    QWidget::hideEvent(event);
    model_->workOut(false);
}

void CellarPage::showVessel(const facts::VesselName& name) {
    const int row = model_->cellar().rowOf(name);
    if (row >= 0)
        table_->setCurrentIndex(shown_->mapFromSource(model_->index(row, OverviewModel::name)));
}

void CellarPage::focusWork() {
    if (!table_->currentIndex().isValid() && shown_->rowCount() > 0)
        table_->setCurrentIndex(shown_->index(0, OverviewModel::name));
    table_->setFocus(Qt::OtherFocusReason);
}

void CellarPage::find() {
    words_->setFocus(Qt::ShortcutFocusReason);
    words_->selectAll();
}

void CellarPage::openInHand() {
    if (const desk::VesselSummary* vessel = table_->inHand())
        Q_EMIT opened(qs(vessel->name), vessel->due.kind);
}

void CellarPage::showHand() {
    dates_->showVessel(table_->inHand());
}

void CellarPage::tellCount() {
    const int shown = shown_->rowCount(), all = model_->rowCount();
    count_->setText(shown == all ? tr("%1 vessels").arg(all) : tr("%1 of %2 vessels").arg(shown).arg(all));
}

/// The first of them; each with the button that makes it so.
void CellarPage::showBrewDays() {
    const auto days = desk::brewDays(model_->allKnown());
    QStringList words;
    for (const desk::BrewDay& day : days)
        words << qs(desk::brewDayWords(day, session_.desk().kit(), session_.units()));
    if (words == brewDayWords_)
        return; // a button keeps its focus
    brewDayWords_ = words;
    qDeleteAll(brewDays_->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly));
    for (std::size_t i = 0; i < std::min<std::size_t>(days.size(), brewDaysShown); ++i) {
        auto* row = new QWidget(brewDays_);
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        auto* label = new QLabel(words[static_cast<qsizetype>(i)], row);
        label->setWordWrap(true);
        layout->addWidget(label, 1);
        auto* together = new QPushButton(tr("Brew for all on that day"), row);
        together->setAccessibleName(tr("Brew for %1 on %2").arg(qs(desk::namesIn(days[i])), dayWords(days[i].on)));
        together->setEnabled(!session_.desk().readOnly());
        layout->addWidget(together);
        brewDays_->layout()->addWidget(row);
        connect(together, &QPushButton::clicked, this, [this, day = days[i]] { brewTogether(day); });
    }
    brewDays_->setVisible(!days.empty());
}

/// One act.
void CellarPage::brewTogether(const desk::BrewDay& day) {
    const auto moves = desk::brewOn(day, model_->allKnown(), session_.desk().today());
    if (!moves.empty())
        if (const auto done = session_.record(moves); !done)
            Q_EMIT session_.failed(done.error());
}

std::optional<Printout::Made> CellarPage::paper() const {
    if (shown_->rowCount() == 0)
        return std::nullopt;
    const Day today = session_.desk().today();
    sheet::Document paper;
    paper.title = staveline::render(say("ui.paper.vessels"));
    paper.subtitle = staveline::render(say("ui.paper.printed").with("day", today));
    paper.footer = staveline::render(
        say("ui.paper.footer").with("vessel", staveline::render(say("ui.paper.vessels"))).with("day", today));
    paper.blocks.emplace_back(tableOf(*shown_, printed, 2));
    return Printout::Made{std::move(paper), tr("vessels %1").arg(qs(isoDay(today)))};
}

} // namespace staveline::ui

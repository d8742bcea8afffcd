// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/cellar/prospect_panel.h"

#include "ui/chart/chart_stack.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <cmath>

namespace staveline::ui {
namespace {

constexpr double yearsFrom = 3;

NumberField* field(UnitKind kind, Range range, const QString& name, QHBoxLayout& row, QWidget* parent) {
    auto* made = new NumberField(kind, range, true, parent);
    auto* label = new QLabel(name, parent);
    made->setName(name);
    label->setBuddy(made->edit());
    auto* both = new QVBoxLayout;
    both->addWidget(label);
    both->addWidget(made);
    row.addLayout(both);
    return made;
}

ChartSeries line(const QString& name, Tone tone, Shape shape) {
    ChartSeries made;
    made.name = name;
    made.kind = SeriesKind::line;
    made.tone = tone;
    made.shape = shape;
    return made;
}

} // namespace

ChartData prospectChart(const desk::Prospect& prospect, Day today) {
    const bool row = prospect.inRow > 1;
    const bool inYears = prospect.settled.beforeDraw.d >= yearsFrom * daysPerYear;
    const double unit = inYears ? daysPerYear : daysPerYear / 12;
    ChartData data;
    data.subject = qs(prospect.vessel.name);
    data.today = today;
    ChartPanel panel;
    panel.id = QStringLiteral("prospect");
    panel.title = ProspectPanel::tr("Mean age");
    panel.unit = inYears ? ProspectPanel::tr("years") : ProspectPanel::tr("months");
    panel.low = 0;
    auto age = line(row ? ProspectPanel::tr("drawn") : ProspectPanel::tr("in it"), Tone::tasted, Shape::none);
    Day last = prospect.begins;
    for (const vessel::AgePoint& point : prospect.growth) {
        last = prospect.begins + std::chrono::days{std::lround(point.since.d)};
        age.points.push_back(plainPoint(last, point.before.d / unit));
        if (!row)
            age.points.push_back(plainPoint(last, point.after.d / unit));
        data.events.push_back({last, ChartEvent::Row::out, std::nullopt, false,
                               ProspectPanel::tr("draw %1").arg(point.draw), ProspectPanel::tr("draw")});
    }
    const double first = prospect.growth.front().before.d - (row ? 0 : prospect.growth.front().since.d);
    if (!row)
        age.points.insert(age.points.begin(), plainPoint(prospect.begins, first / unit));
    auto settled = line(ProspectPanel::tr("long run"), Tone::predicted, Shape::none);
    settled.spoken = false;
    for (const Day on : {prospect.begins, last})
        settled.points.push_back(plainPoint(on, prospect.settled.beforeDraw.d / unit));
    panel.series = {std::move(settled), std::move(age)};
    data.panels.push_back(std::move(panel));
    data.whole = {prospect.begins, std::max(last, prospect.begins + std::chrono::days{30})};
    return data;
}

ProspectPanel::ProspectPanel(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), chart_(new ChartStack(this)), reading_(new QLabel(this)),
      words_(new QLabel(this)) {
    auto* heading = new QLabel(tr("What it comes to"), this);
    setType(*heading, Type::strong);
    auto* numbers = new QHBoxLayout;
    numbers->setSpacing(lines(*this, 1));
    refillAge_ = field(UnitKind::days, {0, 20000}, tr("Age of the refills"), *numbers, this);
    row_ = field(UnitKind::none, {1, desk::WhatIf::mostInRow}, tr("Vessels in a row"), *numbers, this);
    row_->setToolTip(tr("Drawn from the oldest, each topped from the next younger, the youngest refilled."));
    numbers->addStretch(1);
    chart_->setMinimumHeight(lines(*this, 14));
    chart_->setMaximumHeight(lines(*this, 26));
    chart_->setAccessibleName(tr("Mean age on the days to come"));
    words_->setObjectName("prospect");
    for (QLabel* label : {reading_, words_}) {
        label->setWordWrap(true);
        label->setAlignment(Qt::AlignTop);
    }
    for (QWidget* part :
         std::initializer_list<QWidget*>{reading_, words_, chart_}) // the form beside it keeps its width
        part->setSizePolicy(QSizePolicy::Ignored, part->sizePolicy().verticalPolicy());
    reading_->setForegroundRole(QPalette::PlaceholderText);
    reading_->setMinimumHeight(lines(*this, 2.2));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(lines(*this, 1), lines(*this, 1), lines(*this, .5), 0);
    column->setSpacing(lines(*this, .6));
    column->addWidget(heading);
    column->addWidget(words_);
    column->addLayout(numbers);
    column->addWidget(chart_, 1);
    column->addWidget(reading_);
    column->addStretch(0);
    connect(chart_, &ChartStack::cursorMoved, this, &ProspectPanel::readCursor);
    for (NumberField* each : {refillAge_, row_})
        connect(each, &NumberField::edited, this, &ProspectPanel::refresh);
    connect(&session, &Session::unitsChanged, this, &ProspectPanel::refresh);
}

void ProspectPanel::begin(const desk::Start& start) {
    start_ = start;
    refillAge_->setStored(start.refillAge.d);
    row_->setStored(1);
}

void ProspectPanel::showVessel(const facts::VesselFact& vessel) {
    vessel_ = vessel;
    refresh();
}

/// Half-typed numbers keep what the last whole ones came to.
void ProspectPanel::refresh() {
    desk::WhatIf what;
    if (!refillAge_->stored() || !row_->stored())
        return;
    what.refillAge = Days{*refillAge_->stored()};
    what.inRow = static_cast<int>(std::lround(*row_->stored()));
    const auto prospect = prospectOf(vessel_, what, start_);
    if (!prospect) {
        words_->setText(session_.words(prospect.error()));
        return;
    }
    QStringList words;
    for (const auto* list : {&prospect->words, &prospect->doubts})
        for (const Message& message : *list)
            words << session_.words(message);
    words_->setText(words.join(QLatin1Char('\n')));
    chart_->setData(prospectChart(*prospect, start_.today));
}

void ProspectPanel::readCursor() {
    reading_->setText(chart_->cursorWords());
    chart_->setAccessibleDescription(reading_->text());
}

} // namespace staveline::ui

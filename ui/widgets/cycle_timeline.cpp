// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/cycle_timeline.h"

#include "ui/present/text.h"
#include "ui/widgets/glyph.h"
#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QKeyEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double side = .95;     // of a milestone, in lines
constexpr double markRoom = 1.2; // for the word "today" above the line

std::optional<Milestone> cycleStart(const vessel::LedgerState& now) {
    if (now.lastRefill)
        return Milestone{now.cycle > 0 ? MilestoneKind::refilled : MilestoneKind::filled, *now.lastRefill, {}};
    if (now.opened)
        return Milestone{MilestoneKind::takenOver, *now.opened, {}};
    return std::nullopt;
}

std::vector<Milestone> firstFillOf(const vessel::Schedule& dates) {
    return {{MilestoneKind::brew, dates.brew, dates.brewDue},
            {MilestoneKind::fill, dates.draw, dates.drawDue},
            {MilestoneKind::firstTaste, dates.nextSample, {}},
            {MilestoneKind::firstDraw, dates.nextDraw, {}}};
}

} // namespace

std::vector<Milestone> milestonesOf(const vessel::Schedule& dates, const vessel::LedgerState& now, bool toFill) {
    if (toFill)
        return firstFillOf(dates);
    std::vector<Milestone> milestones{{MilestoneKind::taste, dates.sample, dates.sampleDue},
                                      {MilestoneKind::brew, dates.brew, dates.brewDue},
                                      {MilestoneKind::draw, dates.draw, dates.drawDue},
                                      {MilestoneKind::nextTaste, dates.nextSample, {}},
                                      {MilestoneKind::nextDraw, dates.nextDraw, {}}};
    if (const auto start = cycleStart(now))
        milestones.insert(milestones.begin(), *start);
    std::stable_sort(milestones.begin(), milestones.end(),
                     [](const Milestone& a, const Milestone& b) { return a.on < b.on; });
    return milestones;
}

QString wordOf(MilestoneKind kind) {
    switch (kind) {
    case MilestoneKind::takenOver:
        return CycleTimeline::tr("taken over");
    case MilestoneKind::filled:
        return CycleTimeline::tr("filled");
    case MilestoneKind::refilled:
        return CycleTimeline::tr("refilled");
    case MilestoneKind::taste:
        return CycleTimeline::tr("taste");
    case MilestoneKind::brew:
        return CycleTimeline::tr("brew");
    case MilestoneKind::draw:
        return CycleTimeline::tr("draw and refill");
    case MilestoneKind::fill:
        return CycleTimeline::tr("fill");
    case MilestoneKind::firstTaste:
        return CycleTimeline::tr("first tasting");
    case MilestoneKind::firstDraw:
        return CycleTimeline::tr("first draw");
    case MilestoneKind::nextTaste:
        return CycleTimeline::tr("taste again");
    case MilestoneKind::nextDraw:
        return CycleTimeline::tr("next draw");
    }
    return {};
}

std::vector<double> spread(const std::vector<double>& wanted, double gap, double length) {
    std::vector<double> at = wanted;
    const double step = at.size() > 1 ? std::min(gap, length / static_cast<double>(at.size() - 1)) : gap;
    for (std::size_t i = 1; i < at.size(); ++i)
        at[i] = std::max(at[i], at[i - 1] + step);
    double right = length;
    for (std::size_t i = at.size(); i-- > 0; right -= step)
        at[i] = std::min(at[i], right);
    return at;
}

MilestoneButton::MilestoneButton(const Milestone& milestone, Day today, bool current, QWidget* parent)
    : QAbstractButton(parent), milestone_(milestone), today_(today), current_(current) {
    setFocusPolicy(Qt::StrongFocus);
    setText(milestone.age ? tr("%1 at %2").arg(wordOf(milestone.kind), spanWords(*milestone.age))
                          : wordOf(milestone.kind));
    setAccessibleName(tr("%1, %2, %3").arg(text(), weekdayWords(milestone.on), when()));
    setToolTip(tr("%1, %2").arg(weekdayWords(milestone.on), when()));
    setObjectName(QStringLiteral("milestone ") + wordOf(milestone.kind));
    setEnabled(!isStart(milestone.kind));
}

bool MilestoneButton::overdue() const {
    return current_ && milestone_.due && *milestone_.due < today_;
}

QString MilestoneButton::when() const {
    if (overdue())
        return overdueWords(daysBetween(*milestone_.due, today_));
    return distanceWords(daysBetween(today_, milestone_.on));
}

QSize MilestoneButton::sizeHint() const {
    const QFontMetrics metrics(ui::font(font(), Type::strong));
    const int wide = std::max(metrics.horizontalAdvance(text()), metrics.horizontalAdvance(dayWords(milestone_.on)));
    return {wide + lines(*this, .6), lines(*this, side + 2.5)};
}

QPointF MilestoneButton::centre() const {
    return {width() / 2.0, lines(*this, side) / 2.0 + lines(*this, .15)};
}

void MilestoneButton::paintMilestone(QPainter& painter, const QRectF& box) const {
    if (current_) {
        QPainterPath background;
        background.addEllipse(box);
        painter.fillPath(background, palette().color(QPalette::Window));
        paintGlyph(painter, box, overdue() ? Glyph::overdue : Glyph::soon, tone(palette(), Tone::due));
        return;
    }
    const QColor ink = wall(palette());
    painter.setPen(QPen(ink, lines(*this, 1) / 10.0));
    painter.setBrush(milestone_.on < today_ ? ink : palette().color(QPalette::Base));
    const double trim = box.width() * .22;
    painter.drawEllipse(box.adjusted(trim, trim, -trim, -trim));
}

void MilestoneButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double milestone = lines(*this, side), line = lines(*this, 1);
    const QRectF box(centre() - QPointF(milestone, milestone) / 2, QSizeF(milestone, milestone));
    paintMilestone(painter, box);
    const double y = box.bottom() + line * .1;
    painter.setPen(palette().color(QPalette::Active, QPalette::WindowText));
    painter.setFont(ui::font(font(), current_ ? Type::strong : Type::body));
    painter.drawText(QRectF(0, y, width(), line * 1.1), Qt::AlignHCenter | Qt::AlignTop, text());
    painter.setFont(font());
    painter.setPen(quietText(palette()));
    painter.drawText(QRectF(0, y + line, width(), line * 1.1), Qt::AlignHCenter | Qt::AlignTop,
                     dayWords(milestone_.on));
    if (hasFocus())
        drawFocusRing(painter, QRectF(rect()), palette(), line);
}

CycleTimeline::CycleTimeline(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("This cycle"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum); // all its rows
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void CycleTimeline::setMilestones(const std::vector<Milestone>& milestones, Day today,
                                  std::optional<MilestoneKind> current) {
    // Not at once: the focus may just be on its way to one of them.
    for (MilestoneButton* button : buttons_) {
        button->hide();
        button->deleteLater();
    }
    buttons_.clear();
    today_ = today;
    QWidget* before = nullptr;
    for (const Milestone& milestone : milestones) {
        auto* button = new MilestoneButton(milestone, today, milestone.kind == current, this);
        connect(button, &QAbstractButton::clicked, this, [this, kind = milestone.kind] { Q_EMIT opened(kind); });
        buttons_.push_back(button);
        if (before)
            setTabOrder(before, button);
        before = button;
        button->show();
    }
    setAccessibleDescription(tr("Today is %1").arg(weekdayWords(today)));
    place();
    updateGeometry();
    update();
}

int CycleTimeline::rowHeight() const {
    return lines(*this, markRoom + side + 2.6);
}
int CycleTimeline::widest() const {
    int wide = 1;
    for (const MilestoneButton* button : buttons_)
        wide = std::max(wide, button->sizeHint().width());
    return wide;
}
/// As few as hold all the milestones, with as many in each as the others.
int CycleTimeline::rowsIn(int width) const {
    const int count = std::max(1, static_cast<int>(buttons_.size()));
    const int fitting = std::clamp(width / widest(), 1, count);
    return (count + fitting - 1) / fitting;
}

QSize CycleTimeline::sizeHint() const {
    return {lines(*this, 40), rowHeight()};
}
QSize CycleTimeline::minimumSizeHint() const {
    return {std::max(2 * widest(), lines(*this, 20)), rowHeight()};
}
int CycleTimeline::heightForWidth(int width) const {
    return rowsIn(width) * rowHeight();
}

/// Milestones at their part of the time; in more than one row side by side, in order.
void CycleTimeline::place() {
    centres_.clear();
    if (buttons_.empty())
        return;
    const double half = widest() / 2.0, length = width() - 2 * half;
    const auto rows = static_cast<std::size_t>(rowsIn(width()));
    perRow_ = (buttons_.size() + rows - 1) / rows;
    std::vector<double> wanted;
    const Day first = std::min(buttons_.front()->milestone().on, today_), last = buttons_.back()->milestone().on;
    const double span = std::max(1, daysBetween(first, last));
    for (std::size_t i = 0; i < buttons_.size(); ++i)
        wanted.push_back(rows > 1 ? static_cast<double>(i % perRow_) / static_cast<double>(perRow_) * length
                                  : daysBetween(first, buttons_[i]->milestone().on) / span * length);
    for (const double at : rows > 1 ? wanted : spread(wanted, 2 * half, length))
        centres_.push_back(at + half);
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const QSize size = buttons_[i]->sizeHint();
        const int left = static_cast<int>(centres_[i] - size.width() / 2.0);
        const int top = static_cast<int>(i / perRow_) * rowHeight() + lines(*this, markRoom);
        buttons_[i]->setGeometry(QRect(QPoint(left, top), size));
    }
}

double CycleTimeline::lineY(std::size_t row) const {
    return static_cast<double>(row) * rowHeight() + lines(*this, markRoom) +
           (buttons_.empty() ? 0 : buttons_.front()->centre().y());
}

/// Between the last milestone that is past and the next one, where both stand in one row.
QPointF CycleTimeline::todayAt() const {
    if (centres_.empty())
        return {};
    const double edge = lines(*this, 1);
    if (today_ <= buttons_.front()->milestone().on)
        return {std::max(edge, centres_.front() - edge * (today_ < buttons_.front()->milestone().on ? 1 : 0)),
                lineY(0)};
    for (std::size_t i = 1; i < buttons_.size(); ++i) {
        const Day from = buttons_[i - 1]->milestone().on, to = buttons_[i]->milestone().on;
        if (today_ > to)
            continue;
        const double part = static_cast<double>(daysBetween(from, today_)) / std::max(1, daysBetween(from, to));
        if (i % perRow_ == 0 && part < 1)
            return {std::min(width() - edge, centres_[i - 1] + edge), lineY((i - 1) / perRow_)};
        const double before = i % perRow_ == 0 ? centres_[i] : centres_[i - 1];
        return {before + part * (centres_[i] - before), lineY(i / perRow_)};
    }
    return {std::min(width() - edge, centres_.back() + edge), lineY((centres_.size() - 1) / perRow_)};
}

/// What is past is a thick line, what comes a dashed one.
void CycleTimeline::paintRow(QPainter& painter, std::size_t row, const QPointF& now) const {
    const double y = lineY(row), line = lines(*this, 1);
    const std::size_t first = row * perRow_, last = std::min(centres_.size(), first + perRow_) - 1;
    const double split = now.y() > y ? centres_[last] : now.y() < y ? centres_[first] : now.x();
    painter.setPen(QPen(wall(palette()), line / 5, Qt::SolidLine, Qt::RoundCap));
    if (split > centres_[first])
        painter.drawLine(QPointF(centres_[first], y), QPointF(split, y));
    painter.setPen(QPen(wall(palette()), line / 14, Qt::DashLine));
    painter.drawLine(QPointF(std::max(split, centres_[first]), y), QPointF(centres_[last], y));
}

void CycleTimeline::paintEvent(QPaintEvent*) {
    if (centres_.empty())
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double line = lines(*this, 1);
    const QPointF now = todayAt();
    for (std::size_t row = 0; row * perRow_ < centres_.size(); ++row)
        paintRow(painter, row, now);
    painter.setPen(QPen(tone(palette(), Tone::proposed), line / 8));
    painter.drawLine(now - QPointF(0, line * .75), now + QPointF(0, line * .45));
    const QString word = tr("today");
    const double wide = fontMetrics().horizontalAdvance(word);
    const double left = std::clamp(now.x() - wide / 2, 0.0, width() - wide);
    painter.drawText(QPointF(left, now.y() - line * .85), word);
}

void CycleTimeline::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    place();
}

void CycleTimeline::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        openFocused();
    else if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right)
        moveFocus(event->key() == Qt::Key_Left ? -1 : 1);
    else
        QWidget::keyPressEvent(event);
}

void CycleTimeline::openFocused() {
    for (MilestoneButton* button : buttons_)
        if (button->hasFocus())
            button->click();
}

void CycleTimeline::moveFocus(int by) {
    auto at = std::find_if(buttons_.begin(), buttons_.end(), [](const MilestoneButton* b) { return b->hasFocus(); });
    if (at == buttons_.end())
        return;
    const auto index = at - buttons_.begin() + by;
    if (index >= 0 && index < static_cast<std::ptrdiff_t>(buttons_.size()))
        buttons_[static_cast<std::size_t>(index)]->setFocus(Qt::TabFocusReason);
}

} // namespace staveline::ui

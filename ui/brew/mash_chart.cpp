// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/mash_chart.h"

#include "ui/brew/binder.h"
#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using brewing::MashStep;

namespace {

constexpr double lowest = 30, highest = 82; // of the temperature scale [C]
constexpr double leftRoom = 3.6, rightRoom = 5.2, hangRoom = 2.5, plotRoom = 8, panelRoom = 2.9, axisRoom = 1.4;
constexpr double percent = 100;

/// The next of 1, 2, 5, 10, 20, .. at or above.
double niceTop(double value) {
    if (value <= 0)
        return 1;
    const double size = std::pow(10, std::floor(std::log10(value)));
    for (const double step : {1., 2., 5.})
        if (value <= step * size)
            return step * size;
    return 10 * size;
}
double largest(const std::vector<double>& values) {
    return values.empty() ? 0 : *std::max_element(values.begin(), values.end());
}
double last(const std::vector<double>& values) {
    return values.empty() ? 0 : values.back();
}
double tickOf(double span) {
    for (const double tick : {10., 20., 30.})
        if (span / tick <= 9)
            return tick;
    return 60;
}
QString amount(const ArgumentValue& value, const DisplayUnits& units) {
    return qs(staveline::show(value, units));
}

} // namespace

std::vector<RestSpan> spansOf(const std::vector<MashStep>& rests, CelsiusPerMinute rate) {
    std::vector<RestSpan> spans;
    double now = 0;
    for (std::size_t i = 0; i < rests.size(); ++i) {
        if (i > 0 && rate.cPerMin > 0)
            now += std::abs((rests[i].temperature - rests[i - 1].temperature).c) / rate.cPerMin;
        spans.push_back({now, now + rests[i].minutes.min});
        now = spans.back().to;
    }
    return spans;
}

QString describe(const MashLook& look) {
    QStringList rests;
    for (const MashStep& rest : look.rests)
        rests << MashChart::tr("%1 for %2").arg(amount(rest.temperature, look.units), amount(rest.minutes, look.units));
    QString words = MashChart::tr("Mash: %1.").arg(rests.join(MashChart::tr(", then ")));
    if (!look.trace.minute.empty() && look.current)
        words += qs(" " + render(say("ui.brew.mash_end")
                                     .with("fermentable", Share{last(look.trace.fermentable)})
                                     .with("dextrin", Share{last(look.trace.dextrin)})
                                     .with("ferulic", MilligramsPerLitre{last(look.trace.ferulic)})
                                     .with("glucan", GramsPerLitre{last(look.trace.betaGlucan)}),
                                 look.units));
    return words;
}

MashChart::MashChart(QWidget* parent) : QWidget(parent) {
    setAccessibleName(tr("Mash over time"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void MashChart::setLook(const MashLook& look) {
    look_ = look;
    spans_ = spansOf(look.rests, look.rate);
    while (handles_.size() > look.rests.size()) {
        handles_.back()->QWidget::hide();
        handles_.back()->deleteLater(); // the focus may just be on its way to it
        handles_.pop_back();
    }
    while (handles_.size() < look.rests.size()) {
        auto* handle = new RestHandle(handles_.size(), *this);
        if (!handles_.empty())
            setTabOrder(handles_.back(), handle);
        handles_.push_back(handle);
        handle->QWidget::show();
    }
    for (std::size_t i = 0; i < handles_.size(); ++i)
        handles_[i]->show(look.rests[i], look.units);
    setAccessibleDescription(describe(look));
    chooseSpan();
    place();
    update();
}

void MashChart::setLocked(bool locked) {
    setEnabled(!locked); // and quiet
}

void MashChart::focusRest() {
    if (!handles_.empty())
        handles_.front()->setFocus(Qt::OtherFocusReason);
}

void MashChart::chooseSpan() {
    const double needed = std::max(30., spans_.empty() ? 0. : spans_.back().to);
    if (!moving_ || needed > span_)
        span_ = std::ceil(needed / 10) * 10;
}

QSize MashChart::sizeHint() const {
    return {lines(*this, 34), lines(*this, hangRoom + plotRoom + 4 * panelRoom + axisRoom)};
}
QSize MashChart::minimumSizeHint() const {
    return {lines(*this, 24), sizeHint().height()};
}

QRectF MashChart::plot() const {
    return {lines(*this, leftRoom) * 1., lines(*this, hangRoom) * 1., width() - lines(*this, leftRoom + rightRoom) * 1.,
            lines(*this, plotRoom) * 1.};
}
QRectF MashChart::panelRect(std::size_t index) const {
    const QRectF above = plot();
    const double line = lines(*this, 1);
    const double top = above.bottom() + line * (axisRoom + panelRoom * static_cast<double>(index) + 1.1);
    return {above.left(), top, above.width(), line * (panelRoom - 1.35)};
}
double MashChart::x(double minute) const {
    return plot().left() + plot().width() * minute / span_;
}
double MashChart::y(double celsius) const {
    return plot().bottom() - plot().height() * (celsius - lowest) / (highest - lowest);
}
double MashChart::minutesPerPixel() const {
    return span_ / std::max(1., plot().width());
}
double MashChart::degreesPerPixel() const {
    return (highest - lowest) / std::max(1., plot().height());
}

void MashChart::place() {
    const double line = lines(*this, 1);
    for (std::size_t i = 0; i < handles_.size(); ++i) {
        const double from = x(spans_[i].from), to = std::max(x(spans_[i].to), from + line * .8);
        const double middle = y(look_.rests[i].temperature.c);
        handles_[i]->setGeometry(QRectF(from, middle - line * .5, to - from, line).toRect());
    }
}

void MashChart::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    place();
}

void MashChart::move(std::size_t rest, MashStep to) {
    const auto& rests = look_.rests;
    const Range degrees = recipeRange("temperature_c"), minutes = recipeRange("minutes");
    const double low = rest > 0 ? rests[rest - 1].temperature.c : degrees.low;
    const double high = rest + 1 < rests.size() ? rests[rest + 1].temperature.c : degrees.high;
    to.temperature.c = std::clamp(to.temperature.c, std::min(low, high), std::max(low, high));
    to.minutes.min = std::clamp(to.minutes.min, std::max(1., minutes.low), minutes.high);
    if (to == rests[rest])
        return;
    moving_ = true;
    Q_EMIT restMoved(static_cast<int>(rest), to.temperature.c, to.minutes.min);
}

void MashChart::release() {
    moving_ = false;
    chooseSpan();
    place();
    update();
    Q_EMIT restReleased();
}

std::array<MashChart::Panel, 4> MashChart::panels() const {
    const brewing::MashTrace& trace = look_.trace;
    const auto end = [&](const ArgumentValue& value) { return amount(value, look_.units); };
    return {
        Panel{tr("fermentable, % of the extract"), end(Share{last(trace.fermentable)}), &trace.fermentable, 1, percent},
        Panel{tr("dextrin, % of the extract"), end(Share{last(trace.dextrin)}), &trace.dextrin, 1, percent},
        Panel{tr("free ferulic acid, mg/L"), end(MilligramsPerLitre{last(trace.ferulic)}), &trace.ferulic,
              niceTop(largest(trace.ferulic)), 1},
        Panel{tr("beta-glucan, g/L"), end(GramsPerLitre{last(trace.betaGlucan)}), &trace.betaGlucan,
              niceTop(largest(trace.betaGlucan)), 1}};
}

void MashChart::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paintGrid(painter);
    paintTemperature(painter);
    paintHanging(painter, 0, look_.early, 0);
    if (!spans_.empty())
        paintHanging(painter, spans_.back().from, look_.late, 1);
    const auto all = panels();
    for (std::size_t i = 0; i < all.size(); ++i)
        paintPanel(painter, all[i], panelRect(i));
}

void MashChart::paintGrid(QPainter& painter) const {
    const QRectF box = plot();
    const double line = lines(*this, 1), foot = panelRect(3).bottom();
    painter.setFont(ui::font(font(), Type::small));
    for (double celsius = 40; celsius < highest; celsius += 10) {
        painter.setPen(QPen(hairline(palette()), 1));
        painter.drawLine(QPointF(box.left(), y(celsius)), QPointF(box.right(), y(celsius)));
        painter.setPen(quietText(palette()));
        painter.drawText(QRectF(0, y(celsius) - line / 2, box.left() - line * .4, line),
                         Qt::AlignRight | Qt::AlignVCenter, amount(Celsius{celsius}, look_.units));
    }
    const double tick = tickOf(span_);
    for (double minute = 0; minute <= span_; minute += tick) {
        painter.setPen(QPen(hairline(palette()), 1));
        painter.drawLine(QPointF(x(minute), box.top()), QPointF(x(minute), foot));
        painter.setPen(quietText(palette()));
        const QString words = minute > 0 ? QString::number(minute) : tr("0 min");
        painter.drawText(QRectF(x(minute) - line * 2, box.bottom() + line * .1, line * 4, line), Qt::AlignCenter,
                         words);
    }
}

void MashChart::paintTemperature(QPainter& painter) const {
    const double line = lines(*this, 1);
    QPolygonF way;
    for (std::size_t i = 0; i < spans_.size(); ++i) {
        const double high = y(look_.rests[i].temperature.c);
        way << QPointF(x(spans_[i].from), high) << QPointF(x(spans_[i].to), high);
    }
    painter.setPen(QPen(isEnabled() ? tone(palette(), Tone::proposed) : quietText(palette()), line / 7, Qt::SolidLine,
                        Qt::RoundCap, Qt::RoundJoin));
    painter.drawPolyline(way);
    painter.setFont(font());
    painter.setPen(palette().color(QPalette::WindowText));
    for (std::size_t i = 0; i < spans_.size(); ++i) {
        const MashStep& rest = look_.rests[i];
        const QString words = amount(rest.temperature, look_.units) + tr(", ") + amount(rest.minutes, look_.units);
        const double wide = painter.fontMetrics().horizontalAdvance(words);
        const double left = std::clamp((x(spans_[i].from) + x(spans_[i].to) - wide) / 2, plot().left() + line * .2,
                                       std::max(plot().left(), width() - wide - line * .2));
        painter.drawText(QPointF(left, y(rest.temperature.c) + line * 1.35), words);
    }
}

/// Grain on a thread, at the minute it goes in.
void MashChart::paintHanging(QPainter& painter, double minute, const QString& words, int row) const {
    if (words.isEmpty() || look_.rests.empty())
        return;
    const double line = lines(*this, 1), at = x(minute), top = line * (.1 + 1.15 * row);
    const Celsius meets = minute > 0 ? look_.rests.back().temperature : look_.rests.front().temperature;
    painter.setPen(QPen(quietText(palette()), 1, Qt::DotLine));
    painter.drawLine(QPointF(at, top + line * .5), QPointF(at, y(meets.c)));
    painter.setBrush(stratum(palette(), .3));
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(QPointF(at, y(meets.c)), line * .22, line * .22);
    painter.setFont(font());
    painter.setPen(palette().color(QPalette::WindowText));
    const double left = at + line * .3;
    const double room = width() - left - line * .2;
    painter.drawText(QRectF(left, top, room, line * 1.1), Qt::AlignLeft | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(words, Qt::ElideRight, static_cast<int>(room)));
}

void MashChart::paintPanel(QPainter& painter, const Panel& panel, const QRectF& box) const {
    const double line = lines(*this, 1);
    painter.setFont(ui::font(font(), Type::small));
    painter.setPen(quietText(palette()));
    painter.drawText(QRectF(box.left(), box.top() - line * 1.05, box.width(), line), Qt::AlignLeft | Qt::AlignVCenter,
                     panel.title);
    painter.drawText(QRectF(0, box.top() - line * .5, box.left() - line * .4, line), Qt::AlignRight | Qt::AlignVCenter,
                     QString::number(panel.top * panel.scale));
    painter.drawText(QRectF(0, box.bottom() - line * .5, box.left() - line * .4, line),
                     Qt::AlignRight | Qt::AlignVCenter, QString::number(0));
    painter.setPen(QPen(hairline(palette()), 1));
    painter.drawLine(box.bottomLeft(), box.bottomRight());
    QPolygonF curve;
    const std::vector<double>& minutes = look_.trace.minute;
    for (std::size_t i = 0; i < std::min(minutes.size(), panel.values->size()); ++i)
        curve << QPointF(x(std::min(minutes[i], span_)),
                         box.bottom() - box.height() * std::min(1., (*panel.values)[i] / panel.top));
    const QColor ink = tone(palette(), Tone::predicted);
    painter.setPen(QPen(ink, line / 9, look_.current ? Qt::SolidLine : Qt::DotLine));
    painter.drawPolyline(curve);
    if (curve.isEmpty())
        return;
    painter.setFont(font());
    painter.setPen(palette().color(QPalette::WindowText));
    const double level = std::clamp(curve.back().y(), box.top() + line * .2, box.bottom() - line * .2);
    painter.drawText(QRectF(box.right() + line * .4, level - line * .6, line * rightRoom, line * 1.2),
                     Qt::AlignLeft | Qt::AlignVCenter, panel.end);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chart/chart_stack.h"

#include "ui/chart/event_timeline.h"
#include "ui/chart/panel_view.h"
#include "ui/chart/reading.h"
#include "ui/widgets/paper_style.h"

#include <QBuffer>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollArea>
#include <QScrollBar>
#include <QSvgGenerator>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

constexpr double sheetLines = 62; // width of an exported sheet

/// The widget's own look, but always light: files end up on paper and in letters.
ChartStyle sheetStyle(const QWidget& widget) {
    ChartStyle style = styleOf(widget);
    style.palette = lightPalette();
    return style;
}

} // namespace

ChartStack::ChartStack(QWidget* parent)
    : QWidget(parent), scroll_(new QScrollArea(this)), timeline_(new EventTimeline(chartData_, this)) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Charts"));
    scroll_->setFrameShape(QFrame::NoFrame);
    scroll_->setFocusPolicy(Qt::NoFocus);
    scroll_->setWidgetResizable(true);
    scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
    scroll_->viewport()->setAutoFillBackground(false);
    timeline_->setGap(scroll_->verticalScrollBar()->sizeHint().width());
    auto* column = new QVBoxLayout(this);
    const int margin = lines(*this, .25);
    column->setContentsMargins(margin, margin, margin, margin);
    column->setSpacing(0);
    column->addWidget(scroll_, 1);
    column->addWidget(timeline_);
    connect(timeline_, &EventTimeline::dragged, this, [this](const TimeSpan& span) { moveSpan(span, false); });
    connect(timeline_, &EventTimeline::pointed, this, [this](Day day) { placeCursor(day, false); });
}

ChartStack::~ChartStack() = default;

void ChartStack::setData(const ChartData& chartData) {
    const bool same = chartData.subject == chartData_.subject && !panels_.empty();
    const bool wasWhole = span_ == chartData_.whole;
    chartData_ = chartData;
    stops_ = chartData_.stops();
    span_ = same && !wasWhole ? within(span_, chartData_.whole) : chartData_.whole;
    if (!same) {
        const auto later = std::upper_bound(stops_.begin(), stops_.end(), chartData_.today);
        cursor_ = later == stops_.begin() ? chartData_.today : *(later - 1);
    }
    cursor_ = std::clamp(cursor_, chartData_.whole.from, chartData_.whole.to);
    rebuild();
    Q_EMIT spanChanged();
    Q_EMIT cursorMoved(false);
}

void ChartStack::rebuild() {
    const int scrolled = scroll_->verticalScrollBar()->value();
    panels_.clear();
    auto* page = new QWidget;
    page->setAutoFillBackground(false);
    column_ = new QVBoxLayout(page);
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(0);
    for (std::size_t i = 0; i < chartData_.panels.size(); ++i) {
        auto* view = new PanelView(chartData_, i, page);
        const QString id = view->panel().id;
        view->setSpan(span_);
        view->setCursorDay(cursor_);
        view->setOpen(isOpen(id));
        connect(view, &PanelView::pointed, this, [this](Day day) { placeCursor(day, false); });
        connect(view, &PanelView::dragged, this, [this](const TimeSpan& span) { moveSpan(span, false); });
        connect(view, &PanelView::foldAsked, this, [this, id] { setOpen(id, !isOpen(id)); });
        column_->addWidget(view, 1); // what is folded keeps its height, what is plotted shares the rest
        panels_.push_back(view);
    }
    column_->addStretch(0);
    scroll_->setWidget(page); // deletes the page before
    scroll_->verticalScrollBar()->setSingleStep(lines(*this, 3));
    scroll_->verticalScrollBar()->setValue(scrolled);
    timeline_->show(span_, cursor_);
}

void ChartStack::setSpan(const TimeSpan& span) {
    const TimeSpan cut = within(span, chartData_.whole);
    if (cut == span_)
        return;
    span_ = cut;
    for (PanelView* view : panels_)
        view->setSpan(span_);
    timeline_->show(span_, cursor_);
    Q_EMIT spanChanged();
}

void ChartStack::moveCursor(Day day) {
    placeCursor(day, true);
}

void ChartStack::placeCursor(Day day, bool byKeyboard) {
    cursor_ = std::clamp(day, chartData_.whole.from, chartData_.whole.to);
    if (cursor_ < span_.from || cursor_ > span_.to) {
        const auto by = std::chrono::days{daysBetween(dayAt(span_, .5), cursor_)};
        setSpan({span_.from + by, span_.to + by});
    }
    for (PanelView* view : panels_)
        view->setCursorDay(cursor_);
    timeline_->show(span_, cursor_);
    Q_EMIT cursorMoved(byKeyboard);
}

QString ChartStack::cursorWords() const {
    if (panels_.empty())
        return {};
    QStringList sentences{eventWords(chartData_, cursor_)};
    for (const PanelView* view : panels_)
        if (view->isOpen())
            if (const QString words = panelWords(view->panel(), cursor_); !words.isEmpty())
                sentences << words;
    return sentences.join(tr(". ")) + tr(".");
}

void ChartStack::toTop() {
    scroll_->verticalScrollBar()->setValue(0);
}

void ChartStack::setOpen(const QString& panel, bool open) {
    if (open)
        folded_.remove(panel);
    else
        folded_.insert(panel);
    for (PanelView* view : panels_)
        if (view->panel().id == panel)
            view->setOpen(open);
    Q_EMIT panelsChanged();
    Q_EMIT cursorMoved(false);
}

void ChartStack::step(int by) {
    const auto at = by > 0 ? std::upper_bound(stops_.begin(), stops_.end(), cursor_)
                           : std::lower_bound(stops_.begin(), stops_.end(), cursor_);
    if (by > 0 ? at != stops_.end() : at != stops_.begin())
        placeCursor(by > 0 ? *at : *(at - 1), true);
}

void ChartStack::zoom(double factor) {
    const double before = daysBetween(span_.from, cursor_) * factor;
    const Day from = cursor_ - std::chrono::days{std::lround(before)};
    setSpan({from, from + std::chrono::days{std::lround(span_.days() * factor)}});
}

void ChartStack::pan(double part) {
    const auto by = std::chrono::days{std::lround(span_.days() * part)};
    moveSpan({span_.from + by, span_.to + by}, true);
}

void ChartStack::moveSpan(const TimeSpan& span, bool byKeyboard) {
    setSpan(span);
    if (const Day kept = std::clamp(cursor_, span_.from, span_.to); kept != cursor_)
        placeCursor(kept, byKeyboard);
}

bool ChartStack::cursorKey(QKeyEvent& event) {
    const int sign = event.key() == Qt::Key_Left ? -1 : 1;
    const auto year = std::chrono::days{365};
    switch (event.key()) {
    case Qt::Key_Left:
    case Qt::Key_Right:
        if (event.modifiers() & Qt::ControlModifier)
            placeCursor(cursor_ + sign * year, true);
        else
            step(sign);
        return true;
    case Qt::Key_Home:
        placeCursor(stops_.empty() ? chartData_.whole.from : stops_.front(), true);
        return true;
    case Qt::Key_End:
        placeCursor(stops_.empty() ? chartData_.whole.to : stops_.back(), true);
        return true;
    default:
        return false;
    }
}

bool ChartStack::spanKey(QKeyEvent& event) {
    const bool shift = event.modifiers() & Qt::ShiftModifier;
    switch (event.key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        zoom(.6);
        return true;
    case Qt::Key_Minus:
    case Qt::Key_Underscore:
        zoom(1 / .6);
        return true;
    case Qt::Key_0:
        setSpan(chartData_.whole);
        return true;
    case Qt::Key_Left:
    case Qt::Key_Right:
        if (shift)
            pan(event.key() == Qt::Key_Left ? -.25 : .25);
        return shift;
    default:
        return false;
    }
}

bool ChartStack::scrollKey(QKeyEvent& event) {
    QScrollBar& bar = *scroll_->verticalScrollBar();
    switch (event.key()) {
    case Qt::Key_Up:
        bar.triggerAction(QAbstractSlider::SliderSingleStepSub);
        return true;
    case Qt::Key_Down:
        bar.triggerAction(QAbstractSlider::SliderSingleStepAdd);
        return true;
    case Qt::Key_PageUp:
        bar.triggerAction(QAbstractSlider::SliderPageStepSub);
        return true;
    case Qt::Key_PageDown:
        bar.triggerAction(QAbstractSlider::SliderPageStepAdd);
        return true;
    default:
        return false;
    }
}

void ChartStack::keyPressEvent(QKeyEvent* event) {
    if (!spanKey(*event) && !cursorKey(*event) && !scrollKey(*event))
        QWidget::keyPressEvent(event);
}

void ChartStack::mousePressEvent(QMouseEvent*) {
    setFocus(Qt::MouseFocusReason);
}

void ChartStack::paintEvent(QPaintEvent*) {
    if (!hasFocus())
        return;
    QPainter painter(this);
    drawFocusRing(painter, QRectF(rect()), palette(), lines(*this, 1));
}

void ChartStack::focusInEvent(QFocusEvent*) {
    update();
}
void ChartStack::focusOutEvent(QFocusEvent*) {
    update();
}

void ChartStack::changeEvent(QEvent* event) {
    if (event->type() == QEvent::StyleChange || event->type() == QEvent::FontChange)
        timeline_->setGap(scroll_->verticalScrollBar()->sizeHint().width());
    QWidget::changeEvent(event);
}

ChartData ChartStack::sheetData() const {
    ChartData open = chartData_;
    std::erase_if(open.panels, [this](const ChartPanel& panel) { return !isOpen(panel.id); });
    return open;
}

QImage ChartStack::picture(double scale) const {
    return sheet(scale, sheetStyle(*this));
}

QImage ChartStack::printed(double scale) const {
    ChartStyle style = sheetStyle(*this);
    for (const QPalette::ColorRole role : {QPalette::Window, QPalette::Base})
        style.palette.setColor(role, Qt::white);
    return sheet(scale, style);
}

QImage ChartStack::sheet(double scale, const ChartStyle& style) const {
    const ChartData open = sheetData();
    const QSizeF size(sheetLines * style.line, sheetHeight(open, style));
    QImage image((size * scale).toSize(), QImage::Format_RGB32);
    image.fill(style.palette.color(QPalette::Window));
    QPainter painter(&image);
    painter.scale(scale, scale);
    paintSheet(painter, size.width(), open, span_, style);
    return image;
}

QByteArray ChartStack::svg() const {
    const ChartData open = sheetData();
    const ChartStyle style = sheetStyle(*this);
    const QSizeF size(sheetLines * style.line, sheetHeight(open, style));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator generator;
    generator.setOutputDevice(&buffer);
    generator.setSize(size.toSize());
    generator.setViewBox(QRectF(QPointF(0, 0), size));
    generator.setTitle(chartData_.subject);
    QPainter painter(&generator);
    paintSheet(painter, size.width(), open, span_, style);
    painter.end();
    return bytes;
}

} // namespace staveline::ui

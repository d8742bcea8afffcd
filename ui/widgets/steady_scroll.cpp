// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/steady_scroll.h"

#include "ui/widgets/theme.h"

#include <QApplication>
#include <QEvent>
#include <QLayout>
#include <QScrollBar>
#include <QTimer>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double fewestLines = 6;

} // namespace

SteadyScroll::SteadyScroll(QWidget* page, QWidget* parent) : QScrollArea(parent) {
    setWidgetResizable(true);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setFocusPolicy(Qt::NoFocus);
    if (page) {
        setWidget(page);
        page->setAutoFillBackground(false);
    }
    viewport()->setAutoFillBackground(false);
    connect(qApp, &QApplication::focusChanged, this, &SteadyScroll::follow);
    connect(verticalScrollBar(), &QScrollBar::valueChanged, this, [this] {
        if (!settling_)
            note();
    });
}

/// The focus leaves the page while it is taken down: nobody follows it then.
SteadyScroll::~SteadyScroll() {
    disconnect(qApp, nullptr, this, nullptr);
}

void SteadyScroll::toTop() {
    held_.clear();
    verticalScrollBar()->setValue(0);
}

void SteadyScroll::fitPage() {
    fits_ = true;
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    updateGeometry();
}

void SteadyScroll::setWhole(bool whole) {
    if (whole_ == whole)
        return;
    whole_ = whole;
    setVerticalScrollBarPolicy(whole ? Qt::ScrollBarAlwaysOff : Qt::ScrollBarAsNeeded);
    updateGeometry();
}

int SteadyScroll::pageHeight() const {
    const QWidget* page = widget();
    const int wide = viewport()->width();
    return page->hasHeightForWidth() ? page->heightForWidth(wide) : page->sizeHint().height();
}

QSize SteadyScroll::sizeHint() const {
    return fits_ || whole_ ? QSize(widget()->sizeHint().width(), pageHeight()) : minimumSizeHint();
}

QSize SteadyScroll::minimumSizeHint() const {
    const int few = lines(*this, fewestLines);
    if (!widget())
        return {few, few};
    const int wide = widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width();
    return {wide, whole_ ? pageHeight() : fits_ ? std::min(few, pageHeight()) : few};
}

void SteadyScroll::follow(QWidget*, QWidget* focus) {
    held_ = focus && widget() && widget()->isAncestorOf(focus) ? focus : nullptr;
    note();
}

void SteadyScroll::note() {
    if (held_)
        seenAt_ = held_->mapTo(viewport(), QPoint(0, 0)).y();
}

void SteadyScroll::settle() {
    if (!held_ || !held_->isVisible() || !widget()->isAncestorOf(held_))
        return;
    const int now = held_->mapTo(viewport(), QPoint(0, 0)).y();
    const bool seen = seenAt_ >= 0 && seenAt_ < viewport()->height();
    settling_ = true;
    if (seen && now != seenAt_)
        verticalScrollBar()->setValue(verticalScrollBar()->value() + now - seenAt_);
    settling_ = false;
    note();
}

bool SteadyScroll::eventFilter(QObject* watched, QEvent* event) {
    if (watched == widget() && (event->type() == QEvent::LayoutRequest || event->type() == QEvent::Resize)) {
        if (fits_ || whole_)
            updateGeometry();
        QTimer::singleShot(0, this, &SteadyScroll::settle); // when the page is laid out
    }
    return QScrollArea::eventFilter(watched, event);
}

/// A line broken elsewhere makes the page higher or lower.
void SteadyScroll::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    if (fits_ || whole_)
        updateGeometry();
}

} // namespace staveline::ui

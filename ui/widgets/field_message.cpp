// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/field_message.h"

#include "ui/widgets/message_label.h"
#include "ui/widgets/paper_style.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollArea>
#include <QTimer>
#include <QToolButton>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double widest = 26; // lines of text

/// What scrolls with the field, else the window.
QWidget* hostOf(const QWidget& field) {
    QWidget* at = field.parentWidget();
    while (at && !at->isWindow()) {
        QWidget* viewport = at->parentWidget();
        if (viewport && qobject_cast<QScrollArea*>(viewport->parentWidget()))
            return at;
        at = viewport;
    }
    return at;
}

} // namespace

FieldMessage::FieldMessage(QLineEdit& edit)
    : QFrame(edit.parentWidget()), edit_(edit), message_(new MessageLabel(this)), offer_(new QToolButton(this)) {
    auto* row = new QHBoxLayout(this);
    const int pad = lines(*this, .35);
    row->setContentsMargins(pad, pad, pad, pad);
    row->setSpacing(lines(*this, .5));
    row->addWidget(message_, 1);
    row->addWidget(offer_, 0, Qt::AlignTop);
    offer_->setVisible(false);
    setFocusPolicy(Qt::NoFocus);
    setVisible(false);
    connect(offer_, &QToolButton::clicked, this, &FieldMessage::offerTaken);
    edit_.installEventFilter(this);
}

FieldMessage::~FieldMessage() {
    disconnect(qApp, nullptr, this, nullptr);
}

void FieldMessage::say(const QString& words) {
    givesWay_ = false;
    message_->say(MessageLabel::Weight::fault, words);
    mark(!words.isEmpty());
    if (!words.isEmpty())
        connect(qApp, &QApplication::focusChanged, this, &FieldMessage::follow, Qt::UniqueConnection);
    hang();
}

void FieldMessage::clear() {
    offer({}, {});
    if (words().isEmpty())
        return;
    disconnect(qApp, nullptr, this, nullptr);
    if (host_)
        host_->removeEventFilter(this);
    host_.clear();
    say({});
}

void FieldMessage::offer(const QString& text, const QString& spoken) {
    offer_->setText(text);
    offer_->setAccessibleName(spoken);
    offer_->setVisible(!text.isEmpty());
    if (!text.isEmpty())
        hang();
}

QString FieldMessage::words() const {
    return message_->words();
}

void FieldMessage::mark(bool refused) {
    edit_.setProperty(refusedProperty, refused);
    edit_.setToolTip(words());
    edit_.update();
}

/// In the host's coordinates: below the field, above it where there is no room.
void FieldMessage::placeIn(const QWidget& host) {
    const int limit = std::min(lines(*this, widest), host.width());
    const int wide = std::min(limit, sizeHint().width() + message_->fontMetrics().horizontalAdvance(words()));
    const int high = layout()->heightForWidth(wide);
    const QPoint at = edit_.mapTo(&host, QPoint(0, 0));
    const int gap = lines(*this, .15);
    int top = at.y() + edit_.height() + gap;
    if (top + high > host.height() && at.y() - gap - high >= 0)
        top = at.y() - gap - high;
    const QRect box(std::clamp(at.x(), 0, std::max(0, host.width() - wide)), top, wide, high);
    if (geometry() != box)
        setGeometry(box);
}

void FieldMessage::hang() {
    QWidget* host = hostOf(edit_);
    if (words().isEmpty() || givesWay_ || !host || !edit_.isVisible()) {
        setVisible(false);
        return;
    }
    if (host != host_) {
        if (host_)
            host_->removeEventFilter(this);
        host_ = host;
        host_->installEventFilter(this);
    }
    if (parentWidget() != host)
        setParent(host);
    placeIn(*host);
    setVisible(true);
    raise();
}

void FieldMessage::follow(QWidget*, QWidget* focus) {
    if (!focus || words().isEmpty())
        return;
    if (focus == &edit_ || isAncestorOf(focus)) {
        givesWay_ = false;
    } else if (host_ && host_->isAncestorOf(focus)) {
        const QRect place(focus->mapTo(host_, QPoint(0, 0)), focus->size());
        givesWay_ = givesWay_ || (isVisible() && place.intersects(geometry()));
    }
    hang();
}

bool FieldMessage::eventFilter(QObject* watched, QEvent* event) {
    const auto type = event->type();
    const bool moved = type == QEvent::Resize || type == QEvent::LayoutRequest || type == QEvent::Move;
    if (!words().isEmpty() && (moved || (watched == &edit_ && (type == QEvent::Show || type == QEvent::Hide))))
        QTimer::singleShot(0, this, &FieldMessage::hang); // when the layout is done
    return QFrame::eventFilter(watched, event);
}

/// What lies below it is what was meant.
void FieldMessage::mousePressEvent(QMouseEvent* event) {
    givesWay_ = true;
    const QPoint at = mapToParent(event->pos());
    hang();
    QWidget* below = host_ ? host_->childAt(at) : nullptr;
    if (below && below->focusPolicy() & Qt::ClickFocus)
        below->setFocus(Qt::MouseFocusReason);
}

void FieldMessage::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const double u = lines(*this, 1) / 16.0;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(tone(palette(), Tone::fault), u));
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRoundedRect(QRectF(rect()).adjusted(u, u, -u, -u), 3 * u, 3 * u);
}

} // namespace staveline::ui

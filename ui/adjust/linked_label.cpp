// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/linked_label.h"

#include "ui/widgets/paper_style.h"
#include "ui/widgets/theme.h"

#include <QEvent>
#include <QKeyEvent>
#include <QPainter>

namespace staveline::ui {

LinkedLabel::LinkedLabel(QWidget* parent) : QLabel(parent) {
    setWordWrap(true);
    setTextFormat(Qt::RichText);
    connect(this, &QLabel::linkActivated, this, [this](const QString& link) {
        if (const auto origin = originOf(link))
            Q_EMIT asked(*origin);
    });
}

void LinkedLabel::put(const QString& html, const QString& words, bool links) {
    words_ = words;
    setText(html);
    setTextInteractionFlags(links ? Qt::LinksAccessibleByKeyboard | Qt::LinksAccessibleByMouse
                                  : Qt::TextInteractionFlags(Qt::NoTextInteraction));
    setFocusPolicy(links ? Qt::StrongFocus : Qt::NoFocus);
    setAccessibleName(words);
    if (links && hasFocus())
        QLabel::focusNextPrevChild(true); // new words have a first link too
    setAccessibleDescription(links ? tr("Arrow keys go from number to number, Enter shows where one comes from")
                                   : QString());
}

void LinkedLabel::say(const Message& message, const DisplayUnits& units) {
    put(linkedHtml(message, units), ui::text(message, units), hasLinks(message));
}

void LinkedLabel::say(const Message& message, const Origin& origin, const DisplayUnits& units) {
    if (!origin || hasLinks(message))
        say(message, units);
    else
        put(wholeLinkHtml(message, origin, units), ui::text(message, units), true);
}

bool LinkedLabel::focusNextPrevChild(bool next) {
    return QWidget::focusNextPrevChild(next); // Tab leaves; QLabel would go from link to link
}

void LinkedLabel::focusInEvent(QFocusEvent* event) {
    QLabel::focusInEvent(event);
    if (event->reason() != Qt::MouseFocusReason && !hasSelectedText())
        QLabel::focusNextPrevChild(true); // the first link
}

void LinkedLabel::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Right:
    case Qt::Key_Left:
        QLabel::focusNextPrevChild(event->key() == Qt::Key_Right);
        break;
    default:
        QLabel::keyPressEvent(event);
    }
}

void LinkedLabel::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !text().isEmpty()) {
        const QString html = text(); // links keep the colour they were laid out with
        setText({});
        setText(html);
    }
}

void LinkedLabel::paintEvent(QPaintEvent* event) {
    QLabel::paintEvent(event);
    if (!hasFocus())
        return;
    QPainter painter(this);
    drawFocusRing(painter, QRectF(rect()), palette(), lines(*this, 1));
}

} // namespace staveline::ui

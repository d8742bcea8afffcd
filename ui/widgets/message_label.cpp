// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/message_label.h"

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>

namespace staveline::ui {
namespace {

Glyph glyphOf(MessageLabel::Weight weight) {
    switch (weight) {
    case MessageLabel::Weight::fault:
        return Glyph::fault;
    case MessageLabel::Weight::warning:
        return Glyph::warning;
    case MessageLabel::Weight::planB:
        return Glyph::planB;
    case MessageLabel::Weight::note:
        break;
    }
    return Glyph::note;
}

} // namespace

MessageLabel::MessageLabel(QWidget* parent) : QWidget(parent), glyph_(new QLabel(this)), text_(new QLabel(this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .35));
    row->addWidget(glyph_, 0, Qt::AlignTop);
    row->addWidget(text_, 1);
    text_->setWordWrap(true);
    text_->setTextFormat(Qt::PlainText);
    text_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    text_->setFocusPolicy(Qt::NoFocus);
    setVisible(false);
}

void MessageLabel::say(Weight weight, const QString& words) {
    const bool changed = words != text_->text();
    weight_ = weight;
    text_->setText(words);
    setAccessibleName(words);
    refreshGlyph();
    setVisible(!words.isEmpty());
    if (changed && !words.isEmpty()) {
        QAccessibleEvent alert(this, QAccessible::Alert);
        QAccessible::updateAccessibility(&alert);
    }
}

void MessageLabel::clear() {
    say(Weight::note, {});
}

void MessageLabel::keepRoom(double textLines) {
    QSizePolicy policy = sizePolicy();
    policy.setRetainSizeWhenHidden(true);
    setSizePolicy(policy);
    setMinimumHeight(lines(*this, textLines));
}

QString MessageLabel::words() const {
    return text_->text();
}

void MessageLabel::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange)
        refreshGlyph();
    QWidget::changeEvent(event);
}

void MessageLabel::refreshGlyph() {
    glyph_->setPixmap(glyphBeside(*this, glyphOf(weight_), .95));
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/verdict_column.h"

#include "tasting/sitting.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/target_timeline.h"
#include "ui/present/score_words.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/glyph.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace staveline::ui {

VerdictColumn::VerdictColumn(Dimension dimension, QWidget* parent)
    : QWidget(parent), dimension_(dimension), shape_(new QLabel(this)), word_(new QLabel(this)),
      reason_(new LinkedLabel(this)), timeline_(new TargetTimeline(dimension, this)), sides_(new QLabel(this)) {
    auto* name = new QLabel(nameOf(dimension), this);
    setType(*name, Type::strong);
    setType(*word_, Type::strong);
    setType(*reason_, Type::small);
    setType(*sides_, Type::small);
    sides_->setObjectName("sides");
    sides_->setForegroundRole(QPalette::PlaceholderText);
    sides_->setWordWrap(true);
    sides_->hide();
    auto* head = new QHBoxLayout;
    head->setSpacing(lines(*this, .35));
    head->addWidget(name);
    head->addStretch(1);
    head->addWidget(shape_);
    head->addWidget(word_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .15));
    column->addLayout(head);
    column->addWidget(timeline_);
    column->addWidget(reason_);
    column->addWidget(sides_);
    column->addStretch(1);
    connect(reason_, &LinkedLabel::asked, this, &VerdictColumn::asked);
}

void VerdictColumn::setVerdict(const tasting::Verdict& verdict, const DisplayUnits& units) {
    verdict_ = verdict;
    word_->setText(wordOf(verdict.kind));
    // What to do about a fault stands once, in the full answer, and not in every column.
    const tasting::FaultRule* fault =
        verdict.kind == tasting::VerdictKind::faultFirst ? tasting::builtInSheet().findFault(verdict.fault) : nullptr;
    reason_->say(fault ? say("ui.adjust.verdict.fault").with("fault", toStd(sentenceCase(qs(fault->name))))
                       : verdict.reason,
                 units);
    paintShape();
}

void VerdictColumn::setSides(const QString& words) {
    sides_->setText(words);
    sides_->setVisible(!words.isEmpty());
}

void VerdictColumn::paintShape() {
    shape_->setPixmap(glyphBeside(*this, glyphOf(verdict_), 1));
}

void VerdictColumn::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        paintShape();
}

QString VerdictColumn::word() const {
    return word_->text();
}
QString VerdictColumn::words() const {
    return tr("%1: %2. %3").arg(nameOf(dimension_), word_->text(), reason_->words());
}

} // namespace staveline::ui

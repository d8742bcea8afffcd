// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/learn_choice.h"

#include "ui/present/text.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {

LearnChoice::LearnChoice(QWidget* parent)
    : QWidget(parent), words_(new MessageLabel(this)), act_(new QPushButton(this)), reason_(new QLineEdit(this)) {
    words_->setObjectName("not learned from");
    act_->setFlat(true);
    reason_->setAccessibleName(tr("Why not"));
    reason_->setPlaceholderText(tr("why not, if you like"));
    auto* row = new QHBoxLayout;
    row->setSpacing(lines(*this, .5));
    row->addWidget(act_);
    row->addWidget(reason_, 1);
    row->addStretch(0); // while there is nothing to give a reason for, the act keeps to its side
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addWidget(words_);
    column->addLayout(row);
    connect(act_, &QPushButton::clicked, this, [this] { Q_EMIT decided(!learn_); });
    connect(reason_, &QLineEdit::editingFinished, this, &LearnChoice::finish);
}

void LearnChoice::finish() {
    if (learn_ || !reason_->isModified() || reason_->isReadOnly())
        return;
    reason_->setModified(false);
    Q_EMIT reasoned(reason_->text().simplified());
}

void LearnChoice::showUse(bool learn, const std::string& reason, bool anew) {
    learn_ = learn;
    act_->setText(learn ? tr("Do not learn from this sitting") : tr("Learn from it again"));
    reason_->setVisible(!learn);
    if (anew || learn || !reason_->isModified())
        reason_->setText(qs(reason));
    if (learn)
        words_->clear();
    else
        words_->say(MessageLabel::Weight::note, own("ui.taste.not_learned"));
}

void LearnChoice::setReadOnly(bool readOnly) {
    act_->setEnabled(!readOnly);
    reason_->setReadOnly(readOnly);
}

} // namespace staveline::ui

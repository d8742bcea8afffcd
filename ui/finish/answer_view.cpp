// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/answer_view.h"

#include "ui/widgets/theme.h"

#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {

AnswerView::AnswerView(QWidget* parent)
    : QWidget(parent), first_(new MessageLabel(this)), column_(new QVBoxLayout(this)) {
    setAccessibleName(tr("Answer"));
    first_->setObjectName("first");
    setType(*first_, Type::strong);
    column_->setContentsMargins(lines(*this, .6), lines(*this, .4), lines(*this, .4), lines(*this, .6));
    column_->setSpacing(lines(*this, .5));
    column_->addWidget(first_);
    column_->addStretch(1);
}

void AnswerView::show(const FinishAnswer& answer) {
    wait(answer.first.weight.value_or(MessageLabel::Weight::note), answer.first.words);
    page_ = new QWidget(this);
    auto* column = new QVBoxLayout(page_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    for (const AnswerPart& part : answer.parts)
        if (!part.lines.empty() || !part.number.isEmpty())
            add(*column, part);
    column_->insertWidget(1, page_);
}

void AnswerView::wait(MessageLabel::Weight weight, const QString& words) {
    delete page_;
    page_ = nullptr;
    first_->say(weight, words);
}

void AnswerView::add(QVBoxLayout& column, const AnswerPart& part) {
    auto* heading = new QLabel(part.heading, page_);
    setType(*heading, Type::strong);
    heading->setContentsMargins(0, column.count() > 0 ? lines(*this, .5) : 0, 0, 0);
    column.addWidget(heading);
    if (!part.number.isEmpty()) {
        auto* number = new QLabel(part.number, page_);
        setType(*number, Type::number);
        number->setWordWrap(true);
        column.addWidget(number);
    }
    for (const AnswerLine& line : part.lines)
        addLine(column, line);
}

void AnswerView::addLine(QVBoxLayout& column, const AnswerLine& line) {
    if (line.weight) {
        auto* message = new MessageLabel(page_);
        message->say(*line.weight, line.words);
        column.addWidget(message);
        return;
    }
    auto* label = new QLabel(line.words, page_);
    label->setWordWrap(true);
    label->setTextFormat(Qt::PlainText);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setFocusPolicy(Qt::NoFocus);
    column.addWidget(label);
}

QStringList AnswerView::words() const {
    QStringList all;
    for (const QLabel* label : findChildren<QLabel*>())
        if (!label->text().isEmpty())
            all << label->text();
    return all;
}

} // namespace staveline::ui

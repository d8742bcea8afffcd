// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/answer_panel.h"

#include "ui/present/verdict_words.h"
#include "ui/widgets/glyph.h"

#include <QCoreApplication>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

namespace staveline::ui {

using desk::FullAnswer;

namespace {

QString lineWords(const desk::AnswerLine& line, const DisplayUnits& units) {
    return QCoreApplication::translate("Answer", "%1: %2").arg(text(line.head, units), text(line.words, units));
}

} // namespace

AnswerPanel::AnswerPanel(QWidget* parent) : QWidget(parent), column_(new QVBoxLayout(this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    setVisible(false);
}

void AnswerPanel::setAnswers(const std::vector<FullAnswer>& answers, const DisplayUnits& units) {
    answers_ = answers;
    units_ = units;
    build();
}

void AnswerPanel::build() {
    delete page_;
    page_ = new QWidget(this);
    auto* column = new QVBoxLayout(page_);
    column->setContentsMargins(0, 0, 0, lines(*this, .4));
    column->setSpacing(lines(*this, .3));
    for (const FullAnswer& answer : answers_)
        add(*column, answer);
    column_->addWidget(page_);
    setVisible(!answers_.empty());
}

void AnswerPanel::add(QVBoxLayout& column, const FullAnswer& answer) {
    auto* head = new QHBoxLayout;
    auto* shape = new QLabel(page_);
    shape->setPixmap(glyphBeside(*this, glyphOf(answer.verdict), 1.1));
    auto* title = new QLabel(text(answer.title, units_), page_);
    title->setWordWrap(true);
    setType(*title, Type::strong);
    head->setSpacing(lines(*this, .4));
    head->addWidget(shape, 0, Qt::AlignTop);
    head->addWidget(title, 1);
    column.addLayout(head);
    for (const desk::AnswerLine& line : answer.lines) {
        auto* words = new QLabel(lineWords(line, units_), page_);
        words->setWordWrap(true);
        column.addWidget(words);
    }
}

void AnswerPanel::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange && !answers_.empty())
        build();
}

QStringList AnswerPanel::words() const {
    QStringList all;
    for (const FullAnswer& answer : answers_) {
        all << text(answer.title, units_);
        for (const desk::AnswerLine& line : answer.lines)
            all << lineWords(line, units_);
    }
    return all;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/more_notes.h"

#include "ui/adjust/linked_label.h"
#include "ui/adjust/plan_in_view.h"
#include "ui/widgets/theme.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

QStringList wordsIn(const QWidget* page) {
    QStringList all;
    if (page)
        for (const LinkedLabel* label : page->findChildren<LinkedLabel*>())
            all << label->words();
    return all;
}

} // namespace

MoreNotes::MoreNotes(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), change_(new QPushButton(tr("What would change it"), this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    change_->setCheckable(true);
    column->addWidget(change_, 0, Qt::AlignLeft);
    connect(change_, &QPushButton::toggled, this, [this](bool open) {
        if (changes_)
            changes_->setVisible(open);
    });
    clear();
}

QWidget* MoreNotes::makeList(const std::vector<Message>& messages, const QString& empty) {
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .25));
    for (const Message& message : messages) {
        auto* label = new LinkedLabel(page);
        label->say(message, session_.units());
        connect(label, &LinkedLabel::asked, this, &MoreNotes::explainAsked);
        column->addWidget(label);
    }
    if (messages.empty() && !empty.isEmpty()) {
        auto* label = new QLabel(empty, page);
        label->setWordWrap(true);
        column->addWidget(label);
    }
    return page;
}

void MoreNotes::clear() {
    for (QWidget** page : {&notes_, &changes_}) {
        if (*page)
            (*page)->deleteLater();
        if (*page)
            (*page)->hide();
        *page = nullptr;
    }
    setVisible(false);
}

void MoreNotes::setAnswer(const Answer& answer) {
    clear();
    if (!answer.advice)
        return;
    auto* column = static_cast<QVBoxLayout*>(layout());
    const auto notes = notesBeside(answer);
    notes_ = makeList(notes, {});
    column->insertWidget(0, notes_);
    notes_->setVisible(!notes.empty());
    changes_ = makeList(answer.wouldChange, own(answer.settled ? "ui.adjust.change.nothing" : "ui.adjust.working"));
    column->addWidget(changes_);
    changes_->setVisible(change_->isChecked());
    setVisible(true);
}

QStringList MoreNotes::words() const {
    return wordsIn(notes_);
}
QStringList MoreNotes::changeWords() const {
    return wordsIn(changes_);
}

} // namespace staveline::ui

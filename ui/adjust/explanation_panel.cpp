// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/explanation_panel.h"

#include "ui/adjust/linked_label.h"
#include "ui/present/verdict_words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::ui {
namespace {

/// A number among its own inputs leads nowhere.
Message withoutLinksTo(Message message, const Origin& origin) {
    for (Argument& argument : message.arguments)
        if (argument.origin == origin)
            argument.origin = {};
    return message;
}

} // namespace

ExplanationPanel::ExplanationPanel(Session& session, QWidget* parent)
    : QFrame(parent), session_(session), back_(new QPushButton(tr("Back"), this)),
      close_(new QPushButton(tr("Close (Esc)"), this)), title_(new QLabel(this)), formula_(new QLabel(this)),
      source_(new QLabel(this)), column_(new QVBoxLayout(this)) {
    setAccessibleName(tr("Where this number comes from"));
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(lines(*this, .4));
    auto* head = new QLabel(tr("Where this number comes from"), this);
    setType(*head, Type::small);
    head->setForegroundRole(QPalette::PlaceholderText);
    head->setWordWrap(true);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(back_);
    buttons->addWidget(close_);
    buttons->addStretch(1);
    setType(*title_, Type::strong);
    setType(*source_, Type::small);
    source_->setObjectName("source");
    for (QLabel* label : {title_, formula_, source_})
        label->setWordWrap(true);
    source_->setForegroundRole(QPalette::PlaceholderText);
    column_->addWidget(head);
    column_->addWidget(title_);
    column_->addWidget(formula_);
    column_->addWidget(source_);
    column_->addLayout(buttons);
    column_->addStretch(1);
    connect(back_, &QPushButton::clicked, this, &ExplanationPanel::back);
    connect(close_, &QPushButton::clicked, this, &ExplanationPanel::leave);
}

void ExplanationPanel::open(const Answer& answer, int proposal, int move, const Origin& origin) {
    answer_ = answer;
    proposal_ = proposal;
    move_ = move;
    trail_.clear();
    follow(origin);
}

void ExplanationPanel::follow(const Origin& origin) {
    trail_.push_back(origin);
    showTop();
}

void ExplanationPanel::showTop() {
    if (!answer_.advice)
        return;
    const advice::ExplanationSubject subject{answer_.job->input, *answer_.advice, proposal_,
                                             static_cast<std::size_t>(move_)};
    const auto link = explain(subject, trail_.back());
    if (link)
        showLink(*link);
    else
        showLink({link.error().cause, link.error().remedy, {}, {}});
    back_->setVisible(trail_.size() > 1);
    const auto labels = inputs();
    QWidget* next = close_;
    for (LinkedLabel* label : labels)
        if (next == close_ && label->focusPolicy() != Qt::NoFocus)
            next = label;
    next->setFocus(Qt::OtherFocusReason);
}

void ExplanationPanel::showLink(const advice::Explanation& link) {
    title_->setText(session_.words(link.title));
    formula_->setText(session_.words(link.formula));
    formula_->setVisible(!formula_->text().isEmpty());
    source_->setText(link.source.empty() ? own("ui.adjust.explanation.book") : tr("Source: %1").arg(qs(link.source)));
    if (inputs_) {
        inputs_->hide();
        inputs_->deleteLater(); // the link that was followed is in it
    }
    inputs_ = new QWidget(this);
    auto* rows = new QVBoxLayout(inputs_);
    rows->setContentsMargins(lines(*this, .6), 0, 0, 0);
    const Origin& here = trail_.back();
    for (const advice::ExplanationInput& input : link.inputs) {
        auto* label = new LinkedLabel(inputs_);
        label->say(withoutLinksTo(input.text, here), input.origin == here ? Origin() : input.origin, session_.units());
        connect(label, &LinkedLabel::asked, this, &ExplanationPanel::follow);
        rows->addWidget(label);
    }
    column_->insertWidget(3, inputs_);
    inputs_->show();
    setAccessibleDescription(title_->text());
}

void ExplanationPanel::back() {
    if (trail_.size() <= 1) {
        leave();
        return;
    }
    trail_.pop_back();
    showTop();
}

void ExplanationPanel::leave() {
    trail_.clear();
    Q_EMIT closed();
}

void ExplanationPanel::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_Backspace)
        back();
    else
        QFrame::keyPressEvent(event);
}

QString ExplanationPanel::title() const {
    return title_->text();
}
QList<LinkedLabel*> ExplanationPanel::inputs() const {
    return inputs_ ? inputs_->findChildren<LinkedLabel*>() : QList<LinkedLabel*>();
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/proposal_list.h"

#include "ui/adjust/linked_label.h"
#include "ui/adjust/score_table.h"
#include "ui/adjust/verdict_words.h"
#include "ui/widgets/message_label.h"

#include <QButtonGroup>
#include <QEvent>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QRadioButton>
#include <QTimer>
#include <QVBoxLayout>

namespace staveline::ui {

using advice::Proposal;

namespace {

constexpr std::chrono::milliseconds quietTime{200}; // no slider moved for that long

void discard(QWidget*& widget) {
    if (!widget)
        return;
    widget->hide();
    widget->deleteLater(); // a signal from inside may be under way
    widget = nullptr;
}

} // namespace

ProposalList::ProposalList(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), column_(new QVBoxLayout(this)), later_(new QTimer(this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(lines(*this, .5));
    setAccessibleName(tr("Proposals"));
    later_->setSingleShot(true);
    later_->setInterval(quietTime);
    connect(later_, &QTimer::timeout, this, &ProposalList::showDetail);
}

int ProposalList::count() const {
    return answer_.advice ? static_cast<int>(answer_.advice->proposals.size()) : 0;
}

const Proposal* ProposalList::proposal(int number) const {
    if (!answer_.advice || number < 0 || number > count())
        return nullptr;
    return number == 0 ? &answer_.advice->leaveAlone : &answer_.advice->proposals[static_cast<std::size_t>(number - 1)];
}

void ProposalList::clear() {
    answer_ = {};
    cards_.clear();
    own_ = nullptr;
    discard(list_);
    discard(detail_);
}

void ProposalList::setAnswer(const Answer& answer) {
    const bool hadFocus = isAncestorOf(focusWidget());
    const bool first = empty();
    clear();
    answer_ = answer;
    if (!answer_.advice)
        return;
    list_ = new QWidget(this);
    auto* rows = new QVBoxLayout(list_);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(lines(*this, .4));
    group_ = new QButtonGroup(list_);
    for (int number = 1; number <= count(); ++number)
        cards_.push_back(makeCard(number, *proposal(number)));
    cards_.push_back(makeCard(0, *proposal(0)));
    for (const Card& card : cards_)
        rows->addWidget(card.frame);
    makeOwn();
    rows->addWidget(own_);
    connect(group_, &QButtonGroup::idClicked, this, [this](int id) {
        if (id <= count())
            Q_EMIT picked(id);
    });
    column_->insertWidget(0, list_);
    list_->show();
    choose(first ? (count() > 0 ? 1 : 0) : chosen_ > count() ? 0 : chosen_);
    if (hadFocus)
        focusChosen();
}

ProposalList::Card ProposalList::makeCard(int number, const Proposal& proposal) {
    Card card{number, new QFrame(list_)};
    const QString title = sentenceCase(session_.words(proposal.title));
    card.radio = new QRadioButton(number > 0 ? QString::number(number) : title, card.frame);
    card.radio->setAccessibleName(number > 0 ? tr("Proposal %1: %2").arg(QString::number(number), title) : title);
    card.radio->setObjectName(QStringLiteral("proposal %1").arg(number));
    group_->addButton(card.radio, number);
    card.scores = new ScoreTable(card.frame);
    card.scores->setBands(forecastBandsOf(proposal, answer_.settled));
    card.radio->setAccessibleDescription(card.scores->sentence());
    auto* column = new QVBoxLayout(card.frame);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .1));
    auto* head = new QHBoxLayout;
    head->addWidget(card.radio, 0, Qt::AlignTop);
    column->addLayout(head);
    if (number > 0) {
        card.title = new QLabel(title, card.frame);
        card.title->setWordWrap(true);
        setType(*card.title, Type::strong);
        head->addWidget(card.title, 1);
    }
    column->addWidget(card.scores);
    card.frame->installEventFilter(this);
    return card;
}

void ProposalList::makeOwn() {
    own_ = new QRadioButton(tr("Your own setting"), list_);
    own_->setObjectName(QStringLiteral("proposal own"));
    group_->addButton(own_, count() + 1);
}

bool ProposalList::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::MouseButtonRelease)
        for (const Card& card : cards_)
            if (card.frame == watched)
                card.radio->click();
    return QWidget::eventFilter(watched, event);
}

void ProposalList::choose(int number, bool lazily) {
    chosen_ = number;
    if (!own_)
        return;
    own_->setEnabled(number == own); // it keeps its place: nothing moves while a slider does
    // As Qt does from the first key on: Tab comes to the chosen one, the arrow keys to the others.
    for (const Card& card : cards_)
        card.radio->setFocusPolicy(card.number == number ? Qt::StrongFocus : Qt::ClickFocus);
    if (number == own)
        own_->setChecked(true);
    else if (QRadioButton* at = radio(number))
        at->setChecked(true);
    if (lazily)
        later_->start();
    else
        showDetail();
}

void ProposalList::postpone() {
    if (later_->isActive())
        later_->start();
}

void ProposalList::focusChosen() {
    if (QRadioButton* at = chosen_ == own ? own_ : radio(chosen_))
        at->setFocus(Qt::OtherFocusReason);
}

QRadioButton* ProposalList::radio(int number) const {
    for (const Card& card : cards_)
        if (card.number == number)
            return card.radio;
    return nullptr;
}

ScoreTable* ProposalList::scores(int number) const {
    for (const Card& card : cards_)
        if (card.number == number)
            return card.scores;
    return nullptr;
}

void ProposalList::showDetail() {
    later_->stop();
    discard(detail_);
    const Proposal* shown = proposal(chosen_);
    if (!shown)
        return;
    detail_ = new QWidget(this);
    auto* column = new QVBoxLayout(detail_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .25));
    addMoves(*column, *shown);
    addMessages(*column, tr("Why"), shown->reasons);
    addMessages(*column, tr("Its limits"), shown->limits);
    for (const Message& caution : shown->cautions) {
        auto* label = new MessageLabel(detail_);
        label->say(MessageLabel::Weight::warning, session_.words(caution));
        column->addWidget(label);
    }
    column_->insertWidget(1, detail_);
    detail_->show();
}

void ProposalList::addMoves(QVBoxLayout& column, const Proposal& proposal) {
    if (proposal.moves.empty())
        return;
    auto* head = new QLabel(tr("What changes"), detail_);
    setType(*head, Type::strong);
    column.addWidget(head);
    for (std::size_t i = 0; i < proposal.moves.size(); ++i)
        addMessage(column, proposal.moves[i].wording, static_cast<int>(i));
}

void ProposalList::addMessages(QVBoxLayout& column, const QString& title, const std::vector<Message>& messages,
                               int move) {
    if (messages.empty())
        return;
    auto* head = new QLabel(title, detail_);
    setType(*head, Type::strong);
    column.addWidget(head);
    for (const Message& message : messages)
        addMessage(column, message, move);
}

void ProposalList::addMessage(QVBoxLayout& column, const Message& message, int move) {
    auto* label = new LinkedLabel(detail_);
    label->say(message, session_.units());
    connect(label, &LinkedLabel::asked, this,
            [this, move](const Origin& origin) { Q_EMIT explainAsked(chosen_, move, origin); });
    column.addWidget(label);
}

} // namespace staveline::ui

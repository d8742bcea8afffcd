// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/proposal_list.h"

#include "advice/cautions.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/plan_in_view.h"
#include "ui/adjust/score_line.h"
#include "ui/present/choice_words.h"
#include "ui/present/verdict_words.h"
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

std::vector<int> ProposalList::numbers() const {
    std::vector<int> all;
    for (int number = 1; number <= count(); ++number)
        all.push_back(number);
    if (!empty())
        all.push_back(0);
    if (answer_.advice && answer_.advice->usual)
        all.push_back(usual);
    return all;
}

const Proposal* ProposalList::proposal(int number) const {
    if (number == usual && answer_.advice && answer_.advice->usual)
        return &*answer_.advice->usual;
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
    rows->setSpacing(lines(*this, .35));
    group_ = new QButtonGroup(list_);
    for (const int number : numbers())
        cards_.push_back(makeCard(number, *proposal(number)));
    for (const Card& card : cards_)
        rows->addWidget(card.frame);
    makeOwn();
    rows->addWidget(own_);
    connect(group_, &QButtonGroup::idClicked, this, [this](int id) {
        for (const int number : numbers())
            if (idOf(number) == id)
                Q_EMIT picked(number);
    });
    column_->insertWidget(0, list_);
    list_->setVisible(!folded_);
    showLocked();
    const bool known = chosen_ == own || proposal(chosen_) != nullptr;
    choose(first ? (count() > 0 ? 1 : 0) : known ? chosen_ : 0);
    if (hadFocus)
        focusChosen();
}

ProposalList::Card ProposalList::makeCard(int number, const Proposal& proposal) {
    Card card{number, new QFrame(list_)};
    const QString title = sentenceCase(session_.words(proposal.title));
    card.radio = new QRadioButton(number > 0 ? QString::number(number) : title, card.frame);
    card.radio->setAccessibleName(number > 0 ? tr("Proposal %1: %2").arg(QString::number(number), title) : title);
    card.radio->setObjectName(QStringLiteral("proposal %1").arg(number));
    group_->addButton(card.radio, idOf(number));
    card.scores = new ScoreLine(card.frame);
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

int ProposalList::idOf(int number) {
    return number - usual; // Qt keeps -1 for none
}

void ProposalList::makeOwn() {
    own_ = new QRadioButton(sentenceCase(choiceName(own)), list_);
    own_->setObjectName(QStringLiteral("proposal own"));
    group_->addButton(own_, idOf(own));
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
    own_->setEnabled(number == own && !locked_); // it keeps its place: nothing moves while a slider does
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

void ProposalList::setLocked(bool locked) {
    locked_ = locked;
    showLocked();
}

void ProposalList::showLocked() {
    for (const Card& card : cards_)
        card.frame->setEnabled(!locked_);
    if (own_)
        own_->setEnabled(chosen_ == own && !locked_);
}

void ProposalList::setFolded(bool folded) {
    folded_ = folded;
    if (list_)
        list_->setVisible(!folded);
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

ScoreLine* ProposalList::scores(int number) const {
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
    addMessages(*column, tr("Why"), shown->reasons);
    addMessages(*column, tr("Its limits"), limitsBeside(answer_, *shown));
    const auto cautions =
        chosen_ == 0 ? advice::cautionsOf(*shown) : advice::addedCautions(*shown, answer_.advice->leaveAlone);
    for (const Message& caution : cautions) {
        auto* label = new MessageLabel(detail_);
        label->say(MessageLabel::Weight::warning, session_.words(caution));
        column->addWidget(label);
    }
    column_->insertWidget(1, detail_);
    detail_->show();
}

void ProposalList::addMessages(QVBoxLayout& column, const QString& title, const std::vector<Message>& messages) {
    if (messages.empty())
        return;
    auto* head = new QLabel(title, detail_);
    setType(*head, Type::strong);
    column.addWidget(head);
    for (const Message& message : messages)
        addMessage(column, message);
}

void ProposalList::addMessage(QVBoxLayout& column, const Message& message) {
    auto* label = new LinkedLabel(detail_);
    if (chosen_ == usual) // no explanations are kept of it
        label->say(say("desk.plain").with("text", staveline::render(message, session_.units())), session_.units());
    else
        label->say(message, session_.units());
    connect(label, &LinkedLabel::asked, this, [this](const Origin& origin) { Q_EMIT explainAsked(chosen_, origin); });
    column.addWidget(label);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// How the Adjust page is put together.
#include "ui/adjust/page.h"

#include "ui/adjust/decision_panel.h"
#include "ui/adjust/draw_day_page.h"
#include "ui/adjust/explanation_panel.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/more_notes.h"
#include "ui/adjust/permissions.h"
#include "ui/adjust/proposal_text.h"
#include "ui/adjust/stock_list.h"
#include "ui/adjust/target_form.h"
#include "ui/adjust/target_timeline.h"
#include "ui/adjust/total_bar.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/reading_order.h"

#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/wrap_layout.h"
#include <QAction>
#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>

#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr double leastWidth = 56, leastHeight = 26; // lines of text, for two columns that scroll by themselves

SteadyScroll* scrolling(QWidget* page, const QString& name, QWidget* parent) {
    auto* area = new SteadyScroll(page, parent);
    area->setAccessibleName(name);
    return area;
}

} // namespace

AdjustPage::AdjustPage(Session& session, QWidget* parent)
    : WorkPage(session, parent), advice_(new AdviceRunner(this)), trials_(new TrialRunner(this)),
      pages_(new QStackedWidget(this)), verdicts_(new VerdictPanel(this)), message_(new MessageLabel(this)),
      locked_(new MessageLabel(this)), middle_(new QStackedWidget(this)), total_(new TotalBar(session, this)) {
    auto* work = new QWidget(this);
    auto* column = new QVBoxLayout(work);
    column->setContentsMargins(0, lines(*this, .4), 0, 0);
    column->setSpacing(lines(*this, .4));
    message_->setObjectName("message");
    locked_->setObjectName("locked");
    column->addWidget(locked_);
    drawDay_ = new DrawDayPage(session, this);
    middle_->addWidget(makeAnswer());
    middle_->addWidget(scrolling(drawDay_, tr("Draw day"), this));
    column->addWidget(makeTools());
    column->addWidget(middle_, 1);
    column->addWidget(message_);
    column->addWidget(total_);
    pages_->addWidget(makeEmpty());
    pages_->addWidget(work);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    all->addWidget(pages_);
    connectParts();
}

/// Time lines, decision and alternatives. What is right of the decision goes below it where there is little room, and
/// all of it scrolls as one.
QWidget* AdjustPage::makeAnswer() {
    auto* page = new QWidget(this);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .4));
    answerRow_ = new QBoxLayout(QBoxLayout::LeftToRight);
    answerRow_->setSpacing(lines(*this, 1));
    answerRow_->addWidget(makeLeft(), 11);
    answerRow_->addWidget(makeRight(), 5);
    column->addWidget(verdicts_);
    column->addLayout(answerRow_, 1);
    return whole_ = scrolling(page, tr("What to brew, and why"), this);
}

void AdjustPage::fitRoom() {
    const int beside = left_->minimumSizeHint().width() + right_->minimumSizeHint().width() + lines(*this, 2);
    const bool narrow = width() < std::max(lines(*this, leastWidth), beside) || height() < lines(*this, leastHeight);
    answerRow_->setDirection(narrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    for (SteadyScroll* area : {left_, proposalsArea_, explanationArea_})
        area->setWhole(narrow);
    verdicts_->setRoom(height(), narrow);
}

QSize AdjustPage::minimumSizeHint() const {
    const int wide = std::max(
        {left_->minimumSizeHint().width(), right_->minimumSizeHint().width(), verdicts_->minimumSizeHint().width()});
    return {wide + lines(*this, 1), WorkPage::minimumSizeHint().height()};
}

QWidget* AdjustPage::makeEmpty() {
    auto* page = new QWidget(this);
    auto* words = new QLabel(own("ui.adjust.not_opened"), page);
    words->setWordWrap(true);
    firstFill_ = new QPushButton(tr("Record the first fill"), page);
    auto* takeover = new QPushButton(tr("Record a takeover"), page);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(firstFill_);
    buttons->addWidget(takeover);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, lines(*this, 1), 0, 0);
    column->addWidget(words);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(firstFill_, &QPushButton::clicked, this, [this] { Q_EMIT firstEntryAsked(vessel::EntryKind::refill); });
    connect(takeover, &QPushButton::clicked, this, [this] { Q_EMIT firstEntryAsked(vessel::EntryKind::opening); });
    return page;
}

QWidget* AdjustPage::makeTools() {
    auto* tools = new QWidget(this);
    auto* row = new WrapLayout(tools, lines(*this, .4));
    const auto fold = [&](const QString& words) {
        auto* button = new QPushButton(words, tools);
        button->setCheckable(true);
        row->addWidget(button);
        return button;
    };
    targetButton_ = fold(tr("Target"));
    drawDayButton_ = fold(tr("Draw day"));
    tableButton_ = fold(tr("As a table"));
    working_ = new QLabel(tools);
    working_->setObjectName("working");
    working_->setForegroundRole(QPalette::PlaceholderText);
    cancel_ = new QPushButton(tr("Stop"), tools);
    cancel_->setFlat(true);
    cancel_->setVisible(false);
    legend_ = new TimelineLegend(tools);
    row->addWidget(working_);
    row->addWidget(cancel_);
    row->addStretch();
    row->addWidget(legend_);
    return tools;
}

QWidget* AdjustPage::makeLeft() {
    auto* page = new QWidget(this);
    target_ = new TargetForm(session(), page);
    decision_ = new DecisionPanel(session(), page);
    board_ = new LeverBoard(session(), page);
    stock_ = new StockList(session(), page);
    target_->setVisible(false);
    readLast(*board_); // sixteen levers: whoever wants one of the proposals is not sent through them
    readLast(*stock_);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, lines(*this, .6), 0);
    column->addWidget(target_);
    column->addWidget(decision_);
    column->addWidget(board_);
    column->addWidget(stock_);
    column->addStretch(1);
    return left_ = scrolling(page, tr("Decision and try board"), this);
}

QWidget* AdjustPage::makeRight() {
    auto* page = new QWidget(this);
    alternativesButton_ = new QPushButton(page);
    proposals_ = new ProposalList(session(), page);
    notes_ = new MoreNotes(session(), page);
    permissions_ = new Permissions(session(), page);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(0, 0, lines(*this, .6), 0);
    column->setSpacing(lines(*this, .6));
    column->addWidget(alternativesButton_, 0, Qt::AlignLeft);
    column->addWidget(proposals_);
    column->addWidget(notes_);
    column->addWidget(permissions_);
    column->addStretch(1);
    explanation_ = new ExplanationPanel(session(), this);
    right_ = new QStackedWidget(this);
    right_->addWidget(proposalsArea_ = scrolling(page, tr("Proposals"), this));
    right_->addWidget(explanationArea_ = scrolling(explanation_, tr("Where this number comes from"), this));
    return right_;
}

void AdjustPage::connectParts() {
    connect(targetButton_, &QPushButton::clicked, this, &AdjustPage::openTarget);
    connect(drawDayButton_, &QPushButton::clicked, this, &AdjustPage::openDrawDay);
    connect(tableButton_, &QPushButton::clicked, verdicts_, &VerdictPanel::showTable);
    connect(verdicts_, &VerdictPanel::tableAsked, tableButton_, &QPushButton::setChecked);
    connect(cancel_, &QPushButton::clicked, this, [this] {
        if (advice_->busy()) {
            cancel();
        } else if (job_) {
            advice_->ask(job_);
            showWorking();
        }
    });
    connect(advice_, &AdviceRunner::answered, this, &AdjustPage::showAnswer);
    connect(advice_, &AdviceRunner::ended, this, &AdjustPage::endWork);
    connect(trials_, &TrialRunner::deepened, this, &AdjustPage::showDeep);
    connect(board_, &LeverBoard::triedChanged, this, [this] {
        touched_ = true;
        tryValues();
    });
    connect(board_, &LeverBoard::halfTyped, this, [this] {
        touched_ = true;
        showAdoptable();
    });
    connect(board_, &LeverBoard::failed, this, &AdjustPage::say);
    connect(stock_, &StockList::failed, this, &AdjustPage::say);
    connect(permissions_, &Permissions::failed, this, &AdjustPage::say);
    connect(permissions_, &Permissions::mostMovedChanged, this, &AdjustPage::askAnew);
    connect(decision_, &DecisionPanel::tasteAsked, this, &AdjustPage::tasteAsked);
    connect(decision_, &DecisionPanel::explainAsked, this,
            [this](int move, const Origin& origin) { explainNumber(proposals_->chosen(), move, origin); });
    connect(alternativesButton_, &QPushButton::clicked, this, [this] { openAlternatives(!alternativesOpen_); });
    connect(proposals_, &ProposalList::picked, this, &AdjustPage::pick);
    connect(proposals_, &ProposalList::explainAsked, this,
            [this](int number, const Origin& origin) { explainNumber(number, 0, origin); });
    const auto explainChosen = [this](const Origin& origin) { explainNumber(proposals_->chosen(), 0, origin); };
    connect(verdicts_, &VerdictPanel::asked, this, explainChosen);
    connect(notes_, &MoreNotes::explainAsked, this, explainChosen);
    connect(explanation_, &ExplanationPanel::closed, this, &AdjustPage::closeExplanation);
    connect(total_, &TotalBar::resetAsked, this, &AdjustPage::asNow);
    connect(total_, &TotalBar::adoptAsked, this, &AdjustPage::adopt);
    connect(drawDay_, &DrawDayPage::tasteAsked, this, &AdjustPage::tasteAsked);
    connect(drawDay_, &DrawDayPage::drawAsked, this, &AdjustPage::drawAsked);
}

void AdjustPage::addToMenu(const QList<QAction*>& actions) {
    auto* copy = new QAction(tr("&Copy the proposal"), proposals_);
    connect(copy, &QAction::triggered, this, [this] {
        if (const advice::Proposal* chosen = proposals_->proposal(proposals_->chosen()))
            QGuiApplication::clipboard()->setText(proposalText(*chosen, session()));
    });
    proposals_->addAction(copy);
    proposals_->addActions(actions);
    proposals_->setContextMenuPolicy(Qt::ActionsContextMenu);
}

void AdjustPage::showEmpty(bool empty) {
    pages_->setCurrentIndex(empty ? 0 : 1);
}

} // namespace staveline::ui

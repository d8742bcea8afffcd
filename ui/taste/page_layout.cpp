// SPDX-License-Identifier: GPL-3.0-or-later
// The parts of the Taste page and what they tell it.
#include "ui/taste/anchor_scale.h"
#include "ui/taste/blank_sheet.h"
#include "ui/taste/fault_list.h"
#include "ui/taste/learn_choice.h"
#include "ui/taste/page.h"
#include "ui/taste/sitting_header.h"
#include "ui/taste/sitting_summary.h"
#include "ui/taste/taster_grid.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPointer>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>
#include <QVBoxLayout>

#include <chrono>

namespace staveline::ui {
namespace {

constexpr std::chrono::milliseconds pauseAfterKey{600};

} // namespace

TastePage::TastePage(Session& session, Prompt& prompt, QWidget* parent)
    : WorkPage(session, parent), pages_(new QStackedWidget(this)), blank_(new BlankSheet(session, prompt, pages_)),
      notePause_(new QTimer(this)) {
    notePause_->setSingleShot(true);
    notePause_->setInterval(pauseAfterKey);
    pages_->addWidget(work_ = makeWork());
    pages_->addWidget(empty_ = makeEmpty());
    pages_->addWidget(blank_);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(pages_);
    connectSheet();
    connectHeader();
    connectBelow();
    connect(&session, &Session::storeAsked, this, &TastePage::storeAgain);
}

QWidget* TastePage::makeWork() {
    auto* panes = new Panes(QStringLiteral("taste"), pages_);
    panes->addPane(makeLeft(), 38, 20);
    summary_ = new SittingSummary(session());
    panes->addPane(new SteadyScroll(summary_, panes), 22, 14);
    return panes;
}

QWidget* TastePage::makeLeft() {
    auto* left = new QWidget(this);
    header_ = new SittingHeader(left);
    message_ = new MessageLabel(left);
    auto* page = new QWidget(left);
    sheet_ = new ScoreSheet(page);
    faults_ = new FaultList(page);
    auto* pageColumn = new QVBoxLayout(page);
    pageColumn->setContentsMargins(0, 0, lines(*this, .6), lines(*this, .4));
    pageColumn->setSpacing(lines(*this, .5));
    pageColumn->addWidget(sheet_);
    pageColumn->addWidget(faults_);
    pageColumn->addWidget(makeBelow());
    pageColumn->addStretch(1);
    body_ = new QStackedWidget(left);
    scroll_ = new SteadyScroll(page, body_);
    grid_ = new TasterGrid(body_);
    body_->addWidget(scroll_);
    body_->addWidget(grid_);
    scale_ = new AnchorScale(left);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, lines(*this, .6), 0);
    column->setSpacing(lines(*this, .4));
    column->addWidget(header_);
    column->addWidget(makeTools());
    column->addWidget(body_, 1);
    column->addWidget(message_); // below: the lines above it stay where they are
    column->addWidget(scale_);
    return left;
}

QWidget* TastePage::makeTools() {
    auto* row = new QWidget(this);
    auto* layout = new WrapLayout(row, lines(*this, .3));
    const auto button = [&](const QString& words) {
        auto* made = new QPushButton(words, row);
        layout->addWidget(made);
        return made;
    };
    same_ = button(tr("Copy last scores (= =)"));
    same_->setToolTip(tr("The last sitting's scores of this taster for what is not scored yet"));
    long_ = button(tr("Long sheet"));
    all_ = button(tr("Side by side"));
    auto* blank = button(tr("Blank sheet"));
    layout->addStretch();
    glasses_ = new ChoiceField(row);
    glasses_->setAccessibleName(tr("Tasted at"));
    glasses_->add(tr("cold and cellar"), "both");
    glasses_->add(tr("cold only"), "cold");
    glasses_->add(tr("cellar only"), "cellar");
    layout->addWidget(glasses_);
    connect(same_, &QPushButton::clicked, this, &TastePage::sameAgain);
    connect(long_, &QPushButton::clicked, this, [this] { showLongSheet(!longWanted_); });
    connect(all_, &QPushButton::clicked, this, [this] { showAllTasters(!sideBySide_); });
    connect(blank, &QPushButton::clicked, this, [this] { showBlankSheet(true); });
    connect(glasses_, &ChoiceField::activated, this, [this] { fitSheet(); });
    return row;
}

QWidget* TastePage::makeBelow() {
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    auto* noteLabel = new QLabel(tr("Note"), part);
    note_ = new QPlainTextEdit(part);
    note_->setTabChangesFocus(true);
    note_->setUndoRedoEnabled(false);
    note_->setFixedHeight(lines(*this, 3.6));
    note_->setAccessibleName(tr("Note"));
    note_->installEventFilter(this);
    noteLabel->setBuddy(note_);
    noteWaits_ = new MessageLabel(part);
    auto* drawLabel = new QLabel(tr("Draw it?"), part);
    drawIt_ = new ChoiceField(part);
    drawIt_->setAccessibleName(tr("Draw it?"));
    drawIt_->add(tr("not decided"), "open");
    drawIt_->add(tr("yes"), "yes");
    drawIt_->add(tr("no"), "no");
    drawLabel->setBuddy(drawIt_);
    auto* draw = new QHBoxLayout;
    draw->setSpacing(lines(*this, .5));
    draw->addWidget(drawLabel);
    draw->addWidget(drawIt_);
    draw->addStretch(1);
    remove_ = new QPushButton(tr("Remove this sitting"), part);
    remove_->setFlat(true);
    draw->addWidget(remove_);
    connect(remove_, &QPushButton::clicked, this, &TastePage::removeSitting);
    column->addWidget(noteLabel);
    column->addWidget(note_);
    learn_ = new LearnChoice(part);
    column->addLayout(draw);
    column->addWidget(learn_);
    column->addWidget(noteWaits_);
    return part;
}

QWidget* TastePage::makeEmpty() {
    auto* part = new QWidget(pages_);
    auto* words = new QLabel(own("ui.taste.not_opened"), part);
    words->setWordWrap(true);
    firstFill_ = new QPushButton(tr("Record the first fill"), part);
    auto* takeover = new QPushButton(tr("Record a takeover"), part);
    auto* blank = new QPushButton(tr("Blank sheet"), part);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(firstFill_);
    buttons->addWidget(takeover);
    buttons->addWidget(blank);
    buttons->addStretch(1);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, lines(*this, 1), 0, 0);
    column->setSpacing(lines(*this, .8));
    column->addWidget(words);
    column->addLayout(buttons);
    column->addStretch(1);
    connect(firstFill_, &QPushButton::clicked, this, [this] { Q_EMIT firstEntryAsked(vessel::EntryKind::refill); });
    connect(takeover, &QPushButton::clicked, this, [this] { Q_EMIT firstEntryAsked(vessel::EntryKind::opening); });
    connect(blank, &QPushButton::clicked, this, [this] { showBlankSheet(true); });
    return part;
}

void TastePage::connectSheet() {
    connect(sheet_, &ScoreSheet::typed, this, [this](const ScoreCell* cell) { typed(*cell); });
    connect(sheet_, &ScoreSheet::finished, this, [this](const ScoreCell* cell) { keep(*cell); });
    connect(sheet_, &ScoreSheet::entered, this, [this](const ScoreCell* cell) {
        cell_ = cell;
        notice_.clear();
        sameOffered_ = false;
        showScale();
        showState();
    });
    connect(sheet_, &ScoreSheet::sameAgain, this, &TastePage::offerSameAgain);
    connect(grid_, &TasterGrid::opened, this, [this](int taster, const QString& code) {
        draft_.take(static_cast<std::size_t>(taster));
        showAllTasters(false);
        display(true);
        sheet_->focusLine(toStd(code));
    });
    connect(summary_, &SittingSummary::asked, this, [this](const QString& code) {
        showAllTasters(false);
        sheet_->focusLine(toStd(code));
    });
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* focus) { scrollToFocus(focus); });
}

void TastePage::connectHeader() {
    connect(header_, &SittingHeader::chose, this, &TastePage::openSitting);
    connect(header_, &SittingHeader::newAsked, this, &TastePage::newSitting);
    connect(header_, &SittingHeader::dayTyped, this, &TastePage::keepDay);
    connect(header_, &SittingHeader::named, this, &TastePage::nameTaster);
    connect(header_, &SittingHeader::anotherAsked, this, &TastePage::anotherTaster);
    connect(header_, &SittingHeader::took, this, [this](int taster) {
        finish();
        draft_.take(static_cast<std::size_t>(taster));
        display(true);
        scroll_->toTop(); // the sheet of another taster begins at its top
    });
    connect(header_, &SittingHeader::clicked, this, [this] {
        if (!sideBySide_)
            focusWork();
    });
}

void TastePage::connectBelow() {
    connect(faults_, &FaultList::marked, this, [this](const QString& fault, int severity) {
        draft_.setSeverity(toStd(fault), severity);
        const tasting::FaultRule* rule = tasting::builtInSheet().findFault(toStd(fault));
        store(say("ui.taste.edit.fault").with("fault", rule->name).with("vessel", begun_), "fault/" + toStd(fault));
    });
    connect(note_, &QPlainTextEdit::textChanged, this, [this] {
        draft_.setNote(toStd(note_->toPlainText()));
        note_->document()->setModified(true);
        notePause_->start();
        showState();
    });
    connect(notePause_, &QTimer::timeout, this, &TastePage::keepNote);
    connect(drawIt_, &ChoiceField::activated, this, [this] {
        const std::string word = drawIt_->word();
        draft_.setDrawIt(word == "open" ? std::nullopt : std::optional(word == "yes"));
        store(say("ui.taste.edit.draw").with("vessel", begun_), "draw");
        showState();
    });
    connect(learn_, &LearnChoice::decided, this, [this](bool learn) {
        finish();
        draft_.setLearn(learn, {});
        store(say(learn ? "ui.taste.edit.learn" : "ui.taste.edit.not_learn").with("vessel", begun_), {});
    });
    connect(learn_, &LearnChoice::reasoned, this, [this](const QString& reason) {
        draft_.setLearn(false, toStd(reason));
        store(say("ui.taste.edit.not_learn_reason").with("vessel", begun_), {});
    });
    connect(blank_, &BlankSheet::left, this, [this] { showBlankSheet(false); });
}

/// After the layout: what has the focus may have been unfolded just now.
void TastePage::scrollToFocus(QWidget* focus) {
    if (!focus || !scroll_->isAncestorOf(focus))
        return;
    QTimer::singleShot(0, this, [this, at = QPointer<QWidget>(focus)] {
        if (at)
            scroll_->ensureWidgetVisible(at, 0, lines(*this, 1.5));
    });
}

/// Undo in the note is the book's undo: what is typed is stored first.
bool TastePage::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut)
        note_->update(); // the ring around it
    if (event->type() == QEvent::FocusOut)
        keepNote();
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            keepNote();
            event->ignore();
            return true;
        }
    }
    return WorkPage::eventFilter(watched, event);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// How the window is put together, and what its actions do and when.
#include "ui/window/main_window.h"

#include "ui/adjust/page.h"
#include "ui/brew/page.h"
#include "ui/cellar/cellar_page.h"
#include "ui/cellar/start_page.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/panes.h"
#include "ui/window/book_tasks.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/notice_bar.h"
#include "ui/window/retired_menu.h"
#include "ui/window/status_line.h"
#include "ui/window/unit_menu.h"

#include <QAction>
#include <QMenuBar>
#include <QStackedWidget>
#include <QVBoxLayout>

namespace staveline::ui {

using sheet::PaperFormat;
using vessel::EntryKind;

namespace {

struct SaveAction {
    QAction* action;
    PaperFormat format;
    QString words;
};

std::vector<SaveAction> saveActions(const Actions& a) {
    return {{a.savePdf, PaperFormat::pdf, MainWindow::tr("Save as P&DF")},
            {a.saveHtml, PaperFormat::html, MainWindow::tr("Save as &HTML")},
            {a.saveMarkdown, PaperFormat::markdown, MainWindow::tr("Save as &Markdown")},
            {a.saveCsv, PaperFormat::csv, MainWindow::tr("Save as &CSV")}};
}

} // namespace

/// Notices on top, the page and its help in the middle, the status line below.
void MainWindow::makeParts() {
    auto* whole = new QWidget(this);
    notices_ = new NoticeBar(whole);
    stack_ = new QStackedWidget(whole);
    startPage_ = new StartPage(true, stack_);
    stack_->addWidget(startPage_);
    help_ = new HelpPanel(actions_->all, whole);
    help_->setVisible(false);
    status_ = new StatusLine(*actions_->undo, *actions_->redo, *actions_->help, whole);
    auto* middle = new Panes(QStringLiteral("help"), whole);
    middle->addPane(stack_, 57, 0);
    middle->addPane(help_, 19, 17);
    auto* column = new QVBoxLayout(whole);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(notices_);
    column->addWidget(middle, 1);
    column->addWidget(status_);
    setCentralWidget(whole);
    placePanes(*whole);
}

/// Every action is in a menu, so that each can be found and its key learned there.
void MainWindow::makeMenus() {
    Actions& a = *actions_;
    addActions(a.all); // keys work from everywhere
    QMenu* book = menuBar()->addMenu(tr("&Book"));
    book->addActions({a.newBook, a.openBook, a.sampleBook, a.bookFromFolder});
    recentMenu_ = book->addMenu(tr("&Recent books"));
    book->addSeparator();
    book->addActions({a.storedAlready, a.copyBook, a.calendar, a.exportBook, a.importNotes, a.checkBook, a.closeBook});
    book->addSeparator();
    book->addAction(a.quit);
    QMenu* edit = menuBar()->addMenu(tr("&Edit"));
    edit->addActions({a.undo, a.redo, a.amend, a.remove});
    edit->addSeparator();
    edit->addActions({a.find, a.findNext, a.findPrevious});
    edit->addSeparator();
    edit->addAction(a.preferences);
    QMenu* entry = menuBar()->addMenu(tr("E&ntry"));
    for (const EntryLook& look : entryLooks())
        entry->addAction(a.entries[look.kind]);
    entry->addSeparator();
    entry->addActions({a.round, a.ingredients, a.addVessel, a.changeVessel, a.rooms});
    addRetiredVessels(*entry->addMenu(tr("Bring &back into use")), [this] { return session_.get(); });
    menuBar()->addMenu(tr("&Decide"))->addActions({a.newSitting, a.sameAgain, a.adopt, a.asNow});
    QMenu* paper = menuBar()->addMenu(tr("&Paper"));
    paper->addActions({a.print, a.savePdf, a.saveHtml, a.saveMarkdown, a.saveCsv});
    paper->addSeparator();
    paper->addAction(a.brewSheet);
    paper->addActions({a.printCards, a.saveCards, a.saveLabels});
    addPaperChoices(*paper->addMenu(tr("Si&ze")), settings_, [this](PaperSize size) { setPaper(size); });
    QMenu* view = menuBar()->addMenu(tr("&View"));
    view->addAction(a.allVessels);
    view->addActions(a.workPages.values());
    view->addSeparator();
    view->addActions({a.nextVessel, a.previousVessel, a.nextPlace, a.previousPlace});
    view->addSeparator();
    addUnitChoices(*view->addMenu(tr("&Units")), settings_, [this](const DisplayUnits& units) { setUnits(units); });
    addAppearanceChoices(*view->addMenu(tr("&Colours")), settings_, [this](Appearance look) { setAppearance(look); });
    addLanguageChoices(*view->addMenu(tr("Langua&ge")), settings_, [this](const QString& code) {
        QMetaObject::invokeMethod(
            this, [this, code] { setLanguage(code); }, Qt::QueuedConnection);
    });
    menuBar()->addMenu(tr("&Help"))->addActions({a.help, a.firstSteps, a.news, a.report, a.about});
}

/// The actions that open, make, copy and close books; they work without one in hand.
void MainWindow::connectBook() {
    const auto onNew = [this] {
        if (const auto to = prompt_.fileToWrite(this, tr("A new cellar book"), bookFolder() + tr("/my cellar.cellar"),
                                                QStringLiteral(".cellar")))
            newBook(*to);
    };
    const auto onOpen = [this] {
        if (const auto book = prompt_.bookToOpen(this, bookFolder()))
            openAtWork(*book);
    };
    const auto onSample = [this] {
        if (sampleBook(samplePath()))
            cellar_->showStart();
    };
    const Actions& a = *actions_;
    connect(a.newBook, &QAction::triggered, this, onNew);
    connect(a.openBook, &QAction::triggered, this, onOpen);
    connect(a.sampleBook, &QAction::triggered, this, onSample);
    connect(startPage_, &StartPage::newAsked, this, onNew);
    connect(startPage_, &StartPage::openAsked, this, onOpen);
    connect(startPage_, &StartPage::sampleAsked, this, onSample);
    connect(startPage_, &StartPage::bookChosen, this, [this](const QString& path) { openAtWork(toStd(path)); });
    connect(a.closeBook, &QAction::triggered, this, [this] {
        if (mayLeave())
            closeBook();
    });
    connect(a.copyBook, &QAction::triggered, this, &MainWindow::copyBook);
    connect(a.calendar, &QAction::triggered, this, &MainWindow::saveCalendar);
    connect(a.checkBook, &QAction::triggered, this, &MainWindow::checkBook);
    connectExchange();
    connect(tasks_, &BookTasks::copied, this,
            [this](const std::filesystem::path& to) { status_->say(tr("Copied to %1").arg(qs(to.string()))); });
    connect(tasks_, &BookTasks::checked, this, &MainWindow::showReport);
    connect(tasks_, &BookTasks::failed, this, &MainWindow::failed);
    connect(a.storedAlready, &QAction::triggered, this,
            [this] { status_->say(tr("There is nothing to save: each entry is stored as it is made.")); });
    connect(a.preferences, &QAction::triggered, this, &MainWindow::showPreferences);
    connect(a.quit, &QAction::triggered, this, &QWidget::close);
    connectHelp();
}

/// The actions on the book in hand; they are off while there is none.
void MainWindow::connectWork() {
    const Actions& a = *actions_;
    const auto on = [this](QAction* action, auto&& act) {
        connect(action, &QAction::triggered, this, [this, act] {
            showPageAgain();
            act();
        });
    };
    on(a.undo, [this] { session_->undo(cellar_->vessel()); });
    on(a.redo, [this] { session_->redo(cellar_->vessel()); });
    on(a.allVessels, [this] { cellar_->showAll(); });
    on(a.addVessel, [this] { cellar_->addVessel(); });
    on(a.nextVessel, [this] { cellar_->stepVessel(1); });
    on(a.previousVessel, [this] { cellar_->stepVessel(-1); });
    on(a.changeVessel, [this] { cellar_->changeVessel(); });
    on(a.ingredients, [this] { cellar_->showIngredients(); });
    on(a.round, [this] { cellar_->showRound(); });
    on(a.rooms, [this] { cellar_->showRooms(); });
    for (auto it = a.workPages.begin(); it != a.workPages.end(); ++it)
        on(it.value(), [this, workPage = it.key()] {
            cellar_->showPage(workPage);
            cellar_->focusWork();
        });
    on(a.brewSheet, [this] { cellar_->showBrewSheet(); });
    on(a.newSitting, [this] {
        cellar_->showPage(PageId::taste);
        cellar_->taste().newSitting();
    });
    on(a.sameAgain, [this] {
        cellar_->showPage(PageId::taste);
        cellar_->taste().sameAgain();
    });
    on(a.adopt, [this] {
        cellar_->showPage(PageId::adjust);
        cellar_->adjust().adopt();
    });
    on(a.asNow, [this] {
        cellar_->showPage(PageId::adjust);
        cellar_->adjust().asNow();
    });
    on(a.nextPlace, [this] { cellar_->stepFocus(1); });
    on(a.previousPlace, [this] { cellar_->stepFocus(-1); });
    for (auto it = a.entries.begin(); it != a.entries.end(); ++it)
        on(it.value(), [this, kind = it.key()] { cellar_->beginEntry(kind); });
    on(a.amend, [this] { cellar_->drawRefill().amendSelected(); });
    on(a.remove, [this] { cellar_->drawRefill().removeSelected(); });
    connectFinding();
    connectPapers();
}

void MainWindow::connectFinding() {
    const auto step = [this](int by) {
        if (cellar_->workPage() == PageId::history)
            cellar_->history().findAgain(by);
        else
            cellar_->drawRefill().findAgain(by);
    };
    connect(actions_->find, &QAction::triggered, this, [this] {
        if (cellar_->atAll())
            cellar_->all().find();
        else if (cellar_->workPage() == PageId::history)
            cellar_->history().find();
        else
            cellar_->drawRefill().find();
    });
    connect(actions_->findNext, &QAction::triggered, this, [step] { step(1); });
    connect(actions_->findPrevious, &QAction::triggered, this, [step] { step(-1); });
}

void MainWindow::connectPapers() {
    connect(actions_->print, &QAction::triggered, this, [this] {
        if (const PaperInFront paper = cellar_->paperInFront(); paper.printout)
            paper.printout->print(*this);
    });
    for (const SaveAction& save : saveActions(*actions_))
        connect(save.action, &QAction::triggered, this, [this, format = save.format] {
            if (const PaperInFront paper = cellar_->paperInFront(); paper.printout)
                paper.printout->save(*this, format);
        });
    connect(actions_->printCards, &QAction::triggered, this, [this] { cellar_->cards().print(*this); });
    connect(actions_->saveCards, &QAction::triggered, this, [this] { cellar_->cards().save(*this, PaperFormat::pdf); });
    connect(actions_->saveLabels, &QAction::triggered, this,
            [this] { cellar_->labels().save(*this, PaperFormat::pdf); });
}

/// What the menus offer, where the hand is already.
void MainWindow::addContextMenus() {
    const Actions& a = *actions_;
    QWidget& ledger = cellar_->drawRefill().table();
    ledger.insertActions(ledger.actions().value(0), {a.amend, a.remove});
    ledger.addActions({a.find, a.print});
    cellar_->history().addToMenus({a.find, a.print});
    cellar_->adjust().addToMenu({a.adopt, a.brewSheet});
    cellar_->addToRail({a.changeVessel, a.addVessel, a.newSitting, a.entries[EntryKind::reading],
                        a.entries[EntryKind::drawOff], a.entries[EntryKind::refill]});
}

/// Undo and redo carry the name of what they would do.
void MainWindow::refreshActions() {
    const bool open = session_ != nullptr;
    const bool writable = open && !session_->desk().readOnly();
    for (QAction* action : actions_->needBook)
        action->setEnabled(open);
    for (QAction* action : actions_->needWriting)
        action->setEnabled(writable);
    const QString undo = open ? qs(session_->desk().undoText()) : QString();
    const QString redo = open ? qs(session_->desk().redoText()) : QString();
    actions_->undo->setEnabled(writable && !undo.isEmpty());
    actions_->redo->setEnabled(writable && !redo.isEmpty());
    actions_->undo->setText(undo.isEmpty() ? tr("&Undo") : tr("&Undo: %1").arg(withoutKeys(undo)));
    actions_->redo->setText(redo.isEmpty() ? tr("&Redo") : tr("&Redo: %1").arg(withoutKeys(redo)));
    refreshLedgerActions();
    refreshFindActions();
    refreshPaperActions();
}

QString MainWindow::whyNoLedgerAction() const {
    if (!session_)
        return tr("no book is open");
    if (session_->desk().readOnly())
        return tr("this book is open for reading only");
    if (!cellar_->atVessel() || cellar_->workPage() != PageId::drawRefill || !cellar_->drawRefill().hasSelected())
        return tr("select one in Draw && refill");
    return {};
}

/// What cannot be done now says where it can.
void MainWindow::refreshLedgerActions() {
    const QString why = whyNoLedgerAction();
    for (auto [action, words] :
         {std::pair{actions_->amend, tr("A&mend the entry")}, std::pair{actions_->remove, tr("Remo&ve the entry")}}) {
        action->setEnabled(why.isEmpty());
        action->setText(why.isEmpty() ? words : tr("%1 (%2)").arg(words, why));
    }
}

void MainWindow::refreshFindActions() {
    const bool inTable = cellar_ && cellar_->atVessel() &&
                         (cellar_->workPage() == PageId::drawRefill || cellar_->workPage() == PageId::history);
    const bool here = inTable || (cellar_ && cellar_->atAll());
    actions_->find->setEnabled(here);
    for (QAction* action : {actions_->findNext, actions_->findPrevious})
        action->setEnabled(inTable);
    actions_->find->setText(here ? tr("&Find") : tr("&Find (in Draw && refill and in History)"));
}

/// They name the paper in front; what has none says why.
void MainWindow::refreshPaperActions() {
    const PaperInFront paper = cellar_ ? cellar_->paperInFront() : PaperInFront{nullptr, tr("no book is open")};
    const auto show = [&](QAction& action, const QString& words, bool offered) {
        const QString why = paper.printout ? tr("the %1 has no such file").arg(paper.printout->name()) : paper.whyNot;
        action.setEnabled(paper.printout && offered);
        action.setText(action.isEnabled() ? tr("%1: %2\u2026").arg(words, paper.printout->name())
                                          : tr("%1 (%2)").arg(words, why));
    };
    show(*actions_->print, tr("&Print"), true);
    for (const SaveAction& save : saveActions(*actions_))
        show(*save.action, save.words, paper.printout && paper.printout->offers(save.format));
    const bool labelled = cellar_ && cellar_->workPage() == PageId::finish && cellar_->finish().labels();
    actions_->saveLabels->setEnabled(labelled);
    actions_->saveLabels->setText(labelled ? tr("Save the bottle &labels as PDF\u2026")
                                           : tr("Save the bottle &labels as PDF (of a filling that the guard lets)"));
}

} // namespace staveline::ui

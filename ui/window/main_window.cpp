// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/main_window.h"

#include "facts/sample.h"
#include "ui/adjust/page.h"
#include "ui/brew_sheet/page.h"
#include "ui/cellar/start_page.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/panes.h"
#include "ui/window/book_tasks.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"
#include "ui/window/typing_guard.h"
#include "ui/window/unit_menu.h"

#include <QAction>
#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenuBar>
#include <QPointer>
#include <QSettings>
#include <QStackedWidget>
#include <QStandardPaths>
#include <QTimer>
#include <QVBoxLayout>

namespace staveline::ui {

using desk::Desk;
using sheet::PaperFormat;

namespace {

constexpr int pollEveryMs = 1500;
constexpr int rememberAfterMs = 2000;
constexpr double leastBesideHelp = 70; // lines of text wide

QString pathText(const std::filesystem::path& path) {
    return qs(path.string());
}

/// Help stands beside the page where there is room for both, else in its place.
void makeRoomFor(const QWidget& help, QWidget& page) {
    page.setVisible(help.isHidden() || help.window()->width() >= lines(help, leastBesideHelp));
}

} // namespace

MainWindow::MainWindow(desk::Clock clock, Prompt& prompt, QSettings& settings, QWidget* parent)
    : QMainWindow(parent), clock_(std::move(clock)), prompt_(prompt), stored_(settings), settings_(load(settings)),
      actions_(std::make_unique<Actions>(*this)), tasks_(new BookTasks(clock_, this)), poll_(new QTimer(this)),
      rememberSoon_(new QTimer(this)) {
    rememberSoon_->setSingleShot(true);
    rememberSoon_->setInterval(rememberAfterMs);
    connect(rememberSoon_, &QTimer::timeout, this, &MainWindow::remember);
    new TypingGuard(actions_->entries.values(), this);
    installAccessibleRoles();
    install(*qApp, settings_.appearance);
    makeParts();
    makeMenus();
    connectBook();
    connectWork();
    connect(poll_, &QTimer::timeout, this, [this] {
        if (session_)
            session_->poll();
    });
    poll_->start(pollEveryMs);
    const QSize usable(lines(*this, 40), lines(*this, 25));
    if (!restoreGeometry(settings_.geometry) || size() != size().expandedTo(usable))
        resize(lines(*this, 76), lines(*this, 47));
    refreshActions();
}

MainWindow::~MainWindow() {
    // The views look at the session: they go first.
    delete cellar_;
    status_->follow(nullptr);
}

/// Notices on top, the page and its help in the middle, the status line below.
void MainWindow::makeParts() {
    auto* whole = new QWidget(this);
    notices_ = new NoticeBar(whole);
    stack_ = new QStackedWidget(whole);
    startPage_ = new StartPage(true, stack_);
    stack_->addWidget(startPage_);
    help_ = new HelpPanel(whole);
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
    book->addActions({a.newBook, a.openBook, a.sampleBook});
    recentMenu_ = book->addMenu(tr("Used &lately"));
    book->addSeparator();
    book->addActions({a.storedAlready, a.copyBook, a.checkBook, a.startPage});
    book->addSeparator();
    book->addAction(a.quit);
    menuBar()->addMenu(tr("&Edit"))->addActions({a.undo, a.redo, a.amend, a.remove});
    QMenu* entry = menuBar()->addMenu(tr("E&ntry"));
    for (const EntryLook& look : entryLooks())
        entry->addAction(a.entries[look.kind]);
    entry->addSeparator();
    entry->addActions({a.addVessel, a.changeVessel});
    menuBar()->addMenu(tr("&Decide"))->addActions({a.newSitting, a.sameAgain, a.adopt, a.asNow});
    QMenu* sheet = menuBar()->addMenu(tr("Brew &sheet"));
    sheet->addActions({a.brewSheet, a.print, a.savePdf, a.saveHtml, a.saveMarkdown, a.saveCsv});
    addPaperChoices(*sheet->addMenu(tr("Pape&r")), settings_, [this](PaperSize size) { setPaper(size); });
    QMenu* view = menuBar()->addMenu(tr("&View"));
    view->addActions(a.workPages.values());
    view->addSeparator();
    view->addActions({a.nextVessel, a.previousVessel, a.nextPlace, a.previousPlace});
    view->addSeparator();
    addUnitChoices(*view->addMenu(tr("&Units")), settings_, [this](const DisplayUnits& units) { setUnits(units); });
    addAppearanceChoices(*view->addMenu(tr("&Colours")), settings_, [this](Appearance look) { setAppearance(look); });
    menuBar()->addMenu(tr("&Help"))->addActions({a.help, a.about});
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
            openBook(*book);
    };
    const auto onSample = [this] { sampleBook(samplePath()); };
    const Actions& a = *actions_;
    connect(a.newBook, &QAction::triggered, this, onNew);
    connect(a.openBook, &QAction::triggered, this, onOpen);
    connect(a.sampleBook, &QAction::triggered, this, onSample);
    connect(startPage_, &StartPage::newAsked, this, onNew);
    connect(startPage_, &StartPage::openAsked, this, onOpen);
    connect(startPage_, &StartPage::sampleAsked, this, onSample);
    connect(startPage_, &StartPage::bookChosen, this, [this](const QString& path) { openBook(toStd(path)); });
    connect(a.startPage, &QAction::triggered, this, [this] {
        if (mayLeave())
            closeBook();
    });
    connect(a.copyBook, &QAction::triggered, this, &MainWindow::copyBook);
    connect(a.checkBook, &QAction::triggered, this, &MainWindow::checkBook);
    connect(tasks_, &BookTasks::copied, this,
            [this](const std::filesystem::path& to) { status_->say(tr("Copied to %1").arg(pathText(to))); });
    connect(tasks_, &BookTasks::checked, this, &MainWindow::showReport);
    connect(tasks_, &BookTasks::failed, this, &MainWindow::failed);
    connect(a.storedAlready, &QAction::triggered, this,
            [this] { status_->say(tr("There is nothing to save: each entry is stored as it is made.")); });
    connect(a.quit, &QAction::triggered, this, &QWidget::close);
    connect(a.help, &QAction::triggered, this, &MainWindow::toggleHelp);
    connect(help_, &HelpPanel::closed, this, &MainWindow::toggleHelp);
    connect(a.about, &QAction::triggered, this, &MainWindow::about);
}

/// The actions on the book in hand; they are off while there is none.
void MainWindow::connectWork() {
    const Actions& a = *actions_;
    const auto on = [this](QAction* action, auto&& act) { connect(action, &QAction::triggered, this, act); };
    on(a.undo, [this] { session_->undo(); });
    on(a.redo, [this] { session_->redo(); });
    on(a.addVessel, [this] { cellar_->addVessel(); });
    on(a.nextVessel, [this] { cellar_->stepVessel(1); });
    on(a.previousVessel, [this] { cellar_->stepVessel(-1); });
    on(a.changeVessel, [this] { cellar_->changeVessel(); });
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
    on(a.print, [this] { cellar_->brewSheet().print(); });
    on(a.savePdf, [this] { cellar_->brewSheet().save(PaperFormat::pdf); });
    on(a.saveHtml, [this] { cellar_->brewSheet().save(PaperFormat::html); });
    on(a.saveMarkdown, [this] { cellar_->brewSheet().save(PaperFormat::markdown); });
    on(a.saveCsv, [this] { cellar_->brewSheet().save(PaperFormat::csv); });
}

void MainWindow::start(const std::optional<std::filesystem::path>& book) {
    startPage_->setRecent(settings_.recent);
    fillRecent();
    if (book) {
        openBook(*book);
    } else if (!settings_.lastBook.isEmpty() && QFileInfo::exists(settings_.lastBook)) {
        const facts::VesselName vessel = toStd(settings_.lastVessel);
        const PageId workPage = settings_.lastPage;
        if (openBook(toStd(settings_.lastBook)) && cellar_) {
            cellar_->showVessel(vessel);
            cellar_->brew().showPart(settings_.brewPart);
            cellar_->history().showFace(settings_.historyFace);
            cellar_->showPage(workPage);
        }
    }
}

void MainWindow::placePanes(QWidget& in) {
    for (Panes* panes : in.findChildren<Panes*>()) {
        panes->takeWidths(settings_.splits.value(panes->objectName()));
        connect(panes, &QSplitter::splitterMoved, rememberSoon_, qOverload<>(&QTimer::start));
    }
}

/// One that was never seen, or of which a part is hidden, keeps what was known of it.
void MainWindow::keepPanes() {
    for (const Panes* panes : findChildren<Panes*>())
        if (const QList<int> widths = panes->madeWidths(); !widths.isEmpty())
            settings_.splits[panes->objectName()] = widths;
}

/// Where the brewer looks: above the open book, or on the first page.
bool MainWindow::failed(const Fault& fault) {
    const QString words = text(fault, settings_.units);
    if (session_)
        notices_->showFault(words);
    else
        startPage_->say(words);
    return false;
}

bool MainWindow::openBook(const std::filesystem::path& path) {
    if (!mayLeave())
        return false;
    auto desk = Desk::open(path, clock_);
    if (!desk)
        return failed(desk.error());
    take(std::move(*desk));
    return true;
}

bool MainWindow::newBook(const std::filesystem::path& path) {
    if (!mayLeave())
        return false;
    auto desk = Desk::create(path, clock_);
    if (!desk)
        return failed(desk.error());
    take(std::move(*desk));
    cellar_->addVessel();
    return true;
}

bool MainWindow::sampleBook(const std::filesystem::path& path) {
    std::error_code ignored;
    if (std::filesystem::exists(path, ignored))
        return openBook(path);
    if (!mayLeave())
        return false;
    std::filesystem::create_directories(path.parent_path(), ignored);
    auto desk = Desk::create(path, clock_);
    if (!desk)
        return failed(desk.error());
    const auto facts = facts::sampleCellar((*desk)->today());
    if (!facts)
        return failed(facts.error());
    if (const auto recorded = (*desk)->record(*facts); !recorded)
        return failed(recorded.error());
    take(std::move(*desk));
    return true;
}

/// What is half typed counts as finished: most of it is stored by that.
bool MainWindow::mayLeave() {
    if (!session_)
        return true;
    if (const QPointer<QWidget> focus = focusWidget()) {
        focus->clearFocus();
        if (focus)
            focus->setFocus();
    }
    if (session_->unstored().isEmpty())
        return true;
    const Leaving answer = prompt_.leaveUnstored(this, session_->unstored());
    if (answer == Leaving::storeFirst)
        session_->storeAll();
    if (answer == Leaving::without || session_->unstored().isEmpty())
        return true;
    if (answer == Leaving::storeFirst)
        notices_->showFault(tr("Not stored: %1. The reason stands where it was typed.")
                                .arg(session_->unstored().join(QStringLiteral(", "))));
    return false;
}

/// From here on this is the book in hand; the one before is closed.
void MainWindow::take(std::unique_ptr<Desk> desk) {
    closeBook();
    session_ = std::make_unique<Session>(std::move(desk));
    session_->setUnits(settings_.units);
    settings_.use(pathText(std::filesystem::absolute(session_->desk().path())));
    cellar_ = new CellarView(*session_, prompt_, stack_);
    cellar_->setPaper(settings_.paper);
    cellar_->adjust().setMostMoved(settings_.mostMoved);
    placePanes(*cellar_);
    cellar_->drawRefill().table().addActions({actions_->amend, actions_->remove});
    stack_->addWidget(cellar_);
    stack_->setCurrentWidget(cellar_);
    status_->follow(session_.get());
    notices_->clearFault();
    showNotices();
    connect(session_.get(), &Session::changed, this, [this] {
        notices_->clearFault();
        showNotices();
        refreshActions();
    });
    connect(session_.get(), &Session::failed, this, &MainWindow::failed);
    connect(cellar_, &CellarView::moved, this, [this] {
        refreshTitle();
        refreshHelp();
        refreshLedgerActions();
        rememberSoon_->start();
    });
    connect(&cellar_->drawRefill(), &DrawRefillPage::selectionChanged, this, &MainWindow::refreshLedgerActions);
    connect(cellar_, &CellarView::paperChanged, this, &MainWindow::setPaper);
    fillRecent();
    refreshActions();
    refreshTitle();
    cellar_->focusWork();
}

void MainWindow::showNotices() {
    QStringList notices;
    for (const Message& notice : session_->desk().notices())
        notices << session_->words(notice);
    notices_->setNotices(notices);
}

void MainWindow::closeBook() {
    if (!session_)
        return;
    keepPanes();
    settings_.mostMoved = cellar_->adjust().mostMoved();
    delete cellar_;
    cellar_ = nullptr;
    status_->follow(nullptr);
    session_.reset();
    notices_->setNotices({});
    notices_->clearFault();
    startPage_->setRecent(settings_.recent);
    stack_->setCurrentWidget(startPage_);
    startPage_->focusFirst();
    refreshActions();
    refreshTitle();
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

void MainWindow::refreshTitle() {
    if (!session_) {
        setWindowTitle(QStringLiteral("Staveline"));
        return;
    }
    const QString book = QFileInfo(pathText(session_->desk().path())).completeBaseName();
    const QString vessel = qs(cellar_->vessel());
    setWindowTitle((vessel.isEmpty() ? book : tr("%1 \u2013 %2").arg(vessel, book)) +
                   QStringLiteral(" \u2013 Staveline"));
}

QString MainWindow::page() const {
    if (!cellar_)
        return QStringLiteral("start");
    if (!cellar_->atVessel())
        return QStringLiteral("vessel");
    return cellar_->atBrewSheet() ? QStringLiteral("brew_sheet") : idOf(cellar_->workPage());
}

void MainWindow::refreshHelp() {
    if (help_->isVisible())
        help_->showPage(page(), actions_->all);
}

void MainWindow::toggleHelp() {
    const bool show = !help_->isVisible();
    help_->setVisible(show);
    makeRoomFor(*help_, *stack_);
    if (show) {
        help_->showPage(page(), actions_->all);
        help_->focusText();
    } else if (cellar_) {
        cellar_->focusWork();
    }
}

void MainWindow::fillRecent() {
    recentMenu_->clear();
    for (const QString& path : settings_.recent) {
        QAction* action = recentMenu_->addAction(withoutKeys(QFileInfo(path).fileName()));
        action->setToolTip(path);
        // Queued: opening a book fills this menu anew and deletes the action that asked for it.
        connect(
            action, &QAction::triggered, this, [this, path] { openBook(toStd(path)); }, Qt::QueuedConnection);
    }
    recentMenu_->setEnabled(!settings_.recent.isEmpty());
}

void MainWindow::copyBook() {
    const QFileInfo book(pathText(session_->desk().path()));
    const auto to = prompt_.fileToWrite(this, tr("Save a copy of the book"),
                                        book.path() + QLatin1Char('/') + book.completeBaseName() + QLatin1Char(' ') +
                                            qs(isoDay(session_->desk().today())) + QStringLiteral(".cellar"),
                                        QStringLiteral(".cellar"));
    if (!to)
        return;
    if (QFileInfo::exists(book.filePath())) {
        status_->say(tr("Copying to %1").arg(pathText(*to)));
        tasks_->copy(session_->desk().path(), *to);
    } else if (const auto copied = session_->desk().backup(*to); copied) { // what is open here is all there is of it
        status_->say(tr("Copied to %1").arg(pathText(*to)));
    } else {
        failed(copied.error());
    }
}

void MainWindow::checkBook() {
    status_->say(tr("Reading every row"));
    tasks_->check(session_->desk().path());
}

void MainWindow::showReport(const book::CheckReport& report) {
    if (report.sound()) {
        status_->say(tr("No damage found in %1 rows.").arg(report.rowsChecked));
        return;
    }
    QStringList words;
    for (const book::Damage& damage : report.damages)
        words << text(damage.what, settings_.units);
    notices_->showFault(words.join(QLatin1Char('\n')));
}

void MainWindow::about() {
    help_->setVisible(true);
    makeRoomFor(*help_, *stack_);
    help_->showPage(QStringLiteral("about"), {});
    help_->focusText();
}

void MainWindow::setUnits(const DisplayUnits& units) {
    settings_.units = units;
    if (session_)
        session_->setUnits(units);
}

void MainWindow::setAppearance(Appearance appearance) {
    settings_.appearance = appearance;
    install(*qApp, appearance);
}

void MainWindow::setPaper(PaperSize size) {
    settings_.paper = size;
    if (cellar_)
        cellar_->setPaper(size);
}

QString MainWindow::bookFolder() const {
    if (!settings_.lastBook.isEmpty())
        return QFileInfo(settings_.lastBook).path();
    return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

std::filesystem::path MainWindow::samplePath() {
    return toStd(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation) +
                 QStringLiteral("/staveline/sample.cellar"));
}

void MainWindow::remember() {
    settings_.geometry = saveGeometry();
    keepPanes();
    if (cellar_) {
        settings_.lastVessel = qs(cellar_->vessel());
        settings_.lastPage = cellar_->workPage();
        settings_.brewPart = cellar_->brew().part();
        settings_.historyFace = cellar_->history().face();
        settings_.mostMoved = cellar_->adjust().mostMoved();
    } else {
        settings_.lastBook.clear();
    }
    save(settings_, stored_);
    stored_.sync(); // a failure costs comfort, never data
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    makeRoomFor(*help_, *stack_);
    rememberSoon_->start();
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!mayLeave()) {
        event->ignore();
        return;
    }
    remember();
    QMainWindow::closeEvent(event);
}

} // namespace staveline::ui

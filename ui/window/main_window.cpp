// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/main_window.h"

#include "desk/whole_file.h"
#include "facts/sample.h"
#include "ui/adjust/page.h"
#include "ui/cellar/first_steps_bar.h"
#include "ui/cellar/start_page.h"
#include "ui/draw_refill/page.h"
#include "ui/history/page.h"
#include "ui/present/path_words.h"
#include "ui/taste/page.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/reading_order.h"
#include "ui/window/book_tasks.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/notice_bar.h"
#include "ui/window/preferences.h"
#include "ui/window/status_line.h"
#include "ui/window/typing_guard.h"

#include <QAction>
#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenu>
#include <QMimeData>
#include <QPointer>
#include <QSettings>
#include <QStackedWidget>
#include <QStandardPaths>
#include <QTimer>
#include <QUrl>

namespace staveline::ui {

using desk::Desk;

namespace {

constexpr int pollEveryMs = 1500;
constexpr int rememberAfterMs = 2000;

QString pathText(const std::filesystem::path& path) {
    return qs(path.string());
}

} // namespace

MainWindow::MainWindow(desk::Clock clock, Prompt& prompt, QSettings& settings, QWidget* parent)
    : QMainWindow(parent), clock_(std::move(clock)), prompt_(prompt), stored_(settings), settings_(load(settings)),
      actions_(std::make_unique<Actions>(*this)), tasks_(new BookTasks(clock_, this)), poll_(new QTimer(this)),
      rememberSoon_(new QTimer(this)) {
    rememberSoon_->setSingleShot(true);
    rememberSoon_->setInterval(rememberAfterMs);
    connect(rememberSoon_, &QTimer::timeout, this, &MainWindow::remember);
    new TypingGuard(actions_->entries.values(), *actions_->undo, *actions_->redo, this);
    setAcceptDrops(true);
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

void MainWindow::start(const std::optional<std::filesystem::path>& book) {
    startPage_->setRecent(settings_.recent);
    fillRecent();
    tellNews();
    if (book) {
        openAtWork(*book);
    } else if (!settings_.lastBook.isEmpty() && QFileInfo::exists(settings_.lastBook)) {
        const facts::VesselName vessel = toStd(settings_.lastVessel);
        const PageId workPage = settings_.lastPage;
        const bool atAll = settings_.atAll;
        if (openBook(toStd(settings_.lastBook)) && cellar_) {
            cellar_->showVessel(vessel);
            cellar_->brew().showPart(settings_.brewPart);
            cellar_->history().showFace(settings_.historyFace);
            cellar_->showPage(workPage);
            if (atAll)
                cellar_->showAll();
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

void MainWindow::openAtWork(const std::filesystem::path& book) {
    if (openBook(book))
        cellar_->showStart();
}

bool MainWindow::newBook(const std::filesystem::path& path) {
    if (!mayLeave())
        return false;
    auto desk = Desk::create(path, clock_);
    if (!desk)
        return failed(desk.error());
    take(std::move(*desk));
    setFirstStepsAway(false);
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
    cellar_->firstSteps().setAway(settings_.firstStepsAway);
    placePanes(*cellar_);
    addContextMenus();
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
    connect(session_.get(), &Session::ledTo, this,
            [this](const QString& vessel) { cellar_->showVessel(toStd(vessel)); });
    connect(cellar_, &CellarView::moved, this, &MainWindow::refreshPlace);
    connect(&cellar_->drawRefill(), &DrawRefillPage::selectionChanged, this, &MainWindow::refreshLedgerActions);
    connect(cellar_, &CellarView::frontMade, this, &MainWindow::refreshPaperActions);
    connect(cellar_, &CellarView::paperChanged, this, &MainWindow::setPaper);
    connect(&cellar_->firstSteps(), &FirstStepsBar::putAway, this, [this] { setFirstStepsAway(true); });
    fillRecent();
    refreshActions();
    refreshTitle();
    rememberSoon_->start();
    cellar_->focusWork();
}

void MainWindow::refreshPlace() {
    refreshTitle();
    refreshHelp();
    refreshLedgerActions();
    refreshFindActions();
    refreshPaperActions();
    rememberSoon_->start();
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
    rememberSoon_->start();
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

void MainWindow::fillRecent() {
    recentMenu_->clear();
    for (const QString& path : settings_.recent) {
        const QString words = tr("%1 (%2)").arg(QFileInfo(path).fileName(), folderWords(path));
        QAction* action = recentMenu_->addAction(withoutKeys(words));
        action->setToolTip(path);
        // Queued: opening a book fills this menu anew and deletes the action that asked for it.
        connect(
            action, &QAction::triggered, this, [this, path] { openAtWork(toStd(path)); }, Qt::QueuedConnection);
    }
    recentMenu_->setEnabled(!settings_.recent.isEmpty());
}

void MainWindow::saveCalendar() {
    const QFileInfo book(pathText(session_->desk().path()));
    const auto to = prompt_.fileToWrite(
        this, tr("Save the dates as a calendar file"),
        book.path() + QLatin1Char('/') + book.completeBaseName() + QStringLiteral(".ics"), QStringLiteral(".ics"));
    if (!to)
        return;
    const auto text = session_->desk().calendar({}, session_->units());
    const auto written = text ? desk::writeWhole(*to, *text) : Result<void>(fail(text.error()));
    if (written)
        status_->say(tr("Saved %1").arg(pathText(*to)));
    else
        failed(written.error());
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

void MainWindow::setUnits(const DisplayUnits& units) {
    settings_.units = units;
    rememberSoon_->start();
    if (session_)
        session_->setUnits(units);
}

void MainWindow::setAppearance(Appearance appearance) {
    settings_.appearance = appearance;
    rememberSoon_->start();
    install(*qApp, appearance);
}

void MainWindow::setLanguage(const QString& code) {
    const QString before = std::exchange(settings_.language, code);
    if (before == code)
        return;
    startsAgain_ = close();
    if (!startsAgain_)
        settings_.language = before;
}

void MainWindow::setPaper(PaperSize size) {
    settings_.paper = size;
    rememberSoon_->start();
    if (cellar_)
        cellar_->setPaper(size);
}

void MainWindow::showPreferences() {
    auto* dialog = new Preferences(settings_, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &Preferences::unitsChosen, this, &MainWindow::setUnits);
    connect(dialog, &Preferences::paperChosen, this, &MainWindow::setPaper);
    connect(dialog, &Preferences::languageChosen, this, &MainWindow::setLanguage, Qt::QueuedConnection);
    connect(dialog, &Preferences::appearanceChosen, this, &MainWindow::setAppearance);
    dialog->open();
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
        settings_.atAll = cellar_->atAll();
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
    fitHelp();
    rememberSoon_->start();
}

void MainWindow::moveEvent(QMoveEvent* event) {
    QMainWindow::moveEvent(event);
    rememberSoon_->start();
}

namespace {

/// The one cellar book that is dragged.
std::optional<QString> bookIn(const QMimeData& dragged) {
    const QList<QUrl> urls = dragged.urls();
    const bool isBook = urls.size() == 1 && urls.front().isLocalFile() &&
                        urls.front().fileName().endsWith(QLatin1String(".cellar"), Qt::CaseInsensitive);
    return isBook ? std::optional(urls.front().toLocalFile()) : std::nullopt;
}

} // namespace

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (bookIn(*event->mimeData()))
        event->acceptProposedAction();
}

/// Queued: the program that the book came from waits until the drop is over.
void MainWindow::dropEvent(QDropEvent* event) {
    const auto book = bookIn(*event->mimeData());
    if (!book)
        return;
    event->acceptProposedAction();
    QMetaObject::invokeMethod(
        this, [this, book] { openAtWork(toStd(*book)); }, Qt::QueuedConnection);
}

bool MainWindow::focusNextPrevChild(bool next) {
    return stepInReadingOrder(*centralWidget(), next);
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

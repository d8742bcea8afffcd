// SPDX-License-Identifier: GPL-3.0-or-later
// The window: first page or cellar, menus, notices, status line, help.
#pragma once

#include "desk/desk.h"
#include "ui/present/session.h"
#include "ui/widgets/prompt.h"
#include "ui/window/actions.h"
#include "ui/window/settings.h"

#include <QMainWindow>

class QSettings;
class QStackedWidget;
class QTimer;

namespace staveline::ui {

class BookTasks;
class ReportDialog;
class CellarView;
class HelpPanel;
class NoticeBar;
class Panes;
class StartPage;
class StatusLine;

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    MainWindow(desk::Clock clock, Prompt& prompt, QSettings& settings, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// Opens `book` where work is due, else the last session's as it was left, else the first page.
    void start(const std::optional<std::filesystem::path>& book);
    /// The book in hand stays when the other cannot be opened; the reason is said in the window.
    bool openBook(const std::filesystem::path& path);
    /// An empty book, and the question for its first vessel.
    bool newBook(const std::filesystem::path& path);
    /// Opens the sample cellar at `path`; makes it first when it is not there.
    bool sampleBook(const std::filesystem::path& path);
    void closeBook(); ///< back to the first page; what is not stored is left

    /// Stored values never change with these.
    void setUnits(const DisplayUnits& units);
    void setAppearance(Appearance appearance);
    /// Tables and texts are read once: the window closes, if the brewer lets it, and wants to start again.
    void setLanguage(const QString& code);
    [[nodiscard]] bool startsAgain() const { return startsAgain_; }
    void setPaper(PaperSize size);
    void toggleHelp();
    void showPageAgain(); ///< where help stands in its place: what a key does is seen
    void showPreferences();
    void remember(); ///< writes the settings

    // What is in the window, for those who drive it; session and cellar are null on the first page.
    [[nodiscard]] Session* session() const { return session_.get(); }
    [[nodiscard]] CellarView* cellar() const { return cellar_; }
    [[nodiscard]] StartPage& startPage() const { return *startPage_; }
    [[nodiscard]] StatusLine& status() const { return *status_; }
    [[nodiscard]] NoticeBar& notices() const { return *notices_; }
    [[nodiscard]] const WindowSettings& settings() const { return settings_; }

protected:
    void closeEvent(QCloseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void moveEvent(QMoveEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    bool focusNextPrevChild(bool next) override;

private:
    void makeParts();
    void makeMenus();
    void connectBook();
    void connectWork();
    void connectFinding();
    void connectPapers();
    void connectExchange();
    void connectHelp();
    void addContextMenus();
    // --- the book in hand
    void take(std::unique_ptr<desk::Desk> desk);
    bool failed(const Fault& fault);
    void openAtWork(const std::filesystem::path& book);
    /// Asks what becomes of what is not stored; false: the brewer stays.
    [[nodiscard]] bool mayLeave();
    // --- what follows from it
    void refreshActions();
    void refreshLedgerActions();
    void refreshFindActions();
    void refreshPaperActions();
    void refreshPlace();                             ///< another vessel, page or paper is in front
    [[nodiscard]] QString whyNoLedgerAction() const; ///< empty: there is an entry to act on
    void refreshTitle();
    void refreshHelp();
    void fitHelp(); ///< beside the page where there is room for both, else in its place
    void fillRecent();
    void placePanes(QWidget& in); ///< as they were left
    void keepPanes();
    void copyBook();
    void saveCalendar();
    void exportBook();
    void bookFromFolder();
    void importNotes();
    void checkBook();
    void showReport(const book::CheckReport& report);
    void showNotices();
    void about();
    void setFirstStepsAway(bool away);
    void showHelp(const std::function<void()>& fill); ///< beside the page; the hand goes there
    void tellNews();                                  ///< after an update, once
    void report();
    void saveReport(const ReportDialog& dialog);
    [[nodiscard]] QString page() const; ///< of the help
    [[nodiscard]] QString bookFolder() const;
    [[nodiscard]] static std::filesystem::path samplePath();

    desk::Clock clock_;
    Prompt& prompt_;
    QSettings& stored_;
    WindowSettings settings_;
    bool startsAgain_ = false;
    std::unique_ptr<Session> session_;
    std::unique_ptr<Actions> actions_;
    BookTasks* tasks_;
    NoticeBar* notices_;
    QStackedWidget* stack_;
    StartPage* startPage_;
    CellarView* cellar_ = nullptr;
    StatusLine* status_;
    HelpPanel* help_;
    QMenu* recentMenu_;
    QTimer* poll_;
    QTimer* rememberSoon_; ///< where the brewer is: a window that is killed comes back there too
};

} // namespace staveline::ui

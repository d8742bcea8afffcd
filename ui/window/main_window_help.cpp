// SPDX-License-Identifier: GPL-3.0-or-later
// What helps: the panel beside the page, the first steps, what is new, and the report on a fault.
#include "desk/report.h"
#include "desk/whole_file.h"
#include "ui/cellar/first_steps_bar.h"
#include "ui/present/path_words.h"
#include "ui/window/book_tasks.h"
#include "ui/window/cellar_view.h"
#include "ui/window/help_panel.h"
#include "ui/window/main_window.h"
#include "ui/window/news.h"
#include "ui/window/report_dialog.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QApplication>
#include <QStackedWidget>
#include <QSysInfo>
#include <QTimer>

namespace staveline::ui {
namespace {

constexpr double leastBesideHelp = 70; // lines of text wide

desk::Machine thisMachine() {
    return {toStd(programVersion()),
            toStd(QSysInfo::prettyProductName() + QLatin1String(", ") + QSysInfo::currentCpuArchitecture()),
            "Qt " + std::string(qVersion()) + ", " + toStd(qApp->platformName())};
}

} // namespace

void MainWindow::connectHelp() {
    const Actions& a = *actions_;
    connect(a.help, &QAction::triggered, this, &MainWindow::toggleHelp);
    connect(help_, &HelpPanel::closed, this, &MainWindow::toggleHelp);
    connect(a.about, &QAction::triggered, this, &MainWindow::about);
    connect(a.news, &QAction::triggered, this, [this] { showHelp([this] { help_->showNews(); }); });
    connect(a.firstSteps, &QAction::triggered, this, [this] {
        showPageAgain();
        setFirstStepsAway(false);
        cellar_->firstSteps().recall();
    });
    connect(a.report, &QAction::triggered, this, &MainWindow::report);
}

QString MainWindow::page() const {
    if (!cellar_)
        return QStringLiteral("start");
    if (cellar_->atAll())
        return QStringLiteral("cellar");
    if (!cellar_->atVessel())
        return cellar_->atRound()         ? QStringLiteral("round")
               : cellar_->atRooms()       ? QStringLiteral("room")
               : cellar_->atIngredients() ? QStringLiteral("ingredients")
                                          : QStringLiteral("vessel");
    return cellar_->atBrewSheet() ? QStringLiteral("brew_sheet") : idOf(cellar_->workPage());
}

void MainWindow::fitHelp() {
    stack_->setVisible(help_->isHidden() || width() >= lines(*help_, leastBesideHelp));
}

void MainWindow::refreshHelp() {
    if (help_->isVisible() && help_->showsPage())
        help_->showPage(page());
}

void MainWindow::showPageAgain() {
    if (stack_->isHidden())
        toggleHelp();
}

void MainWindow::toggleHelp() {
    if (help_->isHidden()) {
        showHelp([this] { help_->showPage(page()); });
        return;
    }
    help_->setVisible(false);
    fitHelp();
    if (cellar_)
        cellar_->focusWork();
}

void MainWindow::showHelp(const std::function<void()>& fill) {
    help_->setVisible(true);
    fitHelp();
    fill();
    help_->focusText();
}

void MainWindow::about() {
    showHelp([this] { help_->showAbout(); });
}

/// Beside the page, and without taking a key; where both have no room it waits for a wider window.
void MainWindow::tellNews() {
    const QString seen = settings_.seenVersion;
    if (isUpdate(seen) && width() < lines(*help_, leastBesideHelp))
        return;
    settings_.seenVersion = programVersion();
    if (!isUpdate(seen))
        return;
    help_->setVisible(true);
    fitHelp();
    help_->showNews(seen);
}

void MainWindow::setFirstStepsAway(bool away) {
    settings_.firstStepsAway = away;
    rememberSoon_->start();
    if (cellar_)
        cellar_->firstSteps().setAway(away);
}

void MainWindow::report() {
    auto* dialog = new ReportDialog(qs(desk::reportText(desk::reportOn(thisMachine()))), session_ != nullptr, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(tasks_, &BookTasks::reported, dialog, &ReportDialog::add);
    connect(dialog, &ReportDialog::saveAsked, this, [this, dialog] { saveReport(*dialog); });
    if (session_)
        tasks_->report(session_->desk().path());
    dialog->open();
}

void MainWindow::saveReport(const ReportDialog& dialog) {
    const auto to = prompt_.fileToWrite(this, tr("Save the report"), bookFolder() + tr("/staveline report.txt"),
                                        QStringLiteral(".txt"));
    if (!to)
        return;
    if (const auto written = desk::writeWhole(*to, toStd(dialog.words() + QLatin1Char('\n'))); !written) {
        failed(written.error());
        return;
    }
    status_->say(tr("Saved %1").arg(qs(to->string())));
    if (dialog.withBook() && session_)
        tasks_->copy(session_->desk().path(), std::filesystem::path(*to).replace_extension(".cellar"));
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What goes out of the book in hand and comes into it as files: all of it as a folder, and years of notes.
#include "ui/window/book_tasks.h"
#include "ui/window/cellar_view.h"
#include "ui/window/main_window.h"
#include "ui/window/notes_import.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QFile>
#include <QFileInfo>

namespace staveline::ui {
namespace {

QString nameOf(const std::filesystem::path& path) {
    return qs(path.filename().string());
}

} // namespace

void MainWindow::connectExchange() {
    const Actions& a = *actions_;
    connect(a.exportBook, &QAction::triggered, this, &MainWindow::exportBook);
    connect(a.bookFromFolder, &QAction::triggered, this, &MainWindow::bookFromFolder);
    connect(a.importNotes, &QAction::triggered, this, &MainWindow::importNotes);
    connect(tasks_, &BookTasks::exported, this,
            [this](const std::filesystem::path& to) { status_->say(tr("Exported to %1").arg(nameOf(to))); });
    connect(tasks_, &BookTasks::made, this, &MainWindow::openBook);
}

void MainWindow::exportBook() {
    const QFileInfo book(qs(session_->desk().path().string()));
    const auto to = prompt_.folderToMake(this, tr("Export the whole book into a new folder"),
                                         book.path() + QLatin1Char('/') + book.completeBaseName() + QLatin1Char(' ') +
                                             qs(isoDay(session_->desk().today())));
    if (!to)
        return;
    status_->say(tr("Exporting to %1").arg(nameOf(*to)));
    tasks_->exportAll(session_->desk().path(), session_->units(), *to);
}

void MainWindow::bookFromFolder() {
    const auto from = prompt_.folderToRead(this, tr("The folder of an exported book"), bookFolder());
    if (!from)
        return;
    const auto to = prompt_.fileToWrite(this, tr("A new cellar book"), bookFolder() + tr("/my cellar.cellar"),
                                        QStringLiteral(".cellar"));
    if (!to)
        return;
    status_->say(tr("Making %1").arg(nameOf(*to)));
    tasks_->make(*to, *from);
}

void MainWindow::importNotes() {
    const auto from = prompt_.fileToRead(this, tr("Notes to import"), bookFolder(), QStringLiteral(".csv"));
    if (!from)
        return;
    QFile file(qs(from->string()));
    if (!file.open(QIODevice::ReadOnly)) {
        failed({FaultKind::storage, "", say("app.cannot_read").with("file", from->string()),
                say("app.cannot_read.remedy")});
        return;
    }
    NotesImport::Source source{session_->desk().path(), file.readAll().toStdString(), from->filename().string(), {}, {},
                               cellar_->vessel()};
    auto table = facts::readNotes(source.text);
    const auto vessels = session_->desk().vessels();
    if (!table || !vessels) {
        failed(table ? vessels.error() : table.error());
        return;
    }
    source.table = *std::move(table);
    for (const auto& vessel : *vessels)
        source.vessels.push_back(vessel.name);
    auto* dialog = new NotesImport(std::move(source), clock_, this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &NotesImport::taken, this, [this](const QString& words) {
        session_->poll();
        status_->say(words);
    });
    dialog->open();
}

} // namespace staveline::ui

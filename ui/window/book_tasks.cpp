// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/book_tasks.h"

#include "desk/folder.h"
#include "desk/report.h"
#include "ui/present/text.h"

namespace staveline::ui {

BookTasks::BookTasks(desk::Clock clock, QObject* parent) : QObject(parent), clock_(std::move(clock)) {}

template <class Task, class Done> void BookTasks::run(const std::filesystem::path& book, Task task, Done done) {
    worker_.post([this, book, task, done] {
        auto desk = desk::Desk::open(book, clock_, book::OpenMode::readOnly);
        auto result = desk ? task(**desk) : decltype(task(**desk))(fail(desk.error()));
        QMetaObject::invokeMethod(this, [this, result, done] {
            if (result)
                done(result);
            else
                Q_EMIT failed(result.error());
        });
    });
}

void BookTasks::copy(const std::filesystem::path& book, const std::filesystem::path& to) {
    run(
        book, [to](const desk::Desk& desk) { return desk.backup(to); },
        [this, to](const Result<void>&) { Q_EMIT copied(to); });
}

void BookTasks::check(const std::filesystem::path& book) {
    run(
        book, [](const desk::Desk& desk) { return desk.check(); },
        [this](const Result<book::CheckReport>& report) { Q_EMIT checked(*report); });
}

/// A book that does not open is reported on as well.
void BookTasks::report(const std::filesystem::path& book) {
    worker_.post([this, book] {
        const auto desk = desk::Desk::open(book, clock_, book::OpenMode::readOnly);
        const QString words = qs(desk::reportText(desk ? desk::reportOn(**desk) : desk::reportOnRefused(desk.error())));
        QMetaObject::invokeMethod(this, [this, words] { Q_EMIT reported(words); });
    });
}

void BookTasks::exportAll(const std::filesystem::path& book, const DisplayUnits& units,
                          const std::filesystem::path& to) {
    run(
        book,
        [units, to](const desk::Desk& desk) {
            const auto files = desk.exported(units);
            return files ? desk::writeFolder(to, *files) : Result<void>(fail(files.error()));
        },
        [this, to](const Result<void>&) { Q_EMIT exported(to); });
}

void BookTasks::make(const std::filesystem::path& book, const std::filesystem::path& folder) {
    worker_.post([this, book, folder] {
        const auto desk = desk::bookFromFolder(book, folder, clock_);
        const std::optional<Fault> fault = desk ? std::nullopt : std::optional(desk.error());
        QMetaObject::invokeMethod(this, [this, book, fault] {
            if (fault)
                Q_EMIT failed(*fault);
            else
                Q_EMIT made(book);
        });
    });
}

} // namespace staveline::ui

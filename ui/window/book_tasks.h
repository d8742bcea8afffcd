// SPDX-License-Identifier: GPL-3.0-or-later
// Copying and checking a book of any size while the window works on: each on a connection of its own, in a thread.
#pragma once

#include "desk/desk.h"
#include "ui/present/task_queue.h"

#include <QObject>

namespace staveline::ui {

class BookTasks : public QObject {
    Q_OBJECT
public:
    explicit BookTasks(desk::Clock clock, QObject* parent = nullptr);
    /// One task at a time; what is asked while one runs comes after it, also when the window closes meanwhile.
    void copy(const std::filesystem::path& book, const std::filesystem::path& to);
    void check(const std::filesystem::path& book);
    /// What the check found, in words without anything of the book's own (desk/report.h).
    void report(const std::filesystem::path& book);
    /// All of it into a new folder.
    void exportAll(const std::filesystem::path& book, const DisplayUnits& units, const std::filesystem::path& to);
    /// A new book of such a folder.
    void make(const std::filesystem::path& book, const std::filesystem::path& folder);

Q_SIGNALS:
    void copied(const std::filesystem::path& to);
    void exported(const std::filesystem::path& to);
    void made(const std::filesystem::path& book);
    void checked(const staveline::book::CheckReport& report);
    void reported(const QString& words);
    void failed(const staveline::Fault& fault);

private:
    /// Opens the book for reading and takes it to `task`; what that returns is taken back to this thread.
    template <class Task, class Done> void run(const std::filesystem::path& book, Task task, Done done);

    desk::Clock clock_;
    TaskQueue worker_; ///< last: its thread uses all of the above
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/book_errands.h"

namespace staveline::ui {

BookErrands::BookErrands(Clock clock, QObject* parent) : QObject(parent), clock_(std::move(clock)) {}

template <class Errand, class Done> void BookErrands::run(const std::filesystem::path& book, Errand errand, Done done) {
    worker_.post([this, book, errand, done] {
        auto desk = Desk::open(book, clock_, book::OpenMode::readOnly);
        auto result = desk ? errand(**desk) : decltype(errand(**desk))(fail(desk.error()));
        QMetaObject::invokeMethod(this, [this, result, done] {
            if (result)
                done(result);
            else
                Q_EMIT failed(result.error());
        });
    });
}

void BookErrands::copy(const std::filesystem::path& book, const std::filesystem::path& to) {
    run(
        book, [to](const Desk& desk) { return desk.backup(to); },
        [this, to](const Result<void>&) { Q_EMIT copied(to); });
}

void BookErrands::check(const std::filesystem::path& book) {
    run(
        book, [](const Desk& desk) { return desk.check(); },
        [this](const Result<book::CheckReport>& report) { Q_EMIT checked(*report); });
}

} // namespace staveline::ui

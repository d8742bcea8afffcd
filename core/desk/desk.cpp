// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/desk.h"

#include "desk/inside.h"

#include <algorithm>
#include <charconv>
#include <ctime>

namespace staveline::desk {

Day systemToday() {
    const std::time_t now = std::time(nullptr);
    std::tm local{};
    localtime_r(&now, &local);
    return Day{std::chrono::year{local.tm_year + 1900} / (local.tm_mon + 1) / local.tm_mday};
}

Desk::Desk(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Desk::~Desk() = default;

Result<std::unique_ptr<Desk>> Desk::create(const std::filesystem::path& path, Clock clock) {
    auto book = book::Book::create(path, facts::cellarSchema());
    if (!book)
        return fail(book.error());
    auto inside = std::make_unique<Inside>();
    inside->book = std::move(*book);
    inside->clock = std::move(clock);
    inside->cellar = std::make_unique<Cellar>(*inside->book);
    return std::unique_ptr<Desk>(new Desk(std::move(inside)));
}

Result<std::unique_ptr<Desk>> Desk::open(const std::filesystem::path& path, Clock clock, book::OpenMode mode) {
    auto book = book::Book::open(path, facts::cellarSchema(), mode);
    if (!book)
        return fail(book.error());
    auto inside = std::make_unique<Inside>();
    inside->book = std::move(*book);
    inside->clock = std::move(clock);
    inside->cellar = std::make_unique<Cellar>(*inside->book);
    return std::unique_ptr<Desk>(new Desk(std::move(inside)));
}

void Desk::Inside::forget(const EditScope& scope) {
    if (scope.everything)
        return cellar->clear();
    cellar->dropLots();
    for (const auto vessel : scope.vessels)
        cellar->drop(vessel);
    if (scope.shared)
        cellar->dropShared();
}

void Desk::Inside::tell() {
    untold = batches > 0;
    if (!untold)
        for (const auto& observer : observers)
            observer();
}

Desk::Batch::Batch(Desk& desk) : desk_(desk) {
    ++desk_.inside_->batches;
}
Desk::Batch::~Batch() {
    if (--desk_.inside_->batches == 0 && desk_.inside_->untold)
        desk_.inside_->tell();
}

namespace {

/// By kind, day and vessel where the row can still be read; a book knows its rows alone.
void nameEntry(book::Damage& damage, const Desk& desk) {
    if (damage.what.key != "book.damage.digest")
        return;
    const auto fact = desk.fact(damage.table, damage.row);
    if (!fact)
        return;
    const std::string kind = "desk.kind." + std::string(facts::traitsOf(*fact).kind);
    std::visit(
        [&](const auto& f) {
            if constexpr (
                requires { f.vessel, Day{f.on}; } || requires { f.vessel, f.sitting.on; })
                if (builtInTexts().has(kind))
                    damage.what = say("desk.damaged")
                                      .with("kind", render(say(kind)))
                                      .with("on", dayOf(f))
                                      .with("vessel", f.vessel);
        },
        *fact);
}

std::vector<book::Damage> named(std::vector<book::Damage> damages, const Desk& desk) {
    for (auto& damage : damages)
        nameEntry(damage, desk);
    return damages;
}

} // namespace

Result<book::CheckReport> Desk::check() const {
    auto report = inside_->book->check();
    if (report)
        report->damages = named(std::move(report->damages), *this);
    return report;
}
Result<void> Desk::backup(const std::filesystem::path& to) const {
    return inside_->book->backup(to);
}
bool Desk::readOnly() const {
    return inside_->book->readOnly();
}
std::vector<book::Damage> Desk::damages() const {
    return named(inside_->book->damages(), *this);
}
std::filesystem::path Desk::path() const {
    return inside_->book->path();
}
Day Desk::today() const {
    return inside_->clock();
}
std::int64_t Desk::revision() const {
    return inside_->book->revision();
}
void Desk::speakIn(const DisplayUnits& units) {
    inside_->units = units;
}
void Desk::observe(std::function<void()> observer) {
    inside_->observers.push_back(std::move(observer));
}

std::vector<Message> Desk::notices() const {
    std::vector<Message> all = inside_->book->notices();
    for (const auto& damage : damages())
        all.push_back(damage.what);
    return all;
}

bool Desk::poll() {
    if (!inside_->book->changedElsewhere())
        return false;
    inside_->book->reload();
    inside_->cellar->clear();
    inside_->tell();
    return true;
}

} // namespace staveline::desk

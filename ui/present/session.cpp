// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/session.h"

namespace staveline::ui {

Session::Session(std::unique_ptr<Desk> desk, QObject* parent)
    : QObject(parent), desk_(std::move(desk)), day_(desk_->today()), readOnly_(desk_->readOnly()) {
    storedAt_ = QDateTime::currentDateTime();
    desk_->observe([this] {
        storedAt_ = QDateTime::currentDateTime();
        Q_EMIT changed();
    });
}

void Session::setUnits(const DisplayUnits& units) {
    if (units == units_)
        return;
    units_ = units;
    desk_->speakIn(units);
    Q_EMIT unitsChanged();
}

Result<void> Session::done(const Result<std::string>& edit, const QString& sentence) {
    if (!edit)
        return fail(edit.error());
    Q_EMIT said(sentence.arg(qs(*edit)));
    return {};
}

Result<void> Session::record(const Fact& fact) {
    return done(desk_->record(fact), tr("Recorded: %1"));
}
Result<void> Session::record(const std::vector<Fact>& facts) {
    return done(facts.size() == 1 ? desk_->record(facts.front()) : desk_->record(facts), tr("Recorded: %1"));
}
Result<void> Session::amend(const std::string& table, std::int64_t id, const Fact& fact) {
    return done(desk_->amend(table, id, fact), tr("Amended: %1"));
}
Result<void> Session::remove(const std::string& table, std::int64_t id) {
    return done(desk_->remove(table, id), tr("Removed: %1"));
}

void Session::undo() {
    if (const auto undone = done(desk_->undo(), tr("Undone: %1")); !undone)
        Q_EMIT failed(undone.error());
}

void Session::redo() {
    if (const auto redone = done(desk_->redo(), tr("Done again: %1")); !redone)
        Q_EMIT failed(redone.error());
}

void Session::poll() {
    elsewhere_ = true;
    if (desk_->poll())
        Q_EMIT said(tr("Another program changed this book; what you see is up to date."));
    if (day_ != desk_->today() || readOnly_ != desk_->readOnly()) {
        day_ = desk_->today();
        readOnly_ = desk_->readOnly();
        Q_EMIT changed();
    }
    elsewhere_ = false;
}

void Session::setUnstored(const std::string& key, const QStringList& what) {
    if (const auto known = unstored_.find(key); known == unstored_.end() ? what.isEmpty() : known->second == what)
        return;
    if (what.isEmpty())
        unstored_.erase(key);
    else
        unstored_[key] = what;
    Q_EMIT unstoredChanged();
}

QStringList Session::unstored() const {
    QStringList all;
    for (const auto& [key, what] : unstored_)
        all << what;
    return all;
}

void Session::storeAll() {
    Q_EMIT storeAsked();
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/session.h"

namespace staveline::ui {

using desk::Desk;
using desk::EditNote;
using desk::Recorded;
using facts::Fact;

Session::Session(std::unique_ptr<Desk> desk, QObject* parent)
    : QObject(parent), desk_(std::move(desk)), day_(desk_->today()), readOnly_(desk_->readOnly()) {
    storedAt_ = QDateTime::currentDateTime();
    desk_->observe([this] {
        storedAt_ = QDateTime::currentDateTime();
        Q_EMIT changed();
        stored_.clear();
    });
}

void Session::setUnits(const DisplayUnits& units) {
    if (units == units_)
        return;
    units_ = units;
    desk_->speakIn(units);
    Q_EMIT unitsChanged();
}

namespace {

const Recorded& recordedOf(const Recorded& done) {
    return done;
}
const Recorded& recordedOf(const desk::Chosen& done) {
    return done.recorded;
}

} // namespace

template <class Write> auto Session::write(Write&& write) {
    const auto batch = desk_->batch();
    auto done = write(*desk_);
    if (done)
        stored_.insert(stored_.end(), recordedOf(*done).rows.begin(), recordedOf(*done).rows.end());
    return done;
}

Result<Recorded> Session::spoken(Result<Recorded> edit, const QString& sentence) {
    if (edit)
        Q_EMIT said(sentence.arg(qs(edit->edit)));
    return edit;
}

Result<Recorded> Session::record(const Fact& fact) {
    return spoken(record(fact, {}), tr("Recorded: %1"));
}
Result<Recorded> Session::record(const std::vector<Fact>& facts) {
    if (facts.size() == 1)
        return record(facts.front());
    return spoken(write([&](Desk& desk) { return desk.record(facts); }), tr("Recorded: %1"));
}
Result<Recorded> Session::amend(const std::string& table, std::int64_t id, const Fact& fact) {
    return spoken(amend(table, id, fact, {}), tr("Recorded: %1"));
}
Result<Recorded> Session::remove(const std::string& table, std::int64_t id) {
    return spoken(remove(table, id, {}), tr("Recorded: %1"));
}

Result<Recorded> Session::record(const Fact& fact, const EditNote& note) {
    return write([&](Desk& desk) { return desk.record(fact, note); });
}
Result<Recorded> Session::amend(const std::string& table, std::int64_t id, const Fact& fact, const EditNote& note) {
    return write([&](Desk& desk) { return desk.amend(table, id, fact, note); });
}
Result<Recorded> Session::remove(const std::string& table, std::int64_t id, const EditNote& note) {
    return write([&](Desk& desk) { return desk.remove(table, id, note); });
}
Result<Recorded> Session::setToday(const Fact& fact, const EditNote& note) {
    return write([&](Desk& desk) { return desk.setToday(fact, note); });
}
Result<Recorded> Session::revise(const facts::VesselName& vessel, const advice::Setting& setting,
                                 const EditNote& note) {
    return write([&](Desk& desk) { return desk.revise(vessel, setting, note); });
}
Result<desk::Chosen> Session::choose(const desk::AdviceJob& job, const advice::Advice& advice, int number) {
    return write([&](Desk& desk) { return desk.choose(job, advice, number); });
}
Result<desk::Chosen> Session::adopt(const desk::AdviceJob& job, const advice::Setting& setting) {
    return write([&](Desk& desk) { return desk.adopt(job, setting); });
}

void Session::undo() {
    const auto undone = spoken(write([](Desk& desk) { return desk.undo(); }), tr("Undone: %1"));
    if (!undone)
        Q_EMIT failed(undone.error());
}

void Session::redo() {
    const auto redone = spoken(write([](Desk& desk) { return desk.redo(); }), tr("Done again: %1"));
    if (!redone)
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

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/session.h"

#include "ui/present/fact_fields.h"
#include <algorithm>

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
/// "Removed the reading of 9 Nov 2026."; `key`: what was done.
QString saidOf(const char* key, const Fact& fact) {
    const auto entry = facts::traitsOf(fact).entry;
    const QString kind = entry ? inSentence(own("ui.entry." + std::string(vessel::traitsOf(*entry).word)))
                               : QString(Session::tr("entry"));
    return text(say(key).with("entry", toStd(kind)).with("day", dayOf(fact)));
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
    const auto amended = amend(table, id, fact, {});
    if (amended)
        Q_EMIT said(saidOf("ui.said.amended", fact));
    return amended;
}
Result<Recorded> Session::remove(const std::string& table, std::int64_t id) {
    const auto fact = desk_->fact(table, id);
    const auto removed = remove(table, id, {});
    if (removed && fact)
        Q_EMIT said(saidOf("ui.said.removed", *fact));
    return removed;
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

/// What comes back or goes is to be seen.
void Session::lead(const Result<Recorded>& travelled, const facts::VesselName& inHand) {
    if (!travelled) {
        Q_EMIT failed(travelled.error());
        return;
    }
    const auto& vessels = travelled->vessels;
    if (!vessels.empty() && std::find(vessels.begin(), vessels.end(), inHand) == vessels.end())
        Q_EMIT ledTo(qs(vessels.front()));
}

void Session::undo(const facts::VesselName& inHand) {
    lead(spoken(write([](Desk& desk) { return desk.undo(); }), tr("Undone: %1")), inHand);
}

void Session::redo(const facts::VesselName& inHand) {
    lead(spoken(write([](Desk& desk) { return desk.redo(); }), tr("Done again: %1")), inHand);
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

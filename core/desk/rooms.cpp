// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/rooms.h"

#include "desk/chemistry.h"
#include "desk/inside.h"
#include "desk/refits.h"
#include "quantity/parse.h"
#include "quantity/words.h"

#include <algorithm>

namespace staveline::desk {

using facts::RoomFact;
using vessel::ByMonth;
using vessel::RoomOffset;
using vessel::RoomReading;

namespace {

/// Since it stands where it does.
Day movedOn(const VesselRecord& record) {
    Day since = Day::min();
    std::string room = record.made.room;
    for (const auto& [id, refit] : record.of<facts::RefitFact>()) {
        facts::VesselFact then;
        then.room = room;
        apply(refit, then);
        if (then.room != room)
            since = refit.on;
        room = then.room;
    }
    return since;
}

/// Takes in what one vessel read.
class Reader {
public:
    Reader(const Facts<RoomFact>& rooms, const std::string& room, Day until)
        : rooms_(rooms), room_(room), until_(until) {}
    std::vector<RoomReading> readings;

    void take(const VesselRecord& record) {
        const Day since = movedOn(record);
        for (const auto& [id, round] : record.of<facts::RoundFact>())
            add(since, round.on, round.room);
        for (const auto& [id, reading] : record.of<facts::ReadingFact>())
            add(since, reading.on, reading.measured.temperature);
    }

private:
    void add(Day since, Day on, std::optional<Celsius> read) {
        if (!read || on < since || on > until_)
            return;
        const double told = yearOf(*roomOn(rooms_, room_, on))[vessel::monthOf(on)];
        readings.push_back({on, *read, read->c - told});
    }
    const Facts<RoomFact>& rooms_;
    const std::string& room_;
    Day until_;
};

RoomOffset offsetIn(const std::string& room, Cellar& cellar, Day today) {
    if (const RoomOffset* known = cellar.roomOffset(room, today))
        return *known;
    const RoomOffset offset = offsetOf(roomReadings(room, cellar, today));
    cellar.keepRoomOffset(room, today, offset);
    return offset;
}

std::vector<std::string> namesOf(const Facts<RoomFact>& rooms) {
    std::set<std::string> names;
    for (const auto& stored : rooms)
        names.insert(stored.fact.name);
    return {names.begin(), names.end()};
}

Result<void> missing(std::string_view field) {
    return badInput("/" + std::string(field), say("desk.room.partly"), say("desk.room.partly.remedy"));
}

} // namespace

ByMonth yearOf(const RoomFact& room) {
    if (!room.months.front())
        return vessel::yearBetween(*room.coldest, *room.warmest, static_cast<std::size_t>(*room.coldestMonth));
    ByMonth year{};
    for (std::size_t i = 0; i < year.size(); ++i)
        year[i] = room.months[i]->c;
    return year;
}

bool tellsYear(const RoomFact& room) {
    return checkYear(room).has_value();
}

ByMonth RoomView::reckoned() const {
    ByMonth all = year;
    for (double& month : all)
        month += offset.value;
    return all;
}

const RoomFact* roomOn(const Facts<RoomFact>& rooms, std::string_view name, Day day) {
    const RoomFact* found = nullptr;
    for (const auto& stored : rooms)
        if (stored.fact.name == name && (!found || stored.fact.on <= day))
            found = &stored.fact;
    return found;
}

void takeRoom(facts::VesselFact& vessel, const Facts<RoomFact>& rooms, Day day) {
    if (vessel.room.empty())
        return;
    if (const RoomFact* room = roomOn(rooms, vessel.room, day))
        vessel.temperature = Celsius{vessel::meanOf(yearOf(*room))};
}

std::vector<RoomReading> roomReadings(const std::string& room, Cellar& cellar, Day until) {
    const auto rooms = cellar.shared().rooms;
    if (!roomOn(*rooms, room, until))
        return {};
    Reader reader(*rooms, room, until);
    for (const auto& stored : cellar.shared().vessels)
        if (stored.fact.room == room)
            if (const auto record = cellar.vesselById(stored.id))
                reader.take(**record);
    std::stable_sort(reader.readings.begin(), reader.readings.end(),
                     [](const RoomReading& a, const RoomReading& b) { return a.on < b.on; });
    return std::move(reader.readings);
}

culture::AgeConditions cellaringOn(const VesselRecord& record, Day day, Cellar& cellar, Day today) {
    const facts::VesselFact then = vesselOn(record, day);
    culture::AgeConditions cellaring{{}, then.temperature, oxygenOf(then)};
    const auto rooms = cellar.shared().rooms;
    const RoomFact* room = then.room.empty() ? nullptr : roomOn(*rooms, then.room, day);
    if (!room)
        return cellaring;
    cellaring.apart = yearOf(*room);
    const double offset = offsetIn(then.room, cellar, today).value;
    for (double& month : cellaring.apart)
        month += offset - then.temperature.c;
    return cellaring;
}

Result<void> knownRoom(const std::string& name, const Facts<RoomFact>& rooms) {
    if (name.empty() || roomOn(rooms, name, Day::max()))
        return {};
    return badInput("/room", say("desk.unknown_room").with("name", excerpt(name)),
                    rooms.empty() ? say("desk.unknown_room.none") : facts::offerName(name, namesOf(rooms)));
}

Result<void> spelledAlike(const std::string& name, const Facts<RoomFact>& rooms) {
    for (const auto& stored : rooms)
        if (stored.fact.name != name && nameKey(stored.fact.name) == nameKey(name))
            return badInput("/name", say("desk.room.spelled").with("name", excerpt(name)),
                            say("desk.room.spelled.remedy").with("other", stored.fact.name));
    return {};
}

Result<void> checkYear(const RoomFact& room) {
    const auto& months = room.months;
    const auto gap = std::find(months.begin(), months.end(), std::nullopt);
    const bool anyMonth =
        std::any_of(months.begin(), months.end(), [](const auto& month) { return month.has_value(); });
    if (anyMonth) {
        if (room.coldest || room.warmest || room.coldestMonth)
            return badInput(room.coldest   ? "/coldest_c"
                            : room.warmest ? "/warmest_c"
                                           : "/coldest_month",
                            say("desk.room.both"), say("desk.room.both.remedy"));
        return gap == months.end() ? Result<void>{} : missing(facts::monthFields[std::size_t(gap - months.begin())]);
    }
    if (!room.coldest || !room.warmest || !room.coldestMonth)
        return missing(!room.coldest ? "coldest_c" : !room.warmest ? "warmest_c" : "coldest_month");
    if (*room.coldest > *room.warmest)
        return badInput("/warmest_c", say("desk.room.coldest_above"), say("desk.low_above_high.remedy"));
    return {};
}

Celsius warmthOn(const VesselRecord& record, Day day, Cellar& cellar, Day today) {
    const culture::AgeConditions kept = cellaringOn(record, day, cellar, today);
    return Celsius{kept.temperature.c + kept.apart[vessel::monthOf(day)]};
}

Result<void> roomsAreThere(Cellar& cellar, const std::string& path) {
    if (auto all = cellar.loadAll(); !all)
        return all;
    const auto rooms = cellar.shared().rooms;
    const auto there = [&](const std::string& room, const VesselRecord& record) -> Result<void> {
        if (room.empty() || roomOn(*rooms, room, Day::max()))
            return {};
        return badInput(path, say("desk.room.in_use").with("room", room).with("vessel", record.facts.name),
                        say("desk.room.in_use.remedy"));
    };
    for (const auto& stored : cellar.shared().vessels) {
        const auto record = cellar.vesselById(stored.id);
        if (!record)
            return fail(record.error());
        if (auto ok = there((*record)->made.room, **record); !ok)
            return ok;
        for (const auto& [id, refit] : (*record)->of<facts::RefitFact>())
            if (auto ok = there(refit.room.value_or(std::string()), **record); !ok)
                return ok;
    }
    return {};
}

Result<std::vector<RoomView>> Desk::rooms() const {
    Cellar& cellar = *inside_->cellar;
    if (auto shared = cellar.loadShared(); !shared)
        return fail(shared.error());
    const auto rooms = cellar.shared().rooms;
    std::vector<RoomView> views;
    for (const std::string& name : namesOf(*rooms)) {
        const RoomFact* latest = roomOn(*rooms, name, today());
        const auto stored =
            std::find_if(rooms->begin(), rooms->end(), [&](const auto& each) { return &each.fact == latest; });
        RoomView view{{stored->id, *latest},
                      yearOf(*latest),
                      offsetIn(name, cellar, today()),
                      roomReadings(name, cellar, today()),
                      {}};
        for (const auto& vessel : cellar.shared().vessels)
            if (vessel.fact.room == name)
                view.vessels.push_back(vessel.fact.name);
        views.push_back(std::move(view));
    }
    return views;
}

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
// The calendar file, read by a parser that is not ours (python3-icalendar) and against RFC 5545: 3.1 (lines end with
// CRLF and hold at most 75 octets), 3.3.11 (text is escaped), 3.6.1 and 3.6.2 (what an event and a task need), 3.8.2.2
// (the end of a day-long event is the day after), 3.8.4.7 (an identity that lasts).
#include "program.h"

#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* icalendarReader = R"(
import icalendar, json, sys
calendar = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())
out = []
for item in calendar.subcomponents:
    day = lambda name: item[name].dt.isoformat() if name in item else None
    out.append({'kind': item.name, 'uid': str(item['uid']), 'title': str(item['summary']), 'stamp': day('dtstamp'),
                'start': day('dtstart'), 'end': day('dtend'), 'due': day('due'), 'sequence': int(item['sequence']),
                'errors': len(item.errors)})
json.dump({'version': calendar['version'], 'producer': calendar['prodid'], 'items': out}, open(sys.argv[2], 'w'))
)";

struct Calendar : Terminal {
    Calendar() {
        expect("--today 2026-06-01 new s.cellar --sample");
        write("read.py", icalendarReader);
    }
    std::string text(const std::string& today, const std::string& more = "") {
        expect("--today " + today + " calendar s.cellar --out c.ics " + more);
        return readAll(scratch / "c.ics");
    }
    Json parsed(const std::string& today, const std::string& more = "") {
        text(today, more);
        const std::string folder = scratch.path().string();
        REQUIRE(std::system(("cd '" + folder + "' && /usr/bin/python3 read.py c.ics c.json 2>py.txt").c_str()) == 0);
        return Json::parse(readAll(scratch / "c.json"));
    }
    void record(const std::string& facts) {
        write("f.json", facts);
        expect("--today 2026-06-01 record s.cellar f.json");
    }
};

std::map<std::string, Json> byIdentity(const Json& calendar) {
    std::map<std::string, Json> items;
    for (const auto& item : calendar["items"])
        items[item["uid"]] = item;
    return items;
}

} // namespace

TEST_CASE_METHOD(Calendar, "a calendar file holds what an independent parser expects of it", "[app]") {
    const Json calendar = parsed("2026-06-01");
    CHECK(calendar["version"] == "2.0");
    CHECK_FALSE(calendar["producer"].get<std::string>().empty());
    std::set<std::string> identities;
    int tasks = 0;
    for (const auto& item : calendar["items"]) {
        CAPTURE(item.dump());
        CHECK(item["errors"] == 0);
        CHECK(item["stamp"] == "2026-06-01T00:00:00+00:00");
        CHECK(identities.insert(item["uid"]).second);
        if (item["kind"] == "VTODO") {
            ++tasks;
            CHECK(item["due"].is_string());
            CHECK(item["start"].is_null());
            continue;
        }
        CHECK(item["kind"] == "VEVENT");
        CHECK(item["start"].get<std::string>() >= "2026-06-01");
        CHECK(item["end"] > item["start"]); // the day after, as the whole-day end is not part of it
    }
    CHECK(tasks == 3); // one a vessel
    CHECK(calendar["items"].size() > 10);
}

TEST_CASE_METHOD(Calendar, "the days are those of the status", "[app]") {
    const Json status = Json::parse(expect("--today 2026-06-01 status s.cellar --json").out);
    const Json calendar = parsed("2026-06-01", "--vessel Plover");
    std::set<std::string> days;
    for (const auto& item : calendar["items"]) {
        CHECK(item["title"].get<std::string>().find("Plover") != std::string::npos);
        if (item["kind"] == "VEVENT")
            days.insert(item["start"]);
    }
    for (const char* job : {"sample", "brew", "draw"}) {
        CAPTURE(status[0].dump());
        CHECK(days.count(status[0]["dates"][job].get<std::string>()) == 1);
    }
}

TEST_CASE_METHOD(Calendar, "a later file brings the same entries up to date", "[app]") {
    const auto before = byIdentity(parsed("2026-06-01"));
    record(R"({"kind": "draw_date", "vessel": "Plover", "on": "2026-06-01", "draw_on": "2026-07-25"})");
    const auto after = byIdentity(parsed("2026-06-01"));
    int moved = 0;
    for (const auto& [identity, item] : before) {
        CAPTURE(item.dump());
        REQUIRE(after.contains(identity)); // re-read, not doubled
        CHECK(after.at(identity)["sequence"] > item["sequence"]);
        moved += after.at(identity)["start"] != item["start"];
    }
    CHECK(moved > 0);
    CHECK(after.size() == before.size());
}

TEST_CASE_METHOD(Calendar, "two books never share an entry, and a renamed vessel keeps its own", "[app]") {
    const auto first = byIdentity(parsed("2026-06-01"));
    record(R"({"kind": "vessel_edit", "vessel": "Plover", "name": "Grey Plover"})");
    for (const auto& [identity, item] : byIdentity(parsed("2026-06-01")))
        CHECK(first.contains(identity));
}

TEST_CASE_METHOD(Calendar, "lines, folding and escapes are those of the standard", "[app]") {
    record(R"({"kind": "vessel_edit", "vessel": "Plover",
               "name": "F\u00e4sschen; s\u00fc\u00df, \\ alt und sehr lang benannt im tiefsten Gew\u00f6lbe unter dem Hof"})");
    const std::string raw = text("2026-06-01");
    std::istringstream lines(raw);
    for (std::string line; std::getline(lines, line);) {
        CAPTURE(line);
        REQUIRE(line.ends_with('\r'));
        CHECK(line.size() - 1 <= 75);
    }
    CHECK(raw.find("\\;") != std::string::npos);
    CHECK(raw.find("\\,") != std::string::npos);
    CHECK(raw.find("\\\\") != std::string::npos);
    bool found = false;
    const Json calendar = parsed("2026-06-01");
    for (const auto& item : calendar["items"])
        found = found ||
                item["title"].get<std::string>().find("F\u00e4sschen; s\u00fc\u00df, \\ alt und") != std::string::npos;
    CHECK(found);
}

TEST_CASE_METHOD(Calendar, "a calendar has a file, a vessel that exists, and no place over a book", "[app][bad]") {
    CHECK(run("calendar s.cellar").status == 2);
    CHECK(run("calendar s.cellar --vessel Nobody --out c.ics").status == 2);
    CHECK(run("calendar s.cellar --out s.cellar").status == 3);
    CHECK(run("calendar s.cellar --out - --json").status == 2);
    CHECK(run("calendar s.cellar --out -").out.starts_with("BEGIN:VCALENDAR"));
}

TEST_CASE_METHOD(Calendar, "a first fill has entries of its own, and a drawn vessel still its brew", "[app]") {
    record(R"([{"kind": "vessel", "name": "Godwit", "capacity_l": 100},
               {"kind": "draw_off", "vessel": "Knot", "on": "2026-06-01", "volume_l": 300}])");
    const auto empty = byIdentity(parsed("2026-06-01", "--vessel Godwit"));
    int fills = 0;
    for (const auto& [identity, item] : empty) {
        fills += identity.find("fill") != std::string::npos;
        CHECK(item["title"].get<std::string>().find("draw 0") == std::string::npos);
    }
    CHECK(fills == 3); // the brew, the fill, and what is due first
    record(R"({"kind": "refill", "vessel": "Godwit", "on": "2026-06-01", "volume_l": 90})");
    for (const auto& [identity, item] : byIdentity(parsed("2026-06-01", "--vessel Godwit")))
        CHECK(identity.find("fill") == std::string::npos); // what was planned then is not this cycle's
    bool brewed = false;
    for (const auto& [identity, item] : byIdentity(parsed("2026-06-01", "--vessel Knot")))
        brewed = brewed || item["title"] == "Brew the refill of Knot";
    CHECK(brewed);
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/calendar.h"

#include <algorithm>
#include <libical/ical.h>
#include <limits>
#include <memory>

namespace staveline::sheet {
namespace {

icaltimetype dateOf(Day day) {
    const std::chrono::year_month_day date{day};
    icaltimetype time = icaltime_null_date();
    time.year = static_cast<int>(date.year());
    time.month = static_cast<int>(static_cast<unsigned>(date.month()));
    time.day = static_cast<int>(static_cast<unsigned>(date.day()));
    return time;
}

icaltimetype midnightUtc(Day day) {
    icaltimetype time = dateOf(day);
    time.is_date = time.hour = time.minute = time.second = 0;
    time.zone = icaltimezone_get_utc_timezone();
    return time;
}

/// The format counts changes in 31 bits.
int sequenceOf(std::int64_t revision) {
    return static_cast<int>(std::clamp<std::int64_t>(revision, 0, std::numeric_limits<int>::max()));
}

/// A day of work takes no hour of it: others may still be invited then.
icalcomponent* componentOf(const CalendarItem& item, Day written, std::int64_t revision) {
    const bool task = item.kind == CalendarItem::Kind::task;
    icalcomponent* entry = task ? icalcomponent_new_vtodo() : icalcomponent_new_vevent();
    const auto add = [&](icalproperty* property) { icalcomponent_add_property(entry, property); };
    add(icalproperty_new_uid(item.id.c_str()));
    add(icalproperty_new_dtstamp(midnightUtc(written)));
    add(icalproperty_new_sequence(sequenceOf(revision)));
    add(icalproperty_new_summary(item.title.c_str()));
    if (task) {
        add(icalproperty_new_due(dateOf(item.on)));
    } else {
        add(icalproperty_new_dtstart(dateOf(item.on)));
        add(icalproperty_new_dtend(dateOf(item.on + std::chrono::days{1})));
        add(icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
    }
    return entry;
}

} // namespace

std::string writeCalendar(const std::vector<CalendarItem>& items, Day written, std::int64_t revision) {
    const std::unique_ptr<icalcomponent, decltype(&icalcomponent_free)> calendar(icalcomponent_new_vcalendar(),
                                                                                 icalcomponent_free);
    icalcomponent_add_property(calendar.get(), icalproperty_new_version("2.0"));
    icalcomponent_add_property(calendar.get(), icalproperty_new_prodid("-//Staveline//Cellar calendar//EN"));
    for (const auto& item : items)
        icalcomponent_add_component(calendar.get(), componentOf(item, written, revision));
    const std::unique_ptr<char, decltype(&icalmemory_free_buffer)> text(icalcomponent_as_ical_string_r(calendar.get()),
                                                                        icalmemory_free_buffer);
    return text ? text.get() : "";
}

} // namespace staveline::sheet

// SPDX-License-Identifier: GPL-3.0-or-later
#include "vessel/room.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <numeric>

namespace staveline::vessel {

using std::chrono::year_month_day;

std::size_t monthOf(Day day) {
    return unsigned(year_month_day{day}.month()) - 1;
}

ByMonth yearBetween(Celsius coldest, Celsius warmest, std::size_t coldestMonth) {
    const double mean = (coldest.c + warmest.c) / 2, swing = (warmest.c - coldest.c) / 2;
    ByMonth year{};
    for (std::size_t i = 0; i < year.size(); ++i)
        year[i] = mean - swing * std::cos(std::numbers::pi / 6 * (static_cast<double>(i) - double(coldestMonth)));
    return year;
}

double meanOf(const ByMonth& year) {
    if (std::all_of(year.begin(), year.end(), [&](double value) { return value == year.front(); }))
        return year.front(); // to the last bit
    return std::accumulate(year.begin(), year.end(), 0.0) / double(year.size());
}

std::vector<Spell> spellsOf(const ByMonth& values, Day first, Days length) {
    std::vector<Spell> spells;
    Day at = first;
    for (double done = 0; done < length.d;) {
        const year_month_day date{at};
        const Day next{(date.year() / date.month() + std::chrono::months{1}) / 1};
        const double until = std::min(length.d, double(daysBetween(first, next)));
        const double value = values[monthOf(at)];
        if (spells.empty() || spells.back().value != value)
            spells.push_back({done, until, value});
        spells.back().until = until;
        done = until;
        at = next;
    }
    return spells;
}

RoomOffset offsetOf(std::span<const RoomReading> readings, double toldError, double readError) {
    struct Sum {
        double above = 0;
        int count = 0;
    };
    std::map<std::pair<int, std::size_t>, Sum> months;
    int leftOut = 0;
    for (const RoomReading& reading : readings) {
        if (std::abs(reading.above) > constants::room::slip) {
            ++leftOut;
            continue;
        }
        Sum& month = months[{int(year_month_day{reading.on}.year()), monthOf(reading.on)}];
        month.above += reading.above;
        ++month.count;
    }
    const double told = 1 / (toldError * toldError), read = 1 / (readError * readError);
    double weighed = 0;
    for (const auto& [month, sum] : months)
        weighed += read * sum.above / sum.count;
    const double known = told + read * double(months.size());
    return {weighed / known, 1 / std::sqrt(known), static_cast<int>(months.size()), leftOut};
}

} // namespace staveline::vessel

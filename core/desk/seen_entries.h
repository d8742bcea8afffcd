// SPDX-License-Identifier: GPL-3.0-or-later
// Which entries a day has: whether the very same one is there is known without looking through the day.
#pragma once

#include "facts/fact_list.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_set>

namespace staveline::desk {

template <class F> [[nodiscard]] Day dayOf(const F& fact) {
    if constexpr (requires { fact.sitting.on; })
        return fact.sitting.on;
    else
        return fact.on;
}

class SeenEntries {
public:
    /// False: it is not there. True: one that looks like it may be. `list` is of its kind, by day; a day is read once.
    template <class F, class List> bool perhaps(const F& fact, const List& list) {
        const Day on = dayOf(fact);
        auto day = days_.find({facts::kindOf<F>, on});
        if (day == days_.end()) {
            day = days_.emplace(std::pair(facts::kindOf<F>, on), Looks()).first;
            const auto earlier = [](const auto& stored, Day then) { return dayOf(stored.fact) < then; };
            for (auto at = std::lower_bound(list.begin(), list.end(), on, earlier);
                 at != list.end() && dayOf(at->fact) == on; ++at)
                day->second.insert(lookOf(at->fact));
        }
        return day->second.contains(lookOf(fact));
    }
    template <class F> void add(const F& fact) {
        if (const auto day = days_.find({facts::kindOf<F>, dayOf(fact)}); day != days_.end())
            day->second.insert(lookOf(fact));
    }

private:
    using Looks = std::unordered_set<std::size_t>;

    static void mix(std::size_t& look, std::size_t part) { look = look * 1099511628211U ^ part; }
    template <class T> static void mixNumber(std::size_t& look, const std::optional<T>& number) {
        mix(look, number ? std::hash<double>{}(raw(*number)) : 0);
    }
    template <class F> static std::size_t lookOf(const F& fact) {
        std::size_t look = 0;
        if constexpr (requires { fact.note; })
            mix(look, std::hash<std::string>{}(fact.note));
        if constexpr (requires { fact.volume; })
            mixNumber(look, std::optional(fact.volume));
        if constexpr (requires { fact.measured; }) {
            mixNumber(look, fact.measured.gravity);
            mixNumber(look, fact.measured.ph);
            mixNumber(look, fact.measured.ta);
            mixNumber(look, fact.measured.temperature);
            mixNumber(look, fact.measured.bitterness);
        }
        return look;
    }

    std::map<std::pair<std::string_view, Day>, Looks> days_;
};

} // namespace staveline::desk

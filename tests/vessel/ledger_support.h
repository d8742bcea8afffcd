// SPDX-License-Identifier: GPL-3.0-or-later
// Short ways to write ledgers in tests.
#pragma once

#include "support/catch.h"
#include "vessel/ledger.h"

#include <chrono>
#include <vector>

namespace staveline::ledger_tests {

inline constexpr Day start = Day{std::chrono::days(18000)}; // 2019-04-14

inline Day dayAfter(int days) {
    return start + std::chrono::days(days);
}

/// Collects entries with rising ids; days count from `start`.
class Book {
public:
    Book& opening(int day, double litres, double age = 0, double sd = 0) {
        vessel::LedgerEntry& entry = add(vessel::EntryKind::opening, day, litres);
        entry.age = Days{age};
        entry.ageSd = Days{sd};
        return *this;
    }
    Book& draw(int day, double litres) { return plain(vessel::EntryKind::drawOff, day, litres); }
    Book& sample(int day, double litres) { return plain(vessel::EntryKind::sample, day, litres); }
    Book& dip(int day, double litres) { return plain(vessel::EntryKind::dip, day, litres); }
    Book& reading(int day) { return plain(vessel::EntryKind::reading, day, 0); }
    Book& refill(int day, double litres, double age = 0, double sd = 0) {
        return aged(vessel::EntryKind::refill, day, litres, age, sd);
    }
    Book& topUp(int day, double litres, double age = 0) { return aged(vessel::EntryKind::topUp, day, litres, age, 0); }
    Book& transferOut(int day, double litres) {
        add(vessel::EntryKind::refill, day, litres).outOfThisVessel = true;
        return *this;
    }

    [[nodiscard]] vessel::Replay on(int day, vessel::VesselShape shape = {Litres{225}, Share{0}}) const {
        return replay(entries, shape, dayAfter(day));
    }

    std::vector<vessel::LedgerEntry> entries;

private:
    vessel::LedgerEntry& add(vessel::EntryKind kind, int day, double litres) {
        vessel::LedgerEntry entry;
        entry.id = static_cast<std::int64_t>(entries.size()) + 1;
        entry.kind = kind;
        entry.on = dayAfter(day);
        entry.volume = {litres};
        return entries.emplace_back(entry);
    }
    Book& plain(vessel::EntryKind kind, int day, double litres) {
        add(kind, day, litres);
        return *this;
    }
    Book& aged(vessel::EntryKind kind, int day, double litres, double age, double sd) {
        vessel::LedgerEntry& entry = add(kind, day, litres);
        entry.age = Days{age};
        entry.ageSd = Days{sd};
        return *this;
    }
};

/// A vessel of `volume` litres filled with beer of age `beerAge`, then `cycles` equal draws and refills.
inline Book solera(double volume, double drawn, int interval, double beerAge, int cycles) {
    Book book;
    book.opening(0, volume, beerAge);
    for (int n = 1; n <= cycles; ++n)
        book.draw(n * interval, drawn * volume).refill(n * interval, drawn * volume, beerAge);
    return book;
}

inline bool says(const vessel::Replay& replay, std::int64_t entry, std::string_view key) {
    for (const auto& finding : replay.findings)
        if (finding.entry == entry && finding.message.key == key)
            return true;
    return false;
}

} // namespace staveline::ledger_tests

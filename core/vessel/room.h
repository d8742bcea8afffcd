// SPDX-License-Identifier: GPL-3.0-or-later
// A room through the year, and what readings say of it.
#pragma once

#include "quantity/constants.h"
#include "quantity/day.h"
#include "quantity/units.h"

#include <array>
#include <span>
#include <vector>

namespace staveline::vessel {

/// A value for each month, January first, that holds from its first day to its last.
using ByMonth = std::array<double, 12>;

/// 0 (January) to 11.
[[nodiscard]] std::size_t monthOf(Day day);
/// [C], of a room that is coldest in the middle of one month, warmest half a year later, and swings between as a sine.
[[nodiscard]] ByMonth yearBetween(Celsius coldest, Celsius warmest, std::size_t coldestMonth);
/// Of twelve values.
[[nodiscard]] double meanOf(const ByMonth& year);

/// A stretch of days with one value; from and until count from the first day asked for.
struct Spell {
    double from = 0, until = 0; ///< [d]
    double value = 0;
};
/// What the months bring from `first` on, neighbours with the same value joined: of twelve equal ones one spell, as
/// long as was asked. Nothing for no days.
[[nodiscard]] std::vector<Spell> spellsOf(const ByMonth& values, Day first, Days length);

/// One reading against what was told of the room for its month.
struct RoomReading {
    Day on{};
    Celsius read{0};
    double above = 0; ///< [K]
};
/// How far the whole year lies above what was told [K].
struct RoomOffset {
    double value = 0;
    double sd = constants::room::toldError;
    int months = 0;  ///< that were read
    int leftOut = 0; ///< readings that are a slip or of something else
};
/// Shrunk towards what was told: readings of one month and year are one look at the room, as good as `readError`, and
/// what was told is as good as `toldError`. What lies further off than constants::room::slip counts for nothing.
/// Without readings: 0, with the error of what was told.
[[nodiscard]] RoomOffset offsetOf(std::span<const RoomReading> readings, double toldError = constants::room::toldError,
                                  double readError = constants::room::readError);

} // namespace staveline::vessel

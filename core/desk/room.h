// SPDX-License-Identifier: GPL-3.0-or-later
// A room as the window shows it: its year as told, as read, and as the model takes it.
#pragma once

#include "desk/filed.h"
#include "facts/facts.h"
#include "vessel/room.h"

namespace staveline::desk {

struct RoomView {
    Filed<facts::RoomFact> told; ///< the latest
    vessel::ByMonth year{};      ///< [C], as told
    vessel::RoomOffset offset;   ///< of the whole year, by the readings
    std::vector<vessel::RoomReading> readings;
    std::vector<facts::VesselName> vessels; ///< that stand in it
    /// [C], what beer ages at.
    [[nodiscard]] vessel::ByMonth reckoned() const;
};
/// All months are told, or the coldest one and both ends.
[[nodiscard]] bool tellsYear(const facts::RoomFact& room);
/// [C] by month. Only of a room that tells its year.
[[nodiscard]] vessel::ByMonth yearOf(const facts::RoomFact& room);

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
// Which room a vessel stands in, and how warm its beer is kept there.
#pragma once

#include "culture/vessel_state.h"
#include "desk/cellar.h"
#include "desk/room.h"

namespace staveline::desk {

/// The room of that name as it was on a day; before it was told of, as it was told first. None: nullptr.
[[nodiscard]] const facts::RoomFact* roomOn(const Facts<facts::RoomFact>& rooms, std::string_view name, Day day);
/// A vessel that stands in a room has the mean of its year for a temperature.
void takeRoom(facts::VesselFact& vessel, const Facts<facts::RoomFact>& rooms, Day day);
/// By the vessels that stand in it now, since they do, up to a day: the air of rounds, the beer of readings. By day.
[[nodiscard]] std::vector<vessel::RoomReading> roomReadings(const std::string& room, Cellar& cellar, Day until);
/// How a vessel is kept from `day` on, by what is known of its room on `today`; its days do not count.
[[nodiscard]] culture::AgeConditions cellaringOn(const VesselRecord& record, Day day, Cellar& cellar, Day today);
/// How warm a vessel is kept on a day, by what is known of its room on `today`.
[[nodiscard]] Celsius warmthOn(const VesselRecord& record, Day day, Cellar& cellar, Day today);
/// Each name that a vessel has for its room, now or before, is one of a room. Fault at `path`.
[[nodiscard]] Result<void> roomsAreThere(Cellar& cellar, const std::string& path);
/// Fault at "/room"; an empty name is none.
[[nodiscard]] Result<void> knownRoom(const std::string& name, const Facts<facts::RoomFact>& rooms);
/// The months are all told or none, and so is what stands for them; the coldest is no warmer than the warmest.
[[nodiscard]] Result<void> checkYear(const facts::RoomFact& room);
/// One name, one spelling. Fault at "/name".
[[nodiscard]] Result<void> spelledAlike(const std::string& name, const Facts<facts::RoomFact>& rooms);

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
// The first hour with a new book: what a vessel has to be told before it can be advised, and what of it is done.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace staveline::desk {

enum class FirstStep { vessel, beer, kit, recipe, character, tasting };
inline constexpr std::array firstStepsInOrder{FirstStep::vessel, FirstStep::beer,      FirstStep::kit,
                                              FirstStep::recipe, FirstStep::character, FirstStep::tasting};
[[nodiscard]] std::string_view name(FirstStep step); ///< "vessel", ...

struct FirstSteps {
    std::array<bool, firstStepsInOrder.size()> done{}; ///< of the vessel asked about
    bool begun = false; ///< some vessel has all of them behind it, or was drawn from: no new book

    [[nodiscard]] bool isDone(FirstStep step) const { return done[static_cast<std::size_t>(step)]; }
    [[nodiscard]] std::optional<FirstStep> next() const; ///< none: all are done
};

} // namespace staveline::desk

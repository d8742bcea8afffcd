// SPDX-License-Identifier: GPL-3.0-or-later
// Books as no brewer would keep them, though every entry is one that is taken.
#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace staveline::testing {

struct RandomBook {
    std::vector<std::string> vessels;
    int taken = 0, refused = 0; ///< entries
};

/// The same book for the same seed. Numbers lie at the ends of their fields as often as between. One book in three has
/// beer moved between vessels, one that was retired, and one that is empty or was emptied. `today`: YYYY-MM-DD.
[[nodiscard]] RandomBook makeRandomBook(const std::filesystem::path& file, std::uint64_t seed,
                                        const std::string& today);

} // namespace staveline::testing

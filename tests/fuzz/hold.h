// SPDX-License-Identifier: GPL-3.0-or-later
// What a fuzz target holds true of every input: anything else ends the run, and the input is kept.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <string_view>

namespace staveline::fuzz {

inline void hold(bool truth, const char* what) {
    if (truth)
        return;
    std::fprintf(stderr, "fuzz: not so: %s\n", what);
    std::abort();
}

inline std::string_view textOf(const std::uint8_t* data, std::size_t size) {
    return {reinterpret_cast<const char*>(data), size};
}

} // namespace staveline::fuzz

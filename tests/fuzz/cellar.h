// SPDX-License-Identifier: GPL-3.0-or-later
// The sample cellar as a book in a folder of its own, made once a run.
#pragma once

#include "desk/desk.h"
#include "facts/sample.h"
#include "fuzz/hold.h"
#include "support/scratch.h"

namespace staveline::fuzz {

inline constexpr Day today{std::chrono::days{20605}}; // 2026-06-01

/// The newest `facts` of it are left out: none is the whole cellar.
inline std::unique_ptr<desk::Desk> sampleBook(const std::filesystem::path& path, std::size_t facts = 0) {
    auto made = desk::Desk::create(path, [] { return today; });
    auto sample = facts::sampleCellar(today);
    hold(made && sample, "the sample cellar can be made");
    if (facts > 0)
        sample->resize(std::min(facts, sample->size()));
    hold((*made)->record(*sample).has_value(), "the sample cellar can be recorded");
    return std::move(*made);
}

} // namespace staveline::fuzz

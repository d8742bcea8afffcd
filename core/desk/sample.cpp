// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/sample.h"

#include "desk/json.h"
#include "resources/resources.h"

namespace staveline {
namespace {

/// The day the sample was written for; only what it promises lies after.
constexpr Day writtenFor = std::chrono::year{2026} / std::chrono::June / 1;

} // namespace

Result<std::vector<Fact>> sampleCellar(Day today) {
    auto facts = parseRecords(resources::find("demo-data/sample-cellar.json"));
    if (!facts)
        return fail(facts.error());
    for (auto& fact : *facts)
        shiftDays(fact, daysBetween(writtenFor, today));
    return facts;
}

} // namespace staveline

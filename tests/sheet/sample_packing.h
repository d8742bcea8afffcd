// SPDX-License-Identifier: GPL-3.0-or-later
// A packaging day by hand: 40 L of two vessels to 2.8 volumes in heavy bottles of 750 mL.
#pragma once

#include "finishing/yeast.h"
#include "sheet/packing_sheet.h"

#include "quantity/parse.h"

namespace staveline::sample {

inline sheet::PackingSheetInput packing() {
    sheet::PackingSheetInput in;
    in.name = "Plover <31>";
    in.on = parseDay("2026-03-02").value();
    in.parts = {{"Plover", {30}}, {"Knot", {10}}};
    in.lost = {1.2};
    in.wanted = {2.8};
    in.sugar = finishing::primingSugar("sucrose").value();
    in.residual = {{.9}, {.9}, true};
    in.priming = finishing::prime({{40}, {2.8}, {.9}, in.sugar, {12}, {750}, in.lost}).value();
    in.package.size = {750};
    in.package.make = finishing::bottleMake("heavy").value();
    finishing::GuardVerdict& verdict = in.verdict;
    verdict.answer = finishing::GuardAnswer::clear;
    verdict.gravity = SpecificGravity{1.001};
    verdict.floor = {1.000};
    verdict.pressures = {{.9}, {1.9}, {.5}, {0}, {3.8}};
    verdict.warmest = {30};
    verdict.limit = GaugePressure{4.5};
    verdict.limitVolumes = Co2Volumes{3.5};
    verdict.proof.stable = verdict.proof.forced = true;
    verdict.until = parseDay("2026-04-01").value();
    verdict.grounds = {say("finishing.ground.proven").with("until", *verdict.until)};
    in.cautions = finishing::packingCautions({});
    in.cautions.push_back(say("caution.blend.ferments"));
    in.cautions.push_back(say("caution.cellar.odd"));
    return in;
}

inline sheet::PackingSheetInput refusedPacking() {
    sheet::PackingSheetInput in = packing();
    in.verdict.answer = finishing::GuardAnswer::refused;
    in.verdict.until.reset();
    in.verdict.proof = {};
    in.verdict.proof.missing = {say("finishing.proof.warm")
                                    .with("least", Celsius{25})
                                    .with("most", Celsius{30})
                                    .with("days", Days{21})
                                    .with("within", Number{.001, 3})};
    in.verdict.refusals = {say("finishing.guard.no_rating")};
    return in;
}

} // namespace staveline::sample

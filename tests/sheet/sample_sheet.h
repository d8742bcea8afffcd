// SPDX-License-Identifier: GPL-3.0-or-later
// One brew day by hand: 88 L for a vessel of our own invention, with a rest, late oats and a cooler mash.
#pragma once

#include "resources/resources.h"
#include "sheet/brew_sheet.h"

namespace staveline::sample {

/// The built-in texts and the words that the adviser would give.
inline const Catalogue& texts() {
    static const Catalogue catalogue = [] {
        auto files = resources::under("texts/");
        files.push_back("test.title\tRest and cooler mash\n"
                        "test.mash\tSaccharification {to} instead of {from}\n"
                        "test.rest\tRest of {to} at {at}\n"
                        "test.reason\tFunk was {by} short of what is wanted.\n"
                        "test.limit\tTwo cycles are needed.\n"
                        "test.finding\tThe mash is {by} too large for the tun.\n"
                        "caution.cellar.odd\tA caution of no step.\n");
        return Catalogue::parse(files);
    }();
    return catalogue;
}

inline Day day(std::string_view iso) {
    return parseDay(iso).value();
}

inline brewing::BrewPlan plan() {
    brewing::BrewPlan plan;
    plan.intoVessel = {88};
    plan.intoFermenter = {97.2};
    plan.leftOver = {4};
    plan.strikeAndInfusion = {62.5};
    plan.mashVolume = {76.3};
    plan.sparge = {68};
    plan.preBoilHot = {115};
    plan.postBoilHot = {106};
    plan.grist = {{"pilsner", "Pilsner malt", {15.4}, {.7}, false},
                  {"wheat_malt", "Wheat malt", {4.4}, {.2}, false},
                  {"flaked_oats", "Flaked oats", {2.2}, {.1}, true}};
    plan.gristMass = {22};
    plan.sugar = {.6};
    plan.sugarName = "sucrose";
    plan.mash = {{{45}, {20}, brewing::MashStage::How::strike, {44}, {48.5}, {}, {55}},
                 {{63}, {75}, brewing::MashStage::How::infusion, {18.5}, {96}, {}, {74}},
                 {{72}, {15}, brewing::MashStage::How::heat, {0}, {0}, {9}, {76.3}}};
    plan.hops = {{"bittering hops", {48}, {.05}, {60}, {9.5}}};
    plan.originalGravity = {12.1};
    plan.finalGravity = {2.3};
    plan.alcohol = {5.1};
    plan.bitterness = {9.5};
    plan.colour = {7};
    plan.yeastName = "ale yeast, clean";
    plan.primaryDays = 14;
    return plan;
}

inline advice::Proposal proposal() {
    advice::Proposal p;
    p.title = say("test.title");
    advice::Move rest, mash;
    rest.lever = "ferulic_rest";
    rest.wording = say("test.rest").with("to", Minutes{20}).with("at", Celsius{45});
    rest.next = Scores{{0, .4, 0}};
    rest.settled = Scores{{0, .9, -.1}};
    rest.cautions = {say("caution.mash.restEatsGlucan")};
    mash.lever = "sacch_temperature";
    mash.wording = say("test.mash").with("to", Celsius{63}).with("from", Celsius{66});
    mash.next = Scores{{-.13, 0, 0}};
    mash.settled = Scores{{-.46, 0, 0}};
    p.moves = {rest, mash};
    p.reasons = {say("test.reason").with("by", Points{1.4})};
    p.limits = {say("test.limit")};
    return p;
}

/// `chosen` must outlive what is returned.
inline sheet::BrewSheetInput input(const advice::Proposal* chosen) {
    sheet::BrewSheetInput in;
    in.vessel = "Plover";
    in.brewery = "Marsh Gate Cellar";
    in.brew = "Brew 32";
    in.on = day("2026-03-02");
    in.plan = plan();
    in.recipe.boil = {60};
    in.recipe.mashPh = {5.6};
    in.recipe.sugar = "sucrose";
    in.recipe.sugarShare = {.03};
    in.recipe.yeast = "ale_clean";
    in.chosen = chosen;
    in.dates.sample = day("2026-03-01");
    in.dates.brew = day("2026-03-14");
    in.dates.draw = day("2026-03-31");
    in.dates.nextSample = day("2026-10-27");
    in.dates.nextDraw = day("2026-11-26");
    in.draw = {85};
    in.expected[Dimension::acidity] = advice::Band{6.1, 5.2, 7};
    in.expected[Dimension::funk] = advice::Band{4.2, 2.9, 5.5};
    in.forecastNote = "Model 1, told on 2026-03-02.";
    return in;
}

} // namespace staveline::sample

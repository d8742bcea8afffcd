// SPDX-License-Identifier: GPL-3.0-or-later
// One record of every kind with every field filled, and what a whole book says, in one text.
#pragma once

#include "desk/support.h"
#include "facts/codec.h"

namespace staveline::testing {

/// In an order that can be recorded one after the other on 2026-03-02. Values differ from the defaults.
inline constexpr const char* fullRecords = R"([
 {"kind": "room", "on": "2024-11-01", "name": "Loft", "coldest_c": 2.5, "warmest_c": 27, "coldest_month": "february",
  "note": "under the tiles"},
 {"kind": "room", "on": "2024-11-02", "name": "Barn", "january_c": 7, "february_c": 8, "march_c": 10, "april_c": 13,
  "may_c": 17, "june_c": 20, "july_c": 22, "august_c": 21, "september_c": 19, "october_c": 16, "november_c": 12,
  "december_c": 9, "note": "door open"},
 {"kind": "vessel", "name": "Plover", "shape": "foeder", "material": "oak new", "capacity_l": 600,
  "temperature_c": 14.5, "room": "Barn", "temperature_can_change": true, "interval_d": 200, "wanted_age_years": 1.75, "draw_share": 0.3,
  "sample_days_before_draw": 25, "evaporation_per_year": 0.03, "oxygen_mg_l_year": 9.5, "culture_held_back": 0.4,
  "draw_may_move": true, "interval_may_move": true, "fills_before": 2,
  "note": "north wall", "retired_on": null, "retired_reason": ""},
 {"kind": "vessel", "name": "Dunlin", "shape": "keg", "material": "steel", "capacity_l": 50, "temperature_c": 12,
  "temperature_can_change": true, "interval_d": 90, "wanted_age_years": 0.5, "draw_share": 0.5, "sample_days_before_draw": 10,
  "evaporation_per_year": 0.001, "oxygen_mg_l_year": 1, "culture_held_back": 0.2,
  "draw_may_move": true, "interval_may_move": false, "fills_before": 1, "note": "seal replaced",
  "retired_on": "2025-12-01", "retired_reason": "lid bent"},
 {"kind": "equipment", "on": "2025-01-10", "name": "60 L kit", "mash_tun_l": 80, "kettle_l": 90, "fermenter_l": 75,
  "mash_and_lauter_efficiency": 0.78, "boil_off_l_h": 6.5, "kettle_loss_l": 3, "cooling_shrinkage": 0.035,
  "grain_absorption_l_kg": 1.1, "fermenter_loss_share": 0.06, "transfer_loss_l": 0.7, "heating_rate_c_min": 0.8,
  "tun_water_equivalent_kg": 4, "grain_temperature_c": 15, "water_boils_c": 98.5, "brew_length_l": 60,
  "margin_share": 0.08, "vessel": "Plover"},
 {"kind": "culture", "vessel": "Plover", "on": "2025-01-11", "name": "house", "brettanomyces": "young",
  "killer_sensitive": false, "diastatic": true, "hop_tolerance_ibu": 14, "note": "from a neighbour's cask"},
 {"kind": "opening", "vessel": "Plover", "on": "2025-02-01", "at": "10:15", "turn": 1, "volume_l": 560, "age_years": 2.5, "age_sd_years": 0.5,
  "years_running": 5, "usual_interval_d": 210, "usual_draw_share": 0.32, "gravity_sg": 1.004, "ph": 3.41,
  "ta_g_l": 5.9, "temperature_c": 13.5, "ibu": 9, "note": "taken over"},
 {"kind": "base_recipe", "vessel": "Plover", "on": "2025-02-01",
  "grist": [{"grain": "pilsner", "share": 0.6, "late": false}, {"grain": "wheat_malt", "share": 0.3, "late": false},
            {"grain": "flaked_oats", "share": 0.1, "late": true}],
  "sugar_share": 0.05, "sugar": "dextrose", "mash": [{"temperature_c": 45, "minutes": 15},
  {"temperature_c": 64, "minutes": 70}], "path": "ramp", "mash_ph": 5.4, "liquor_to_grist_l_kg": 3.2,
  "original_gravity_p": 11.5, "bitterness_ibu": 9, "hops": [{"name": "old leaf", "alpha_share": 0.03, "minutes": 90,
  "bitterness_share": 1}], "yeast": "ale_low", "boil_min": 90, "pre_soured_share": 0.1, "pre_sour_ta_g_l": 7},
 {"kind": "target", "vessel": "Plover", "on": "2025-02-02", "acidity": 6, "acidity_band": 0.75, "funk": 5,
  "funk_band": 1.5, "body": 3.5, "body_band": 0.5, "bitterness_ceiling_ibu": 12, "gravity_low_p": 11,
  "gravity_high_p": 13.5, "alcohol_low_pct": 5, "alcohol_high_pct": 7.5,
  "wanted_traits": [{"fault": "ropy", "severity": 1}], "set_by": "Rook"},
 {"kind": "brew", "name": "Brew 4", "vessel": "Plover", "on": "2025-03-01",
  "grist": [{"grain": "pale", "share": 1, "late": false, "mass_kg": 18.4}], "sugar_share": 0.02, "sugar": "honey",
  "mash": [{"temperature_c": 67, "minutes": 50}], "path": "ramp", "mash_ph": 5.3, "liquor_to_grist_l_kg": 2.8,
  "original_gravity_p": 12.5, "bitterness_ibu": 11, "hops": [{"name": "leaf", "alpha_share": 0.06, "minutes": 45,
  "bitterness_share": 1}], "yeast": "ale_high", "boil_min": 75, "pre_soured_share": 0.2, "pre_sour_ta_g_l": 9,
  "measured_original_gravity_sg": 1.0502, "measured_final_gravity_sg": 1.0081, "into_fermenter_l": 86,
  "note": "slow run-off"},
 {"kind": "own_grain", "on": "2025-03-02", "ingredient": "barn_vienna", "name": "Vienna from the barn", "like": "vienna",
  "type": "kilned", "extract_dry_share": 0.78, "moisture_share": 0.05, "extract_as_is_share": 0.77,
  "fermentable_share": 0.6, "colour_ebc": 9, "diastatic_power_wk": 190, "beta_glucan_share": 0.004, "glucanase": 0.5,
  "arabinoxylan_g_l": 1.2, "ferulic_free_mg_kg": 4.5, "ferulic_bound_mg_kg": 47, "coumaric_free_mg_kg": 3.1,
  "coumaric_bound_mg_kg": 43, "esterase": 0.6, "lactic_share": 0.001, "max_share": 0.9, "note": "lot 7"},
 {"kind": "own_yeast", "on": "2025-03-02", "ingredient": "loft_saison", "name": "saison from the loft", "like": "saison",
  "takes_maltose": 0.99, "takes_maltotriose": 0.9, "takes_dextrin": 0.01, "pof": true, "glycerol_g_l": 2.4,
  "killer_positive": true, "primary_d": 20, "note": "third slant"},
 {"kind": "own_hop", "on": "2025-03-02", "ingredient": "yard_leaf", "name": "leaf from the yard", "like": "hops_low",
  "alpha_share": 0.035, "lost_in_six_months": 0.5, "stored_c": 8, "packed": "closed", "age_d": 30, "note": "dried slowly"},
 {"kind": "draw_off", "vessel": "Plover", "on": "2025-04-01", "at": "10:15", "turn": 1, "volume_l": 90, "lot": "Draw 1", "gravity_sg": 1.003,
  "ph": 3.38, "ta_g_l": 6.1, "temperature_c": 14, "ibu": 8, "note": "bright"},
 {"kind": "refill", "vessel": "Plover", "on": "2025-04-01", "at": "10:15", "turn": 1, "volume_l": 62, "brew": "Brew 4", "age_d": 28,
  "note": "by gravity"},
 {"kind": "vessel", "name": "Knot", "shape": "carboy", "material": "glass", "capacity_l": 54},
 {"kind": "refill", "vessel": "Knot", "on": "2025-05-01", "at": "10:15", "turn": 1, "volume_l": 40, "from": "Plover", "age_d": 400,
  "note": "seed"},
 {"kind": "top_up", "vessel": "Plover", "on": "2025-06-01", "at": "10:15", "turn": 1, "volume_l": 10, "brew": "Brew 4", "age_d": 60,
  "note": "after the heat"},
 {"kind": "top_up", "vessel": "Knot", "on": "2025-06-02", "at": "10:15", "turn": 1, "volume_l": 2, "from": "Plover", "age_d": 410,
  "note": "to the neck"},
 {"kind": "lot_reading", "lot": "Draw 1", "on": "2025-06-03", "gravity_sg": 1.0028, "ph": 3.37, "ta_g_l": 6.05,
  "temperature_c": 25, "ibu": 7.5, "kept_warm": true, "note": "two weeks on the stove"},
 {"kind": "lot_move", "lot": "Draw 1", "on": "2025-06-04", "volume_l": 40, "to": "Draw 1 on fruit", "why": "joined",
  "note": "the tall keg"},
 {"kind": "lot_addition", "lot": "Draw 1 on fruit", "on": "2025-06-04", "what": "fruit", "ingredient": "sour_cherry",
  "mass_kg": 6, "note": "frozen"},
 {"kind": "lot_addition", "lot": "Draw 1", "on": "2025-06-05", "what": "wort", "ingredient": "first runnings",
  "volume_l": 1.5, "extract_p": 14, "note": "boiled"},
 {"kind": "packaging", "lot": "Draw 1 on fruit", "on": "2025-06-30", "name": "Cherry 25", "package": "keg",
  "size_ml": 19000, "count": 2, "make": "thick", "rating_bar": 8, "sugar": "dextrose", "sugar_g_l": 3.5,
  "planned_vol": 2.4, "residual_vol": 1.1, "warmest_c": 22, "lost_l": 0.8, "override_reason": "a valve opens at 6 bar", "verdict": "Refused",
  "until": "2025-09-30", "note": "dip tubes short"},
 {"kind": "opened", "packaging": "Cherry 25", "on": "2025-08-30", "count": 1, "what": "given", "fizz": "high",
  "found_vol": 2.9, "acidity": 6.5, "funk": 4, "body": 3.5, "note": "to the neighbours"},
 {"kind": "refill", "vessel": "Knot", "on": "2025-06-20", "at": "10:15", "turn": 1, "volume_l": 6, "lot": "Draw 1",
  "age_d": 390, "note": "the rest of the jug"},
 {"kind": "top_up", "vessel": "Knot", "on": "2025-06-21", "at": "10:15", "turn": 1, "volume_l": 1, "lot": "Draw 1",
  "age_d": 391, "note": "to the neck again"},
 {"kind": "reading", "vessel": "Plover", "on": "2025-07-01", "at": "10:15", "turn": 1, "gravity_sg": 1.0031, "ph": 3.36, "ta_g_l": 6.2,
  "temperature_c": 15, "ibu": 8.5, "note": "meter calibrated"},
 {"kind": "sample", "vessel": "Plover", "on": "2025-08-01", "at": "10:15", "turn": 1, "volume_l": 0.4, "gravity_sg": 1.0029, "ph": 3.35,
  "ta_g_l": 6.3, "temperature_c": 16, "ibu": 8.4, "note": "through the nail"},
 {"kind": "dip", "vessel": "Plover", "on": "2025-08-02", "at": "10:15", "turn": 1, "volume_l": 480, "note": "stick"},
 {"kind": "event", "vessel": "Plover", "on": "2025-08-02", "at": "10:15", "turn": 1, "what": "cleaned", "volume_l": 3, "note": "hot water, two manways open"},
 {"kind": "event", "vessel": "Plover", "on": "2025-08-06", "at": "10:20", "turn": 1, "what": "pitched", "culture": "house slurry", "note": "two litres"},
 {"kind": "round", "vessel": "Plover", "on": "2025-08-02", "bung": "loose", "weep": "damp", "pellicle": "full",
  "smell": "vinegar", "room_c": 19.5, "purged": true, "next_look": "2025-09-02", "note": "third stave"},
 {"kind": "draw_date", "vessel": "Plover", "on": "2025-04-20", "draw_on": "2025-12-20", "reason": "the lees"},
 {"kind": "work_date", "vessel": "Plover", "on": "2025-04-20", "what": "taste", "due_on": "2025-11-20", "reason": "the lees"},
 {"kind": "sitting", "vessel": "Plover", "on": "2025-08-03", "scores": [
  {"taster": "Rook", "attribute": "TA1", "cold": 6.5, "cellar": 7}, {"taster": "Rook", "attribute": "TA2", "cold": 6}],
  "faults": [{"fault": "ropy", "severity": 1}], "note": "third glass", "draw_it": true,
  "learn": false, "learn_reason": "the glasses smelt of soap"},
 {"kind": "sitting", "vessel": "Plover", "on": "2025-08-20", "scores": [
  {"taster": "Wren", "attribute": "TA1", "cold": 2.5}]},
 {"kind": "sitting_use", "vessel": "Plover", "sitting": "2025-08-20", "which": 1, "learn": false,
  "reason": "Wren had a cold"},
 {"kind": "lock", "vessel": "Plover", "on": "2025-08-04", "lever": "bitterness", "value": 9, "choice": "",
  "locked": true},
 {"kind": "lock", "vessel": "Plover", "on": "2025-08-05", "lever": "sacch_path", "choice": "ramp", "locked": true},
 {"kind": "lock", "vessel": "Plover", "on": "2025-08-06", "lever": "sacch_path", "locked": false},
 {"kind": "availability", "on": "2025-08-07", "item": "rye_malt", "available": false, "ready_on": "2026-05-01",
  "mass_kg": 0, "best_before": "2026-12-01"},
 {"kind": "availability", "on": "2025-08-08", "item": "loft_saison", "available": true, "packs": 2},
 {"kind": "choice", "vessel": "Plover", "on": "2026-03-01", "proposal": 2, "forecast": {
  "acidity_mean": 5.5, "acidity_sd": 0.8, "funk_mean": 4.2, "funk_sd": 1.1, "body_mean": 3.9, "body_sd": 0.4,
  "recipe": {"grist": [{"grain": "pilsner", "share": 1, "late": false}], "mash": [{"temperature_c": 63, "minutes": 75}],
             "bitterness_ibu": 9, "yeast": "ale_low"},
  "target": {"acidity": 6, "funk": 5}, "draw_l": 180, "interval_d": 190, "temperature_c": 15,
  "this_draw": "2026-04-01", "next_draw": "2026-10-08", "moves": ["saccharification 63 instead of 64"],
  "reasons": ["less to sour"], "model_version": "2026.11", "fingerprint": "0123456789abcdef"},
  "draw_overruled": true, "interval_overruled": true, "temperature_overruled": true, "turn": 3},
 {"kind": "refit", "vessel": "Plover", "on": "2025-12-21", "capacity_l": 600, "material": "oak new",
  "temperature_c": 14.5, "evaporation_per_year": 0.03, "oxygen_mg_l_year": 9.5, "culture_held_back": 0.4, "clear": []},
 {"kind": "refit", "vessel": "Plover", "on": "2025-12-22", "room": "Barn"},
 {"kind": "retire", "vessel": "Knot", "on": "2026-02-10", "reason": "leaks"},
 {"kind": "bring_back", "vessel": "Knot", "on": "2026-02-15"},
 {"kind": "vessel_edit", "vessel": "Knot", "name": "Sanderling", "shape": "tank", "material": "plastic",
  "capacity_l": 60, "temperature_c": 17, "temperature_can_change": true, "interval_d": 300, "wanted_age_years": 2.5, "draw_share": 0.4,
  "sample_days_before_draw": 20, "evaporation_per_year": 0.02, "oxygen_mg_l_year": 30, "culture_held_back": 0.1,
  "draw_may_move": true, "interval_may_move": true, "fills_before": 3,
  "note": "moved to the loft"},
 {"kind": "retire", "vessel": "Sanderling", "on": "2026-02-20", "reason": "cracked"}
])";

inline std::vector<facts::Fact> fullFacts() {
    auto facts = facts::parseRecords(fullRecords);
    if (!facts)
        FAIL(facts.error().path << ": " << render(facts.error().cause));
    return *facts;
}

/// Everything a book holds and says, as text: what is stored, and what each vessel's ledger makes of it.
inline std::string wholeBook(const desk::Desk& desk) {
    std::vector<facts::Fact> stored;
    for (const auto& table : facts::cellarSchema().tables)
        for (std::int64_t id = 1; id < 40; ++id)
            if (auto fact = desk.fact(table.name, id))
                stored.push_back(*fact);
    std::string text;
    const auto cellar = desk.cellar().value();
    for (const auto& vessel : cellar) {
        stored.emplace_back(vessel.facts);
        const auto ledger = desk.ledger(vessel.name);
        for (const auto& line : ledger->lines)
            text += isoDay(line.on) + " " + render(line.text) + " " + std::to_string(line.volumeAfter.l) + " " +
                    std::to_string(line.meanAgeAfter.d) + " " + std::to_string(line.findings.size()) + "\n";
        text +=
            facts::recipeJson(desk.setting(vessel.name)->recipe) + "\n" + vessel.name + " " + render(vessel.headline);
        const auto locks = desk.locks(vessel.name);
        for (const auto& lock : *locks)
            text += "lock " + lock.lever + "\n";
    }
    for (const auto& brew : desk.brews())
        text += brew.name + " for " + brew.vessel + "\n";
    return text + desk::toJson(cellar) + facts::writeRecords(stored);
}

} // namespace staveline::testing

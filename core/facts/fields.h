// SPDX-License-Identifier: GPL-3.0-or-later
// Every fact described once: field names with their unit, ranges and what is required. A visitor makes of it a JSON
// reader, a JSON writer, a validator, table columns or table rows. A new field is one line here.
#pragma once

#include "facts/facts.h"
#include "ingredient/pantry.h"
#include "quantity/constants.h"

#include <array>
#include <concepts>
#include <limits>
#include <span>
#include <string_view>

namespace staveline::facts {

/// What a text may hold; quantity/words.h.
enum class Holds { line, prose, name, time, room };

struct Field {
    std::string_view name;
    double low = -std::numeric_limits<double>::infinity();
    double high = std::numeric_limits<double>::infinity();
    bool required = false;
    UnitKind unit = UnitKind::none; ///< of a bare number; a quantity knows its own
    bool later = false;             ///< came to a table that was there: older rows are empty and mean the default
    Holds holds = Holds::line;      ///< of a text
};

template <class T, class Plain>
concept Like = std::same_as<std::remove_const_t<T>, Plain>;

inline constexpr double maxLitres = 100000;
inline constexpr std::size_t longestList = 5000; ///< of grains, rests, scores and the like
inline constexpr Field timeField{.name = "at", .later = true, .holds = Holds::time}; ///< "14:30"
inline constexpr Field turnField{"turn", 0, 9999};
inline constexpr Field noteField{.name = "note", .holds = Holds::prose};

template <class V> void describe(V& v, Like<brewing::GristPart> auto& part) {
    v.field(Field{.name = "grain", .required = true}, part.grain);
    v.field(Field{"share", 0, 1, true}, part.share);
    v.field(Field{"late"}, part.late);
    v.field(Field{"mass_kg", .001, 100000}, part.mass);
}
template <class V> void describe(V& v, Like<brewing::MashStep> auto& step) {
    v.field(Field{"temperature_c", 20, 80, true}, step.temperature);
    v.field(Field{"minutes", 0, 600, true}, step.minutes);
}
template <class V> void describe(V& v, Like<brewing::HopAddition> auto& hop) {
    v.field(Field{"name"}, hop.name);
    v.field(Field{"alpha_share", 0.001, 0.3}, hop.alpha);
    v.field(Field{"minutes", 0, 600}, hop.boiled);
    v.field(Field{"bitterness_share", 0, 1}, hop.ofBitterness);
}
template <class V> void describe(V& v, Like<brewing::Recipe> auto& recipe) {
    v.list(Field{"grist"}, recipe.grist);
    v.field(Field{"sugar_share", 0, 0.25}, recipe.sugarShare);
    v.field(Field{"sugar"}, recipe.sugar);
    v.list(Field{"mash"}, recipe.mash);
    v.word(Field{"path"}, recipe.path, factWords::paths);
    v.field(Field{"mash_ph", 4.8, 6.4}, recipe.mashPh);
    v.field(Field{"liquor_to_grist_l_kg", 1.5, 10}, recipe.liquorToGrist);
    v.extract("original_gravity", recipe.originalGravity);
    v.field(Field{"bitterness_ibu", 0, 100}, recipe.bitterness);
    v.list(Field{"hops"}, recipe.hops);
    v.field(Field{"yeast"}, recipe.yeast);
    v.field(Field{"boil_min", 0, 300}, recipe.boil);
    v.field(Field{"pre_soured_share", 0, 1}, recipe.preSoured);
    v.field(Field{"pre_sour_ta_g_l", 1, 15}, recipe.preSourTa);
}
/// What a plan of one's own may change beside the recipe.
template <class V> void describeHandling(V& v, auto& setting) {
    v.field(Field{"draw_l", 0.001, maxLitres}, setting.draw);
    v.field(Field{"interval_d", 1, 3650}, setting.interval);
    v.field(Field{"temperature_c", -2, 35}, setting.temperature);
}
template <class V> void describe(V& v, Like<brewing::Equipment> auto& kit) {
    v.field(Field{"name"}, kit.name);
    v.field(Field{"mash_tun_l", 1, maxLitres}, kit.mashTun);
    v.field(Field{"kettle_l", 1, maxLitres}, kit.kettle);
    v.field(Field{"fermenter_l", 1, maxLitres}, kit.fermenter);
    v.field(Field{"mash_and_lauter_efficiency", 0.3, 1}, kit.efficiency);
    v.field(Field{"boil_off_l_h", 0, 5000}, kit.boilOff);
    v.field(Field{"kettle_loss_l", 0, 5000}, kit.kettleLoss);
    v.field(Field{"cooling_shrinkage", 0, 0.1}, kit.shrinkage);
    v.field(Field{"grain_absorption_l_kg", 0, 3}, kit.absorption);
    v.field(Field{"fermenter_loss_share", 0, 0.5}, kit.fermenterLoss);
    v.field(Field{"transfer_loss_l", 0, 1000}, kit.transferLoss);
    v.field(Field{"heating_rate_c_min", 0.05, 10}, kit.heatingRate);
    v.field(Field{"tun_water_equivalent_kg", 0, 5000}, kit.tunWaterEquivalent);
    v.field(Field{"grain_temperature_c", -10, 40}, kit.grainTemperature);
    v.field(Field{.name = "water_boils_c", .low = 85, .high = 101, .later = true}, kit.waterBoils);
}
template <class V> void describe(V& v, Like<tasting::FaultMark> auto& mark) {
    v.field(Field{.name = "fault", .required = true}, mark.fault);
    v.field(Field{"severity", 0, 3, true}, mark.severity);
}
template <class V> void describe(V& v, Like<tasting::Score> auto& score) {
    v.field(Field{"taster"}, score.taster);
    v.field(Field{.name = "attribute", .required = true}, score.attribute);
    v.field(Field{"cold", 0, 10}, score.cold);
    v.field(Field{"cellar", 0, 10}, score.cellar);
}
template <class V> void describe(V& v, Like<tasting::Target> auto& target) {
    constexpr std::array<std::string_view, 3> bands = {"acidity_band", "funk_band", "body_band"};
    for (Dimension d : allDimensions) {
        v.field(Field{name(d), 0, 10}, target.windows[d].wanted);
        v.field(Field{bands[static_cast<std::size_t>(d)], 0.25, 4}, target.windows[d].band);
    }
    v.field(Field{"bitterness_ceiling_ibu", 0, 100}, target.bitternessCeiling);
    v.extract("gravity_low", target.gravityLow);
    v.extract("gravity_high", target.gravityHigh);
    v.field(Field{"alcohol_low_pct", 0, 20}, target.alcoholLow);
    v.field(Field{"alcohol_high_pct", 0, 20}, target.alcoholHigh);
    v.list(Field{"wanted_traits"}, target.wantedTraits);
    v.field(Field{"set_by"}, target.setBy);
}
template <class V> void describe(V& v, Like<Measured> auto& measured) {
    v.gravity("gravity", measured.gravity);
    v.field(Field{"ph", 2.2, 7}, measured.ph);
    v.field(Field{"ta_g_l", 0, 40}, measured.ta);
    v.field(Field{"temperature_c", -5, 45}, measured.temperature);
    v.field(Field{"ibu", 0, 150}, measured.bitterness);
}
template <class V> void describe(V& v, Like<Forecast> auto& forecast) {
    constexpr std::array<std::string_view, 3> sds = {"acidity_sd", "funk_sd", "body_sd"};
    constexpr std::array<std::string_view, 3> means = {"acidity_mean", "funk_mean", "body_mean"};
    constexpr std::array<std::string_view, 3> lows = {"acidity_low", "funk_low", "body_low"};
    constexpr std::array<std::string_view, 3> highs = {"acidity_high", "funk_high", "body_high"};
    for (Dimension d : allDimensions) {
        v.field(Field{means[static_cast<std::size_t>(d)], -10, 20}, forecast.mean[d]);
        v.field(Field{sds[static_cast<std::size_t>(d)], 0, 100}, forecast.sd[d]);
        v.field(Field{lows[static_cast<std::size_t>(d)], -10, 20}, forecast.low[d]);
        v.field(Field{highs[static_cast<std::size_t>(d)], -10, 20}, forecast.high[d]);
    }
    v.nested(Field{.name = "recipe", .required = true}, forecast.recipe);
    v.nested(Field{"target"}, forecast.target);
    v.field(Field{"draw_l", 0, maxLitres, true}, forecast.draw);
    v.field(Field{"interval_d", 1, 3650}, forecast.interval);
    v.field(Field{"temperature_c", -5, 45}, forecast.temperature);
    v.field(Field{.name = "this_draw", .required = true}, forecast.thisDraw);
    v.field(Field{.name = "next_draw", .required = true}, forecast.nextDraw);
    v.list(Field{"moves"}, forecast.moves);
    v.list(Field{"reasons"}, forecast.reasons);
    v.field(Field{"model_version"}, forecast.modelVersion);
    v.field(Field{"fingerprint"}, forecast.fingerprint);
}

// --- the facts themselves ------------------------------------------------------------------------------------------

template <class V> void describe(V& v, Like<VesselFact> auto& f) {
    v.field(Field{.name = "name", .required = true, .holds = Holds::name}, f.name);
    v.word(Field{"shape"}, f.shape, factWords::shapes);
    v.word(Field{"material"}, f.material, factWords::materials);
    v.field(Field{"capacity_l", 1, maxLitres, true}, f.capacity);
    v.field(Field{"temperature_c", -2, 35}, f.temperature);
    v.field(Field{.name = "room", .later = true, .holds = Holds::room}, f.room);
    v.field(Field{"temperature_can_change"}, f.canChangeTemperature);
    v.field(Field{"interval_d", 7, 3650}, f.interval);
    v.field(Field{.name = "wanted_age_years", .low = 0.05, .high = 100, .unit = UnitKind::years}, f.wantedAgeYears);
    v.field(Field{"draw_share", 0.01, 1}, f.drawShare);
    v.field(Field{"sample_days_before_draw", 0, 365}, f.sampleBefore);
    v.field(Field{"evaporation_per_year", 0, 0.5}, f.evaporationPerYear);
    v.field(Field{.name = "oxygen_mg_l_year", .low = 0, .high = 1000, .unit = UnitKind::oxygenUptake}, f.oxygenPerYear);
    v.field(Field{"culture_held_back", 0, 0.99}, f.cultureHeldBack);
    v.field(Field{.name = "draw_may_move", .later = true}, f.drawMayMove);
    v.field(Field{.name = "interval_may_move", .later = true}, f.intervalMayMove);
    v.field(Field{.name = "fills_before", .low = 0, .high = 1000, .later = true}, f.fillsBefore);
    v.field(noteField, f.note);
    v.field(Field{"retired_on"}, f.retired);
    v.field(Field{"retired_reason"}, f.retiredReason);
}
template <class V> void describe(V& v, Like<VesselEditFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on"}, f.on);
    v.field(Field{.name = "name", .holds = Holds::name}, f.name);
    v.word(Field{"shape"}, f.shape, factWords::shapes);
    v.word(Field{"material"}, f.material, factWords::materials);
    v.field(Field{"capacity_l", 1, maxLitres}, f.capacity);
    v.field(Field{"temperature_c", -2, 35}, f.temperature);
    v.field(Field{.name = "room", .holds = Holds::room}, f.room);
    v.field(Field{"temperature_can_change"}, f.canChangeTemperature);
    v.field(Field{"interval_d", 7, 3650}, f.interval);
    v.field(Field{.name = "wanted_age_years", .low = 0.05, .high = 100, .unit = UnitKind::years}, f.wantedAgeYears);
    v.field(Field{"draw_share", 0.01, 1}, f.drawShare);
    v.field(Field{"sample_days_before_draw", 0, 365}, f.sampleBefore);
    v.field(Field{"evaporation_per_year", 0, 0.5}, f.evaporationPerYear);
    v.field(Field{.name = "oxygen_mg_l_year", .low = 0, .high = 1000, .unit = UnitKind::oxygenUptake}, f.oxygenPerYear);
    v.field(Field{"culture_held_back", 0, 0.99}, f.cultureHeldBack);
    v.field(Field{"draw_may_move"}, f.drawMayMove);
    v.field(Field{"interval_may_move"}, f.intervalMayMove);
    v.field(Field{"fills_before", 0, 1000}, f.fillsBefore);
    v.field(noteField, f.note);
    v.list(Field{"clear"}, f.clear);
}
template <class V> void describe(V& v, Like<RefitFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"capacity_l", 1, maxLitres}, f.capacity);
    v.word(Field{"material"}, f.material, factWords::materials);
    v.field(Field{"temperature_c", -2, 35}, f.temperature);
    v.field(Field{.name = "room", .holds = Holds::room}, f.room);
    v.field(Field{"evaporation_per_year", 0, 0.5}, f.evaporationPerYear);
    v.field(Field{.name = "oxygen_mg_l_year", .low = 0, .high = 1000, .unit = UnitKind::oxygenUptake}, f.oxygenPerYear);
    v.field(Field{"culture_held_back", 0, 0.99}, f.cultureHeldBack);
    v.list(Field{"clear"}, f.clear);
}
inline constexpr std::array<std::string_view, 12> monthFields = {
    "january_c", "february_c", "march_c",     "april_c",   "may_c",      "june_c",
    "july_c",    "august_c",   "september_c", "october_c", "november_c", "december_c"};
template <class V> void describe(V& v, Like<RoomFact> auto& f) {
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{.name = "name", .required = true, .holds = Holds::name}, f.name);
    v.field(Field{"coldest_c", -20, 45}, f.coldest);
    v.field(Field{"warmest_c", -20, 45}, f.warmest);
    v.word(Field{"coldest_month"}, f.coldestMonth, factWords::months);
    for (std::size_t i = 0; i < monthFields.size(); ++i)
        v.field(Field{monthFields[i], -20, 45}, f.months[i]);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<RetireFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"reason"}, f.reason);
}
template <class V> void describe(V& v, Like<BringBackFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
}
template <class V> void describe(V& v, Like<CultureFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"name"}, f.name);
    v.word(Field{"brettanomyces"}, f.brettanomyces, factWords::brett);
    v.field(Field{"killer_sensitive"}, f.killerSensitive);
    v.field(Field{"diastatic"}, f.diastatic);
    v.field(Field{"hop_tolerance_ibu", 1, 100}, f.hopTolerance);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<EquipmentFact> auto& f) {
    v.field(Field{.name = "on", .required = true}, f.on);
    describe(v, f.equipment);
    v.field(Field{"brew_length_l", 1, maxLitres}, f.brewLength);
    v.field(Field{"margin_share", 0, 0.5}, f.margin);
    v.vessel(Field{"vessel"}, f.vessel);
}
template <class V> void describe(V& v, Like<BaseRecipeFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    describe(v, f.recipe);
}
template <class V> void describe(V& v, Like<TargetFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    describe(v, f.target);
}
template <class V> void describe(V& v, Like<OpeningFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.field(Field{"volume_l", 0.01, maxLitres, true}, f.volume);
    v.field(Field{.name = "age_years", .low = 0, .high = 100, .unit = UnitKind::years}, f.ageYears);
    v.field(Field{.name = "age_sd_years", .low = 0, .high = 50, .unit = UnitKind::years}, f.ageSdYears);
    v.field(Field{.name = "years_running", .low = 0, .high = 100, .unit = UnitKind::years}, f.yearsRunning);
    v.field(Field{"usual_interval_d", 7, 3650}, f.usualInterval);
    v.field(Field{"usual_draw_share", 0.01, 1}, f.usualShare);
    describe(v, f.measured);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V> void describe(V& v, Like<SittingFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.sitting.on);
    v.list(Field{"scores"}, f.sitting.scores);
    v.list(Field{"faults"}, f.sitting.faults);
    v.field(noteField, f.sitting.note);
    v.field(Field{"draw_it"}, f.sitting.drawIt);
    v.field(Field{.name = "learn", .later = true}, f.learn);
    v.field(Field{.name = "learn_reason", .later = true}, f.learnReason);
}
template <class V> void describe(V& v, Like<SittingUseFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "sitting", .required = true}, f.sitting);
    v.field(Field{"which", 1, 99}, f.which);
    v.field(Field{.name = "learn", .required = true}, f.learn);
    v.field(Field{"reason"}, f.reason);
}
template <class V> void describe(V& v, Like<ReadingFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    describe(v, f.measured);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V> void describe(V& v, Like<SampleFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.field(Field{"volume_l", 0.001, maxLitres}, f.volume);
    describe(v, f.measured);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V> void describe(V& v, Like<DipFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.field(Field{"volume_l", 0, maxLitres, true}, f.volume);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V> void describe(V& v, Like<DrawOffFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.field(Field{"volume_l", 0.001, maxLitres, true}, f.volume);
    v.field(Field{"lot"}, f.lot);
    describe(v, f.measured);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V, class F>
requires Like<F, RefillFact> || Like<F, TopUpFact>
void describe(V& v, F& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.field(Field{"volume_l", 0.001, maxLitres, true}, f.volume);
    v.brew(Field{"brew"}, f.brew);
    v.vessel(Field{"from"}, f.from);
    v.field(Field{"age_d", 0, 20000}, f.age);
    v.field(Field{.name = "lot", .later = true}, f.lot);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
template <class V> void describe(V& v, Like<EventFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(timeField, f.at);
    v.word(Field{.name = "what", .required = true}, f.what, factWords::happenings);
    v.field(Field{.name = "culture", .later = true}, f.culture);
    v.field(Field{.name = "volume_l", .low = 0, .high = maxLitres, .later = true}, f.volume);
    v.field(noteField, f.note);
    v.field(turnField, f.turn);
}
inline constexpr Field lotField{.name = "lot", .required = true, .holds = Holds::name};
template <class V> void describe(V& v, Like<LotReadingFact> auto& f) {
    v.field(lotField, f.lot);
    v.field(Field{.name = "on", .required = true}, f.on);
    describe(v, f.measured);
    v.field(Field{"kept_warm"}, f.keptWarm);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<LotAdditionFact> auto& f) {
    v.field(lotField, f.lot);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.word(Field{.name = "what", .required = true}, f.what, factWords::added);
    v.field(Field{"ingredient"}, f.ingredient);
    v.field(Field{"mass_kg", 0.00001, 100000}, f.mass);
    v.field(Field{"volume_l", 0.00001, maxLitres}, f.volume);
    v.field(Field{"extract_p", 1, 40}, f.extract);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<LotMoveFact> auto& f) {
    v.field(lotField, f.lot);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"volume_l", 0.001, maxLitres, true}, f.volume);
    v.field(Field{"to"}, f.to);
    v.word(Field{"why"}, f.why, factWords::lotMoves);
    v.field(noteField, f.note);
}
/// Of sizes: a small bottle, a large keg.
template <class V> void describe(V& v, Like<PackagingFact> auto& f) {
    namespace limit = constants::finishing;
    v.field(lotField, f.lot);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{.name = "name", .required = true, .holds = Holds::name}, f.name);
    v.word(Field{.name = "package"}, f.kind, factWords::packages);
    v.field(Field{"size_ml", limit::smallestBottle, 200000, true}, f.size);
    v.field(Field{"count", 1, 100000, true}, f.count);
    v.field(Field{"make"}, f.make);
    v.field(Field{"rating_bar", limit::leastRating, limit::mostRating}, f.rating);
    v.field(Field{"sugar"}, f.sugar);
    v.field(Field{"sugar_g_l", 0, limit::mostPriming}, f.sugarWeight);
    v.field(Field{"planned_vol", 0, limit::mostVolumes}, f.planned);
    v.field(Field{"residual_vol", 0, limit::mostVolumes}, f.residual);
    v.field(Field{"warmest_c", -2, limit::hottest}, f.warmest);
    v.field(Field{"lost_l", 0, maxLitres}, f.lost);
    v.field(Field{.name = "override_reason", .holds = Holds::prose}, f.overrideReason);
    v.field(Field{.name = "verdict", .holds = Holds::prose}, f.verdict);
    v.field(Field{"until"}, f.until);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<OpenedFact> auto& f) {
    v.field(Field{.name = "packaging", .required = true, .holds = Holds::name}, f.packaging);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"count", 1, 100000}, f.count);
    v.word(Field{"what"}, f.what, factWords::packageUses);
    v.word(Field{"fizz"}, f.fizz, factWords::fizzes);
    v.field(Field{"found_vol", 0, 10}, f.found);
    v.field(Field{.name = "acidity", .low = 0, .high = 10, .unit = UnitKind::points}, f.acidity);
    v.field(Field{.name = "funk", .low = 0, .high = 10, .unit = UnitKind::points}, f.funk);
    v.field(Field{.name = "body", .low = 0, .high = 10, .unit = UnitKind::points}, f.body);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<RoundFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.word(Field{"bung"}, f.bung, factWords::bungs);
    v.word(Field{"weep"}, f.weep, factWords::weeps);
    v.word(Field{"pellicle"}, f.pellicle, factWords::pellicles);
    v.word(Field{"smell"}, f.smell, factWords::smells);
    v.field(Field{"room_c", -20, 45}, f.room);
    v.field(Field{"purged"}, f.purged);
    v.field(Field{"next_look"}, f.nextLook);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<DrawDateFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"draw_on"}, f.drawOn);
    v.field(Field{.name = "reason", .holds = Holds::prose}, f.reason);
}
template <class V> void describe(V& v, Like<WorkDateFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.word(Field{.name = "what", .required = true}, f.work, factWords::works);
    v.field(Field{"due_on"}, f.workOn);
    v.field(Field{.name = "reason", .holds = Holds::prose}, f.reason);
}
template <class V> void describe(V& v, Like<BrewFact> auto& f) {
    v.field(Field{.name = "name", .required = true, .holds = Holds::name}, f.name);
    v.vessel(Field{"vessel"}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    describe(v, f.recipe);
    v.gravity("measured_original_gravity", f.originalGravity);
    v.gravity("measured_final_gravity", f.finalGravity);
    v.field(Field{"into_fermenter_l", 0.1, maxLitres}, f.intoFermenter);
    v.field(noteField, f.note);
}
/// Whose it is and what it is like; all three kinds of one's own begin with it.
template <class V> void describeOwn(V& v, auto& f) {
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{.name = "ingredient", .required = true, .holds = Holds::name}, f.item.id);
    v.field(Field{.name = "name", .required = true, .holds = Holds::name}, f.item.name);
    v.field(Field{.name = "like", .required = true}, f.like);
}
/// Ranges as in resources/data/columns.csv.
template <class V> void describe(V& v, Like<OwnGrainFact> auto& f) {
    auto& g = f.item;
    describeOwn(v, f);
    v.word(Field{"type"}, g.kind, ingredient::grainKinds);
    v.field(Field{"extract_dry_share", 0, 1, false, UnitKind::share}, g.extractDryBasis);
    v.field(Field{"moisture_share", 0, .3, false, UnitKind::share}, g.moisture);
    v.field(Field{"extract_as_is_share", 0, 1, false, UnitKind::share}, g.extractAsIs);
    v.field(Field{"fermentable_share", 0, 1}, f.fermentable);
    v.field(Field{"colour_ebc", 0, 1800}, g.colour);
    v.field(Field{"diastatic_power_wk", 0, 600, false, UnitKind::enzymePower}, g.diastaticPowerWk);
    v.field(Field{"beta_glucan_share", 0, .08, false, UnitKind::share}, g.betaGlucan);
    v.field(Field{"glucanase", 0, 2, false, UnitKind::share}, g.glucanase);
    v.field(Field{"arabinoxylan_g_l", 0, 10, false, UnitKind::concentration}, g.arabinoxylan);
    v.field(Field{"ferulic_free_mg_kg", 0, 30, false, UnitKind::content}, g.ferulicFree);
    v.field(Field{"ferulic_bound_mg_kg", 0, 200, false, UnitKind::content}, g.ferulicBound);
    v.field(Field{"coumaric_free_mg_kg", 0, 30, false, UnitKind::content}, g.coumaricFree);
    v.field(Field{"coumaric_bound_mg_kg", 0, 200, false, UnitKind::content}, g.coumaricBound);
    v.field(Field{"esterase", 0, 2, false, UnitKind::share}, g.esterase);
    v.field(Field{"lactic_share", 0, .06, false, UnitKind::share}, g.lactic);
    v.field(Field{"max_share", 0, 1, false, UnitKind::share}, g.maxShare);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<OwnYeastFact> auto& f) {
    auto& y = f.item;
    describeOwn(v, f);
    v.field(Field{"takes_maltose", 0, 1, false, UnitKind::share}, y.takesMaltose);
    v.field(Field{"takes_maltotriose", 0, 1, false, UnitKind::share}, y.takesMaltotriose);
    v.field(Field{"takes_dextrin", 0, 1, false, UnitKind::share}, y.takesDextrin);
    v.field(Field{"pof"}, y.pof);
    v.field(Field{"glycerol_g_l", 0, 15, false, UnitKind::concentration}, y.glycerolAt12P);
    v.field(Field{"killer_positive"}, y.killerPositive);
    v.field(Field{"primary_d", 3, 60}, f.primary);
    v.field(noteField, y.note);
}
template <class V> void describe(V& v, Like<OwnHopFact> auto& f) {
    auto& h = f.item;
    describeOwn(v, f);
    v.field(Field{"alpha_share", .001, .25}, h.alpha);
    v.field(Field{"lost_in_six_months", .05, .8}, h.lostInSixMonths);
    v.field(Field{"stored_c", -25, 25}, h.storedAt);
    v.word(Field{"packed"}, h.packed, ingredient::hopPacks);
    v.field(Field{"age_d", 0, 3652.5}, h.age);
    v.field(noteField, f.note);
}
template <class V> void describe(V& v, Like<LockFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{.name = "lever", .required = true}, f.lever);
    v.field(Field{"value"}, f.value);
    v.field(Field{"choice"}, f.choice);
    v.field(Field{"locked"}, f.locked);
}
template <class V> void describe(V& v, Like<AvailabilityFact> auto& f) {
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{.name = "item", .required = true}, f.item);
    v.field(Field{"available"}, f.available);
    v.field(Field{"ready_on"}, f.readyOn);
    v.field(Field{"mass_kg", 0, 100000}, f.mass);
    v.field(Field{"packs", 0, 10000}, f.packs);
    v.field(Field{"best_before"}, f.bestBefore);
}
template <class V> void describe(V& v, Like<ChoiceFact> auto& f) {
    v.vessel(Field{.name = "vessel", .required = true}, f.vessel);
    v.field(Field{.name = "on", .required = true}, f.on);
    v.field(Field{"proposal", -1, 3}, f.proposal);
    v.object(Field{"forecast"}, f.forecast);
    v.field(Field{.name = "draw_overruled", .later = true}, f.drawOverruled);
    v.field(Field{.name = "interval_overruled", .later = true}, f.intervalOverruled);
    v.field(Field{.name = "temperature_overruled", .later = true}, f.temperatureOverruled);
    v.field(turnField, f.turn);
}

// --- built-in ingredients copied into the book on first use ----------------------------------------------------------

template <class V> void describe(V& v, Like<ingredient::Grain> auto& g) {
    v.field(Field{.name = "ingredient", .required = true}, g.id);
    v.field(Field{"name"}, g.name);
    v.number(Field{"kind", 0, 20}, g.kind);
    v.field(Field{"extract_dry_basis", 0, 1.05}, g.extractDryBasis);
    v.field(Field{"moisture", 0, 0.3}, g.moisture);
    v.field(Field{"colour_ebc", 0, 2000}, g.colour);
    v.field(Field{"diastatic_power_wk", 0, 600}, g.diastaticPowerWk);
    v.field(Field{"ferulic_free_mg_kg", 0, 100}, g.ferulicFree);
    v.field(Field{"ferulic_bound_mg_kg", 0, 1000}, g.ferulicBound);
    v.field(Field{"esterase", 0, 5}, g.esterase);
    v.field(Field{"coumaric_free_mg_kg", 0, 100}, g.coumaricFree);
    v.field(Field{"coumaric_bound_mg_kg", 0, 1000}, g.coumaricBound);
    v.field(Field{"beta_glucan_kg_kg", 0, 0.2}, g.betaGlucan);
    v.field(Field{"glucanase", 0, 5}, g.glucanase);
    v.field(Field{"arabinoxylan_g_l", 0, 10}, g.arabinoxylan);
    v.field(Field{.name = "lactic", .low = 0, .high = .1, .later = true}, g.lactic);
    v.field(Field{"own_rdf", -1, 1}, g.ownRdf);
    v.field(Field{"max_share", 0, 1}, g.maxShare);
    v.field(Field{"extract_as_is", 0, 1.05}, g.extractAsIs);
    v.field(Field{"source"}, g.source);
}
template <class V> void describe(V& v, Like<ingredient::Yeast> auto& y) {
    v.field(Field{.name = "ingredient", .required = true}, y.id);
    v.field(Field{"name"}, y.name);
    v.field(Field{"takes_maltose", 0, 1}, y.takesMaltose);
    v.field(Field{"takes_maltotriose", 0, 1}, y.takesMaltotriose);
    v.field(Field{"takes_dextrin", 0, 1}, y.takesDextrin);
    v.field(Field{"pof"}, y.pof);
    v.field(Field{"glycerol_g_l", 0, 20}, y.glycerolAt12P);
    v.field(Field{"killer_positive"}, y.killerPositive);
    v.field(Field{"primary_days", 1, 365}, y.primaryDays);
    v.field(noteField, y.note);
    v.field(Field{"source"}, y.source);
}

} // namespace staveline::facts

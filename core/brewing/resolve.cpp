// SPDX-License-Identifier: GPL-3.0-or-later
// resolve(): every rule a recipe must keep before it can be brewed. The first one broken is the fault.
#include "brewing/grist.h"
#include "quantity/constants.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace staveline::brewing {
namespace {

using Check = std::optional<Fault>;
constexpr double shareTolerance = .005; ///< how far shares may miss 1 before it is a mistake

Fault fault(std::string path, Message cause, Message remedy) {
    return {FaultKind::input, std::move(path), std::move(cause), std::move(remedy)};
}

/// Written so that "not a number" is outside too.
template <Quantity Q> Check outside(std::string path, Q given, Q low, Q high) {
    if (given >= low && given <= high)
        return {};
    return fault(std::move(path), say("brewing.out_of_range").with("given", given),
                 say("brewing.use_between").with("low", low).with("high", high));
}

/// In both scales: it may have been typed in the one that is not shown.
Check gravityOutside(Plato given) {
    constexpr Plato low{2}, high{25};
    if (!outside("", given, low, high))
        return {};
    if (given.p > 1 && given.p < 1.2) // no wort, but every specific gravity
        return fault(
            "/original_gravity_p", say("brewing.gravity_in_plato").with("plato", Number{given.p, 3}),
            say("brewing.gravity_in_plato.remedy").with("low_p", Number{low.p, 0}).with("high_p", Number{high.p, 0}));
    return fault("/original_gravity_p",
                 say("brewing.gravity_out_of_range").with("given", given).with("plato", Number{given.p, 1}),
                 say("brewing.gravity_out_of_range.remedy")
                     .with("low", low)
                     .with("high", high)
                     .with("low_p", Number{low.p, 0})
                     .with("high_p", Number{high.p, 0}));
}

std::string at(std::string_view list, std::size_t place, std::string_view field) {
    return "/" + std::string(list) + "/" + std::to_string(place) + "/" + std::string(field);
}

Check first(std::initializer_list<Check> checks) {
    for (const auto& check : checks)
        if (check)
            return check;
    return {};
}

Check checkNumbers(const Recipe& r) {
    return first({outside("/sugar_share", r.sugarShare, Share{0}, Share{.25}),
                  outside("/mash_ph", r.mashPh, Ph{4.8}, Ph{6.4}),
                  outside("/liquor_to_grist_l_kg", r.liquorToGrist, LitresPerKilogram{1.5}, LitresPerKilogram{10}),
                  gravityOutside(r.originalGravity), outside("/bitterness_ibu", r.bitterness, Ibu{0}, Ibu{100}),
                  outside("/boil_min", r.boil, Minutes{0}, Minutes{300}),
                  outside("/pre_soured_share", r.preSoured, Share{0}, Share{1}),
                  outside("/pre_sour_ta_g_l", r.preSourTa, GramsPerLitre{1}, GramsPerLitre{15})});
}

Check checkMash(const std::vector<MashStep>& mash) {
    if (mash.empty())
        return fault("/mash", say("brewing.no_mash"), say("brewing.no_mash_remedy"));
    for (std::size_t i = 0; i < mash.size(); ++i) {
        const auto& [temperature, minutes] = mash[i];
        const auto path = at("mash", i, "temperature_c");
        if (temperature > Celsius{80})
            return fault(path, say("brewing.mash_too_hot").with("given", temperature),
                         say("brewing.use_between").with("low", Celsius{35}).with("high", Celsius{80}));
        if (auto bad = outside(path, temperature, Celsius{35}, Celsius{80}))
            return bad;
        if (!(minutes > Minutes{0}))
            return fault(at("mash", i, "minutes"), say("brewing.no_time"), say("brewing.no_time_remedy"));
        if (auto bad = outside(at("mash", i, "minutes"), minutes, Minutes{0}, Minutes{600}))
            return bad;
        if (i > 0 && temperature < mash[i - 1].temperature)
            return fault(path,
                         say("brewing.mash_falls").with("given", temperature).with("before", mash[i - 1].temperature),
                         say("brewing.mash_falls_remedy"));
    }
    return {};
}

Check checkSum(std::string path, std::string_view key, double sum) {
    if (std::abs(sum - 1) <= shareTolerance)
        return {};
    return fault(std::move(path), say(std::string(key)).with("sum", Share{sum}),
                 say("brewing.sum_remedy").with("missing", Share{1 - sum}));
}

Check checkHops(const Recipe& recipe) {
    double sum = 0;
    for (std::size_t i = 0; i < recipe.hops.size(); ++i) {
        const auto& hop = recipe.hops[i];
        if (auto bad = first({outside(at("hops", i, "alpha_share"), hop.alpha, Share{.001}, Share{.3}),
                              outside(at("hops", i, "minutes"), hop.boiled, Minutes{0}, recipe.boil),
                              outside(at("hops", i, "bitterness_share"), hop.ofBitterness, Share{0}, Share{1})}))
            return bad;
        sum += hop.ofBitterness.of1;
    }
    return recipe.hops.empty() ? Check{} : checkSum("/hops", "brewing.hops_sum", sum);
}

Check checkGristShares(const Recipe& recipe) {
    if (recipe.grist.empty())
        return fault("/grist", say("brewing.empty_grist"), say("brewing.empty_grist_remedy"));
    double sum = 0;
    bool allLate = true;
    for (std::size_t i = 0; i < recipe.grist.size(); ++i) {
        const auto& part = recipe.grist[i];
        if (!(part.share > Share{0}))
            return fault(at("grist", i, "share"), say("brewing.no_share"), say("brewing.no_share_remedy"));
        if (auto bad = outside(at("grist", i, "share"), part.share, Share{0}, Share{1 + shareTolerance}))
            return bad;
        if (part.late && recipe.mash.size() < 2)
            return fault(at("grist", i, "late"), say("brewing.late_without_rest"),
                         say("brewing.late_without_rest_remedy"));
        allLate &= part.late;
        sum += part.share.of1;
    }
    if (allLate)
        return fault("/grist", say("brewing.all_late"), say("brewing.all_late_remedy"));
    return checkSum("/grist", "brewing.grist_sum", sum);
}

Result<std::vector<BrewInput::Part>> lookUpGrist(const std::vector<GristPart>& grist,
                                                 const ingredient::Pantry& pantry) {
    std::vector<BrewInput::Part> parts;
    double sum = 0;
    for (const auto& part : grist)
        sum += part.share.of1;
    for (std::size_t i = 0; i < grist.size(); ++i) {
        const auto path = at("grist", i, "grain");
        auto grain = pantry.grain(grist[i].grain, path);
        if (!grain)
            return fail(grain.error());
        if (grain->isSugar())
            return badInput(path, say("brewing.sugar_in_grist").with("name", grain->name),
                            say("brewing.sugar_in_grist_remedy"));
        parts.push_back({*std::move(grain), grist[i].share / sum, grist[i].late});
    }
    return parts;
}

Result<ingredient::Grain> lookUpSugar(const Recipe& recipe, const ingredient::Pantry& pantry) {
    if (recipe.sugarShare <= Share{0})
        return ingredient::Grain{};
    auto sugar = pantry.grain(recipe.sugar, "/sugar");
    if (sugar && !sugar->isSugar())
        return badInput("/sugar", say("brewing.not_a_sugar").with("name", sugar->name),
                        say("brewing.not_a_sugar_remedy"));
    return sugar;
}

Check checkExtract(std::span<const BrewInput::Part> grist) {
    const bool any = std::any_of(grist.begin(), grist.end(),
                                 [](const BrewInput::Part& part) { return part.grain.dryExtract() > 0; });
    return any ? Check{} : fault("/grist", say("brewing.no_extract"), say("brewing.no_extract_remedy"));
}

Check checkPower(std::span<const BrewInput::Part> grist) {
    constexpr double least = constants::grist::leastPower;
    const double power = convertingPower(grist);
    if (power >= least)
        return {};
    return fault("/grist", say("brewing.will_not_convert").with("power", Number{power, 0}),
                 say("brewing.will_not_convert_remedy").with("least", Number{least, 0}));
}

} // namespace

Result<BrewInput> resolve(const Recipe& recipe, const ingredient::Pantry& pantry, CelsiusPerMinute kitRate) {
    const auto ramp = rampRate(recipe, kitRate);
    if (auto bad = first({checkGristShares(recipe), checkMash(recipe.mash), checkNumbers(recipe), checkHops(recipe),
                          outside("/heating_rate_c_min", ramp, CelsiusPerMinute{.05}, CelsiusPerMinute{20})}))
        return fail(*std::move(bad));
    auto grist = lookUpGrist(recipe.grist, pantry);
    if (!grist)
        return fail(std::move(grist).error());
    auto sugar = lookUpSugar(recipe, pantry);
    if (!sugar)
        return fail(std::move(sugar).error());
    auto yeast = pantry.yeast(recipe.yeast, "/yeast");
    if (!yeast)
        return fail(std::move(yeast).error());
    if (auto bad = first({checkExtract(*grist), checkPower(*grist)}))
        return fail(*std::move(bad));
    return BrewInput{.grist = *std::move(grist),
                     .recipe = recipe,
                     .yeast = *std::move(yeast),
                     .ramp = ramp,
                     .sugar = *std::move(sugar)};
}

} // namespace staveline::brewing

// SPDX-License-Identifier: GPL-3.0-or-later
// Lots in lines for a reader and as JSON for machines.
#include "desk/lots.h"

#include "quantity/text.h"
#include "tasting/verdict.h"

#include <nlohmann/json.hpp>

namespace staveline::desk {
namespace {

using Json = nlohmann::ordered_json;

Json dayOrNone(const std::optional<Day>& day) {
    return day ? Json(isoDay(*day)) : Json();
}

Json partJson(const LotPartView& part) {
    Json generations = Json::array();
    for (const LotGeneration& one : part.generations)
        generations.push_back({{"brew", one.brew}, {"on", isoDay(one.on)}, {"share", one.share.of1}});
    return {{"vessel", part.vessel},   {"added", part.added}, {"on", isoDay(part.on)},     {"litres", part.litres.l},
            {"share", part.share.of1}, {"age_d", part.age.d}, {"generations", generations}};
}

Json packageJson(const PackageView& package) {
    return {{"name", package.name},
            {"on", isoDay(package.on)},
            {"package", wordOf(package.kind)},
            {"size_ml", package.size.ml},
            {"count", package.count},
            {"left", package.left},
            {"planned_vol", package.planned ? Json(package.planned->vol) : Json()},
            {"found_vol", package.found ? Json(package.found->vol) : Json()},
            {"fizz", package.fizz ? Json(wordOf(*package.fizz)) : Json()},
            {"first_opened", dayOrNone(package.firstOpened)},
            {"verdict", package.verdict},
            {"override_reason", package.overrideReason},
            {"until", dayOrNone(package.until)},
            {"id", package.id}};
}

Json traitsJson(const LotView& lot) {
    Json traits = Json::object();
    for (const LotTrait& trait : lot.traits)
        traits[std::string(wordOf(trait.trait))] = {
            {"value", trait.value}, {"plus_minus_80", trait.sd * tasting::z80}, {"measured", trait.measured}};
    return traits;
}

Json json(const LotView& lot) {
    Json parts = Json::array(), lines = Json::array(), packages = Json::array(), waits = Json::array();
    for (const LotPartView& part : lot.parts)
        parts.push_back(partJson(part));
    for (const LotLine& line : lot.lines)
        lines.push_back({{"on", isoDay(line.on)},
                         {"what", render(line.text)},
                         {"after_l", line.after.l},
                         {"table", line.table},
                         {"id", line.id},
                         {"note", line.note}});
    for (const PackageView& package : lot.packages)
        packages.push_back(packageJson(package));
    for (const LotWait& wait : lot.waits)
        waits.push_back(
            {{"what", wordOf(wait.work)}, {"on", isoDay(wait.on)}, {"in_d", wait.inDays}, {"text", render(wait.text)}});
    return {{"lot", lot.name},
            {"stage", wordOf(lot.stage)},
            {"since", isoDay(lot.since)},
            {"litres", lot.litres.l},
            {"mean_age_d", lot.meanAge.d},
            {"beer", traitsJson(lot)},
            {"gravity_sg", lot.gravity ? Json(lot.gravity->sg) : Json()},
            {"gravity_on", dayOrNone(lot.gravityOn)},
            {"parts", parts},
            {"entries", lines},
            {"packages", packages},
            {"waits", waits}};
}

const char* keyOf(const LotTrait& trait) {
    using finishing::Trait;
    const bool score = trait.trait == Trait::acidity || trait.trait == Trait::funk || trait.trait == Trait::body;
    if (!trait.measured)
        return "desk.lot.estimated";
    return score ? "desk.lot.tasted" : "desk.lot.measured";
}

std::string written(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace

std::vector<Message> wordsOf(const LotView& lot) {
    const std::string key = "desk.lot.stage." + std::string(wordOf(lot.stage));
    std::vector<Message> words = {
        say(key).with("lot", lot.name).with("litres", lot.litres).with("age", Age{lot.meanAge.d})};
    for (const LotTrait& trait : lot.traits)
        words.push_back(say(keyOf(trait))
                            .with("trait", labelOf(trait.trait))
                            .with("value", amountOf(trait.trait, trait.value))
                            .with("spread", amountOf(trait.trait, trait.sd * tasting::z80)));
    if (lot.gravity)
        words.push_back(say("desk.lot.gravity").with("gravity", *lot.gravity).with("on", *lot.gravityOn));
    for (const PackageView& package : lot.packages)
        words.push_back(say("desk.lot.package." + std::string(wordOf(package.kind)))
                            .with("name", package.name)
                            .with("on", package.on)
                            .with("left", std::int64_t{package.left})
                            .with("count", std::int64_t{package.count})
                            .with("size", package.size));
    for (const LotWait& wait : lot.waits)
        words.push_back(wait.text);
    return words;
}

Message wordsOf(const LotPartView& part) {
    if (!part.added.empty())
        return say("desk.lot.part.added")
            .with("litres", part.litres)
            .with("share", part.share)
            .with("added", part.added)
            .with("on", part.on);
    return say("desk.lot.part")
        .with("litres", part.litres)
        .with("share", part.share)
        .with("vessel", part.vessel)
        .with("on", part.on)
        .with("age", Age{part.age.d});
}

std::string toJson(const std::vector<LotView>& lots) {
    Json all = Json::array();
    for (const LotView& lot : lots)
        all.push_back(json(lot));
    return written(all);
}

std::string toJson(const LotView& lot) {
    return written(json(lot));
}

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing_words.h"

#include "quantity/constants.h"
#include "quantity/text.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace staveline::desk {

using finishing::GuardAnswer;
using finishing::GuardVerdict;
using finishing::Priming;

namespace {

Message primingWords(const PackingAnswer& answer, const PackingRequest& request) {
    const Priming& p = answer.priming;
    const Share spread{constants::finishing::primingSpread};
    const Grams batch{p.batch.kg * 1000};
    if (answer.sugar.isLiquid())
        return say("finishing.pack.liquid_priming")
            .with("liquid", p.liquid)
            .with("sugar", answer.sugar.name)
            .with("extract", request.extract)
            .with("batch", batch)
            .with("spread", spread);
    return say("finishing.pack.priming")
        .with("batch", batch)
        .with("sugar", answer.sugar.name)
        .with("each", p.perLitre)
        .with("bottle", p.perPackage)
        .with("spread", spread);
}

Message residualWords(const PackingAnswer& answer) {
    const auto& held = answer.residual;
    if (held.measured)
        return say("finishing.pack.residual").with("held", held.value);
    return say("finishing.pack.residual_guessed")
        .with("held", held.value)
        .with("least", held.least)
        .with("flat", answer.wanted - (held.value - held.least));
}

Message pressureWords(const PackingAnswer& answer) {
    const auto& all = answer.verdict.pressures;
    if (!answer.verdict.gravity)
        return say("finishing.pack.pressure_unknown")
            .with("pressure", all.warmest)
            .with("warmest", answer.warmest)
            .with("all", all.all());
    return say("finishing.pack.pressure")
        .with("pressure", all.warmest)
        .with("warmest", answer.warmest)
        .with("all", all.all())
        .with("residual", all.residual)
        .with("priming", all.priming)
        .with("extract", all.extract)
        .with("fruit", all.fruit);
}

Message answerWords(const GuardVerdict& verdict) {
    switch (verdict.answer) {
    case GuardAnswer::clear:
        return say("finishing.pack.clear").with("until", *verdict.until);
    case GuardAnswer::thin:
        return say("finishing.pack.thin").with("until", *verdict.until);
    case GuardAnswer::overridden:
        return say("finishing.pack.overridden").with("reason", verdict.reason);
    case GuardAnswer::refused:
        break;
    }
    return say("finishing.pack.refused");
}

/// What is too much is told without a sign.
Message marginWords(const GuardVerdict& verdict) {
    const bool over = verdict.margin()->barOverAir < 0;
    return say(over ? "finishing.pack.over" : "finishing.pack.margin")
        .with("limit", *verdict.limit)
        .with("margin", GaugePressure{std::abs(verdict.margin()->barOverAir)})
        .with("volumes", Co2Volumes{std::abs(verdict.marginVolumes()->vol)});
}

void addAll(std::vector<Message>& words, const std::vector<Message>& more) {
    words.insert(words.end(), more.begin(), more.end());
}

} // namespace

std::vector<Message> verdictWords(const GuardVerdict& verdict) {
    std::vector<Message> words = {answerWords(verdict)};
    addAll(words, verdict.refusals);
    addAll(words, verdict.grounds);
    return words;
}

std::vector<Message> packingWords(const PackingAnswer& answer, const PackingRequest& request) {
    std::vector<Message> words = {say("finishing.pack.bottles")
                                      .with("litres", answer.litres)
                                      .with("wanted", answer.wanted)
                                      .with("count", static_cast<std::int64_t>(std::llround(answer.priming.packages)))
                                      .with("size", answer.size),
                                  primingWords(answer, request), residualWords(answer), pressureWords(answer)};
    const GuardVerdict& verdict = answer.verdict;
    if (verdict.margin())
        words.push_back(marginWords(verdict));
    if (answer.keg)
        words.push_back(say(answer.keg->barOverAir < 0 ? "finishing.pack.keg_none" : "finishing.pack.keg")
                            .with("pressure", *answer.keg)
                            .with("temperature", *request.keg)
                            .with("wanted", answer.wanted));
    if (answer.fruit)
        words.push_back(
            say("finishing.pack.fruit").with("sugar", answer.fruit->sugar).with("acidity", answer.fruit->acidity));
    addAll(words, verdictWords(verdict));
    if (!verdict.proof.whole()) {
        words.push_back(say("finishing.pack.proof"));
        addAll(words, verdict.proof.missing);
    }
    return words;
}

namespace {

using Json = nlohmann::ordered_json;

Json rendered(const std::vector<Message>& messages) {
    Json list = Json::array();
    for (const Message& message : messages)
        list.push_back(render(message));
    return list;
}

template <class Q> Json numberOf(const std::optional<Q>& quantity) {
    return quantity ? Json(raw(*quantity)) : Json();
}

Json guardJson(const GuardVerdict& verdict) {
    const auto& all = verdict.pressures;
    return {{"answer", wordOf(verdict.answer)},
            {"gravity_sg", numberOf(verdict.gravity)},
            {"floor_sg", verdict.floor.sg},
            {"residual_vol", all.residual.vol},
            {"priming_vol", all.priming.vol},
            {"extract_vol", verdict.gravity ? Json(all.extract.vol) : Json()},
            {"fruit_vol", all.fruit.vol},
            {"all_vol", all.all().vol},
            {"pressure_bar", all.warmest.barOverAir},
            {"limit_bar", numberOf(verdict.limit)},
            {"margin_bar", numberOf(verdict.margin())},
            {"margin_vol", numberOf(verdict.marginVolumes())},
            {"until", verdict.until ? Json(isoDay(*verdict.until)) : Json()},
            {"override", verdict.answer == GuardAnswer::overridden ? Json(verdict.reason) : Json()},
            {"proven", verdict.proof.whole()},
            {"refusals", rendered(verdict.refusals)},
            {"grounds", rendered(verdict.grounds)},
            {"proof_missing", rendered(verdict.proof.missing)}};
}

Json fruitJson(const std::optional<finishing::FruitEffect>& fruit) {
    if (!fruit)
        return {};
    return {{"kg_l", fruit->kgPerLitre},           {"sugar_g_l", fruit->sugar.gPerL},
            {"acidity_g_l", fruit->acidity.gPerL}, {"water_l", fruit->water.l},
            {"volume_l", fruit->volume.l},         {"alcohol_pct", fruit->alcohol.pct},
            {"headspace_l", fruit->headspace.l},   {"contact_d", fruit->contact.d}};
}

} // namespace

std::string toJson(const PackingAnswer& answer) {
    const Json priming{{"sugar", answer.sugar.id},
                       {"g_l", answer.priming.perLitre.gPerL},
                       {"g_bottle", answer.priming.perPackage.g},
                       {"g_batch", answer.priming.batch.kg * 1000},
                       {"liquid_l", answer.priming.liquid.l},
                       {"bottles", answer.priming.packages}};
    const Json json{{"vessel", answer.vessel},
                    {"litres", answer.litres.l},
                    {"wanted_vol", answer.wanted.vol},
                    {"warmest_c", answer.warmest.c},
                    {"bottle_ml", answer.size.ml},
                    {"residual",
                     {{"vol", answer.residual.value.vol},
                      {"least_vol", answer.residual.least.vol},
                      {"measured", answer.residual.measured}}},
                    {"priming", priming},
                    {"keg_bar", numberOf(answer.keg)},
                    {"fruit", fruitJson(answer.fruit)},
                    {"guard", guardJson(answer.verdict)},
                    {"cautions", rendered(answer.cautions)}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/packing_words.h"

#include "finishing/guard_words.h"
#include "quantity/constants.h"
#include "quantity/text.h"

#include <cmath>
#include <nlohmann/json.hpp>

namespace staveline::desk {

using finishing::GuardVerdict;
using finishing::Priming;

namespace {

Message primingWords(const PackingAnswer& answer) {
    const Priming& p = answer.priming;
    const Share spread{constants::finishing::primingSpread};
    const Grams batch{p.batch.kg * 1000};
    if (answer.sugar.isLiquid())
        return say("finishing.pack.liquid_priming")
            .with("liquid", p.liquid)
            .with("sugar", answer.sugar.name)
            .with("extract", answer.extract)
            .with("batch", batch)
            .with("spread", spread);
    return say("finishing.pack.priming")
        .with("batch", batch)
        .with("sugar", answer.sugar.name)
        .with("each", p.perLitre)
        .with("bottle", p.perPackage)
        .with("spread", spread);
}

Message fruitWords(const finishing::FruitEffect& fruit) {
    return say("finishing.pack.fruit")
        .with("sugar", fruit.sugar)
        .with("acidity", fruit.acidity)
        .with("headspace", fruit.headspace)
        .with("contact", fruit.contact);
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

std::vector<Message> packingWords(const PackingAnswer& answer) {
    const GuardVerdict& verdict = answer.verdict;
    std::vector<Message> words = {say("finishing.pack.bottles")
                                      .with("litres", answer.litres)
                                      .with("wanted", answer.wanted)
                                      .with("count", static_cast<std::int64_t>(std::llround(answer.priming.packages)))
                                      .with("size", answer.package.size)
                                      .with("lost", answer.lost),
                                  primingWords(answer), residualWords(answer.residual, answer.wanted)};
    addAll(words, pressureWords(verdict));
    if (answer.keg)
        words.push_back(say(answer.keg->barOverAir < 0 ? "finishing.pack.keg_none" : "finishing.pack.keg")
                            .with("pressure", *answer.keg)
                            .with("temperature", *answer.kegAt)
                            .with("wanted", answer.wanted));
    if (answer.fruit)
        words.push_back(fruitWords(*answer.fruit));
    addAll(words, answer.yeast);
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
            {"override", verdict.answer == finishing::GuardAnswer::overridden ? Json(verdict.reason) : Json()},
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
                    {"name", answer.name},
                    {"litres", answer.litres.l},
                    {"wanted_vol", answer.wanted.vol},
                    {"warmest_c", answer.verdict.warmest.c},
                    {"bottle_ml", answer.package.size.ml},
                    {"lost_l", answer.lost.l},
                    {"residual",
                     {{"vol", answer.residual.value.vol},
                      {"least_vol", answer.residual.least.vol},
                      {"measured", answer.residual.measured}}},
                    {"priming", priming},
                    {"keg_bar", numberOf(answer.keg)},
                    {"alcohol",
                     {{"pct", answer.alcohol.value.pct},
                      {"plus_minus_80", answer.alcohol.spread.pct},
                      {"measured", answer.alcohol.measured}}},
                    {"fruit", fruitJson(answer.fruit)},
                    {"guard", guardJson(answer.verdict)},
                    {"yeast", rendered(answer.yeast)},
                    {"cautions", rendered(answer.cautions)}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace staveline::desk

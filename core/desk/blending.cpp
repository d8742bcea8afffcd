// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/blending.h"

#include "desk/blend_source.h"
#include "desk/entry_checks.h"
#include "desk/estimates.h"
#include "desk/inside.h"
#include "desk/lot_beer.h"
#include "finishing/cautions.h"
#include "tasting/verdict.h"

#include <algorithm>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

namespace staveline::desk {

using finishing::BlendPart;
using finishing::BlendSource;
using finishing::BlendTrait;
using finishing::Trait;

namespace {

namespace error = constants::finishing;

std::string pathOf(std::size_t i) {
    return fmt::format("/from/{}", i);
}

Result<Litres> litresOf(const BlendFrom& from, Litres held, std::size_t i) {
    if (!(held.l > 0))
        return badInput(pathOf(i), say("finishing.blend.empty").with("source", from.vessel),
                        say("finishing.blend.no_litres.remedy"));
    if (!from.litres || (from.litres->l > 0 && *from.litres <= held))
        return from.litres.value_or(held);
    return badInput(
        pathOf(i),
        say("finishing.blend.holds").with("source", from.vessel).with("wanted", *from.litres).with("held", held),
        say("finishing.blend.too_much.remedy").with("held", held));
}

Result<void> namedOnce(const BlendRequest& request) {
    for (std::size_t i = 0; i < request.from.size(); ++i)
        for (std::size_t k = 0; k < i; ++k)
            if (request.from[i].vessel == request.from[k].vessel)
                return badInput(pathOf(i), say("finishing.blend.twice").with("source", request.from[i].vessel),
                                say("finishing.blend.twice.remedy"));
    return {};
}

void sayParts(BlendAnswer& answer) {
    for (const BlendPart& part : answer.blend.parts)
        if (part.takes.l > 0)
            answer.words.push_back(say("finishing.blend.part")
                                       .with("takes", part.takes)
                                       .with("source", part.name)
                                       .with("remains", part.remains));
    std::string bench;
    for (const BlendPart& part : answer.blend.parts)
        if (part.bench.ml > 0)
            bench += fmt::format("{}{} {}", bench.empty() ? "" : ", ", show(Amount{part.bench}), part.name);
    answer.words.push_back(say("finishing.blend.bench").with("parts", bench));
}

void sayTraits(BlendAnswer& answer) {
    for (const BlendTrait& trait : answer.blend.traits) {
        const Amount value = amountOf(trait.trait, trait.value);
        const Amount spread = amountOf(trait.trait, trait.sd * tasting::z80);
        const auto word = labelOf(trait.trait);
        if (trait.aim)
            answer.words.push_back(say("finishing.blend.aimed")
                                       .with("trait", word)
                                       .with("value", value)
                                       .with("spread", spread)
                                       .with("aim", amountOf(trait.trait, *trait.aim)));
        else
            answer.words.push_back(
                say("finishing.blend.comes").with("trait", word).with("value", value).with("spread", spread));
    }
}

void sayGround(BlendAnswer& answer) {
    for (const BlendSource& source : answer.sources) {
        std::string estimated;
        for (const Trait trait : finishing::allTraits)
            if (!source.measured[trait] && trait != Trait::colour)
                estimated += (estimated.empty() ? "" : ", ") + labelOf(trait);
        answer.words.push_back(say("finishing.blend.estimated").with("source", source.name).with("traits", estimated));
    }
}

Fault at(std::size_t i, const Fault& fault) {
    return {fault.kind, pathOf(i), fault.cause, fault.remedy};
}

Result<BlendSource> vesselSource(const CurrentVessel& vessel, Cellar& cellar, BlendAnswer& answer) {
    if (const auto ok = inUseOn(vessel.record.facts, vessel.today); !ok)
        return fail(ok.error());
    const auto known = knownOf(vessel, cellar);
    if (!known)
        return fail(known.error());
    BlendSource source = sourceOf(vessel, *known);
    source.atHand = vessel.now().volume;
    if (vessel.fault && vessel.fault->rule)
        answer.cautions.push_back(
            say("finishing.blend.fault")
                .with("source", source.name)
                .with("fault", render(tasting::faultWords(*vessel.fault->rule, vessel.fault->until))));
    return source;
}

/// A vessel of that name, else a lot.
Result<BlendSource> sourceNamed(const std::string& name, Cellar& cellar, Day today, BlendAnswer& answer) {
    const auto vessel = currentVessel(cellar, name, today);
    if (vessel)
        return vesselSource(**vessel, cellar, answer);
    auto beers = LotBeers::on(cellar, today);
    if (!beers)
        return fail(beers.error());
    return beers->facts().begins(name) ? beers->lot(name) : Result<BlendSource>(fail(vessel.error()));
}

} // namespace

Result<BlendAnswer> Desk::blend(const BlendRequest& request) const {
    if (auto ok = namedOnce(request); !ok)
        return fail(ok.error());
    BlendAnswer answer;
    for (std::size_t i = 0; i < request.from.size(); ++i) {
        const BlendFrom& from = request.from[i];
        auto source = sourceNamed(from.vessel, *inside_->cellar, today(), answer);
        if (!source)
            return fail(at(i, source.error()));
        const auto litres = litresOf(from, source->atHand, i);
        if (!litres)
            return fail(litres.error());
        source->atHand = *litres;
        source->colour = from.colour;
        source->sd[Trait::colour] = error::colourTolerance;
        answer.sources.push_back(*std::move(source));
    }
    auto blend = finishing::blend({answer.sources, request.aims, request.litres, Litres{error::measuringStep}});
    if (!blend)
        return fail(blend.error());
    answer.blend = std::move(*blend);
    sayParts(answer);
    sayTraits(answer);
    sayGround(answer);
    answer.words.insert(answer.words.end(), answer.blend.missing.begin(), answer.blend.missing.end());
    const auto blendingCautions = finishing::blendingCautions();
    answer.cautions.insert(answer.cautions.end(), blendingCautions.begin(), blendingCautions.end());
    return answer;
}

std::string toJson(const BlendAnswer& answer) {
    using Json = nlohmann::ordered_json;
    const auto words = [](const std::vector<Message>& messages) {
        Json list = Json::array();
        for (const Message& message : messages)
            list.push_back(render(message));
        return list;
    };
    Json sources = Json::array(), parts = Json::array(), traits = Json::object();
    for (const BlendSource& source : answer.sources) {
        Json json{{"vessel", source.name}, {"at_hand_l", source.atHand.l}};
        for (const Trait trait : finishing::allTraits)
            if (const auto value = traitOf(source, trait))
                json[std::string(wordOf(trait))] = {{"value", *value},
                                                    {"plus_minus_80", source.sd[trait] * tasting::z80},
                                                    {"measured", source.measured[trait]}};
        sources.push_back(json);
    }
    for (const BlendPart& part : answer.blend.parts)
        parts.push_back({{"vessel", part.name},
                         {"share", part.share},
                         {"takes_l", part.takes.l},
                         {"remains_l", part.remains.l},
                         {"bench_ml", part.bench.ml}});
    for (const BlendTrait& trait : answer.blend.traits)
        traits[std::string(wordOf(trait.trait))] = {{"value", trait.value},
                                                    {"plus_minus_80", trait.sd * tasting::z80},
                                                    {"aim", trait.aim ? Json(*trait.aim) : Json()},
                                                    {"reached", trait.reached}};
    const Json json{{"litres", answer.blend.litres.l},
                    {"reached", answer.blend.reached()},
                    {"sources", sources},
                    {"parts", parts},
                    {"blend", traits},
                    {"missing", words(answer.blend.missing)},
                    {"cautions", words(answer.cautions)}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace staveline::desk

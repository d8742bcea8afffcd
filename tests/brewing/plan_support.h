// SPDX-License-Identifier: GPL-3.0-or-later
// Brews for the tests of sizing, made by hand: they do not depend on the pantry's data or on the mash model.
#pragma once

#include "brewing/brew_plan.h"
#include "quantity/text.h"
#include "support/catch.h"

#include <algorithm>
#include <string_view>

namespace staveline::plan_tests {

inline ingredient::Grain malt(std::string id, double extract = .81, double moisture = .045) {
    ingredient::Grain grain;
    grain.name = id + " malt";
    grain.id = std::move(id);
    grain.extractDryBasis = extract;
    grain.moisture = moisture;
    grain.diastaticPowerWk = 280;
    return grain;
}
inline ingredient::Grain oats() {
    ingredient::Grain grain = malt("flaked_oats", .70, .09);
    grain.kind = ingredient::GrainKind::flaked;
    grain.diastaticPowerWk = 0;
    grain.betaGlucan = .042;
    return grain;
}
inline ingredient::Grain rye() {
    ingredient::Grain grain = malt("rye", .82, .05);
    grain.kind = ingredient::GrainKind::rye;
    grain.betaGlucan = .010;
    grain.arabinoxylan = 5;
    return grain;
}
inline ingredient::Grain sucrose() {
    ingredient::Grain grain = malt("sucrose", 1.0, .0005);
    grain.name = "sucrose";
    grain.kind = ingredient::GrainKind::sugar;
    grain.diastaticPowerWk = 0;
    return grain;
}

/// 12 P, 66 C for an hour, 10 IBU, all Pilsner malt.
inline brewing::BrewInput simple() {
    brewing::BrewInput input;
    input.grist = {{malt("pilsner"), {1}, false}};
    input.recipe.mash = {{{66}, {60}}};
    input.yeast.name = "ale yeast";
    return input;
}
inline brewing::RefillBeer beer() {
    brewing::RefillBeer fresh;
    fresh.finalGravity = {2.3};
    fresh.alcohol = {5.2};
    fresh.hexoseTaken = 90;
    return fresh;
}
inline brewing::BatchNeed need(double litres) {
    brewing::BatchNeed batch;
    batch.intoVessel = {litres};
    return batch;
}
inline brewing::BrewPlan planned(const brewing::BrewInput& input, const brewing::BatchNeed& batch,
                                 const brewing::Equipment& kit = {}, const brewing::RefillBeer& fresh = beer()) {
    auto plan = planBrew(input, fresh, kit, batch);
    REQUIRE(plan);
    return *plan;
}

inline const Message* find(const std::vector<Message>& messages, std::string_view key) {
    const auto found = std::find_if(messages.begin(), messages.end(), [&](auto& m) { return m.key == key; });
    return found == messages.end() ? nullptr : &*found;
}
inline bool has(const std::vector<Message>& messages, std::string_view key) {
    return find(messages, key) != nullptr;
}
/// The quantity an amount was made of; another kind fails.
template <class Value> Value amountOf(const Amount& amount) {
    CHECK(amount.kind == Amount(Value{}).kind);
    return Value{amount.value};
}
template <class Value> Value argument(const Message* message, std::string_view name) {
    REQUIRE(message != nullptr);
    for (const auto& argument : message->arguments)
        if (argument.name == name) {
            if constexpr (std::is_constructible_v<Amount, Value>)
                return amountOf<Value>(std::get<Amount>(argument.value));
            else
                return std::get<Value>(argument.value);
        }
    FAIL("no argument " << name);
    return {};
}

} // namespace staveline::plan_tests

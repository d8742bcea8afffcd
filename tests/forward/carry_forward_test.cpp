// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/forward_support.h"
#include "quantity/acid_base.h"

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::forward;
using namespace staveline::forward_test;

namespace {

const Day opened = std::chrono::sys_days{std::chrono::year{2024} / 3 / 2};

Day after(int days) {
    return opened + std::chrono::days{days};
}

using Brews = std::map<std::int64_t, RefillBeer>;

VesselState carried(const std::vector<BlendEvent>& events, Day today, const Brews& brews = {}) {
    return carryForward(reference::settledVessel, opened, events, brews, vectorRefill(), today, {{}, {16}, 10}, usual);
}

VesselState aged(const VesselState& state, double days) {
    return age(state, {{days}, {16}, 10}, usual.culture);
}

VesselState filled(const VesselState& state, double share) {
    return refill(state, reference::refillBeer, {share}, usual.culture);
}

} // namespace

TEST_CASE("Without events the vessel ages", "[forward]") {
    CHECK(carried({}, after(0)) == reference::settledVessel);
    CHECK(carried({}, after(100)) == aged(reference::settledVessel, 100));
    CHECK(carried({}, after(-5)) == reference::settledVessel);
}

TEST_CASE("A refill goes in on its day", "[forward]") {
    const VesselState expected = aged(filled(aged(reference::settledVessel, 60), .35), 40);
    CHECK(carried({{.on = after(60), .share = {.35}}}, after(100)) == expected);
}

TEST_CASE("A draw or sample without a measurement only marks a day", "[forward]") {
    const VesselState expected = aged(aged(reference::settledVessel, 60), 40);
    CHECK(carried({{.on = after(60)}}, after(100)) == expected);
}

TEST_CASE("The brew named goes in; one that is not known counts as the usual", "[forward]") {
    RefillBeer other = vectorRefill();
    other.beer.isoCis = 40;
    const Brews brews{{7, other}};
    const double named = carried({{.on = after(60), .share = {.35}, .brew = 7}}, after(60), brews).beer.isoCis;
    const VesselState unknown = carried({{.on = after(60), .share = {.35}, .brew = 8}}, after(100), brews);
    CHECK(named > 14);
    CHECK(unknown == carried({{.on = after(60), .share = {.35}}}, after(100)));
}

TEST_CASE("A measurement corrects the state on its day, after what went in", "[forward]") {
    const VesselState bitter = carried({{.on = after(60), .share = {.35}, .bitterness = Ibu{14}}}, after(60));
    CHECK(bitter.beer.bitterness().ibu == Approx(14));
    const VesselState plain = carried({}, after(60));
    const VesselState sweet = carried({{.on = after(60), .gravity = Plato{3}}}, after(60));
    CHECK(sweet.beer.dextrin + sweet.beer.residue > plain.beer.dextrin + plain.beer.residue + 5);
    // What there is to eat is soured later.
    const VesselState fed = carried({{.on = after(60), .gravity = Plato{3}}}, after(400));
    CHECK(titratableAcidity(fed.beer).gPerL > titratableAcidity(carried({}, after(400)).beer).gPerL);
}

TEST_CASE("What beer brings alive goes in with it; Brettanomyces can be pitched on a day", "[forward]") {
    VesselState clean = reference::settledVessel;
    clean.brett = 0;
    RefillBeer lively = vectorRefill();
    lively.brett = .8;
    const auto from = [&](const BlendEvent& event) {
        return carryForward(clean, opened, {&event, 1}, {{7, lively}}, vectorRefill(), after(60), {{}, {16}, 10},
                            usual);
    };
    CHECK(from({.on = after(60), .share = {.25}}).brett == 0);
    CHECK(from({.on = after(60), .share = {.25}, .brew = 7}).brett == Approx(.2));
    CHECK(from({.on = after(60), .brettPitched = true}).brett == usual.culture.startBrett);
    CHECK(from({.on = after(10), .brettPitched = true}).brett > usual.culture.startBrett);
}

TEST_CASE("What is told of the culture acts from its day on", "[forward]") {
    culture::CultureParameters diastatic = usual.culture;
    diastatic.enzymeOpening = .01;
    const BlendEvent refill{.on = after(60), .share = {.35}}, told{.on = after(100), .culture = diastatic};
    const auto with = [&](Day today) { return carried({refill, told}, today); };
    CHECK(with(after(99)) == carried({refill}, after(99)));
    CHECK(with(after(100)) == carried({refill}, after(100)));
    CHECK(with(after(160)) == age(carried({refill}, after(100)), {{60}, {16}, 10}, diastatic));
    CHECK(with(after(160)).beer.dextrin < carried({refill}, after(160)).beer.dextrin);
}

TEST_CASE("A tolerance of hops that is told is there from its day, and does not undo what was learned", "[forward]") {
    const auto toleranceAfter = [&](double told, Day today) {
        culture::CultureParameters culture = usual.culture;
        culture.hopTolerance = told;
        culture.mostHopTolerance = std::max(culture.mostHopTolerance, told);
        return carried({{.on = after(100), .culture = culture}}, today).hopTolerance;
    };
    const double learned = carried({}, after(100)).hopTolerance;
    CHECK(toleranceAfter(60, after(99)) == carried({}, after(99)).hopTolerance);
    CHECK(toleranceAfter(60, after(100)) == 60);
    CHECK(toleranceAfter(learned / 2, after(100)) == learned);
}

TEST_CASE("What lies ahead of today does not count yet", "[forward]") {
    CHECK(carried({{.on = after(60), .share = {.35}}}, after(50)) == carried({}, after(50)));
}

TEST_CASE("An event before the opening happens on its day", "[forward]") {
    CHECK(carried({{.on = after(-30), .share = {.2}}}, after(10)) == aged(filled(reference::settledVessel, .2), 10));
}

TEST_CASE("Cutting a history in two changes nothing one could see", "[forward]") {
    const std::vector<BlendEvent> events = {{.on = after(60), .share = {.35}}, {.on = after(300), .share = {.2}}};
    const VesselState whole = carried(events, after(400));
    const VesselState half = carried({events[0]}, after(200));
    const VesselState rest = carryForward(half, after(200), std::span(events).subspan(1), {}, vectorRefill(),
                                          after(400), {{}, {16}, 10}, usual);
    for (const auto pool : compositionPools)
        CHECK(rest.beer.*pool == Approx(whole.beer.*pool).epsilon(1e-6).margin(1e-9));
}

TEST_CASE("Carrying forward is total", "[forward][property]") {
    CHECK_PROPERTY("any shares and readings", [] {
        std::vector<BlendEvent> events;
        for (int i = 0; i < 4; ++i)
            events.push_back({.on = after(*rc::gen::inRange(-100, 900)),
                              .share = {anyNumber()},
                              .gravity = Plato{anyNumber()},
                              .bitterness = Ibu{anyNumber()}});
        RC_ASSERT(sound(carried(events, after(*rc::gen::inRange(-10, 1000)))));
    });
}

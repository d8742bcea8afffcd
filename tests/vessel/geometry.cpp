// SPDX-License-Identifier: GPL-3.0-or-later
// Cask geometry against hand-made integrals; the gauging tables of the trade are in tests/published.
#include "vessel/geometry.h"
#include "quantity/text.h"
#include "support/property.h"

#include <array>
#include <cmath>
#include <numbers>

using namespace staveline;
using namespace staveline::vessel;

namespace {

constexpr std::array staves{Stave::spheroid, Stave::spindle, Stave::paraboloid, Stave::cone};
constexpr std::array positions{Position::lying, Position::standing};

constexpr Cask metric(Stave stave) {
    return {{64}, {52}, {80}, stave};
}

} // namespace

TEST_CASE("a straight cask is a cylinder in every variety") {
    for (const auto stave : staves) {
        const Cask cask{{40}, {40}, {50}, stave};
        CHECK(caskVolume(cask).l == Approx(std::numbers::pi * 20 * 20 * 50 / 1000));
        CHECK(volumeAt(cask, Position::standing, {12.5}).l == Approx(caskVolume(cask).l / 4));
        CHECK(volumeAt(cask, Position::lying, {20}).l == Approx(caskVolume(cask).l / 2));
        // a quarter of the height wet: acos(1/2) - sqrt(3)/4 of a circle of area pi
        const double segment = std::acos(.5) - std::sqrt(3) / 4;
        CHECK(volumeAt(cask, Position::lying, {10}).l ==
              Approx(caskVolume(cask).l * segment / std::numbers::pi).epsilon(1e-9));
    }
}

TEST_CASE("the standing volume of a full half is half the cask") {
    for (const auto stave : staves)
        CHECK(volumeAt(metric(stave), Position::standing, {40}).l == Approx(caskVolume(metric(stave)).l / 2));
}

TEST_CASE("a standing cone fills by the frustum formula") {
    const Cask cone = metric(Stave::cone);
    for (const double dip : {5., 20., 40.}) {
        const double low = 26, high = 26 + 6 * dip / 40; // radius grows evenly from 26 to 32 cm
        CHECK(volumeAt(cone, Position::standing, {dip}).l ==
              Approx(std::numbers::pi * dip * (low * low + low * high + high * high) / 3000).epsilon(1e-12));
    }
}

TEST_CASE("a metric cask: regression values of an independent integration") {
    CHECK(caskVolume(metric(Stave::spheroid)).l == Approx(228.2053).margin(1e-3));
    CHECK(caskVolume(metric(Stave::spindle)).l == Approx(226.9989).margin(1e-3));
    CHECK(caskVolume(metric(Stave::cone)).l == Approx(212.1203).margin(1e-3));
    const Cask cask = metric(Stave::spheroid);
    constexpr std::array<std::pair<double, double>, 7> lying{
        {{4, 3.3053}, {8, 12.5262}, {24, 76.0588}, {32, 114.1026}, {40, 152.1465}, {56, 215.6791}, {60, 224.9000}}};
    for (const auto& [dip, litres] : lying)
        CHECK(volumeAt(cask, Position::lying, {dip}).l == Approx(litres).margin(1e-3));
    constexpr std::array<std::pair<double, double>, 4> standing{
        {{10, 23.7426}, {20, 51.5850}, {40, 114.1026}, {60, 176.6203}}};
    for (const auto& [dip, litres] : standing)
        CHECK(volumeAt(cask, Position::standing, {dip}).l == Approx(litres).margin(1e-3));
    constexpr std::array<std::pair<double, double>, 3> ullage{{{9, 57.297}, {25, 52.152}, {75, 40.228}}};
    for (const auto& [missing, dip] : ullage)
        CHECK(dipAt(cask, Position::lying, {caskVolume(cask).l - missing}).cm == Approx(dip).margin(1e-3));
}

TEST_CASE("a dip and its volume invert each other, and rise together") {
    CHECK_PROPERTY("inverse", [] {
        const double bung = *rc::gen::inRange(100, 2000) / 10.0;
        const double head = bung * *rc::gen::inRange(50, 101) / 100.0;
        const Cask cask{{bung}, {head}, {*rc::gen::inRange(100, 2500) / 10.0}, *rc::gen::elementOf(staves)};
        const auto position = *rc::gen::elementOf(positions);
        const double full = wetHeight(cask, position).cm;
        const double dip = full * *rc::gen::inRange(5, 996) / 1000.0;
        const Litres volume = volumeAt(cask, position, {dip});
        RC_ASSERT(volume.l > 0 && volume < caskVolume(cask));
        RC_ASSERT(std::abs(dipAt(cask, position, volume).cm - dip) < 1e-5);
        RC_ASSERT(volumeAt(cask, position, {dip + full * .001}) > volume);
        // what is wet from below is dry from above
        const Litres ullage = volumeAt(cask, position, {full - dip});
        RC_ASSERT(std::abs(volume.l + ullage.l - caskVolume(cask).l) < 1e-5 * caskVolume(cask).l);
    });
}

TEST_CASE("outside the cask a dip is empty or full") {
    const Cask cask;
    for (const auto position : positions) {
        CHECK(volumeAt(cask, position, {-1}).l == 0);
        CHECK(volumeAt(cask, position, {std::nan("")}).l == 0);
        CHECK(volumeAt(cask, position, {500}) == caskVolume(cask));
        CHECK(dipAt(cask, position, {-1}).cm == 0);
        CHECK(dipAt(cask, position, {1e6}) == wetHeight(cask, position));
    }
}

TEST_CASE("a dip table runs from empty to full") {
    const Cask cask{{64}, {52}, {80}, Stave::spheroid};
    const auto table = dipTable(cask, Position::lying, {5});
    REQUIRE(table.size() == 14); // 0, 5 .. 60, 64
    CHECK(table.front().volume.l == 0);
    CHECK(table[8].dip.cm == 40);
    CHECK(table[8].volume.l == Approx(152.1465).margin(1e-3));
    CHECK(table.back().dip.cm == 64);
    CHECK(table.back().volume == caskVolume(cask));
    for (std::size_t i = 1; i < table.size(); ++i)
        CHECK(table[i - 1].volume < table[i].volume);
    CHECK(dipTable(cask, Position::standing, {20}).size() == 5);
}

TEST_CASE("measures that make no cask are refused at their field") {
    const auto refused = [](Cask cask) {
        const auto result = checked(cask, "/cask");
        REQUIRE_FALSE(result);
        CHECK(builtInTexts().has(result.error().cause.key));
        CHECK(builtInTexts().has(result.error().remedy.key));
        CHECK(render(result.error().cause).find('{') == std::string::npos);
        return result.error().path;
    };
    CHECK(refused({{0}, {52}, {80}, Stave::cone}) == "/cask/bung_cm");
    CHECK(refused({{std::nan("")}, {52}, {80}, Stave::cone}) == "/cask/bung_cm");
    CHECK(refused({{64}, {65}, {80}, Stave::cone}) == "/cask/head_cm");
    CHECK(refused({{64}, {-1}, {80}, Stave::cone}) == "/cask/head_cm");
    CHECK(refused({{64}, {52}, {0}, Stave::cone}) == "/cask/length_cm");
    CHECK(refused({{64}, {52}, {1e6}, Stave::cone}) == "/cask/length_cm");
    CHECK(checked({{64}, {64}, {80}, Stave::cone}));
}

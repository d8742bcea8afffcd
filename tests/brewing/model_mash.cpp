// SPDX-License-Identifier: GPL-3.0-or-later
#include "brewing/mash_kinetics.h"

#include "brewing/wort.h"
#include "model_support.h"
#include "support/neutral_parameters.h"

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using reference::between;

namespace {

/// As the reference has them, and as shipped: what is no frozen number holds for both.
constexpr std::array both{reference::neutralBrew(), BrewParameters{}};

struct Conditions {
    double enzyme = 1, ph = 5.5, liquor = 3;
    BrewParameters parameters = both[0];
};
MashKinetics start(const Conditions& c = {}, double starch = 1) {
    return {{starch, c.enzyme}, {c.ph}, {c.liquor}, c.parameters};
}
MashSegment rest(double celsius, double minutes) {
    return {celsius, celsius, minutes, false};
}
MashKinetics mashed(std::initializer_list<MashSegment> segments, const Conditions& c = {}) {
    MashKinetics mash = start(c);
    for (const auto& segment : segments)
        mash.advance(segment);
    return mash;
}
/// Apparent attenuation limit [%].
double limit(std::initializer_list<MashSegment> segments, const Conditions& c = {}) {
    const auto extract = extractOf(mashed(segments, c).pools());
    return 100 * extract.fermentable() / extract.total() / realPerApparent;
}
double won(std::initializer_list<MashSegment> segments, const Conditions& c = {}) {
    return extractOf(mashed(segments, c).pools()).total();
}
double sum(const StarchPools& p) {
    return p.granules + p.polymer + p.open + p.branched + p.maltose + p.maltotriose + p.glucose;
}
double least(const StarchPools& p) {
    return std::min({p.granules, p.polymer, p.open, p.branched, p.maltose, p.maltotriose, p.glucose});
}

} // namespace

TEST_CASE("Starch is neither made nor lost in any mash", "[brewing][mash]") {
    for (const BrewParameters& p : both)
        CHECK_PROPERTY("pools sum to 1 and none falls below 0", [&] {
            const Conditions c{between(0, 1.5), between(4.8, 6.4), between(1.5, 10), p};
            MashKinetics mash = start(c);
            const double first = between(35, 80), second = between(first, 80);
            mash.advance(rest(first, between(1, 120)));
            if (second > first)
                mash.advance({first, second, between(1, 60), false});
            mash.advance(rest(second, between(1, 120)));
            RC_ASSERT(std::abs(sum(mash.pools()) - 1) < 1e-12);
            RC_ASSERT(least(mash.pools()) > -1e-4);
        });
}

TEST_CASE("Late grain is counted from the moment it goes in", "[brewing][mash]") {
    for (const BrewParameters& p : both) {
        MashKinetics mash = start({.enzyme = .9, .parameters = p}, .7);
        CHECK(sum(mash.pools()) == Approx(.7).epsilon(1e-12));
        mash.advance(rest(63, 30));
        const double before = mash.enzymes()[0];
        mash.add({.3, .2});
        CHECK(sum(mash.pools()) == Approx(1).epsilon(1e-12));
        CHECK(mash.enzymes()[0] == Approx(before + .2).epsilon(1e-12));
        mash.advance(rest(72, 30));
        CHECK(sum(mash.pools()) == Approx(1).epsilon(1e-12));
        CHECK(mash.pools().granules < .02);
    }
}

TEST_CASE("A rest taken in pieces gives the same mash", "[brewing][mash]") {
    for (const BrewParameters& p : both)
        CHECK_PROPERTY("one segment or many", [&] {
            const double from = between(40, 72), to = from + between(0, 8), minutes = between(10, 90);
            const MashSegment whole{from, to, minutes, false};
            MashKinetics once = start({.parameters = p}), often = once;
            for (auto* mash : {&once, &often})
                mash->advance(rest(60, 5));
            once.advance(whole);
            constexpr int pieces = 37;
            for (int i = 0; i < pieces; ++i)
                often.advance(
                    {whole.at(minutes * i / pieces), whole.at(minutes * (i + 1) / pieces), minutes / pieces, false});
            const auto a = extractOf(once.pools()), b = extractOf(often.pools());
            RC_ASSERT(std::abs(a.total() - b.total()) < 1e-4);
            RC_ASSERT(std::abs(a.maltose - b.maltose) < 1e-4);
            RC_ASSERT(std::abs(a.dextrin - b.dextrin) < 1e-4);
        });
}

TEST_CASE("Enzymes die by their half-lives, exactly", "[brewing][mash]") {
    // At the reference, 65 C and 2.5 L/kg, the half-lives are the constants themselves.
    const auto left = mashed({rest(65, 30)}, {.liquor = 2.5}).enzymes();
    CHECK(left[0] == Approx(std::exp2(-30. / 75)).epsilon(1e-10));
    CHECK(left[1] == Approx(std::exp2(-30. / 10)).epsilon(1e-10));
    CHECK(left[2] == Approx(std::exp2(-30. / 12)).epsilon(1e-10));
}

TEST_CASE("Beta-amylase dies in two parts, one of which lasts", "[brewing][mash]") {
    Conditions c{.liquor = 2.5, .parameters = {}};
    const auto beta = [&](double minutes) { return mashed({rest(65, minutes)}, c).enzymes()[1]; };
    for (double minutes : {10., 30., 60., 90.})
        CHECK(beta(minutes) == Approx(.86 * std::exp2(-minutes / 8.3) + .14 * std::exp2(-minutes / 75)).epsilon(1e-9));
    MashKinetics late = start(c);
    late.advance(rest(65, 30));
    const double before = late.enzymes()[1];
    late.add({0, .5});
    CHECK(late.enzymes()[1] == Approx(before + .5).epsilon(1e-12));
}

TEST_CASE("A thin mash kills beta-amylase and limit dextrinase faster, alpha-amylase not", "[brewing][mash]") {
    for (const BrewParameters& p : both) {
        const auto thick = mashed({rest(65, 20)}, {.liquor = 2, .parameters = p}).enzymes();
        const auto thin = mashed({rest(65, 20)}, {.liquor = 6, .parameters = p}).enzymes();
        CHECK(thin[0] == thick[0]);
        CHECK(thin[1] < .7 * thick[1]);
        CHECK(thin[2] < .7 * thick[2]);
    }
}

TEST_CASE("Without enzymes starch swells and stays starch", "[brewing][mash]") {
    for (const BrewParameters& p : both) {
        const auto pools = mashed({rest(70, 60)}, {.enzyme = 0, .parameters = p}).pools();
        CHECK(pools.polymer == Approx(1 - pools.granules).epsilon(1e-9));
        CHECK(pools.polymer > .95);
        CHECK(pools.maltose < 1e-12);
    }
}

TEST_CASE("Below gelatinisation nothing happens to starch", "[brewing][mash]") {
    for (const BrewParameters& p : both)
        CHECK(mashed({rest(45, 60)}, {.parameters = p}).pools().granules == Approx(1).epsilon(1e-6));
}

TEST_CASE("Each brew parameter of the mash pulls its own way", "[brewing][mash]") {
    for (const BrewParameters& p : both) {
        const Conditions base{.parameters = p};
        const auto with = [&](double BrewParameters::*parameter, double value) {
            Conditions c = base;
            c.parameters.*parameter = value;
            return c;
        };
        const auto at65 = [](const Conditions& c) { return limit({rest(65, 60)}, c); };
        CHECK(at65(with(&BrewParameters::betaHalfLife65, 20)) > at65(base) + .3);
        CHECK(at65(with(&BrewParameters::limitDextrinaseRate, 0)) < at65(base) - .5);
        CHECK(won({rest(62, 60)}, with(&BrewParameters::gelatinisationShift, 3)) < won({rest(62, 60)}, base) - .1);
    }
}

TEST_CASE("The lasting share of beta-amylase goes on making sugar", "[brewing][mash]") {
    const Conditions shipped{.parameters = {}};
    Conditions more = shipped, longer = shipped;
    more.parameters.betaStableShare = .3;
    longer.parameters.betaStableHalfLife = 150;
    CHECK(limit({rest(65, 60)}, more) > limit({rest(65, 60)}, shipped) + .3);
    CHECK(limit({rest(65, 60)}, longer) > limit({rest(65, 60)}, shipped));
}

TEST_CASE("Regression: isothermal mashes of the reference model", "[brewing][mash][regression]") {
    struct Row {
        double celsius, extract, at30, at60, at90;
    };
    // 3 L/kg, pH 5.5, enzymes 1; extract after 60 min and attenuation limit [%] after 30, 60, 90 min.
    for (const auto& row :
         {Row{55, .232, 55.6, 56.6, 56.9}, Row{58, .568, 77.8, 81.8, 83.7}, Row{60, .856, 83.9, 87.4, 89.2},
          Row{62, .945, 84.9, 87.4, 88.4}, Row{63, .961, 84.7, 86.5, 87.1}, Row{65, .983, 83.3, 84.1, 84.2},
          Row{66, .990, 82.1, 82.7, 82.7}, Row{67, .995, 80.0, 81.0, 81.2}, Row{68, .997, 76.7, 78.7, 79.1},
          Row{69, .997, 72.3, 75.7, 76.5}, Row{70, .997, 67.8, 72.2, 73.2}, Row{72, .995, 60.2, 64.7, 65.6},
          Row{75, .990, 50.6, 52.2, 52.3}, Row{78, .985, 39.1, 39.2, 39.2}, Row{80, .983, 31.8, 31.9, 31.9}}) {
        INFO(row.celsius);
        CHECK(won({rest(row.celsius, 60)}) == Approx(row.extract).margin(.002));
        CHECK(limit({rest(row.celsius, 30)}) == Approx(row.at30).margin(.1));
        CHECK(limit({rest(row.celsius, 60)}) == Approx(row.at60).margin(.1));
        CHECK(limit({rest(row.celsius, 90)}) == Approx(row.at90).margin(.1));
    }
}

TEST_CASE("Regression: a slow rise undoes a hot rest, a jump keeps it", "[brewing][mash][regression]") {
    const auto path = [](double to, double rate) {
        return limit({rest(45, 20), {45, to, (to - 45) / rate, false}, rest(to, 45)});
    };
    CHECK(limit({rest(72, 45)}) == Approx(63.4).margin(.1));
    CHECK(path(65, 1) == Approx(85.0).margin(.1));
    CHECK(path(68, 1) == Approx(82.3).margin(.1));
    CHECK(path(72, 1) == Approx(79.7).margin(.1));
    CHECK(path(65, 10) == Approx(84.0).margin(.1));
    CHECK(path(72, 10) == Approx(65.3).margin(.1));
    CHECK(path(72, .5) == Approx(83.9).margin(.1));
}

TEST_CASE("Regression: enzymes, acidity and thickness of the reference model", "[brewing][mash][regression]") {
    const auto at65 = [](const Conditions& c) { return limit({rest(65, 60)}, c); };
    const std::vector<std::pair<double, double>> powers = {
        {1.3, 85.0}, {.7, 82.8}, {.5, 81.0}, {.3, 74.4}, {.15, 55.9}};
    for (const auto& [enzyme, aal] : powers)
        CHECK(at65({.enzyme = enzyme}) == Approx(aal).margin(.1));
    const std::vector<std::pair<double, double>> acidities = {
        {5.0, 84.4}, {5.2, 84.5}, {5.6, 83.8}, {5.8, 83.1}, {6.0, 82.3}};
    for (const auto& [ph, aal] : acidities)
        CHECK(at65({.ph = ph}) == Approx(aal).margin(.1));
    const std::vector<std::pair<double, double>> liquors = {{2, 84.3}, {2.5, 84.2}, {4, 83.8}, {6, 83.4}};
    for (const auto& [liquor, aal] : liquors)
        CHECK(at65({.liquor = liquor}) == Approx(aal).margin(.1));
    CHECK(mashed({rest(65, 60)}, {.enzyme = .3}).pools().polymer == Approx(.037).margin(.001));
    CHECK(won({rest(62, 60)}, {.liquor = 2}) == Approx(.758).margin(.002));
}

TEST_CASE("Full conversion of all starch to maltose would give the extract it is counted by", "[brewing][mash]") {
    StarchPools pools;
    pools.granules = 0;
    pools.maltose = 1;
    const auto extract = extractOf(pools);
    CHECK(extract.total() == Approx(1 + .79 * (342. / 324 / 1.045 - 1)).epsilon(1e-12));
    CHECK(extractOf({}).total() == Approx(.21).epsilon(1e-12));
}

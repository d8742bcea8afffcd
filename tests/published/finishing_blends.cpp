// SPDX-License-Identifier: GPL-3.0-or-later
// Blends and fruit against worked examples, tables of alcohol and of food.
#include "finishing/blend.h"
#include "finishing/bounded_least_squares.h"
#include "finishing/fruit.h"
#include "finishing/guard.h"
#include "quantity/acid_base.h"

#include "support/catch.h"

#include <array>

namespace staveline::finishing {

TEST_CASE("Worked by hand: shares of two and three beers by least squares") {
    // Solved with a general non-negative least squares (scipy nnls) and by the conditions of Karush, Kuhn and Tucker;
    // aims 6.0, 5.9, 4.2 with errors .5, .3, 1.
    constexpr std::array<double, 3> aims = {6.0, 5.9, 4.2}, errors = {.5, .3, 1};
    constexpr std::array<double, 3> sour = {9.2, 6.5, 7}, middle = {5.0, 5.8, 3}, mild = {2.5, 5.0, 1};
    const auto ask = [&](const std::vector<std::array<double, 3>>& beers, const std::array<double, 3>& wanted) {
        ShareProblem problem{{}, {}, std::vector<double>(beers.size(), 1.0)};
        for (std::size_t r = 0; r < errors.size(); ++r) {
            problem.rows.emplace_back();
            for (const auto& beer : beers)
                problem.rows.back().push_back(beer[r] / errors[r]);
            problem.aims.push_back(wanted[r] / errors[r]);
        }
        return nearestShares(problem).value();
    };
    CHECK(ask({sour, mild}, aims)[0] == Approx(.532092).margin(1e-6));
    const auto three = ask({sour, middle, mild}, aims);
    CHECK(three[0] == Approx(.377564).margin(1e-6));
    CHECK(three[1] == Approx(.402599).margin(1e-6));
    CHECK(three[2] == Approx(.219838).margin(1e-6));
    const auto far = ask({sour, middle, mild}, {10, 6, 8});
    CHECK(far[0] == Approx(1));
    CHECK(far[1] == Approx(0).margin(1e-9));
}

TEST_CASE("Worked by hand: two and three beers by three traits, through the whole blend") {
    // The same beers: titratable acidity, alcohol and bitterness, whose tolerances are those errors. Alcohol bends a
    // little, hence the margin.
    const auto sharesOf = [](const std::vector<std::array<double, 3>>& beers) {
        BlendQuestion question;
        for (const auto& [ta, alcohol, ibu] : beers) {
            BlendSource source;
            source.name = "beer";
            source.atHand = {200};
            source.beer.sid = 30;
            source.beer.ethanol = alcohol * ethanolPerPercent;
            source.beer.isoCis = ibu;
            source.beer = withTitratableAcidity(source.beer, {ta});
            question.sources.push_back(source);
        }
        question.aims[Trait::ta] = 6.0;
        question.aims[Trait::alcohol] = 5.9;
        question.aims[Trait::bitterness] = 4.2;
        return blend(question)->parts;
    };
    CHECK(sharesOf({{9.2, 6.5, 7}, {2.5, 5.0, 1}})[0].share == Approx(.532092).margin(1e-3));
    const auto three = sharesOf({{9.2, 6.5, 7}, {5.0, 5.8, 3}, {2.5, 5.0, 1}});
    CHECK(three[0].share == Approx(.377564).margin(2e-3));
    CHECK(three[1].share == Approx(.402599).margin(2e-3));
    CHECK(three[2].share == Approx(.219838).margin(2e-3));
}

TEST_CASE("Published: lactic acid and its salt poured together are at the constant of the acid") {
    // Henderson and Hasselbalch: as much salt as acid stands at the pKa, 3.86 at 25 C (CRC Handbook); three parts of
    // salt to one of acid half a unit above. 0.1 mol/L of each, without any other buffer; the mean of their pH is far
    // off.
    BlendSource acid, salt;
    acid.beer = salt.beer = Composition{};
    acid.beer.buffer = salt.beer.buffer = 0;
    acid.beer.lactic = salt.beer.lactic = 9.0078;
    salt.beer.sid = 100;
    const std::vector<BlendSource> both = {acid, salt};
    CHECK(*traitOf(both, {.5, .5}, Trait::ph) == Approx(3.86).margin(.01));
    CHECK(*traitOf(both, {.25, .75}, Trait::ph) == Approx(3.86 + .477).margin(.01));
    CHECK(*traitOf(acid, Trait::ph) == Approx(2.44).margin(.02)); // 0.1 mol/L of a weak acid: (3.86 + 1) / 2
    CHECK((*traitOf(acid, Trait::ph) + *traitOf(salt, Trait::ph)) / 2 > 5);
}

TEST_CASE("Published: half a litre of alcohol and half a litre of water") {
    // Textbook experiment (and OIML R 22): 500 mL of ethanol and 500 mL of water make about 964 mL.
    const std::array<Poured, 2> parts = {Poured{{.5}, {100}}, Poured{{.5}, {0}}};
    const Poured mixed = pouredTogether(parts);
    CHECK(mixed.volume.l == Approx(.964).margin(.002));
    CHECK(mixed.alcohol.pct == Approx(100 * .5 / .964).margin(.15));
}

TEST_CASE("Published: diluting spirit by the tables of OIML R 22") {
    // Densities of the table at 20 C: 40 % vol 948.05, 20 % vol 973.56, water 998.20 kg/m3. A litre of 40 % with a
    // litre of water: 0.94805 + 0.99820 kg with 315.7 g of alcohol, that is 16.22 % by mass: 20.1 % vol, 1.99 L.
    const std::array<Poured, 2> parts = {Poured{{1}, {40}}, Poured{{1}, {0}}};
    const Poured mixed = pouredTogether(parts);
    CHECK(mixed.alcohol.pct == Approx(.4 / mixed.volume.l * 100).margin(1e-6)); // no alcohol is lost
    CHECK(mixed.volume.l == Approx((.94805 + .99820) / .9735).margin(.001));
}

TEST_CASE("Published: beers poured together keep their litres to a thousandth") {
    const std::array<Poured, 2> parts = {Poured{{60}, {9}}, Poured{{40}, {4}}};
    const Poured mixed = pouredTogether(parts);
    // OIML R 22: mixtures up to 10 % vol neither shrink nor grow by a thousandth.
    CHECK(mixed.volume.l == Approx(100).margin(.1));
    CHECK(mixed.alcohol.pct == Approx(7).margin(.01));
}

TEST_CASE("Published: sugar and acid of 200 g/L of fruit") {
    // USDA FoodData Central, SR Legacy (sour cherry fdc 173954, sweet cherry 171719, apricot 171697, peach 169928):
    // g sugar in 100 g of what is eaten; acid by Blyth's list. All counted as what is eaten, in the volume of the beer.
    struct Row {
        const char* id;
        double sugar, acid;
    };
    for (const Row& row : {Row{"sour_cherry", 8.49, 1.4}, Row{"sweet_cherry", 12.82, .91}, Row{"apricot", 9.24, 1.16},
                           Row{"peach", 8.39, .92}, Row{"raspberry", 4.42, 1.38}, Row{"blackberry", 4.88, 1.19}}) {
        INFO(row.id);
        const Fruit one = fruit(row.id).value();
        CHECK(one.sugar == Approx(10 * row.sugar));
        CHECK(one.acid == Approx(10 * row.acid));
    }
    // 16.98 g/L of cherry sugar are 3.98 volumes and 1.04 % vol, reckoned by Balling's balance in undiluted beer.
    FruitAddition cherries{fruit("sour_cherry").value(), {20}, {100}, {6}, {15}, {}};
    cherries.fruit.usable = {1};
    const auto effect = withFruit(cherries).value();
    CHECK(effect.sugar.gPerL == Approx(16.98));
    BeerKnown beer;
    beer.fruitSugar = effect.sugar;
    CHECK(guard({beer, {}, {0}, {}})->pressures.fruit.vol == Approx(3.98).margin(.01));
    CHECK(effect.alcohol.pct * effect.volume.l / 100 == Approx(6 + 1.04).margin(.01));
}

} // namespace staveline::finishing

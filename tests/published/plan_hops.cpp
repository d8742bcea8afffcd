// SPDX-License-Identifier: GPL-3.0-or-later
// Hop utilisation against Glenn Tinseth's table (1995-97), as printed by J. Palmer, How to Brew, table 7, and copied in
// public brewing forums; rows of 3 to 33 minutes. Palmer's worked example is of chapter 5 of the same book.
#include "brewing/hops.h"
#include "support/catch.h"

#include <array>

using namespace staveline;
using namespace staveline::brewing;

TEST_CASE("Tinseth's table of utilisation") {
    struct Row {
        double minutes;
        std::array<double, 11> at; // gravity 1.030, 1.040 ... 1.130
    };
    constexpr std::array rows{
        Row{0, {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0}},
        Row{3, {.034, .031, .029, .026, .024, .022, .020, .018, .017, .015, .014}},
        Row{6, {.065, .059, .054, .049, .045, .041, .038, .035, .032, .029, .026}},
        Row{9, {.092, .084, .077, .070, .064, .059, .054, .049, .045, .041, .037}},
        Row{12, {.116, .106, .097, .088, .081, .074, .068, .062, .056, .052, .047}},
        Row{15, {.137, .125, .114, .105, .096, .087, .080, .073, .067, .061, .056}},
        Row{18, {.156, .142, .130, .119, .109, .099, .091, .083, .076, .069, .063}},
        Row{21, {.173, .158, .144, .132, .120, .110, .101, .092, .084, .077, .070}},
        Row{24, {.187, .171, .157, .143, .131, .120, .109, .100, .091, .083, .076}},
        Row{27, {.201, .183, .168, .153, .140, .128, .117, .107, .098, .089, .082}},
        Row{30, {.212, .194, .177, .162, .148, .135, .124, .113, .103, .094, .086}},
        Row{33, {.223, .203, .186, .170, .155, .142, .130, .119, .108, .099, .091}},
        Row{60, {.276, .252, .231, .211, .193, .176, .161, .147, .135, .123, .112}}}; // 60: but for .176 from memory
    for (const auto& row : rows)
        for (std::size_t i = 0; i < row.at.size(); ++i) {
            const double gravity = 1.03 + .01 * static_cast<double>(i);
            CAPTURE(row.minutes, gravity);
            CHECK(tinsethUtilisation({gravity}, {row.minutes}) == Approx(row.at[i]).margin(.00051));
        }
}

TEST_CASE("Palmer's example of hops in two additions") {
    // 1.5 oz of 6.4 % for 60 min and 1 oz of 4.6 % for 15 min in 5 gallons at 1.080: 25 and 6, 31 IBU in all
    constexpr double ounce = 28.349523, gallon = 3.785412;
    const Litres wort{5 * gallon};
    const auto first = tinsethIbu({1.5 * ounce}, {.064}, wort, {1.080}, {60});
    const auto second = tinsethIbu({ounce}, {.046}, wort, {1.080}, {15});
    CHECK(first.ibu == Approx(25).margin(.5));
    CHECK(second.ibu == Approx(6).margin(.5));
    CHECK((first + second).ibu == Approx(31).margin(.5));
}

TEST_CASE("Palmer's interpolation of the table") {
    // 1.057 at 30 min lies seven tenths of the way from .177 to .162: .166
    CHECK(tinsethUtilisation({1.057}, {30}) == Approx(.166).margin(.001));
}

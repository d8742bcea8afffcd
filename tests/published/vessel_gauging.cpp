// SPDX-License-Identifier: GPL-3.0-or-later
// Cask gauging against a printed handbook: "Gauging of casks", builder's and mechanic's handbook (nineteenth century),
// https://chestofbooks.com/crafts/metal/Builder-Mechanic/ and the same table in /crafts/mechanics/American-Mechanic/.
// Capacities in imperial gallons of 277.274 cubic inches for bung diameter and length of one inch. Only rows that
// scanned alike in both printings, or cleanly in one, are used.
#include "support/catch.h"
#include "vessel/geometry.h"

#include <array>

using namespace staveline;
using namespace staveline::vessel;

namespace {

constexpr double inch = 2.54;                                   // cm
constexpr double imperialGallon = 277.274 * inch * inch * inch; // cm3, as the book has it
constexpr double wineGallon = 231 * inch * inch * inch / 1000;  // L
constexpr Cask hogshead{{32 * inch}, {24 * inch}, {40 * inch}, Stave::spheroid};

double capacity(double head, Stave stave) {
    // A thousandfold cask keeps the digits: the coefficient is that of a one-inch cask.
    const Cask cask{{100 * inch}, {100 * inch * head}, {100 * inch}, stave};
    return caskVolume(cask).l * 1000 / imperialGallon / 1e6;
}

} // namespace

TEST_CASE("capacities of the four varieties (gauging table)") {
    struct Row {
        double head, spheroid, spindle, paraboloid, cone;
    };
    constexpr std::array rows{
        Row{.50, .0021244, .0020300, .0017704, .0016523}, Row{.53, .0021536, .0020702, .0018141, .0017098},
        Row{.57, .0021951, .0021253, .0018764, .0017891}, Row{.64, .0022751, .0022262, .0019964, .0019352},
        Row{.68, .0023250, .0022863, .0020712, .0020228}, Row{.69, .0023379, .0023016, .0020906, .0020452},
        Row{.70, .0023510, .0023170, .0021103, .0020678}, Row{.72, .0023778, .0023482, .0021505, .0021135},
        Row{.75, .0024195, .0023959, .0022129, .0021834}, Row{.79, .0024777, .0024610, .0023002, .0022794},
        Row{.84, .0025546, .0025449, .0024156, .0024035}, Row{.89, .0026363, .0026317, .0025381, .0025324}};
    for (const auto& row : rows) {
        CAPTURE(row.head);
        CHECK(capacity(row.head, Stave::spheroid) == Approx(row.spheroid).margin(1e-7));
        CHECK(capacity(row.head, Stave::spindle) == Approx(row.spindle).margin(1e-7));
        CHECK(capacity(row.head, Stave::paraboloid) == Approx(row.paraboloid).margin(1e-7));
        CHECK(capacity(row.head, Stave::cone) == Approx(row.cone).margin(1e-7));
    }
}

TEST_CASE("the mean-diameter rule agrees with the solids within two per cent (same book)") {
    // Head 24, bung 32, length 40 inches; mean diameter 24 + k 8 with k .7 .65 .6 .55; 0.0034 wine gallons a cubic
    // inch.
    struct Row {
        Stave stave;
        double k, gallons;
    };
    constexpr std::array rows{Row{Stave::spheroid, .70, 119.158}, Row{Stave::spindle, .65, 115.959},
                              Row{Stave::cone, .55, 109.692}};
    for (const auto& row : rows) {
        const double diameter = 24 + row.k * 8;
        CHECK(diameter * diameter * 40 * .0034 == Approx(row.gallons).margin(1e-3)); // the rule as printed
        Cask cask = hogshead;
        cask.stave = row.stave;
        CHECK(caskVolume(cask).l / wineGallon == Approx(row.gallons).epsilon(.025));
    }
}

TEST_CASE("the ullage rule holds near half full (same book)") {
    // Its examples on a cask of 118.80 gallons: 15 in lying 54.759375, 17 in 64.040625, 21 in standing 62.667.
    const double full = caskVolume(hogshead).l;
    const auto share = [&](Position position, double inches) {
        return volumeAt(hogshead, position, {inches * inch}).l / full;
    };
    CHECK(share(Position::lying, 15) == Approx(54.759375 / 118.80).margin(.005));
    CHECK(share(Position::lying, 17) == Approx(64.040625 / 118.80).margin(.005));
    CHECK(share(Position::standing, 21) == Approx(62.667 / 118.80).margin(.005));
    // and fails near the ends, where the rule gives nothing at a tenth of the bung diameter
    CHECK(share(Position::lying, 3.2) > .03);
}

TEST_CASE("wet shares of a lying and a standing cask, regression values of an independent integration") {
    constexpr std::array<std::pair<double, double>, 6> lying{
        {{.10, .03304}, {.25, .17451}, {.40, .36376}, {.46875, .45712}, {.75, .82549}, {.90, .96696}}};
    for (const auto& [wet, share] : lying)
        CHECK(volumeAt(hogshead, Position::lying, {wet * 32 * inch}).l / caskVolume(hogshead).l ==
              Approx(share).margin(5e-6));
    constexpr std::array<std::pair<double, double>, 4> standing{
        {{.10, .07541}, {.25, .21799}, {.525, .52926}, {.90, .92459}}};
    for (const auto& [wet, share] : standing)
        CHECK(volumeAt(hogshead, Position::standing, {wet * 40 * inch}).l / caskVolume(hogshead).l ==
              Approx(share).margin(5e-6));
}

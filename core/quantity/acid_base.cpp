// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/acid_base.h"

#include "quantity/acid_table.h"

#include <array>
#include <cmath>

namespace staveline {
namespace {

constexpr double ln10 = 2.302585092994046;
constexpr double waterProduct = 1e-8; // Kw [mmol2/L2]

/// Hydrogen ions [mmol/L].
double hydrogenAt(double ph) {
    return std::exp(ln10 * (3 - ph));
}

struct Background {
    static constexpr std::size_t size = 12;
    std::array<double, size> ka{};   // [mmol/L]
    std::array<double, size> mmol{}; // in a 12 P beer
};

/// Pseudo-acids evenly spread over pKa 2.75..8.25 stand for the beer's own buffers.
const Background& background() {
    static const Background made = [] {
        Background b;
        for (std::size_t i = 0; i < Background::size; ++i) {
            b.ka[i] = hydrogenAt(2.75 + .5 * static_cast<double>(i));
            b.mmol[i] = i < 6 ? 4 : 2;
        }
        return b;
    }();
    return made;
}

/// Charge [mEq/L] and its derivative by pH.
struct Charge {
    double value = 0, slope = 0;
    void add(double mmol, double ka, double h) {
        const double share = ka / (ka + h);
        value += mmol * share;
        slope += ln10 * mmol * share * (1 - share);
    }
};

Charge backgroundCharge(double h) {
    Charge charge;
    const Background& acids = background();
    for (std::size_t i = 0; i < Background::size; ++i)
        charge.add(acids.mmol[i], acids.ka[i], h);
    return charge;
}

Charge totalCharge(double ph, double lactic, double acetic, double buffer) {
    const double h = hydrogenAt(ph), hydroxide = waterProduct / h;
    const Charge own = backgroundCharge(h);
    Charge charge{buffer * own.value + hydroxide - h, buffer * own.slope + ln10 * (hydroxide + h)};
    charge.add(lactic / lacticMolarMass * 1e3, AcidTable::lacticKa, h);
    charge.add(acetic / aceticMolarMass * 1e3, AcidTable::aceticKa, h);
    return charge;
}

} // namespace

double anionCharge(Ph ph, double lactic, double acetic, double buffer) {
    return totalCharge(ph.ph, lactic, acetic, buffer).value;
}

double bufferCapacity(Ph ph, double lactic, double acetic, double buffer) {
    return totalCharge(ph.ph, lactic, acetic, buffer).slope;
}

Ph solvePh(double lactic, double acetic, double buffer, double sid) {
    double low = .5, high = 12, x = 4;
    for (int i = 0; i < 100; ++i) {
        const Charge charge = totalCharge(x, lactic, acetic, buffer);
        (charge.value > sid ? high : low) = x;
        double next = x - (charge.value - sid) / charge.slope;
        if (!(next > low && next < high)) // also when it is not a number
            next = .5 * (low + high);
        if (std::abs(next - x) < 1e-12)
            return {next};
        x = next;
    }
    return {x};
}

double newtonPh(double start, double lactic, double acetic, double buffer, double sid, int iterations) {
    const AcidTable& table = AcidTable::instance();
    const double lacticMmol = lactic / lacticMolarMass * 1e3, aceticMmol = acetic / aceticMolarMass * 1e3;
    double x = start;
    for (int i = 0; i < iterations; ++i)
        x = AcidTable::step(x, table.at(x), lacticMmol, aceticMmol, buffer, sid);
    return x;
}

Ph ph(const Composition& beer) {
    return solvePh(beer.lactic, beer.acetic, beer.buffer, beer.sid);
}

GramsPerLitre titratableAcidity(const Composition& beer) {
    const double charge = anionCharge(titrationEndPoint, beer.lactic, beer.acetic, beer.buffer) - beer.sid;
    return {charge * lacticMolarMass / 1e3};
}

Composition withTitratableAcidity(Composition beer, GramsPerLitre measured) {
    const double h = hydrogenAt(titrationEndPoint.ph);
    const double perGram = AcidTable::lacticKa / (AcidTable::lacticKa + h);
    const double missing = measured.gPerL - titratableAcidity(beer).gPerL;
    beer.lactic = std::max(0.0, beer.lactic + missing / perGram);
    return beer;
}

Composition withPh(Composition beer, Ph measured) {
    beer.sid = anionCharge(measured, beer.lactic, beer.acetic, beer.buffer);
    return beer;
}

GramsPerLitre titration(double baseMl, double normality, double beerMl) {
    return {baseMl * normality * lacticMolarMass / beerMl};
}

double equivalentWeight(Acid acid) {
    switch (acid) {
    case Acid::lactic:
        return lacticMolarMass;
    case Acid::acetic:
        return aceticMolarMass;
    case Acid::tartaric:
        return 150.087 / 2;
    case Acid::malic:
        return 134.087 / 2;
    case Acid::citric:
        return 192.124 / 3;
    case Acid::sulfuric:
        return 98.079 / 2;
    }
    return lacticMolarMass;
}

GramsPerLitre asLactic(GramsPerLitre value, Acid expressedAs) {
    return {value.gPerL * lacticMolarMass / equivalentWeight(expressedAs)};
}

AcidTable::AcidTable() {
    const long steps = std::lround((highest - lowest) / spacing);
    points_.reserve(static_cast<std::size_t>(steps) + 1);
    for (long i = 0; i <= steps; ++i) {
        const double h = hydrogenAt(lowest + static_cast<double>(i) * spacing);
        const Charge charge = backgroundCharge(h);
        points_.push_back({h, charge.value, charge.slope});
    }
}

const AcidTable& AcidTable::instance() {
    static const AcidTable table;
    return table;
}

} // namespace staveline

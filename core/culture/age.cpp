// SPDX-License-Identifier: GPL-3.0-or-later
// One interval in the vessel: sixteen rate equations by Heun's method, the pH solved at every stage.
#include "culture/vessel_state.h"

#include "quantity/acid_base.h"
#include "quantity/acid_table.h"
#include "quantity/arrhenius.h"
#include "quantity/constants.h"
#include "quantity/day.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace staveline::culture {
namespace {

enum Pool : std::size_t {
    lactic,
    acetic,
    sugar,
    dextrin,
    residue,
    ethanol,
    ferulic,
    coumaric,
    esters,
    vinylG,
    vinylP,
    ethylG,
    ethylP,
    lactics,
    brett,
    tolerance,
    poolCount
};
using Pools = std::array<double, poolCount>;

// Mass ratios of the reactions (molar masses, exact).
constexpr double aceticPerOxygen = 1.877, ethanolPerAcetic = .767;
constexpr double ethylPerVinylG = 1.0135, ethylPerVinylP = 1.0167;

/// What is left of life at the ends of the temperatures it bears, 0..1.
double alive(double celsius, const CultureParameters& p) {
    return std::clamp((celsius - p.coldest) / p.coldRamp, 0.0, 1.0) *
           std::clamp((p.warmest - celsius) / p.warmRamp, 0.0, 1.0);
}

/// Everything that depends on temperature and parameters only, per day.
struct Daily {
    double lacticRate, growth, brettGrowth, dextrinRate, enzymeRate, brettSugar, decay, starvation;
    double decarboxylation, reduction, sink, esterRate, vinylLoss;
    double aceticFromOxygen;

    Daily(const AgeConditions& c, const CultureParameters& p, double enzyme) {
        const double t = c.temperature.c;
        const double life = alive(t, p), speed20 = std::pow(p.speedPer10C, (t - 20) / 10);
        const double g20 = life * speed20, g18 = life * std::pow(p.speedPer10C, (t - 18) / 10);
        lacticRate = p.souring * g20;
        growth = p.lacticsGrowth * g20;
        brettGrowth = life * p.brettGrowth * std::pow(p.brettGrowthPer10C, (std::min(t, p.brettWarm) - 20) / 10) *
                      std::pow(p.speedPer10C, (std::max(t, p.brettWarm) - p.brettWarm) / 10);
        dextrinRate = p.dextrinOpening * g20;
        enzymeRate = std::max(p.enzymeOpening, enzyme) * g20;
        brettSugar = p.brettSugar * g20;
        decay = p.decline * speed20;
        starvation = (p.starvedDecline - p.decline) * speed20;
        decarboxylation = p.decarboxylation * g18;
        reduction = p.vinylReduction * g18;
        sink = p.phenolicSink * g18;
        esterRate = .5 * p.esterSplitting * g18;
        vinylLoss = p.vinylLoss * arrhenius(1000 * p.vinylEnergy, 20, t);
        aceticFromOxygen = p.oxygenToAcetic * aceticPerOxygen * c.oxygenPerYear / 365e3;
    }

    /// Relaxation rate of the fastest pool; Heun stays accurate and sugar positive below about 1.5 a step.
    [[nodiscard]] double fastest(const CultureParameters& p) const {
        const double sugarUse = (lacticRate / p.lacticYield + brettSugar) / p.halfSpeedSugar;
        return std::max({sugarUse, decarboxylation + sink, reduction + vinylLoss * p.vinylMost});
    }
};

class Rates {
public:
    /// `enzyme`: what refills brought, beside that of the vessel's own culture; a vessel has all of it once.
    Rates(const AgeConditions& conditions, const CultureParameters& parameters, double enzyme = 0)
        : p_(parameters), daily_(conditions, parameters, enzyme), isoKa_(std::pow(10.0, 3 - p_.isoPka)),
          logReference_(std::log(1 + std::pow(10.0, p_.hopPh - p_.isoPka))),
          logVinylReference_(std::log(10.0) * p_.vinylSlope * p_.vinylPh) {}

    [[nodiscard]] const Daily& daily() const { return daily_; }

    /// Change of every pool per day; `hydrogen` [mmol/L] belongs to `ph`.
    [[nodiscard]] Pools at(const Pools& z, double ibu, double ph, double hydrogen) const {
        Pools d;
        const double undissociated = z[lactic] * hydrogen / (hydrogen + AcidTable::lacticKa);
        const double monod = z[sugar] / (p_.halfSpeedSugar + z[sugar]);
        const double drive = freedom(ibu, z[tolerance], hydrogen) * sober(z[ethanol]) * monod /
                             (1 + std::exp((p_.stopPh - ph) / p_.stopWidth));
        souring(z, drive, monod, undissociated, d);
        phenols(z, ph, d);
        adaptation(z, ibu, d);
        return d;
    }

    /// By what evaporates in `days`.
    [[nodiscard]] double concentration(double days) const { return std::exp(p_.evaporation * days / daysPerYear); }

    [[nodiscard]] double freedom(double ibu, double toleranceNow, double hydrogen) const {
        const double active = logReference_ - std::log(1 + isoKa_ / hydrogen);
        return 1 / (1 + std::exp(p_.hopSteepness * (std::log(ibu / toleranceNow) + p_.phSharpensHops * active)));
    }

private:
    /// How far alcohol lets lactics work, 0..1.
    [[nodiscard]] double sober(double alcohol) const {
        const double over = alcohol / ethanolPerPercent - p_.alcoholBrakes;
        return std::clamp(1 - over / (p_.alcoholStops - p_.alcoholBrakes), 0.0, 1.0);
    }

    void souring(const Pools& z, double drive, double monod, double undissociated, Pools& d) const {
        const double made =
            daily_.lacticRate * z[lactics] * drive * std::max(0.0, 1 - undissociated / p_.acidStopsSouring);
        const double opening = daily_.dextrinRate * z[brett] + daily_.enzymeRate;
        const double opened = opening * z[dextrin], openedSlowly = opening * p_.residueAgainstDextrin * z[residue];
        const double leak = p_.sugarLeak * (opened + openedSlowly);
        const double eaten = daily_.brettSugar * z[brett] * monod;
        d[lactic] = made;
        d[acetic] = p_.aceticPerLactic * made + daily_.aceticFromOxygen;
        d[sugar] = leak - made / p_.lacticYield - eaten;
        d[dextrin] = -opened;
        d[residue] = -openedSlowly;
        d[ethanol] =
            p_.brettEthanol * (eaten + opened + openedSlowly - leak) - ethanolPerAcetic * daily_.aceticFromOxygen;
        const double food = z[sugar] + z[dextrin], fed = z[sugar] / p_.starvingSugar;
        const double fading = daily_.decay + daily_.starvation / (1 + fed * fed);
        d[lactics] = daily_.growth * drive * std::max(0.0, 1 - undissociated / p_.acidStopsGrowth) * z[lactics] *
                         (1 - z[lactics]) -
                     fading * z[lactics];
        d[brett] = daily_.brettGrowth * food / (1 + food) * z[brett] * (1 - z[brett]) - daily_.decay * z[brett];
    }

    void phenols(const Pools& z, double ph, Pools& d) const {
        const double split = daily_.esterRate * (z[lactics] + z[brett]) * z[esters];
        const double toVinyl = daily_.decarboxylation * z[brett], lost = toVinyl + daily_.sink * z[lactics];
        const double toEthyl = daily_.reduction * z[brett];
        const double acidity = std::exp(logVinylReference_ - slopeLn10_ * ph);
        const double gone = toEthyl + daily_.vinylLoss * std::min(p_.vinylMost, acidity);
        d[esters] = -split;
        d[ferulic] = split - lost * z[ferulic];
        d[coumaric] = p_.coumaricPerEster * split - lost * z[coumaric];
        d[vinylG] = constants::primary::vinylGuaiacolPerFerulic * toVinyl * z[ferulic] - gone * z[vinylG];
        d[vinylP] = constants::primary::vinylPhenolPerCoumaric * toVinyl * z[coumaric] - gone * z[vinylP];
        d[ethylG] = ethylPerVinylG * p_.reductionYield * toEthyl * z[vinylG];
        d[ethylP] = ethylPerVinylP * p_.reductionYield * toEthyl * z[vinylP];
    }

    void adaptation(const Pools& z, double ibu, Pools& d) const {
        const double pull = ibu / (ibu + z[tolerance]);
        d[tolerance] = pull / p_.toleranceGain * (p_.mostHopTolerance - z[tolerance]) -
                       (1 - pull) / p_.toleranceLoss * (z[tolerance] - p_.hopTolerance);
    }

    const CultureParameters& p_;
    const Daily daily_;
    const double isoKa_, logReference_, logVinylReference_;
    const double slopeLn10_ = std::log(10.0) * p_.vinylSlope;
};

Pools poolsOf(const VesselState& s) {
    const Composition& b = s.beer;
    return {b.lactic,      b.acetic,        b.sugar,       b.dextrin,
            b.residue,     b.ethanol,       b.ferulic,     b.coumaric,
            b.esters,      b.vinylGuaiacol, b.vinylPhenol, b.ethylGuaiacol,
            b.ethylPhenol, s.lactics,       s.brett,       std::max(s.hopTolerance, 1e-6)};
}

void putBack(const Pools& z, VesselState& s) {
    Composition& b = s.beer;
    b.lactic = z[lactic], b.acetic = z[acetic], b.sugar = z[sugar], b.dextrin = z[dextrin], b.residue = z[residue];
    b.ethanol = std::max(0.0, z[ethanol]);
    b.ferulic = z[ferulic], b.coumaric = z[coumaric], b.esters = z[esters];
    b.vinylGuaiacol = z[vinylG], b.vinylPhenol = z[vinylP], b.ethylGuaiacol = z[ethylG], b.ethylPhenol = z[ethylP];
    s.lactics = z[lactics], s.brett = z[brett], s.hopTolerance = z[tolerance];
}

/// pH kept up with the pools by one Newton step a stage.
class PhTracker {
public:
    PhTracker(const Composition& beer, const Pools& z)
        : table_(AcidTable::instance()), buffer_(beer.buffer), sid_(beer.sid) {
        for (int i = 0; i < 12; ++i)
            follow(z);
    }
    void follow(const Pools& z) {
        constexpr double lacticMmol = 1e3 / lacticMolarMass, aceticMmol = 1e3 / aceticMolarMass;
        ph_ = AcidTable::step(ph_, here_, z[lactic] * lacticMmol, z[acetic] * aceticMmol, buffer_, sid_);
        here_ = table_.at(ph_);
    }
    void concentrate(double factor) {
        buffer_ *= factor;
        sid_ *= factor;
    }
    [[nodiscard]] double ph() const { return ph_; }
    [[nodiscard]] double hydrogen() const { return here_.hydrogen; }

private:
    const AcidTable& table_;
    double buffer_, sid_;
    double ph_ = 3.8;
    AcidTable::Point here_ = table_.at(ph_);
};

/// Bitter acids lost by first order; cis lasts, trans and what was not isomerised do not.
struct Bitterness {
    double cis, trans, alpha, keepCis, keepTrans;
    Bitterness(const Composition& beer, double temperature, double step, const CultureParameters& p)
        : cis(std::max(0.0, beer.isoCis)), trans(std::max(0.0, beer.isoTrans)), alpha(std::max(0.0, beer.alphaAcids)) {
        const double month = daysPerMonth * std::pow(p.isoSpeedPer10C, (20 - temperature) / 10);
        const double vessel = std::exp(-p.vesselHopLoss * step / daysPerMonth);
        keepCis = vessel * std::exp2(-step / (p.isoCisMonths * month));
        keepTrans = vessel * std::exp2(-step / (p.isoTransMonths * month));
    }
    void advance(double concentration) {
        cis *= keepCis * concentration;
        trans *= keepTrans * concentration;
        alpha *= keepTrans * concentration;
    }
    /// What brakes lactics: a milligram of either a litre.
    [[nodiscard]] double braking() const { return cis + trans + alpha; }
};

AgeConditions within(const AgeConditions& c) {
    // Written so that NaN ends at the lower bound.
    return {{std::min(36525.0, std::max(0.0, c.days.d))},
            {std::min(45.0, std::max(-5.0, c.temperature.c))},
            std::min(1e4, std::max(0.0, c.oxygenPerYear)),
            c.apart,
            c.from};
}

/// Water leaves and alcohol with it, at its own share; all else stays behind in less beer.
void concentrate(Pools& z, double factor) {
    for (std::size_t k = 0; k < lactics; ++k)
        z[k] *= k == ethanol ? 1 : factor;
}

void integrate(Pools& z, Bitterness& hops, const Composition& beer, const Rates& rates, int steps, double h) {
    const double concentration = rates.concentration(h);
    PhTracker acid(beer, z);
    for (int i = 0; i < steps; ++i) {
        const double ibu = hops.braking();
        const Pools first = rates.at(z, ibu, acid.ph(), acid.hydrogen());
        Pools ahead;
        for (std::size_t k = 0; k < poolCount; ++k)
            ahead[k] = z[k] + h * first[k];
        ahead[sugar] = std::max(ahead[sugar], 0.0);
        acid.follow(ahead);
        const Pools second = rates.at(ahead, ibu, acid.ph(), acid.hydrogen());
        for (std::size_t k = 0; k < poolCount; ++k)
            z[k] += .5 * h * (first[k] + second[k]);
        z[sugar] = std::max(z[sugar], 0.0);
        concentrate(z, concentration);
        hops.advance(concentration);
        acid.concentrate(concentration);
        acid.follow(z);
    }
}

/// The same for the pools that nothing turns over. What it was brewed from counts as before: the alcohol still tells of
/// it.
void concentrate(Composition& beer, double factor) {
    const double ethanol = beer.ethanol, original = beer.original;
    for (const auto pool : compositionPools)
        beer.*pool *= factor;
    beer.ethanol = ethanol;
    beer.original = original;
}

/// At one temperature.
VesselState ageSteadily(const VesselState& state, const AgeConditions& c, const CultureParameters& parameters) {
    const Rates rates(c, parameters, state.enzyme);
    const double pace = std::clamp(rates.daily().fastest(parameters) / 1.5, 1.0, 20.0);
    const int steps = std::max(1, static_cast<int>(std::ceil(c.days.d * pace - 1e-9)));
    const double h = c.days.d / steps;

    Pools z = poolsOf(state);
    Bitterness hops(state.beer, c.temperature.c, h, parameters);
    integrate(z, hops, state.beer, rates, steps, h);

    VesselState out = state;
    concentrate(out.beer, rates.concentration(c.days.d));
    putBack(z, out);
    out.beer.isoCis = hops.cis;
    out.beer.isoTrans = hops.trans;
    out.beer.alphaAcids = hops.alpha;
    const double months = c.days.d / daysPerMonth;
    out.beer.betaGlucan *= std::exp(-parameters.glucanLoss * months);
    out.beer.arabinoxylan *= std::exp(-parameters.arabinoxylanLoss * months);
    return out;
}

} // namespace

VesselState age(const VesselState& state, const AgeConditions& conditions, const CultureParameters& parameters) {
    const AgeConditions c = within(conditions);
    VesselState now = state;
    for (const vessel::Spell& spell : vessel::spellsOf(c.apart, c.from, c.days)) {
        const AgeConditions steady{{spell.until - spell.from}, {c.temperature.c + spell.value}, c.oxygenPerYear};
        now = ageSteadily(now, within(steady), parameters);
    }
    return now;
}

double hopFreedom(Ibu bitterness, double hopTolerance, Ph ph, const CultureParameters& parameters) {
    return Rates({}, parameters).freedom(bitterness.ibu, hopTolerance, std::pow(10.0, 3 - ph.ph));
}

} // namespace staveline::culture

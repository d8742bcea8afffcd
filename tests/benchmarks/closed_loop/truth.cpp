// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/truth.h"

#include <algorithm>
#include <cmath>

namespace staveline::loop {
namespace {

constexpr double step = 15;          ///< of the time course [d]
constexpr double freshAcid = .9;     ///< [g/L]
constexpr double souredAcid = 8;     ///< [g/L]
constexpr double farthestTarget = 2; ///< [points]
constexpr PerDimension<double> levelSd{{1.2, 2.0, .7}};
constexpr double palateSd = .9;
constexpr PerDimension<double> driftSd{{.07, .06, .06}}; ///< of the level, a cycle [points]

double fall(double x, double scale) {
    return std::exp(-x / scale);
}
double rise(double x, double scale) {
    return 1 - fall(x, scale);
}
double square(double x) {
    return x * x;
}

} // namespace

TrueVessel::TrueVessel(std::uint64_t seed, int number, const Scores& middle) : noise_(seed, number), middle_(middle) {
    drawCharacter();
    drawUsual();
    settle(usual_);
    usualAcid_ = acid_;
    usualPhenol_ = phenol_;
    usualBody_ = bodyOfParts();
    drawTarget();
    settle(usual_);
    // The beer of the takeover is not quite what the recipe settles at.
    acid_ *= 1 + .06 * noise_.normal(Stream::start, {0});
    phenol_ *= 1 + .10 * noise_.normal(Stream::start, {1});
    gum_ += .15 * noise_.normal(Stream::start, {2});
}

void TrueVessel::drawCharacter() {
    int which = 0;
    const auto size = [&](double sd) { return noise_.logNormal(Stream::character, {which++}, sd); };
    is_.acidLag *= size(.35);
    is_.phenolLag *= size(.35);
    is_.gumLag *= size(.3);
    is_.acidYield *= size(.2);
    is_.hopHalf *= size(.4);
    for (double* effect :
         {&is_.mash, &is_.yeast, &is_.sugar, &is_.rest, &is_.precursor, &is_.gum, &is_.gravity, &is_.dextrin})
        *effect *= size(.4);
    drawLevels();
}

/// Levels far out on the scale leave no room to steer in.
void TrueVessel::drawLevels() {
    for (Dimension d : allDimensions)
        for (int again = 0; again < 50; ++again) {
            const int at = 100 * static_cast<int>(d) + again;
            palate_ = d == Dimension::acidity ? palateSd * noise_.normal(Stream::character, {at, 1}) : palate_;
            const double own = d == Dimension::acidity ? palate_ + std::sqrt(square(levelSd[d]) - square(palateSd)) *
                                                                       noise_.normal(Stream::character, {at, 2})
                                                       : levelSd[d] * noise_.normal(Stream::character, {at, 2});
            level_[d] = own;
            if (middle_[d] + own > 2 && middle_[d] + own < 8)
                break;
        }
}

void TrueVessel::drawUsual() {
    const auto oneOf = [&](int which, std::initializer_list<double> choices) {
        const auto at =
            static_cast<std::size_t>(noise_.uniform(Stream::usual, {which}) * static_cast<double>(choices.size()));
        return choices.begin()[at];
    };
    usual_.mash = oneOf(0, {65, 66, 67, 68});
    usual_.rest = oneOf(1, {0, 10, 15, 20});
    usual_.bitterness = oneOf(2, {8, 10, 12, 15});
    usual_.precursor = oneOf(3, {0, 5, 10, 15});
    usual_.glucan = oneOf(4, {0, 5, 10});
    usual_.late = usual_.rest > 0 && usual_.glucan > 0 ? 1 : 0;
}

/// Where another recipe would have settled this vessel: within reach, and not too far.
void TrueVessel::drawTarget() {
    for (int again = 0;; ++again) {
        Handling goal = usual_;
        const auto perhaps = [&](int which, double& lever, double low, double high) {
            if (noise_.uniform(Stream::target, {again, which, 0}) < .75)
                lever = noise_.between(Stream::target, {again, which, 1}, low, high);
        };
        perhaps(0, goal.mash, 62, 72);
        perhaps(1, goal.rest, 0, 40);
        perhaps(2, goal.bitterness, 4, 22);
        perhaps(3, goal.precursor, 0, 30);
        perhaps(4, goal.glucan, 0, 20);
        perhaps(5, goal.sugar, 0, 15);
        perhaps(6, goal.gravity, 10.5, 14);
        perhaps(7, goal.maltotriose, .1, .95);
        settle(goal);
        Scores reached = tastes();
        settle(usual_);
        const Scores now = tastes();
        double farthest = 0, sum = 0;
        for (Dimension d : allDimensions) {
            wanted_[d] = std::clamp(reached[d], .7, 9.3);
            farthest = std::max(farthest, std::abs(wanted_[d] - now[d]));
            sum += std::abs(wanted_[d] - now[d]);
        }
        if ((farthest <= farthestTarget && sum > 1.8) || again > 200)
            return;
    }
}

void TrueVessel::settle(const Handling& handling) {
    for (int cycle = 0; cycle < 25; ++cycle) {
        refillOnTheMean(handling);
        age(handling.interval);
    }
}

/// Apparent attenuation of the refill [%]: falls faster the hotter the mash, bent towards its ends.
double TrueVessel::attenuation(const Handling& h) const {
    const double above = h.mash - 66;
    double value = 80 - is_.mash * (1.3 * above + .08 * above * above) + is_.yeast * 14 * (h.maltotriose - .75) +
                   25 * h.dextrin + is_.sugar * .25 * h.sugar - 6 * square(h.mashPh - 5.4);
    value += 2 * h.ramp * rise(h.rest, 15);
    return 77 + 20 * std::tanh((value - 77) / 20);
}

/// Rest and malt help each other; oats and sugar bring none.
double TrueVessel::precursorOf(const Handling& h) const {
    const double malt = .75 * is_.precursor * rise(h.precursor, 25);
    const double rested =
        .95 * is_.rest * rise(h.rest, 18) * (1 + .02 * h.precursor) * (1 - .3 * std::abs(h.mashPh - 5.7));
    return (1 + malt + rested + .08 * h.clove) * h.gravity / 12 * (1 - h.sugar / 100) * (1 - .4 * h.glucan / 100);
}

/// What thickens; the rest takes it away from grain that goes through it.
double TrueVessel::gumOf(const Handling& h) const {
    const double eaten = .6 * rise(h.rest, 15);
    return .5 * (1 - eaten) + .045 * is_.gum * h.glucan * (1 - eaten * (1 - h.late));
}

void TrueVessel::take(const Handling& h, const Batch& batch) {
    const double f = h.draw / 100, soured = h.soured / 100;
    const auto blend = [f](double& what, double with) { what += f * (with - what); };
    const double food = std::max(0.0, 10 * h.gravity * (1 - .0082 * attenuation(h)) - 19);
    blend(food_, food * batch.food * (1 - .15 * soured));
    blend(acid_, freshAcid + (souredAcid - freshAcid) * soured);
    blend(hops_, h.bitterness);
    blend(precursor_, precursorOf(h) * batch.precursor);
    blend(phenol_, 0);
    blend(gum_, gumOf(h) + batch.gum);
    blend(gravity_, h.gravity);
    blend(glycerol_, h.glycerol);
}

void TrueVessel::refillOnTheMean(const Handling& handling) {
    take(handling, {});
}

void TrueVessel::refill(const Handling& handling, int cycle) {
    const auto by = [&](int which) { return noise_.normal(Stream::batch, {cycle, which}); };
    take(handling, {1 + .06 * by(0), 1 + .08 * by(1), .12 * by(2)});
    for (Dimension d : allDimensions)
        level_[d] += driftSd[d] * noise_.normal(Stream::drift, {cycle, static_cast<int>(d)});
}

void TrueVessel::age(double days) {
    for (double left = days; left > 0; left -= step) {
        const double now = std::min(left, step);
        const double eaten = food_ * rise(now, is_.acidLag);
        const double braked = (1 + std::pow(hops_ / is_.hopHalf, 1.6)) * (1 + square(acid_ / 9));
        food_ -= eaten;
        acid_ += is_.acidYield * eaten / braked + .0012 * now;
        const double turned = precursor_ * rise(now, is_.phenolLag);
        precursor_ -= turned;
        phenol_ += turned + .0008 * now;
        hops_ *= fall(now, 500);
        gum_ *= fall(now, is_.gumLag);
    }
}

double TrueVessel::bodyOfParts() const {
    return gum_ + .03 * is_.dextrin * food_ + .18 * is_.gravity * gravity_ + .06 * glycerol_ - .06 * acid_;
}

Scores TrueVessel::tastes() const {
    constexpr double sour = 1.74, funky = 2.1, full = 2.5;
    Scores change;
    change[Dimension::acidity] = sour * (std::pow(acid_, .7) - std::pow(usualAcid_, .7));
    change[Dimension::funk] = funky * std::log(phenol_ / usualPhenol_);
    change[Dimension::body] = full * std::tanh((bodyOfParts() - usualBody_) / full);
    Scores scores;
    for (Dimension d : allDimensions)
        scores[d] = std::clamp(middle_[d] + level_[d] + change[d], 0.0, 10.0);
    return scores;
}

std::vector<Scores> drawsAhead(TrueVessel vessel, double toDraw, Handling handling, int draws) {
    std::vector<Scores> seen;
    vessel.age(toDraw);
    for (int i = 0; i < draws; ++i) {
        vessel.refillOnTheMean(handling);
        vessel.age(handling.interval);
        seen.push_back(vessel.tastes());
        handling.soured = 0;
    }
    return seen;
}

} // namespace staveline::loop

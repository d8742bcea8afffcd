// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/guard.h"

#include "finishing/carbonation.h"
#include "quantity/constants.h"
#include "quantity/density.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace staveline::finishing {
namespace {

namespace rule = constants::finishing;

std::chrono::days wholeDays(double days) {
    return std::chrono::days{static_cast<int>(days)};
}

Result<void> canBePacked(const GuardQuestion& question) {
    if (auto ok = checkPackage(question.package); !ok)
        return ok;
    if (question.override && question.override->find_first_not_of(" \t\n") == std::string::npos)
        return badInput("/override", say("finishing.no_reason"), say("finishing.no_reason.remedy"));
    const auto now = gravityNow(question.beer);
    if (!now || now->gravity.sg <= rule::bottleGravity + 1e-9)
        return {};
    return badInput("/gravity",
                    say("finishing.still_ferments")
                        .with("gravity", now->gravity)
                        .with("volumes", fromExtract(now->gravity, floorOf(question.beer)))
                        .with("most", SpecificGravity{rule::bottleGravity}),
                    say("finishing.still_ferments.remedy"));
}

GramsPerLitre unfermented(const BeerKnown& beer, const Proof& proof) {
    return proof.whole() ? beer.fruitSugar : beer.fruitSugar + beer.freshSugar;
}

/// Bottles that are to ferment stand warm until they have, wherever they are kept afterwards.
Celsius reckonedAt(const GuardVerdict& verdict, const Package& package) {
    const Pressures& all = verdict.pressures;
    const bool ferments = (all.priming + all.extract + all.fruit).vol > 0;
    return ferments ? std::max(package.warmest, Celsius{rule::conditioning}) : package.warmest;
}

/// What a make is trusted with is told at the usual warmest: above it the glass holds no more pressure.
Co2Volumes trusted(const BottleMake& make, Celsius warmest) {
    const Celsius usual{rule::warmest};
    return warmest <= usual ? make.most : dissolved(absolute(bottlePressure(make.most, usual)), warmest);
}

/// The lowest of what the maker rates it for, what a bottle of this make is trusted with and what any bottle is.
void findLimit(GuardVerdict& verdict, const Package& package) {
    if (package.rating)
        verdict.limitVolumes =
            std::min(dissolved(absolute(*package.rating), verdict.warmest), Co2Volumes{rule::mostVolumes});
    if (package.make) {
        const Co2Volumes most = trusted(*package.make, verdict.warmest);
        verdict.limitVolumes = std::min(verdict.limitVolumes.value_or(most), most);
    }
    if (verdict.limitVolumes)
        verdict.limit = bottlePressure(*verdict.limitVolumes, verdict.warmest);
}

bool neverHolds(const Package& package) {
    return package.make && !(package.make->most.vol > 0);
}

void refuseUnknown(GuardVerdict& verdict, const Package& package) {
    if (neverHolds(package))
        verdict.refusals.push_back(say("finishing.guard.never").with("bottle", package.make->name));
    else if (!verdict.limit)
        verdict.refusals.push_back(say("finishing.guard.no_rating"));
}

/// Rounded up to what is shown, so that it is never "0.0 vol less".
Co2Volumes atLeast(Co2Volumes volumes) {
    constexpr double shown = 10; // steps in a volume
    return {std::ceil(volumes.vol * shown) / shown};
}

void refusePressure(GuardVerdict& verdict, const Package& package) {
    if (!verdict.limit || neverHolds(package) || verdict.pressures.warmest <= *verdict.limit)
        return;
    verdict.refusals.push_back(say("finishing.guard.bursts")
                                   .with("pressure", verdict.pressures.warmest)
                                   .with("volumes", verdict.pressures.all())
                                   .with("warmest", verdict.warmest)
                                   .with("limit", *verdict.limit)
                                   .with("least", atLeast(verdict.pressures.all() - *verdict.limitVolumes)));
}

void refuseUnmeasured(GuardVerdict& verdict, const BeerKnown& beer) {
    const auto now = gravityNow(beer);
    if (!now)
        verdict.refusals.push_back(say("finishing.guard.no_gravity"));
    else if (daysBetween(now->on, beer.today) > rule::freshGravity)
        verdict.refusals.push_back(
            say("finishing.guard.old_gravity").with("on", now->on).with("days", Days{rule::freshGravity}));
    if (stillFalling(beer))
        verdict.refusals.push_back(say("finishing.guard.falling"));
}

void refuseRestless(GuardVerdict& verdict, const BeerKnown& beer) {
    if (verdict.proof.whole())
        return;
    const auto within = [&](const std::optional<Day>& on, double days) {
        return on && daysBetween(*on, beer.today) < days;
    };
    if (within(beer.lastRefill, rule::youngDays))
        verdict.refusals.push_back(
            say("finishing.guard.young").with("on", *beer.lastRefill).with("days", Days{rule::youngDays}));
    if (within(beer.takenOver, rule::youngDays))
        verdict.refusals.push_back(say("finishing.guard.taken_over").with("days", Days{rule::youngDays}));
    if (within(beer.lastMove, rule::transferDays))
        verdict.refusals.push_back(
            say("finishing.guard.moved").with("on", *beer.lastMove).with("days", Days{rule::transferDays}));
}

/// What the floor rests on, and what would tell more.
void tellGrounds(GuardVerdict& verdict, const GuardQuestion& question) {
    const BeerKnown& beer = question.beer;
    if (verdict.gravity)
        verdict.grounds.push_back(say("finishing.ground.extract")
                                      .with("gravity", *verdict.gravity)
                                      .with("floor", verdict.floor)
                                      .with("volumes", verdict.pressures.extract));
    if (beer.diastatic)
        verdict.grounds.push_back(say("finishing.ground.diastatic"));
    if (beer.simpleSugar.of1 > rule::sugaryGrist)
        verdict.grounds.push_back(say("finishing.ground.sugary").with("share", beer.simpleSugar));
    if (const GramsPerLitre sugar = unfermented(beer, verdict.proof); sugar.gPerL > 0)
        verdict.grounds.push_back(
            say("finishing.ground.fruit").with("sugar", sugar).with("volumes", verdict.pressures.fruit));
    if (verdict.warmest > question.package.warmest)
        verdict.grounds.push_back(say("finishing.ground.conditioned")
                                      .with("reckoned", verdict.warmest)
                                      .with("warmest", question.package.warmest));
    if (verdict.warmest.c < rule::warmest)
        verdict.grounds.push_back(say("finishing.ground.cooler")
                                      .with("warmest", verdict.warmest)
                                      .with("hot", Celsius{rule::warmest})
                                      .with("pressure", bottlePressure(verdict.pressures.all(), {rule::warmest})));
    verdict.grounds.push_back(verdict.proof.whole() ? say("finishing.ground.proven").with("until", *verdict.proof.until)
                                                    : say("finishing.ground.not_proven"));
}

/// What clears it holds only so long.
Day lasts(const GuardVerdict& verdict, const BeerKnown& beer) {
    const Day measured = gravityNow(beer)->on + wholeDays(rule::freshGravity);
    return verdict.proof.until ? std::min(*verdict.proof.until, measured) : measured;
}

bool isThin(const GuardVerdict& verdict, const Package& package) {
    return verdict.marginVolumes()->vol < rule::thinMargin ||
           (package.make && verdict.pressures.all() > package.make->warn);
}

void decide(GuardVerdict& verdict, const GuardQuestion& question) {
    if (verdict.refusals.empty()) {
        verdict.answer = isThin(verdict, question.package) ? GuardAnswer::thin : GuardAnswer::clear;
        verdict.until = lasts(verdict, question.beer);
    } else if (question.override) {
        verdict.answer = GuardAnswer::overridden;
        verdict.reason = *question.override;
    }
}

} // namespace

std::string_view wordOf(GuardAnswer answer) {
    constexpr std::array<std::string_view, 4> words = {"clear", "thin", "refused", "overridden"};
    return words[static_cast<std::size_t>(answer)];
}

std::optional<GaugePressure> GuardVerdict::margin() const {
    return limit && gravity ? std::optional(*limit - pressures.warmest) : std::nullopt;
}

std::optional<Co2Volumes> GuardVerdict::marginVolumes() const {
    return limitVolumes && gravity ? std::optional(*limitVolumes - pressures.all()) : std::nullopt;
}

Co2Volumes fromExtract(SpecificGravity now, SpecificGravity floor) {
    constexpr double point = .001;
    const Plato eaten = realExtract({0}, toPlato({1 + point})) - realExtract({0}, toPlato({1}));
    const GramsPerLitre inPoint{10 * eaten.p * rule::beerDensity};
    return volumesOf(inPoint * (rule::extractCo2 * std::max(0.0, (now - floor).sg / point)));
}

Result<GuardVerdict> guard(const GuardQuestion& question) {
    if (auto ok = canBePacked(question); !ok)
        return fail(ok.error());
    const BeerKnown& beer = question.beer;
    GuardVerdict verdict;
    verdict.proof = proofOf(beer);
    verdict.floor = floorOf(beer);
    if (const auto now = gravityNow(beer))
        verdict.gravity = now->gravity;
    Pressures& all = verdict.pressures;
    all.residual = beer.residual;
    all.priming = question.priming;
    all.extract = verdict.gravity ? fromExtract(*verdict.gravity, verdict.floor) : Co2Volumes{0};
    all.fruit = volumesOf(unfermented(beer, verdict.proof) * rule::extractCo2);
    verdict.warmest = reckonedAt(verdict, question.package);
    all.warmest = bottlePressure(all.all(), verdict.warmest);
    findLimit(verdict, question.package);
    refuseUnknown(verdict, question.package);
    refusePressure(verdict, question.package);
    refuseUnmeasured(verdict, beer);
    refuseRestless(verdict, beer);
    tellGrounds(verdict, question);
    decide(verdict, question);
    return verdict;
}

} // namespace staveline::finishing

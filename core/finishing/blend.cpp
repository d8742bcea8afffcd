// SPDX-License-Identifier: GPL-3.0-or-later
#include "finishing/blend.h"

#include "finishing/blend_shares.h"
#include "finishing/limits.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <iterator>
#include <numeric>

namespace staveline::finishing {
namespace {

constexpr std::size_t mostSources = 5;

constexpr std::array<Range, allTraits.size()> aimRanges{
    {{0, 40}, {2.5, 6}, {0, 20}, {0, 150}, {0, 400}, {0, 10}, {0, 10}, {0, 10}}};

Result<void> checkSources(const BlendQuestion& q) {
    if (q.sources.size() < 2 || q.sources.size() > mostSources)
        return badInput("/from",
                        say("finishing.blend.sources").with("count", static_cast<std::int64_t>(q.sources.size())),
                        say("finishing.blend.sources.remedy").with("most", static_cast<std::int64_t>(mostSources)));
    for (std::size_t i = 0; i < q.sources.size(); ++i)
        if (!(q.sources[i].atHand.l > 0))
            return badInput(fmt::format("/from/{}", i),
                            say("finishing.blend.no_litres").with("source", q.sources[i].name),
                            say("finishing.blend.no_litres.remedy"));
    return {};
}

Result<void> checkAims(const BlendQuestion& q) {
    bool any = false;
    for (const Trait trait : allTraits) {
        if (!q.aims[trait])
            continue;
        any = true;
        if (auto ok =
                inRange(fmt::format("/{}", wordOf(trait)), *q.aims[trait], aimRanges[static_cast<std::size_t>(trait)]);
            !ok)
            return ok;
    }
    if (!any)
        return badInput("/aims", say("finishing.blend.no_aim"), say("finishing.blend.no_aim.remedy"));
    for (const BlendSource& source : q.sources)
        if (q.aims[Trait::colour] && !source.colour)
            return badInput("/colour", say("finishing.blend.no_colour").with("source", source.name),
                            say("finishing.blend.no_colour.remedy"));
    return {};
}

Litres atHandInAll(const BlendQuestion& q) {
    Litres all{0};
    for (const BlendSource& source : q.sources)
        all += source.atHand;
    return all;
}

Result<void> checkLitres(const BlendQuestion& q) {
    constexpr double most = 1e6;
    if (auto ok = inRange("/step_l", q.step.l, {.01, 100}); !ok)
        return ok;
    if (!q.litres)
        return {};
    if (auto ok = inRange("/litres", q.litres->l, {q.step.l, most}); !ok)
        return ok;
    const Litres all = atHandInAll(q);
    if (*q.litres <= all)
        return {};
    return badInput("/litres", say("finishing.blend.too_much").with("wanted", *q.litres).with("held", all),
                    say("finishing.blend.too_much.remedy").with("held", all));
}

/// Whole steps that sum to `total` of them, nearest to the shares and none above its limit: what is left over goes
/// where most was cut off.
std::vector<int> wholeSteps(const Shares& shares, int total, const std::vector<int>& most) {
    std::vector<int> steps;
    for (std::size_t i = 0; i < shares.size(); ++i)
        steps.push_back(std::min(most[i], static_cast<int>(std::floor(shares[i] * total + 1e-9))));
    for (int left = total - std::accumulate(steps.begin(), steps.end(), 0); left > 0; --left) {
        std::size_t at = shares.size();
        const auto cut = [&](std::size_t i) { return shares[i] * total - steps[i]; };
        for (std::size_t i = 0; i < shares.size(); ++i)
            if (steps[i] < most[i] && (at == shares.size() || cut(i) > cut(at)))
                at = i;
        if (at == shares.size())
            break;
        ++steps[at];
    }
    return steps;
}

int stepsIn(Litres volume, Litres step) {
    return static_cast<int>(std::floor(volume / step + 1e-9));
}

/// As much as the shares can be poured from what there is.
Litres largest(const BlendQuestion& q, const Shares& shares) {
    Litres most = atHandInAll(q);
    for (std::size_t i = 0; i < shares.size(); ++i)
        if (shares[i] > 1e-6)
            most = std::min(most, q.sources[i].atHand / shares[i]);
    return most;
}

void pour(Blend& blend, const BlendQuestion& q, const Shares& shares) {
    std::vector<int> most;
    for (const BlendSource& source : q.sources)
        most.push_back(stepsIn(source.atHand, q.step));
    const Litres wanted = q.litres.value_or(largest(q, shares));
    const auto steps = wholeSteps(shares, stepsIn(wanted, q.step), most);
    const auto bench = wholeSteps(shares, 1000, std::vector<int>(shares.size(), 1000));
    for (std::size_t i = 0; i < shares.size(); ++i) {
        const Litres takes = q.step * steps[i];
        blend.parts.push_back(
            {q.sources[i].name, shares[i], takes, q.sources[i].atHand - takes, {static_cast<double>(bench[i])}});
        blend.litres += takes;
    }
}

Shares poured(const Blend& blend) {
    Shares shares;
    for (const BlendPart& part : blend.parts)
        shares.push_back(blend.litres.l > 0 ? part.takes / blend.litres : part.share);
    return shares;
}

void describe(Blend& blend, const BlendQuestion& q) {
    const Shares shares = poured(blend);
    for (const Trait trait : allTraits) {
        const auto value = traitOf(q.sources, shares, trait);
        if (!value)
            continue;
        double variance = 0;
        for (std::size_t i = 0; i < shares.size(); ++i)
            variance += std::pow(shares[i] * q.sources[i].sd[trait], 2);
        const bool reached = !q.aims[trait] || std::abs(*value - *q.aims[trait]) <= toleranceOf(trait);
        blend.traits.push_back({trait, q.aims[trait], *value, std::sqrt(variance), reached});
    }
}

/// What none of the sources has: named with the one that comes nearest.
std::optional<Message> beyondAll(const BlendQuestion& q, const BlendTrait& trait) {
    const BlendSource *lowest = nullptr, *highest = nullptr;
    const auto of = [&](const BlendSource* source) { return *traitOf(*source, trait.trait); };
    for (const BlendSource& source : q.sources) {
        if (!lowest || of(&source) < of(lowest))
            lowest = &source;
        if (!highest || of(&source) > of(highest))
            highest = &source;
    }
    const bool above = *trait.aim > of(highest);
    if (!above && *trait.aim >= of(lowest))
        return std::nullopt;
    const BlendSource* nearest = above ? highest : lowest;
    return say(above ? "finishing.missing.above" : "finishing.missing.below")
        .with("trait", labelOf(trait.trait))
        .with("value", amountOf(trait.trait, trait.value))
        .with("aim", amountOf(trait.trait, *trait.aim))
        .with("nearest", amountOf(trait.trait, of(nearest)))
        .with("source", nearest->name);
}

/// Whether more of a source would do it, and of which most.
std::optional<Message> shortOf(const BlendQuestion& q, const std::vector<Trait>& aims, const BlendTrait& trait) {
    BlendQuestion free = q;
    for (BlendSource& source : free.sources)
        source.atHand = q.litres.value_or(Litres{1});
    const Shares shares = bestShares(free, aims);
    if (!q.litres || std::abs(*traitOf(q.sources, shares, trait.trait) - *trait.aim) > toleranceOf(trait.trait))
        return std::nullopt;
    std::size_t at = 0;
    const auto lacks = [&](std::size_t i) { return shares[i] * q.litres->l - q.sources[i].atHand.l; };
    for (std::size_t i = 1; i < shares.size(); ++i)
        if (lacks(i) > lacks(at))
            at = i;
    return say("finishing.missing.litres")
        .with("trait", labelOf(trait.trait))
        .with("value", amountOf(trait.trait, trait.value))
        .with("aim", amountOf(trait.trait, *trait.aim))
        .with("source", q.sources[at].name)
        .with("needed", *q.litres * shares[at])
        .with("held", q.sources[at].atHand);
}

void tellMissing(Blend& blend, const BlendQuestion& q, const std::vector<Trait>& aims) {
    for (const BlendTrait& trait : blend.traits) {
        if (trait.reached)
            continue;
        auto missing = beyondAll(q, trait);
        if (!missing)
            missing = shortOf(q, aims, trait);
        if (!missing)
            missing = say("finishing.missing.together")
                          .with("trait", labelOf(trait.trait))
                          .with("value", amountOf(trait.trait, trait.value))
                          .with("aim", amountOf(trait.trait, *trait.aim));
        blend.missing.push_back(*missing);
    }
}

} // namespace

Result<Blend> blend(const BlendQuestion& question) {
    for (auto ok : {checkSources(question), checkAims(question), checkLitres(question)})
        if (!ok)
            return fail(ok.error());
    const auto aims = aimedAt(question);
    const Shares shares = bestShares(question, aims);
    Blend blend;
    pour(blend, question, shares);
    describe(blend, question);
    tellMissing(blend, question, aims);
    return blend;
}

} // namespace staveline::finishing

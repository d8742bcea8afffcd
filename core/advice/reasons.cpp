// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/reasons.h"

#include "advice/adviser.h"
#include "advice/loss.h"
#include "quantity/language.h"
#include "quantity/text.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <fmt/core.h>

namespace staveline::advice {
namespace {

/// Key of a text: "advice.reason" + acidity + "held".
std::string keyFor(std::string_view what, Dimension d, std::string_view which) {
    return fmt::format("{}.{}.{}", what, name(d), which);
}

double changeAtNext(const ProposalContext& context, Dimension d) {
    return context.proposal.next[d].value - context.alone.next[d].value;
}
double changeSettled(const ProposalContext& context, Dimension d) {
    return context.proposal.settled[d].value - context.alone.settled[d].value;
}

std::vector<const Move*> chosen(const Proposal& proposal) {
    std::vector<const Move*> moves;
    for (const auto& move : proposal.moves)
        if (!move.forced)
            moves.push_back(&move);
    return moves;
}

/// It may be another one on no lever: with other base malt.
bool differs(const ProposalContext& context) {
    return context.proposal.setting != context.alone.setting;
}

/// What leaving alone would lose in this dimension and the proposal does not [squared bands].
double gain(const ProposalContext& context, Dimension d) {
    return context.alone.loss[d] - context.proposal.loss[d];
}

/// Something is to be said of it beyond that it stays as it is.
bool concerns(const ProposalContext& context, Dimension d) {
    const bool steady = context.input.verdicts[d].kind == tasting::VerdictKind::hold;
    return context.input.seen[d] && (!steady || std::abs(gain(context, d)) >= clearlyBetter);
}

/// "Acidity is 6.4, wanted is 5.0: ..."
Message whereTo(const ProposalContext& context, Dimension d, bool changed) {
    auto message = say(keyFor("advice.reason", d, changed ? "towards" : "alone"))
                       .with("now", Points{context.input.combined[d].mean}, {OriginKind::now, d})
                       .with("wanted", Points{context.input.target.windows[d].wanted}, {OriginKind::window, d})
                       .with("next", Points{context.proposal.next[d].value}, {OriginKind::predictionNext, d});
    if (changed)
        message.arguments.push_back({"alone", Points{context.alone.next[d].value}, {OriginKind::aloneNext, d}});
    return message;
}

Message held(const ProposalContext& context, Dimension d) {
    return say(keyFor("advice.reason", d, "held"))
        .with("next", Points{context.proposal.next[d].value}, {OriginKind::predictionNext, d})
        .with("alone", Points{context.alone.next[d].value}, {OriginKind::aloneNext, d});
}

Message whatItDoes(const Move& move, std::size_t at) {
    auto message = say("advice.reason.move").with("move", shortPhrase(move));
    for (auto d : allDimensions)
        message.arguments.push_back({std::string(name(d)), SignedPoints{(*move.next)[d]}, Origin::ofMove(at, d)});
    return message;
}

Message ifRepeated(const ProposalContext& context) {
    auto message = say("advice.reason.repeated");
    for (auto d : allDimensions)
        message.arguments.push_back(
            {std::string(name(d)), SignedPoints{changeSettled(context, d)}, {OriginKind::changeSettled, d}});
    return message;
}

/// How much of the settled change the next draw shows, for the dimension that changes most.
std::vector<Message> slowness(const ProposalContext& context) {
    const auto d = *std::max_element(allDimensions.begin(), allDimensions.end(), [&](Dimension a, Dimension b) {
        return std::abs(changeSettled(context, a)) < std::abs(changeSettled(context, b));
    });
    const double share = changeAtNext(context, d) / changeSettled(context, d);
    if (std::abs(changeSettled(context, d)) < untasted || share < 0 || share > 1)
        return {};
    return {say(keyFor("advice.reason", d, "slow"))
                .with("share", Share{std::round(100 * share) / 100}, {OriginKind::share, d})};
}

/// A change too small to be tasted is never sold as one.
std::vector<Message> untastedLimits(const ProposalContext& context) {
    std::vector<Message> limits;
    const double threshold = acidityThreshold(context.input, context.alone);
    for (auto d : allDimensions) {
        const double change = changeAtNext(context, d);
        if (std::abs(change) < leastTold || !concerns(context, d))
            continue;
        if (std::abs(change) < untasted)
            limits.push_back(say(keyFor("advice.limit", d, "untasted"))
                                 .with("points", SignedPoints{change}, {OriginKind::changeNext, d}));
        else if (d == Dimension::acidity && std::abs(change) < threshold)
            limits.push_back(say("advice.limit.acidity.belowThreshold")
                                 .with("points", SignedPoints{change}, {OriginKind::changeNext, d})
                                 .with("threshold", Points{threshold}, {OriginKind::threshold, d}));
    }
    return limits;
}

std::vector<Message> cycleLimits(const ProposalContext& context) {
    std::vector<Message> limits;
    for (auto d : allDimensions) {
        const int cycles = context.proposal.cyclesNeeded[d];
        if (!concerns(context, d) || cycles == 1)
            continue;
        limits.push_back(say(keyFor("advice.limit", d, cycles == 0 ? "notReached" : "cycles"))
                             .with("cycles", std::int64_t{cycles == 0 ? cyclesLookedAhead : cycles},
                                   cycles == 0 ? Origin() : Origin(OriginKind::cycles, d)));
    }
    return limits;
}

/// The new value as the wording shows it, in the lever's own unit.
ArgumentValue shownValue(const Move& move) {
    for (const auto& argument : move.wording.arguments)
        if (argument.name == "to")
            return argument.value;
    return Number{number(move.to), 1};
}

std::vector<Message> boundLimits(const ProposalContext& context, const Setting& start) {
    std::vector<Message> limits;
    for (const auto* move : chosen(context.proposal)) {
        const auto& lever = *findLever(move->lever);
        const auto row = narrowedRow(lever, start, context.input);
        if (row.isChoice())
            continue;
        const double to = number(move->to);
        if (to - row.step < row.low - 1e-9 || to + row.step > row.high + 1e-9)
            limits.push_back(say("advice.limit.bound")
                                 .with("lever", rowOf(lever).name)
                                 .with("value", shownValue(*move), OriginKind::moveTo));
    }
    return limits;
}

/// The brake may fade as the culture adapts, so the vessel's own bitterness is always said.
std::vector<Message> hopLimits(const ProposalContext& context) {
    if (context.proposal.setting.recipe.bitterness == context.alone.setting.recipe.bitterness)
        return {};
    return {say("advice.limit.hops")
                .with("vessel", context.proposal.atNext.bitterness, OriginKind::vesselBitterness)
                .with("alone", context.alone.atNext.bitterness, OriginKind::aloneBitterness)};
}

/// Where a lever's direction is known of worts only, that is said beside its sign.
std::vector<Message> assumed(const Proposal& proposal) {
    std::vector<std::string> phrases;
    for (const auto* move : chosen(proposal))
        if (rowOf(*findLever(move->lever)).assumed)
            phrases.push_back(shortPhrase(*move));
    if (phrases.empty())
        return {};
    return {say("advice.reason.assumed").with("moves", listed(phrases))};
}

std::vector<Message> aidLimits(const ProposalContext& context) {
    for (const auto* move : chosen(context.proposal))
        if (findLever(move->lever)->oneCycle)
            return {say("advice.limit.oneCycle").with("move", shortPhrase(*move))};
    return {};
}

/// By how much the proposal leaves a score farther from the wanted one than leaving alone does.
double farther(double with, double without, double wanted) {
    return std::abs(with - wanted) - std::abs(without - wanted);
}

/// Where it gains: at the next draw; else at the last one planned for; else somewhere between them.
Message nearing(const ProposalContext& context, Dimension d) {
    const auto& [input, plan, alone] = context;
    const double wanted = input.target.windows[d].wanted;
    const Origin window(OriginKind::window, d);
    if (farther(plan.next[d].value, alone.next[d].value, wanted) <= -leastTold)
        return say(fmt::format("advice.why.{}", name(d)))
            .with("alone", Points{alone.next[d].value}, {OriginKind::aloneNext, d})
            .with("next", Points{plan.next[d].value}, {OriginKind::predictionNext, d})
            .with("wanted", Points{wanted}, window);
    const auto draws = std::int64_t{input.horizon};
    if (farther(plan.ahead[d], alone.ahead[d], wanted) <= -leastTold)
        return say(fmt::format("advice.why.{}.ahead", name(d)))
            .with("draws", draws)
            .with("alone", Points{alone.ahead[d]})
            .with("next", Points{plan.ahead[d]})
            .with("wanted", Points{wanted}, window);
    return say("advice.why.between")
        .with("what", inLanguage(name(d)))
        .with("draws", draws)
        .with("wanted", Points{wanted}, window);
}

/// It loses by the proposal, and that can be tasted.
bool pays(const ProposalContext& context, Dimension d) {
    const auto& [input, plan, alone] = context;
    const double wanted = input.target.windows[d].wanted;
    return gain(context, d) <= -clearlyBetter && std::max(farther(plan.next[d].value, alone.next[d].value, wanted),
                                                          farther(plan.ahead[d], alone.ahead[d], wanted)) >= untasted;
}

/// All that a move changes at the next draw, as far as it is known [points].
double weight(const Move& move) {
    double sum = 0;
    if (move.next)
        for (auto d : allDimensions)
            sum += std::abs((*move.next)[d]);
    return sum;
}

void append(std::vector<Message>& to, std::vector<Message> more) {
    to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

} // namespace

std::string listed(const std::vector<std::string>& words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i)
        text += (i == 0                 ? std::string()
                 : i + 1 < words.size() ? std::string(", ")
                                        : ' ' + inLanguage("and") + ' ') +
                words[i];
    return text;
}

std::string shortPhrase(const Move& move) {
    const auto& texts = builtInTexts();
    const auto stem = "advice.short." + move.lever;
    if (const auto* to = std::get_if<std::string>(&move.to)) {
        if (texts.has(stem + "." + *to))
            return std::string(texts.find(stem + "." + *to));
    } else if (const auto first = stem + ".new"; number(move.from) == 0 && texts.has(first)) {
        return std::string(texts.find(first));
    } else if (const auto key = stem + (number(move.to) > number(move.from) ? ".up" : ".down"); texts.has(key)) {
        return std::string(texts.find(key));
    }
    return std::string(texts.has(stem) ? texts.find(stem) : std::string_view(rowOf(*findLever(move.lever)).name));
}

Message titleOf(const std::vector<Move>& moves) {
    auto ranked = moves;
    std::stable_sort(ranked.begin(), ranked.end(), [](const Move& a, const Move& b) { return weight(a) > weight(b); });
    std::vector<std::string> phrases;
    for (const auto& move : ranked)
        if (!move.forced)
            phrases.push_back(shortPhrase(move));
    if (phrases.empty())
        return say("advice.title.alone");
    phrases.front().front() = static_cast<char>(std::toupper(static_cast<unsigned char>(phrases.front().front())));
    if (phrases.size() == 1)
        return say("advice.title.one").with("first", phrases[0]);
    const auto last = phrases.back();
    phrases.pop_back();
    std::string first;
    for (const auto& phrase : phrases)
        first += (first.empty() ? "" : ", ") + phrase;
    return say("advice.title.two").with("first", first).with("second", last);
}

Message withCost(Message title, const ProposalContext& context) {
    std::vector<std::string> worse;
    for (auto d : allDimensions)
        if (pays(context, d))
            worse.push_back(inLanguage(name(d)));
    if (worse.empty())
        return title;
    return say("advice.title.against").with("plan", render(title)).with("what", listed(worse));
}

Message whyOf(const ProposalContext& context) {
    if (!differs(context))
        return say("advice.why.alone");
    if (total(context.proposal.loss) - total(context.alone.loss) >= clearlyBetter)
        return say("advice.why.worse");
    const auto carries = [&](Dimension d) { return waits(context.input, d) ? 0.0 : gain(context, d); };
    const auto d = *std::max_element(allDimensions.begin(), allDimensions.end(),
                                     [&](Dimension a, Dimension b) { return carries(a) < carries(b); });
    return carries(d) < clearlyBetter ? say("advice.why.little") : nearing(context, d);
}

std::vector<Message> notAtHand(const Setting& setting, const Stock& stock) {
    std::vector<Message> missing;
    const auto look = [&](const std::string& id, const std::string& item) {
        if (!stock.has(id))
            missing.push_back(say("advice.limit.notAtHand").with("item", item));
    };
    const auto grain = [&](const std::string& id) {
        const auto found = stock.pantry.grain(id);
        look(id, found ? found->name : id);
    };
    for (const auto& part : setting.recipe.grist)
        grain(part.grain);
    if (setting.recipe.sugarShare.of1 > 0)
        grain(setting.recipe.sugar);
    const auto yeast = stock.pantry.yeast(setting.recipe.yeast);
    look(setting.recipe.yeast, yeast ? yeast->name : setting.recipe.yeast);
    return missing;
}

GramsPerLitre acidityAtNext(const AdviceInput& input, const Proposal& proposal) {
    return acidityThen(input, proposal.atNext, carriedTo(input, shareOf(input, proposal.setting), 1));
}

double acidityThreshold(const AdviceInput& input, const Proposal& alone) {
    const auto score = [&](GramsPerLitre ta) {
        return acidityScore(ta, {alone.atNext.state.beer.acetic}, alone.atNext.alcohol, input.parameters.score);
    };
    const auto ta = acidityAtNext(input, alone);
    return score(ta * (1 + acidDifference)) - score(ta);
}

std::vector<Message> reasonsOf(const ProposalContext& context) {
    std::vector<Message> reasons;
    const bool changed = differs(context);
    for (auto d : allDimensions)
        if (concerns(context, d))
            reasons.push_back(whereTo(context, d, changed));
    for (std::size_t i = 0; i < context.proposal.moves.size(); ++i)
        if (context.proposal.moves[i].next)
            reasons.push_back(whatItDoes(context.proposal.moves[i], i));
    for (auto d : allDimensions)
        if (changed && context.input.seen[d] && !concerns(context, d))
            reasons.push_back(held(context, d));
    append(reasons, assumed(context.proposal));
    const bool once = onlyAids(context.proposal.setting, context.alone.setting, *context.input.pantry);
    if (context.input.withSettled && changed && !once) {
        reasons.push_back(ifRepeated(context));
        append(reasons, slowness(context));
    }
    return reasons;
}

std::vector<Message> limitsOf(const ProposalContext& context, const Setting& start) {
    std::vector<Message> limits;
    if (differs(context))
        append(limits, untastedLimits(context));
    append(limits, cycleLimits(context));
    append(limits, boundLimits(context, start));
    append(limits, hopLimits(context));
    append(limits, aidLimits(context));
    append(limits, notAtHand(context.proposal.setting, {*context.input.pantry, context.input.unavailable}));
    return limits;
}

} // namespace staveline::advice

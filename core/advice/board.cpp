// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/board.h"

#include "advice/bands.h"
#include "advice/contributions.h"
#include "advice/loss.h"
#include "advice/reasons.h"
#include "advice/search.h"
#include "quantity/text.h"

#include <algorithm>
#include <cmath>

namespace staveline::advice {
namespace {

constexpr int trialsRemembered = 400; ///< then the cache starts anew

std::string choiceName(const std::string& lever, const std::string& id, const ingredient::Pantry& pantry) {
    const auto key = "advice.value." + lever + "." + id;
    if (builtInTexts().has(key))
        return std::string(builtInTexts().find(key));
    const auto yeast = pantry.yeast(id);
    return yeast ? yeast->name : id;
}

std::vector<BoardChoice> choicesOf(const LeverRow& row, const AdviceInput& input) {
    auto ids = row.choices;
    if (ids.empty())
        for (const auto& yeast : input.pantry->yeasts())
            ids.push_back(yeast.id);
    std::vector<BoardChoice> choices;
    choices.reserve(ids.size());
    for (const auto& id : ids)
        choices.push_back({id, choiceName(row.id, id, *input.pantry), !input.unavailable.contains(id)});
    return choices;
}

std::vector<LeverValue> stepsWithPresent(const Lever& lever, const LeverValue& now, const AdviceInput& input) {
    auto steps = stepsOf(lever, input.base, input);
    steps.push_back(now);
    std::sort(steps.begin(), steps.end(),
              [](const LeverValue& a, const LeverValue& b) { return number(a) < number(b); });
    return steps;
}

BoardLine lineOf(const Lever& lever, const AdviceInput& input) {
    BoardLine line;
    line.row = narrowedRow(lever, input.base, input);
    line.now = lever.read(input.base, {*input.pantry, input.unavailable});
    if (line.row.isChoice())
        line.choices = choicesOf(rowOf(lever), input);
    else
        line.steps = stepsWithPresent(lever, line.now, input);
    line.applies = !lever.applies || lever.applies(input.base, input);
    for (const auto& lock : input.locks)
        if (lock.lever == lever.id)
            line.lockedAt = lock.value;
    return line;
}

PerDimension<Band> withoutBands(const Scores& scores) {
    PerDimension<Band> bands;
    for (auto d : allDimensions)
        bands[d] = {scores[d], scores[d], scores[d]};
    return bands;
}

Scores nextScores(const AdviceInput& input, const Setting& setting, const Trajectory& trajectory) {
    return plus(trajectory.draws[0].scores, carriedTo(input, shareOf(input, setting), 1).mean);
}

} // namespace

std::vector<BoardLine> boardOf(const AdviceInput& input) {
    std::vector<BoardLine> lines;
    for (const auto& lever : levers())
        lines.push_back(lineOf(lever, input));
    return lines;
}

Message valueText(const std::string& lever, const LeverValue& value, const ingredient::Pantry& pantry) {
    if (const auto* id = std::get_if<std::string>(&value))
        return say("advice.value").with("value", choiceName(lever, *id, pantry));
    const auto* known = findLever(lever);
    return say("advice.value").with("value", Amount(known ? rowOf(*known).kind : UnitKind::none, number(value)));
}

std::vector<Message> wordingsOf(const AdviceInput& input, const Setting& to) {
    const Stock stock{*input.pantry, input.unavailable};
    std::vector<Message> wordings;
    for (const auto& lever : levers()) {
        const auto before = lever.read(input.base, stock), after = lever.read(to, stock);
        if (!sameValue(before, after))
            wordings.push_back(wordingOf(lever, before, after, to, stock));
    }
    return wordings;
}

bool willBeTasted(double points) {
    return std::abs(points) >= untasted;
}

struct TryBoard::Inside {
    explicit Inside(const AdviceInput& given) : input(given) {}

    AdviceInput input;
    std::unique_ptr<ModelForecaster> forecaster;
    int asked = 0;

    ModelForecaster& model() {
        if (!forecaster)
            forecaster = std::make_unique<ModelForecaster>(input);
        return *forecaster;
    }
    /// Between trials only: a trial holds on to its forecaster.
    void forgetOldTrials() {
        if (++asked <= trialsRemembered)
            return;
        forecaster.reset();
        asked = 0;
    }
    [[nodiscard]] Stock stock() const { return {*input.pantry, input.unavailable}; }
    Result<std::vector<LeverMove>> moves(const std::vector<TriedValue>& tried, Setting& setting) const;
    Result<Trial> outcome(const Setting& setting, const std::vector<LeverMove>& moves, TrialDepth depth,
                          const std::stop_token& stop);
    void takeBeers(Trial& trial, const Trajectory& trajectory) const;
    void addParts(Trial& trial, const std::vector<LeverMove>& moves);
    void addNotes(Trial& trial, const std::vector<LeverMove>& moves);
};

/// In the order in which they act, each checked on what those before it have made.
Result<std::vector<LeverMove>> TryBoard::Inside::moves(const std::vector<TriedValue>& tried, Setting& setting) const {
    std::vector<LeverMove> moves;
    for (const auto& each : tried)
        if (const auto* lever = findLever(each.lever))
            moves.push_back({lever, lever->read(input.base, stock()), each.to});
        else
            return fail(withLever(setting, each.lever, each.to, *input.pantry).error());
    std::stable_sort(moves.begin(), moves.end(),
                     [](const LeverMove& a, const LeverMove& b) { return a.lever->order < b.lever->order; });
    setting = input.base;
    for (const auto& move : moves) {
        auto next = withLever(setting, move.lever->id, move.to, *input.pantry);
        if (!next)
            return fail(std::move(next).error());
        setting = *std::move(next);
    }
    if (auto possible = checkDraw(input, setting.draw, "/draw"); !possible)
        return fail(possible.error());
    return moves;
}

void TryBoard::Inside::takeBeers(Trial& trial, const Trajectory& trajectory) const {
    const auto share = shareOf(input, trial.setting);
    trial.thisBeer = trajectory.thisDraw;
    trial.thisBeer.ta = acidityThen(input, trajectory.thisDraw, carriedTo(input, share, 0));
    trial.nextBeer = trajectory.draws[0];
    trial.nextBeer.ta = acidityThen(input, trajectory.draws[0], carriedTo(input, share, 1));
    trial.loss = lossOf(goalOf(input), expectedDraws(trajectory.draws, carriedAhead(input, share)));
}

void TryBoard::Inside::addParts(Trial& trial, const std::vector<LeverMove>& moves) {
    const Baseline baseline{.before = input.base, .start = input.base, .forced = {}, .locked = {}, .notes = {}};
    const auto does = contributionsOf(input, model(), baseline, moves);
    for (std::size_t i = 0; i < moves.size(); ++i)
        trial.parts.push_back({moves[i].lever->id, does.chosen[i].next, does.chosen[i].settled});
}

void TryBoard::Inside::addNotes(Trial& trial, const std::vector<LeverMove>& moves) {
    trial.findings = model().sizing(trial.setting).findings;
    for (auto& missing : notAtHand(trial.setting, stock()))
        trial.findings.push_back(std::move(missing));
    for (const auto& move : moves)
        if (move.lever->cautions)
            for (auto& caution : move.lever->cautions(move.to, trial.setting, input))
                trial.cautions.push_back(std::move(caution));
}

Result<Trial> TryBoard::Inside::outcome(const Setting& setting, const std::vector<LeverMove>& moves, TrialDepth depth,
                                        const std::stop_token& stop) {
    forgetOldTrials();
    auto& predict = model();
    const auto base = predict.trajectory(input.base, 0, 1);
    const auto trajectory = predict.trajectory(setting, 0, input.horizon);
    if (!base || !trajectory)
        return fail(!base ? base.error() : trajectory.error());
    Trial trial;
    trial.setting = setting;
    trial.depth = depth;
    const auto next = nextScores(input, setting, *trajectory);
    trial.thisDraw = withoutBands(plus(trajectory->thisDraw.scores, carriedTo(input, {0}, 0).mean));
    trial.next = withoutBands(next);
    trial.changeNext = minus(next, nextScores(input, input.base, *base));
    takeBeers(trial, *trajectory);
    input.withSettled = depth == TrialDepth::settled;
    if (input.withSettled)
        trial.changeSettled = minus(predict.settledScores(setting, 0), predict.settledScores(input.base, 0));
    addParts(trial, moves);
    addNotes(trial, moves);
    if (depth == TrialDepth::central)
        return trial;
    if (stop.stop_requested())
        return fail(cancelled());
    const auto bands = bandsOf(input, predict, setting);
    trial.thisDraw = bands.thisDraw;
    trial.next = bands.next;
    trial.settled = bands.settled;
    return trial;
}

TryBoard::TryBoard(const AdviceInput& input) : inside_(std::make_unique<Inside>(input)) {}
TryBoard::~TryBoard() = default;

Result<Trial> TryBoard::trial(const std::vector<TriedValue>& tried, TrialDepth depth, const std::stop_token& stop) {
    Setting setting = inside_->input.base;
    const auto moves = inside_->moves(tried, setting);
    if (!moves)
        return fail(moves.error());
    return inside_->outcome(setting, *moves, depth, stop);
}

Result<Trial> TryBoard::trial(const Setting& setting, TrialDepth depth, const std::stop_token& stop) {
    return inside_->outcome(setting, {}, depth, stop);
}

} // namespace staveline::advice

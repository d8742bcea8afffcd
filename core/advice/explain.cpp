// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/explain.h"

#include "advice/on_scale.h"
#include "advice/outlook.h"
#include "advice/reasons.h"
#include "forward/parameters.h"
#include "quantity/csv.h"
#include "quantity/text.h"
#include "resources/resources.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <map>

namespace staveline::advice {

using tasting::VerdictKind;

namespace {

std::string sourceText(std::string_view key) {
    static const auto texts = [] {
        std::map<std::string, std::string, std::less<>> all;
        const auto table = CsvTable::parse(resources::find("data/sources.csv")).value();
        for (std::size_t i = 0; i < table.rows(); ++i)
            all.emplace(table.text(i, "key"), table.text(i, "text"));
        return all;
    }();
    if (key == "model")
        return render(say("advice.explanation.source.model"));
    const auto found = texts.find(key);
    return found == texts.end() ? std::string(key) : found->second;
}

std::string dimensionWord(Dimension d) {
    return render(say(fmt::format("advice.explanation.dimension.{}", name(d))));
}

/// One subject, one method for each kind of origin.
class Explainer {
public:
    explicit Explainer(const ExplanationSubject& subject)
        : in_(subject.input), advice_(subject.advice), alone_(subject.advice.leaveAlone),
          proposal_(pick(subject.advice, subject.proposal)), move_(subject.move) {}

    Result<Explanation> of(const Origin& origin) const {
        const auto d = origin.dimension;
        switch (origin.kind) {
        case OriginKind::now:
            return now(d);
        case OriginKind::window:
            return window(d);
        case OriginKind::share:
            return share(d);
        case OriginKind::cycles:
            return cycles(d);
        case OriginKind::threshold:
            return threshold(d);
        case OriginKind::verdictGap:
            return gap(d);
        case OriginKind::verdictHalf:
            return half(d);
        case OriginKind::predictionNext:
        case OriginKind::predictionSettled:
            return prediction(proposal_, d, origin.kind == OriginKind::predictionSettled, OriginKind::modelNext);
        case OriginKind::aloneNext:
        case OriginKind::aloneSettled:
            return prediction(alone_, d, origin.kind == OriginKind::aloneSettled, OriginKind::modelAlone);
        case OriginKind::changeNext:
        case OriginKind::changeSettled:
            return change(d, origin.kind == OriginKind::changeSettled);
        case OriginKind::modelNow:
            return model("modelNow", outcomeOf(in_.state, in_.parameters), d);
        case OriginKind::modelNext:
            return model("modelThen", proposal_.atNext, d);
        case OriginKind::modelAlone:
            return model("modelThen", alone_.atNext, d);
        case OriginKind::moveEffect:
            return contribution(origin.move, d);
        case OriginKind::moveFrom:
            return moveValue("from");
        case OriginKind::moveTo:
            return moveValue("to");
        case OriginKind::vesselBitterness:
            return bitterness(proposal_);
        case OriginKind::aloneBitterness:
            return bitterness(alone_);
        case OriginKind::parameter:
            return parameter(origin.parameter);
        case OriginKind::nowhere:
            break;
        }
        return unknown();
    }

private:
    static const Proposal& pick(const Advice& advice, int number) {
        const auto index = static_cast<std::size_t>(number - 1);
        return number > 0 && index < advice.proposals.size() ? advice.proposals[index] : advice.leaveAlone;
    }

    static Result<Explanation> unknown() {
        return badInput("/origin", say("advice.explanation.unknown"), say("advice.explanation.unknown.remedy"));
    }

    static Explanation link(std::string_view key, Dimension d, double value, std::string_view source = "model") {
        const auto stem = fmt::format("advice.explanation.{}", key);
        return {.title = say(stem + ".title").with("dimension", dimensionWord(d)).with("value", Points{value}),
                .formula = say(stem + ".formula"),
                .inputs = {},
                .source = sourceText(source)};
    }
    static ExplanationInput input(std::string_view key, const ArgumentValue& value, Origin origin = {}) {
        return {say(fmt::format("advice.explanation.input.{}", key)).with("value", value, origin), std::move(origin)};
    }

    Explanation now(Dimension d) const {
        auto made = link("now", d, in_.combined[d].mean, "model");
        for (const auto& part : in_.evidence[d])
            made.inputs.push_back(evidence(part, d));
        made.inputs.push_back(input("error", Points{tasting::z80 * in_.combined[d].sd}));
        return made;
    }
    static ExplanationInput evidence(const estimate::Evidence& part, Dimension d) {
        const bool model = part.kind == estimate::Evidence::Kind::model;
        const auto origin = model ? Origin(OriginKind::modelNow, d) : Origin();
        const bool byPh = part.kind == estimate::Evidence::Kind::titration && !part.ta;
        auto text = say(fmt::format("advice.explanation.evidence.{}", byPh ? "ph" : wordOf(part.kind)))
                        .with("value", Points{part.estimate.mean}, origin)
                        .with("half", Points{tasting::z80 * part.estimate.sd});
        if (part.on)
            text.arguments.push_back({"on", *part.on, {}});
        if (part.ta)
            text.arguments.push_back({"ta", *part.ta, {}});
        if (part.kind == estimate::Evidence::Kind::learned)
            text.arguments.push_back({"sittings", std::int64_t{part.sittings}, {}});
        return {std::move(text), origin};
    }

    Explanation window(Dimension d) const {
        const auto& target = in_.target.windows[d];
        auto made = link("window", d, target.wanted, "model");
        made.source.clear();
        made.inputs = {input("bandWidth", Points{target.band})};
        if (!in_.target.setBy.empty())
            made.inputs.push_back(input("setBy", in_.target.setBy));
        return made;
    }

    Explanation gap(Dimension d) const {
        auto made = link("gap", d, in_.target.windows[d].wanted - in_.combined[d].mean, "model");
        made.inputs = {input("wanted", Points{in_.target.windows[d].wanted}, {OriginKind::window, d}),
                       input("now", Points{in_.combined[d].mean}, {OriginKind::now, d})};
        return made;
    }
    Explanation half(Dimension d) const {
        auto made = link("half", d, tasting::z80 * in_.combined[d].sd, "model");
        made.inputs = {input("se", Number{in_.combined[d].sd, 2}, {OriginKind::now, d})};
        return made;
    }

    Explanation prediction(const Proposal& proposal, Dimension d, bool settled, OriginKind modelThen) const {
        const Band& band = settled ? proposal.settled[d] : proposal.next[d];
        const Band told = onScale(band);
        auto made = link(settled ? "settled" : "next", d, told.value);
        const auto carried = settled ? carriedForGood(in_) : carriedTo(in_, shareOf(in_, proposal.setting), 1);
        made.inputs.push_back(
            input("modelThen", Points{band.value - carried.mean[d]}, settled ? Origin() : Origin(modelThen, d)));
        made.inputs.push_back(input("offset", SignedPoints{carried.mean[d]}, {OriginKind::now, d}));
        made.inputs.push_back(
            {say("advice.explanation.input.band").with("low", Points{told.low}).with("high", Points{told.high}), {}});
        made.inputs.push_back(input("draws", std::int64_t{in_.draws}));
        return made;
    }

    Explanation change(Dimension d, bool settled) const {
        const double with = settled ? proposal_.settled[d].value : proposal_.next[d].value;
        const double without = settled ? alone_.settled[d].value : alone_.next[d].value;
        auto made = link("change", d, std::abs(with - without));
        made.title = say("advice.explanation.change.title")
                         .with("dimension", dimensionWord(d))
                         .with("value", SignedPoints{with - without});
        made.inputs = {
            input("with", Points{with}, {settled ? OriginKind::predictionSettled : OriginKind::predictionNext, d}),
            input("without", Points{without}, {settled ? OriginKind::aloneSettled : OriginKind::aloneNext, d})};
        return made;
    }

    Result<Explanation> contribution(std::size_t index, Dimension d) const {
        if (index >= proposal_.moves.size() || !proposal_.moves[index].next)
            return unknown();
        const auto& move = proposal_.moves[index];
        auto made = link("contribution", d, 0);
        made.title = say("advice.explanation.contribution.title")
                         .with("move", shortPhrase(move))
                         .with("dimension", dimensionWord(d))
                         .with("value", SignedPoints{(*move.next)[d]});
        // Forced moves are in "leave it alone" too: they are no part of what is different from it.
        for (const auto& part : proposal_.moves)
            if (part.forced == move.forced && part.next)
                made.inputs.push_back({say("advice.explanation.input.part")
                                           .with("move", shortPhrase(part))
                                           .with("value", SignedPoints{(*part.next)[d]}),
                                       {}});
        if (!move.forced)
            made.inputs.push_back(input("sum", SignedPoints{proposal_.next[d].value - alone_.next[d].value},
                                        {OriginKind::changeNext, d}));
        return made;
    }

    Explanation share(Dimension d) const {
        auto made = link("share", d, 0);
        const double next = proposal_.next[d].value - alone_.next[d].value;
        const double settled = proposal_.settled[d].value - alone_.settled[d].value;
        made.title = say("advice.explanation.share.title")
                         .with("dimension", dimensionWord(d))
                         .with("value", Share{settled != 0 ? next / settled : 0});
        made.inputs = {input("changeNext", SignedPoints{next}, {OriginKind::changeNext, d}),
                       input("changeSettled", SignedPoints{settled}, {OriginKind::changeSettled, d}),
                       input("refill", proposal_.refill)};
        return made;
    }

    Explanation cycles(Dimension d) const {
        auto made = link("cycles", d, 0);
        made.title = say("advice.explanation.cycles.title")
                         .with("dimension", dimensionWord(d))
                         .with("value", std::int64_t{proposal_.cyclesNeeded[d]});
        made.inputs = {input("wanted", Points{in_.target.windows[d].wanted}, {OriginKind::window, d}),
                       input("atNext", Points{proposal_.next[d].value}, {OriginKind::predictionNext, d})};
        return made;
    }

    Explanation threshold(Dimension d) const {
        auto made = link("threshold", d, acidityThreshold(in_, alone_));
        made.inputs = {input("ta", acidityAtNext(in_, alone_)), input("difference", Share{acidDifference})};
        return made;
    }

    /// The model's score as such, with what the beer then holds.
    Explanation model(const char* key, const forward::Outcome& then, Dimension d) const {
        auto made = link(key, d, then.scores[d]);
        made.formula = say(fmt::format("advice.explanation.map.{}", name(d)));
        const Composition& beer = then.state.beer;
        if (d == Dimension::acidity)
            made.inputs = {
                input("ta", then.ta),           input("ph", then.ph),     input("acetic", GramsPerLitre{beer.acetic}),
                input("alcohol", then.alcohol), constant("acidityScale"), constant("acidityExponent"),
                constant("ownAcidity")};
        else if (d == Dimension::funk)
            made.inputs = {input("ethylGuaiacol", MilligramsPerLitre{beer.ethylGuaiacol}),
                           input("ethylPhenol", MilligramsPerLitre{beer.ethylPhenol}),
                           input("vinylGuaiacol", MilligramsPerLitre{beer.vinylGuaiacol}),
                           input("vinylPhenol", MilligramsPerLitre{beer.vinylPhenol}),
                           constant("ethylGuaiacolThreshold"),
                           constant("ethylPhenolThreshold"),
                           constant("middleFunk"),
                           constant("funkSteepness")};
        else
            made.inputs = {input("residual", GramsPerLitre{beer.carbohydrate() + beer.otherExtract}),
                           input("glucan", GramsPerLitre{beer.betaGlucan}),
                           input("arabinoxylan", GramsPerLitre{beer.arabinoxylan}),
                           input("alcohol", then.alcohol),
                           constant("bodyPerStep"),
                           constant("viscosityStep"),
                           constant("bodyPerExtract")};
        return made;
    }
    ExplanationInput constant(std::string_view parameterName) const {
        forward::Parameters values = in_.parameters;
        const double value = forward::findParameter(parameterName)->in(values);
        const auto origin = Origin::ofParameter(parameterName);
        const auto& row = rowFor(parameterName);
        return {say("advice.explanation.input.constant")
                    .with("meaning", row.meaning)
                    .with("value", Number{value, 3}, origin),
                origin};
    }
    static const forward::ParameterRow& rowFor(std::string_view parameterName) {
        const auto& rows = forward::builtInParameterRows();
        return *std::find_if(rows.begin(), rows.end(),
                             [&](const forward::ParameterRow& row) { return row.name == parameterName; });
    }
    Result<Explanation> parameter(std::string_view parameterName) const {
        if (!forward::findParameter(parameterName))
            return unknown();
        const auto& row = rowFor(parameterName);
        return Explanation{
            say("advice.explanation.constant.title")
                .with("meaning", row.meaning)
                .with("value", Number{row.value, 3})
                .with("unit", row.unit),
            {},
            {{say("advice.explanation.input.range").with("low", Number{row.low, 3}).with("high", Number{row.high, 3}),
              {}}},
            sourceText(row.source)};
    }

    Explanation bitterness(const Proposal& proposal) const {
        Explanation made{say("advice.explanation.bitterness.title").with("value", proposal.atNext.bitterness),
                         say("advice.explanation.bitterness.formula"),
                         {},
                         sourceText("model")};
        made.inputs = {input("refillIbu", proposal.setting.recipe.bitterness), input("refill", proposal.refill),
                       input("vesselIbu", in_.state.beer.bitterness())};
        return made;
    }

    Result<Explanation> moveValue(std::string_view end) const {
        if (move_ >= proposal_.moves.size())
            return unknown();
        const auto& move = proposal_.moves[move_];
        for (const auto& argument : move.wording.arguments)
            if (argument.name == end)
                return Explanation{say(fmt::format("advice.explanation.{}.title", end)).with("value", argument.value),
                                   {},
                                   {{move.wording, {}}},
                                   {}};
        return unknown();
    }

    const AdviceInput& in_;
    const Advice& advice_;
    const Proposal& alone_;
    const Proposal& proposal_;
    std::size_t move_;
};

bool byNumbers(VerdictKind kind) {
    return kind == VerdictKind::hold || kind == VerdictKind::open;
}

/// The nearest mean on one side that stands otherwise; none within the scale.
std::optional<Message> turningPoint(const AdviceInput& input, Dimension d, double step) {
    const auto& window = input.target.windows[d];
    const auto kindAt = [&](double mean) { return standing(d, {mean, input.combined[d].sd}, window, {}).kind; };
    const auto present = input.verdicts[d].kind;
    for (double mean = std::round(input.combined[d].mean * 10) / 10 + step; mean >= 0 && mean <= 10; mean += step)
        if (const auto then = kindAt(mean); then != present)
            return say(fmt::format("advice.turn.{}.{}", name(d), step < 0 ? "down" : "up"))
                .with("score", Points{mean})
                .with("verdict",
                      render(say(then == VerdictKind::hold ? "advice.turn.kind.hold" : "advice.turn.kind.open")));
    return {};
}

} // namespace

Result<Explanation> explain(const ExplanationSubject& subject, const Origin& origin) {
    return Explainer(subject).of(origin);
}

std::vector<Message> whatWouldChange(const AdviceInput& input) {
    std::vector<Message> lines;
    for (auto d : allDimensions)
        if (byNumbers(input.verdicts[d].kind))
            for (double step : {-.1, .1})
                if (auto line = turningPoint(input, d, step))
                    lines.push_back(*std::move(line));
    return lines;
}

} // namespace staveline::advice

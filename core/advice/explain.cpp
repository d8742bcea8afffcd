// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/explain.h"

#include "advice/reasons.h"
#include "forward/parameters.h"
#include "quantity/csv.h"
#include "quantity/text.h"
#include "resources/resources.h"

#include <algorithm>
#include <charconv>
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

std::vector<std::string_view> partsOf(std::string_view origin) {
    std::vector<std::string_view> parts;
    while (true) {
        const auto end = origin.find('/');
        parts.push_back(origin.substr(0, end));
        if (end == std::string_view::npos)
            return parts;
        origin.remove_prefix(end + 1);
    }
}

std::optional<Dimension> dimensionIn(const std::vector<std::string_view>& parts) {
    for (auto d : allDimensions)
        if (parts.back() == name(d))
            return d;
    return {};
}

std::string dimensionWord(Dimension d) {
    return render(say(fmt::format("advice.explanation.dimension.{}", name(d))));
}

std::string at(std::string_view what, Dimension d) {
    return fmt::format("{}/{}", what, name(d));
}

/// One subject, one method for each kind of origin.
class Explainer {
public:
    explicit Explainer(const ExplanationSubject& subject)
        : in_(subject.input), advice_(subject.advice), alone_(subject.advice.leaveAlone),
          proposal_(pick(subject.advice, subject.proposal)), move_(subject.move) {}

    Result<Explanation> of(std::string_view origin) const {
        const auto parts = partsOf(origin);
        if (parts[0] == "move")
            return moveValue(parts);
        if (parts[0] == "vessel" || (parts[0] == "alone" && parts.back() == "bitterness"))
            return bitterness(parts[0] == "alone" ? alone_ : proposal_);
        if (parts[0] == "parameter")
            return parameter(parts.back());
        const auto d = dimensionIn(parts);
        if (!d)
            return unknown(origin);
        return ofDimension(origin, parts, *d);
    }

private:
    static const Proposal& pick(const Advice& advice, int number) {
        const auto index = static_cast<std::size_t>(number - 1);
        return number > 0 && index < advice.proposals.size() ? advice.proposals[index] : advice.leaveAlone;
    }

    static Result<Explanation> unknown(std::string_view origin) {
        return badInput("/origin", say("advice.explanation.unknown").with("origin", std::string(origin)),
                        say("advice.explanation.unknown.remedy"));
    }

    Result<Explanation> ofDimension(std::string_view origin, const std::vector<std::string_view>& parts,
                                    Dimension d) const {
        using Member = Explanation (Explainer::*)(Dimension) const;
        static const std::map<std::string_view, Member> simple = {{"now", &Explainer::now},
                                                                  {"window", &Explainer::window},
                                                                  {"share", &Explainer::share},
                                                                  {"cycles", &Explainer::cycles},
                                                                  {"threshold", &Explainer::threshold}};
        if (const auto found = simple.find(parts[0]); found != simple.end())
            return (this->*found->second)(d);
        const bool settled = parts.size() > 1 && parts[1] == "settled";
        if (parts[0] == "prediction")
            return prediction("prediction", proposal_, d, settled);
        if (parts[0] == "alone")
            return prediction("alone", alone_, d, settled);
        if (parts[0] == "change")
            return change(d, settled);
        if (parts[0] == "moves" && parts.size() == 4)
            return contribution(parts, d);
        if (parts[0] == "verdict" && parts.size() == 3)
            return parts[1] == "gap" ? gap(d) : half(d);
        if (parts[0] == "model" && parts.size() == 3)
            return model(parts[1], d);
        return unknown(origin);
    }

    static Explanation link(std::string_view key, Dimension d, double value, std::string_view source = "model") {
        const auto stem = fmt::format("advice.explanation.{}", key);
        return {.title = say(stem + ".title").with("dimension", dimensionWord(d)).with("value", Points{value}),
                .formula = say(stem + ".formula"),
                .inputs = {},
                .source = sourceText(source)};
    }
    static ExplanationInput input(std::string_view key, ArgumentValue value, std::string origin = {}) {
        return {say(fmt::format("advice.explanation.input.{}", key)).with("value", std::move(value), origin),
                std::move(origin)};
    }

    Explanation now(Dimension d) const {
        auto made = link("now", d, in_.combined[d].mean, "model");
        for (const auto& part : in_.evidence[d])
            made.inputs.push_back(evidence(part, d));
        made.inputs.push_back(input("error", Points{tasting::z80 * in_.combined[d].sd}));
        return made;
    }
    static ExplanationInput evidence(const estimate::Evidence& part, Dimension d) {
        static constexpr std::array<const char*, 3> keys = {"model", "titration", "sitting"};
        const bool model = part.kind == estimate::Evidence::Kind::model;
        auto text = say(fmt::format("advice.explanation.evidence.{}", keys[static_cast<std::size_t>(part.kind)]))
                        .with("value", Points{part.estimate.mean}, model ? at("model/now", d) : "")
                        .with("half", Points{tasting::z80 * part.estimate.sd});
        if (part.on)
            text.arguments.push_back({"on", *part.on, {}});
        if (part.ta)
            text.arguments.push_back({"ta", *part.ta, {}});
        return {std::move(text), model ? at("model/now", d) : std::string()};
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
        auto made = link("gap", d, std::abs(in_.target.windows[d].wanted - in_.combined[d].mean), "model");
        made.inputs = {input("wanted", Points{in_.target.windows[d].wanted}, at("window", d)),
                       input("now", Points{in_.combined[d].mean}, at("now", d))};
        return made;
    }
    Explanation half(Dimension d) const {
        auto made = link("half", d, tasting::z80 * in_.combined[d].sd, "model");
        made.inputs = {input("se", Number{in_.combined[d].sd, 2}, at("now", d)),
                       input("outside", Share{in_.verdicts[d].pOutside}), input("sign", Share{in_.verdicts[d].pSign})};
        return made;
    }

    Explanation prediction(const char* what, const Proposal& proposal, Dimension d, bool settled) const {
        const Band& band = settled ? proposal.settled[d] : proposal.next[d];
        auto made = link(settled ? "settled" : "next", d, band.value);
        const double deviation = in_.combined[d].mean - in_.model[d].mean;
        const bool alone = std::string_view(what) == "alone";
        made.inputs.push_back(input("modelThen", Points{band.value - deviation},
                                    settled ? std::string() : at(alone ? "model/alone" : "model/next", d)));
        made.inputs.push_back(input("deviation", SignedPoints{deviation}, at("now", d)));
        made.inputs.push_back(
            {say("advice.explanation.input.band").with("low", Points{band.low}).with("high", Points{band.high}), {}});
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
        made.inputs = {input("with", Points{with}, at(settled ? "prediction/settled" : "prediction/next", d)),
                       input("without", Points{without}, at(settled ? "alone/settled" : "alone/next", d))};
        return made;
    }

    Result<Explanation> contribution(const std::vector<std::string_view>& parts, Dimension d) const {
        std::size_t index = 0;
        const auto read = std::from_chars(parts[1].data(), parts[1].data() + parts[1].size(), index);
        if (read.ec != std::errc{} || index >= proposal_.moves.size())
            return unknown(fmt::format("moves/{}", parts[1]));
        const auto& move = proposal_.moves[index];
        auto made = link("contribution", d, 0);
        made.title = say("advice.explanation.contribution.title")
                         .with("move", shortPhrase(move))
                         .with("dimension", dimensionWord(d))
                         .with("value", SignedPoints{move.next[d]});
        // Forced moves are in "leave it alone" too: they are no part of what is different from it.
        for (const auto& part : proposal_.moves)
            if (part.forced == move.forced)
                made.inputs.push_back({say("advice.explanation.input.part")
                                           .with("move", shortPhrase(part))
                                           .with("value", SignedPoints{part.next[d]}),
                                       {}});
        if (!move.forced)
            made.inputs.push_back(
                input("sum", SignedPoints{proposal_.next[d].value - alone_.next[d].value}, at("change/next", d)));
        return made;
    }

    Explanation share(Dimension d) const {
        auto made = link("share", d, 0);
        const double next = proposal_.next[d].value - alone_.next[d].value;
        const double settled = proposal_.settled[d].value - alone_.settled[d].value;
        made.title = say("advice.explanation.share.title")
                         .with("dimension", dimensionWord(d))
                         .with("value", Share{settled != 0 ? next / settled : 0});
        made.inputs = {input("changeNext", SignedPoints{next}, at("change/next", d)),
                       input("changeSettled", SignedPoints{settled}, at("change/settled", d)),
                       input("refill", proposal_.refill)};
        return made;
    }

    Explanation cycles(Dimension d) const {
        auto made = link("cycles", d, 0);
        made.title = say("advice.explanation.cycles.title")
                         .with("dimension", dimensionWord(d))
                         .with("value", std::int64_t{proposal_.cyclesNeeded[d]});
        made.inputs = {input("wanted", Points{in_.target.windows[d].wanted}, at("window", d)),
                       input("atNext", Points{proposal_.next[d].value}, at("prediction/next", d))};
        return made;
    }

    Explanation threshold(Dimension d) const {
        auto made = link("threshold", d, acidityThreshold(alone_, in_.parameters.score));
        made.inputs = {input("ta", alone_.atNext.ta), input("difference", Share{acidDifference})};
        return made;
    }

    /// The model's score as such, with what the beer then holds.
    Result<Explanation> model(std::string_view when, Dimension d) const {
        const bool today = when == "now";
        const forward::Outcome now = outcomeOf(in_.state, in_.parameters, in_.base.recipe.originalGravity);
        const forward::Outcome& then = today ? now : when == "alone" ? alone_.atNext : proposal_.atNext;
        auto made = link(today ? "modelNow" : "modelThen", d, then.scores[d]);
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
        const auto origin = fmt::format("parameter/{}", parameterName);
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
            return unknown(fmt::format("parameter/{}", parameterName));
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

    Result<Explanation> moveValue(const std::vector<std::string_view>& parts) const {
        if (move_ >= proposal_.moves.size())
            return unknown("move");
        const auto& move = proposal_.moves[move_];
        const bool from = parts.back() == "from";
        for (const auto& argument : move.wording.arguments)
            if (argument.name == parts.back())
                return Explanation{say(from ? "advice.explanation.from.title" : "advice.explanation.to.title")
                                       .with("value", argument.value),
                                   {},
                                   {{move.wording, {}}},
                                   {}};
        return unknown("move");
    }

    const AdviceInput& in_;
    const Advice& advice_;
    const Proposal& alone_;
    const Proposal& proposal_;
    std::size_t move_;
};

bool byNumbers(VerdictKind kind) {
    return kind == VerdictKind::hold || kind == VerdictKind::move || kind == VerdictKind::nudge ||
           kind == VerdictKind::tasteAgain;
}

/// The nearest mean on one side that gives another verdict; none within the scale.
std::optional<Message> turningPoint(const AdviceInput& input, Dimension d, double step) {
    const auto& window = input.target.windows[d];
    const auto kindAt = [&](double mean) { return tasting::verdict(d, {mean, input.combined[d].sd}, window, {}).kind; };
    const auto present = input.verdicts[d].kind;
    for (double mean = std::round(input.combined[d].mean * 10) / 10 + step; mean >= 0 && mean <= 10; mean += step)
        if (kindAt(mean) != present)
            return say(fmt::format("advice.turn.{}.{}", name(d), step < 0 ? "down" : "up"))
                .with("score", Points{mean})
                .with("verdict", render(say(fmt::format("advice.turn.kind.{}", static_cast<int>(kindAt(mean))))));
    return {};
}

} // namespace

Result<Explanation> explain(const ExplanationSubject& subject, std::string_view origin) {
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

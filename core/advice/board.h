// SPDX-License-Identifier: GPL-3.0-or-later
// The try board: every lever with its room, and what a set of tried values does, at once and in full.
#pragma once

#include "advice/advise.h"

#include <memory>

namespace staveline::advice {

struct BoardChoice {
    std::string id, name; ///< "saison_pof", its name as the brewer reads it
    bool atHand = true;
};
/// One lever as it stands for this vessel.
struct BoardLine {
    LeverRow row;                     ///< narrowed to target, recipe and stock; the draw in litres
    LeverValue now;                   ///< in the setting in use
    std::vector<LeverValue> steps;    ///< brewable values, the present one among them, rising; empty for a choice
    std::vector<BoardChoice> choices; ///< of a choice lever
    bool applies = true;              ///< moving it changes anything here
    std::optional<LeverValue> lockedAt;
};
/// In the order of levers.csv.
[[nodiscard]] std::vector<BoardLine> boardOf(const AdviceInput& input);
/// A value as the board shows it: "63 °C", "infusion jump". Its key is a text of advice.tsv.
[[nodiscard]] Message valueText(const std::string& lever, const LeverValue& value, const ingredient::Pantry& pantry);

/// How the brew sheet words what `to` changes against the setting in use, lever by lever.
[[nodiscard]] std::vector<Message> wordingsOf(const AdviceInput& input, const Setting& to);

/// Less than this will not be tasted [points].
[[nodiscard]] bool willBeTasted(double points);

struct TriedValue {
    std::string lever;
    LeverValue to;
    bool operator==(const TriedValue&) const = default;
};
enum class TrialDepth {
    central, ///< values only: about a millisecond once warm
    next,    ///< with bands at the coming draws
    settled  ///< also if kept up
};
/// What the tried values do together and one by one.
struct Trial {
    struct Part {
        std::string lever;
        Scores next, settled; ///< contributions [points]; over the parts they add up to the whole change
    };
    Setting setting;
    TrialDepth depth = TrialDepth::central;
    PerDimension<Band> thisDraw, next, settled; ///< scores expected; bands are empty (low == high) when central
    Scores changeNext, changeSettled;           ///< against the setting in use [points]
    std::vector<Part> parts;                    ///< in the order tried
    std::vector<Message> findings;              ///< what does not fit the kit, starch left, what is not at hand, ...
    std::vector<Message> cautions;              ///< safety, of the tried values
    forward::Outcome thisBeer, nextBeer;        ///< the model's, but for the acidity, which is this vessel's
    Scores loss;                                ///< as of the proposals [squared bands]
};

/// Remembers what it predicted; one a thread. Not copyable.
class TryBoard {
public:
    /// `input` is copied; its pantry must outlive the board.
    explicit TryBoard(const AdviceInput& input);
    ~TryBoard();
    TryBoard(const TryBoard&) = delete;
    TryBoard& operator=(const TryBoard&) = delete;

    /// Unknown lever or value out of bounds: fault at "/<lever>". Cancelled: notPossible.
    Result<Trial> trial(const std::vector<TriedValue>& tried, TrialDepth depth, const std::stop_token& stop = {});
    /// The same for a whole setting (a recipe edited by hand): no parts.
    Result<Trial> trial(const Setting& setting, TrialDepth depth, const std::stop_token& stop = {});

private:
    struct Inside;
    std::unique_ptr<Inside> inside_;
};

} // namespace staveline::advice

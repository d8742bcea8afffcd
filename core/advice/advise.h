// SPDX-License-Identifier: GPL-3.0-or-later
// The adviser: from estimates and a target to at most three distinct proposals and "leave it alone".
#pragma once

#include "brewing/brew_plan.h"
#include "estimate/estimates.h"
#include "forward/predict.h"
#include "quantity/constants.h"
#include "quantity/unit_kind.h"

#include <set>
#include <stop_token>
#include <variant>

namespace staveline::advice {

/// One row of resources/data/levers.csv.
struct LeverRow {
    std::string id, name, unit;
    UnitKind kind = UnitKind::none; ///< of its values; none: a choice
    double low = 0, high = 0, step = 1;
    double movement = 1; ///< one unit of movement, in the lever's own unit
    double cost = 1;     ///< per unit of movement
    std::string note, source;
    std::vector<std::string> choices; ///< of a choice lever; empty: from the pantry
    [[nodiscard]] bool isChoice() const { return kind == UnitKind::none; }
};
/// A missing number, a step or cost of 0, or a low end above the high end is a fault at "/<row>", a unit that no lever
/// has at "/<row>/unit".
[[nodiscard]] Result<std::vector<LeverRow>> parseLevers(std::string_view csv);
[[nodiscard]] const std::vector<LeverRow>& builtInLevers();

/// A number in the lever's unit (the draw in litres), or the id of a choice ("ramp", "saison").
using LeverValue = std::variant<double, std::string>;

struct LeverLock {
    std::string lever;
    LeverValue value;
    bool operator==(const LeverLock&) const = default;
};

/// What may vary from cycle to cycle: the recipe and the handling of the vessel.
struct Setting {
    brewing::Recipe recipe;
    Litres draw{0};
    Days interval{240};
    Celsius temperature{16};
    bool operator==(const Setting&) const = default;
};

struct AdviceInput {
    // the vessel today
    culture::VesselState state;
    Litres volumeAtDraw{0}; ///< expected just before the draw; what is drawn already counts as still in it
    Litres fillTo{0};       ///< wanted after the refill
    Days toThisDraw{30};
    double oxygenPerYear = 10;
    bool canChangeTemperature = false;
    bool mayMoveDraw = false;     ///< the brewer lets the draw be another one
    bool mayMoveInterval = false; ///< the brewer lets the interval be another one
    bool houseYeastKillerSensitive = true;
    bool brettEstablished = true;
    // what is known and wanted, today's scores
    PerDimension<tasting::Estimate> model;                  ///< carried forward, score space
    PerDimension<tasting::Estimate> combined;               ///< model, TA and sitting together
    PerDimension<std::vector<estimate::Evidence>> evidence; ///< for the explanations; empty: not known
    PerDimension<estimate::Offset> offsets; ///< of the vessel from the model, today
    tasting::Target target;
    PerDimension<tasting::Verdict> verdicts;
    // what can be done
    Setting base;       ///< the settings in use
    bool drawn = false; ///< for this refill already: the base's draw is what was taken
    brewing::Equipment equipment;
    Share margin{.05};
    std::vector<LeverLock> locks;
    std::set<std::string> unavailable;                                ///< grain and yeast ids
    int daysToBrew = static_cast<int>(constants::advice::daysToBrew); ///< a yeast not ready by then is unavailable
    forward::Parameters parameters;
    const ingredient::Pantry* pantry = nullptr;                    ///< not owned; never null when advise() is called
    int maxMoved = static_cast<int>(constants::advice::mostMoved); ///< levers in one plan
    int horizon = static_cast<int>(constants::advice::horizon);    ///< draws planned for
    int draws = static_cast<int>(constants::advice::draws);        ///< parameter draws for the bands
    double lambda = constants::advice::lambda;                     ///< effort of one unit [squared bands]
    bool withSettled = true; ///< also "if kept up" and the prices of locks and of what is missing (slower)
};

struct Band {
    double value = 0, low = 0, high = 0; ///< central prediction and 80 % interval
};
struct Move {
    std::string lever;
    LeverValue from, to;
    PerDimension<double> next, settled; ///< contributions in points; over a proposal's moves they add up
    Message wording;                    ///< for the brew sheet: "saccharification 63 °C instead of 66 °C"
    std::vector<Message> cautions;
    bool forced = false; ///< by a lock or by what is not at hand; in every proposal, "leave it alone" too
};
struct Proposal {
    Message title;
    std::vector<Move> moves; ///< forced ones first; none but forced: leave it alone
    Setting setting;
    PerDimension<Band> thisDraw, next, settled;
    double cost = 0;              ///< objective: gaps, uncertainty and effort
    double worth = 0;             ///< cost of leaving it alone minus cost
    std::vector<Message> reasons; ///< numbers carry their origin
    std::vector<Message> limits;  ///< bounds that bind, cycles needed, "you will not taste this"
    std::vector<Message> cautions;
    Litres refill{0};               ///< into the vessel
    forward::Outcome atNext;        ///< central prediction of the next draw, before the deviation is added
    PerDimension<int> cyclesNeeded; ///< the draw after this one that is first inside its window; 0: none of twelve
};
/// What a lock, or a grain or yeast that is not at hand, costs: the best plan without it is better by this much.
struct RestrictionPrice {
    std::string id;    ///< lever, grain or yeast
    bool lock = false; ///< false: not at hand
    double cost = 0;   ///< [squared bands]
    Message withoutIt; ///< title of the plan that would then be best
};
struct Advice {
    PerDimension<tasting::Verdict> verdicts;
    PerDimension<tasting::Estimate> now; ///< the combined estimate it rests on
    PerDimension<tasting::TargetWindow> windows;
    std::vector<Proposal> proposals; ///< best first, at most three; empty on hold and fault first
    Proposal leaveAlone;
    std::vector<RestrictionPrice> prices; ///< with withSettled only; cheap restrictions are left out
    std::vector<Message> notes; ///< e.g. a titration is the cheapest help; a two-point body gap is out of reach
    bool faultFirst = false;
};

/// Enumerates plans that move at most `maxMoved` levers, screens by Jacobian, re-scores the best fully.
/// A lock holds its lever at its value, also where the recipe in use has another; what is not at hand is replaced by
/// the nearest that is. Both are forced moves and do not count as moved. Faults: no pantry entry for a base ingredient;
/// a recipe in use that cannot be brewed; a lock outside its lever's bounds. Cancelled: notPossible.
[[nodiscard]] Result<Advice> advise(const AdviceInput& input, std::stop_token stop = {});

/// The effect of one setting against the base, for the try board: scores at the next draw and if kept up.
struct Effect {
    PerDimension<Band> next, settled;
};
[[nodiscard]] Result<Effect> tryOut(const AdviceInput& input, const Setting& setting, std::stop_token stop = {});

/// Puts one lever to a value on a copy of the setting. Unknown lever or value out of bounds: fault at "/<lever>".
[[nodiscard]] Result<Setting> withLever(const Setting& setting, std::string_view lever, const LeverValue& value,
                                        const ingredient::Pantry& pantry);
[[nodiscard]] LeverValue leverValue(const Setting& setting, std::string_view lever, const ingredient::Pantry& pantry);

} // namespace staveline::advice

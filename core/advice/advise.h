// SPDX-License-Identifier: GPL-3.0-or-later
// The adviser: from what is known of a vessel and a target to at most three distinct proposals, "leave it alone", one
// word for each dimension, and whether one more taster would be worth it.
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
    double movement = 1;    ///< one unit of movement, in the lever's own unit
    double cost = 1;        ///< per unit of movement
    double mostAtOnce = 0;  ///< farthest that a brewer would go in one cycle; 0: as far as the bounds
    double advisedHigh = 0; ///< above it to lock and to try, never advised; 0: as far as the bounds
    bool assumed = false;   ///< no mixed vessel has shown which way it turns a score: the model assumes it from worts
    std::string note, source;
    std::vector<std::string> choices; ///< of a choice lever; empty: from the pantry
    [[nodiscard]] bool isChoice() const { return kind == UnitKind::none; }
};
/// A missing number, a step or cost of 0, or a low end above the high end is a fault at "/<row>", a unit that no lever
/// has at "/<row>/unit", a direction that is neither known nor assumed at "/<row>/direction".
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
    vessel::ByMonth apart{}; ///< how far the room is in each month from the temperature of a setting [K]
    Day today{};             ///< counts where the months differ
    bool canChangeTemperature = false;
    bool mayMoveDraw = false;     ///< the brewer lets the draw be another one
    bool mayMoveInterval = false; ///< the brewer lets the interval be another one
    bool houseYeastKillerSensitive = true;
    bool brettEstablished = true;
    // what is known and wanted, today's scores
    PerDimension<tasting::Estimate> model;                               ///< carried forward, score space
    PerDimension<tasting::Estimate> combined;                            ///< the model with the vessel's offset from it
    PerDimension<std::vector<estimate::Evidence>> evidence;              ///< for the explanations; empty: not known
    PerDimension<estimate::Offset> offsets;                              ///< of the vessel from the model, today
    PerDimension<estimate::OffsetRule> wander = estimate::offsetRules(); ///< how offsets do, for the bands
    PerDimension<bool> seen{{true, true, true}}; ///< something was observed of it; else it steers nothing
    PerDimension<double> oneMoreTaster{{constants::advice::oneMoreTaster, constants::advice::oneMoreTaster,
                                        constants::advice::oneMoreTaster}}; ///< error variance [points^2]
    PerDimension<bool> tastedThisCycle{{true, true, true}}; ///< else a first tasting is asked for, not one more taster
    PerDimension<bool> tastedToday{};                       ///< no more tasting of it is asked for
    bool titrationHelps = false;                            ///< in the first cycles of a single taster
    std::optional<GramsPerLitre> measuredTa{};              ///< the latest of this cycle
    std::optional<Ph> measuredPh{};                         ///< likewise
    tasting::Target target;
    bool targetSet = true;                   ///< false: nobody set one, this is an ordinary one
    std::vector<Message> atVessel{};         ///< what was seen at the vessel and bears on it, to be said likewise
    std::vector<estimate::Doubt> doubts{};   ///< of this cycle, to be said whatever is advised
    PerDimension<tasting::Verdict> verdicts; ///< as they stand before any plan
    // what can be done
    Setting base;                 ///< the last refill without its one-cycle aids: what leaving alone means
    std::optional<Setting> usual; ///< the usual recipe and handling, to be named beside it where it differs
    bool drawn = false;           ///< for this refill already: the base's draw is what was taken
    bool stepCaps = true;         ///< no step is larger than a brewer would take at once
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
    /// Contributions in points; over a proposal's moves they add up. None: not known, as in a recipe that no set of
    /// levers makes; settled likewise where it was not asked for.
    std::optional<PerDimension<double>> next, settled;
    Message wording; ///< for the brew sheet: "saccharification 63 °C instead of 66 °C"
    std::vector<Message> cautions;
    bool forced = false; ///< by a lock or by what is not at hand; in every proposal, "leave it alone" too
};
struct Proposal {
    Message title;
    std::vector<Move> moves; ///< forced ones first; none but forced: leave it alone
    Setting setting;
    PerDimension<Band> thisDraw, next, settled;
    Scores ahead;                 ///< at the last of the draws planned for
    Message why;                  ///< one sentence
    Scores loss;                  ///< expected, flat near the target, mean over the coming draws [squared bands]
    double cost = 0;              ///< loss in all dimensions and effort
    double worth = 0;             ///< cost of leaving it alone minus cost
    std::vector<Message> reasons; ///< numbers carry their origin
    std::vector<Message> limits;  ///< bounds that bind, cycles needed, "you will not taste this"
    std::vector<Message> cautions;
    Litres refill{0};               ///< into the vessel
    forward::Outcome atNext;        ///< the model's next draw, before the vessel's offset is added
    PerDimension<int> cyclesNeeded; ///< the draw after this one that is first inside its window; 0: none of twelve
};
/// What a lock, or a grain or yeast that is not at hand, costs: the best plan without it is better by this much.
struct RestrictionPrice {
    std::string id;    ///< lever, grain or yeast
    bool lock = false; ///< false: not at hand
    double cost = 0;   ///< [squared bands]
    Message withoutIt; ///< title of the plan that would then be best
};
/// What one more taster now is expected to save by choosing better among the plans.
struct TastingValue {
    double value = 0;                   ///< [squared bands]
    std::optional<Dimension> dimension; ///< that it is worth it for; none: it is not
};
struct Advice {
    PerDimension<tasting::Verdict> verdicts; ///< the final words; proposals never say otherwise
    PerDimension<tasting::Estimate> now;     ///< the combined estimate it rests on
    PerDimension<tasting::TargetWindow> windows;
    std::vector<Proposal> proposals; ///< best first, at most three; none: leave it alone, or what the verdicts say
    Proposal leaveAlone;
    std::optional<Proposal> usual; ///< the usual recipe, where it differs from leaving alone
    TastingValue tasting;
    std::vector<RestrictionPrice> prices; ///< with withSettled only; cheap restrictions are left out
    std::vector<Message> notes;           ///< e.g. taste first; a two-point body gap is out of reach
    bool faultFirst = false;
};

/// Enumerates every plan of one or two levers, and of more, up to `maxMoved`, those that add to the best; screens by
/// adding up their effects and predicts the best in full. A lock holds its lever at its value, also where the recipe in
/// use has another; what is not at hand is replaced by the nearest that is. Both are forced moves and do not count as
/// moved. Faults: no pantry entry for a base ingredient; a recipe in use that cannot be brewed; a lock outside its
/// lever's bounds. Cancelled: notPossible.
[[nodiscard]] Result<Advice> advise(const AdviceInput& input, std::stop_token stop = {});

/// Puts one lever to a value on a copy of the setting. Unknown lever or value out of bounds: fault at "/<lever>".
[[nodiscard]] Result<Setting> withLever(const Setting& setting, std::string_view lever, const LeverValue& value,
                                        const ingredient::Pantry& pantry);
[[nodiscard]] LeverValue leverValue(const Setting& setting, std::string_view lever, const ingredient::Pantry& pantry);
/// The setting with every one-cycle aid taken back to what `back` has.
[[nodiscard]] Setting withoutAids(const Setting& setting, const Setting& back, const ingredient::Pantry& pantry);
/// It is another setting than `back`, but by one-cycle aids only: there is nothing to keep up.
[[nodiscard]] bool onlyAids(const Setting& setting, const Setting& back, const ingredient::Pantry& pantry);
/// What "leave it alone" is: the base with locks and what stands in for missing things. Faults as those of advise().
[[nodiscard]] Result<Setting> leaveAloneSetting(const AdviceInput& input);

} // namespace staveline::advice

// SPDX-License-Identifier: GPL-3.0-or-later
// A lever: one thing a brewer can change for this refill. All that belongs to one is in its file under levers/; bounds,
// step and cost are its row in resources/data/levers.csv.
#pragma once

#include "advice/advise.h"

namespace staveline::advice {

/// What there is to brew with.
struct Stock {
    const ingredient::Pantry& pantry;
    const std::set<std::string>& missing; ///< grain and yeast ids

    [[nodiscard]] bool has(std::string_view id) const { return !missing.contains(std::string(id)); }
};

struct Lever {
    std::string id;
    bool proposed = true;  ///< false: to lock and to try, never advised
    bool oneCycle = false; ///< an aid: taken back after the refill it was for
    bool byVolume = false; ///< the row's bounds are shares of the volume before the draw, values are litres
    int order = 0;         ///< levers that act on what others bring are applied after them

    LeverValue (*read)(const Setting&, const Stock&) = nullptr;
    /// Total for a value inside the lever's bounds.
    void (*apply)(Setting&, const LeverValue&, const Stock&) = nullptr;
    /// Whether moving it changes anything in this setting; null: always.
    bool (*applies)(const Setting&, const AdviceInput&) = nullptr;
    /// Whether it may be advised for this vessel; null: always. Trying and locking stay open.
    bool (*advised)(const AdviceInput&) = nullptr;
    /// Narrows the row by target, recipe and stock; null: the row as it is.
    void (*narrow)(LeverRow&, const Setting&, const AdviceInput&) = nullptr;
    /// Choices to advise; null: those of the row.
    std::vector<std::string> (*choices)(const AdviceInput&) = nullptr;
    /// For the brew sheet; null: "name: to instead of from".
    Message (*wording)(const LeverValue& from, const LeverValue& to, const Setting& after, const Stock&) = nullptr;
    /// Cautions that come with the new value; null: none.
    std::vector<Message> (*cautions)(const LeverValue& to, const Setting& after, const AdviceInput&) = nullptr;
    /// Values that may not lead the list of proposals; null: none.
    bool (*neverFirst)(const LeverValue& to, const Stock&) = nullptr;
};

/// All levers in the order of their rows; each row has its file and each file its row (a test compares them).
[[nodiscard]] const std::vector<Lever>& levers();
[[nodiscard]] const Lever* findLever(std::string_view id);
/// The built-in row; the lever must be one of levers().
[[nodiscard]] const LeverRow& rowOf(const Lever& lever);

/// The row as it holds for this vessel, target and recipe.
[[nodiscard]] LeverRow narrowedRow(const Lever& lever, const Setting& start, const AdviceInput& input);
/// Every brewable value but the present one, in rising order or in the order of the choices.
[[nodiscard]] std::vector<LeverValue> stepsOf(const Lever& lever, const Setting& start, const AdviceInput& input);
/// Those of them that a brewer would be advised.
[[nodiscard]] std::vector<LeverValue> advisedSteps(const Lever& lever, const Setting& start, const AdviceInput& input);
[[nodiscard]] bool sameValue(const LeverValue& a, const LeverValue& b);
/// A one-cycle aid is at another value than in `back`.
[[nodiscard]] bool hasAids(const Setting& setting, const Setting& back, const Stock& stock);
[[nodiscard]] Message wordingOf(const Lever& lever, const LeverValue& from, const LeverValue& to, const Setting& after,
                                const Stock& stock);

/// The number inside a lever's value; choices never get here.
[[nodiscard]] inline double number(const LeverValue& value) {
    return std::get<double>(value);
}
[[nodiscard]] inline const std::string& choice(const LeverValue& value) {
    return std::get<std::string>(value);
}
/// "key" with the two values in the unit Q, both of them linked to the move.
template <Quantity Q> Message fromTo(std::string key, Q from, Q to) {
    return say(std::move(key)).with("to", to, OriginKind::moveTo).with("from", from, OriginKind::moveFrom);
}

} // namespace staveline::advice

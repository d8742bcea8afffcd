// SPDX-License-Identifier: GPL-3.0-or-later
// What the core has to say: a key and typed arguments. The face renders it in the chosen units and language.
#pragma once

#include "quantity/units.h"

#include <chrono>
#include <cstdint>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace staveline {

struct Number {
    double value = 0.0;
    int decimals = 1;
    bool operator==(const Number&) const = default;
};
/// A difference of scores, always shown with its sign.
struct SignedPoints {
    double points = 0.0;
    bool operator==(const SignedPoints&) const = default;
};

using ArgumentValue =
    std::variant<std::string, std::int64_t, Number, SignedPoints, Litres, Kilograms, Grams, Celsius, Minutes, Days,
                 Plato, SpecificGravity, GramsPerLitre, MilligramsPerLitre, Ibu, Ebc, Ph, PercentVol, Share, Points,
                 CelsiusPerMinute, LitresPerKilogram, Co2Volumes, std::chrono::sys_days>;

struct Argument {
    std::string name;
    ArgumentValue value;
    std::string origin; ///< where the number comes from, e.g. "prediction/next/acidity"; empty: nowhere to follow
    bool operator==(const Argument&) const = default;
};

struct Message {
    std::string key; ///< looked up in resources/texts; placeholders there are {name}
    std::vector<Argument> arguments;
    bool operator==(const Message&) const = default;

    /// For chains: say("key").with(...).with(...). Assigning the result to the message itself would empty it.
    Message&& with(std::string name, ArgumentValue value, std::string origin = {}) && {
        arguments.push_back({std::move(name), std::move(value), std::move(origin)});
        return std::move(*this);
    }
};

inline Message say(std::string key) {
    return Message{std::move(key), {}};
}

} // namespace staveline

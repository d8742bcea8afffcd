// SPDX-License-Identifier: GPL-3.0-or-later
// What the core has to say: a key and typed arguments. The face renders it in the chosen units and language.
#pragma once

#include "quantity/origin.h"
#include "quantity/units.h"

#include <chrono>
#include <concepts>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace staveline {

/// A bare number with as many decimals as it is good for.
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

/// Any of the quantities, told apart by what it measures.
struct Amount {
    UnitKind kind = UnitKind::none;
    double value = 0.0; ///< in the stored unit of its kind
    int decimals = 1;   ///< of a bare number; the other kinds know their own
    bool rough = false; ///< shown to two figures: an estimate of an order of size

    constexpr Amount(UnitKind what, double size) : kind(what), value(size) {}
    template <Quantity Q> constexpr Amount(Q quantity) : kind(Q::kind), value(raw(quantity)) {}
    constexpr Amount(Number number) : value(number.value), decimals(number.decimals) {}
    constexpr Amount(SignedPoints difference) : kind(UnitKind::pointsDifference), value(difference.points) {}
    bool operator==(const Amount&) const = default;
};

/// "2000 L", not "2013.4 L".
[[nodiscard]] constexpr Amount roughly(Amount amount) {
    amount.rough = true;
    return amount;
}

/// A text, a count, an amount or a day.
using ArgumentValue = std::variant<std::string, std::int64_t, Amount, std::chrono::sys_days>;

struct Argument {
    std::string name;
    ArgumentValue value;
    Origin origin; ///< where the number comes from
    bool operator==(const Argument&) const = default;
};

/// What copies, moves and ends it stands in message.cpp: nearly every source says something.
struct Message {
    std::string key; ///< looked up in resources/texts; placeholders there are {name}
    std::vector<Argument> arguments;

    Message();
    explicit Message(std::string_view textKey, std::vector<Argument> with = {});
    Message(const Message& other);
    Message(Message&& other) noexcept;
    Message& operator=(const Message& other);
    Message& operator=(Message&& other) noexcept;
    ~Message();
    bool operator==(const Message& other) const;

    /// For chains: say("key").with(...).with(...). Assigning the result to the message itself would empty it.
    Message&& with(std::string_view name, std::string_view text, const Origin& origin = {}) &&;
    Message&& with(std::string_view name, std::int64_t count, const Origin& origin = {}) &&;
    Message&& with(std::string_view name, Amount amount, const Origin& origin = {}) &&;
    Message&& with(std::string_view name, std::chrono::sys_days day, const Origin& origin = {}) &&;
    template <std::same_as<ArgumentValue> Value>
    Message&& with(std::string_view name, const Value& value, const Origin& origin = {}) && {
        add(name, value, origin);
        return std::move(*this);
    }

private:
    void add(std::string_view name, ArgumentValue value, const Origin& origin);
};

[[nodiscard]] Message say(std::string_view key);

} // namespace staveline

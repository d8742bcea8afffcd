// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/codec.h"
#include "facts/field_kinds.h"
#include "quantity/day_limits.h"
#include "quantity/words.h"

#include <cmath>
#include <fmt/core.h>

namespace staveline::facts {
namespace {

ArgumentValue inFewFigures(double value) {
    constexpr double shownWhole = 1e9;
    if (std::abs(value) < shownWhole)
        return shortest(value);
    return fmt::format("{:.3g}", value);
}

Fault perCent(std::string path, Share given) {
    return {FaultKind::input, std::move(path), say("desk.per_cent").with("value", inFewFigures(given.of1)),
            say("desk.per_cent.remedy").with("instead", shortest(given.of1 / 100))};
}

Result<void> checkTime(std::string_view text, std::string_view path) {
    if (text.empty() || minuteOfDay(text))
        return {};
    return badInput(std::string(path), say("desk.no_time").with("text", excerpt(text)), say("desk.no_time.remedy"));
}

} // namespace

Fault outOfRange(std::string path, const Field& field, double value) {
    return {
        FaultKind::input, std::move(path), say("desk.out_of_range").with("value", inFewFigures(value)),
        say("desk.out_of_range.remedy").with("low", inFewFigures(field.low)).with("high", inFewFigures(field.high))};
}

Fault gravityRange(std::string path, SpecificGravity given) {
    return {FaultKind::input, std::move(path), say("desk.gravity_range").with("value", inFewFigures(given.sg)),
            say("desk.gravity_range.remedy")};
}

/// Visits a fact and keeps the first fault.
class Checker {
public:
    explicit Checker(std::string path = {}) : path_(std::move(path)) {}
    std::optional<Fault> fault;

    template <class T> void field(const Field& f, const T& value) {
        if (fault)
            return;
        if constexpr (Optional<T>) {
            if (value)
                field(f, *value);
        } else if constexpr (std::is_same_v<T, Share>) {
            share(f, value);
        } else if constexpr (std::is_same_v<T, double>) {
            f.unit == UnitKind::share ? share(f, Share{value}) : number(f, value);
        } else if constexpr (QuantityLike<T>) {
            number(f, raw(value));
        } else if constexpr (std::is_same_v<T, std::string>) {
            text(f, value);
        } else if constexpr (std::is_same_v<T, Day>) {
            keepFirst(checkDay(value, pathOf(path_, f.name)));
        } else if constexpr (std::is_arithmetic_v<T> && !std::is_same_v<T, bool>) {
            number(f, static_cast<double>(value));
        }
    }
    template <class T> void number(const Field& f, const T& value) {
        if constexpr (std::is_enum_v<T>) {
            (void)f;
        } else if (!(value >= f.low && value <= f.high) && !fault) {
            fault = outOfRange(pathOf(path_, f.name), f, static_cast<double>(value));
        }
    }
    template <class E> void word(const Field&, const E&, std::span<const std::string_view>) {}
    void extract(std::string_view name, const Plato& value) {
        const std::string field = std::string(name) + "_p";
        number(Field{std::string_view(field), extracts.low, extracts.high}, value.p);
    }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value && !fault && !isGravity(*value))
            fault = gravityRange(pathOf(path_, std::string(name) + "_sg"), *value);
    }
    void vessel(const Field& f, const std::string& value) { required(f, value); }
    void brew(const Field& f, const std::string& value) { required(f, value); }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        if (items.size() > longestList && !fault)
            fault = Fault{FaultKind::input, pathOf(path_, f.name),
                          say("desk.long_list").with("count", static_cast<std::int64_t>(items.size())),
                          say("desk.long_list.remedy").with("most", static_cast<std::int64_t>(longestList))};
        for (std::size_t i = 0; i < items.size() && !fault; ++i)
            nestedAt(pathOf(path_, f.name) + "/" + std::to_string(i), items[i]);
    }
    template <class T> void nested(const Field& f, const T& value) { nestedAt(pathOf(path_, f.name), value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }

private:
    void keepFirst(const Result<void>& checked) {
        if (!checked && !fault)
            fault = checked.error();
    }
    void required(const Field& f, const std::string& value) {
        if (f.required && value.empty() && !fault)
            fault = missingField(pathOf(path_, f.name), f.name);
    }
    void text(const Field& f, const std::string& value) {
        required(f, value);
        const auto check = f.holds == Holds::name    ? checkName
                           : f.holds == Holds::prose ? checkProse
                           : f.holds == Holds::time  ? checkTime
                                                     : checkLine;
        keepFirst(check(value, pathOf(path_, f.name)));
    }
    void share(const Field& f, Share value) {
        if (value.of1 > f.high && value.of1 > 1 && value.of1 / 100 >= f.low && value.of1 / 100 <= f.high)
            fault = perCent(pathOf(path_, f.name), value);
        else
            number(f, value.of1);
    }
    template <class T> void nestedAt(const std::string& path, const T& value) {
        if constexpr (!std::is_same_v<T, std::string>) {
            Checker inner(path);
            describe(inner, value);
            if (inner.fault && !fault)
                fault = inner.fault;
        }
    }
    std::string path_;
};

Range restTemperatures() {
    return rangeOf<brewing::MashStep>("temperature_c");
}

bool isGravity(SpecificGravity given) {
    return gravities.holds(given.sg);
}

template <class F> Result<void> checkFields(const F& fact) {
    Checker checker;
    describe(checker, fact);
    if (checker.fault)
        return fail(*checker.fault);
    return {};
}

Result<void> checkPlan(const RefillPlan& plan) {
    Checker checker;
    describe(checker, plan.recipe);
    describeHandling(checker, plan);
    if (checker.fault)
        return fail(*checker.fault);
    return {};
}

#define STAVELINE_CHECKED(F, ...) template Result<void> checkFields(const F&);
STAVELINE_FACTS(STAVELINE_CHECKED)
#undef STAVELINE_CHECKED

} // namespace staveline::facts

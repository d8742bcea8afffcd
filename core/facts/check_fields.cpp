// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/codec.h"
#include "facts/field_kinds.h"

namespace staveline::facts {
namespace {

Fault outOfRange(const std::string& path, const Field& field, double value) {
    return {FaultKind::input, path, say("desk.out_of_range").with("value", Number{value, 3}),
            say("desk.out_of_range.remedy").with("low", Number{field.low, 3}).with("high", Number{field.high, 3})};
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
        } else if constexpr (QuantityLike<T>) {
            number(f, raw(value));
        } else if constexpr (std::is_same_v<T, std::string>) {
            text(f, value);
        } else if constexpr (std::is_arithmetic_v<T> && !std::is_same_v<T, bool>) {
            number(f, static_cast<double>(value));
        }
    }
    template <class T> void number(const Field& f, const T& value) {
        if constexpr (std::is_enum_v<T>) {
            (void)f;
        } else if (!(value >= f.low && value <= f.high) && !fault) {
            fault = outOfRange(pathOf(path_, f.name), f, value);
        }
    }
    template <class E> void word(const Field&, const E&, std::span<const std::string_view>) {}
    void extract(std::string_view name, const Plato& value) {
        const std::string field = std::string(name) + "_p";
        number(Field{std::string_view(field), 0, 40}, value.p);
    }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value && !fault && (value->sg < 0.95 || value->sg > 1.2))
            fault =
                Fault{FaultKind::input, pathOf(path_, std::string(name) + "_sg"),
                      say("desk.gravity_range").with("value", Number{value->sg, 3}), say("desk.gravity_range.remedy")};
    }
    void vessel(const Field& f, const std::string& value) { text(f, value); }
    void brew(const Field& f, const std::string& value) { text(f, value); }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        for (std::size_t i = 0; i < items.size() && !fault; ++i)
            nestedAt(pathOf(path_, f.name) + "/" + std::to_string(i), items[i]);
    }
    template <class T> void nested(const Field& f, const T& value) { nestedAt(pathOf(path_, f.name), value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }

private:
    void text(const Field& f, const std::string& value) {
        if (fault)
            return;
        if (f.required && value.empty())
            fault = Fault{FaultKind::input, pathOf(path_, f.name),
                          say("desk.missing").with("field", std::string(f.name)), say("desk.missing.remedy")};
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

} // namespace

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

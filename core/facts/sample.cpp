// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/sample.h"

#include "facts/field_kinds.h"
#include "facts/record_file.h"
#include "resources/resources.h"

namespace staveline::facts {
namespace {

/// The day the sample was written for; only what it promises lies after.
constexpr Day writtenFor = std::chrono::year{2026} / std::chrono::June / 1;

class DayShifter : public PassesBy {
public:
    explicit DayShifter(int days) : days_(days) {}
    template <class T> void field(const Field&, T& value) {
        if constexpr (std::is_same_v<T, Day>)
            value += days_;
        else if constexpr (std::is_same_v<T, std::optional<Day>>)
            if (value)
                *value += days_;
    }
    template <class T> void nested(const Field&, T& value) { describe(*this, value); }
    template <class T> void object(const Field&, std::optional<T>& value) {
        if (value)
            describe(*this, *value);
    }

private:
    std::chrono::days days_;
};

} // namespace

void shiftDays(Fact& fact, int days) {
    std::visit(
        [days](auto& f) {
            DayShifter shifter(days);
            describe(shifter, f);
        },
        fact);
}

Result<std::vector<Fact>> sampleCellar(Day today) {
    auto facts = parseRecords(resources::find("demo-data/sample-cellar.json"));
    if (!facts)
        return fail(facts.error());
    for (auto& fact : *facts)
        shiftDays(fact, daysBetween(writtenFor, today));
    return facts;
}

} // namespace staveline::facts

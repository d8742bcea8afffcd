// SPDX-License-Identifier: GPL-3.0-or-later
// The fields of a fact as a form needs them, read from the description all faces share (facts/fields.h).
#pragma once

#include "facts/fact_list.h"
#include "ui/present/unit_scale.h"

#include <map>
#include <string>
#include <variant>
#include <vector>

namespace staveline::ui {

enum class FieldKind { number, day, text, word, flag, brew, vessel, room };

struct FieldSpec {
    std::string name; ///< as in record files: "volume_l"; gravity is "gravity" in any scale
    FieldKind kind = FieldKind::text;
    UnitKind unit = UnitKind::none;
    double low = 0, high = 0; ///< stored units; for numbers
    bool required = false;
    std::vector<std::string> words; ///< for a word; an empty one: not said
};

/// monostate: not given.
using FieldValue = std::variant<std::monostate, double, std::string, Day, bool>;
using FieldValues = std::map<std::string, FieldValue>;

/// In the order of the description. The vessel the fact is about is not among them.
[[nodiscard]] std::vector<FieldSpec> fieldsOf(const facts::Fact& fact);
[[nodiscard]] FieldValues valuesOf(const facts::Fact& fact);
/// What is not named in `values` stays; monostate clears what may be empty and leaves the rest.
void put(facts::Fact& fact, const FieldValues& values);
/// The field a fault's path points at: "/gravity_sg" and "/gravity_p" are "gravity".
[[nodiscard]] std::string fieldAt(std::string_view path);

[[nodiscard]] facts::VesselName vesselOf(const facts::Fact& fact);
void setVessel(facts::Fact& fact, const facts::VesselName& vessel);
[[nodiscard]] Day dayOf(const facts::Fact& fact);

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What a column of a brewer's own notes can mean, kind by kind: made from the description of the facts, with columns of
// its own for what is a list there (scores of a tasting; grist, mash and hops of a brew).
#pragma once

#include "quantity/unit_kind.h"

#include <string>
#include <string_view>
#include <vector>

namespace staveline::facts {

enum class NoteCell { text, number, share, day, flag };

struct NoteField {
    std::string name; ///< as in record files: "gravity_sg"; "TA1_cold", "grain_2", "rest_1_min" for lists
    NoteCell cell = NoteCell::text;
    double low = 0, high = 0; ///< of a number; infinite: no limit
    bool required = false;
    UnitKind unit = UnitKind::none;      ///< of a number
    std::vector<std::string> words = {}; ///< the only ones allowed; empty: any
};

inline constexpr int mostGrains = 10, mostRests = 6, mostHops = 4; ///< of a brew in one row

/// "reading", "draw_off", "sitting", "brew" and the like.
[[nodiscard]] const std::vector<std::string>& noteKinds();
/// Empty: there is no such kind.
[[nodiscard]] std::vector<NoteField> noteFields(std::string_view kind);
/// The field each heading seems to mean, in the order of the headings; "": none, or one that another heading has
/// already, or one with a unit in brackets that is not known as the field's.
[[nodiscard]] std::vector<std::string> guessFields(std::string_view kind, const std::vector<std::string>& headings);
/// A CSV file to fill in: the headings and one row as an example.
[[nodiscard]] std::string noteTemplate(std::string_view kind);

} // namespace staveline::facts

// SPDX-License-Identifier: GPL-3.0-or-later
// Years of notes from a CSV file as facts: which column is which field, how days and numbers are written, and the rows
// that cannot be read, each with its reason.
#pragma once

#include "facts/csv_records.h"
#include "facts/fact_list.h"
#include "facts/note_fields.h"
#include "ingredient/pantry.h"

namespace staveline::facts {

enum class DateOrder { ymd, dmy, mdy };

/// A file as it lies there.
struct NoteTable {
    std::vector<std::string> headings;
    std::vector<CsvRecord> rows; ///< those that say anything, each as wide as it is; a wider one is rejected later
};
/// The separator is found as readSheet does. Faults: not UTF-8, no heading, no row, quotes that do not pair.
[[nodiscard]] Result<NoteTable> readNotes(std::string_view text);

/// How the file is meant.
struct NoteForm {
    std::string kind;                ///< one of noteKinds()
    VesselName vessel;               ///< of every row that names none
    std::vector<std::string> fields; ///< of each heading; "": left out
    std::optional<DateOrder> dates;  ///< none: as the days themselves say
    std::optional<char> decimal;     ///< '.' or ','; none: as the numbers themselves say
};
/// The same with dates and decimal known. Faults: a field unknown, taken twice (at "/columns") or needed and not there;
/// days or numbers that can be read in two ways, at "/dates" and "/decimal", to be asked.
[[nodiscard]] Result<NoteForm> settled(NoteForm form, const NoteTable& table);

struct RejectedRow {
    std::size_t line = 0;
    Fault why; ///< its path names the field
};
struct NotedFacts {
    std::vector<Fact> facts;                     ///< by day
    std::vector<std::vector<std::size_t>> lines; ///< of each; several where several rows make one tasting
    std::vector<RejectedRow> rejected;
};
/// `form` as settled() gave it. Malts and yeasts may stand by name or id.
[[nodiscard]] NotedFacts factsIn(const NoteTable& table, const NoteForm& form, const ingredient::Pantry& pantry);

/// "dmy" and the like; none: another word.
[[nodiscard]] std::optional<DateOrder> dateOrderNamed(std::string_view word);
[[nodiscard]] std::string_view wordOf(DateOrder order);

} // namespace staveline::facts

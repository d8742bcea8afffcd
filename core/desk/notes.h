// SPDX-License-Identifier: GPL-3.0-or-later
// Years of notes into a book: read, tried against it, and recorded in one edit.
#pragma once

#include "desk/desk.h"
#include "facts/notes.h"

namespace staveline::desk {

struct NotesOutcome {
    std::vector<std::string> headings;
    facts::NoteForm form;                     ///< as it was settled
    std::size_t rows = 0, taken = 0;          ///< of the file; facts that are, or would be, recorded
    std::vector<facts::RejectedRow> rejected; ///< by line
    Recorded recorded;                        ///< empty rows when it was a trial
};

/// Where `form` has no fields they are guessed from the headings. `name` names the edit: the file without its folder.
/// A `trial` stores nothing. Faults that ask for the order of days or the decimal mark are at "/dates" and "/decimal".
[[nodiscard]] Result<NotesOutcome> takeNotes(Desk& desk, std::string_view text, facts::NoteForm form,
                                             const std::string& name, bool trial, const GoOn& goOn = {});
[[nodiscard]] std::string toJson(const NotesOutcome& outcome);

} // namespace staveline::desk

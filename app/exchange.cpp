// SPDX-License-Identifier: GPL-3.0-or-later
// What goes out of a book and comes into it as files: the whole of it as a folder, and years of notes.
#include "app/commands.h"
#include "app/on_book.h"
#include "app/progress.h"
#include "desk/folder.h"
#include "desk/json.h"
#include "desk/notes.h"

#include <algorithm>
#include <filesystem>
#include <fmt/core.h>

namespace staveline::app {

using desk::Desk;

namespace {

Fault unknownKind(const std::string& kind, std::string path) {
    std::string known;
    for (const auto& each : facts::noteKinds())
        known += (known.empty() ? "" : ", ") + each;
    return {FaultKind::input, std::move(path), say("app.note_kind").with("kind", kind),
            say("app.note_kind.remedy").with("kinds", known)};
}

/// The guess, and what --map says instead.
Result<std::vector<std::string>> fieldsOf(const facts::NoteTable& table, const Options& options) {
    auto fields = facts::guessFields(options.kind, table.headings);
    for (const auto& text : options.columns) {
        const auto end = std::min(text.rfind('='), text.size());
        const auto at = std::find(table.headings.begin(), table.headings.end(), text.substr(0, end));
        if (end == text.size() || at == table.headings.end())
            return badInput("/map", say("app.no_column").with("text", text), say("app.no_column.remedy"));
        const std::string field = text.substr(end + 1);
        std::replace(fields.begin(), fields.end(), field, std::string()); // what is said wins over a guess
        fields[static_cast<std::size_t>(at - table.headings.begin())] = field;
    }
    return fields;
}

Result<facts::NoteForm> formOf(const std::string& text, const Options& options) {
    const auto table = facts::readNotes(text);
    if (!table)
        return fail(table.error());
    auto fields = fieldsOf(*table, options);
    if (!fields)
        return fail(fields.error());
    facts::NoteForm form{options.kind, options.vessel, *std::move(fields), facts::dateOrderNamed(options.dates), {}};
    if (!options.decimal.empty())
        form.decimal = options.decimal.front();
    return form;
}

void printOutcome(const desk::NotesOutcome& outcome, const Options& options) {
    for (std::size_t i = 0; i < outcome.headings.size(); ++i) {
        const bool taken = !outcome.form.fields[i].empty();
        fmt::print("  {}\n", render(say(taken ? "app.note_column" : "app.note_column_left")
                                        .with("column", outcome.headings[i])
                                        .with("field", outcome.form.fields[i])));
    }
    for (const auto& row : outcome.rejected)
        fmt::print("  {}\n", render(say("app.note_rejected")
                                        .with("line", static_cast<std::int64_t>(row.line))
                                        .with("field", row.why.path.empty() ? row.why.path : row.why.path.substr(1))
                                        .with("cause", render(row.why.cause, unitsOf(options)))
                                        .with("remedy", render(row.why.remedy, unitsOf(options)))));
    fmt::print("{}\n", render(say(options.preview ? "app.notes_preview" : "app.notes_taken")
                                  .with("taken", static_cast<std::int64_t>(outcome.taken))
                                  .with("rows", static_cast<std::int64_t>(outcome.rows))
                                  .with("rejected", static_cast<std::int64_t>(outcome.rejected.size()))));
}

int takeInto(Desk& desk, const std::string& text, const Options& options) {
    const auto form = formOf(text, options);
    if (!form)
        return complain(form.error(), options);
    const auto outcome = [&] {
        ProgressLine line;
        return desk::takeNotes(desk, text, *form, std::filesystem::path(options.file).filename().string(),
                               options.preview, [&](std::size_t done, std::size_t all) {
                                   line.show(done, all);
                                   return true;
                               });
    }();
    if (!outcome)
        return complain(outcome.error(), options);
    options.json ? fmt::print("{}", desk::toJson(*outcome)) : printOutcome(*outcome, options);
    return outcome->taken > 0 ? 0 : statusOf(FaultKind::input);
}

} // namespace

int importNotes(const Options& options) {
    const bool wantsTemplate = !options.templateOf.empty();
    const std::string& kind = wantsTemplate ? options.templateOf : options.kind;
    if (facts::noteFields(kind).empty())
        return complain(unknownKind(kind, wantsTemplate ? "/template" : "/kind"), options);
    if (wantsTemplate) {
        fmt::print("{}", facts::noteTemplate(kind));
        return 0;
    }
    if (options.book.empty() || options.file.empty())
        return complain({FaultKind::input, "/file", say("app.no_notes"), say("app.no_notes.remedy")}, options);
    const auto text = readFile(options.file);
    if (!text)
        return complain(text.error(), options);
    return onBook(options, book::OpenMode::readWrite, [&](Desk& desk) { return takeInto(desk, *text, options); });
}

int exportBook(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        auto written = [&]() -> Result<void> {
            ProgressLine line;
            auto files =
                desk.exported(unitsOf(options), [&](std::size_t done, std::size_t all) { line.show(done, all); });
            return files ? desk::writeFolder(options.out, *files) : Result<void>(fail(files.error()));
        }();
        if (!written)
            return complain(written.error(), options);
        fmt::print("{}", options.json ? desk::toJson("folder", options.out)
                                      : render(say("app.written").with("file", options.out)) + "\n");
        return 0;
    });
}

int bookFrom(const Options& options) {
    auto made = desk::bookFromFolder(options.book, options.from, clockOf(options));
    if (!made)
        return complain(made.error(), options);
    fmt::print("{}", options.json ? desk::toJson("book", options.book)
                                  : render(say("app.made").with("file", options.book)) + "\n");
    return 0;
}

} // namespace staveline::app

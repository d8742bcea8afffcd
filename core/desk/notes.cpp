// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/notes.h"

#include "facts/kept_words.h"
#include "ingredient/pantry.h"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace staveline::desk {

using facts::NotedFacts;
using facts::NoteForm;

Result<NotesOutcome> takeNotes(Desk& desk, std::string_view text, NoteForm form, const std::string& name, bool trial,
                               const GoOn& goOn) {
    const auto table = facts::readNotes(text);
    if (!table)
        return fail(table.error());
    if (form.fields.empty())
        form.fields = facts::guessFields(form.kind, table->headings);
    form.fields.resize(table->headings.size());
    auto settledForm = facts::settled(std::move(form), *table);
    if (!settledForm)
        return fail(settledForm.error());
    NotedFacts noted = facts::factsIn(*table, *settledForm, desk.pantry());
    const auto label = say("desk.edit.notes").with("name", name);
    auto some = desk.recordSome(noted.facts, {facts::keptWords(label), ""}, trial, goOn);
    if (!some)
        return fail(some.error());
    for (const auto& [place, why] : some->refused)
        for (const auto line : noted.lines[place])
            noted.rejected.push_back({line, why});
    std::stable_sort(noted.rejected.begin(), noted.rejected.end(),
                     [](const auto& a, const auto& b) { return a.line < b.line; });
    return NotesOutcome{table->headings,           *std::move(settledForm),
                        table->rows.size(),        noted.facts.size() - some->refused.size(),
                        std::move(noted.rejected), std::move(some->recorded)};
}

std::string toJson(const NotesOutcome& outcome) {
    using Json = nlohmann::ordered_json;
    Json columns = Json::object(), rejected = Json::array();
    for (std::size_t i = 0; i < outcome.headings.size(); ++i)
        columns[outcome.headings[i]] = outcome.form.fields[i];
    for (const auto& row : outcome.rejected)
        rejected.push_back({{"line", row.line},
                            {"field", row.why.path},
                            {"cause", render(row.why.cause)},
                            {"remedy", render(row.why.remedy)}});
    const Json json{{"kind", outcome.form.kind},
                    {"columns", columns},
                    {"dates", wordOf(outcome.form.dates.value_or(facts::DateOrder::ymd))},
                    {"decimal", std::string(1, outcome.form.decimal.value_or('.'))},
                    {"rows", outcome.rows},
                    {"taken", outcome.taken},
                    {"rejected", rejected}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace staveline::desk

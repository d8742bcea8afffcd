// SPDX-License-Identifier: GPL-3.0-or-later
// A row of notes as a record, so that it is judged as any other record is.
#include "facts/field_kinds.h"
#include "facts/note_cells.h"
#include "facts/record_file.h"
#include "quantity/words.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <nlohmann/json.hpp>
#include <numeric>

namespace staveline::facts {
namespace {

using Record = nlohmann::ordered_json;

Fault unreadable(const NoteField& field, const char* key, std::string_view text) {
    return {FaultKind::input, "/" + field.name, say(key).with("text", excerpt(text)),
            say("facts.notes_cell.remedy").with("field", field.name)};
}

/// By id, or by the name a brewer knows.
template <class Known> std::string idOf(const std::vector<Known>& all, const std::string& text) {
    const auto at = std::find_if(all.begin(), all.end(), [&](const Known& each) {
        return each.id == text || nameKey(each.name) == nameKey(text);
    });
    return at == all.end() ? text : at->id;
}

/// Takes what the record of a kind has no field for into the lists it has.
class RecordMaker {
public:
    RecordMaker(const NoteForm& form, const ingredient::Pantry& pantry) : form_(form), pantry_(pantry) {
        for (const auto& name : form.fields) {
            const auto fields = noteFields(form.kind);
            const auto at =
                std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.name == name; });
            columns_.push_back(at == fields.end() ? std::nullopt : std::optional(*at));
        }
    }

    Result<Fact> factOf(const CsvRecord& row) const {
        Record record{{"kind", form_.kind}};
        if (row.cells.size() > columns_.size())
            return badInput("", say("facts.notes_width"), say("facts.notes_width.remedy"));
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            if (columns_[i] && row.cells[i] && !row.cells[i]->empty())
                if (auto put = putCell(record, *columns_[i], *row.cells[i]); !put)
                    return fail(put.error());
        if (!record.contains("vessel") && !form_.vessel.empty())
            record["vessel"] = form_.vessel;
        if (form_.kind == kindOf<SittingFact>)
            gatherScores(record);
        if (form_.kind == kindOf<BrewFact>)
            gatherRecipe(record);
        auto facts = parseRecords(record.dump(-1, ' ', false, Record::error_handler_t::replace));
        return facts ? Result<Fact>(facts->front()) : Result<Fact>(fail(facts.error()));
    }

private:
    Result<void> putCell(Record& record, const NoteField& field, const std::string& text) const {
        const char mark = form_.decimal.value_or('.');
        if (field.cell == NoteCell::number || field.cell == NoteCell::share) {
            const auto number = field.cell == NoteCell::share ? readShare(text, mark) : readNumber(text, mark);
            if (!number)
                return fail(unreadable(field, "facts.notes_number", text));
            record[field.name] = *number;
        } else if (field.cell == NoteCell::day) {
            const auto day = readDay(text, form_.dates.value_or(DateOrder::ymd));
            if (!day)
                return fail(unreadable(field, "facts.notes_day", text));
            record[field.name] = isoDay(*day);
        } else if (field.cell == NoteCell::flag) {
            const std::string word = nameKey(text);
            const bool yes = word == "yes" || word == "true" || word == "1" || word == "x";
            if (!yes && word != "no" && word != "false" && word != "0")
                return fail(unreadable(field, "facts.notes_flag", text));
            record[field.name] = yes;
        } else {
            const auto word = std::find_if(field.words.begin(), field.words.end(),
                                           [&](const auto& each) { return nameKey(each) == nameKey(text); });
            record[field.name] = word != field.words.end() ? *word : withoutGuard(text);
        }
        return {};
    }
    static Record taken(Record& record, const std::string& name) {
        Record value = record.contains(name) ? record[name] : Record();
        record.erase(name);
        return value;
    }
    static void gatherScores(Record& record) {
        const Record taster = taken(record, "taster");
        Record scores = Record::array();
        for (const auto& attribute : tasting::builtInSheet().attributes) {
            const Record cold = taken(record, attribute.code + "_cold"),
                         cellar = taken(record, attribute.code + "_cellar");
            if (cold.is_null() && cellar.is_null())
                continue;
            scores.push_back({{"taster", taster.is_null() ? Record("") : taster},
                              {"attribute", attribute.code},
                              {"cold", cold},
                              {"cellar", cellar}});
        }
        record["scores"] = scores;
    }
    void gatherRecipe(Record& record) const {
        gatherGrist(record);
        gatherList(record, "mash", mostRests, [](Record& all, int i) {
            return Record{{"temperature_c", taken(all, fmt::format("rest_{}_c", i))},
                          {"minutes", taken(all, fmt::format("rest_{}_min", i))}};
        });
        gatherList(record, "hops", mostHops, [](Record& all, int i) {
            return Record{{"name", taken(all, fmt::format("hop_{}", i))},
                          {"alpha_share", taken(all, fmt::format("hop_{}_alpha", i))},
                          {"minutes", taken(all, fmt::format("hop_{}_min", i))}};
        });
        if (record.contains("yeast"))
            record["yeast"] = idOf(pantry_.yeasts(), record["yeast"].get<std::string>());
        if (record.contains("sugar"))
            record["sugar"] = idOf(pantry_.grains(), record["sugar"].get<std::string>());
    }
    /// The items of a list that say anything; what an item does not say is as it always is.
    template <class Item> static void gatherList(Record& record, const char* name, int most, Item item) {
        Record list = Record::array();
        for (int i = 1; i <= most; ++i) {
            Record made = item(record, i), said = Record::object();
            for (const auto& [key, value] : made.items())
                if (!value.is_null())
                    said[key] = value;
            if (!said.empty())
                list.push_back(said);
        }
        if (!list.empty())
            record[name] = list;
    }
    /// Shares as given, or as the kilograms make them.
    void gatherGrist(Record& record) const {
        gatherList(record, "grist", mostGrains, [&](Record& all, int i) {
            Record grain = taken(all, fmt::format("grain_{}", i));
            if (grain.is_string())
                grain = idOf(pantry_.grains(), grain.get<std::string>());
            return Record{{"grain", grain},
                          {"share", taken(all, fmt::format("grain_{}_share", i))},
                          {"mass_kg", taken(all, fmt::format("grain_{}_kg", i))}};
        });
        if (!record.contains("grist"))
            return;
        Record& grist = record["grist"];
        const double all = std::accumulate(grist.begin(), grist.end(), 0.0, [](double sum, const Record& part) {
            return sum + part.value("mass_kg", 0.0);
        });
        for (auto& part : grist)
            if (part.contains("mass_kg") && !part.contains("share") && all > 0)
                part["share"] = part["mass_kg"].get<double>() / all;
    }

    const NoteForm& form_;
    const ingredient::Pantry& pantry_;
    std::vector<std::optional<NoteField>> columns_;
};

Day dayOf(const Fact& fact) {
    return std::visit(
        []<class F>(const F& f) {
            if constexpr (std::is_same_v<F, SittingFact>)
                return f.sitting.on;
            else if constexpr (requires { Day{f.on}; })
                return Day{f.on};
            else
                return Day{};
        },
        fact);
}

/// What several tasters said on one day is one tasting.
class Sittings {
public:
    /// True: it is part of one that is there.
    bool join(NotedFacts& noted, const Fact& fact, std::size_t line) {
        const auto* sitting = std::get_if<SittingFact>(&fact);
        if (!sitting)
            return false;
        const auto [at, isNew] = places_.try_emplace({sitting->vessel, sitting->sitting.on}, noted.facts.size());
        if (isNew)
            return false;
        noted.lines[at->second].push_back(line);
        auto& whole = std::get<SittingFact>(noted.facts[at->second]).sitting;
        whole.scores.insert(whole.scores.end(), sitting->sitting.scores.begin(), sitting->sitting.scores.end());
        if (!sitting->sitting.note.empty())
            whole.note += (whole.note.empty() ? "" : "; ") + sitting->sitting.note;
        return true;
    }

private:
    std::map<std::pair<VesselName, Day>, std::size_t> places_;
};

NotedFacts byDay(NotedFacts noted) {
    std::vector<std::size_t> order(noted.facts.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return dayOf(noted.facts[a]) < dayOf(noted.facts[b]); });
    NotedFacts sorted;
    for (const auto i : order) {
        sorted.facts.push_back(std::move(noted.facts[i]));
        sorted.lines.push_back(std::move(noted.lines[i]));
    }
    sorted.rejected = std::move(noted.rejected);
    return sorted;
}

} // namespace

NotedFacts factsIn(const NoteTable& table, const NoteForm& form, const ingredient::Pantry& pantry) {
    const RecordMaker maker(form, pantry);
    NotedFacts noted;
    Sittings sittings;
    for (const auto& row : table.rows) {
        auto fact = maker.factOf(row);
        if (!fact) {
            noted.rejected.push_back({row.line, fact.error()});
        } else if (!sittings.join(noted, *fact, row.line)) {
            noted.facts.push_back(*std::move(fact));
            noted.lines.push_back({row.line});
        }
    }
    return byDay(std::move(noted));
}

} // namespace staveline::facts

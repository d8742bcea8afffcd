// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/note_fields.h"

#include "facts/csv_records.h"
#include "facts/fact_list.h"
#include "facts/field_kinds.h"
#include "quantity/text.h"
#include "quantity/words.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <cctype>
#include <fmt/format.h>
#include <set>

namespace staveline::facts {
namespace {

class NoteFieldLister {
public:
    std::vector<NoteField> fields;

    template <class T> void field(const Field& f, const T&) { add<T>(f); }
    template <class T> void number(const Field&, const T&) {}
    template <class E> void word(const Field& f, const E&, std::span<const std::string_view> words) {
        NoteField& made = add<std::string>(f);
        made.words.assign(words.begin(), words.end());
    }
    void extract(std::string_view name, const Plato&) { addBoth(name); }
    void gravity(std::string_view name, const std::optional<SpecificGravity>&) { addBoth(name); }
    void vessel(const Field& f, const std::string&) { add<std::string>(f); }
    void brew(const Field& f, const std::string&) { add<std::string>(f); }
    template <class T> void list(const Field&, const T&) {}

private:
    template <class T> NoteField& add(const Field& f) {
        fields.push_back({std::string(f.name), cellOf<T>(), f.low, f.high, f.required});
        if (f.name == turnField.name) // is given by the desk
            fields.pop_back();
        return fields.back();
    }
    template <class T> static constexpr NoteCell cellOf() {
        if constexpr (Optional<T>)
            return cellOf<typename T::value_type>();
        else if constexpr (std::is_same_v<T, Share>)
            return NoteCell::share;
        else if constexpr (QuantityLike<T> || std::is_same_v<T, double> || std::is_same_v<T, int>)
            return NoteCell::number;
        else if constexpr (std::is_same_v<T, Day>)
            return NoteCell::day;
        else if constexpr (std::is_same_v<T, bool>)
            return NoteCell::flag;
        else
            return NoteCell::text;
    }
    void addBoth(std::string_view name) {
        fields.push_back({std::string(name) + "_sg", NoteCell::number, .95, 1.2, false});
        fields.push_back({std::string(name) + "_p", NoteCell::number, -5, 45, false});
    }
};

void addScores(std::vector<NoteField>& fields) {
    fields.push_back({"taster", NoteCell::text, 0, 0, false});
    for (const auto& attribute : tasting::builtInSheet().attributes)
        for (const char* glass : {"_cold", "_cellar"})
            fields.push_back({attribute.code + glass, NoteCell::number, 0, 10, false});
}

void addRecipe(std::vector<NoteField>& fields) {
    const auto add = [&](std::string name, NoteCell cell, double low, double high) {
        fields.push_back({std::move(name), cell, low, high, false});
    };
    for (int i = 1; i <= mostGrains; ++i) {
        add(fmt::format("grain_{}", i), NoteCell::text, 0, 0);
        add(fmt::format("grain_{}_kg", i), NoteCell::number, 0, 100000);
        add(fmt::format("grain_{}_share", i), NoteCell::share, 0, 1);
    }
    for (int i = 1; i <= mostRests; ++i) {
        add(fmt::format("rest_{}_c", i), NoteCell::number, 20, 80);
        add(fmt::format("rest_{}_min", i), NoteCell::number, 0, 600);
    }
    for (int i = 1; i <= mostHops; ++i) {
        add(fmt::format("hop_{}", i), NoteCell::text, 0, 0);
        add(fmt::format("hop_{}_alpha", i), NoteCell::share, 0, .3);
        add(fmt::format("hop_{}_min", i), NoteCell::number, 0, 600);
    }
}

/// What happened to a vessel, day by day: the entries of its ledger, its tastings and brews.
template <class F>
inline constexpr bool
    isNoted = factTraits<F>.entry.has_value() || std::is_same_v<F, SittingFact> || std::is_same_v<F, BrewFact>;

/// "Gravity (SG)" -> "gravity", and what stood between the brackets -> "sg"; spaces and case do not count.
struct Heading {
    std::string words, unit;
};
Heading headingOf(std::string_view text) {
    Heading heading;
    bool inside = false;
    for (const char c : nameKey(text)) {
        if (c == '(' || c == '[')
            inside = true;
        else if (c == ')' || c == ']')
            inside = false;
        else if (c != '_')
            (inside ? heading.unit : heading.words) += c;
    }
    return heading;
}

bool isForeign(const std::string& unit) {
    static const std::set<std::string_view> foreign = {"f",   "°f", "gal", "usgal", "gallons", "hl",
                                                       "bbl", "oz", "lb",  "ml",    "g"};
    return foreign.contains(unit);
}

/// What headings call a field beside its own name: "facts.column.<field>" lists them.
std::vector<std::string> namesOf(const NoteField& field) {
    std::vector<std::string> names = {headingOf(field.name).words};
    const std::string key = "facts.column." + field.name;
    if (builtInTexts().has(key)) {
        const std::string_view all = builtInTexts().find(key);
        for (std::size_t at = 0; at < all.size();) {
            const auto end = std::min(all.find(", ", at), all.size());
            names.push_back(headingOf(all.substr(at, end - at)).words);
            at = end + 2;
        }
    }
    for (const auto& attribute : tasting::builtInSheet().attributes)
        if (field.name.starts_with(attribute.code + "_"))
            names.push_back(headingOf(attribute.name + field.name.substr(attribute.code.size())).words);
    return names;
}

std::string exampleOf(const NoteField& field) {
    static const std::map<std::string_view, std::string_view> examples = {
        {"on", "2026-03-02"},    {"at", "14:30"},
        {"gravity_sg", "1.004"}, {"ph", "3.35"},
        {"ta_g_l", "6.2"},       {"volume_l", "60.5"},
        {"temperature_c", "15"}, {"name", "Brew 1"},
        {"grain_1", "pilsner"},  {"grain_1_kg", "20"},
        {"rest_1_c", "66"},      {"rest_1_min", "60"},
        {"taster", "Rook"},      {"TA1_cold", "6.5"},
        {"what", "racked"},      {"measured_original_gravity_sg", "1.048"}};
    const auto at = examples.find(field.name);
    return at == examples.end() ? std::string() : std::string(at->second);
}

} // namespace

const std::vector<std::string>& noteKinds() {
    static const std::vector<std::string> kinds = [] {
        std::vector<std::string> all;
        forEachFact([&]<class F>(std::type_identity<F>) {
            if constexpr (isNoted<F>)
                all.emplace_back(kindOf<F>);
        });
        return all;
    }();
    return kinds;
}

std::vector<NoteField> noteFields(std::string_view kind) {
    NoteFieldLister lister;
    forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (isNoted<F>)
            if (kind == kindOf<F>)
                describe(lister, std::as_const(static_cast<const F&>(F{})));
    });
    if (kind == kindOf<SittingFact>)
        addScores(lister.fields);
    if (kind == kindOf<BrewFact>)
        addRecipe(lister.fields);
    return std::move(lister.fields);
}

std::vector<std::string> guessFields(std::string_view kind, const std::vector<std::string>& headings) {
    std::map<std::string, std::string> byName;
    for (const auto& field : noteFields(kind))
        for (auto& name : namesOf(field))
            byName.try_emplace(std::move(name), field.name);
    std::vector<std::string> guesses;
    std::set<std::string> taken;
    for (const auto& text : headings) {
        const Heading heading = headingOf(text);
        auto at = byName.find(heading.words + heading.unit); // "extract (p)"
        if (at == byName.end())
            at = byName.find(heading.words);
        const bool fits = at != byName.end() && !isForeign(heading.unit) && taken.insert(at->second).second;
        guesses.push_back(fits ? at->second : "");
    }
    return guesses;
}

std::string noteTemplate(std::string_view kind) {
    std::vector<std::optional<std::string>> headings, example;
    for (const auto& field : noteFields(kind)) {
        headings.emplace_back(field.name);
        const std::string cell = field.name == "vessel" ? "Plover" : exampleOf(field);
        example.push_back(cell.empty() ? std::nullopt : std::optional(cell));
    }
    return csvLine(headings) + csvLine(example);
}

} // namespace staveline::facts

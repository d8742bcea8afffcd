// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/note_fields.h"

#include "facts/csv_records.h"
#include "facts/fact_list.h"
#include "facts/field_kinds.h"
#include "quantity/density.h"
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
    void extract(std::string_view name, const Plato&) {
        addBoth(name, {toGravity(Plato{extracts.low}).sg, toGravity(Plato{extracts.high}).sg}, extracts);
    }
    void gravity(std::string_view name, const std::optional<SpecificGravity>&) {
        addBoth(name, gravities,
                {toPlato(SpecificGravity{gravities.low}).p, toPlato(SpecificGravity{gravities.high}).p});
    }
    void vessel(const Field& f, const std::string&) { add<std::string>(f); }
    void brew(const Field& f, const std::string&) { add<std::string>(f); }
    template <class T> void list(const Field&, const T&) {}

private:
    template <class T> NoteField& add(const Field& f) {
        fields.push_back({std::string(f.name), cellOf<T>(), f.low, f.high, f.required, unitOf<T>(f)});
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
    template <class T> static constexpr UnitKind unitOf(const Field& f) {
        if constexpr (Optional<T>)
            return unitOf<typename T::value_type>(f);
        else if constexpr (QuantityLike<T>)
            return T::kind;
        else
            return f.unit;
    }
    void addBoth(std::string_view name, Range sg, Range p) {
        fields.push_back({std::string(name) + "_sg", NoteCell::number, sg.low, sg.high, false, SpecificGravity::kind});
        fields.push_back({std::string(name) + "_p", NoteCell::number, p.low, p.high, false, Plato::kind});
    }
};

/// A column for one field of an item in a list.
template <class Item> NoteField partOf(std::string_view field, std::string column) {
    NoteFieldLister lister;
    const Item item{};
    describe(lister, item);
    auto found = *std::find_if(lister.fields.begin(), lister.fields.end(),
                               [&](const NoteField& each) { return each.name == field; });
    found.name = std::move(column);
    found.required = false;
    return found;
}

void addScores(std::vector<NoteField>& fields) {
    fields.push_back(partOf<tasting::Score>("taster", "taster"));
    for (const auto& attribute : tasting::builtInSheet().attributes)
        for (const std::string glass : {"cold", "cellar"})
            fields.push_back(partOf<tasting::Score>(glass, attribute.code + "_" + glass));
}

void addRecipe(std::vector<NoteField>& fields) {
    using brewing::GristPart, brewing::MashStep, brewing::HopAddition;
    for (int i = 1; i <= mostGrains; ++i) {
        fields.push_back(partOf<GristPart>("grain", fmt::format("grain_{}", i)));
        fields.push_back(partOf<GristPart>("mass_kg", fmt::format("grain_{}_kg", i)));
        fields.push_back(partOf<GristPart>("share", fmt::format("grain_{}_share", i)));
    }
    for (int i = 1; i <= mostRests; ++i) {
        fields.push_back(partOf<MashStep>("temperature_c", fmt::format("rest_{}_c", i)));
        fields.push_back(partOf<MashStep>("minutes", fmt::format("rest_{}_min", i)));
    }
    for (int i = 1; i <= mostHops; ++i) {
        fields.push_back(partOf<HopAddition>("name", fmt::format("hop_{}", i)));
        fields.push_back(partOf<HopAddition>("alpha_share", fmt::format("hop_{}_alpha", i)));
        fields.push_back(partOf<HopAddition>("minutes", fmt::format("hop_{}_min", i)));
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

/// What a text lists, each without spaces and case.
std::vector<std::string> listedIn(const std::string& key) {
    std::vector<std::string> names;
    if (!builtInTexts().has(key))
        return names;
    const std::string_view all = builtInTexts().find(key);
    for (std::size_t at = 0; at < all.size();) {
        const auto end = std::min(all.find(", ", at), all.size());
        names.push_back(headingOf(all.substr(at, end - at)).words);
        at = end + 2;
    }
    return names;
}

/// The text that lists how the unit of a number is written; empty: it is never written in brackets.
std::string_view unitKey(UnitKind kind) {
    static const std::map<UnitKind, std::string_view> keys = {{UnitKind::volume, "facts.unit.volume"},
                                                              {UnitKind::mass, "facts.unit.mass"},
                                                              {UnitKind::temperature, "facts.unit.temperature"},
                                                              {UnitKind::minutes, "facts.unit.minutes"},
                                                              {UnitKind::days, "facts.unit.days"},
                                                              {UnitKind::age, "facts.unit.days"},
                                                              {UnitKind::years, "facts.unit.years"},
                                                              {UnitKind::extract, "facts.unit.extract"},
                                                              {UnitKind::gravity, "facts.unit.gravity"},
                                                              {UnitKind::concentration, "facts.unit.concentration"},
                                                              {UnitKind::bitterness, "facts.unit.bitterness"},
                                                              {UnitKind::ph, "facts.unit.ph"},
                                                              {UnitKind::thickness, "facts.unit.thickness"}};
    const auto at = keys.find(kind);
    return at == keys.end() ? std::string_view() : at->second;
}

/// What stands in brackets after a number is its unit.
bool isInUnit(const NoteField& field, const std::string& unit) {
    if (unit.empty() || (field.cell != NoteCell::number && field.cell != NoteCell::share))
        return true;
    const auto known = listedIn(std::string(unitKey(field.unit)));
    return std::find(known.begin(), known.end(), unit) != known.end();
}

/// What headings call a field beside its own name: "facts.column.<field>" lists them.
std::vector<std::string> namesOf(const NoteField& field) {
    std::vector<std::string> names = listedIn("facts.column." + field.name);
    names.insert(names.begin(), headingOf(field.name).words);
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
    const auto fields = noteFields(kind);
    std::map<std::string, const NoteField*> byName;
    for (const auto& field : fields)
        for (auto& name : namesOf(field))
            byName.try_emplace(std::move(name), &field);
    std::set<std::string> taken;
    const auto guess = [&](const std::string& text) -> std::string {
        const Heading heading = headingOf(text);
        auto at = byName.find(heading.words + heading.unit); // "gravity (plato)"
        if (at == byName.end()) {
            at = byName.find(heading.words);
            if (at == byName.end() || !isInUnit(*at->second, heading.unit))
                return "";
        }
        return taken.insert(at->second->name).second ? at->second->name : "";
    };
    std::vector<std::string> guesses;
    std::transform(headings.begin(), headings.end(), std::back_inserter(guesses), guess);
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

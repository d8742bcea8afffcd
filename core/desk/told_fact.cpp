// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/told_fact.h"

#include "facts/fields.h"
#include "facts/kept_words.h"
#include "quantity/parse.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <array>

namespace staveline::desk {
namespace {

using facts::Field;

template <class T> inline constexpr bool isOptional = false;
template <class T> inline constexpr bool isOptional<std::optional<T>> = true;

/// "kettle_loss_l" -> "kettle loss": the unit stands with the value.
std::string label(std::string_view name) {
    constexpr std::array<std::string_view, 16> units = {"_mg_kg", "_ebc", "_wk",  "_mg_l_year", "_c_min", "_g_l",
                                                        "_l_kg",  "_l_h", "_ibu", "_pct",       "_kg",    "_min",
                                                        "_sg",    "_d",   "_c",   "_l"};
    const auto unit = std::find_if(units.begin(), units.end(), [&](auto each) { return name.ends_with(each); });
    if (unit != units.end())
        name.remove_suffix(unit->size());
    std::string words(name);
    std::replace(words.begin(), words.end(), '_', ' ');
    for (const std::string_view sign : {"ph", "ta"}) // "mash pH", "pre sour TA"
        if (words == sign || words.ends_with(" " + std::string(sign)))
            words.replace(words.size() - 2, 2, sign == "ph" ? "pH" : "TA");
    return words;
}

template <class Named, class Key> std::string nameIn(const std::vector<Named>& all, Key key, const std::string& id) {
    const auto at = std::find_if(all.begin(), all.end(), [&](const Named& each) { return each.*key == id; });
    return at == all.end() ? id : at->name;
}

class FactTeller {
public:
    FactTeller(const ingredient::Pantry& pantry, const DisplayUnits& units) : pantry_(pantry), units_(units) {}
    std::vector<std::pair<std::string, std::string>> lines;
    std::vector<sheet::Block> lists;

    template <class T> void field(const Field& f, const T& value) {
        if constexpr (isOptional<T>) {
            if (value)
                field(f, *value);
        } else if constexpr (Quantity<T>) {
            add(f, show(Amount{value}, units_));
        } else if constexpr (std::is_same_v<T, double>) {
            add(f, f.unit == UnitKind::none ? show(shortest(value)) : show(Amount{f.unit, value}, units_));
        } else if constexpr (std::is_same_v<T, Day>) {
            add(f, dayInWords(value));
        } else if constexpr (std::is_same_v<T, bool>) {
            add(f, render(say(value ? "desk.export.yes" : "desk.export.no")));
        } else if constexpr (std::is_same_v<T, int>) {
            if (f.name != facts::turnField.name)
                add(f, std::to_string(value));
        } else {
            add(f, readable(f, value));
        }
    }
    template <class E> void word(const Field& f, const E& value, std::span<const std::string_view> words) {
        add(f, std::string(words[static_cast<std::size_t>(value)]));
    }
    template <class E>
    void word(const Field& f, const std::optional<E>& value, std::span<const std::string_view> words) {
        if (value)
            word(f, *value, words);
    }
    void extract(std::string_view name, const Plato& value) { add(Field{.name = name}, show(Amount{value}, units_)); }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value)
            add(Field{.name = name}, show(Amount{*value}, units_));
    }
    void vessel(const Field& f, const std::string& value) {
        if (f.name != "vessel")
            add(f, value);
    }
    void brew(const Field& f, const std::string& value) { add(f, value); }
    void list(const Field& f, const std::vector<std::string>& items) {
        std::string all;
        for (const auto& item : items)
            all += (all.empty() ? "" : "; ") + facts::toldWords(item, units_);
        add(f, all);
    }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        if (items.empty())
            return;
        lists.emplace_back(sheet::Heading{3, label(f.name)});
        lists.emplace_back(tableOf(items));
    }
    template <class T> void nested(const Field&, const T& value) { facts::describe(*this, value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }

private:
    void add(const Field& f, std::string words) {
        if (!words.empty())
            lines.emplace_back(label(f.name), std::move(words));
    }
    /// The name a brewer knows, in the place of the program's own word.
    [[nodiscard]] std::string readable(const Field& f, const std::string& value) const {
        if (f.name == "grain" || f.name == "sugar")
            return nameIn(pantry_.grains(), &ingredient::Grain::id, value);
        if (f.name == "yeast")
            return nameIn(pantry_.yeasts(), &ingredient::Yeast::id, value);
        if (f.name == "attribute")
            return nameIn(tasting::builtInSheet().attributes, &tasting::Attribute::code, value);
        return value;
    }
    template <class T> sheet::Table tableOf(const std::vector<T>& items) const {
        sheet::Table table;
        for (const auto& item : items) {
            FactTeller teller(pantry_, units_);
            facts::describe(teller, item);
            auto& row = table.rows.emplace_back();
            for (auto& [name, words] : teller.lines) {
                const auto at = std::find(table.columns.begin(), table.columns.end(), name);
                const auto place = static_cast<std::size_t>(at - table.columns.begin());
                if (at == table.columns.end())
                    table.columns.push_back(name);
                row.resize(std::max(row.size(), place + 1));
                row[place] = words;
            }
        }
        for (auto& row : table.rows)
            row.resize(table.columns.size());
        return table;
    }

    const ingredient::Pantry& pantry_;
    DisplayUnits units_;
};

} // namespace

std::vector<sheet::Block> toldFact(const facts::Fact& fact, const ingredient::Pantry& pantry,
                                   const DisplayUnits& units) {
    FactTeller teller(pantry, units);
    std::visit([&](const auto& f) { facts::describe(teller, f); }, fact);
    sheet::Table fields{{render(say("desk.export.field")), render(say("desk.export.value"))}, {}, {}};
    for (auto& [name, words] : teller.lines)
        if (name != "on") // stands in the heading
            fields.rows.push_back({name, words});
    std::vector<sheet::Block> blocks;
    if (!fields.rows.empty())
        blocks.emplace_back(std::move(fields));
    std::move(teller.lists.begin(), teller.lists.end(), std::back_inserter(blocks));
    return blocks;
}

} // namespace staveline::desk

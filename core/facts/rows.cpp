// SPDX-License-Identifier: GPL-3.0-or-later
// Facts as rows of the book's tables.
#include "facts/codec.h"
#include "facts/field_kinds.h"
#include "ingredient/nearest.h"
#include "quantity/day_limits.h"
#include "quantity/words.h"

#include <algorithm>
#include <cmath>

namespace staveline::facts {
namespace {

class ColumnLister {
public:
    std::vector<book::Column> columns;

    template <class T> void field(const Field& f, T&) { add(f, typeOf<T>(), isOptional<T>()); }
    template <class T> void number(const Field& f, T&) { add(f, book::ColumnType::integer, false); }
    template <class E> void word(const Field& f, E&, std::span<const std::string_view>) {
        add(f, book::ColumnType::text, isOptional<E>());
    }
    void extract(std::string_view name, Plato&) {
        columns.push_back({std::string(name) + "_p", book::ColumnType::real, true, 0.0, 40.0, {}});
    }
    void gravity(std::string_view name, std::optional<SpecificGravity>&) {
        columns.push_back({std::string(name) + "_sg", book::ColumnType::real, false, 0.95, 1.2, {}});
    }
    void vessel(const Field& f, std::string&) { reference(f, "vessel"); }
    void brew(const Field& f, std::string&) { reference(f, "brew"); }
    template <class T> void list(const Field& f, std::vector<T>&) { nestedText(f); }
    template <class T> void nested(const Field& f, T&) { nestedText(f); }
    template <class T> void object(const Field& f, std::optional<T>&) { nestedText(f); }

private:
    template <class T> static constexpr bool isOptional() { return Optional<T>; }
    template <class T> static constexpr book::ColumnType typeOf() {
        if constexpr (Optional<T>)
            return typeOf<typename T::value_type>();
        else if constexpr (QuantityLike<T> || std::is_same_v<T, double>)
            return book::ColumnType::real;
        else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, int>)
            return book::ColumnType::integer;
        else if constexpr (std::is_same_v<T, Day>)
            return book::ColumnType::day;
        else
            return book::ColumnType::text;
    }
    void add(const Field& f, book::ColumnType type, bool nullable) {
        book::Column column{std::string(f.name), type, !nullable && !f.later, {}, {}, {}};
        if (std::isfinite(f.low))
            column.low = f.low;
        if (std::isfinite(f.high))
            column.high = f.high;
        columns.push_back(std::move(column));
    }
    void reference(const Field& f, std::string table) {
        columns.push_back({std::string(f.name), book::ColumnType::integer, f.required, {}, {}, std::move(table)});
    }
    void nestedText(const Field& f) {
        columns.push_back({std::string(f.name), book::ColumnType::text, false, {}, {}, {}});
    }
};

class RowWriter {
public:
    explicit RowWriter(const Names& names) : names_(names) {}
    std::vector<book::Value> values;
    std::optional<Fault> fault;

    template <class T> void field(const Field& f, const T& value) {
        if constexpr (Optional<T>) {
            value ? field(f, *value) : void(values.emplace_back(std::monostate{}));
        } else if constexpr (QuantityLike<T>) {
            values.emplace_back(raw(value));
        } else if constexpr (std::is_same_v<T, Day>) {
            values.emplace_back(isoDay(value));
        } else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, int>) {
            values.emplace_back(std::int64_t{value});
        } else {
            values.emplace_back(value);
        }
    }
    template <class T> void number(const Field&, const T& value) {
        values.emplace_back(static_cast<std::int64_t>(value));
    }
    template <class E> void word(const Field&, const E& value, std::span<const std::string_view> words) {
        values.emplace_back(std::string(words[static_cast<std::size_t>(value)]));
    }
    template <class E>
    void word(const Field& f, const std::optional<E>& value, std::span<const std::string_view> words) {
        value ? word(f, *value, words) : void(values.emplace_back(std::monostate{}));
    }
    void extract(std::string_view, const Plato& value) { values.emplace_back(value.p); }
    void gravity(std::string_view, const std::optional<SpecificGravity>& value) {
        value ? void(values.emplace_back(value->sg)) : void(values.emplace_back(std::monostate{}));
    }
    void vessel(const Field& f, const std::string& value) {
        reference(f, value, names_.vessels, "desk.unknown_vessel");
    }
    void brew(const Field& f, const std::string& value) { reference(f, value, names_.brews, "desk.unknown_brew"); }
    template <class T> void list(const Field&, const std::vector<T>& items) { values.emplace_back(nestedText(items)); }
    template <class T> void nested(const Field&, const T& value) { values.emplace_back(nestedText(value)); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        value ? nested(f, *value) : void(values.emplace_back(std::monostate{}));
    }

private:
    void reference(const Field& f, const std::string& value, const std::map<std::string, book::RowId, std::less<>>& ids,
                   std::string key) {
        if (value.empty()) {
            values.emplace_back(std::monostate{});
            return;
        }
        const auto at = ids.find(value);
        if (at != ids.end()) {
            values.emplace_back(at->second);
            return;
        }
        std::vector<std::string> known;
        known.reserve(ids.size());
        for (const auto& [name, unused] : ids)
            known.push_back(name);
        if (!fault)
            fault = Fault{FaultKind::input, "/" + std::string(f.name), say(key).with("name", excerpt(value)),
                          known.empty() ? say(key + ".none") : offerName(value, known)};
        values.emplace_back(std::monostate{});
    }
    const Names& names_;
};

class RowReader {
public:
    RowReader(const std::vector<book::Value>& values, const Names& names) : values_(values), names_(names) {}

    template <class T> void field(const Field&, T& value) { take(next(), value); }
    template <class T> void number(const Field&, T& value) {
        int plain = 0;
        take(next(), plain);
        value = static_cast<T>(plain);
    }
    template <class E> void word(const Field&, E& value, std::span<const std::string_view> words) {
        std::string text;
        take(next(), text);
        const auto at = std::find(words.begin(), words.end(), text);
        if (at != words.end())
            value = static_cast<E>(at - words.begin());
    }
    template <class E> void word(const Field& f, std::optional<E>& value, std::span<const std::string_view> words) {
        if (at_ < values_.size() && std::holds_alternative<std::monostate>(values_[at_]))
            next();
        else
            word(f, value.emplace(), words);
    }
    void extract(std::string_view, Plato& value) { take(next(), value); }
    void gravity(std::string_view, std::optional<SpecificGravity>& value) { take(next(), value); }
    void vessel(const Field&, std::string& value) { reference(value, names_.vesselNames); }
    void brew(const Field&, std::string& value) { reference(value, names_.brewNames); }
    template <class T> void list(const Field&, std::vector<T>& items) { readText(items); }
    template <class T> void nested(const Field&, T& value) { readText(value); }
    template <class T> void object(const Field& f, std::optional<T>& value) {
        if (std::holds_alternative<std::monostate>(values_[at_])) {
            ++at_;
            return;
        }
        value.emplace();
        nested(f, *value);
    }

private:
    const book::Value& next() {
        static const book::Value nothing;
        return at_ < values_.size() ? values_[at_++] : nothing;
    }
    template <class T> void readText(T& value) {
        if (const auto* text = std::get_if<std::string>(&next()))
            readNested(*text, value);
    }
    template <class T> static void take(const book::Value& from, T& value) {
        if constexpr (Optional<T>) {
            if (!std::holds_alternative<std::monostate>(from))
                take(from, value.emplace());
        } else if constexpr (QuantityLike<T>) {
            if (const auto* real = std::get_if<double>(&from))
                value = T{*real};
        } else if constexpr (std::is_same_v<T, double>) {
            if (const auto* real = std::get_if<double>(&from))
                value = *real;
        } else if constexpr (std::is_same_v<T, bool> || std::is_same_v<T, int>) {
            if (const auto* whole = std::get_if<std::int64_t>(&from))
                value = static_cast<T>(*whole);
        } else if constexpr (std::is_same_v<T, Day>) {
            if (const auto* text = std::get_if<std::string>(&from))
                value = storedDay(*text).value_or(Day{});
        } else if (const auto* text = std::get_if<std::string>(&from)) {
            value = *text;
        }
    }
    void reference(std::string& value, const std::map<book::RowId, std::string>& names) {
        const auto* id = std::get_if<std::int64_t>(&next());
        const auto at = id ? names.find(*id) : names.end();
        if (at != names.end())
            value = at->second;
    }
    const std::vector<book::Value>& values_;
    const Names& names_;
    std::size_t at_ = 0;
};

template <class F> book::TableSpec tableFor() {
    ColumnLister lister;
    F fact{};
    describe(lister, fact);
    book::TableSpec table{std::string(tableOf<F>), std::move(lister.columns), {}, {}};
    for (const auto& column : table.columns) {
        if (column.name == "vessel")
            table.indexes.push_back({"vessel", "on"});
        if (column.name == "from" || column.name == "brew")
            table.indexes.push_back({column.name});
    }
    return table;
}

} // namespace

namespace {

using Ids = std::map<std::string, book::RowId, std::less<>>;
using Keys = std::map<std::string, std::string, std::less<>>;

std::string likeIn(const Keys& keys, const Ids& inUse, std::string_view name) {
    const auto at = keys.find(nameKey(name));
    return at != keys.end() && inUse.contains(at->second) ? at->second : std::string();
}

} // namespace

void Names::addVessel(book::RowId id, const std::string& name) {
    const auto old = vesselNames.find(id);
    if (old != vesselNames.end())
        vessels.erase(old->second);
    vessels[name] = id;
    vesselNames[id] = name;
    vesselKeys_[nameKey(name)] = name;
}
void Names::addBrew(book::RowId id, const std::string& name) {
    brews[name] = id;
    brewNames[id] = name;
    brewKeys_[nameKey(name)] = name;
}
std::string Names::vesselLike(std::string_view name) const {
    return likeIn(vesselKeys_, vessels, name);
}
std::string Names::brewLike(std::string_view name) const {
    return likeIn(brewKeys_, brews, name);
}

Message offerName(std::string_view typed, const std::vector<std::string>& known) {
    std::vector<ingredient::Known> entries;
    entries.reserve(known.size());
    for (const auto& name : known)
        entries.push_back({name, name});
    return ingredient::offer(typed, entries);
}

template <class F> Result<std::vector<book::Value>> toRow(const F& fact, const Names& names) {
    RowWriter writer(names);
    describe(writer, fact);
    if (writer.fault)
        return fail(*writer.fault);
    return std::move(writer.values);
}

template <class F> F fromRow(const book::Row& row, const Names& names) {
    F fact{};
    RowReader reader(row.values, names);
    describe(reader, fact);
    return fact;
}

#define STAVELINE_STORED(F, ...)                                                                                       \
    template Result<std::vector<book::Value>> toRow(const F&, const Names&);                                           \
    template F fromRow(const book::Row&, const Names&);
STAVELINE_FACTS(STAVELINE_STORED)
STAVELINE_STORED(ingredient::Grain)
STAVELINE_STORED(ingredient::Yeast)
#undef STAVELINE_STORED

const book::Schema& cellarSchema() {
    static const book::Schema schema = [] {
        book::Schema s{1, tablesMinor, {}};
        forEachFact([&]<class F>(std::type_identity<F>) {
            if constexpr (factTraits<F>.stored())
                s.tables.push_back(tableFor<F>());
        });
        s.tables.push_back(tableFor<ingredient::Grain>());
        s.tables.push_back(tableFor<ingredient::Yeast>());
        for (auto& table : s.tables) {
            if (table.name == "vessel" || table.name == "brew")
                table.unique.push_back({"name"});
            if (table.name == "grain" || table.name == "yeast")
                table.unique.push_back({"ingredient"});
        }
        return s;
    }();
    return schema;
}

} // namespace staveline::facts

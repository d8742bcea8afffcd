// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/codec.h"

#include "desk/fields.h"
#include "desk/json.h"
#include "desk/sample.h"
#include "quantity/density.h"
#include "quantity/parse.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>
#include <type_traits>

namespace staveline {
namespace {

using Json = nlohmann::ordered_json;

template <class T> struct IsOptional : std::false_type {};
template <class T> struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
concept Optional = IsOptional<std::remove_const_t<T>>::value;
template <class T>
concept QuantityLike = Quantity<std::remove_const_t<T>>;

std::string pathOf(const std::string& base, std::string_view name) {
    return base + "/" + std::string(name);
}

std::string listed(std::span<const std::string_view> words) {
    std::string text;
    for (auto word : words)
        text += (text.empty() ? "" : ", ") + std::string(word);
    return text;
}

Fault outOfRange(const std::string& path, const Field& field, double value) {
    return {FaultKind::input, path, say("desk.out_of_range").with("value", Number{value, 3}),
            say("desk.out_of_range.remedy").with("low", Number{field.low, 3}).with("high", Number{field.high, 3})};
}

// --- checking -----------------------------------------------------------------------------------------------------

/// Visits a fact and keeps the first fault.
class Checker {
public:
    explicit Checker(std::string path = {}) : path_(std::move(path)) {}
    std::optional<Fault> fault;

    template <class T> void field(const Field& f, const T& value) {
        if (fault)
            return;
        if constexpr (Optional<T>) {
            if (value)
                field(f, *value);
        } else if constexpr (QuantityLike<T>) {
            number(f, raw(value));
        } else if constexpr (std::is_same_v<T, std::string>) {
            text(f, value);
        } else if constexpr (std::is_arithmetic_v<T> && !std::is_same_v<T, bool>) {
            number(f, static_cast<double>(value));
        }
    }
    template <class T> void number(const Field& f, const T& value) {
        if constexpr (std::is_enum_v<T>) {
            (void)f;
        } else if (!(value >= f.low && value <= f.high) && !fault) {
            fault = outOfRange(pathOf(path_, f.name), f, value);
        }
    }
    template <class E> void word(const Field&, const E&, std::span<const std::string_view>) {}
    void extract(std::string_view name, const Plato& value) { number(Field{std::string_view(name), 0, 40}, value.p); }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value && !fault && (value->sg < 0.95 || value->sg > 1.2))
            fault =
                Fault{FaultKind::input, pathOf(path_, std::string(name) + "_sg"),
                      say("desk.gravity_range").with("value", Number{value->sg, 3}), say("desk.gravity_range.remedy")};
    }
    void vessel(const Field& f, const std::string& value) { text(f, value); }
    void brew(const Field& f, const std::string& value) { text(f, value); }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        for (std::size_t i = 0; i < items.size() && !fault; ++i)
            nestedAt(pathOf(path_, f.name) + "/" + std::to_string(i), items[i]);
    }
    template <class T> void nested(const Field& f, const T& value) { nestedAt(pathOf(path_, f.name), value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }

private:
    void text(const Field& f, const std::string& value) {
        if (fault)
            return;
        if (f.required && value.empty())
            fault = Fault{FaultKind::input, pathOf(path_, f.name),
                          say("desk.missing").with("field", std::string(f.name)), say("desk.missing.remedy")};
        else if (!f.oneOf.empty() && std::find(f.oneOf.begin(), f.oneOf.end(), value) == f.oneOf.end())
            fault = Fault{FaultKind::input, pathOf(path_, f.name), say("desk.unknown_word").with("value", value),
                          say("desk.unknown_word.remedy").with("allowed", listed(f.oneOf))};
    }
    template <class T> void nestedAt(const std::string& path, const T& value) {
        if constexpr (!std::is_same_v<T, std::string>) {
            Checker inner(path);
            describe(inner, value);
            if (inner.fault && !fault)
                fault = inner.fault;
        }
    }
    std::string path_;
};

// --- JSON out -----------------------------------------------------------------------------------------------------

class JsonWriter {
public:
    Json json = Json::object();

    template <class T> void field(const Field& f, const T& value) {
        if constexpr (Optional<T>) {
            if (value)
                field(f, *value);
        } else if constexpr (QuantityLike<T>) {
            json[f.name] = raw(value);
        } else if constexpr (std::is_same_v<T, Day>) {
            json[f.name] = isoDay(value);
        } else {
            json[f.name] = value;
        }
    }
    template <class T> void number(const Field& f, const T& value) { json[f.name] = static_cast<int>(value); }
    template <class E> void word(const Field& f, const E& value, std::span<const std::string_view> words) {
        json[f.name] = words[static_cast<std::size_t>(value)];
    }
    void extract(std::string_view name, const Plato& value) { json[std::string(name) + "_p"] = value.p; }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value)
            json[std::string(name) + "_sg"] = value->sg;
    }
    void vessel(const Field& f, const std::string& value) { reference(f, value); }
    void brew(const Field& f, const std::string& value) { reference(f, value); }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        Json array = Json::array();
        for (const auto& item : items)
            array.push_back(element(item));
        json[f.name] = std::move(array);
    }
    template <class T> void nested(const Field& f, const T& value) { json[f.name] = element(value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }
    template <class T> static Json element(const T& value) {
        if constexpr (std::is_same_v<T, std::string>) {
            return value;
        } else {
            JsonWriter inner;
            describe(inner, value);
            return inner.json;
        }
    }

private:
    void reference(const Field& f, const std::string& value) {
        if (!value.empty())
            json[f.name] = value;
    }
};

// --- JSON in ------------------------------------------------------------------------------------------------------

class JsonReader {
public:
    JsonReader(const Json& json, std::string path) : json_(json), path_(std::move(path)) {}
    std::optional<Fault> fault;

    template <class T> void field(const Field& f, T& value) {
        if constexpr (Optional<T>) {
            const Json* found = take(f.name, false);
            if (!found || found->is_null())
                return;
            typename T::value_type inner{};
            read(*found, f, inner);
            value = inner;
        } else if (const Json* found = take(f.name, f.required)) {
            read(*found, f, value);
        }
    }
    template <class T> void number(const Field& f, T& value) {
        int plain = static_cast<int>(value);
        field(f, plain);
        value = static_cast<T>(plain);
    }
    template <class E> void word(const Field& f, E& value, std::span<const std::string_view> words) {
        std::string text{words[static_cast<std::size_t>(value)]};
        field(f, text);
        const auto at = std::find(words.begin(), words.end(), text);
        if (at != words.end())
            value = static_cast<E>(at - words.begin());
        else
            set({FaultKind::input, pathOf(path_, f.name), say("desk.unknown_word").with("value", text),
                 say("desk.unknown_word.remedy").with("allowed", listed(words))});
    }
    void extract(std::string_view name, Plato& value) {
        std::optional<SpecificGravity> gravity;
        field(Field{.name = keep(std::string(name) + "_p")}, value);
        field(Field{.name = keep(std::string(name) + "_sg")}, gravity);
        if (gravity)
            fromGravity(std::string(name) + "_sg", *gravity, [&] { value = toPlato(*gravity); });
    }
    void gravity(std::string_view name, std::optional<SpecificGravity>& value) {
        std::optional<Plato> extract;
        field(Field{.name = keep(std::string(name) + "_sg")}, value);
        field(Field{.name = keep(std::string(name) + "_p")}, extract);
        if (value)
            fromGravity(std::string(name) + "_sg", *value, [] {});
        else if (extract)
            value = toGravity(*extract);
    }
    void vessel(const Field& f, std::string& value) { field(f, value); }
    void brew(const Field& f, std::string& value) { field(f, value); }
    template <class T> void list(const Field& f, std::vector<T>& items) {
        const Json* found = take(f.name, f.required);
        if (!found)
            return;
        if (!found->is_array())
            return wrongType(f, "desk.type.list");
        items.clear();
        for (std::size_t i = 0; i < found->size() && !fault; ++i)
            items.push_back(element<T>((*found)[i], pathOf(path_, f.name) + "/" + std::to_string(i)));
    }
    template <class T> void nested(const Field& f, T& value) {
        if (const Json* found = take(f.name, f.required))
            value = element<T>(*found, pathOf(path_, f.name));
    }
    template <class T> void object(const Field& f, std::optional<T>& value) {
        const Json* found = take(f.name, false);
        if (found && !found->is_null())
            value = element<T>(*found, pathOf(path_, f.name));
    }
    /// Call last: what was not asked for is unknown.
    void finish() {
        for (const auto& [key, unused] : json_.items())
            if (!known_.contains(key))
                set({FaultKind::input, pathOf(path_, key), say("desk.unknown_field").with("field", key),
                     say("desk.unknown_field.remedy")
                         .with("nearest", nearestName(key, {known_.begin(), known_.end()}))});
    }
    void allow(std::string_view name) { known_.emplace(name); }

private:
    void set(Fault found) {
        if (!fault)
            fault = std::move(found);
    }
    void wrongType(const Field& f, std::string wanted) {
        set({FaultKind::input, pathOf(path_, f.name), say("desk.wrong_type").with("field", std::string(f.name)),
             say(std::move(wanted))});
    }
    /// A view that lives as long as the reader.
    std::string_view keep(std::string name) { return *known_.insert(std::move(name)).first; }
    const Json* take(std::string_view name, bool required) {
        known_.emplace(name);
        const auto at = json_.find(std::string(name));
        if (at != json_.end())
            return &*at;
        if (required)
            set({FaultKind::input, pathOf(path_, name), say("desk.missing").with("field", std::string(name)),
                 say("desk.missing.remedy")});
        return nullptr;
    }
    template <class T> void read(const Json& json, const Field& f, T& value) {
        if constexpr (std::is_same_v<T, bool>) {
            json.is_boolean() ? void(value = json.get<bool>()) : wrongType(f, "desk.type.yes_no");
        } else if constexpr (QuantityLike<T>) {
            json.is_number() ? void(value = T{json.get<double>()}) : wrongType(f, "desk.type.number");
        } else if constexpr (std::is_same_v<T, int>) {
            json.is_number_integer() ? void(value = json.get<int>()) : wrongType(f, "desk.type.whole_number");
        } else if constexpr (std::is_same_v<T, double>) {
            json.is_number() ? void(value = json.get<double>()) : wrongType(f, "desk.type.number");
        } else if constexpr (std::is_same_v<T, Day>) {
            readDay(json, f, value);
        } else {
            json.is_string() ? void(value = json.get<std::string>()) : wrongType(f, "desk.type.text");
        }
    }
    void readDay(const Json& json, const Field& f, Day& value) {
        if (!json.is_string())
            return wrongType(f, "desk.type.day");
        if (auto day = parseDay(json.get<std::string>(), pathOf(path_, f.name)))
            value = *day;
        else
            set(day.error());
    }
    template <class Then> void fromGravity(const std::string& name, SpecificGravity gravity, Then then) {
        if (gravity.sg > 900 && gravity.sg < 1300)
            set({FaultKind::input, pathOf(path_, name),
                 say("desk.gravity_thousand").with("value", Number{gravity.sg, 0}),
                 say("desk.gravity_thousand.remedy").with("instead", SpecificGravity{gravity.sg / 1000})});
        else
            then();
    }
    template <class T> T element(const Json& json, const std::string& path) {
        T value{};
        if constexpr (std::is_same_v<T, std::string>) {
            json.is_string()
                ? void(value = json.get<std::string>())
                : set({FaultKind::input, path, say("desk.wrong_type").with("field", path), say("desk.type.text")});
        } else if (!json.is_object()) {
            set({FaultKind::input, path, say("desk.wrong_type").with("field", path), say("desk.type.object")});
        } else {
            JsonReader inner(json, path);
            describe(inner, value);
            inner.finish();
            if (inner.fault)
                set(*inner.fault);
        }
        return value;
    }

    const Json& json_;
    std::string path_;
    std::set<std::string, std::less<>> known_;
};

// --- table columns --------------------------------------------------------------------------------------------------

class ColumnLister {
public:
    std::vector<book::Column> columns;

    template <class T> void field(const Field& f, T&) { add(f, typeOf<T>(), isOptional<T>()); }
    template <class T> void number(const Field& f, T&) { add(f, book::ColumnType::integer, false); }
    template <class E> void word(const Field& f, E&, std::span<const std::string_view>) {
        add(f, book::ColumnType::text, false);
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
        else
            return book::ColumnType::text;
    }
    void add(const Field& f, book::ColumnType type, bool nullable) {
        book::Column column{std::string(f.name), type, !nullable, {}, {}, {}};
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

// --- rows -----------------------------------------------------------------------------------------------------------

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
    void extract(std::string_view, const Plato& value) { values.emplace_back(value.p); }
    void gravity(std::string_view, const std::optional<SpecificGravity>& value) {
        value ? void(values.emplace_back(value->sg)) : void(values.emplace_back(std::monostate{}));
    }
    void vessel(const Field& f, const std::string& value) {
        reference(f, value, names_.vessels, "desk.unknown_vessel");
    }
    void brew(const Field& f, const std::string& value) { reference(f, value, names_.brews, "desk.unknown_brew"); }
    template <class T> void list(const Field& f, const std::vector<T>& items) {
        JsonWriter writer;
        writer.list(f, items);
        values.emplace_back(writer.json[f.name].dump());
    }
    template <class T> void nested(const Field&, const T& value) {
        values.emplace_back(JsonWriter::element(value).dump());
    }
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
        for (const auto& [name, unused] : ids)
            known.push_back(name);
        if (!fault)
            fault = Fault{FaultKind::input, "/" + std::string(f.name), say(key).with("name", value),
                          known.empty() ? say(key + ".none")
                                        : say(key + ".remedy").with("nearest", nearestName(value, known))};
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
    void extract(std::string_view, Plato& value) { take(next(), value); }
    void gravity(std::string_view, std::optional<SpecificGravity>& value) { take(next(), value); }
    void vessel(const Field&, std::string& value) { reference(value, names_.vesselNames); }
    void brew(const Field&, std::string& value) { reference(value, names_.brewNames); }
    template <class T> void list(const Field& f, std::vector<T>& items) {
        Json wrapped = Json::object();
        wrapped[f.name] = parsed(next());
        JsonReader reader(wrapped, "");
        reader.list(f, items);
    }
    template <class T> void nested(const Field&, T& value) {
        const Json json = parsed(next());
        JsonReader reader(json, "");
        if (json.is_object())
            describe(reader, value);
    }
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
    static Json parsed(const book::Value& value) {
        const auto* text = std::get_if<std::string>(&value);
        return text ? Json::parse(*text, nullptr, false) : Json();
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
                value = parseDay(*text).value_or(Day{});
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

// --- dates ----------------------------------------------------------------------------------------------------------

class DayShifter {
public:
    explicit DayShifter(int days) : days_(days) {}
    template <class T> void field(const Field&, T& value) {
        if constexpr (std::is_same_v<T, Day>)
            value += days_;
        else if constexpr (std::is_same_v<T, std::optional<Day>>)
            if (value)
                *value += days_;
    }
    template <class T> void number(const Field&, T&) {}
    template <class E> void word(const Field&, E&, std::span<const std::string_view>) {}
    void extract(std::string_view, Plato&) {}
    void gravity(std::string_view, std::optional<SpecificGravity>&) {}
    void vessel(const Field&, std::string&) {}
    void brew(const Field&, std::string&) {}
    template <class T> void list(const Field&, std::vector<T>&) {}
    template <class T> void nested(const Field&, T& value) { describe(*this, value); }
    template <class T> void object(const Field&, std::optional<T>& value) {
        if (value)
            describe(*this, *value);
    }

private:
    std::chrono::days days_;
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

void Names::addVessel(book::RowId id, const std::string& name) {
    const auto old = vesselNames.find(id);
    if (old != vesselNames.end())
        vessels.erase(old->second);
    vessels[name] = id;
    vesselNames[id] = name;
}
void Names::addBrew(book::RowId id, const std::string& name) {
    brews[name] = id;
    brewNames[id] = name;
}

std::string nearestName(std::string_view wanted, const std::vector<std::string>& known) {
    const auto distance = [&](const std::string& other) {
        std::vector<std::size_t> row(other.size() + 1);
        for (std::size_t j = 0; j <= other.size(); ++j)
            row[j] = j;
        for (std::size_t i = 1; i <= wanted.size(); ++i) {
            std::size_t diagonal = row[0]++;
            for (std::size_t j = 1; j <= other.size(); ++j) {
                const std::size_t above = row[j];
                row[j] = std::min({row[j] + 1, row[j - 1] + 1, diagonal + (wanted[i - 1] != other[j - 1])});
                diagonal = above;
            }
        }
        return row.back();
    };
    const auto best = std::min_element(known.begin(), known.end(),
                                       [&](const auto& a, const auto& b) { return distance(a) < distance(b); });
    return best == known.end() ? std::string() : *best;
}

template <class F> Result<void> checkFields(const F& fact) {
    Checker checker;
    describe(checker, fact);
    if (checker.fault)
        return fail(*checker.fault);
    return {};
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

#define STAVELINE_STORED(F)                                                                                            \
    template Result<std::vector<book::Value>> toRow(const F&, const Names&);                                           \
    template F fromRow(const book::Row&, const Names&);                                                                \
    template Result<void> checkFields(const F&);
STAVELINE_STORED(VesselFact)
STAVELINE_STORED(CultureFact)
STAVELINE_STORED(EquipmentFact)
STAVELINE_STORED(BaseRecipeFact)
STAVELINE_STORED(TargetFact)
STAVELINE_STORED(OpeningFact)
STAVELINE_STORED(SittingFact)
STAVELINE_STORED(ReadingFact)
STAVELINE_STORED(SampleFact)
STAVELINE_STORED(DipFact)
STAVELINE_STORED(DrawOffFact)
STAVELINE_STORED(RefillFact)
STAVELINE_STORED(TopUpFact)
STAVELINE_STORED(BrewFact)
STAVELINE_STORED(LockFact)
STAVELINE_STORED(AvailabilityFact)
STAVELINE_STORED(ChoiceFact)
STAVELINE_STORED(Grain)
STAVELINE_STORED(Yeast)
#undef STAVELINE_STORED
template Result<void> checkFields(const VesselEditFact&);
template Result<void> checkFields(const RetireFact&);

const book::Schema& cellarSchema() {
    static const book::Schema schema = [] {
        book::Schema s{1, 0, {}};
        s.tables = {
            tableFor<VesselFact>(),     tableFor<BrewFact>(),   tableFor<CultureFact>(), tableFor<EquipmentFact>(),
            tableFor<BaseRecipeFact>(), tableFor<TargetFact>(), tableFor<OpeningFact>(), tableFor<SittingFact>(),
            tableFor<ReadingFact>(),    tableFor<SampleFact>(), tableFor<DipFact>(),     tableFor<DrawOffFact>(),
            tableFor<RefillFact>(),     tableFor<TopUpFact>(),  tableFor<LockFact>(),    tableFor<AvailabilityFact>(),
            tableFor<ChoiceFact>(),     tableFor<Grain>(),      tableFor<Yeast>()};
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

std::string recipeJson(const Recipe& recipe) {
    return JsonWriter::element(recipe).dump();
}
std::string targetJson(const Target& target) {
    return JsonWriter::element(target).dump();
}

// --- record files ----------------------------------------------------------------------------------------------------

namespace {

template <std::size_t I = 0> std::vector<std::string> allKinds() {
    std::vector<std::string> kinds;
    if constexpr (I < std::variant_size_v<Fact>) {
        kinds = allKinds<I + 1>();
        kinds.insert(kinds.begin(), std::string(kindOf<std::variant_alternative_t<I, Fact>>));
    }
    return kinds;
}

template <std::size_t I = 0> Result<Fact> readKind(const Json& json, const std::string& kind, const std::string& path) {
    if constexpr (I == std::variant_size_v<Fact>) {
        return badInput(path + "/kind", say("desk.unknown_kind").with("kind", kind),
                        say("desk.unknown_kind.remedy").with("nearest", nearestName(kind, allKinds())));
    } else {
        using F = std::variant_alternative_t<I, Fact>;
        if (kind != kindOf<F>)
            return readKind<I + 1>(json, kind, path);
        F fact{};
        JsonReader reader(json, path);
        reader.allow("kind");
        describe(reader, fact);
        reader.finish();
        if (reader.fault)
            return fail(*reader.fault);
        if (auto checked = checkFields(fact); !checked)
            return fail(under(path, checked.error()));
        return Fact{std::move(fact)};
    }
}

Result<Fact> readFact(const Json& json, const std::string& path) {
    if (!json.is_object())
        return badInput(path, say("desk.wrong_type").with("field", path), say("desk.type.object"));
    const auto kind = json.find("kind");
    if (kind == json.end() || !kind->is_string())
        return badInput(path + "/kind", say("desk.missing").with("field", std::string("kind")),
                        say("desk.missing.remedy"));
    return readKind(json, kind->get<std::string>(), path);
}

} // namespace

Result<std::vector<Fact>> parseRecords(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (json.is_discarded())
        return badInput("", say("desk.not_json"), say("desk.not_json.remedy"));
    std::vector<Fact> facts;
    if (!json.is_array()) {
        auto fact = readFact(json, "");
        if (!fact)
            return fail(fact.error());
        facts.push_back(std::move(*fact));
        return facts;
    }
    for (std::size_t i = 0; i < json.size(); ++i) {
        auto fact = readFact(json[i], "/" + std::to_string(i));
        if (!fact)
            return fail(fact.error());
        facts.push_back(std::move(*fact));
    }
    return facts;
}

void shiftDays(Fact& fact, int days) {
    std::visit(
        [days](auto& f) {
            DayShifter shifter(days);
            describe(shifter, f);
        },
        fact);
}

std::string writeRecords(const std::vector<Fact>& facts) {
    Json array = Json::array();
    for (const auto& fact : facts)
        array.push_back(std::visit(
            []<class F>(const F& f) {
                JsonWriter writer;
                writer.json["kind"] = kindOf<F>;
                describe(writer, f);
                return writer.json;
            },
            fact));
    return array.dump(2) + "\n";
}

Result<Setting> parseSetting(std::string_view text, const Setting& base) {
    const Json json = Json::parse(text, nullptr, false);
    if (json.is_discarded() || !json.is_object())
        return badInput("", say("desk.not_json"), say("desk.not_json.remedy"));
    Setting setting = base;
    JsonReader reader(json, "");
    describe(reader, setting.recipe);
    reader.field(Field{"draw_l", 0.001, maxLitres}, setting.draw);
    reader.field(Field{"interval_d", 1, 3650}, setting.interval);
    reader.field(Field{"temperature_c", -2, 35}, setting.temperature);
    reader.finish();
    if (reader.fault)
        return fail(*reader.fault);
    Checker checker;
    describe(checker, setting.recipe);
    checker.field(Field{"draw_l", 0.001, maxLitres}, setting.draw);
    checker.field(Field{"interval_d", 1, 3650}, setting.interval);
    checker.field(Field{"temperature_c", -2, 35}, setting.temperature);
    if (checker.fault)
        return fail(*checker.fault);
    return setting;
}

} // namespace staveline

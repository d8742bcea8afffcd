// SPDX-License-Identifier: GPL-3.0-or-later
// Facts as JSON.
#include "facts/codec.h"
#include "facts/field_kinds.h"
#include "facts/json_syntax.h"
#include "facts/own_ingredients.h"
#include "facts/record_file.h"
#include "quantity/density.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>
#include <set>

namespace staveline::facts {
namespace {

using Json = nlohmann::ordered_json;

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
    template <class E>
    void word(const Field& f, const std::optional<E>& value, std::span<const std::string_view> words) {
        if (value)
            word(f, *value, words);
    }
    void extract(std::string_view name, const Plato& value) { json[std::string(name) + "_p"] = value.p; }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& value) {
        if (value)
            json[std::string(name) + "_sg"] = value->sg;
    }
    void vessel(const Field& f, const std::string& value) { reference(f, value); }
    void brew(const Field& f, const std::string& value) { reference(f, value); }
    template <class T> void list(const Field& f, const std::vector<T>& items) { json[f.name] = any(items); }
    template <class T> void nested(const Field& f, const T& value) { json[f.name] = any(value); }
    template <class T> void object(const Field& f, const std::optional<T>& value) {
        if (value)
            nested(f, *value);
    }
    template <class T> static Json any(const T& value) {
        if constexpr (std::is_same_v<T, std::string>) {
            return value;
        } else {
            JsonWriter inner;
            describe(inner, value);
            return inner.json;
        }
    }
    template <class T> static Json any(const std::vector<T>& items) {
        Json array = Json::array();
        for (const auto& item : items)
            array.push_back(any(item));
        return array;
    }

private:
    void reference(const Field& f, const std::string& value) {
        if (!value.empty())
            json[f.name] = value;
    }
};

/// The names of the fields of a T, for who wrote something else in its place.
template <class T> std::string fieldsOf() {
    std::string all;
    const Json written = JsonWriter::any(T{});
    for (const auto& [key, unused] : written.items())
        all += (all.empty() ? "" : ", ") + key;
    return all;
}

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
            set(unknownWord(pathOf(path_, f.name), text, words));
    }
    template <class E> void word(const Field& f, std::optional<E>& value, std::span<const std::string_view> words) {
        const Json* found = take(f.name, false);
        if (found && !found->is_null())
            word(f, value.emplace(), words);
    }
    void extract(std::string_view name, Plato& value) {
        std::optional<SpecificGravity> gravity;
        onlyOne(std::string(name) + "_p", std::string(name) + "_sg");
        field(Field{.name = keep(std::string(name) + "_p")}, value);
        field(Field{.name = keep(std::string(name) + "_sg")}, gravity);
        if (gravity)
            fromGravity(std::string(name) + "_sg", *gravity, [&] { value = toPlato(*gravity); });
    }
    void gravity(std::string_view name, std::optional<SpecificGravity>& value) {
        std::optional<Plato> extract;
        onlyOne(std::string(name) + "_p", std::string(name) + "_sg");
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
        readItems(*found, f, items);
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
                set({FaultKind::input, pathOf(path_, key), say("desk.unknown_field").with("field", excerpt(key)),
                     offerName(key, {known_.begin(), known_.end()})});
    }
    void allow(std::string_view name) { known_.emplace(name); }
    /// A stored value: what does not fit is passed over.
    template <class T> static void any(const Json& json, T& value) {
        JsonReader reader(json, "");
        if (json.is_object())
            describe(reader, value);
    }
    template <class T> static void any(const Json& json, std::vector<T>& items) {
        JsonReader(json, "").readItems(json, Field{"items"}, items);
    }

private:
    void set(Fault found) {
        if (!fault)
            fault = std::move(found);
    }
    void wrongType(const Field& f, std::string wanted) {
        set({FaultKind::input, pathOf(path_, f.name), say("desk.wrong_type").with("field", std::string(f.name)),
             say(std::move(wanted))});
    }
    template <class T> void readItems(const Json& json, const Field& f, std::vector<T>& items) {
        if (!json.is_array())
            return wrongType(f, "desk.type.list");
        items.clear();
        for (std::size_t i = 0; i < json.size() && !fault; ++i)
            items.push_back(element<T>(json[i], pathOf(path_, f.name) + "/" + std::to_string(i)));
    }
    [[nodiscard]] bool given(const std::string& name) const {
        const auto at = json_.find(name);
        return at != json_.end() && !at->is_null();
    }
    void onlyOne(const std::string& one, const std::string& other) {
        if (given(one) && given(other))
            set({FaultKind::input, pathOf(path_, other),
                 say("desk.given_twice").with("field", one).with("other", other), say("desk.given_twice.remedy")});
    }
    /// A view that lives as long as the reader.
    std::string_view keep(std::string name) { return *known_.insert(std::move(name)).first; }
    const Json* take(std::string_view name, bool required) {
        known_.emplace(name);
        const auto at = json_.find(std::string(name));
        if (at != json_.end())
            return &*at;
        if (required)
            set(missingField(pathOf(path_, name), name));
        return nullptr;
    }
    template <class T> void read(const Json& json, const Field& f, T& value) {
        if constexpr (std::is_same_v<T, bool>) {
            json.is_boolean() ? void(value = json.get<bool>()) : wrongType(f, "desk.type.yes_no");
        } else if constexpr (QuantityLike<T>) {
            json.is_number() ? void(value = T{json.get<double>()}) : wrongType(f, "desk.type.number");
        } else if constexpr (std::is_same_v<T, int>) {
            json.is_number_integer() ? readWhole(json, f, value) : wrongType(f, "desk.type.whole_number");
        } else if constexpr (std::is_same_v<T, double>) {
            json.is_number() ? void(value = json.get<double>()) : wrongType(f, "desk.type.number");
        } else if constexpr (std::is_same_v<T, Day>) {
            readDay(json, f, value);
        } else {
            json.is_string() ? void(value = json.get<std::string>()) : wrongType(f, "desk.type.text");
        }
    }
    void readWhole(const Json& json, const Field& f, int& value) {
        const double written = json.get<double>();
        if (std::abs(written) > std::numeric_limits<int>::max())
            set(outOfRange(pathOf(path_, f.name), f, written));
        else
            value = json.get<int>();
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
        else if (!isGravity(gravity))
            set(gravityRange(pathOf(path_, name), gravity));
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
            set({FaultKind::input, path, say("desk.wrong_type").with("field", path),
                 say("desk.type.fields").with("fields", fieldsOf<T>())});
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

} // namespace

template <class T> std::string nestedText(const T& value) {
    return JsonWriter::any(value).dump();
}
template <class T> void readNested(const std::string& text, T& value) {
    if (isTooDeep(text))
        return;
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_discarded())
        JsonReader::any(json, value);
}

#define STAVELINE_NESTED(...)                                                                                          \
    template std::string nestedText(const __VA_ARGS__&);                                                               \
    template void readNested(const std::string&, __VA_ARGS__&);
STAVELINE_NESTED(std::vector<brewing::GristPart>)
STAVELINE_NESTED(std::vector<brewing::MashStep>)
STAVELINE_NESTED(std::vector<brewing::HopAddition>)
STAVELINE_NESTED(std::vector<tasting::FaultMark>)
STAVELINE_NESTED(std::vector<tasting::Score>)
STAVELINE_NESTED(std::vector<std::string>)
STAVELINE_NESTED(brewing::Recipe)
STAVELINE_NESTED(tasting::Target)
STAVELINE_NESTED(Forecast)
#undef STAVELINE_NESTED

std::string recipeJson(const brewing::Recipe& recipe) {
    return JsonWriter::any(recipe).dump();
}
std::string targetJson(const tasting::Target& target) {
    return JsonWriter::any(target).dump();
}

// --- record files ----------------------------------------------------------------------------------------------------

namespace {

std::vector<std::string> allKinds() {
    std::vector<std::string> kinds;
    forEachFact([&]<class F>(std::type_identity<F>) { kinds.emplace_back(kindOf<F>); });
    return kinds;
}

/// What is made like a built-in ingredient has its numbers to begin with.
template <class F> F startOf(const Json& json) {
    F fact{};
    if constexpr (requires { fact.like; })
        if (const auto like = json.find("like"); like != json.end() && like->is_string())
            startLike(fact, like->template get<std::string>());
    return fact;
}

template <class F> Result<Fact> readFields(const Json& json, const std::string& path) {
    F fact = startOf<F>(json);
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

Result<Fact> readKind(const Json& json, const std::string& kind, const std::string& path) {
    std::optional<Result<Fact>> read;
    forEachFact([&]<class F>(std::type_identity<F>) {
        if (kind == kindOf<F>)
            read = readFields<F>(json, path);
    });
    if (read)
        return *std::move(read);
    return badInput(path + "/kind", say("desk.unknown_kind").with("kind", excerpt(kind)), offerName(kind, allKinds()));
}

Result<Fact> readFact(const Json& json, const std::string& path) {
    if (!json.is_object())
        return badInput(path, say("desk.wrong_type").with("field", path), say("desk.type.object"));
    const auto kind = json.find("kind");
    if (kind == json.end())
        return fail(missingField(path + "/kind", "kind"));
    if (!kind->is_string())
        return badInput(path + "/kind", say("desk.wrong_type").with("field", std::string("kind")),
                        say("desk.type.text"));
    return readKind(json, kind->get<std::string>(), path);
}

} // namespace

Result<std::vector<Fact>> parseRecords(std::string_view text) {
    if (auto sound = checkJson(text); !sound)
        return fail(sound.error());
    const Json json = Json::parse(text);
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

Result<RefillPlan> parsePlan(std::string_view text, const RefillPlan& base) {
    if (auto sound = checkJson(text); !sound)
        return fail(sound.error());
    const Json json = Json::parse(text);
    if (!json.is_object())
        return badInput("", say("desk.no_plan"), say("desk.no_plan.remedy"));
    RefillPlan plan = base;
    JsonReader reader(json, "");
    describe(reader, plan.recipe);
    describeHandling(reader, plan);
    reader.finish();
    if (reader.fault)
        return fail(*reader.fault);
    if (auto checked = checkPlan(plan); !checked)
        return fail(checked.error());
    return plan;
}

} // namespace staveline::facts

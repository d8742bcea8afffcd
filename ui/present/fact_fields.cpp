// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/fact_fields.h"

#include "facts/fields.h"

#include <algorithm>
#include <cmath>
#include <span>
#include <type_traits>

namespace staveline::ui {

using facts::Fact;
using facts::Field;
using facts::VesselName;

namespace {

template <class T> struct Plain {
    using Type = T;
    static constexpr bool optional = false;
};
template <class T> struct Plain<std::optional<T>> {
    using Type = T;
    static constexpr bool optional = true;
};
/// The turn of an entry on its day: the desk gives it, nobody is asked for it.
template <class T> constexpr bool isTurn = std::is_same_v<T, std::optional<int>>;
template <class T> constexpr bool isNumber = Quantity<T> || std::is_same_v<T, double> || std::is_same_v<T, int>;

template <class T> UnitKind unitOf(const Field& field) {
    if constexpr (Quantity<T>)
        return T::kind;
    else
        return field.unit;
}

template <class T> double number(const T& value) {
    if constexpr (std::is_arithmetic_v<T>)
        return value;
    else
        return raw(value);
}

/// A count is a whole number, whatever was typed.
template <class T> T numberOf(double value) {
    if constexpr (std::is_same_v<T, int>)
        return static_cast<int>(std::lround(value));
    else
        return T{value};
}

using Words = std::span<const std::string_view>;

class Lister {
public:
    std::vector<FieldSpec> specs;

    template <class T> void field(const Field& f, const T&) {
        if constexpr (isTurn<T>)
            return;
        using Type = typename Plain<T>::Type;
        FieldSpec spec{std::string(f.name), FieldKind::text, UnitKind::none, f.low, f.high, f.required, {}};
        if constexpr (isNumber<Type>) {
            spec.kind = FieldKind::number;
            spec.unit = unitOf<Type>(f);
            spec.required = f.required || !Plain<T>::optional;
        } else if constexpr (std::is_same_v<Type, Day>) {
            spec.kind = FieldKind::day;
            spec.required = f.required || !Plain<T>::optional;
        } else if constexpr (std::is_same_v<Type, bool>) {
            spec.kind = FieldKind::flag;
        } else if (f.holds == facts::Holds::room) {
            spec.kind = FieldKind::room;
        }
        specs.push_back(std::move(spec));
    }
    template <class E> void word(const Field& f, const E&, Words words) {
        specs.push_back({std::string(f.name),
                         FieldKind::word,
                         UnitKind::none,
                         f.low,
                         f.high,
                         f.required,
                         {words.begin(), words.end()}});
        if constexpr (Plain<E>::optional)
            specs.back().words.insert(specs.back().words.begin(), std::string()); // not said
    }
    void gravity(std::string_view name, const std::optional<SpecificGravity>&) {
        specs.push_back({std::string(name), FieldKind::number, UnitKind::gravity, .98, 1.2, false, {}});
    }
    void vessel(const Field& f, const VesselName&) {
        if (f.name != "vessel")
            specs.push_back({std::string(f.name), FieldKind::vessel, UnitKind::none, 0, 0, f.required, {}});
    }
    void brew(const Field& f, const std::string&) {
        specs.push_back({std::string(f.name), FieldKind::brew, UnitKind::none, 0, 0, f.required, {}});
    }
};

class Reader {
public:
    FieldValues values;

    template <class T> void field(const Field& f, const T& member) {
        if constexpr (!isTurn<T>)
            values[std::string(f.name)] = read(member);
    }
    template <class E> void word(const Field& f, const E& member, Words words) {
        values[std::string(f.name)] = std::string(words[static_cast<std::size_t>(member)]);
    }
    template <class E> void word(const Field& f, const std::optional<E>& member, Words words) {
        if (member)
            word(f, *member, words);
        else
            values[std::string(f.name)] = FieldValue{};
    }
    void gravity(std::string_view name, const std::optional<SpecificGravity>& member) {
        values[std::string(name)] = read(member);
    }
    void vessel(const Field& f, const VesselName& member) { values[std::string(f.name)] = member; }
    void brew(const Field& f, const std::string& member) { values[std::string(f.name)] = member; }

private:
    template <class T> static FieldValue read(const std::optional<T>& member) {
        return member ? read(*member) : FieldValue{};
    }
    template <class T> static FieldValue read(const T& member) {
        if constexpr (isNumber<T>)
            return number(member);
        else
            return member;
    }
};

class Putter {
public:
    explicit Putter(const FieldValues& from) : values(from) {}

    template <class T> void field(const Field& f, T& member) {
        if constexpr (!isTurn<T>)
            assign(f.name, member);
    }
    template <class E> void word(const Field& f, E& member, Words words) {
        std::string chosen;
        assign(f.name, chosen);
        if (const auto at = std::find(words.begin(), words.end(), chosen); at != words.end())
            member = static_cast<E>(at - words.begin());
    }
    /// A word that is none of them: not said.
    template <class E> void word(const Field& f, std::optional<E>& member, Words words) {
        const auto found = values.find(std::string(f.name));
        if (found == values.end())
            return;
        const auto* chosen = std::get_if<std::string>(&found->second);
        const auto at = chosen ? std::find(words.begin(), words.end(), *chosen) : words.end();
        member = at == words.end() ? std::nullopt : std::optional(static_cast<E>(at - words.begin()));
    }
    void gravity(std::string_view name, std::optional<SpecificGravity>& member) { assign(name, member); }
    void vessel(const Field& f, VesselName& member) { assign(f.name, member); }
    void brew(const Field& f, std::string& member) { assign(f.name, member); }

private:
    template <class T> void assign(std::string_view name, T& member) const {
        using Type = typename Plain<T>::Type;
        const auto found = values.find(std::string(name));
        if (found == values.end())
            return;
        if constexpr (Plain<T>::optional)
            member.reset();
        else if constexpr (std::is_same_v<T, std::string>)
            member.clear();
        if constexpr (isNumber<Type>) {
            if (const auto* value = std::get_if<double>(&found->second))
                member = numberOf<Type>(*value);
        } else if (const auto* value = std::get_if<Type>(&found->second)) {
            member = *value;
        }
    }
    const FieldValues& values;
};

template <class Visitor, class AnyFact> void visit(Visitor& visitor, AnyFact& fact) {
    std::visit(
        [&](auto& each) {
            if constexpr (facts::factTraits<std::remove_cvref_t<decltype(each)>>.form == facts::Form::flat)
                facts::describe(visitor, each);
        },
        fact);
}

} // namespace

std::vector<FieldSpec> fieldsOf(const Fact& fact) {
    Lister lister;
    visit(lister, fact);
    return std::move(lister.specs);
}

FieldValues valuesOf(const Fact& fact) {
    Reader reader;
    visit(reader, fact);
    return std::move(reader.values);
}

void put(Fact& fact, const FieldValues& values) {
    Putter putter(values);
    visit(putter, fact);
}

std::string fieldAt(std::string_view path) {
    if (path.starts_with('/'))
        path.remove_prefix(1);
    const std::string_view first = path.substr(0, path.find('/'));
    if (first == "gravity_sg" || first == "gravity_p")
        return "gravity";
    return std::string(first);
}

VesselName vesselOf(const Fact& fact) {
    return std::visit(
        [](const auto& each) {
            if constexpr (requires { each.vessel; })
                return each.vessel;
            else
                return VesselName{};
        },
        fact);
}

void setVessel(Fact& fact, const VesselName& vessel) {
    std::visit(
        [&](auto& each) {
            if constexpr (requires { each.vessel; })
                each.vessel = vessel;
        },
        fact);
}

Day dayOf(const Fact& fact) {
    return std::visit(
        [](const auto& each) -> Day {
            if constexpr (requires { Day(each.on); })
                return each.on;
            else
                return {};
        },
        fact);
}

} // namespace staveline::ui

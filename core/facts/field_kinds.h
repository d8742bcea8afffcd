// SPDX-License-Identifier: GPL-3.0-or-later
// Private to the visitors of fields.h: which kind of field a member is, and words they share.
#pragma once

#include "facts/fields.h"
#include "facts/ranges.h"

#include <optional>
#include <string>
#include <type_traits>

namespace staveline::facts {

template <class T> struct IsOptional : std::false_type {};
template <class T> struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
concept Optional = IsOptional<std::remove_const_t<T>>::value;
template <class T>
concept QuantityLike = Quantity<std::remove_const_t<T>>;

/// Passes by every field: a visitor that looks at a few kinds of them says only what it does with these.
struct PassesBy {
    template <class T> void field(const Field&, T&) {}
    template <class T> void number(const Field&, T&) {}
    template <class T> void word(const Field&, T&, std::span<const std::string_view>) {}
    template <class T> void extract(std::string_view, T&) {}
    template <class T> void gravity(std::string_view, T&) {}
    template <class T> void vessel(const Field&, T&) {}
    template <class T> void brew(const Field&, T&) {}
    template <class T> void list(const Field&, T&) {}
    template <class T> void nested(const Field&, T&) {}
    template <class T> void object(const Field&, T&) {}
};

struct RangeFinder : PassesBy {
    std::string_view name;
    Range found{};
    template <class T> void field(const Field& f, T&) {
        if (f.name == name)
            found = {f.low, f.high};
    }
};
/// Of a number by its name, as it is described.
template <class Described> Range rangeOf(std::string_view name) {
    RangeFinder finder;
    finder.name = name;
    Described any{};
    describe(finder, any);
    return finder.found;
}

inline std::string pathOf(const std::string& base, std::string_view name) {
    return base + "/" + excerpt(name);
}

inline std::string listed(std::span<const std::string_view> words) {
    std::string text;
    for (auto word : words)
        text += (text.empty() ? "" : ", ") + std::string(word);
    return text;
}

inline Fault unknownWord(std::string path, const std::string& value, std::span<const std::string_view> words) {
    return {FaultKind::input, std::move(path), say("desk.unknown_word").with("value", excerpt(value)),
            say("desk.unknown_word.remedy").with("allowed", listed(words))};
}
inline Fault missingField(std::string path, std::string_view name) {
    return {FaultKind::input, std::move(path), say("desk.missing").with("field", std::string(name)),
            say("desk.missing.remedy")};
}

/// Numbers in few figures, whatever was written.
[[nodiscard]] bool isGravity(SpecificGravity given);
[[nodiscard]] Fault gravityRange(std::string path, SpecificGravity given);
[[nodiscard]] Fault outOfRange(std::string path, const Field& field, double value);

/// Lists and objects inside a fact are kept as JSON text in one column. Damaged text leaves `value` as it is.
template <class T> [[nodiscard]] std::string nestedText(const T& value);
template <class T> void readNested(const std::string& text, T& value);

} // namespace staveline::facts

// SPDX-License-Identifier: GPL-3.0-or-later
// Rendering of quantities and messages in the brewer's units. Stored values never change with them.
#pragma once

#include "quantity/day.h"
#include "quantity/message.h"

#include <map>
#include <span>
#include <string>
#include <string_view>

namespace staveline {

struct DisplayUnits {
    enum class Volume { litre, usGallon, hectolitre } volume = Volume::litre;
    enum class Temperature { celsius, fahrenheit } temperature = Temperature::celsius;
    enum class Gravity { plato, specific } gravity = Gravity::specific;
    enum class Colour { ebc, srm } colour = Colour::ebc;
    enum class Pressure { bar, psi } pressure = Pressure::bar;
    bool operator==(const DisplayUnits&) const = default;
};

/// One argument with its unit, e.g. "88.0 L", "1.049", "66 °C", "35 %", "+0.4".
[[nodiscard]] std::string show(const ArgumentValue& value, const DisplayUnits& units = {});

/// key -> template. Files hold one "key<TAB>text" a line; '#' starts a comment.
class Catalogue {
public:
    static Catalogue parse(std::span<const std::string_view> files);
    /// The template; the key itself when it is missing (a test finds those).
    [[nodiscard]] std::string_view find(std::string_view key) const;
    [[nodiscard]] bool has(std::string_view key) const;
    [[nodiscard]] const std::map<std::string, std::string, std::less<>>& all() const { return texts_; }

private:
    std::map<std::string, std::string, std::less<>> texts_;
};

/// The built-in English catalogue (resources/texts).
[[nodiscard]] const Catalogue& builtInTexts();

[[nodiscard]] std::string render(const Message& message, const DisplayUnits& units = {},
                                 const Catalogue& texts = builtInTexts());

} // namespace staveline

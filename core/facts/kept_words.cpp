// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/kept_words.h"

#include "quantity/day.h"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

namespace staveline::facts {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::string_view opening = R"({"say":)";

/// In the order of UnitKind; a name in a book stays.
constexpr std::array<std::string_view, 33> unitNames = {"number",
                                                        "points",
                                                        "points_difference",
                                                        "volume",
                                                        "flow",
                                                        "mass",
                                                        "small_mass",
                                                        "temperature",
                                                        "heating_rate",
                                                        "minutes",
                                                        "days",
                                                        "years",
                                                        "age",
                                                        "extract",
                                                        "gravity",
                                                        "g_l",
                                                        "mg_l",
                                                        "oxygen_uptake",
                                                        "bitterness",
                                                        "colour",
                                                        "ph",
                                                        "alcohol",
                                                        "share",
                                                        "percent",
                                                        "percent_of_grist",
                                                        "percent_of_extract",
                                                        "content",
                                                        "enzyme_power",
                                                        "thickness",
                                                        "volumes",
                                                        "pressure",
                                                        "absolute_pressure",
                                                        "small_volume"};
static_assert(unitNames.size() == static_cast<std::size_t>(UnitKind::smallVolume) + 1);

struct Keep {
    Json operator()(const std::string& text) const {
        // Kept words go in as what they are: a text would double its quotation marks at every depth.
        Json inner = text.starts_with(opening) ? Json::parse(text, nullptr, false) : Json(text);
        return inner.is_discarded() ? Json(text) : inner;
    }
    Json operator()(std::int64_t count) const { return count; }
    Json operator()(std::chrono::sys_days day) const { return Json{{"day", isoDay(day)}}; }
    Json operator()(const Amount& amount) const {
        Json json{{"of", unitNames[static_cast<std::size_t>(amount.kind)]}, {"value", amount.value}};
        if (amount.kind == UnitKind::none)
            json["decimals"] = amount.decimals;
        if (amount.rough)
            json["rough"] = true;
        return json;
    }
};

/// Throws what nlohmann throws on what is no argument.
ArgumentValue argumentOf(const Json& json, const DisplayUnits& units) {
    if (json.is_string())
        return json.get<std::string>();
    if (json.contains("say"))
        return toldWords(json.dump(), units);
    if (json.is_number_integer())
        return json.get<std::int64_t>();
    if (json.contains("day"))
        return parseDay(json.at("day").get<std::string>()).value();
    const auto name = json.at("of").get<std::string>();
    const auto* const kind = std::find(unitNames.begin(), unitNames.end(), name);
    Amount amount(Number{json.at("value").get<double>(), json.value("decimals", 1)});
    amount.kind = kind == unitNames.end() ? UnitKind::none : static_cast<UnitKind>(kind - unitNames.begin());
    amount.rough = json.value("rough", false);
    return amount;
}

} // namespace

std::string keptWords(const Message& message) {
    Json with = Json::object();
    for (const Argument& argument : message.arguments)
        with[argument.name] = std::visit(Keep{}, argument.value);
    Json json{{"say", message.key}};
    if (!with.empty())
        json["with"] = std::move(with);
    return json.dump();
}

std::string toldWords(std::string_view kept, const DisplayUnits& units) {
    if (!kept.starts_with(opening))
        return std::string(kept);
    try {
        const Json json = Json::parse(kept);
        Message message = say(json.at("say").get<std::string>());
        const Json with = json.value("with", Json::object());
        for (const auto& [name, value] : with.items())
            message.arguments.push_back({name, argumentOf(value, units), {}});
        return render(message, units);
    } catch (const std::exception&) { // not ours after all: as it stands
        return std::string(kept);
    }
}

} // namespace staveline::facts

// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/lever.h"
#include "advice/lever_list.h"
#include "quantity/columns.h"
#include "quantity/csv.h"
#include "quantity/language.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "resources/resources.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>
#include <limits>
#include <stdexcept>

namespace staveline::advice {

using ingredient::Pantry;

namespace {

constexpr double same = 1e-9;

std::vector<std::string> split(std::string_view text, char at) {
    std::vector<std::string> parts;
    while (!text.empty()) {
        const auto end = text.find(at);
        parts.emplace_back(text.substr(0, end));
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    }
    return parts;
}

/// The words of the column "unit". A draw is a share in its row and litres in its values.
constexpr std::pair<std::string_view, UnitKind> units[] = {{"choice", UnitKind::none},
                                                           {"C", UnitKind::temperature},
                                                           {"min", UnitKind::minutes},
                                                           {"IBU", UnitKind::bitterness},
                                                           {"P", UnitKind::extract},
                                                           {"pH", UnitKind::ph},
                                                           {"d", UnitKind::days},
                                                           {"%", UnitKind::percent},
                                                           {"% of grist", UnitKind::percentOfGrist},
                                                           {"% of extract", UnitKind::percentOfExtract},
                                                           {"share of volume", UnitKind::volume}};

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : ", ") + word;
    return text;
}

Result<UnitKind> kindOf(const LeverRow& lever, std::size_t row) {
    std::vector<std::string> known;
    for (const auto& [word, kind] : units) {
        if (word == lever.unit)
            return kind;
        known.emplace_back(word);
    }
    return badInput(cellPath(row, "unit"), say("advice.fault.unit").with("lever", lever.id).with("unit", lever.unit),
                    say("advice.fault.unit.remedy").with("units", joined(known)));
}

Result<LeverRow> parseRow(const CsvTable& table, std::size_t row) {
    LeverRow lever{.id = std::string(table.text(row, "id")),
                   .name = inLanguage(table.text(row, "name")),
                   .unit = std::string(table.text(row, "unit")),
                   .kind = {},
                   .note = std::string(table.text(row, "note")),
                   .source = std::string(table.text(row, "source")),
                   .choices = split(table.text(row, "choices"), '|')};
    const auto kind = kindOf(lever, row);
    if (!kind)
        return fail(kind.error());
    lever.kind = *kind;
    const std::pair<const char*, double*> numbers[] = {{"low", &lever.low},
                                                       {"high", &lever.high},
                                                       {"step", &lever.step},
                                                       {"one_unit_of_movement", &lever.movement},
                                                       {"cost_per_unit", &lever.cost},
                                                       {"most_at_once", &lever.mostAtOnce},
                                                       {"advised_high", &lever.advisedHigh}};
    for (const auto& [column, target] : numbers) {
        const auto value = table.number(row, column, 0.0);
        if (!value)
            return fail(value.error());
        *target = *value;
    }
    const auto direction = table.text(row, "direction");
    if (direction != "assumed" && direction != "known")
        return badInput(cellPath(row, "direction"), say("advice.fault.direction").with("lever", lever.id),
                        say("advice.fault.direction.remedy"));
    lever.assumed = direction == "assumed";
    const bool sound =
        lever.movement > 0 && lever.cost > 0 && (lever.isChoice() || (lever.low < lever.high && lever.step > 0));
    if (!sound || lever.id.empty())
        return badInput(fmt::format("/{}", row), say("advice.fault.row").with("lever", lever.id),
                        say("advice.fault.row.remedy"));
    return lever;
}

const LeverRow* findRow(std::string_view id) {
    const auto& rows = builtInLevers();
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const LeverRow& row) { return row.id == id; });
    return found == rows.end() ? nullptr : &*found;
}

/// Every lever that has both file and row, in the order of the rows.
std::vector<Lever> inRowOrder(std::vector<Lever> made) {
    std::erase_if(made, [](const Lever& lever) { return !findRow(lever.id); });
    std::sort(made.begin(), made.end(), [](const Lever& a, const Lever& b) { return findRow(a.id) < findRow(b.id); });
    return made;
}

/// Whole litres, half litres in small vessels: what can be drawn on purpose.
double drawable(double litres) {
    const double grain = litres < 40 ? .5 : 1;
    return std::round(litres / grain) * grain;
}

std::vector<LeverValue> numbersOf(const Lever& lever, const LeverRow& row, double present) {
    std::vector<LeverValue> values;
    for (int k = 0; row.low + k * row.step <= row.high + same; ++k) {
        const double value = row.low + k * row.step;
        const double brewable = lever.byVolume ? drawable(value) : value;
        if (std::abs(brewable - present) > row.step / 4)
            values.emplace_back(brewable);
    }
    return values;
}

Message unitMessage(std::string key, const LeverRow& row) {
    return say(std::move(key)).with("lever", row.name).with("unit", row.unit);
}

Result<void> checkNumber(const Lever& lever, const LeverRow& row, const LeverValue& value) {
    const auto* given = std::get_if<double>(&value);
    if (!given)
        return badInput("/" + lever.id, unitMessage("advice.fault.notANumber", row),
                        row.kind == UnitKind::volume ? say("advice.fault.draw.remedy")
                                                     : unitMessage("advice.fault.notANumber.remedy", row));
    const bool inside = lever.byVolume ? *given > 0 : *given >= row.low - same && *given <= row.high + same;
    if (std::isfinite(*given) && inside)
        return {};
    if (lever.byVolume)
        return badInput("/" + lever.id, say("advice.fault.draw").with("value", Number{*given, 1}),
                        say("advice.fault.draw.remedy"));
    return badInput("/" + lever.id, unitMessage("advice.fault.bounds", row).with("value", Number{*given, 2}),
                    unitMessage("advice.fault.bounds.remedy", row)
                        .with("low", Number{row.low, 1})
                        .with("high", Number{row.high, 1}));
}

std::vector<std::string> everyChoice(const LeverRow& row, const Pantry& pantry) {
    if (!row.choices.empty())
        return row.choices;
    std::vector<std::string> ids;
    for (const auto& yeast : pantry.yeasts())
        ids.push_back(yeast.id);
    return ids;
}

Result<void> checkChoice(const LeverRow& row, const LeverValue& value, const Pantry& pantry) {
    const auto known = everyChoice(row, pantry);
    const auto* given = std::get_if<std::string>(&value);
    if (!given)
        return badInput("/" + row.id, unitMessage("advice.fault.notAWord", row),
                        say("advice.fault.choice.remedy").with("choices", joined(known)));
    if (std::find(known.begin(), known.end(), *given) != known.end())
        return {};
    return badInput("/" + row.id, unitMessage("advice.fault.choice", row).with("value", excerpt(*given)),
                    say("advice.fault.choice.remedy").with("choices", joined(known)));
}

} // namespace

Result<std::vector<LeverRow>> parseLevers(std::string_view csv) {
    const auto table = CsvTable::parse(csv);
    if (!table)
        return fail(table.error());
    if (auto sound = builtInColumns().check("levers", *table); !sound)
        return fail(std::move(sound).error());
    std::vector<LeverRow> rows;
    for (std::size_t i = 0; i < table->rows(); ++i) {
        auto row = parseRow(*table, i);
        if (!row)
            return fail(row.error());
        rows.push_back(*std::move(row));
    }
    return rows;
}

const std::vector<LeverRow>& builtInLevers() {
    static const auto rows = parseLevers(resources::find("data/levers.csv")).value();
    return rows;
}

const std::vector<Lever>& levers() {
    static const auto all = inRowOrder(makeLever::all());
    return all;
}

const Lever* findLever(std::string_view id) {
    const auto& all = levers();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Lever& lever) { return lever.id == id; });
    return found == all.end() ? nullptr : &*found;
}

const LeverRow& rowOf(const Lever& lever) {
    return *findRow(lever.id);
}

LeverRow narrowedRow(const Lever& lever, const Setting& start, const AdviceInput& input) {
    auto row = rowOf(lever);
    if (lever.byVolume)
        for (auto* share : {&row.low, &row.high, &row.step, &row.movement})
            *share *= input.volumeAtDraw.l;
    if (lever.narrow)
        lever.narrow(row, start, input);
    return row;
}

std::vector<LeverValue> stepsOf(const Lever& lever, const Setting& start, const AdviceInput& input) {
    const auto row = narrowedRow(lever, start, input);
    const auto present = lever.read(start, {*input.pantry, input.unavailable});
    if (!row.isChoice())
        return row.step > 0 ? numbersOf(lever, row, number(present)) : std::vector<LeverValue>{};
    std::vector<LeverValue> values;
    for (auto& id : lever.choices ? lever.choices(input) : row.choices)
        if (id != choice(present))
            values.emplace_back(id);
    return values;
}

std::vector<LeverValue> advisedSteps(const Lever& lever, const Setting& start, const AdviceInput& input) {
    if (!lever.proposed || (lever.advised && !lever.advised(input)))
        return {};
    auto steps = stepsOf(lever, start, input);
    const auto& row = rowOf(lever);
    if (row.isChoice())
        return steps;
    const double present = number(lever.read(start, {*input.pantry, input.unavailable}));
    const double most = input.stepCaps && row.mostAtOnce > 0 ? row.mostAtOnce : std::numeric_limits<double>::infinity();
    const double high = row.advisedHigh > 0 ? row.advisedHigh : std::numeric_limits<double>::infinity();
    std::erase_if(steps, [&](const LeverValue& to) {
        return number(to) > high + same || std::abs(number(to) - present) > most + same;
    });
    return steps;
}

bool hasAids(const Setting& setting, const Setting& back, const Stock& stock) {
    return std::any_of(levers().begin(), levers().end(), [&](const Lever& lever) {
        return lever.oneCycle && !sameValue(lever.read(setting, stock), lever.read(back, stock));
    });
}

Setting withoutAids(const Setting& setting, const Setting& back, const Pantry& pantry) {
    const std::set<std::string> nothing;
    const Stock stock{pantry, nothing};
    auto without = setting;
    for (const auto& lever : levers())
        if (lever.oneCycle)
            lever.apply(without, lever.read(back, stock), stock);
    return without;
}

bool onlyAids(const Setting& setting, const Setting& back, const Pantry& pantry) {
    return setting != back && withoutAids(setting, back, pantry) == withoutAids(back, back, pantry);
}

bool sameValue(const LeverValue& a, const LeverValue& b) {
    if (a.index() != b.index())
        return false;
    const auto* x = std::get_if<double>(&a);
    return x ? std::abs(*x - number(b)) < same : choice(a) == choice(b);
}

Message wordingOf(const Lever& lever, const LeverValue& from, const LeverValue& to, const Setting& after,
                  const Stock& stock) {
    if (lever.wording)
        return lever.wording(from, to, after, stock);
    const auto shown = [](const LeverValue& value) -> ArgumentValue {
        if (const auto* number = std::get_if<double>(&value))
            return Number{*number, 1};
        return choice(value);
    };
    return unitMessage("advice.word.any", rowOf(lever))
        .with("to", shown(to), OriginKind::moveTo)
        .with("from", shown(from), OriginKind::moveFrom);
}

Result<Setting> withLever(const Setting& setting, std::string_view lever, const LeverValue& value,
                          const Pantry& pantry) {
    const auto* found = findLever(lever);
    if (!found) {
        std::vector<std::string> known;
        for (const auto& each : levers())
            known.push_back(each.id);
        return badInput("/" + std::string(lever), say("advice.fault.lever").with("lever", std::string(lever)),
                        say("advice.fault.lever.remedy").with("levers", joined(known)));
    }
    const std::set<std::string> nothing;
    const Stock stock{pantry, nothing};
    const auto& row = rowOf(*found);
    if (!sameValue(value, found->read(setting, stock)))
        if (auto sound = row.isChoice() ? checkChoice(row, value, pantry) : checkNumber(*found, row, value); !sound)
            return fail(std::move(sound).error());
    auto changed = setting;
    found->apply(changed, value, stock);
    if (!sameValue(found->read(changed, stock), value))
        return badInput("/" + row.id, unitMessage("advice.fault.noRoom", row),
                        unitMessage("advice.fault.noRoom.remedy", row));
    return changed;
}

LeverValue leverValue(const Setting& setting, std::string_view lever, const Pantry& pantry) {
    const std::set<std::string> nothing;
    const auto* found = findLever(lever);
    return found ? found->read(setting, {pantry, nothing}) : LeverValue{0.0};
}

} // namespace staveline::advice

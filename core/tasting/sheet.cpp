// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/columns.h"
#include "quantity/language.h"
#include "quantity/parse.h"
#include "resources/resources.h"
#include "tasting/sitting.h"

#include <algorithm>
#include <cmath>

namespace staveline::tasting {
namespace {

/// Reads one row of a table and keeps the first thing wrong with it.
class RowReader {
public:
    RowReader(const CsvTable& table, std::size_t row) : table_(table), row_(row) {}

    std::string text(std::string_view column) { return std::string(table_.text(row_, column)); }
    std::string needed(std::string_view column) {
        auto value = text(column);
        if (value.empty())
            refuse(column);
        return value;
    }
    double number(std::string_view column, double whenEmpty) {
        const auto value = table_.number(row_, column, whenEmpty);
        if (!value)
            keep(value.error());
        return value.value_or(whenEmpty);
    }
    /// True for `yes`, false for `no`; nothing else is meant by silence.
    bool either(std::string_view column, std::string_view yes, std::string_view no) {
        const auto value = table_.text(row_, column);
        if (value != yes && value != no)
            refuse(column);
        return value == yes;
    }
    std::optional<Dimension> dimension(std::string_view column) {
        const auto value = table_.text(row_, column);
        for (auto d : allDimensions)
            if (value == name(d))
                return d;
        if (!value.empty())
            refuse(column);
        return {};
    }
    void refuse(std::string_view column) {
        keep({FaultKind::input, "/" + std::to_string(row_) + "/" + std::string(column),
              say("tasting.sheet.value").with("column", std::string(column)).with("value", text(column)),
              say("tasting.sheet.value.remedy")});
    }
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }

private:
    void keep(Fault fault) {
        if (!fault_)
            fault_ = std::move(fault);
    }
    const CsvTable& table_;
    std::size_t row_;
    std::optional<Fault> fault_;
};

tl::unexpected<Fault> refuseTable(std::string path, Message cause) {
    return badInput(std::move(path), std::move(cause), say("tasting.sheet.value.remedy"));
}

Result<CsvTable> tableWith(std::string_view csv, std::string_view table,
                           std::initializer_list<std::string_view> columns) {
    auto rows = CsvTable::parse(csv);
    if (!rows)
        return rows;
    for (auto column : columns)
        if (!rows->hasColumn(column))
            return refuseTable("", say("tasting.sheet.column").with("column", std::string(column)));
    if (const auto inRange = builtInColumns().check(table, *rows); !inRange)
        return fail(inRange.error());
    return rows;
}

/// "3 5 8": three scores, rising.
std::array<double, 3> severitySteps(RowReader& row, std::string_view column) {
    const auto text = row.text(column);
    std::string_view rest = text;
    std::array<double, 3> at{};
    double before = 0;
    for (double& step : at) {
        const auto word = rest.substr(0, rest.find(' '));
        rest.remove_prefix(std::min(rest.size(), word.size() + 1));
        const auto score = parseNumber(word, {before, 10});
        if (!score || *score <= before)
            return row.refuse(column), at;
        step = before = *score;
    }
    if (!rest.empty())
        row.refuse(column);
    return at;
}

Attribute readAttribute(RowReader& row) {
    Attribute a;
    a.code = row.needed("code");
    a.name = inLanguage(row.needed("name"));
    a.group = row.needed("group");
    for (std::size_t i = 0; i < anchorScores.size(); ++i)
        a.anchors[i] = inLanguage(row.needed("anchor_" + std::to_string(static_cast<int>(anchorScores[i]))));
    a.shortSheet = row.either("short_sheet", "yes", "no");
    a.bothTemperatures = row.either("temperatures", "both", "once");
    a.coldWeight = {row.number("cold_share", .5)};
    a.warmShift = row.number("warm_shift", 0);
    a.warmShiftSd = row.number("warm_shift_sd", 0);
    a.dimension = row.dimension("dimension");
    a.weight = row.number("weight", 0);
    a.reversed = row.either("reversed", "yes", "no");
    a.fault = row.text("fault");
    if (!a.fault.empty())
        a.faultAt = severitySteps(row, "fault_from");
    a.source = row.needed("source");
    return a;
}

FaultRule readFaultRule(RowReader& row) {
    FaultRule f;
    f.id = row.needed("id");
    f.name = inLanguage(row.needed("name"));
    f.cause = inLanguage(row.needed("cause"));
    f.action = inLanguage(row.needed("action"));
    f.blocksAdvice = row.either("blocks_advice", "yes", "no");
    f.drawAllowed = row.either("draw_allowed", "yes", "no");
    f.refillAdvice = row.needed("refill_advice");
    f.waitDays = static_cast<int>(row.number("wait_days", 0));
    f.spoils = row.dimension("spoils");
    f.source = row.needed("source");
    return f;
}

template <class T, class Read> Result<std::vector<T>> readRows(const CsvTable& table, std::string T::*key, Read read) {
    std::vector<T> rows;
    for (std::size_t i = 0; i < table.rows(); ++i) {
        RowReader row(table, i);
        T entry = read(row);
        if (row.fault())
            return fail(*row.fault());
        if (std::any_of(rows.begin(), rows.end(), [&](const T& other) { return other.*key == entry.*key; }))
            return refuseTable("/" + std::to_string(i), say("tasting.sheet.twice").with("code", entry.*key));
        rows.push_back(std::move(entry));
    }
    return rows;
}

/// What no single row can get wrong: weights that do not sum to 1, a line that shows a fault nobody knows.
std::optional<Fault> wrongTogether(const TastingSheet& sheet) {
    PerDimension<double> sum;
    for (const auto& a : sheet.attributes) {
        if (a.dimension)
            sum[*a.dimension] += a.weight;
        if (!a.fault.empty() && !sheet.findFault(a.fault))
            return refuseTable("", say("tasting.sheet.fault").with("fault", a.fault)).value();
    }
    for (auto d : allDimensions)
        if (std::abs(sum[d] - 1) > 1e-9)
            return refuseTable("", say("tasting.sheet.weights").with("dimension", std::string(name(d)))).value();
    return {};
}

} // namespace

Result<TastingSheet> TastingSheet::parse(std::string_view attributesCsv, std::string_view faultsCsv) {
    const auto attributes =
        tableWith(attributesCsv, "attributes",
                  {"code", "name", "group", "anchor_0", "short_sheet", "temperatures", "cold_share", "warm_shift",
                   "warm_shift_sd", "dimension", "weight", "reversed", "fault", "fault_from", "source"});
    if (!attributes)
        return fail(under("/attributes", attributes.error()));
    const auto faults = tableWith(faultsCsv, "faults",
                                  {"id", "name", "cause", "action", "blocks_advice", "draw_allowed", "refill_advice",
                                   "wait_days", "spoils", "source"});
    if (!faults)
        return fail(under("/faults", faults.error()));
    auto lines = readRows<Attribute>(*attributes, &Attribute::code, readAttribute);
    if (!lines)
        return fail(under("/attributes", lines.error()));
    auto rules = readRows<FaultRule>(*faults, &FaultRule::id, readFaultRule);
    if (!rules)
        return fail(under("/faults", rules.error()));
    TastingSheet sheet{std::move(*lines), std::move(*rules)};
    if (auto fault = wrongTogether(sheet))
        return fail(under("/attributes", *fault));
    return sheet;
}

const Attribute* TastingSheet::find(std::string_view code) const {
    const auto at = std::find_if(attributes.begin(), attributes.end(), [&](const auto& a) { return a.code == code; });
    return at == attributes.end() ? nullptr : &*at;
}

const FaultRule* TastingSheet::findFault(std::string_view id) const {
    const auto at = std::find_if(faults.begin(), faults.end(), [&](const auto& f) { return f.id == id; });
    return at == faults.end() ? nullptr : &*at;
}

const TastingSheet& builtInSheet() {
    // value() throws on damaged built-in data: a defect of the build, which a test catches, not a user's mistake.
    static const TastingSheet sheet =
        TastingSheet::parse(resources::find("data/attributes.csv"), resources::find("data/faults.csv")).value();
    return sheet;
}

std::string_view anchorFor(const Attribute& attribute, double score) {
    const auto above = std::upper_bound(anchorScores.begin(), anchorScores.end(), score);
    const auto index = above == anchorScores.begin() ? 0 : above - anchorScores.begin() - 1;
    return attribute.anchors[static_cast<std::size_t>(index)];
}

} // namespace staveline::tasting

// SPDX-License-Identifier: GPL-3.0-or-later
#include "forward/parameters.h"

#include "quantity/csv.h"
#include "resources/resources.h"

#include <algorithm>
#include <array>
#include <limits>
#include <optional>
#include <set>
#include <utility>

namespace staveline {
namespace {

#define IN(room, member)                                                                                               \
    {                                                                                                                  \
#member, [](Parameters & p) -> double& { return p.room.member; }                                               \
    }
constexpr ParameterName names[] = {IN(brew, ethanolPerHexose),
                                   IN(brew, sT),
                                   IN(brew, phi),
                                   IN(brew, other),
                                   IN(brew, kBoil),
                                   IN(brew, lacticFresh),
                                   IN(brew, aceticFresh),
                                   IN(brew, phFresh),
                                   IN(brew, esterShare),
                                   IN(brew, esters),
                                   IN(brew, aalShift),
                                   IN(brew, yPof),
                                   IN(brew, yPofNegative),
                                   IN(brew, mk),
                                   IN(brew, mF),
                                   IN(brew, mC),
                                   IN(brew, betaHalfLife65),
                                   IN(brew, gelatinisationShift),
                                   IN(brew, limitDextrinaseRate),
                                   IN(culture, mu),
                                   IN(culture, q),
                                   IN(culture, Ks),
                                   IN(culture, Lug),
                                   IN(culture, Lup),
                                   IN(culture, yL),
                                   IN(culture, aH),
                                   IN(culture, kd),
                                   IN(culture, kRrel),
                                   IN(culture, sig),
                                   IN(culture, vb),
                                   IN(culture, yE2),
                                   IN(culture, mub),
                                   IN(culture, decX),
                                   IN(culture, Q10),
                                   IN(culture, phiO),
                                   IN(culture, ret),
                                   IN(culture, Xf),
                                   IN(culture, XBf),
                                   IN(culture, Kip),
                                   IN(culture, dph),
                                   IN(culture, n),
                                   IN(culture, gamma),
                                   IN(culture, id0),
                                   IN(culture, idmax),
                                   IN(culture, tg),
                                   IN(culture, tl),
                                   IN(culture, kdec),
                                   IN(culture, kred),
                                   IN(culture, yred),
                                   IN(culture, ksink),
                                   IN(culture, kes),
                                   IN(culture, kvg),
                                   IN(culture, kBG),
                                   IN(culture, kAX),
                                   IN(culture, isoPka),
                                   IN(culture, hopPh),
                                   IN(culture, isoCisMonths),
                                   IN(culture, isoTransMonths),
                                   IN(culture, isoQ10),
                                   IN(culture, vinylEnergy),
                                   IN(culture, vinylPh),
                                   IN(culture, vinylSlope),
                                   IN(culture, vinylMost),
                                   IN(score, thrEG),
                                   IN(score, thrEP),
                                   IN(score, thrVG),
                                   IN(score, thrVP),
                                   IN(score, wV),
                                   IN(score, sn),
                                   IN(score, sK),
                                   IN(score, sa),
                                   IN(score, se),
                                   IN(score, s0),
                                   IN(score, co2v),
                                   IN(score, bJnd),
                                   IN(score, bRe),
                                   IN(score, bAl),
                                   IN(score, bGl),
                                   IN(score, ivBg),
                                   IN(score, ivAx),
                                   IN(score, thrLactic),
                                   IN(score, thrAcetic),
                                   IN(score, wAcetic),
                                   IN(score, alcoholSoftens),
                                   IN(score, co2Sharpens),
                                   IN(score, jnd),
                                   IN(score, etaWater),
                                   IN(score, etaAlcohol),
                                   IN(score, etaExtract),
                                   IN(score, etaGlycerol),
                                   {"beerBuffer", [](Parameters& p) -> double& { return p.beerBuffer; }}};
#undef IN

tl::unexpected<Fault> badRow(std::size_t row, std::string_view column, const std::string& key) {
    return badInput(cellPath(row, column), say("forward.row." + key), say("forward.row.remedy"));
}

/// Collects the numbers of one row; the first bad cell is kept as the fault.
class RowReader {
public:
    RowReader(const CsvTable& table, std::size_t row) : table_(table), row_(row) {}

    double number(std::string_view column) { return keep(table_.number(row_, column)); }
    double number(std::string_view column, double whenEmpty) { return keep(table_.number(row_, column, whenEmpty)); }
    std::string text(std::string_view column) const { return std::string(table_.text(row_, column)); }
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }

private:
    double keep(Result<double> value) {
        if (value)
            return *value;
        if (!fault_)
            fault_ = std::move(value.error());
        return 0;
    }
    const CsvTable& table_;
    std::size_t row_;
    std::optional<Fault> fault_;
};

Result<ParameterRow> parameterRow(const CsvTable& table, std::size_t i, std::set<std::string>& seen) {
    RowReader read(table, i);
    ParameterRow row{read.text("name"), read.number("value"), read.number("low"),  read.number("high"),
                     read.text("unit"), read.text("source"),  read.text("meaning")};
    if (read.fault())
        return fail(*read.fault());
    if (!seen.insert(row.name).second)
        return badRow(i, "name", "twice");
    if (!(row.low <= row.value && row.value <= row.high))
        return badRow(i, "value", "range");
    return row;
}

std::optional<Law> lawFrom(std::string_view text) {
    constexpr std::pair<std::string_view, Law> laws[] = {
        {"lognormal", Law::lognormal}, {"normal", Law::normal}, {"uniform", Law::uniform}, {"tied", Law::tied}};
    for (const auto& [name, law] : laws)
        if (name == text)
            return law;
    return {};
}

Result<Prior> priorRow(const CsvTable& table, std::size_t i) {
    constexpr double none = std::numeric_limits<double>::infinity();
    RowReader read(table, i);
    std::string text = read.text("law"), tiedTo;
    if (text.starts_with("tied ")) // "tied id0"
        tiedTo = std::exchange(text, "tied").substr(5);
    const auto law = lawFrom(text);
    if (!law || (*law == Law::tied && !findParameter(tiedTo)))
        return badRow(i, "law", "law");
    Prior prior{read.text("parameter"),    *law,
                std::move(tiedTo),         read.number("centre", 0),
                read.number("spread", 0),  read.number("low", -none),
                read.number("high", none), read.text("unit"),
                read.text("source")};
    if (read.fault())
        return fail(*read.fault());
    if (!findParameter(prior.parameter))
        return badRow(i, "parameter", "unknown");
    if (prior.low > prior.high)
        return badRow(i, "low", "range");
    return prior;
}

template <class T> std::vector<T> orEmpty(Result<std::vector<T>> rows) {
    return rows ? std::move(*rows) : std::vector<T>{}; // a test parses the built-in files, so they never fail here
}

} // namespace

std::span<const ParameterName> parameterNames() {
    return names;
}

const ParameterName* findParameter(std::string_view name) {
    const auto* found = std::find_if(std::begin(names), std::end(names), [&](const auto& n) { return n.name == name; });
    return found == std::end(names) ? nullptr : found;
}

Result<std::vector<ParameterRow>> parseParameters(std::string_view csv) {
    const auto table = CsvTable::parse(csv);
    if (!table)
        return fail(table.error());
    std::vector<ParameterRow> rows;
    std::set<std::string> seen;
    for (std::size_t i = 0; i < table->rows(); ++i) {
        auto row = parameterRow(*table, i, seen);
        if (!row)
            return fail(row.error());
        rows.push_back(std::move(*row));
    }
    return rows;
}

const std::vector<ParameterRow>& builtInParameterRows() {
    static const auto rows = orEmpty(parseParameters(resources::find("data/parameters.csv")));
    return rows;
}

const Parameters& builtInParameters() {
    static const Parameters parameters = [] {
        Parameters p;
        for (const auto& row : builtInParameterRows())
            if (const auto* parameter = findParameter(row.name)) // rows of other rooms pass by
                parameter->in(p) = row.value;
        return p;
    }();
    return parameters;
}

Result<std::vector<Prior>> parsePriors(std::string_view csv) {
    const auto table = CsvTable::parse(csv);
    if (!table)
        return fail(table.error());
    std::vector<Prior> priors;
    for (std::size_t i = 0; i < table->rows(); ++i) {
        auto prior = priorRow(*table, i);
        if (!prior)
            return fail(prior.error());
        priors.push_back(std::move(*prior));
    }
    return priors;
}

const std::vector<Prior>& builtInPriors() {
    static const auto priors = orEmpty(parsePriors(resources::find("data/priors.csv")));
    return priors;
}

} // namespace staveline

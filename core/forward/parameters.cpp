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

namespace staveline::forward {
namespace {

#define IN(room, member)                                                                                               \
    {                                                                                                                  \
#member, [](Parameters & p) -> double& { return p.room.member; }                                               \
    }
constexpr ParameterName names[] = {IN(brew, ethanolPerHexose),
                                   IN(brew, maltotrioseForLactics),
                                   IN(brew, accessibleDextrin),
                                   IN(brew, otherExtract),
                                   IN(brew, otherFollowsMash),
                                   IN(brew, alphaKept),
                                   IN(brew, boilDecarboxylation),
                                   IN(brew, coumaricTurnover),
                                   IN(brew, lacticFresh),
                                   IN(brew, aceticFresh),
                                   IN(brew, phFresh),
                                   IN(brew, wortBuffer),
                                   IN(brew, phWort),
                                   IN(brew, estersSplit),
                                   IN(brew, wortEsters),
                                   IN(brew, fermentabilityShift),
                                   IN(brew, cloveYeastTurnover),
                                   IN(brew, plainYeastTurnover),
                                   IN(brew, phenolReleaseFactor),
                                   IN(brew, ferulicFactor),
                                   IN(brew, coumaricFactor),
                                   IN(brew, betaHalfLife65),
                                   IN(brew, betaStableShare),
                                   IN(brew, betaStableHalfLife),
                                   IN(brew, gelatinisationShift),
                                   IN(brew, limitDextrinaseRate),
                                   IN(culture, lacticsGrowth),
                                   IN(culture, souring),
                                   IN(culture, halfSpeedSugar),
                                   IN(culture, acidStopsGrowth),
                                   IN(culture, acidStopsSouring),
                                   IN(culture, lacticYield),
                                   IN(culture, aceticPerLactic),
                                   IN(culture, dextrinOpening),
                                   IN(culture, residueAgainstDextrin),
                                   IN(culture, sugarLeak),
                                   IN(culture, brettSugar),
                                   IN(culture, brettEthanol),
                                   IN(culture, brettGrowth),
                                   IN(culture, brettGrowthPer10C),
                                   IN(culture, brettWarm),
                                   IN(culture, decline),
                                   IN(culture, starvedDecline),
                                   IN(culture, starvingSugar),
                                   IN(culture, speedPer10C),
                                   IN(culture, coldest),
                                   IN(culture, warmest),
                                   IN(culture, coldRamp),
                                   IN(culture, warmRamp),
                                   IN(culture, oxygenToAcetic),
                                   IN(culture, heldBack),
                                   IN(culture, startLactics),
                                   IN(culture, startBrett),
                                   IN(culture, enzymeOpening),
                                   IN(culture, refillLactics),
                                   IN(culture, refillBrett),
                                   IN(culture, stopPh),
                                   IN(culture, stopWidth),
                                   IN(culture, alcoholBrakes),
                                   IN(culture, alcoholStops),
                                   IN(culture, hopSteepness),
                                   IN(culture, phSharpensHops),
                                   IN(culture, hopTolerance),
                                   IN(culture, mostHopTolerance),
                                   IN(culture, toleranceGain),
                                   IN(culture, toleranceLoss),
                                   IN(culture, decarboxylation),
                                   IN(culture, vinylReduction),
                                   IN(culture, reductionYield),
                                   IN(culture, phenolicSink),
                                   IN(culture, esterSplitting),
                                   IN(culture, coumaricPerEster),
                                   IN(culture, vinylLoss),
                                   IN(culture, glucanLoss),
                                   IN(culture, arabinoxylanLoss),
                                   IN(culture, isoPka),
                                   IN(culture, hopPh),
                                   IN(culture, isoCisMonths),
                                   IN(culture, isoTransMonths),
                                   IN(culture, isoSpeedPer10C),
                                   IN(culture, evaporation),
                                   IN(culture, vesselHopLoss),
                                   IN(culture, vinylEnergy),
                                   IN(culture, vinylPh),
                                   IN(culture, vinylSlope),
                                   IN(culture, vinylMost),
                                   IN(score, ethylGuaiacolThreshold),
                                   IN(score, ethylPhenolThreshold),
                                   IN(score, vinylGuaiacolThreshold),
                                   IN(score, vinylPhenolThreshold),
                                   IN(score, vinylWeight),
                                   IN(score, funkSteepness),
                                   IN(score, middleFunk),
                                   IN(score, acidityScale),
                                   IN(score, acidityExponent),
                                   IN(score, ownAcidity),
                                   IN(score, carbonation),
                                   IN(score, bodyPerStep),
                                   IN(score, bodyPerExtract),
                                   IN(score, bodyPerAlcohol),
                                   IN(score, bodyPerGlycerol),
                                   IN(score, glucanThickening),
                                   IN(score, arabinoxylanThickening),
                                   IN(score, ordinaryArabinoxylan),
                                   IN(score, lacticThreshold),
                                   IN(score, aceticThreshold),
                                   IN(score, aceticWeight),
                                   IN(score, alcoholSoftens),
                                   IN(score, co2Sharpens),
                                   IN(score, viscosityStep),
                                   IN(score, waterViscosity),
                                   IN(score, alcoholViscosity),
                                   IN(score, extractViscosity),
                                   IN(score, glycerolViscosity),
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
    if (text.starts_with("tied ")) // "tied hopTolerance"
        tiedTo = std::exchange(text, "tied").substr(5);
    const auto law = lawFrom(text);
    if (!law || (*law == Law::tied && !findParameter(tiedTo)))
        return badRow(i, "law", "law");
    Prior prior{read.text("parameter"),    *law,
                std::move(tiedTo),         read.number("factor", 0),
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
    static const Parameters parameters;
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

} // namespace staveline::forward

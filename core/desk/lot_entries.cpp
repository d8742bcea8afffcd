// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_entries.h"

#include "quantity/constants.h"

#include <algorithm>
#include <array>

namespace staveline::desk {

using facts::Added;
using facts::DrawOffFact;
using facts::LotAdditionFact;
using facts::LotMoveFact;
using facts::LotReadingFact;
using facts::PackagingFact;
using facts::RefillFact;
using facts::TopUpFact;
using finishing::LotEntry;
using finishing::LotFlow;

namespace {

constexpr std::array tables = {facts::tableOf<DrawOffFact>,     facts::tableOf<LotMoveFact>,
                               facts::tableOf<LotAdditionFact>, facts::tableOf<LotReadingFact>,
                               facts::tableOf<RefillFact>,      facts::tableOf<TopUpFact>,
                               facts::tableOf<PackagingFact>};

template <class F> constexpr LotFlow flowOf() {
    if constexpr (std::is_same_v<F, DrawOffFact>)
        return LotFlow::drawn;
    else if constexpr (std::is_same_v<F, LotMoveFact>)
        return LotFlow::moved;
    else if constexpr (std::is_same_v<F, LotAdditionFact>)
        return LotFlow::added;
    else if constexpr (std::is_same_v<F, LotReadingFact>)
        return LotFlow::noted;
    else
        return std::is_same_v<F, PackagingFact> ? LotFlow::packed : LotFlow::poured;
}

template <class F> LotEntry entryOf(const Stored<F>& stored) {
    const F& fact = stored.fact;
    LotEntry entry{lotEntryId<F>(stored.id), flowOf<F>(), fact.on, fact.lot, {}, {}};
    if constexpr (std::is_same_v<F, LotAdditionFact>)
        entry.volume = broughtBy(fact).litres;
    else if constexpr (std::is_same_v<F, PackagingFact>)
        entry.volume = litresOf(fact);
    else if constexpr (requires { fact.volume; })
        entry.volume = fact.volume;
    if constexpr (requires { fact.to; })
        entry.to = fact.to;
    return entry;
}

} // namespace

template <class F> std::int64_t lotEntryId(book::RowId row) {
    const auto place = std::find(tables.begin(), tables.end(), facts::tableOf<F>) - tables.begin();
    return row * static_cast<std::int64_t>(tables.size()) + place;
}
template std::int64_t lotEntryId<DrawOffFact>(book::RowId);
template std::int64_t lotEntryId<LotMoveFact>(book::RowId);
template std::int64_t lotEntryId<LotAdditionFact>(book::RowId);
template std::int64_t lotEntryId<LotReadingFact>(book::RowId);
template std::int64_t lotEntryId<RefillFact>(book::RowId);
template std::int64_t lotEntryId<TopUpFact>(book::RowId);
template std::int64_t lotEntryId<PackagingFact>(book::RowId);

book::RowKey rowOfLotEntry(std::int64_t entry) {
    const auto count = static_cast<std::int64_t>(tables.size());
    return {std::string(tables[static_cast<std::size_t>(entry % count)]), entry / count};
}

finishing::Brought broughtBy(const LotAdditionFact& fact) {
    const Kilograms mass = fact.mass.value_or(Kilograms{0});
    if (fact.what == Added::wort)
        return finishing::broughtByWort(fact.volume.value_or(Litres{0}),
                                        fact.extract.value_or(Plato{constants::finishing::lotWort}));
    if (fact.what == Added::fruit)
        if (const auto fruit = finishing::fruit(fact.ingredient); fruit && mass.kg > 0)
            return finishing::broughtBy(*fruit, mass);
    if (fact.what == Added::sugar)
        if (const auto sugar = finishing::primingSugar(fact.ingredient); sugar && mass.kg > 0)
            return finishing::broughtBy(*sugar, mass);
    if (fact.what == Added::acid && mass.kg > 0)
        return finishing::broughtByAcid(mass);
    return finishing::broughtByWater(fact.volume.value_or(Litres{0}));
}

Grams sugarOf(const LotAdditionFact& fact, Litres litres) {
    const finishing::Brought brought = broughtBy(fact);
    return brought.litres.l > 0 ? Grams{brought.fermented.g * (litres / brought.litres)} : Grams{0};
}

Litres litresOf(const PackagingFact& fact) {
    return Litres{fact.count * fact.size.ml / 1000} + fact.lost;
}

std::vector<LotEntry> lotEntries(const LotFacts& lots) {
    std::vector<LotEntry> entries;
    const auto add = [&](const auto& list) {
        for (const auto& stored : list)
            entries.push_back(entryOf(stored));
    };
    add(lots.draws);
    add(lots.moves);
    add(lots.additions);
    add(lots.readings);
    add(lots.refills);
    add(lots.topUps);
    add(lots.packagings);
    return entries;
}

facts::VesselName mostlyDrawnFrom(const LotFacts& lots, std::int64_t entry) {
    const auto replay = finishing::replayLots(lotEntries(lots));
    const auto given = replay.given.find(entry);
    std::map<facts::VesselName, double> litres;
    if (given != replay.given.end())
        for (const finishing::LotPart& part : given->second.parts)
            if (const auto* draw = factOfEntry(lots.draws, part.entry))
                litres[draw->vessel] += part.litres.l;
    const auto most = std::max_element(litres.begin(), litres.end(),
                                       [](const auto& a, const auto& b) { return a.second < b.second; });
    return most == litres.end() ? facts::VesselName() : most->first;
}

} // namespace staveline::desk

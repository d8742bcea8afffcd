// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_checks.h"

#include "desk/lot_entries.h"
#include "finishing/fruit.h"
#include "finishing/package.h"
#include "finishing/priming.h"
#include "quantity/parse.h"
#include "quantity/text.h"
#include "quantity/words.h"

#include <algorithm>

namespace staveline::desk {

using facts::Added;
using facts::LotAdditionFact;
using facts::LotMoveFact;
using facts::LotReadingFact;
using facts::OpenedFact;
using facts::PackagingFact;

namespace {

Result<void> at(const char* path, const Fault& fault) {
    return badInput(path, fault.cause, fault.remedy);
}

/// What came to the lot is one thing a brewer can name, and how much of it.
Result<void> isWeighed(const LotAdditionFact& fact) {
    const bool byVolume = fact.what == Added::wort;
    const bool byMass = fact.what == Added::fruit || fact.what == Added::sugar || fact.what == Added::acid;
    if ((byVolume && !fact.volume) || (byMass && !fact.mass))
        return badInput(byVolume ? "/volume_l" : "/mass_kg", say("desk.lot.how_much"),
                        say(byVolume ? "desk.lot.how_much.volume" : "desk.lot.how_much.mass"));
    if (fact.extract && !byVolume)
        return badInput("/extract_p", say("desk.lot.extract"), say("desk.lot.extract.remedy"));
    return {};
}

Result<void> isKnownIngredient(const LotAdditionFact& fact) {
    if (fact.what == Added::fruit)
        if (const auto known = finishing::fruit(fact.ingredient); !known)
            return at("/ingredient", known.error());
    if (fact.what != Added::sugar)
        return {};
    const auto known = finishing::primingSugar(fact.ingredient);
    if (!known)
        return at("/ingredient", known.error());
    if (known->isLiquid())
        return badInput("/ingredient", say("desk.lot.liquid_sugar").with("sugar", known->name),
                        say("desk.lot.liquid_sugar.remedy"));
    return {};
}

/// More fruit than beer ever lies on is a slip, and so is as much of sugar or acid.
Result<void> isNoSlip(const LotAdditionFact& fact, const LotFacts& lots) {
    if (fact.what != Added::fruit && fact.what != Added::sugar && fact.what != Added::acid)
        return {};
    const auto replay = finishing::replayLots(lotEntries(lots), fact.on);
    const auto lot = replay.lots.find(fact.lot);
    const Litres held = lot == replay.lots.end() ? Litres{0} : lot->second.volume();
    if (!(held.l > 0))
        return badInput("/lot", say("desk.lot.empty").with("lot", fact.lot).with("on", fact.on),
                        say("desk.lot.empty.remedy"));
    const double perLitre = fact.what == Added::fruit   ? constants::finishing::fruitMost
                            : fact.what == Added::sugar ? constants::finishing::sugarMost
                                                        : constants::finishing::acidMost;
    const Kilograms most{held.l * perLitre};
    if (*fact.mass <= most)
        return {};
    return badInput("/mass_kg", say("desk.lot.too_much_fruit").with("mass", *fact.mass).with("held", held),
                    say("desk.lot.too_much_fruit.remedy").with("most", most));
}

Result<void> isKnownPackage(const PackagingFact& fact) {
    if (fact.kind == facts::PackageKind::bottle && fact.size.ml > constants::finishing::largestBottle)
        return fail(outOfRange(show(shortest(fact.size.ml)), fact.size.ml,
                               {constants::finishing::smallestBottle, constants::finishing::largestBottle},
                               "/size_ml"));
    if (!fact.make.empty())
        if (const auto make = finishing::bottleMake(fact.make); !make)
            return at("/make", make.error());
    if (!fact.sugar.empty())
        if (const auto sugar = finishing::primingSugar(fact.sugar); !sugar)
            return at("/sugar", sugar.error());
    return {};
}

Result<void> fillingIsFree(const PackagingFact& fact, const LotFacts& lots) {
    const std::string key = nameKey(fact.name);
    for (const auto& [id, other] : lots.packagings)
        if (nameKey(other.name) == key)
            return badInput("/name", say("desk.lot.filled_twice").with("name", other.name).with("on", other.on),
                            say("desk.name_taken.remedy"));
    return {};
}

} // namespace

Result<void> canBeLot(const std::string& name, const char* path, Cellar& cellar) {
    if (auto ok = checkName(name, path); !ok)
        return ok;
    if (const auto vessel = cellar.shared().names.vesselLike(name); !vessel.empty())
        return badInput(path, say("desk.lot.vessels_name").with("name", vessel),
                        say("desk.lot.vessels_name.remedy").with("name", name));
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    if (const auto like = (*lots)->lotLike(name); !like.empty() && like != name)
        return badInput(path, say("desk.name_alike").with("name", name).with("like", like),
                        say("desk.lot.alike.remedy").with("like", like));
    return {};
}

Result<void> canStillGoInto(const std::string& lot, Day on, Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    for (const auto& [id, filling] : (*lots)->packagings)
        if (filling.lot == lot && filling.on >= on)
            return badInput(
                "/on", say("desk.lot.filled_since").with("lot", lot).with("name", filling.name).with("on", filling.on),
                say("desk.lot.filled_since.remedy").with("from", filling.on + std::chrono::days{1}));
    return {};
}

Result<void> isNoLot(const std::string& vessel, Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    if (const auto lot = (*lots)->lotLike(vessel); !lot.empty())
        return badInput("/name", say("desk.lot.lots_name").with("name", lot), say("desk.name_taken.remedy"));
    return {};
}

Result<void> isLot(const std::string& lot, Day on, Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    const auto begins = (*lots)->begins(lot);
    if (begins && *begins <= on)
        return {};
    if (begins)
        return badInput("/on", say("desk.lot.before").with("lot", lot).with("since", *begins),
                        say("desk.lot.before.remedy"));
    const auto known = (*lots)->names();
    return badInput("/lot", say("desk.lot.unknown").with("lot", excerpt(lot)),
                    known.empty() ? say("desk.lot.unknown.none") : facts::offerName(lot, known));
}

Result<void> canBe(const LotReadingFact& fact, Cellar& cellar) {
    if (fact.measured == facts::Measured{} && fact.note.empty())
        return badInput("", say("desk.nothing_measured"), say("desk.nothing_measured.remedy"));
    if (fact.keptWarm && !fact.measured.gravity)
        return badInput("/gravity_sg", say("desk.lot.warm_gravity"), say("desk.lot.warm_gravity.remedy"));
    return isLot(fact.lot, fact.on, cellar);
}

Result<void> canBe(const LotAdditionFact& fact, Cellar& cellar) {
    for (auto ok : {isWeighed(fact), isKnownIngredient(fact), isLot(fact.lot, fact.on, cellar)})
        if (!ok)
            return ok;
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    return isNoSlip(fact, **lots);
}

Result<void> canBe(const LotMoveFact& fact, Cellar& cellar) {
    if (auto ok = isLot(fact.lot, fact.on, cellar); !ok)
        return ok;
    if (facts::staysInCellar(fact.why) == fact.to.empty())
        return badInput("/to", say(fact.to.empty() ? "desk.lot.where_to" : "desk.lot.leaves"),
                        say(fact.to.empty() ? "desk.lot.where_to.remedy" : "desk.lot.leaves.remedy"));
    if (fact.to.empty())
        return {};
    if (fact.to == fact.lot)
        return badInput("/to", say("desk.lot.into_itself"), say("desk.lot.into_itself.remedy"));
    return canBeLot(fact.to, "/to", cellar);
}

Result<void> canBe(const PackagingFact& fact, Cellar& cellar) {
    for (auto ok : {isLot(fact.lot, fact.on, cellar), isKnownPackage(fact)})
        if (!ok)
            return ok;
    const auto lots = cellar.lots();
    return lots ? fillingIsFree(fact, **lots) : Result<void>(fail(lots.error()));
}

Result<void> canBe(const OpenedFact& fact, Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    if ((*lots)->packaging(fact.packaging))
        return {};
    std::vector<std::string> known;
    for (const auto& [id, filling] : (*lots)->packagings)
        known.push_back(filling.name);
    return badInput("/packaging", say("desk.lot.unknown_filling").with("name", excerpt(fact.packaging)),
                    known.empty() ? say("desk.lot.unknown_filling.none") : facts::offerName(fact.packaging, known));
}

} // namespace staveline::desk

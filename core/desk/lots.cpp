// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lots.h"

#include "desk/inside.h"
#include "desk/lot_beer.h"
#include "desk/lot_lines.h"
#include "desk/lot_waits.h"

#include <algorithm>

namespace staveline::desk {

using facts::PackagingFact;
using finishing::LotState;
using finishing::Trait;

namespace {

/// Of the ledger of its vessel, newest first.
std::vector<LotGeneration> generationsOf(const Drawn& drawn, const SharedFacts& shared) {
    std::vector<LotGeneration> all;
    for (const vessel::Generation& part : drawn.then.generations) {
        LotGeneration generation{{}, part.on, part.share};
        for (const vessel::LedgerEntry& entry : drawn.vessel->entries)
            if (entry.id == part.entry && entry.brew)
                if (const auto name = shared.names.brewNames.find(*entry.brew); name != shared.names.brewNames.end())
                    generation.brew = name->second;
        all.push_back(std::move(generation));
    }
    return all;
}

std::vector<LotPartView> partsOf(const LotState& state, LotBeers& beers, const SharedFacts& shared) {
    std::vector<LotPartView> parts;
    for (const finishing::LotPart& part : state.parts) {
        LotPartView view;
        view.litres = part.litres;
        view.share = Share{part.litres / state.volume()};
        if (const Drawn* drawn = beers.drawn(part.entry)) {
            view.vessel = drawn->fact->vessel;
            view.on = drawn->fact->on;
            view.age = Days{drawn->then.meanAge.d + daysBetween(view.on, beers.today())};
            view.generations = generationsOf(*drawn, shared);
        } else if (const auto* addition = beers.added(part.entry)) {
            view.added = render(additionWords(*addition));
            view.on = addition->on;
        }
        parts.push_back(std::move(view));
    }
    return parts;
}

std::vector<PackageView> packagesOf(const std::string& lot, const LotBeers& beers) {
    std::vector<PackageView> all;
    for (const auto& [id, filled] : beers.facts().packagings)
        if (filled.lot == lot && filled.on <= beers.today())
            all.push_back(packageOf(id, filled, beers.facts()));
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    return all;
}

LotStage stageOf(const LotView& lot) {
    if (lot.litres.l > 0)
        return LotStage::ageing;
    const bool left = std::any_of(lot.packages.begin(), lot.packages.end(),
                                  [](const PackageView& package) { return package.left > 0; });
    return left ? LotStage::packed : LotStage::gone;
}

/// What is left, or what was filled last where nothing is.
LotState lastState(const std::string& name, const LotView& view, const LotBeers& beers) {
    const LotState& now = beers.replay().lots.find(name)->second;
    if (!now.parts.empty() || view.packages.empty())
        return now;
    return beers.replay().given.at(lotEntryId<PackagingFact>(view.packages.back().id));
}

/// What a lot was given may taste beyond what a score can say.
double onItsScale(Trait trait, double value) {
    const bool score = trait == Trait::acidity || trait == Trait::funk || trait == Trait::body;
    return score ? std::clamp(value, 0.0, 10.0) : value;
}

/// Of beer that is there what was measured of the lot counts too.
Result<void> addTraits(LotView& view, const LotState& state, LotBeers& beers) {
    if (state.parts.empty())
        return {};
    const auto source = view.litres.l > 0 ? beers.lot(view.name) : beers.beerOf(state);
    if (!source) // a vessel that cannot be reckoned hides no other lot
        return source.error().kind == FaultKind::notPossible ? Result<void>{} : fail(source.error());
    for (const Trait trait : finishing::allTraits)
        if (const auto value = traitOf(*source, trait))
            view.traits.push_back({trait, onItsScale(trait, *value), source->sd[trait], source->measured[trait]});
    return {};
}

/// Whether a view says what the beer is like, which takes the replay of its vessels.
enum class Likeness {
    none,
    asked, ///< of what is left, but not of beer that nobody told of for long
    always
};

Result<LotView> viewOf(const std::string& name, LotBeers& beers, Cellar& cellar, Likeness likeness) {
    LotView view;
    view.name = name;
    const LotState& now = beers.replay().lots.find(name)->second;
    view.since = now.since.value_or(Day{});
    view.litres = now.volume();
    view.packages = packagesOf(name, beers);
    const LotState state = lastState(name, view, beers);
    view.meanAge = beers.meanAge(state);
    view.parts = partsOf(state, beers, cellar.shared());
    view.lines = lotLines(name, beers);
    view.stage = stageOf(view);
    const bool told = !neverToldOf(view, beers.today());
    if (likeness == Likeness::always || (likeness == Likeness::asked && told && view.stage != LotStage::gone))
        if (auto done = addTraits(view, state, beers); !done)
            return fail(done.error());
    if (!told)
        return view;
    const finishing::BeerKnown known = beers.known(name);
    if (const auto gravity = gravityNow(known)) {
        view.gravity = gravity->gravity;
        view.gravityOn = gravity->on;
    }
    view.waits = waitsOf(view, known, beers);
    return view;
}

} // namespace

std::string_view wordOf(LotStage stage) {
    constexpr std::array<std::string_view, 3> words = {"ageing", "packed", "gone"};
    return words[static_cast<std::size_t>(stage)];
}

std::string_view wordOf(LotWork work) {
    constexpr std::array<std::string_view, 4> words = {"taste_fruit", "test_gravity", "bottle", "open_first"};
    return words[static_cast<std::size_t>(work)];
}

namespace {

Result<std::vector<LotView>> viewsOf(Cellar& cellar, Day today, Likeness likeness) {
    auto beers = LotBeers::on(cellar, today);
    if (!beers)
        return fail(beers.error());
    std::vector<LotView> all;
    for (const auto& [name, state] : beers->replay().lots) {
        auto view = viewOf(name, *beers, cellar, likeness);
        if (!view)
            return fail(view.error());
        all.push_back(*std::move(view));
    }
    return all;
}

} // namespace

namespace {

Result<std::vector<LotView>> newestFirst(Result<std::vector<LotView>> all) {
    if (all)
        std::stable_sort(all->begin(), all->end(), [](const LotView& a, const LotView& b) {
            return std::pair(a.stage, b.since) < std::pair(b.stage, a.since);
        });
    return all;
}

} // namespace

Result<std::vector<LotView>> Desk::lots() const {
    return newestFirst(viewsOf(*inside_->cellar, today(), Likeness::asked));
}

Result<std::vector<LotView>> Desk::lotsInBrief() const {
    return newestFirst(viewsOf(*inside_->cellar, today(), Likeness::none));
}

Result<std::vector<LotView>> Desk::lotsWaiting() const {
    auto all = viewsOf(*inside_->cellar, today(), Likeness::none);
    if (!all)
        return all;
    std::erase_if(*all, [](const LotView& lot) { return lot.waits.empty(); });
    std::stable_sort(all->begin(), all->end(),
                     [](const LotView& a, const LotView& b) { return a.waits.front().on < b.waits.front().on; });
    return all;
}

Result<LotView> Desk::lot(const facts::LotName& name) const {
    auto beers = LotBeers::on(*inside_->cellar, today());
    if (!beers)
        return fail(beers.error());
    if (!beers->replay().lots.contains(name))
        return fail(beers->lot(name).error());
    return viewOf(name, *beers, *inside_->cellar, Likeness::always);
}

} // namespace staveline::desk

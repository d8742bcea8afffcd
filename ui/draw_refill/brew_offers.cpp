// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/brew_offers.h"

#include <algorithm>

namespace staveline::ui {

using desk::BrewStock;

namespace {

constexpr Litres shownAsNothing{.05}; // 0.0 L

bool usedUp(const BrewStock& stock) {
    return stock.left && *stock.left < shownAsNothing;
}

/// Where its litres are not recorded, a brew that was poured is taken to be gone.
bool waits(const BrewStock& stock) {
    return stock.left ? !usedUp(stock) : !stock.poured;
}

QString wordsOf(const BrewStock& stock, const Session& session) {
    const facts::BrewFact& brew = stock.brew;
    QStringList words{qs(brew.name), dayWords(brew.on)};
    if (!brew.vessel.empty())
        words << text(say("ui.brew_offer.for").with("vessel", brew.vessel), session.units());
    if (usedUp(stock))
        words << own("ui.brew_offer.used_up");
    else if (stock.left)
        words << text(say("ui.brew_offer.left").with("left", *stock.left), session.units());
    else
        words << own(stock.poured ? "ui.brew_offer.poured" : "ui.brew_offer.unknown");
    return words.join(QStringLiteral(" \u00b7 "));
}

} // namespace

std::vector<Offer> brewOffers(const std::vector<BrewStock>& stock, const Session& session) {
    std::vector<BrewStock> sorted = stock;
    std::stable_partition(sorted.begin(), sorted.end(), waits);
    std::vector<Offer> offers;
    offers.reserve(sorted.size());
    for (const BrewStock& each : sorted)
        offers.push_back({wordsOf(each, session), each.brew.name});
    return offers;
}

QString withoutBrew(const desk::Desk& desk, const facts::VesselName& vessel) {
    using From = desk::PlannedRecipe::From;
    const auto planned = desk.planned(vessel);
    if (planned && !planned->firstFill && planned->from == From::choice && planned->since)
        return text(say("ui.choice.planned").with("on", *planned->since));
    const bool last = planned && !planned->firstFill && planned->from == From::lastRefill;
    return own(last ? "ui.choice.last_refill" : "ui.choice.usual_recipe");
}

std::string brewMadeFor(const std::vector<BrewStock>& stock) {
    const auto made = std::find_if(stock.begin(), stock.end(),
                                   [](const BrewStock& each) { return each.forThisRefill && !usedUp(each); });
    return made == stock.end() ? std::string() : made->brew.name;
}

} // namespace staveline::ui

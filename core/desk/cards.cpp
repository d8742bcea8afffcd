// SPDX-License-Identifier: GPL-3.0-or-later
// The cards that hang on the vessels.
#include "desk/inside.h"
#include "desk/ledger.h"
#include "desk/vessels_asked.h"
#include "sheet/vessel_card.h"

#include <algorithm>

namespace staveline::desk {
namespace {

using sheet::VesselCard;

std::vector<Message> cultureWords(const facts::CultureFact& culture) {
    std::vector<Message> words;
    if (!culture.name.empty())
        words.push_back(say("desk.plain").with("text", culture.name));
    words.push_back(say("desk.card.brettanomyces." + std::string(wordOf(culture.brettanomyces))));
    if (culture.diastatic)
        words.push_back(say("desk.card.diastatic"));
    return words;
}

/// What was pitched last.
std::optional<Message> pitchedLast(const CurrentVessel& vessel) {
    const facts::EventFact* last = nullptr;
    for (const auto& [id, event] : vessel.record.of<facts::EventFact>())
        if (event.what == facts::Happening::pitched && event.on <= vessel.today)
            last = &event;
    if (!last)
        return {};
    return last->culture.empty() ? say("desk.card.pitched").with("on", last->on)
                                 : say("desk.card.pitched.what").with("culture", last->culture).with("on", last->on);
}

std::vector<Message> cautionsOf(const CurrentVessel& vessel, const facts::CultureFact* culture) {
    std::vector<Message> cautions;
    if (vessel.fault && vessel.fault->rule)
        cautions.push_back(faultWords(*vessel.fault->rule, vessel.fault->until));
    if (culture && culture->killerSensitive && !vessel.toFill)
        cautions.push_back(say("desk.card.killer"));
    if (vessel.record.facts.shape == facts::VesselForm::keg)
        cautions.push_back(say("caution.refill.keg").with("gravity", SpecificGravity{1.010}));
    else
        cautions.push_back(say("caution.refill.vented"));
    return cautions;
}

/// What went in last, as the ledger words it.
void takeLastIn(const LedgerView& ledger, VesselCard& card) {
    const auto brings = [](const LedgerLine& each) {
        const vessel::Flow flow = vessel::traitsOf(each.kind).flow;
        return flow == vessel::Flow::in || flow == vessel::Flow::opens;
    };
    const auto last = std::find_if(ledger.lines.rbegin(), ledger.lines.rend(), brings);
    if (last == ledger.lines.rend())
        return;
    card.lastIn = last->text;
    card.lastInOn = last->on;
}

VesselCard cardOf(const CurrentVessel& vessel, const LedgerView& ledger) {
    const facts::VesselFact& facts = vessel.record.facts;
    const facts::CultureFact* culture = vessel.record.latest<facts::CultureFact>(vessel.today);
    VesselCard card;
    card.vessel = facts.name;
    card.kind = vesselWords(facts);
    card.capacity = facts.capacity;
    card.now = vessel.now();
    takeLastIn(ledger, card);
    card.due = vessel.due.text;
    if (!facts.retired)
        (vessel.toFill ? card.fill : card.draw) = vessel.dates.draw;
    if (culture)
        card.culture = cultureWords(*culture);
    if (auto pitched = pitchedLast(vessel))
        card.culture.push_back(std::move(*pitched));
    card.cautions = cautionsOf(vessel, culture);
    return card;
}

} // namespace

Result<sheet::Document> Desk::vesselCards(const facts::VesselName& name, const DisplayUnits& units) const {
    const auto names = vesselsAsked(*this, name);
    if (!names)
        return fail(names.error());
    std::vector<VesselCard> cards;
    for (const auto& each : *names) {
        const auto ledgerView = ledger(each);
        if (!ledgerView)
            return fail(ledgerView.error());
        const auto vessel = inside_->current(each);
        if (!vessel)
            return fail(vessel.error());
        cards.push_back(cardOf(**vessel, *ledgerView));
    }
    if (cards.empty())
        return fail({FaultKind::notPossible, "/vessel", say("desk.no_cards"), say("desk.no_cards.remedy")});
    return sheet::vesselCards(cards, today(), units);
}

} // namespace staveline::desk

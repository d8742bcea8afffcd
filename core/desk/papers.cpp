// SPDX-License-Identifier: GPL-3.0-or-later
// The papers: the brew sheet and the sheet to taste on.
#include "desk/advice.h"
#include "desk/inside.h"
#include "desk/stock.h"
#include "facts/kept_words.h"
#include "sheet/brew_sheet.h"
#include "sheet/tasting_paper.h"

#include <algorithm>

namespace staveline::desk {
namespace {

/// What changes, in the shape the sheet reads.
advice::Proposal toldChanges(const std::vector<std::string>& changes, const DisplayUnits& units) {
    advice::Proposal proposal;
    for (const auto& text : changes) {
        advice::Move move;
        move.wording = say("desk.plain").with("text", facts::toldWords(text, units));
        proposal.moves.push_back(std::move(move));
    }
    return proposal;
}

} // namespace

Result<sheet::Document> Desk::brewSheet(const facts::VesselName& name, const DisplayUnits& units) const {
    auto found = inside_->current(name);
    if (!found)
        return fail(found.error());
    const CurrentVessel& vessel = **found;
    const VesselRecord& record = vessel.record;
    const SharedFacts& shared = inside_->cellar->shared();
    const vessel::LedgerState& now = vessel.now();
    const advice::Setting& setting = vessel.inUse;
    auto plan = brewPlan(name);
    if (!plan)
        return fail(plan.error());
    if (plan->cannot)
        return fail(*plan->cannot);
    sheet::BrewSheetInput sheet;
    sheet.vessel = name;
    if (vessel.brewed)
        sheet.brew = vessel.brewed->name;
    sheet.vesselShape = wordOf(record.facts.shape);
    if (const facts::CultureFact* culture = record.latest<facts::CultureFact>(today()))
        sheet.killerSensitive = culture->killerSensitive;
    sheet.on = today();
    sheet.plan = std::move(*plan);
    sheet.recipe = setting.recipe;
    sheet.dates = vessel.dates;
    if (vessel.fault && vessel.fault->rule) {
        sheet.fault = faultWords(*vessel.fault->rule, vessel.fault->until);
        sheet.notYet = vessel.fault->rule->blocksAdvice;
        sheet.lookAgain = vessel.fault->until;
    }
    if (!vessel.brewed) {
        Shopping shopping = shoppingFor(sheet.plan, setting.recipe, shared, today(), vessel.dates.brew);
        sheet.toBuy = std::move(shopping.toBuy);
        sheet.uncounted = std::move(shopping.uncounted);
    }
    sheet.firstFill = vessel.toFill;
    sheet.draw = setting.draw;
    advice::Proposal chosen = toldChanges(changesSinceLastRefill(record, shared.pantry, now), units);
    sheet.chosen = &chosen;
    if (const facts::ChoiceFact* choice = vessel.toFill ? nullptr : openChoice(record, now);
        choice && choice->forecast->recipe == setting.recipe) {
        const facts::Forecast& promised = *choice->forecast;
        for (const auto& text : promised.reasons)
            chosen.reasons.push_back(say("desk.plain").with("text", facts::toldWords(text, units)));
        for (Dimension d : allDimensions)
            sheet.expected[d] = promisedBand(promised, d);
        sheet.forecastNote = render(say("desk.forecast_note")
                                        .with("on", choice->on)
                                        .with("version", promised.modelVersion)
                                        .with("fingerprint", promised.fingerprint));
    }
    return staveline::sheet::brewSheet(sheet, units);
}

sheet::Document Desk::tastingPaper(const facts::VesselName& name, bool shortSheet, const DisplayUnits& units) const {
    sheet::TastingPaperInput input;
    input.vessel = name;
    input.shortSheet = shortSheet;
    if (auto record = inside_->cellar->vessel(name))
        input.cellar = Celsius{std::clamp((*record)->facts.temperature.c, 12.0, 14.0)};
    return staveline::sheet::tastingPaper(input, units);
}

} // namespace staveline::desk

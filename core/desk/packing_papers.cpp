// SPDX-License-Identifier: GPL-3.0-or-later
// The packaging day sheet and the labels of what was answered.
#include "desk/desk.h"
#include "desk/packing.h"
#include "sheet/bottle_label.h"
#include "sheet/packing_sheet.h"

namespace staveline::desk {

sheet::Document Desk::packingSheet(const PackingAnswer& answer, const DisplayUnits& units) const {
    sheet::PackingSheetInput input;
    input.name = answer.name;
    input.on = today();
    input.parts = {{answer.vessel, answer.litres}};
    input.lost = answer.lost;
    input.wanted = answer.wanted;
    input.sugar = answer.sugar;
    input.extract = answer.extract;
    input.residual = answer.residual;
    input.priming = answer.priming;
    input.package = answer.package;
    input.verdict = answer.verdict;
    if (answer.keg)
        input.keg = sheet::KegSetting{*answer.keg, *answer.kegAt};
    input.yeast = answer.yeast;
    input.cautions = answer.cautions;
    return sheet::packingSheet(input, units);
}

Result<sheet::Document> Desk::bottleLabels(const PackingAnswer& answer, const DisplayUnits& units) const {
    if (answer.verdict.answer == finishing::GuardAnswer::refused)
        return fail({FaultKind::notPossible, "/label", say("desk.no_labels").with("name", answer.name),
                     say("desk.no_labels.remedy")});
    sheet::BottleLabel label;
    label.name = answer.name;
    label.packed = today();
    label.size = answer.package.size;
    label.generations = answer.generations;
    label.alcohol = answer.alcohol.value;
    label.spread = answer.alcohol.spread;
    label.alcoholMeasured = answer.alcohol.measured;
    return sheet::bottleLabels(label, units);
}

} // namespace staveline::desk

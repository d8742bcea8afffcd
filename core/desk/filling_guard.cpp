// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_entries.h"
#include "desk/packed_beer.h"
#include "desk/packing_words.h"
#include "quantity/text.h"

#include <algorithm>
#include <array>

namespace staveline::desk {

using facts::PackagingFact;
using finishing::GuardAnswer;

namespace {

/// Kegs are rated, not made in sizes of bottles.
PackingRequest requestOf(const PackagingFact& filling) {
    PackingRequest request;
    request.lot = filling.lot;
    request.litres = Litres{filling.count * filling.size.ml / 1000};
    if (filling.sugarWeight || !filling.planned)
        request.sugarWeight = filling.sugarWeight.value_or(GramsPerLitre{0});
    else
        request.volumes = filling.planned;
    if (!filling.sugar.empty())
        request.sugar = filling.sugar;
    if (filling.kind == facts::PackageKind::bottle) {
        request.package.size = filling.size;
        request.make = filling.make;
    }
    request.package.rating = filling.rating;
    request.package.warmest = filling.warmest.value_or(request.package.warmest);
    if (filling.residual)
        request.residual = *filling.residual;
    if (!filling.overrideReason.empty())
        request.override = filling.overrideReason;
    return request;
}

/// The field of the filling that a field of the request was made from.
Fault atFilling(Fault fault, const PackagingFact& filling) {
    constexpr std::array<std::pair<std::string_view, std::string_view>, 5> fields = {{{"/litres", "/count"},
                                                                                      {"/volumes", "/planned_vol"},
                                                                                      {"/bottle_ml", "/size_ml"},
                                                                                      {"/override", "/override_reason"},
                                                                                      {"/gravity", "/lot"}}};
    if (fault.path == "/volumes" && filling.sugarWeight)
        fault.path = "/sugar_g_l";
    for (const auto& [asked, stored] : fields)
        if (fault.path == asked) {
            fault.path = stored;
            break;
        }
    return fault;
}

std::string joined(const std::vector<Message>& words) {
    std::string text;
    for (const Message& message : words)
        text += (text.empty() ? "" : " ") + render(message);
    return text;
}

} // namespace

Result<PackagingFact> guarded(PackagingFact filling, const Cellar& cellar) {
    Cellar looked = cellar; // what is worked out for it is not kept
    const PackingRequest request = requestOf(filling);
    const auto beer = packedBeer(request, looked, filling.on);
    if (!beer)
        return fail(atFilling(beer.error(), filling));
    if (litresOf(filling).l > beer->held.l + constants::finishing::lotRounding)
        return filling; // its ledger refuses it
    const auto answer = packed(request, *beer);
    if (!answer)
        return fail(atFilling(answer.error(), filling));
    const finishing::GuardVerdict& verdict = answer->verdict;
    if (verdict.answer == GuardAnswer::refused)
        return badInput("/override_reason", say("desk.lot.guard").with("why", joined(verdict.refusals)),
                        say("desk.lot.guard.remedy"));
    filling.verdict = joined(verdictWords(verdict));
    filling.until = verdict.until;
    return filling;
}

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/bottle_label.h"

#include "sheet/builder.h"
#include "sheet/layers.h"

namespace staveline::sheet {
namespace {

constexpr CardGrid eightToAPage{2, 4, true};
constexpr std::size_t linesForLaw = 2;

std::string beersOf(const SheetBuilder& sheet, const BottleLabel& label) {
    std::string beers;
    for (const Layer& layer : layersOf(label.generations))
        beers += (beers.empty() ? "" : ", ") + sheet.text(wordsOf(layer));
    return beers;
}

} // namespace

Document bottleLabels(const BottleLabel& label, const DisplayUnits& units, const Catalogue& texts) {
    SheetBuilder sheet(units, texts);
    sheet.document.title = sheet.text(say("sheet.label.title").with("name", label.name));
    sheet.document.cards = eightToAPage;
    sheet.document.blocks.emplace_back(Heading{1, label.name});
    sheet.paragraph(say(label.alcoholMeasured ? "sheet.label.measured" : "sheet.label.computed")
                        .with("size", label.size)
                        .with("alcohol", label.alcohol)
                        .with("spread", Number{label.spread.pct}));
    sheet.paragraph(say("sheet.label.packed").with("day", label.packed));
    if (!label.generations.empty())
        sheet.paragraph(say("sheet.label.beers").with("beers", beersOf(sheet, label)));
    sheet.table({"sheet.label.law"}, {}, std::vector<std::vector<std::string>>(linesForLaw, {""}));
    return std::move(sheet.document);
}

} // namespace staveline::sheet

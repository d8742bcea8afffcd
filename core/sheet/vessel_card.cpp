// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/vessel_card.h"

#include "sheet/builder.h"
#include "sheet/layers.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::sheet {
namespace {

constexpr double drawnWide = 300, drawnHigh = 96, boxWide = 78, lineHigh = 11, edge = 4; ///< of the drawing

/// A layer from `y` down, with its words at `label` beside it; the older the darker.
std::string drawnLayer(double y, double height, double label, double age, const std::string& words) {
    const int grey = 235 - static_cast<int>(130 * age);
    return fmt::format(R"(<rect x="{}" y="{:.1f}" width="{}" height="{:.1f}" fill="#{:02x}{:02x}{:02x}" stroke="black")"
                       R"( stroke-width=".5"/>)",
                       edge, y, boxWide, height, grey, grey, grey) +
           fmt::format(R"(<line x1="{}" y1="{:.1f}" x2="{}" y2="{:.1f}" stroke="black" stroke-width=".4"/>)",
                       edge + boxWide, y + height / 2, edge + boxWide + 10, label - lineHigh / 3) +
           fmt::format(R"(<text x="{}" y="{:.1f}" font-family="sans-serif" font-size="9">{}</text>)",
                       edge + boxWide + 13, label, words);
}

/// Safe in black and white: each layer has its edge and its words.
std::string drawn(const SheetBuilder& sheet, const VesselCard& card, const std::vector<Layer>& layers) {
    const double whole = drawnHigh - 2 * edge;
    const double fill = card.capacity.l > 0 ? std::clamp(card.now.volume / card.capacity, 0.0, 1.0) : 0;
    const double oldest = static_cast<double>(std::max<std::size_t>(2, layers.size()) - 1);
    std::string svg;
    double y = edge + whole * (1 - fill), label = edge + lineHigh;
    for (std::size_t i = 0; i < layers.size(); ++i) {
        const double height = whole * fill * layers[i].share;
        label = std::max(label, y + height / 2 + lineHigh / 3);
        svg += drawnLayer(y, height, label, static_cast<double>(i) / oldest, sheet.text(wordsOf(layers[i])));
        y += height;
        label += lineHigh;
    }
    // The words of thin layers reach below the vessel.
    return fmt::format(R"(<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {} {:.1f}">{})", drawnWide,
                       std::max(drawnHigh, label - lineHigh + edge), svg) +
           fmt::format(R"(<rect x="{}" y="{}" width="{}" height="{}" fill="none" stroke="black"/></svg>)", edge, edge,
                       boxWide, whole);
}

std::string levelWords(const SheetBuilder& sheet, const VesselCard& card) {
    const bool empty = card.fill || card.now.volume.l <= 0;
    return sheet.text(say(empty ? "sheet.card.level.empty" : "sheet.card.level.room")
                          .with("held", card.now.volume)
                          .with("capacity", card.capacity)
                          .with("room", card.capacity - card.now.volume));
}

std::string inWords(const SheetBuilder& sheet, const VesselCard& card, const std::vector<Layer>& layers) {
    std::string words =
        sheet.text(say("sheet.card.level").with("held", card.now.volume).with("capacity", card.capacity));
    for (const Layer& layer : layers)
        words += "; " + sheet.text(wordsOf(layer));
    return words;
}

/// Lines of the card, each with its name.
std::vector<std::vector<std::string>> linesOf(const SheetBuilder& sheet, const VesselCard& card) {
    std::vector<std::vector<std::string>> lines;
    const auto add = [&](const char* key, std::string words) { lines.push_back({sheet.text(key), std::move(words)}); };
    add("sheet.card.holds", levelWords(sheet, card));
    if (card.now.volume.l > 0)
        add("sheet.card.age", sheet.value(Age{card.now.meanAge.d}));
    if (card.lastIn)
        add("sheet.card.last_in",
            sheet.text(
                say("sheet.card.last_in.what").with("day", card.lastInOn).with("what", sheet.text(*card.lastIn))));
    add("sheet.card.due", sheet.text(card.due));
    if (card.fill)
        add("sheet.card.fill", sheet.value(*card.fill));
    if (card.draw)
        add("sheet.card.draw", sheet.value(*card.draw));
    std::string culture;
    for (const Message& each : card.culture)
        culture += (culture.empty() ? "" : ", ") + sheet.text(each);
    add("sheet.card.culture", culture.empty() ? sheet.text("sheet.card.culture.unknown") : culture);
    return lines;
}

void addCard(SheetBuilder& sheet, const VesselCard& card) {
    auto& blocks = sheet.document.blocks;
    blocks.emplace_back(Heading{1, card.vessel});
    blocks.emplace_back(
        Paragraph{sheet.text(say("sheet.card.kind").with("capacity", card.capacity).with("kind", card.kind))});
    const auto layers = layersOf(card.now.generations);
    if (!layers.empty())
        blocks.emplace_back(Picture{drawn(sheet, card, layers), inWords(sheet, card, layers)});
    Table table;
    table.columns = {sheet.text("sheet.card.what"), sheet.text("sheet.card.how")};
    table.rows = linesOf(sheet, card);
    blocks.emplace_back(std::move(table));
    for (const Message& caution : card.cautions)
        blocks.emplace_back(Caution{sheet.text(caution)});
}

} // namespace

Document vesselCards(const std::vector<VesselCard>& cards, Day on, const DisplayUnits& units, const Catalogue& texts) {
    SheetBuilder sheet(units, texts);
    sheet.document.title = sheet.text("sheet.card.title");
    sheet.document.subtitle = sheet.text(say("sheet.card.subtitle").with("day", on));
    sheet.document.footer = sheet.document.subtitle;
    sheet.document.cards = CardGrid{2, 2};
    for (const VesselCard& card : cards)
        addCard(sheet, card);
    return std::move(sheet.document);
}

} // namespace staveline::sheet

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/tasting_paper.h"

#include "sheet/builder.h"

namespace staveline::sheet {
namespace {

using Rows = std::vector<std::vector<std::string>>;

constexpr std::string_view none = "\u2013"; ///< a cell that is not there to be filled in

std::vector<std::string> rowFor(const tasting::Attribute& attribute) {
    std::vector<std::string> row{attribute.name};
    row.insert(row.end(), attribute.anchors.begin(), attribute.anchors.end());
    row.insert(row.end(), {"", attribute.bothTemperatures ? "" : std::string(none)});
    return row;
}

/// Groups in the order of the sheet, each with the lines asked for.
void addGroups(SheetBuilder& paper, const tasting::TastingSheet& sheet, bool shortSheet) {
    for (std::size_t i = 0; i < sheet.attributes.size();) {
        const auto& group = sheet.attributes[i].group;
        Table table;
        table.columns = {paper.text("sheet.paper.line")};
        for (double score : tasting::anchorScores)
            table.columns.push_back(paper.value(Number{score, 0}));
        table.columns.push_back(paper.text("sheet.paper.cold"));
        table.columns.push_back(paper.text("sheet.paper.cellar"));
        for (; i < sheet.attributes.size() && sheet.attributes[i].group == group; ++i)
            if (!shortSheet || sheet.attributes[i].shortSheet)
                table.rows.push_back(rowFor(sheet.attributes[i]));
        if (table.rows.empty())
            continue;
        paper.heading("sheet.paper.group." + group);
        paper.document.blocks.emplace_back(std::move(table));
    }
}

/// Two side by side: they are many, and each needs little room.
void addFaults(SheetBuilder& paper, const tasting::TastingSheet& sheet) {
    paper.heading("sheet.paper.faults");
    paper.paragraph(say("sheet.paper.fault.wait"));
    const std::size_t half = (sheet.faults.size() + 1) / 2;
    Rows rows;
    for (std::size_t i = 0; i < half; ++i) {
        const std::size_t beside = i + half;
        rows.push_back({sheet.faults[i].name, "", "", "", "", "", "", ""});
        rows.back()[4] = beside < sheet.faults.size() ? sheet.faults[beside].name : paper.text("sheet.paper.fault.own");
    }
    paper.table({"sheet.paper.fault", "sheet.paper.fault.1", "sheet.paper.fault.2", "sheet.paper.fault.3",
                 "sheet.paper.fault", "sheet.paper.fault.1", "sheet.paper.fault.2", "sheet.paper.fault.3"},
                {}, std::move(rows));
}

} // namespace

Document tastingPaper(const TastingPaperInput& input, const DisplayUnits& units, const tasting::TastingSheet& sheet,
                      const Catalogue& texts) {
    SheetBuilder paper(units, texts);
    paper.document.title = paper.text(
        say(input.vessel.empty() ? "sheet.paper.title" : "sheet.paper.title.vessel").with("vessel", input.vessel));
    paper.document.subtitle = paper.text(input.shortSheet ? "sheet.paper.short" : "sheet.paper.long");
    paper.document.footer = paper.text("sheet.paper.footer");
    paper.heading("sheet.paper.who");
    paper.table({"sheet.paper.taster", "sheet.paper.day", "sheet.paper.glass"}, {},
                {{"", input.on ? paper.value(*input.on) : "", ""}});
    paper.paragraph(say("sheet.paper.order").with("cold", input.cold).with("cellar", input.cellar));
    addGroups(paper, sheet, input.shortSheet);
    addFaults(paper, sheet);
    paper.heading("sheet.paper.whole");
    paper.table({"sheet.paper.draw", "sheet.paper.note"}, {}, Rows(4, {"", ""}));
    return std::move(paper.document);
}

} // namespace staveline::sheet

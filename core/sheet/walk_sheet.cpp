// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/walk_sheet.h"

#include "sheet/builder.h"

namespace staveline::sheet {

Document walkSheet(const std::vector<WalkRow>& rows, Day on, const DisplayUnits& units, const Catalogue& texts) {
    SheetBuilder paper(units, texts);
    paper.document.title = paper.text(say("sheet.walk.title").with("on", on));
    paper.document.subtitle = paper.text("sheet.walk.subtitle");
    paper.document.footer = paper.text("sheet.walk.footer");
    std::vector<std::vector<std::string>> lines;
    for (const WalkRow& row : rows) {
        const std::string held = paper.text(say("sheet.walk.held").with("held", row.held).with("of", row.capacity));
        lines.push_back({row.vessel + ", " + held, "", "", "", "", "", "", "", "", ""});
    }
    paper.table({"sheet.walk.vessel", "sheet.walk.level", "sheet.walk.bung", "sheet.walk.weep", "sheet.walk.pellicle",
                 "sheet.walk.smell", "sheet.walk.room", "sheet.walk.topped", "sheet.walk.purged", "sheet.walk.note"},
                {}, std::move(lines));
    for (const char* key : {"sheet.walk.words", "sheet.walk.next"})
        paper.paragraph(say(key));
    return std::move(paper.document);
}

} // namespace staveline::sheet

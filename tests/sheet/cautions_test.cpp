// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/builder.h"

#include "support/catch.h"

#include <set>

using namespace staveline;
using namespace staveline::sheet;

namespace {

/// The steps that a sheet of brewing or of finishing has a place for.
const std::set<std::string> steps{"mash",  "kettle", "yeast", "fermenter", "draw", "refill",
                                  "blend", "ready",  "prime", "fill",      "keep"};

std::vector<std::string> cautionsIn(const Document& document) {
    std::vector<std::string> texts;
    for (const auto& block : document.blocks)
        if (const auto* caution = std::get_if<Caution>(&block))
            texts.push_back(caution->text);
    return texts;
}

} // namespace

TEST_CASE("Every caution belongs to a step and is a sentence") {
    std::size_t found = 0;
    for (const auto& [key, text] : builtInTexts().all()) {
        if (!key.starts_with("caution."))
            continue;
        ++found;
        CAPTURE(key);
        const auto step = key.substr(8, key.find('.', 8) - 8);
        CHECK(steps.contains(step));
        CHECK(text.back() == '.');
        CHECK(text.size() < 160);
    }
    CHECK(found >= 16);
}

TEST_CASE("The tray gives each step its own cautions and the rest to the top") {
    SheetBuilder sheet({}, builtInTexts());
    sheet.keep({say("caution.mash.acid"), say("caution.yeast.killer"), say("caution.mash.acid"), say("nothing.known")});
    sheet.place("mash");
    CHECK(cautionsIn(sheet.document).size() == 1);
    sheet.place("kettle");
    CHECK(cautionsIn(sheet.document).size() == 1);
    sheet.placeAllBut({"mash", "yeast"});
    CHECK(cautionsIn(sheet.document).back() == "nothing.known");
    sheet.keep(say("caution"));
    sheet.placeAllBut({"mash", "yeast", "known"});
    CHECK(cautionsIn(sheet.document).back() == "caution");
}

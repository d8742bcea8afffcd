// SPDX-License-Identifier: GPL-3.0-or-later
// Whether the adviser may move the draw and the interval: as recorded, as asked, and no unless the brewer says so.
#include "desk/support.h"

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::testing;

namespace {

struct Permissions : DeskFixture {
    Permissions() { addPlover(); }

    void edit(const std::string& fields) { record(R"({"kind": "vessel_edit", "vessel": "Plover", )" + fields + "}"); }
    /// Of draw and interval, as the adviser is told.
    [[nodiscard]] std::pair<bool, bool> told() const {
        const auto job = desk->adviceJob({"Plover", {}, {}, false});
        REQUIRE(job);
        return {job->input.mayMoveDraw, job->input.mayMoveInterval};
    }
};

} // namespace

TEST_CASE_METHOD(Permissions, "draw and interval stay put unless the vessel lets them move", "[desk][vessel]") {
    CHECK(told() == std::pair(false, false));
    edit(R"("draw_may_move": true)");
    CHECK(desk->undoText() == "let the adviser change the draw of Plover");
    CHECK(told() == std::pair(true, false));
    edit(R"("interval_may_move": true)");
    CHECK(desk->undoText() == "let the adviser change the interval of Plover");
    CHECK(told() == std::pair(true, true));
    edit(R"("draw_may_move": false)");
    CHECK(desk->undoText() == "keep the draw of Plover as it is");
    CHECK(told() == std::pair(false, true));
    edit(R"("interval_may_move": false, "note": "dry floor")");
    CHECK(desk->undoText() == "change vessel Plover");
    CHECK(told() == std::pair(false, false));
    REQUIRE(desk->undo());
    CHECK(told() == std::pair(false, true));
    REQUIRE(desk->undo());
    CHECK(told() == std::pair(true, true));
}

TEST_CASE_METHOD(Permissions, "a permission is yes or no", "[desk][vessel][bad]") {
    const Fault fault = refused(R"({"kind": "vessel_edit", "vessel": "Plover", "draw_may_move": "a little"})");
    CHECK(fault.path == "/draw_may_move");
    CHECK(fault.cause.key == "desk.wrong_type");
    CHECK(render(fault.remedy).size() > 4);
}

// SPDX-License-Identifier: GPL-3.0-or-later
// What is measured counts wherever the beer came from; what measures nothing is not recorded.
#include "desk/support.h"

#include <fmt/format.h>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::tasting;
using namespace staveline::testing;

namespace {

struct MeasuredFixture : DeskFixture {
    MeasuredFixture() { addPlover(); }
    /// Of the same litres taken with the same numbers.
    EstimatesView takenAs(const std::string& kind) {
        record(fmt::format(R"({{"kind": "{}", "vessel": "Plover", "on": "2026-02-20", "volume_l": 60, "ta_g_l": 9.5,
                                "ph": 3.05, "gravity_sg": 1.004}})",
                           kind));
        const auto estimates = desk->estimates("Plover");
        REQUIRE(estimates);
        REQUIRE(desk->undo());
        return *estimates;
    }
    Fault refusedSitting(const std::string& scores, const std::string& more = "") {
        return refused(R"({"kind": "sitting", "vessel": "Plover", "on": "2026-03-01", "scores": [)" + scores + "]" +
                       more + "}");
    }
};

} // namespace

TEST_CASE_METHOD(MeasuredFixture, "what is measured of the drawn beer counts like a sample's", "[desk][measured]") {
    const EstimatesView drawn = takenAs("draw_off"), sampled = takenAs("sample");
    REQUIRE(drawn.ta);
    CHECK(drawn.ta->gPerL == 9.5);
    for (Dimension d : allDimensions) {
        CHECK(drawn.model[d].mean == Approx(sampled.model[d].mean));
        CHECK(drawn.combined[d].mean == Approx(sampled.combined[d].mean));
        CHECK(drawn.evidence[d].size() == sampled.evidence[d].size());
    }
    const EstimatesView none = *desk->estimates("Plover");
    CHECK(drawn.combined[Dimension::acidity].mean > none.combined[Dimension::acidity].mean + .3);
    CHECK(drawn.model[Dimension::body].mean != Approx(none.model[Dimension::body].mean)); // gravity puts it right
}

TEST_CASE_METHOD(MeasuredFixture, "gravity that falls from draw to draw says wait", "[desk][measured]") {
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-02-01", "volume_l": 20, "gravity_sg": 1.012},
               {"kind": "draw_off", "vessel": "Plover", "on": "2026-02-25", "volume_l": 20, "gravity_sg": 1.004}])");
    CHECK(desk->estimates("Plover")->verdicts[Dimension::acidity].kind == VerdictKind::waitUntil);
}

TEST_CASE_METHOD(MeasuredFixture, "after the refill the drawn beer speaks no more", "[desk][measured]") {
    record(R"([{"kind": "draw_off", "vessel": "Plover", "on": "2026-02-20", "volume_l": 60, "ta_g_l": 9.5},
               {"kind": "refill", "vessel": "Plover", "on": "2026-02-20", "volume_l": 60}])");
    CHECK_FALSE(desk->estimates("Plover")->ta);
}

TEST_CASE_METHOD(MeasuredFixture, "a reading of nothing is refused", "[desk][measured][bad]") {
    const Fault fault = refused(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01"})");
    CHECK(render(fault.cause) == "Nothing is measured.");
    CHECK(render(fault.remedy).find("pH") != std::string::npos);
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "note": "pellicle whole"})");
}

TEST_CASE_METHOD(MeasuredFixture, "a reading cannot be amended to nothing", "[desk][measured][bad]") {
    record(R"({"kind": "reading", "vessel": "Plover", "on": "2026-03-01", "ph": 3.3})");
    const ReadingFact nothing{"Plover", day(2026, 3, 1), {}, ""};
    CHECK(desk->amend("reading", desk->ledger("Plover")->lines.back().id, Fact{nothing}).error().cause.key ==
          "desk.nothing_measured");
    CHECK(desk->preview(Fact{nothing}).error().cause.key == "desk.nothing_measured");
}

TEST_CASE_METHOD(MeasuredFixture, "a sitting of scores without a value is refused", "[desk][measured][bad]") {
    const Fault fault = refusedSitting(R"({"taster": "Rook", "attribute": "TA1"})");
    CHECK(fault.path == "/scores");
    CHECK(render(fault.cause) == "Nothing is scored.");
    CHECK(refusedSitting("", R"(, "note": "fine")").path == "/scores");
    CHECK(refusedSitting("", R"(, "draw_it": true)").path == "/scores");
    CHECK(refusedSitting("", R"(, "faults": [{"fault": "ropy", "severity": 0}])").path == "/scores");
    record(
        R"({"kind": "sitting", "vessel": "Plover", "on": "2026-03-01", "faults": [{"fault": "ropy", "severity": 1}]})");
}

// SPDX-License-Identifier: GPL-3.0-or-later
// Drawn beer by keyboard alone: from the draw to its lot, a reading, bottles and the first of them opened.
#include "ui/support.h"

#include "desk/lots.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/answer_view.h"
#include "ui/finish/lot_form.h"
#include "ui/finish/lot_list.h"
#include "ui/finish/page.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtLots {
    WindowInScratch w{false};
    std::string before;

    AtLots() {
        REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
        w.cellar().showVessel("Plover");
        before = everything();
    }
    [[nodiscard]] std::string everything() const { return fingerprint(w.desk()) + toJson(*w.desk().lots()); }
    [[nodiscard]] LotView lot(const char* name) const {
        const auto found = w.desk().lot(name);
        REQUIRE(found);
        return *found;
    }
    void press(const char* button) const {
        w.tabTo(button);
        w.key(Qt::Key_Space);
    }
    void type(const char* field, const char* text) const {
        w.tabTo(field);
        w.key(Qt::Key_A, Qt::ControlModifier);
        w.type(text);
    }
    /// Drawn into a lot of its own, which is then in view.
    void draw() const {
        w.key(Qt::Key_D, Qt::ControlModifier);
        w.type("60");
        w.tabTo("Name of the drawn beer");
        w.type("Sloe");
        w.key(Qt::Key_Return);
        REQUIRE(lot("Sloe").litres.l == Approx(60));
        w.key(Qt::Key_5, Qt::ControlModifier);
        w.tabTo("Beers");
        w.type("Sloe");
        REQUIRE(part<LotList>(w.cellar().finish()).chosen() == "Sloe");
        CHECK(w.cellar().finish().part() == FinishPage::Part::ledger);
    }
    [[nodiscard]] LotForm& form() const { return part<LotForm>(w.cellar().finish()); }
    [[nodiscard]] QString answer() const {
        w.cellar().finish().answerNow();
        return part<AnswerView>(w.cellar().finish()).words().join('\n');
    }
    [[nodiscard]] QString said() const {
        QStringList words;
        for (const QLabel* label : form().findChildren<QLabel*>())
            words << label->text();
        return words.join('\n');
    }
};

} // namespace

TEST_CASE("a draw goes into bottles by keyboard alone, and all the way back", "[ui][finish][lots][driven]") {
    const AtLots at;
    at.draw();
    CHECK(at.answer().contains("Plover"));
    at.press("Reading");
    at.w.type("1.001");
    at.w.key(Qt::Key_Return);
    INFO(at.said().toStdString());
    REQUIRE(at.lot("Sloe").lines.back().measured.gravity);
    CHECK(at.lot("Sloe").lines.back().measured.gravity->sg == Approx(1.001));
    at.press("Pack");
    at.type("Litres to pack in L", "50");
    at.w.tabTo("Make, not told");
    at.w.type("thick");
    CHECK_FALSE(at.answer().isEmpty());
    at.press("Keep as packed");
    REQUIRE(at.form().active());
    CHECK(part<NumberField>(at.form(), "Size of each").stored() == 330);
    at.w.tabTo("Why it is safe all the same");
    at.w.type("these bottles are tested");
    at.w.key(Qt::Key_Return);
    INFO(at.said().toStdString());
    REQUIRE(at.lot("Sloe").packages.size() == 1);
    const PackageView filled = at.lot("Sloe").packages.front();
    CHECK(filled.count == 147); // 50 L less 0.75 L and 1 %
    CHECK_FALSE(filled.verdict.empty());
    at.press("Opened");
    at.w.tabTo("CO2 found in vol");
    at.w.type("2.4");
    at.w.key(Qt::Key_Return);
    CHECK(at.lot("Sloe").packages.front().left == filled.count - 1);
    REQUIRE(at.lot("Sloe").packages.front().found);
    CHECK(at.lot("Sloe").packages.front().found->vol == Approx(2.4));
    int steps = 0;
    for (; at.everything() != at.before; ++steps) {
        REQUIRE(steps < 10);
        at.w.key(Qt::Key_Z, Qt::ControlModifier);
    }
    CHECK(steps == 4); // draw, reading, filling, opened
}

TEST_CASE("what the guard refuses is kept only with a reason", "[ui][finish][lots][bad]") {
    const AtLots at;
    at.draw();
    at.press("Reading");
    at.w.type("1.001");
    at.w.key(Qt::Key_Return);
    at.press("Pack");
    at.type("Litres to pack in L", "20");
    CHECK(at.answer().startsWith("Refused")); // a bottle nobody knows
    at.press("Keep as packed");
    at.w.key(Qt::Key_Return);
    REQUIRE(at.form().active()); // not stored, and why
    INFO(at.said().toStdString());
    CHECK(at.said().contains("Nobody knows what this bottle holds"));
    CHECK(at.lot("Sloe").packages.empty());
    at.w.tabTo("Why it is safe all the same");
    at.w.type("tested by hand");
    at.w.key(Qt::Key_Return);
    REQUIRE(at.lot("Sloe").packages.size() == 1);
    CHECK(at.lot("Sloe").packages.front().overrideReason == "tested by hand");
    at.press("Ledger");
    CHECK(at.answer().contains("Against the guard: tested by hand"));
}

TEST_CASE("an entry of a lot is amended, removed and brought back", "[ui][finish][lots]") {
    const AtLots at;
    at.draw();
    at.press("Move or take");
    at.w.type("12");
    at.w.key(Qt::Key_Return);
    INFO(at.said().toStdString());
    CHECK(at.form().active()); // moved, but where to?
    at.w.tabTo("What became of it, Moved");
    at.w.type("Taken");
    at.w.key(Qt::Key_Return);
    REQUIRE(at.lot("Sloe").litres.l == Approx(48));
    at.w.tabTo("Ledger of the lot");
    at.w.key(Qt::Key_Home, Qt::ControlModifier);
    at.w.key(Qt::Key_Return);
    REQUIRE(at.form().active());
    at.type("How much in L", "15");
    at.w.key(Qt::Key_Return);
    CHECK(at.lot("Sloe").litres.l == Approx(45));
    at.w.tabTo("Ledger of the lot");
    at.w.key(Qt::Key_Delete);
    CHECK(at.lot("Sloe").litres.l == Approx(60));
    at.w.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.lot("Sloe").litres.l == Approx(45));
    at.w.tabTo("Ledger of the lot");
    at.press("Move or take");
    at.type("How much in L", "900");
    at.w.tabTo("What became of it, Moved");
    at.w.type("Taken");
    at.w.key(Qt::Key_Return);
    CHECK(part<NumberField>(at.form(), "How much").words().contains("900"));
}

TEST_CASE("what is begun about a lot is asked about, and stays while another is looked at", "[ui][finish][lots]") {
    const AtLots at;
    at.draw();
    at.press("Reading");
    at.w.type("1.0");
    at.press("Addition");
    REQUIRE(at.form().asking());
    at.w.key(Qt::Key_Escape); // goes on
    CHECK_FALSE(at.form().asking());
    CHECK(at.form().fields().number("gravity"));
    CHECK(at.form().started());
    part<LotList>(at.w.cellar().finish()).choose("Plover draw 8");
    CHECK(at.form().started());
    at.w.cellar().finish().focusWork();
    at.w.type("02");
    at.w.key(Qt::Key_Return);
    REQUIRE(at.lot("Sloe").lines.back().measured.gravity); // it is of the lot it was begun for
    at.press("Reading");
    at.w.type("1.0");
    at.press("Addition");
    at.press("Cancel and start: Addition");
    CHECK(at.form().fields().number("mass_kg"));
}

TEST_CASE("what was measured for a filling is kept with it, or not at all", "[ui][finish][lots]") {
    const AtLots at;
    at.draw();
    at.press("Pack");
    at.type("Litres to pack in L", "20");
    at.type("Gravity measured today in SG", "1.001");
    CHECK_FALSE(at.answer().isEmpty());
    const auto lines = at.lot("Sloe").lines.size();
    at.press("Keep as packed");
    at.w.key(Qt::Key_Escape);
    CHECK(at.lot("Sloe").lines.size() == lines);
    at.press("Pack");
    at.press("Keep as packed");
    at.w.tabTo("Why it is safe all the same");
    at.w.type("these bottles are tested");
    at.w.key(Qt::Key_Return);
    INFO(at.said().toStdString());
    CHECK(at.lot("Sloe").lines.size() == lines + 2);
    at.w.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(at.lot("Sloe").lines.size() == lines);
}

TEST_CASE("a lot is a source of a blend", "[ui][finish][lots][blend]") {
    const AtLots at;
    at.draw();
    at.press("Blend");
    CHECK(at.w.cellar().finish().part() == FinishPage::Part::blend);
    at.w.tabTo("Source 2, no beer");
    at.w.type("Knot");
    at.type("TA in g/L", "7");
    CHECK(at.answer().contains("of Sloe"));
}

// SPDX-License-Identifier: GPL-3.0-or-later
// One meaning, one shape: whoever shows one takes it from the table, and a caution is never a note.
#include "ui/support.h"

#include "advice/cautions.h"
#include "ui/adjust/draw_day_page.h"
#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/verdict_column.h"
#include "ui/brew/page.h"
#include "ui/taste/page.h"
#include "ui/taste/sitting_summary.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/glyph.h"
#include "ui/widgets/message_label.h"
#include "ui/window/cellar_view.h"

#include <QLabel>

#include <set>

using namespace staveline;
using namespace staveline::tasting;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

/// Whether a label in there shows that shape, whatever its size.
bool shows(const QWidget& in, Glyph glyph) {
    for (const QLabel* label : in.findChildren<QLabel*>()) {
        const QPixmap shown = label->pixmap(Qt::ReturnByValue);
        if (shown.isNull() || !label->isVisible())
            continue;
        const int side = static_cast<int>(shown.width() / shown.devicePixelRatio());
        const QPixmap wanted = glyphPixmap(glyph, side, tone(in.palette(), toneOf(glyph)), shown.devicePixelRatio());
        if (shown.toImage() == wanted.toImage())
            return true;
    }
    return false;
}

} // namespace

TEST_CASE("a verdict has the same shape at Taste, at Adjust and in the table", "[ui][face][glyph]") {
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    CellarView& cellar = *w.window->cellar();
    std::set<VerdictKind> met;
    for (const char* vessel : {"Plover", "Knot"}) {
        cellar.showVessel(vessel);
        cellar.showPage(PageId::adjust);
        REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
        const auto known = w.window->session()->desk().estimates(vessel);
        REQUIRE(known);
        cellar.showPage(PageId::taste);
        QTest::qWait(30);
        const SittingSummary& summary = part<SittingSummary>(cellar.taste());
        for (const Dimension d : allDimensions) {
            INFO(vessel << ' ' << std::string(name(d)));
            CHECK(shows(summary, glyphOf(known->verdicts[d])));
            met.insert(known->verdicts[d].kind);
        }
    }
    CHECK(met.size() >= 2);
    for (const VerdictKind kind :
         {VerdictKind::faultFirst, VerdictKind::waitUntil, VerdictKind::hold, VerdictKind::move, VerdictKind::open,
          VerdictKind::leaveAlone, VerdictKind::tasteAgain, VerdictKind::neverTasted}) {
        Verdict verdict;
        verdict.kind = kind;
        VerdictColumn column(Dimension::funk);
        column.setVerdict(verdict, {});
        column.show();
        CHECK(shows(column, glyphOf(verdict)));
    }
}

TEST_CASE("a caution, a plan B and a note have a shape each", "[ui][face][glyph]") {
    using Weight = MessageLabel::Weight;
    const std::array pairs = {std::pair{Weight::note, Glyph::note}, std::pair{Weight::planB, Glyph::planB},
                              std::pair{Weight::warning, Glyph::warning}, std::pair{Weight::fault, Glyph::fault}};
    for (const auto& [weight, glyph] : pairs) {
        MessageLabel label;
        label.say(weight, "words");
        label.show();
        CHECK(shows(label, glyph));
    }
}

TEST_CASE("no caution is shown as a note on any page", "[ui][face][glyph]") {
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    CellarView& cellar = *w.window->cellar();
    int cautions = 0;
    for (const char* vessel : {"Plover", "Knot", "Dunlin"}) {
        QStringList texts;
        const auto plan = w.window->session()->desk().brewPlan(vessel);
        REQUIRE(plan);
        for (const Message& caution : plan->cautions)
            texts << w.window->session()->words(caution);
        for (const PageId page : {PageId::adjust, PageId::brew, PageId::drawRefill}) {
            cellar.showVessel(vessel);
            cellar.showPage(page);
            REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
            for (const MessageLabel* label : parts<MessageLabel>(cellar))
                for (const QString& text : texts)
                    if (label->words().contains(text)) {
                        INFO(text.toStdString());
                        CHECK(label->weight() == MessageLabel::Weight::warning);
                        ++cautions;
                    }
        }
    }
    CHECK(cautions > 5);
}

TEST_CASE("a caution among the plans B keeps its shape", "[ui][face][glyph]") {
    WindowInScratch w(false);
    REQUIRE(w.window->sampleBook(w.scratch / "sample.cellar"));
    CellarView& cellar = *w.window->cellar();
    cellar.showVessel("Plover");
    cellar.showPage(PageId::adjust);
    REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
    cellar.adjust().openDrawDay(true);
    const auto view = w.window->session()->desk().drawDay("Plover");
    REQUIRE(view);
    int cautions = 0, others = 0;
    for (const Message& message : view->planB)
        for (const MessageLabel* label : parts<MessageLabel>(part<DrawDayPage>(cellar.adjust())))
            if (label->words() == w.window->session()->words(message)) {
                const bool caution = message.key.starts_with("caution.");
                CHECK(label->weight() == (caution ? MessageLabel::Weight::warning : MessageLabel::Weight::planB));
                ++(caution ? cautions : others);
            }
    CHECK(cautions > 0);
    CHECK(others > 0);
}

TEST_CASE("each kind of entry has a shape that means nothing else", "[ui][face][glyph]") {
    std::set<Glyph> shapes;
    for (const EntryLook& look : entryLooks()) {
        CHECK(look.glyph >= Glyph::opening);
        shapes.insert(look.glyph);
    }
    CHECK(shapes.size() == entryLooks().size());
}

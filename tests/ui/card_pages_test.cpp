// SPDX-License-Identifier: GPL-3.0-or-later
// Four cards to a page of either size, each in its quarter.
#include "pdf_tools.h"
#include "ui/support.h"

#include "sheet/vessel_card.h"
#include "ui/print/pdf.h"
#include "ui/window/cellar_view.h"

#include <array>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

sheet::Document cardsOf(int count) {
    std::vector<sheet::VesselCard> cards(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        sheet::VesselCard& card = cards[static_cast<std::size_t>(i)];
        card.vessel = "Vessel" + std::to_string(i + 1);
        card.kind = "cask of used oak";
        card.capacity = Litres{225};
        card.due = say("desk.due.draw.today");
        for (int caution = 0; caution < 3 + 3 * i; ++caution) // more than the quarter of a page holds
            card.cautions.push_back(say("caution.refill.vented"));
    }
    return vesselCards(cards, day(2026, 3, 2));
}

} // namespace

TEST_CASE("four cards stand on a page, each in its quarter, however much it says", "[ui][print][card]") {
    if (!hasPdfTools())
        return;
    Scratch scratch;
    for (const auto& [size, wide, high] :
         {std::tuple(PaperSize::a4, 595.0, 842.0), {PaperSize::letter, 612.0, 792.0}}) {
        REQUIRE(writePdf(cardsOf(5), scratch / "cards.pdf", size));
        const QStringList pages = pdfPages(scratch / "cards.pdf");
        REQUIRE(pages.size() == 2);
        CHECK(pages[0].contains("Vessel4"));
        CHECK(pages[1].contains("Vessel5"));
        std::array<int, 4> cautions{};
        for (const PdfWord& word : wordsOn(scratch / "cards.pdf")) {
            INFO(word.text.toStdString() << " at " << word.x << ", " << word.y);
            const int quarter = (word.x > wide / 2 ? 1 : 0) + (word.y > high / 2 ? 2 : 0);
            CHECK(word.right < (quarter % 2 + 1) * wide / 2 - 5); // nothing is cut off
            CHECK(word.bottom < (quarter / 2 + 1) * high / 2 - 5);
            if (word.text.startsWith("Vessel"))
                CHECK(word.text == "Vessel" + QString::number(quarter + 1));
            cautions[static_cast<std::size_t>(quarter)] += word.text == "Caution:" ? 1 : 0;
        }
        CHECK(cautions == std::array{3, 6, 9, 12});
    }
}

TEST_CASE("the cards are saved from the paper menu, whatever is in front", "[ui][print][card]") {
    WindowInScratch w;
    w.prompt.answers = {w.scratch / "cards.pdf"};
    w.action("Save the vessel cards as PDF").trigger();
    CHECK(w.prompt.asked.front() == "vessel cards 2026-03-02.pdf");
    if (hasPdfTools())
        CHECK(pdfPages(w.scratch / "cards.pdf").join('\n').contains("Heron"));
}

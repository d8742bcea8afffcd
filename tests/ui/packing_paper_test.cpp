// SPDX-License-Identifier: GPL-3.0-or-later
// The packaging day sheet and the labels as they leave the printer.
#include "pdf_tools.h"
#include "ui/support.h"

#include "sheet/bottle_label.h"
#include "sheet/sample_packing.h"
#include "sheet/sample_sheet.h"
#include "ui/print/pdf.h"

#include <array>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

sheet::Document labelsOfPlover() {
    sheet::BottleLabel label;
    label.name = "Plover";
    label.packed = day(2026, 3, 2);
    label.generations = {{2, day(2025, 11, 2), Share{.4}, Days{0}}, {1, day(2024, 3, 2), Share{.6}, Days{0}}};
    label.alcohol = {6.4};
    return bottleLabels(label, {});
}

} // namespace

TEST_CASE("the packaging day sheet prints on two pages of either size, with boxes to tick", "[ui][print][packing]") {
    if (!hasPdfTools())
        return;
    Scratch scratch;
    for (const PaperSize size : {PaperSize::a4, PaperSize::letter}) {
        REQUIRE(writePdf(packingSheet(sample::packing(), {}, sample::texts()), scratch / "day.pdf", size));
        const QStringList pages = pdfPages(scratch / "day.pdf");
        CHECK(pages.size() == 2);
        const QString whole = pages.join('\n');
        qsizetype last = 0;
        for (const char* heading : {"What is packed", "Pressure and what it rests on", "Before the first bottle",
                                    "Sugar and yeast", "Filling", "Afterwards", "What came out"}) {
            INFO(heading);
            const qsizetype at = whole.indexOf(heading, last);
            CHECK(at > last);
            last = std::max(last, at);
        }
        CHECK(whole.count(QChar(0x2610)) >= 12);
        CHECK(whole.contains("Plover <31>"));
    }
}

TEST_CASE("every page of a refused package says so", "[ui][print][packing]") {
    if (!hasPdfTools())
        return;
    Scratch scratch;
    REQUIRE(writePdf(packingSheet(sample::refusedPacking(), {}, sample::texts()), scratch / "no.pdf", PaperSize::a4));
    const QStringList pages = pdfPages(scratch / "no.pdf");
    REQUIRE_FALSE(pages.isEmpty());
    CHECK(pages.front().trimmed().startsWith("Refused: "));
    for (const QString& page : pages)
        CHECK(page.contains("Not to be packed by this sheet."));
}

TEST_CASE("eight labels fill a page, each in its place", "[ui][print][packing]") {
    if (!hasPdfTools())
        return;
    Scratch scratch;
    for (const auto& [size, wide, high] :
         {std::tuple(PaperSize::a4, 595.0, 842.0), {PaperSize::letter, 612.0, 792.0}}) {
        REQUIRE(writePdf(labelsOfPlover(), scratch / "labels.pdf", size));
        CHECK(pdfPages(scratch / "labels.pdf").size() == 1);
        std::array<int, 8> names{};
        for (const PdfWord& word : wordsOn(scratch / "labels.pdf")) {
            INFO(word.text.toStdString() << " at " << word.x << ", " << word.y);
            const int column = word.x > wide / 2 ? 1 : 0, row = static_cast<int>(word.y / (high / 4));
            CHECK(word.right < (column + 1) * wide / 2 - 5); // nothing is cut off
            CHECK(word.bottom < (row + 1) * high / 4 - 5);
            names[static_cast<std::size_t>(2 * row + column)] += word.text == "Plover" ? 1 : 0;
        }
        CHECK(names == std::array{1, 1, 1, 1, 1, 1, 1, 1});
    }
}

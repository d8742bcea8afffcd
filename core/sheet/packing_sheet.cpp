// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/packing_sheet.h"

#include "finishing/guard_words.h"
#include "sheet/builder.h"

#include <cmath>

namespace staveline::sheet {

using finishing::GuardAnswer;

namespace {

using PackingRows = std::vector<std::vector<std::string>>;

constexpr std::size_t linesForRemarks = 3;

bool isRefused(const PackingSheetInput& in) {
    return in.verdict.answer == GuardAnswer::refused;
}
bool isPrimed(const PackingSheetInput& in) {
    return in.priming.gives.vol > 0;
}
Litres packed(const PackingSheetInput& in) {
    Litres all{0};
    for (const PackedPart& part : in.parts)
        all = all + part.takes;
    return all;
}

/// Whoever has the sheet in hand reads first whether he may.
void packingVerdict(SheetBuilder& sheet, const PackingSheetInput& in) {
    const std::string answer = sheet.text(finishing::answerWords(in.verdict));
    if (in.verdict.answer == GuardAnswer::clear)
        sheet.document.blocks.emplace_back(Paragraph{answer});
    else
        sheet.document.blocks.emplace_back(Caution{answer});
    for (const Message& refusal : in.verdict.refusals)
        sheet.document.blocks.emplace_back(Caution{sheet.text(refusal)});
    sheet.placeAllBut({"blend", "ready", "prime", "fill", "keep"});
}

void packers(SheetBuilder& sheet, const PackingSheetInput&) {
    sheet.table({"sheet.packing.day", "sheet.packing.who", "sheet.packing.begun", "sheet.packing.done"}, {},
                {{"", "", "", ""}});
}

std::string bottleWords(const SheetBuilder& sheet, const PackingSheetInput& in) {
    std::string words = in.package.make ? in.package.make->name : sheet.text("sheet.packing.make.unknown");
    if (in.package.rating)
        words += ", " + sheet.text(say("sheet.packing.rated").with("rating", *in.package.rating));
    return words;
}

std::string kegWords(const SheetBuilder& sheet, const PackingSheetInput& in) {
    return sheet.text(say(in.keg->pressure.barOverAir < 0 ? "finishing.pack.keg_none" : "finishing.pack.keg")
                          .with("pressure", in.keg->pressure)
                          .with("temperature", in.keg->temperature)
                          .with("wanted", in.wanted));
}

void sources(SheetBuilder& sheet, const PackingSheetInput& in) {
    PackingRows rows;
    for (const PackedPart& part : in.parts)
        rows.push_back({part.source, sheet.value(part.takes)});
    if (in.parts.size() > 1)
        rows.push_back({sheet.text("sheet.grain.total"), sheet.value(packed(in))});
    if (isRefused(in))
        sheet.table({"sheet.packing.of", "sheet.packing.asked"}, {false, true}, std::move(rows));
    else
        sheet.table({"sheet.packing.from", "sheet.column.planned", "sheet.packing.poured"}, {false, true, true},
                    std::move(rows));
}

void whatIsPacked(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading(isRefused(in) ? "sheet.packing.section.asked" : "sheet.packing.section.what");
    sources(sheet, in);
    sheet.place("blend");
    const auto row = [&](std::string_view key, const std::string& planned) {
        return std::vector<std::string>{sheet.text(key), planned};
    };
    PackingRows plan = {row("sheet.packing.size", sheet.value(in.package.size)),
                        row("sheet.packing.bottle", bottleWords(sheet, in)),
                        row("sheet.packing.warmest", sheet.value(in.verdict.warmest)),
                        row("sheet.packing.wanted", sheet.value(in.wanted))};
    if (in.keg)
        plan.push_back(row("sheet.packing.keg", kegWords(sheet, in)));
    sheet.table({"sheet.column.what", isRefused(in) ? "sheet.packing.asked" : "sheet.column.planned"}, {},
                std::move(plan));
}

void whetherItHolds(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading("sheet.packing.section.pressure");
    sheet.paragraph(finishing::residualWords(in.residual, in.wanted));
    sheet.paragraphs(finishing::pressureWords(in.verdict));
    sheet.bullets(in.verdict.grounds);
    if (in.verdict.proof.whole())
        return;
    sheet.paragraph(say("finishing.pack.proof"));
    sheet.bullets(in.verdict.proof.missing);
}

void readyFirst(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading("sheet.packing.section.ready");
    sheet.place("ready");
    std::vector<Message> steps = {say("sheet.packing.step.air"), say("sheet.packing.step.clean"),
                                  say("sheet.packing.step.bottles")};
    if (in.verdict.gravity)
        steps.push_back(say("sheet.packing.step.gravity").with("gravity", *in.verdict.gravity));
    sheet.steps(steps);
}

void weighed(SheetBuilder& sheet, const PackingSheetInput& in) {
    const finishing::Priming& priming = in.priming;
    const std::string batch = sheet.value(Grams{priming.batch.kg * 1000});
    if (in.sugar.isLiquid()) {
        sheet.table({"sheet.packing.liquid", "sheet.packing.extract", "sheet.packing.litres", "sheet.packing.measured"},
                    {false, true, true, true},
                    {{in.sugar.name, sheet.value(in.extract), sheet.value(priming.liquid), ""}});
        return;
    }
    sheet.table({"sheet.packing.sugar", "sheet.packing.batch", "sheet.packing.each", "sheet.packing.each_bottle",
                 "sheet.column.weighed"},
                {false, true, true, true, true},
                {{in.sugar.name, batch, sheet.value(priming.perLitre), sheet.value(priming.perPackage), ""}});
}

void priming(SheetBuilder& sheet, const PackingSheetInput& in) {
    if (!isPrimed(in))
        return;
    sheet.heading("sheet.packing.section.prime");
    weighed(sheet, in);
    sheet.place("prime");
    std::vector<Message> steps;
    if (in.sugar.isLiquid())
        steps = {say("sheet.packing.step.liquid")
                     .with("liquid", in.priming.liquid)
                     .with("sugar", in.sugar.name)
                     .with("extract", in.extract)};
    else
        steps = {say("sheet.packing.step.weigh")
                     .with("batch", Grams{in.priming.batch.kg * 1000})
                     .with("sugar", in.sugar.name),
                 say("sheet.packing.step.boil")};
    if (!in.yeast.empty())
        steps.push_back(say("sheet.packing.step.yeast"));
    steps.push_back(say("sheet.packing.step.stir").with("litres", packed(in) + in.priming.liquid));
    sheet.paragraphs(in.yeast);
    sheet.steps(steps);
}

void filling(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading("sheet.packing.section.fill");
    sheet.place("fill");
    sheet.steps({say("sheet.packing.step.fill")
                     .with("count", static_cast<std::int64_t>(std::llround(in.priming.packages)))
                     .with("size", in.package.size)
                     .with("lost", in.lost),
                 say("sheet.packing.step.close"), say("sheet.packing.step.mark").with("name", in.name)});
}

void keeping(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading("sheet.packing.section.keep");
    sheet.place("keep");
    if (in.verdict.until)
        sheet.paragraph(say("sheet.packing.until").with("until", *in.verdict.until));
    std::vector<Message> steps = {say("sheet.packing.step.keep").with("warmest", in.verdict.warmest)};
    steps.push_back(say("sheet.packing.step.open").with("wanted", in.wanted));
    steps.push_back(say("sheet.packing.step.record"));
    sheet.steps(steps);
}

void whatCameOut(SheetBuilder& sheet, const PackingSheetInput& in) {
    sheet.heading("sheet.packing.section.out");
    const auto row = [&](std::string_view key, const std::string& planned) {
        return std::vector<std::string>{sheet.text(key), planned, ""};
    };
    const std::string none = "\u2013";
    PackingRows rows = {row("sheet.packing.out.gravity", in.verdict.gravity ? sheet.value(*in.verdict.gravity) : none),
                        row("sheet.packing.out.ph", none), row("sheet.packing.out.temperature", none),
                        row("sheet.packing.out.litres", sheet.value(packed(in) + in.priming.liquid))};
    if (isPrimed(in))
        rows.push_back(row("sheet.packing.out.sugar", in.sugar.isLiquid()
                                                          ? sheet.value(in.priming.liquid)
                                                          : sheet.value(Grams{in.priming.batch.kg * 1000})));
    rows.push_back(row("sheet.packing.out.count", sheet.value(std::int64_t{std::llround(in.priming.packages)})));
    rows.push_back(row("sheet.packing.out.lost", sheet.value(in.lost)));
    rows.push_back(row("sheet.packing.out.first", none));
    sheet.table({"sheet.column.what", "sheet.column.planned", "sheet.column.measured"}, {false, true, true},
                std::move(rows));
    sheet.table({"sheet.column.notes"}, {}, PackingRows(linesForRemarks, {""}));
}

/// In place of the steps.
void whatToDoNow(SheetBuilder& sheet, const PackingSheetInput&) {
    sheet.heading("sheet.packing.section.refused");
    sheet.steps({say("sheet.packing.step.leave"), say("sheet.packing.step.clear"), say("sheet.packing.step.again")});
    sheet.table({"sheet.column.notes"}, {}, PackingRows(linesForRemarks, {""}));
}

} // namespace

Document packingSheet(const PackingSheetInput& in, const DisplayUnits& units, const Catalogue& texts) {
    SheetBuilder sheet(units, texts);
    const bool refused = isRefused(in);
    sheet.document.title =
        sheet.text(say(refused ? "sheet.packing.title.refused" : "sheet.packing.title").with("name", in.name));
    sheet.document.subtitle = sheet.text(say("sheet.subtitle").with("day", in.on));
    sheet.document.footer = sheet.text(say(refused ? "sheet.packing.footer.refused" : "sheet.packing.footer")
                                           .with("name", in.name)
                                           .with("day", in.on));
    sheet.keep(in.cautions);
    packingVerdict(sheet, in);
    if (refused) {
        for (const auto section : {whatIsPacked, whetherItHolds, whatToDoNow})
            section(sheet, in);
        return std::move(sheet.document);
    }
    for (const auto section :
         {packers, whatIsPacked, whetherItHolds, readyFirst, priming, filling, keeping, whatCameOut})
        section(sheet, in);
    return std::move(sheet.document);
}

} // namespace staveline::sheet

// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/brew_sheet.h"

#include "advice/board.h"
#include "ingredient/pantry.h"
#include "sheet/builder.h"

#include <algorithm>
#include <cmath>

namespace staveline::sheet {

using brewing::MashStage;

namespace {

using Rows = std::vector<std::vector<std::string>>;

constexpr std::size_t linesForNotes = 3;
constexpr double topScore = 10;
constexpr double shown = .05;               ///< points; smaller ones print as zero
constexpr std::string_view none = "\u2013"; ///< a cell that is not there to be filled in

/// "acidity -0.1, funk +0.4"; says when none of it will be tasted.
std::string effect(const SheetBuilder& sheet, const PerDimension<double>& points) {
    std::string out;
    double largest = 0;
    for (auto d : allDimensions) {
        if (!(std::abs(points[d]) >= shown))
            continue;
        largest = std::max(largest, std::abs(points[d]));
        out += (out.empty() ? "" : ", ") + sheet.text("sheet.dimension." + std::string(name(d))) + ' ' +
               sheet.value(SignedPoints{points[d]});
    }
    if (out.empty())
        return std::string(none);
    return advice::willBeTasted(largest) ? out : out + ' ' + sheet.text("sheet.not_tasted");
}

/// A table of effects, or a plain list where none were kept.
void moves(SheetBuilder& sheet, const std::vector<advice::Move>& moves) {
    const bool known =
        std::any_of(moves.begin(), moves.end(), [](const advice::Move& m) { return m.next || m.settled; });
    std::vector<Message> words;
    Rows rows;
    for (const auto& move : moves) {
        words.push_back(move.wording);
        rows.push_back({sheet.text(move.wording), effect(sheet, move.next.value_or(Scores{})),
                        effect(sheet, move.settled.value_or(Scores{}))});
    }
    if (known)
        sheet.table({"sheet.column.change", "sheet.column.next", "sheet.column.settled"}, {}, std::move(rows));
    else
        sheet.bullets(words);
}

void whatChanged(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.changed");
    if (in.firstFill) {
        sheet.paragraph(say("sheet.first_fill"));
    } else if (!in.chosen || in.chosen->moves.empty()) {
        sheet.paragraph(say("sheet.nothing_changed"));
    } else {
        if (!in.chosen->title.key.empty())
            sheet.paragraph(in.chosen->title);
        moves(sheet, in.chosen->moves);
    }
    if (in.chosen && !in.firstFill) {
        sheet.paragraphs(in.chosen->reasons);
        sheet.paragraphs(in.chosen->limits);
    }
    sheet.placeAllBut({"mash", "kettle", "yeast", "fermenter", "draw", "refill"});
}

/// Whoever has the sheet in hand on brew day reads it first.
void faultFirst(SheetBuilder& sheet, const BrewSheetInput& in) {
    if (in.notYet)
        sheet.document.blocks.emplace_back(Caution{
            sheet.text(in.lookAgain ? say("sheet.not_yet.until").with("day", *in.lookAgain) : say("sheet.not_yet"))});
    if (in.fault)
        sheet.document.blocks.emplace_back(Caution{sheet.text(*in.fault)});
}

/// What tells this brew from the others, and by whom it was made.
void who(SheetBuilder& sheet, const BrewSheetInput& in) {
    const Message purpose =
        say(in.firstFill ? "sheet.for_fill" : "sheet.for_refill").with("vessel", in.vessel).with("day", in.dates.draw);
    sheet.table({"sheet.column.brew", "sheet.column.brewed_on", "sheet.column.brewer"}, {},
                {{in.brew.empty() ? sheet.text(purpose) : in.brew, "", ""}});
}

void dates(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.dates");
    const auto row = [&](std::string_view key, Day day) {
        return std::vector<std::string>{sheet.text(key), sheet.value(day), ""};
    };
    Rows rows;
    if (in.firstFill)
        rows = {row("sheet.date.brew", in.dates.brew), row("sheet.date.fill", in.dates.draw),
                row("sheet.date.first_sample", in.dates.nextSample), row("sheet.date.first_draw", in.dates.nextDraw)};
    else
        rows = {row("sheet.date.sample", in.dates.sample), row("sheet.date.brew", in.dates.brew),
                row("sheet.date.draw", in.dates.draw), row("sheet.date.next_sample", in.dates.nextSample),
                row("sheet.date.next_draw", in.dates.nextDraw)};
    sheet.table({"sheet.column.step", "sheet.column.planned", "sheet.column.done"}, {}, std::move(rows));
}

void toBuy(SheetBuilder& sheet, const BrewSheetInput& in) {
    if (in.toBuy.empty())
        return;
    sheet.heading("sheet.section.to_buy");
    const auto cell = [&](const std::optional<Amount>& amount) {
        return amount ? sheet.value(*amount) : std::string(none);
    };
    Rows rows;
    for (const auto& item : in.toBuy)
        rows.push_back({item.name, cell(item.needed), cell(item.atHand),
                        item.missing ? sheet.value(*item.missing) : sheet.text("sheet.to_buy.yeast"), ""});
    sheet.table({"sheet.column.what", "sheet.column.needed", "sheet.column.at_hand", "sheet.column.to_buy",
                 "sheet.column.done"},
                {false, true, true, true, false}, std::move(rows));
    std::string uncounted;
    for (const std::string& name : in.uncounted)
        uncounted += (uncounted.empty() ? "" : ", ") + name;
    if (!uncounted.empty())
        sheet.document.blocks.emplace_back(
            Paragraph{sheet.text(say("sheet.to_buy.uncounted").with("what", uncounted))});
}

void water(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.water");
    const auto& plan = in.plan;
    const auto row = [&](std::string_view key, Litres volume) {
        return std::vector<std::string>{sheet.text(key), sheet.value(volume), ""};
    };
    sheet.table({"sheet.column.what", "sheet.column.planned", "sheet.column.measured"}, {false, true, true},
                {row("sheet.volume.mash_water", plan.strikeAndInfusion), row("sheet.volume.mash", plan.mashVolume),
                 row("sheet.volume.sparge", plan.sparge), row("sheet.volume.pre_boil", plan.preBoilHot),
                 row("sheet.volume.post_boil", plan.postBoilHot), row("sheet.volume.fermenter", plan.intoFermenter),
                 row("sheet.volume.vessel", plan.intoVessel), row("sheet.volume.left_over", plan.leftOver)});
    for (const auto& finding : plan.findings)
        sheet.document.blocks.emplace_back(Caution{sheet.text(finding)});
    for (const auto& assumption : plan.assumptions)
        sheet.document.blocks.emplace_back(Paragraph{sheet.text(assumption)});
}

void grist(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.grist");
    Rows rows;
    for (const auto& grain : in.plan.grist)
        rows.push_back({grain.name, sheet.value(grain.mass), sheet.value(grain.share),
                        sheet.text(grain.late ? "sheet.grain.late" : "sheet.grain.start"), ""});
    rows.push_back({sheet.text("sheet.grain.total"), sheet.value(in.plan.gristMass), sheet.value(Share{1}),
                    std::string(none), ""});
    sheet.table({"sheet.column.grain", "sheet.column.mass", "sheet.column.share", "sheet.column.goes_in",
                 "sheet.column.weighed"},
                {false, true, true, false, true}, std::move(rows));
}

std::string stageText(const SheetBuilder& sheet, const MashStage& stage) {
    switch (stage.how) {
    case MashStage::How::strike:
        return sheet.text(say("sheet.mash.strike").with("water", stage.water).with("at", stage.waterTemperature));
    case MashStage::How::infusion:
        return sheet.text(say("sheet.mash.infusion").with("water", stage.water).with("at", stage.waterTemperature));
    case MashStage::How::heat:
        break;
    }
    return sheet.text(say("sheet.mash.heat").with("minutes", stage.heating));
}

void mash(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.mash");
    Rows rows;
    for (const auto& stage : in.plan.mash)
        rows.push_back({stageText(sheet, stage), sheet.value(stage.temperature), sheet.value(stage.rest),
                        sheet.value(stage.mashVolume), ""});
    for (const auto& grain : in.plan.grist)
        if (grain.late && !in.plan.mash.empty())
            rows.push_back({sheet.text(say("sheet.mash.late").with("mass", grain.mass).with("grain", grain.name)),
                            sheet.value(in.plan.mash.back().temperature), std::string(none), std::string(none), ""});
    sheet.table({"sheet.column.step", "sheet.column.rest_at", "sheet.column.rest", "sheet.column.mash_volume",
                 "sheet.column.measured"},
                {false, true, true, true, true}, std::move(rows));
    sheet.paragraph(say("sheet.mash.ph").with("ph", in.recipe.mashPh));
    sheet.place("mash");
}

void preSouring(SheetBuilder& sheet, const BrewSheetInput& in) {
    if (in.recipe.preSoured.of1 <= 0)
        return;
    sheet.paragraph(say("sheet.boil.pre_sour")
                        .with("share", in.recipe.preSoured)
                        .with("volume", in.plan.preBoilHot * in.recipe.preSoured.of1)
                        .with("ta", in.recipe.preSourTa));
}

void boil(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.boil");
    preSouring(sheet, in);
    sheet.paragraph(say("sheet.boil.how")
                        .with("minutes", in.recipe.boil)
                        .with("before", in.plan.preBoilHot)
                        .with("after", in.plan.postBoilHot));
    Rows rows;
    for (const auto& hop : in.plan.hops)
        rows.push_back({hop.name, sheet.value(hop.alpha), sheet.value(hop.mass), sheet.value(hop.boiled),
                        sheet.value(hop.brings), ""});
    if (!rows.empty())
        sheet.table({"sheet.column.hops", "sheet.column.alpha", "sheet.column.mass", "sheet.column.boiled",
                     "sheet.column.brings", "sheet.column.weighed"},
                    {false, true, true, true, true, true}, std::move(rows));
    if (in.plan.sugar.kg > 0)
        sheet.paragraph(say("sheet.boil.sugar").with("mass", in.plan.sugar).with("sugar", in.plan.sugarName));
    sheet.place("kettle");
}

void fermentation(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.yeast");
    sheet.paragraph(say("sheet.yeast.how")
                        .with("yeast", in.plan.yeastName)
                        .with("volume", in.plan.intoFermenter)
                        .with("days", Days{static_cast<double>(in.plan.primaryDays)})
                        .with("gravity", in.plan.finalGravity));
    sheet.place("yeast");
    sheet.place("fermenter");
}

void targets(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.targets");
    const auto row = [&](std::string_view key, const std::string& target) {
        return std::vector<std::string>{sheet.text(key), target, ""};
    };
    const auto& plan = in.plan;
    sheet.table(
        {"sheet.column.what", "sheet.column.target", "sheet.column.measured"}, {false, true, true},
        {row("sheet.target.mash_ph", sheet.value(in.recipe.mashPh)),
         row("sheet.target.og", sheet.value(plan.originalGravity)),
         row("sheet.target.fermenter", sheet.value(plan.intoFermenter)),
         row("sheet.target.pitch_temperature", std::string(none)),
         row("sheet.target.fg", sheet.value(plan.finalGravity)), row("sheet.target.alcohol", sheet.value(plan.alcohol)),
         row("sheet.target.bitterness", sheet.value(plan.bitterness)),
         row("sheet.target.colour", sheet.value(plan.colour)), row("sheet.target.refill_ph", std::string(none))});
}

void fillDay(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.heading("sheet.section.fill");
    sheet.place("draw");
    sheet.bullets({say("sheet.fill.vessel"), say("sheet.fill.check").with("gravity", in.plan.finalGravity),
                   say("sheet.fill.fill").with("volume", in.plan.intoVessel), say("sheet.fill.culture"),
                   say("sheet.draw.close")});
    sheet.place("refill");
    const auto row = [&](std::string_view key, const std::string& planned) {
        return std::vector<std::string>{sheet.text(key), planned, ""};
    };
    sheet.table(
        {"sheet.column.what", "sheet.column.planned", "sheet.column.measured"}, {false, true, true},
        {row("sheet.fill.filled", sheet.value(in.plan.intoVessel)), row("sheet.draw.temperature", std::string(none))});
}

void drawDay(SheetBuilder& sheet, const BrewSheetInput& in) {
    if (in.firstFill)
        return fillDay(sheet, in);
    sheet.heading("sheet.section.draw");
    sheet.place("draw");
    sheet.bullets({say("sheet.draw.taste"), say("sheet.draw.check").with("gravity", in.plan.finalGravity),
                   say("sheet.draw.draw").with("volume", in.draw),
                   say("sheet.draw.refill").with("volume", in.plan.intoVessel), say("sheet.draw.close")});
    sheet.place("refill");
    const auto row = [&](std::string_view key, const std::string& planned) {
        return std::vector<std::string>{sheet.text(key), planned, ""};
    };
    sheet.table({"sheet.column.what", "sheet.column.planned", "sheet.column.measured"}, {false, true, true},
                {row("sheet.draw.drawn", sheet.value(in.draw)),
                 row("sheet.draw.filled", sheet.value(in.plan.intoVessel)),
                 row("sheet.draw.drawn_gravity", std::string(none)), row("sheet.draw.drawn_ph", std::string(none)),
                 row("sheet.draw.drawn_ta", std::string(none)), row("sheet.draw.temperature", std::string(none))});
}

void expected(SheetBuilder& sheet, const BrewSheetInput& in) {
    Rows rows;
    for (auto d : allDimensions)
        if (const auto& band = in.expected[d])
            rows.push_back({sheet.text("sheet.dimension." + std::string(name(d))), sheet.value(Points{band->value}),
                            sheet.text(say("sheet.expected.band")
                                           .with("low", Points{std::clamp(band->low, 0.0, topScore)})
                                           .with("high", Points{std::clamp(band->high, 0.0, topScore)})),
                            ""});
    if (rows.empty() && in.forecastNote.empty())
        return;
    sheet.heading("sheet.section.expected");
    if (!rows.empty())
        sheet.table({"sheet.column.dimension", "sheet.column.expected", "sheet.column.band", "sheet.column.tasted"},
                    {false, true, true, true}, std::move(rows));
    if (!in.forecastNote.empty())
        sheet.document.blocks.emplace_back(Paragraph{in.forecastNote});
}

/// Of the brew day; what follows them leaves no page to them alone.
void notes(SheetBuilder& sheet, const BrewSheetInput&) {
    sheet.table({"sheet.column.notes"}, {}, Rows(linesForNotes, {""}));
}

/// What holds on any brew day, and what this recipe and this choice bring along.
void keepCautions(SheetBuilder& sheet, const BrewSheetInput& in) {
    sheet.keep({say("caution.mash.hotLiquor").with("scalds", Celsius{60}), say("caution.mash.acid"),
                say("caution.kettle.hotWort"), say("caution.kettle.boilOver"), say("caution.fermenter.cleaners"),
                say("caution.draw.co2"), say("caution.draw.cleaners"), say("caution.refill.vented")});
    if (!in.firstFill)
        sheet.keep(say("caution.draw.sameDay").with("air", in.draw).with("oxygen", Grams{in.draw.l * oxygenInAir}));
    if (in.vesselShape.empty() || in.vesselShape == "keg")
        sheet.keep(say("caution.refill.keg").with("gravity", SpecificGravity{1.010}));
    if (std::any_of(in.plan.grist.begin(), in.plan.grist.end(), [](const auto& g) { return g.late; }))
        sheet.keep(say("caution.mash.lateGrain"));
    if (in.recipe.preSoured.of1 > 0)
        sheet.keep(say("caution.kettle.preSour"));
    if (in.plan.sugar.kg > 0)
        sheet.keep(say("caution.fermenter.sugarOut"));
    for (const auto& caution : in.plan.cautions)
        if (in.killerSensitive || caution.key != "caution.yeast.killer")
            sheet.keep(caution);
    if (!in.chosen)
        return;
    for (const auto& move : in.chosen->moves)
        sheet.keep(move.cautions);
    sheet.keep(in.chosen->cautions);
}

} // namespace

Document brewSheet(const BrewSheetInput& in, const DisplayUnits& units, const Catalogue& texts) {
    SheetBuilder sheet(units, texts);
    sheet.document.title = sheet.text(say("sheet.title").with("vessel", in.vessel));
    sheet.document.subtitle = sheet.text(say(in.brewery.empty() ? "sheet.subtitle" : "sheet.subtitle.brewery")
                                             .with("brewery", in.brewery)
                                             .with("day", in.on));
    sheet.document.footer = sheet.text(say("sheet.footer").with("vessel", in.vessel).with("day", in.on));
    keepCautions(sheet, in);
    for (const auto section : {faultFirst, who, whatChanged, dates, toBuy, water, grist, mash, boil, fermentation,
                               targets, notes, drawDay, expected})
        section(sheet, in);
    return std::move(sheet.document);
}

} // namespace staveline::sheet

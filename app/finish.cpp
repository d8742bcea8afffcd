// SPDX-License-Identifier: GPL-3.0-or-later
// Drawn beer, blending and packing: all of them answer, none writes.
#include "app/commands.h"
#include "app/on_book.h"
#include "app/paper_file.h"
#include "app/typed.h"
#include "desk/blending.h"
#include "desk/lots.h"
#include "desk/packing.h"
#include "quantity/text.h"
#include "sheet/document.h"

#include <fmt/core.h>
#include <map>

namespace staveline::app {
namespace {

using desk::BlendFrom;
using desk::BlendRequest;
using desk::Desk;
using desk::PackingRequest;
using finishing::Trait;

/// "Plover:60": behind the last colon stand litres; a name may have one too.
BlendFrom sourceOf(const std::string& typed) {
    const auto colon = typed.rfind(':');
    if (colon != std::string::npos)
        if (const auto litres = anyNumber(typed.substr(colon + 1), "/from"))
            return {typed.substr(0, colon), Litres{*litres}, {}};
    return {typed, {}, {}};
}

/// "Plover=12"
Result<void> takeColour(BlendRequest& request, const std::string& typed) {
    const auto equals = typed.rfind('=');
    const auto name = typed.substr(0, equals);
    for (BlendFrom& from : request.from)
        if (equals != std::string::npos && from.vessel == name) {
            const auto colour =
                parseNumber(typed.substr(equals + 1), {0, constants::finishing::mostColour}, "/colour_of");
            if (!colour)
                return fail(colour.error());
            from.colour = Ebc{*colour};
            return {};
        }
    return badInput("/colour_of", say("app.colour_of").with("text", excerpt(typed)), say("app.colour_of.remedy"));
}

Result<BlendRequest> blendOf(const FinishOptions& f) {
    BlendRequest request;
    for (const std::string& source : f.sources)
        request.from.push_back(sourceOf(source));
    auto& aims = request.aims;
    for (auto taken :
         {take(request.litres, f.litres, "/litres"), take(aims[Trait::ta], f.ta, "/ta"),
          take(aims[Trait::ph], f.ph, "/ph"), take(aims[Trait::alcohol], f.alcohol, "/alcohol"),
          take(aims[Trait::bitterness], f.bitterness, "/bitterness"), take(aims[Trait::colour], f.colour, "/colour"),
          take(aims[Trait::acidity], f.acidity, "/acidity"), take(aims[Trait::funk], f.funk, "/funk"),
          take(aims[Trait::body], f.body, "/body")})
        if (!taken)
            return fail(taken.error());
    for (const std::string& colour : f.colours)
        if (auto ok = takeColour(request, colour); !ok)
            return fail(ok.error());
    return request;
}

Result<void> takeGravity(std::optional<SpecificGravity>& to, const std::string& typed, const char* path) {
    if (typed.empty())
        return {};
    const auto gravity = parseGravity(typed, path);
    if (!gravity)
        return fail(gravity.error());
    to = *gravity;
    return {};
}

/// "sour_cherry:0.2"
Result<void> takeFruit(PackingRequest& request, const std::string& typed) {
    if (typed.empty())
        return {};
    const auto colon = typed.rfind(':');
    const auto mass = anyNumber(colon == std::string::npos ? "" : typed.substr(colon + 1), "/fruit");
    if (!mass)
        return fail(mass.error());
    request.fruit = typed.substr(0, colon);
    request.fruitKgPerLitre = *mass;
    return {};
}

Result<void> takeResidual(PackingRequest& request, const FinishOptions& f) {
    std::optional<Co2Volumes> measured;
    std::optional<GaugePressure> head;
    std::optional<Celsius> at;
    for (auto taken :
         {take(measured, f.residual, "/residual"), take(head, f.head, "/head_bar"), take(at, f.headAt, "/head_c")})
        if (!taken)
            return taken;
    if (head.has_value() != at.has_value())
        return badInput(head ? "/head_c" : "/head_bar", say("app.head"), say("app.head.remedy"));
    if (measured)
        request.residual = *measured;
    if (head)
        request.residual = finishing::UnderHead{*head, *at};
    return {};
}

Result<void> takeDay(std::optional<Day>& to, const std::string& typed) {
    if (typed.empty())
        return {};
    const auto day = parseDay(typed, "/forced_on");
    if (!day)
        return fail(day.error());
    to = *day;
    return {};
}

Result<PackingRequest> packingOf(const Options& options) {
    const FinishOptions& f = options.finish;
    PackingRequest request;
    request.vessel = options.vessel;
    request.lot = options.lot;
    request.sugar = f.sugar;
    request.make = f.bottle;
    request.override = f.override;
    request.name = f.name;
    std::optional<Litres> litres;
    std::optional<Plato> extract;
    std::optional<Millilitres> size;
    std::optional<Celsius> warmest;
    for (auto taken : {take(litres, f.litres, "/litres"), take(request.volumes, f.volumes, "/volumes"),
                       take(request.sugarWeight, f.sugarWeight, "/sugar_g_l"), take(extract, f.extract, "/extract_p"),
                       take(size, f.bottleMl, "/bottle_ml"), take(request.package.rating, f.rating, "/rating_bar"),
                       take(warmest, f.warmest, "/warmest_c"), takeGravity(request.gravity, f.gravity, "/gravity"),
                       takeGravity(request.forced, f.forced, "/forced_test"), takeDay(request.forcedOn, f.forcedOn),
                       take(request.keg, f.keg, "/keg_c"), takeFruit(request, f.fruit), takeResidual(request, f),
                       take(request.fruitVessel, f.fruitVessel, "/fruit_vessel_l"),
                       take(request.lost, f.lost, "/lost_l"), take(request.alcohol, f.measuredAlcohol, "/alcohol")})
        if (!taken)
            return fail(taken.error());
    request.litres = litres.value_or(Litres{0});
    request.extract = extract.value_or(request.extract);
    request.package.size = size.value_or(request.package.size);
    request.package.warmest = warmest.value_or(request.package.warmest);
    return request;
}

template <class Answer> void print(const std::string& title, const Answer& answer, const DisplayUnits& units) {
    fmt::print("{}\n", title);
    for (const Message& words : answer.words)
        fmt::print("  {}\n", render(words, units));
    for (const Message& caution : answer.cautions)
        fmt::print("  {}\n", render(say("app.caution").with("caution", render(caution, units)), units));
}

void printLines(const std::vector<Message>& lines, const DisplayUnits& units) {
    for (std::size_t i = 0; i < lines.size(); ++i)
        fmt::print("{}{}\n", i == 0 ? "" : "  ", render(lines[i], units));
}

/// Where it came from and all that happened.
void printPast(const desk::LotView& lot, const DisplayUnits& units) {
    for (const desk::LotPartView& part : lot.parts)
        fmt::print("  {}\n", render(desk::wordsOf(part), units));
    for (const desk::LotLine& line : lot.lines)
        fmt::print("  {}\n", render(say("app.lot_line")
                                        .with("on", line.on)
                                        .with("what", render(line.text, units))
                                        .with("after", line.after),
                                    units));
}

} // namespace

int lots(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        if (!options.lot.empty()) {
            const auto lot = desk.lot(options.lot);
            if (!lot)
                return complain(lot.error(), options);
            if (options.json) {
                fmt::print("{}", toJson(*lot));
                return 0;
            }
            printLines(wordsOf(*lot), unitsOf(options));
            printPast(*lot, unitsOf(options));
            return 0;
        }
        const auto all = desk.lots();
        if (!all)
            return complain(all.error(), options);
        if (options.json)
            fmt::print("{}", toJson(*all));
        else if (all->empty())
            fmt::print("{}\n", render(say("app.no_lots")));
        else
            for (const desk::LotView& lot : *all)
                printLines(wordsOf(lot), unitsOf(options));
        return 0;
    });
}

int blend(const Options& options) {
    const auto request = blendOf(options.finish);
    if (!request)
        return complain(request.error(), options);
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        const auto answer = desk.blend(*request);
        if (!answer)
            return complain(answer.error(), options);
        if (options.json)
            fmt::print("{}", toJson(*answer));
        else
            print(render(say("app.blend").with("litres", answer->blend.litres), unitsOf(options)), *answer,
                  unitsOf(options));
        return 0;
    });
}

namespace {

/// The day sheet, then the labels; says where they are.
Result<void> writePapers(const Desk& desk, const desk::PackingAnswer& answer, const Options& options) {
    const auto write = [&](const sheet::Document& paper, const std::string& to, const char* path) -> Result<void> {
        auto written = writePaper(paper, to, options.paper);
        if (!written)
            written.error().path = path;
        else if (to != "-" && !options.json)
            fmt::print("{}\n", render(say("app.written").with("file", to)));
        return written;
    };
    if (!options.out.empty())
        if (auto ok = write(desk.packingSheet(answer, unitsOf(options)), options.out, "/out"); !ok)
            return ok;
    if (options.finish.label.empty())
        return {};
    const auto labels = desk.bottleLabels(answer, unitsOf(options));
    return labels ? write(*labels, options.finish.label, "/label") : Result<void>(fail(labels.error()));
}

int answerPacking(const Desk& desk, const desk::PackingAnswer& answer, const Options& options) {
    const bool onlyPaper = options.out == "-" || options.finish.label == "-";
    if (options.json)
        fmt::print("{}", toJson(answer));
    else if (!onlyPaper)
        print(answer.name, answer, unitsOf(options));
    if (const auto ok = writePapers(desk, answer, options); !ok)
        return complain(ok.error(), options);
    return answer.verdict.answer == finishing::GuardAnswer::refused ? statusOf(FaultKind::notPossible) : 0;
}

} // namespace

int package(const Options& options) {
    if (options.json && (options.out == "-" || options.finish.label == "-"))
        return complain({FaultKind::input, "/out", say("app.two_answers"), say("app.two_answers.remedy")}, options);
    const auto request = packingOf(options);
    if (!request)
        return complain(request.error(), options);
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        const auto answer = desk.pack(*request);
        return answer ? answerPacking(desk, *answer, options) : complain(answer.error(), options);
    });
}

} // namespace staveline::app

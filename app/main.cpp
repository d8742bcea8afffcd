// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands.h"
#include "app/language.h"
#include "finishing/fruit.h"
#include "finishing/kinds.h"
#include "finishing/package.h"
#include "finishing/priming.h"
#include "quantity/constants.h"

#include <CLI/CLI.hpp>
#include <csignal>
#include <cstdio>
#include <exception>
#include <fmt/core.h>

#ifdef STAVELINE_HAS_WINDOW
#include "ui/start.h"
#endif

namespace {

using namespace staveline;
using namespace staveline::app;

int openWindow(const Options& options, int argc, char** argv) {
#ifdef STAVELINE_HAS_WINDOW
    if (ui::hasDisplay()) {
        desk::Clock clock = desk::systemToday;
        if (options.today)
            clock = [day = *options.today] { return day; };
        const auto book =
            options.book.empty() ? std::optional<std::filesystem::path>() : std::filesystem::path(options.book);
        return ui::runWindow(argc, argv, book, clock);
    }
#else
    (void)argc, (void)argv, (void)options;
#endif
    fmt::print(stderr, "{}\n", render(say("app.no_display")));
    return 1;
}

/// A command with its book; returns it for more options.
CLI::App* command(CLI::App& parent, const char* name, const char* help, Options& options, int& status,
                  int (*run)(const Options&)) {
    CLI::App* sub = parent.add_subcommand(name, help)->group(inLanguage("Subcommands"));
    sub->add_option("book", options.book, "the cellar book (*.cellar)")->required();
    sub->add_flag("--json", options.json, "answer in JSON");
    sub->callback([&options, &status, run] { status = run(options); });
    return sub;
}

void needVessel(CLI::App* sub, Options& options) {
    sub->add_option("--vessel", options.vessel, "name of the vessel")->required();
}

std::vector<std::string> languageCodes() {
    std::vector<std::string> codes{std::string(pseudoLanguage().code)};
    for (const Language& language : languages())
        codes.emplace_back(language.code);
    return codes;
}

/// What holds for all of them.
void addGeneral(CLI::App& parser, Options& options) {
    tellHelpInLanguage(parser);
    parser.set_help_flag("-h,--help", "this help, or that of a command");
    parser.set_version_flag("--version", fmt::format("{} {}", "staveline", STAVELINE_VERSION),
                            "the version of the program");
    parser.add_option("--language", options.language, "language of what is said (if not given, as the machine is set)")
        ->check(CLI::IsMember(languageCodes()));
    parser.add_option("--today", options.todayText, "the day to take as today (YYYY-MM-DD)")
        ->each([&options](const std::string& text) {
            auto day = parseDay(text, "/today");
            if (!day)
                throw CLI::ValidationError(render(day.error().cause) + " " +
                                           render(day.error().remedy)); // it names itself
            options.today = *day;
        });
    parser
        .add_option(
            "--units", options.units,
            "units of printed answers and papers: metric (L, \u00b0C, EBC, bar) or us (US gallons, \u00b0F, SRM, psi)")
        ->check(CLI::IsMember({"metric", "us"}));
    parser.require_subcommand(0, 1);
    parser.fallthrough();
}

void addBooks(CLI::App& parser, Options& options, int& result) {
    auto* made = command(parser, "new", "make a new cellar book", options, result, newBook);
    auto* sample = made->add_flag("--sample", options.sample, "fill it with the sample cellar");
    made->add_option("--from", options.from, "a folder that export made; the book becomes the same")->excludes(sample);
    command(parser, "status", "every vessel: level, age, what is due", options, result, status);
    command(parser, "record", "record facts from a JSON file", options, result, record)
        ->add_option("file", options.file, "the file; - reads standard input")
        ->required();
    command(parser, "export", "the whole book as tables (CSV) and a page a cycle", options, result, exportBook)
        ->add_option("--out", options.out, "a new or empty folder")
        ->required();
    command(parser, "undo", "take back the last edit", options, result, undo);
    command(parser, "redo", "bring back the last edit taken back", options, result, redo);
    command(parser, "check", "look for damage in the whole book", options, result, check);
    CLI::App* told = parser.add_subcommand("report", "what those who mend the program ask for; nothing you recorded")
                         ->group(inLanguage("Subcommands"));
    told->add_option("book", options.book, "the cellar book (*.cellar)");
    told->add_option("--out", options.out, "the file; - prints it");
    told->callback([&options, &result] { result = report(options); });
}

void addNotes(CLI::App& parser, Options& options, int& result) {
    CLI::App* notes = parser.add_subcommand("import", "years of notes from a CSV file, or a template for them")
                          ->group(inLanguage("Subcommands"));
    notes->add_option("book", options.book, "the cellar book (*.cellar)");
    notes->add_option("file", options.file, "the notes (CSV); - reads standard input");
    notes->add_option("--kind", options.kind,
                      "what each row is: reading, draw_off, refill, sitting, brew and the like");
    notes->add_option("--vessel", options.vessel, "vessel of the rows that name none");
    notes->add_option("--map", options.columns,
                      "COLUMN=FIELD, what a column means; COLUMN= leaves it out; may be repeated");
    notes->add_option("--dates", options.dates, "order of day, month and year")
        ->check(CLI::IsMember({"ymd", "dmy", "mdy"}));
    notes->add_option("--decimal", options.decimal, "the decimal mark")->check(CLI::IsMember({".", ","}));
    notes->add_flag("--preview", options.preview, "say what would be taken and what not; store nothing");
    notes->add_option("--template", options.templateOf, "print the CSV file of this kind to fill in");
    notes->add_flag("--json", options.json, "answer in JSON");
    notes->callback([&options, &result] { result = importNotes(options); });
}

void addDecision(CLI::App& parser, Options& options, int& result) {
    auto* advice = command(parser, "advise", "what to change for the coming refill", options, result, advise);
    needVessel(advice, options);
    advice->add_option("--lock", options.locks,
                       "LEVER=VALUE, hold a lever; LEVER alone: as it is now; may be repeated");
    advice->add_option("--without", options.without, "a malt or yeast that is not at hand; may be repeated");
    constexpr int most = static_cast<int>(constants::advice::mostLevers);
    constexpr int usual = static_cast<int>(constants::advice::mostMoved);
    advice
        ->add_option("--levers", options.levers,
                     fmt::format(fmt::runtime(inLanguage("change at most N things at once, 1 to {} ({} if not given)")),
                                 most, usual))
        ->check(CLI::Range(1, most));
    advice->add_option("--choose", options.choose, "adopt proposal N (0: leave it alone) and store its forecast");
    auto* forecast = command(parser, "predict", "scores for a plan of your own", options, result, predict);
    needVessel(forecast, options);
    forecast->add_option("--plan", options.file, "JSON with what differs from leaving it alone")->required();
}

void addTrial(CLI::App& parser, Options& options, int& result) {
    auto* trial = command(parser, "whatif", "what a vessel would become, run in another way", options, result, whatIf);
    needVessel(trial, options);
    trial->add_option("--capacity", options.capacity, "litres it holds");
    trial->add_option("--draw", options.draw, "litres drawn each time");
    trial->add_option("--every", options.every, "days from draw to draw");
    trial->add_option("--wanted-age", options.wantedAge, "years it is old at each draw, in place of --every")
        ->excludes("--every");
    trial->add_option("--refill-age", options.refillAge, "days the refill is old when it goes in");
    trial->add_option("--in-row", options.inRow, "vessels like it in a row, each topped from the next younger");
}

std::string oneOf(std::string_view words, const std::string& ids) {
    return fmt::format(fmt::runtime(inLanguage(words)), ids);
}

void addFinishing(CLI::App& parser, Options& options, int& result) {
    FinishOptions& f = options.finish;
    auto* mix = command(parser, "blend", "what to pour of two to five vessels or lots to come to a target", options,
                        result, blend);
    mix->add_option("--from", f.sources, "VESSEL or VESSEL:LITRES, or a lot the same way; two to five times")
        ->required();
    mix->add_option("--litres", f.litres, "litres of the blend; as much as there is without it");
    mix->add_option("--ta", f.ta, "titratable acidity wanted, g/L as lactic");
    mix->add_option("--ph", f.ph, "pH wanted");
    mix->add_option("--alcohol", f.alcohol, "% vol wanted");
    mix->add_option("--bitterness", f.bitterness, "IBU wanted");
    mix->add_option("--colour", f.colour, "EBC wanted; needs --colour-of for each source");
    mix->add_option("--colour-of", f.colours, "VESSEL=EBC, the measured colour of a source; may be repeated");
    mix->add_option("--acidity", f.acidity, "score wanted, 0 to 10");
    mix->add_option("--funk", f.funk, "score wanted, 0 to 10");
    mix->add_option("--body", f.body, "score wanted, 0 to 10");
}

void addLots(CLI::App& parser, Options& options, int& result) {
    auto* drawn =
        command(parser, "lots", "drawn beer: what is left, what it is like, what waits", options, result, app::lots);
    drawn->add_option("--lot", options.lot, "one lot, with all that happened to it");
}

void addPaperSize(CLI::App* paper, Options& options) {
    paper->add_option("--paper", options.paper, "pages of a PDF (if not given, as the country of this machine prints)")
        ->check(CLI::IsMember({"a4", "letter"}));
}

void addPacking(CLI::App& parser, Options& options, int& result) {
    FinishOptions& f = options.finish;
    auto* pack = command(parser, "package", "beer into bottles: sugar by weight, pressure, and whether it is safe",
                         options, result, package);
    auto* vessel = pack->add_option("--vessel", options.vessel, "name of the vessel");
    pack->add_option("--lot", options.lot, "or of the drawn beer")->excludes(vessel);
    pack->add_option("--litres", f.litres, "litres to pack")->required();
    auto* volumes = pack->add_option("--volumes", f.volumes, "volumes of CO2 wanted");
    pack->add_option("--sugar-g-l", f.sugarWeight, "grams of sugar a litre, in place of --volumes")->excludes(volumes);
    pack->add_option("--sugar", f.sugar, oneOf("one of: {}", finishing::idsOf(finishing::builtInSugars())));
    pack->add_option("--extract", f.extract, "real extract of wort or unfermented beer, \u00b0P");
    pack->add_option("--bottle-ml", f.bottleMl, "mL of a bottle (330)");
    pack->add_option("--rating-bar", f.rating, "what the maker rates the bottle for, bar on the gauge");
    pack->add_option("--bottle", f.bottle,
                     oneOf("its make, one of: {}", finishing::idsOf(finishing::builtInBottles())));
    pack->add_option("--warmest", f.warmest, "\u00b0C, the warmest it will ever stand (30)");
    pack->add_option("--gravity", f.gravity, "measured today; beside what is on record");
    pack->add_option("--forced-test", f.forced, "gravity at which a sample kept warm ended");
    pack->add_option("--forced-on", f.forcedOn, "the day it ended (YYYY-MM-DD); today without it");
    auto* residual = pack->add_option("--residual", f.residual, "volumes of CO2 measured in the beer");
    pack->add_option("--head-bar", f.head, "or bar on the gauge of its keg, at rest")->excludes(residual);
    pack->add_option("--head-c", f.headAt, "\u00b0C of that keg");
    pack->add_option(
        "--fruit", f.fruit,
        oneOf("KIND:KG, fruit that lay in it, kg a litre; one of: {}", finishing::idsOf(finishing::builtInFruits())));
    pack->add_option("--fruit-vessel", f.fruitVessel,
                     "litres of the vessel in which it lay: is there room for the surge?");
    pack->add_option("--keg-c", f.keg, "tell the pressure for a keg at this \u00b0C too");
    pack->add_option("--override", f.override, "the reason why the guard's no does not count");
    pack->add_option(
        "--lost", f.lost,
        fmt::format(fmt::runtime(inLanguage("litres lost on the way into the bottles (if not given, {} and {} %)")),
                    constants::finishing::bottlingLoss, 100 * constants::finishing::bottlingLossShare));
    pack->add_option("--name", f.name, "what the package is called on sheet and label; else as the vessel");
    pack->add_option("--alcohol", f.measuredAlcohol, "% vol measured in the beer, for the label; else computed");
    pack->add_option("--out", options.out, "write the day sheet (.md, .html, .csv, .txt, .pdf); - prints Markdown");
    pack->add_option("--label", f.label, "write the label's text, eight to a page, the same way");
    addPaperSize(pack, options);
}

void needPaper(CLI::App* paper, Options& options) {
    paper->add_option("--out", options.out, "the file; - prints Markdown")->required();
    addPaperSize(paper, options);
}

void addPapers(CLI::App& parser, Options& options, int& result) {
    auto* paper =
        command(parser, "sheet", "write the brew sheet (.md, .html, .csv, .txt, .pdf)", options, result, app::sheet);
    needVessel(paper, options);
    needPaper(paper, options);
    auto* cards =
        command(parser, "card", "write the cards that hang on the vessels, four to a page", options, result, app::card);
    cards->add_option("--vessel", options.vessel, "name of the vessel; all in use without it");
    needPaper(cards, options);
    auto* recipe = command(parser, "recipe", "the recipe of the coming refill to or from other programs", options,
                           result, app::recipe);
    needVessel(recipe, options);
    recipe->add_option("--out", options.out, "write BeerJSON (.json) or BeerXML (.xml)");
    recipe->add_option("--in", options.recipeIn, "read such a file");
    recipe->add_option("--as", options.recipeAs, "what is read becomes the usual recipe (the default) or the plan")
        ->check(CLI::IsMember({"usual", "plan"}));
    auto* past = command(parser, "history", "everything about a vessel by day", options, result, history);
    needVessel(past, options);
    past->add_flag("--csv", options.csv, "as CSV (the default)");
    past->add_option("--out", options.out, "into a file: a table (.csv) or a spreadsheet (.xlsx)");
    auto* days = command(parser, "calendar", "the work to come as a calendar file (.ics)", options, result, calendar);
    days->add_option("--vessel", options.vessel, "name of the vessel; all of them without it");
    days->add_option("--out", options.out, "the file; - prints it")->required();
}

int runCommand(int argc, char** argv) {
    speak(languageOf(argc, argv));
    CLI::App parser{"Staveline, a workbench for mixed-culture beer in long-lived vessels"};
    Options options;
    int result = 0;
    addGeneral(parser, options);
    addBooks(parser, options, result);
    CLI::App* window = parser.add_subcommand("open", "open a book in the window")->group(inLanguage("Subcommands"));
    window->add_option("book", options.book, "the cellar book (*.cellar)");
    window->callback([&] { result = openWindow(options, argc, argv); });
    addNotes(parser, options, result);
    addDecision(parser, options, result);
    addTrial(parser, options, result);
    addFinishing(parser, options, result);
    addLots(parser, options, result);
    addPacking(parser, options, result);
    addPapers(parser, options, result);
    try {
        parser.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        return parser.exit(error) == 0 ? 0 : 2;
    }
    if (parser.get_subcommands().empty())
        return openWindow(options, argc, argv);
    return result;
}

/// Not through the formatter: standard error may be what failed.
int giveUp(const Message& cause, const Message& remedy) {
    std::fputs((render(cause) + " " + render(remedy) + "\n").c_str(), stderr);
    return statusOf(FaultKind::storage);
}

int answerLost() {
    return giveUp(say("app.answer_lost"), say("app.answer_lost.remedy"));
}

} // namespace

int main(int argc, char** argv) {
    std::signal(SIGXFSZ, SIG_IGN); // a file that may not grow is a fault, like a full disk
    try {
        const int status = runCommand(argc, argv);
        return std::fflush(stdout) == 0 && std::ferror(stdout) == 0 ? status : answerLost();
    } catch (const std::exception& error) {
        if (std::ferror(stdout) != 0)
            return answerLost();
        return giveUp(say("app.broken_off").with("detail", std::string(error.what())), say("app.broken_off.remedy"));
    }
}

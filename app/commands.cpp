// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/commands.h"

#include "advice/cautions.h"
#include "advice/on_scale.h"
#include "app/lock_option.h"
#include "app/on_book.h"
#include "app/paper_file.h"
#include "app/progress.h"
#include "desk/advice.h"
#include "desk/brew.h"
#include "desk/brew_days.h"
#include "desk/full_answer.h"
#include "desk/history.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/lots.h"
#include "facts/record_file.h"
#include "facts/sample.h"
#include "forward/predict.h"
#include "quantity/language.h"
#include "sheet/document.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fmt/core.h>
#include <fstream>
#include <iostream>
#include <iterator>
#include <set>

namespace staveline::app {

using desk::Desk;
using desk::toJson;
using tasting::z80;

namespace {

/// A lever without a value is held as it is.
Result<advice::LeverLock> lockOf(const std::string& text, const Desk& desk, const facts::VesselName& vessel) {
    const auto& levers = advice::builtInLevers();
    if (std::none_of(levers.begin(), levers.end(), [&](const advice::LeverRow& row) { return row.id == text; }))
        return parseLock(text);
    auto job = desk.adviceJob({vessel, {}, {}, false, true});
    if (!job)
        return fail(job.error());
    return advice::LeverLock{text, leverValue(job->input.base, text, *job->pantry)};
}

Result<desk::AdviceRequest> requestOf(const Options& options, const Desk& desk) {
    desk::AdviceRequest request{options.vessel, {}, options.without, true};
    request.maxMoved = options.levers;
    for (const auto& text : options.locks) {
        auto lock = lockOf(text, desk, options.vessel);
        if (!lock)
            return fail(lock.error());
        const auto sameLever = [&](const auto& other) { return other.lever == lock->lever; };
        if (std::any_of(request.locks.begin(), request.locks.end(), sameLever))
            return badInput("/lock", say("app.lock_twice").with("lever", lock->lever), say("app.lock_twice.remedy"));
        request.locks.push_back(std::move(*lock));
    }
    return request;
}

std::string bandText(const advice::Band& predicted) {
    const advice::Band band = staveline::advice::onScale(predicted);
    return render(
        say("app.band").with("mean", Points{band.value}).with("low", Points{band.low}).with("high", Points{band.high}));
}

std::string wordOf(Dimension d) {
    return render(say("sheet.dimension." + std::string(name(d))));
}

/// "acidity  6.2 ±0.3": the names stand in a column.
std::string dimensionLine(Dimension d, const std::string& words) {
    std::size_t widest = 0;
    for (Dimension each : allDimensions)
        widest = std::max(widest, wordOf(each).size());
    return fmt::format("{:{}} {}", wordOf(d), widest + 1, words);
}

void printCautions(const std::vector<Message>& cautions, const DisplayUnits& units) {
    for (const auto& caution : cautions)
        fmt::print("    {}\n", render(say("app.caution").with("caution", render(caution, units))));
}

/// `once`: the refill after it goes without again, so there is nothing to repeat.
void printProposal(const advice::Proposal& proposal, int number, bool once, const DisplayUnits& units) {
    fmt::print("\n{} {}\n", number > 0 ? std::to_string(number) : "-", render(proposal.title, units));
    for (const auto& move : proposal.moves)
        fmt::print("    {}\n", render(move.wording, units));
    for (Dimension d : allDimensions)
        fmt::print("    {}\n", dimensionLine(d, render(say(once ? "app.next" : "app.next_and_repeated")
                                                           .with("next", bandText(proposal.next[d]))
                                                           .with("settled", bandText(proposal.settled[d])))));
    fmt::print("    {}\n", render(proposal.why, units));
    for (const auto* list : {&proposal.reasons, &proposal.limits})
        for (const auto& message : *list)
            fmt::print("    {}\n", render(message, units));
}

/// What does not agree in a ledger; of many the latest.
template <class Found, class Word>
void printFindings(std::FILE* to, const char* indent, const std::vector<Found>& findings, Word word) {
    constexpr std::size_t most = 10;
    const std::size_t first = findings.size() > most ? findings.size() - most : 0;
    if (first > 0)
        fmt::print(to, "{}{}\n", indent,
                   render(say("app.findings_before").with("count", static_cast<std::int64_t>(first))));
    for (std::size_t i = first; i < findings.size(); ++i)
        fmt::print(to, "{}{}\n", indent, word(findings[i]));
}

void printNotes(std::FILE* to, const std::vector<desk::LedgerNote>& notes, const DisplayUnits& units) {
    printFindings(to, "  ", notes, [&](const auto& note) {
        return render(say("app.finding").with("finding", render(note.text, units)), units);
    });
}

void printSteering(const std::optional<desk::AgeSteering>& steering, const DisplayUnits& units) {
    if (steering)
        for (const Message& message : steering->words)
            fmt::print("  {}\n", render(message, units));
}

/// What an answer says is not said again by a note.
void printAnswers(const desk::AdviceJob& job, const advice::Advice& advice, const DisplayUnits& units) {
    std::set<std::string> said;
    for (const auto& answer : desk::answersOf(advice.verdicts, job.estimates.faults, job.dates)) {
        fmt::print("  {}\n", render(answer.title, units));
        for (const auto& line : answer.lines) {
            const std::string words = render(line.words, units);
            fmt::print("    {}: {}\n", render(line.head, units), words);
            said.insert(words);
        }
    }
    for (const auto& note : advice.notes)
        if (const std::string words = render(note, units); said.insert(words).second)
            fmt::print("  {}\n", words);
}

/// What all three scores wait for is said once, by the answer below.
std::string reasonOf(const tasting::Verdict& verdict, const DisplayUnits& units) {
    return verdict.kind == tasting::VerdictKind::faultFirst ? std::string() : "  " + render(verdict.reason, units);
}

void printAdvice(const desk::AdviceJob& job, const advice::Advice& advice, const DisplayUnits& units) {
    fmt::print("{}\n", render(say("app.dates")
                                  .with("vessel", job.vessel)
                                  .with("draw", isoDay(job.dates.draw))
                                  .with("brew", isoDay(job.dates.brew))));
    printSteering(job.steering, units);
    printNotes(stdout, job.findings, units);
    for (Dimension d : allDimensions)
        fmt::print("  {}{}\n",
                   dimensionLine(d, render(say("app.estimate")
                                               .with("mean", Points{advice::onScale(job.estimates.combined[d].mean)})
                                               .with("half", Points{job.estimates.combined[d].sd * z80}))),
                   reasonOf(advice.verdicts[d], units));
    printAnswers(job, advice, units);
    const auto print = [&](const advice::Proposal& proposal, int number) {
        printProposal(proposal, number, onlyAids(proposal.setting, advice.leaveAlone.setting, *job.pantry), units);
        printCautions(addedCautions(proposal, advice.leaveAlone), units);
    };
    int number = 0;
    for (const auto& proposal : advice.proposals)
        print(proposal, ++number);
    print(advice.leaveAlone, 0);
    if (advice.usual)
        print(*advice.usual, 0);
    fmt::print("\n{}\n", render(say("app.cautions")));
    printCautions(cautionsOf(advice.leaveAlone), units);
}

int finish(const Result<desk::Recorded>& done, const Options& options, const char* key) {
    if (!done)
        return complain(done.error(), options);
    if (options.json) {
        fmt::print("{}", toJson(*done));
        return 0;
    }
    fmt::print("{}\n", render(say(key).with("edit", done->edit)));
    printFindings(stdout, "", done->findings, [&](const auto& found) {
        return render(say("app.finding_in")
                          .with("vessel", found.vessel)
                          .with("finding", render(found.note.text, unitsOf(options))));
    });
    return 0;
}

} // namespace

DisplayUnits unitsOf(const Options& options) {
    DisplayUnits units;
    if (options.units == "us") {
        units.volume = DisplayUnits::Volume::usGallon;
        units.temperature = DisplayUnits::Temperature::fahrenheit;
        units.colour = DisplayUnits::Colour::srm;
        units.pressure = DisplayUnits::Pressure::psi;
    }
    return units;
}

int complain(const Fault& fault, const Options& options) {
    if (options.json)
        fmt::print("{}", toJson(fault));
    fmt::print(stderr, "{}{} {}\n", fault.path.empty() ? "" : fault.path + ": ", render(fault.cause, unitsOf(options)),
               render(fault.remedy, unitsOf(options)));
    return statusOf(fault.kind);
}

int statusOf(FaultKind kind) {
    switch (kind) {
    case FaultKind::notPossible:
        return 1;
    case FaultKind::input:
        return 2;
    case FaultKind::storage:
    case FaultKind::damaged:
    case FaultKind::changedElsewhere:
        return 3;
    }
    return 2;
}

int newBook(const Options& options) {
    if (!options.from.empty())
        return bookFrom(options);
    auto desk = Desk::create(options.book, clockOf(options));
    if (!desk)
        return complain(desk.error(), options);
    if (options.sample) {
        auto facts = facts::sampleCellar((*desk)->today());
        auto done = facts ? (*desk)->record(*facts) : Result<desk::Recorded>(fail(facts.error()));
        if (!done)
            return complain(done.error(), options);
    }
    fmt::print("{}",
               options.json ? toJson("book", options.book) : render(say("app.made").with("file", options.book)) + "\n");
    return 0;
}

namespace {

/// An empty vessel has no age and nothing to draw: it says when it is filled.
void printCellar(const Desk& desk, const std::vector<desk::VesselSummary>& cellar, const DisplayUnits& units) {
    for (const auto& vessel : cellar) {
        const char* line = vessel.retired  ? "app.status_retired"
                           : vessel.toFill ? "app.status_empty"
                                           : "app.status_line";
        fmt::print("{}\n", render(say(line)
                                      .with("vessel", vessel.name)
                                      .with("volume", vessel.now.volume)
                                      .with("capacity", vessel.facts.capacity)
                                      .with("kind", desk::vesselWords(vessel.facts))
                                      .with("age", Age{vessel.now.meanAge.d})
                                      .with("headline", render(vessel.headline, units))
                                      .with("brew", isoDay(vessel.dates.brew))
                                      .with("draw", isoDay(vessel.dates.draw)),
                                  units));
        printSteering(vessel.steering, units);
        for (const Message& seen : vessel.seen.words)
            fmt::print("  {}\n", render(seen, units));
        printNotes(stdout, vessel.findings, units);
    }
    for (const desk::BrewDay& day : desk::brewDays(cellar))
        fmt::print("{}\n", desk::brewDayWords(day, desk.kit(), units));
    const auto lots = desk.lotsWaiting();
    for (std::size_t i = 0; lots && i < lots->size(); ++i)
        fmt::print("{}\n", render(say("app.lot_waits")
                                      .with("lot", (*lots)[i].name)
                                      .with("what", render((*lots)[i].waits.front().text, units)),
                                  units));
}

int adviseOn(Desk& desk, const desk::AdviceRequest& request, const Options& options) {
    auto job = desk.adviceJob(request);
    if (!job)
        return complain(job.error(), options);
    auto advice = staveline::advice::advise(job->input);
    if (!advice)
        return complain(advice.error(), options);
    if (options.choose) {
        auto choice = desk.choose(*job, *advice, *options.choose);
        if (!choice)
            return complain(choice.error(), options);
        if (!options.json)
            fmt::print("{}\n", render(say("app.chosen").with("number", std::int64_t{*options.choose})));
    }
    if (options.json)
        fmt::print("{}", toJson(*job, *advice));
    else
        printAdvice(*job, *advice, unitsOf(options));
    return 0;
}

int sheetOf(const Desk& desk, const Options& options) {
    if (options.json && options.out == "-")
        return complain({FaultKind::input, "/out", say("app.two_answers"), say("app.two_answers.remedy")}, options);
    auto document = desk.brewSheet(options.vessel, unitsOf(options));
    if (!document)
        return complain(document.error(), options);
    if (auto written = writePaper(*document, options.out, options.paper); !written)
        return complain(written.error(), options);
    if (options.json) {
        auto plan = desk.brewPlan(options.vessel);
        if (!plan)
            return complain(plan.error(), options);
        fmt::print("{}", toJson(*plan));
    } else if (options.out != "-") {
        fmt::print("{}\n", render(say("app.written").with("file", options.out)));
    }
    return 0;
}

int predictFor(const Desk& desk, const std::string& plan, const Options& options) {
    auto base = desk.leftAlone(options.vessel);
    if (!base)
        return complain(base.error(), options);
    auto setting = desk::parseSetting(plan, *base);
    if (!setting)
        return complain(setting.error(), options);
    auto prediction = desk.predict(options.vessel, *setting);
    if (!prediction)
        return complain(prediction.error(), options);
    fmt::print("{}", toJson(*prediction));
    return 0;
}

} // namespace

int status(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        const auto cellar = desk.cellar();
        if (!cellar)
            return complain(cellar.error(), options);
        if (options.json)
            fmt::print("{}", toJson(*cellar));
        else
            printCellar(desk, *cellar, unitsOf(options));
        return 0;
    });
}

int record(const Options& options) {
    auto text = readFile(options.file);
    if (!text)
        return complain(text.error(), options);
    auto facts = facts::parseRecords(*text);
    if (!facts)
        return complain(facts.error(), options);
    return onBook(options, book::OpenMode::readWrite, [&](Desk& desk) {
        auto recorded = [&] {
            ProgressLine line;
            return desk.record(*facts, [&](std::size_t done, std::size_t all) { line.show(done, all); });
        }();
        return finish(recorded, options, "app.recorded");
    });
}

int advise(const Options& options) {
    return onBook(options, options.choose ? book::OpenMode::readWrite : book::OpenMode::readOnly, [&](Desk& desk) {
        auto request = requestOf(options, desk);
        return request ? adviseOn(desk, *request, options) : complain(request.error(), options);
    });
}

int sheet(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) { return sheetOf(desk, options); });
}

int card(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        auto document = desk.vesselCards(options.vessel, unitsOf(options));
        if (!document)
            return complain(document.error(), options);
        if (auto written = writePaper(*document, options.out, options.paper); !written)
            return complain(written.error(), options);
        if (options.out != "-")
            fmt::print("{}\n", render(say("app.written").with("file", options.out)));
        return 0;
    });
}

int predict(const Options& options) {
    auto plan = readFile(options.file);
    if (!plan)
        return complain(plan.error(), options);
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) { return predictFor(desk, *plan, options); });
}

namespace {

/// A spreadsheet or a table, as the ending of the file says.
int deliverHistory(const std::vector<desk::HistoryRow>& rows, const Options& options) {
    const auto ending = std::filesystem::path(options.out).extension();
    if (ending != ".xlsx" && ending != ".csv")
        return complain(
            {FaultKind::input, "/out", say("app.unknown_ending").with("file", options.out),
             say("app.unknown_ending.remedy").with("endings", fmt::format(".csv {} .xlsx", inLanguage("or")))},
            options);
    const auto bytes = ending == ".csv" ? Result<std::string>(toCsv(rows)) : toXlsx(rows);
    return bytes ? deliver(*bytes, options) : complain(bytes.error(), options);
}

} // namespace

int history(const Options& options) {
    return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) {
        auto past = desk.history(options.vessel);
        if (!past)
            return complain(past.error(), options);
        if (!options.json)
            printNotes(stderr, past->findings, unitsOf(options));
        if (!options.out.empty())
            return deliverHistory(past->rows, options);
        fmt::print("{}", options.json ? toJson(*past) : toCsv(past->rows));
        return 0;
    });
}

int undo(const Options& options) {
    return onBook(options, book::OpenMode::readWrite,
                  [&](Desk& desk) { return finish(desk.undo(), options, "app.undone"); });
}

int redo(const Options& options) {
    return onBook(options, book::OpenMode::readWrite,
                  [&](Desk& desk) { return finish(desk.redo(), options, "app.redone"); });
}

int check(const Options& options) {
    auto desk = Desk::open(options.book, clockOf(options), book::OpenMode::readOnly);
    if (!desk)
        return complain(desk.error(), options);
    for (const auto& notice : (*desk)->notices())
        fmt::print(stderr, "{}\n", render(notice));
    auto report = (*desk)->check();
    if (!report)
        return complain(report.error(), options);
    if (options.json) {
        fmt::print("{}", toJson(*report));
    } else {
        for (const auto& damage : report->damages)
            fmt::print("{}\n", render(damage.what));
        fmt::print("{}\n", render(say(report->sound() ? "app.sound" : "app.damaged")
                                      .with("rows", report->rowsChecked)
                                      .with("count", static_cast<std::int64_t>(report->damages.size()))));
    }
    return report->sound() ? 0 : statusOf(FaultKind::storage);
}

} // namespace staveline::app

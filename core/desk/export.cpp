// SPDX-License-Identifier: GPL-3.0-or-later
// The whole book as files that can be read without the program, and a book made of them again.
#include "desk/inside.h"
#include "desk/ledger.h"
#include "desk/told_fact.h"
#include "facts/kept_words.h"
#include "facts/table_csv.h"

#include <algorithm>
#include <cctype>
#include <fmt/core.h>
#include <iterator>

namespace staveline::desk {
namespace {

using facts::TextFile;

/// From a takeover or refill to the next refill.
struct CyclePage {
    int number = 0;
    Day from{};
    std::optional<Day> until;
    std::string brew; ///< that went in
};

std::vector<CyclePage> cyclesOf(const VesselRecord& record) {
    std::vector<CyclePage> cycles;
    if (const auto& openings = record.of<facts::OpeningFact>(); !openings.empty())
        cycles.push_back({0, openings.front().fact.on, {}, {}});
    for (const auto& [id, refill] : record.of<facts::RefillFact>()) {
        const int before = cycles.empty() ? 0 : cycles.back().number;
        if (before > 0 && cycles.back().from == refill.on)
            continue; // filled in two goes
        if (!cycles.empty())
            cycles.back().until = refill.on;
        cycles.push_back({before + 1, refill.on, {}, refill.brew});
    }
    return cycles;
}

/// On the day of a refill what goes in belongs to the new cycle, all else to the beer that was there.
bool belongs(const CyclePage& cycle, bool isFirst, Day day, bool goesIn) {
    const bool begun = goesIn || isFirst ? day >= cycle.from : day > cycle.from;
    const bool over = cycle.until && (goesIn ? day >= *cycle.until : day > *cycle.until);
    return (begun || (isFirst && day < cycle.from)) && !over;
}

struct DatedFact {
    Day on{};
    facts::Fact fact;
};

std::vector<DatedFact> factsOf(const VesselRecord& record, const CyclePage& cycle, bool isFirst) {
    std::vector<DatedFact> found;
    facts::forEachFact([&]<class F>(std::type_identity<F>) {
        if constexpr (facts::perVessel<F>)
            for (const auto& stored : record.of<F>()) {
                const Day day = dayOf(stored.fact);
                if (belongs(
                        cycle, isFirst, day, requires { stored.fact.from; }))
                    found.push_back({day, stored.fact});
            }
    });
    std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) { return a.on < b.on; });
    return found;
}

/// A file name that every machine takes: "oak-no-2".
std::string fileWord(std::string_view name) {
    std::string word;
    for (const char c : name)
        if (std::isalnum(static_cast<unsigned char>(c)) != 0)
            word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
        else if (!word.empty() && word.back() != '-')
            word += '-';
    return word;
}

class CycleWriter {
public:
    CycleWriter(const VesselRecord& record, const SharedFacts& shared, const LedgerView& ledger,
                const DisplayUnits& units)
        : record_(record), shared_(shared), ledger_(ledger), units_(units) {}

    [[nodiscard]] TextFile page(const CyclePage& cycle, bool isFirst) const {
        sheet::Document paper;
        paper.title = words(
            say("desk.export.cycle").with("vessel", record_.facts.name).with("number", std::int64_t{cycle.number}));
        paper.subtitle = cycle.until
                             ? words(say("desk.export.from_to").with("from", cycle.from).with("to", *cycle.until))
                             : words(say("desk.export.since").with("from", cycle.from));
        addLedger(paper, cycle, isFirst);
        if (const auto* brew = shared_.brew(cycle.brew))
            addFact(paper, brew->on, *brew);
        for (const auto& [on, fact] : factsOf(record_, cycle, isFirst))
            addFact(paper, on, fact);
        return {fmt::format("cycles/{}-{}-{:02}.html", fileWord(record_.facts.name), record_.id, cycle.number),
                writeHtml(paper)};
    }

private:
    [[nodiscard]] std::string words(const Message& message) const { return render(message, units_); }
    void addLedger(sheet::Document& paper, const CyclePage& cycle, bool isFirst) const {
        sheet::Table table{{words(say("desk.export.day")), words(say("desk.export.what")),
                            words(say("desk.export.level")), words(say("desk.export.age"))},
                           {},
                           {false, false, true, true}};
        for (const auto& line : ledger_.lines)
            if (belongs(cycle, isFirst, line.on,
                        line.kind == vessel::EntryKind::refill || line.kind == vessel::EntryKind::topUp))
                table.rows.push_back({dayInWords(line.on), words(line.text), show(Amount{line.volumeAfter}, units_),
                                      show(Amount{UnitKind::age, line.meanAgeAfter.d}, units_)});
        paper.blocks.emplace_back(sheet::Heading{1, words(say("desk.export.ledger"))});
        paper.blocks.emplace_back(std::move(table));
    }
    void addFact(sheet::Document& paper, Day on, const facts::Fact& fact) const {
        const std::string kind = "desk.kind." + std::string(facts::traitsOf(fact).kind);
        paper.blocks.emplace_back(sheet::Heading{1, dayInWords(on) + ": " + words(say(kind))});
        auto told = toldFact(fact, shared_.pantry, units_);
        std::move(told.begin(), told.end(), std::back_inserter(paper.blocks));
    }

    const VesselRecord& record_;
    const SharedFacts& shared_;
    const LedgerView& ledger_;
    DisplayUnits units_;
};

/// What lies in the folder, for who finds it in ten years.
TextFile contentsPage(const std::vector<TextFile>& files, Day today) {
    sheet::Document paper;
    paper.title = render(say("desk.export.title"));
    paper.subtitle = render(say("desk.export.made").with("on", today));
    for (const char* key : {"desk.export.how", "desk.export.back"})
        paper.blocks.emplace_back(sheet::Paragraph{render(say(key))});
    sheet::BulletList list;
    for (const auto& file : files)
        list.items.push_back(file.name);
    paper.blocks.emplace_back(std::move(list));
    return {"contents.html", writeHtml(paper)};
}

} // namespace

Result<std::vector<TextFile>> Desk::exported(const DisplayUnits& units, const Progress& progress) const {
    auto files = facts::writeTables(*inside_->book);
    if (!files)
        return files;
    if (auto shared = inside_->cellar->loadShared(); !shared)
        return fail(shared.error());
    const auto& vessels = inside_->cellar->shared().vessels;
    for (std::size_t i = 0; i < vessels.size(); ++i) {
        auto record = inside_->cellar->vesselById(vessels[i].id);
        auto ledger = this->ledger(vessels[i].fact.name);
        if (!record || !ledger)
            return fail(record ? ledger.error() : record.error());
        const CycleWriter writer(**record, inside_->cellar->shared(), *ledger, units);
        const auto cycles = cyclesOf(**record);
        for (const auto& cycle : cycles)
            files->push_back(writer.page(cycle, &cycle == &cycles.front()));
        if (progress)
            progress(i + 1, vessels.size());
    }
    files->push_back(contentsPage(*files, today()));
    return files;
}

Result<Recorded> Desk::restore(const std::vector<TextFile>& files) {
    const auto tables = facts::readTables(files);
    if (!tables)
        return fail(tables.error());
    const book::EditLabel label{facts::keptWords(say("desk.edit.restore")), "restore",
                                toText(EditScope{{}, false, true}), ""};
    const auto body = [&](Cellar&, book::Writer& writer) -> Result<Inside::Written> {
        for (const auto& table : facts::cellarSchema().tables)
            if (const auto rows = tables->find(table.name); rows != tables->end())
                for (const auto& row : rows->second)
                    if (auto done = writer.insertAs(table.name, row.id, row.values); !done)
                        return fail(ofStorage(done.error().kind)
                                        ? done.error()
                                        : under("/" + table.name + ".csv/id " + std::to_string(row.id), done.error()));
        return Inside::Written{};
    };
    return inside_->write(label, body, true);
}

} // namespace staveline::desk

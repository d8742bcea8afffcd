// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/lot_problems.h"

#include "desk/lot_entries.h"
#include "quantity/text.h"

#include <algorithm>

namespace staveline::desk {

using facts::OpenedFact;
using facts::PackagingFact;
using finishing::LotFinding;
using finishing::LotFindingKind;

namespace {

std::string nameOf(const book::RowKey& row) {
    return render(say("desk.kind." + row.table));
}

/// Names the row that was possible before.
Fault beside(const book::RowKey& row, Day on, Message cause) {
    return {FaultKind::input, "", std::move(cause), say("desk.then.remedy").with("entry", nameOf(row)).with("on", on)};
}

LotProblem problemOf(const LotFinding& finding) {
    LotProblem problem{rowOfLotEntry(finding.entry), "lot", finding.beyond().l, {}, {}};
    if (finding.kind == LotFindingKind::notThere) {
        problem.itself = {FaultKind::input, "/lot",
                          say("desk.lot.not_there").with("lot", finding.lot).with("on", finding.on),
                          say("desk.lot.not_there.remedy")};
        problem.beside = beside(problem.row, finding.on,
                                say("desk.lot.then_not_there")
                                    .with("entry", nameOf(problem.row))
                                    .with("on", finding.on)
                                    .with("lot", finding.lot));
        return problem;
    }
    problem.itself = {FaultKind::input, problem.row.table == "packaging" ? "/count" : "/volume_l",
                      say("desk.lot.too_much")
                          .with("wanted", finding.wanted)
                          .with("lot", finding.lot)
                          .with("held", finding.held)
                          .with("on", finding.on),
                      say("desk.lot.too_much.remedy").with("held", finding.held)};
    problem.beside = beside(problem.row, finding.on,
                            say("desk.lot.then_too_much")
                                .with("entry", nameOf(problem.row))
                                .with("on", finding.on)
                                .with("wanted", finding.wanted)
                                .with("lot", finding.lot)
                                .with("held", finding.held));
    return problem;
}

/// The openings of one filling, by day.
class Openings {
public:
    Openings(const LotFacts& lots, std::vector<LotProblem>& problems) : lots_(lots), problems_(problems) {}

    void check() {
        Facts<OpenedFact> opened = lots_.opened;
        std::stable_sort(opened.begin(), opened.end(), [](const auto& a, const auto& b) {
            return std::pair(a.fact.on, a.id) < std::pair(b.fact.on, b.id);
        });
        std::map<std::string, int> used;
        for (const auto& stored : opened)
            check(stored, used[stored.fact.packaging]);
    }

private:
    void check(const Stored<OpenedFact>& stored, int& used) {
        const OpenedFact& fact = stored.fact;
        const PackagingFact* filling = lots_.packaging(fact.packaging);
        const book::RowKey row{std::string(facts::tableOf<OpenedFact>), stored.id};
        if (!filling || fact.on < filling->on)
            return add(row, fact.on, "packaging", "/packaging", 0,
                       say("desk.lot.no_filling").with("name", fact.packaging).with("on", fact.on),
                       say("desk.lot.no_filling.remedy"),
                       say("desk.lot.then_no_filling")
                           .with("entry", nameOf(row))
                           .with("on", fact.on)
                           .with("name", fact.packaging));
        const int left = filling->count - used;
        used += fact.count;
        if (fact.count > left)
            add(row, fact.on, "count", "/count", fact.count - left,
                say("desk.lot.opened_more")
                    .with("count", std::int64_t{fact.count})
                    .with("left", std::int64_t{std::max(left, 0)})
                    .with("name", fact.packaging),
                say("desk.lot.opened_more.remedy"),
                say("desk.lot.then_opened_more")
                    .with("entry", nameOf(row))
                    .with("on", fact.on)
                    .with("count", std::int64_t{fact.count})
                    .with("left", std::int64_t{std::max(left, 0)})
                    .with("name", fact.packaging));
    }
    void add(const book::RowKey& row, Day on, const char* kind, const char* path, double beyond, Message cause,
             Message remedy, Message then) {
        problems_.push_back({row, kind, beyond, Fault{FaultKind::input, path, std::move(cause), std::move(remedy)},
                             beside(row, on, std::move(then))});
    }

    const LotFacts& lots_;
    std::vector<LotProblem>& problems_;
};

} // namespace

Result<std::vector<LotProblem>> lotProblems(Cellar& cellar) {
    const auto lots = cellar.lots();
    if (!lots)
        return fail(lots.error());
    std::vector<LotProblem> problems;
    for (const LotFinding& finding : finishing::replayLots(lotEntries(**lots)).findings)
        problems.push_back(problemOf(finding));
    Openings(**lots, problems).check();
    return problems;
}

std::vector<LotProblem> worsened(const std::vector<LotProblem>& before, std::vector<LotProblem> now) {
    std::erase_if(now, [&](const LotProblem& problem) {
        return std::any_of(before.begin(), before.end(), [&](const LotProblem& was) {
            return was.row == problem.row && was.kind == problem.kind && problem.beyond <= was.beyond;
        });
    });
    return now;
}

} // namespace staveline::desk

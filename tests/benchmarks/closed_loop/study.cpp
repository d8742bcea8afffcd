// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/study.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <exception>
#include <fmt/core.h>
#include <mutex>
#include <thread>
#include <unistd.h>

namespace staveline::loop {
namespace {

constexpr double farGap = 1;      ///< [points]
constexpr double wrongFrom = .05; ///< the wrong way by more than this [points]

/// A folder that goes with the run.
class Folder {
public:
    Folder() {
        static std::atomic<int> count{0};
        path_ = std::filesystem::temp_directory_path() / fmt::format("staveline-loop-{}-{}", getpid(), ++count);
        std::filesystem::create_directories(path_);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// Levers moved, and whether one of them goes back on its last move. What is for one refill only counts when it comes,
/// not when it goes.
class Moves {
public:
    void take(const Handling& from, const Handling& to, Course& course) {
        int moved = 0;
        bool back = false;
        const auto was = from.values(), is = to.values();
        for (std::size_t i = 0; i < was.size(); ++i) {
            const int way = is[i] > was[i] + 1e-9 ? 1 : is[i] < was[i] - 1e-9 ? -1 : 0;
            if (way == 0)
                continue;
            if (i < yeastEnds)
                moved += yeastCounted(i, was, is) ? 0 : 1;
            else
                ++moved;
            back = back || last_[i] == -way;
            last_[i] = i == souredAt ? 0 : way;
        }
        course.moved.push_back(moved);
        course.takenBack.push_back(back);
        course.soured.push_back(to.soured > 0);
    }

private:
    static constexpr std::size_t yeastEnds = 4, souredAt = Handling::count - 1;
    /// A yeast is one lever with several numbers: the first that differs counts.
    static bool yeastCounted(std::size_t at, const std::array<double, Handling::count>& was,
                             const std::array<double, Handling::count>& is) {
        for (std::size_t i = 0; i < at; ++i)
            if (was[i] != is[i])
                return true;
        return false;
    }
    std::array<int, Handling::count> last_{};
};

std::unique_ptr<Steering> steeringBy(Policy policy) {
    switch (policy) {
    case Policy::ruleOfThumb:
        return std::make_unique<RuleOfThumb>();
    case Policy::oracle:
        return std::make_unique<Oracle>();
    default:
        return std::make_unique<NoChange>();
    }
}

PerDimension<Look> against(const Estimated& estimates, const Scores& truth) {
    PerDimension<Look> looks;
    for (Dimension d : allDimensions)
        looks[d] = {estimates[d].mean - truth[d], estimates[d].sd};
    return looks;
}

Scores gapOf(const TrueVessel& vessel) {
    Scores gap;
    for (Dimension d : allDimensions)
        gap[d] = vessel.wanted()[d] - vessel.tastes()[d];
    return gap;
}

/// A titration of the same beer: acid of this world, on the level that the vessel was given.
GramsPerLitre titrated(const TrueVessel& vessel, double usualTa, int cycle) {
    constexpr double error = .3, pointsPerGram = .755;
    const double own = (vessel.levelAcidity() - vessel.palate()) / pointsPerGram;
    const double ta = usualTa + own + vessel.acid() - vessel.acidOnUsual() +
                      error * vessel.noise().normal(Stream::titration, {cycle});
    return {std::max(1.5, ta)};
}

Occasion occasionOf(const Cell& cell, const TrueVessel& vessel, double usualTa, const Handling& inUse, int cycle) {
    Occasion occasion{cycle, vessel, sittingOf(cell.table, vessel.tastes(), vessel.noise(), cycle), {}, inUse};
    if (cell.titration)
        occasion.ta = titrated(vessel, usualTa, cycle);
    return occasion;
}

void takeLooks(const Decision& decision, const TrueVessel& vessel, Course& course) {
    if (!decision.before || !decision.after)
        return;
    course.before.push_back(against(*decision.before, vessel.tastes()));
    course.after.push_back(against(*decision.after, vessel.tastes()));
}

void judge(const TrueVessel& vessel, const Handling& before, const Handling& plan, Course& course) {
    const Scores gap = gapOf(vessel);
    for (Dimension d : allDimensions)
        if (std::abs(gap[d]) > farGap) {
            ++course.far;
            course.wrong += harm(vessel, before, plan, d) > wrongFrom ? 1 : 0;
        }
}

} // namespace

std::string Cell::name() const {
    return fmt::format("error {}, {}, {}, {}", table.error, table.tasters == 1 ? "one taster" : "three tasters",
                       titration ? "titrated" : "not titrated", freedom.stepCaps ? "step caps" : "all levers free");
}

double harm(const TrueVessel& vessel, const Handling& before, const Handling& plan, Dimension d) {
    constexpr int ahead = 4;
    const auto alone = drawsAhead(vessel, sampledBefore, before, ahead);
    const auto planned = drawsAhead(vessel, sampledBefore, plan, ahead);
    const double up = vessel.wanted()[d] > vessel.tastes()[d] ? 1 : -1;
    const auto lost = [&](std::size_t i) { return -up * (planned[i][d] - alone[i][d]); };
    return std::max({0.0, lost(0), lost(ahead - 1)});
}

Course steered(const Cell& cell, Policy policy, const Extent& extent, int number) {
    const Folder folder;
    const Handling usual = TrueVessel(extent.seed, number, {}).usual();
    auto program = std::make_unique<Program>(folder.path(), usual, cell.freedom);
    const auto expected = program->expected();
    TrueVessel vessel(extent.seed, number, expected.scores);
    program->setTarget(vessel.wanted(), tasterName(0));
    const std::unique_ptr<Steering> steering = policy == Policy::program ? std::move(program) : steeringBy(policy);
    return steered(cell, *steering, vessel, extent.cycles, expected.ta);
}

Course steered(const Cell& cell, Steering& steering, TrueVessel& vessel, int cycles, double usualTa) {
    Course course;
    Moves moves;
    Handling inUse = vessel.usual();
    for (int cycle = 0; cycle <= cycles; ++cycle) {
        vessel.refill(inUse, cycle - 1);
        inUse.soured = 0;
        vessel.age(inUse.interval - sampledBefore);
        const Decision decision = steering.decide(occasionOf(cell, vessel, usualTa, inUse, cycle));
        takeLooks(decision, vessel, course);
        if (cycle < cycles) {
            judge(vessel, inUse, decision.handling, course);
            moves.take(inUse, decision.handling, course);
            course.asked.push_back(decision.asked);
        }
        vessel.age(sampledBefore);
        course.gaps.push_back(gapOf(vessel));
        inUse = decision.handling;
    }
    return course;
}

std::vector<Course> steeredAll(const Cell& cell, Policy policy, const Extent& extent) {
    std::vector<Course> courses(static_cast<std::size_t>(extent.vessels));
    std::atomic<int> next{0};
    std::exception_ptr failed;
    std::mutex guard;
    const auto work = [&] {
        try {
            for (int i = next++; i < extent.vessels; i = next++)
                courses[static_cast<std::size_t>(i)] = steered(cell, policy, extent, i);
        } catch (...) {
            const std::scoped_lock lock(guard);
            failed = std::current_exception();
            next = extent.vessels;
        }
    };
    std::vector<std::jthread> workers;
    for (unsigned i = 0; i < std::max(1U, extent.workers); ++i)
        workers.emplace_back(work);
    workers.clear();
    if (failed)
        std::rethrow_exception(failed);
    return courses;
}

} // namespace staveline::loop

// SPDX-License-Identifier: GPL-3.0-or-later
// The window's workers and what they do, under the thread sanitizer: tests/tsan runs it. A race ends with its report;
// what is held here is that the work was done.
#include "facts/table_csv.h" // first: the desk only names what it exports

#include "advice/advise.h"
#include "desk/advice.h"
#include "desk/desk.h"
#include "desk/estimates.h"
#include "desk/history.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/lots.h"
#include "desk/notes.h"
#include "facts/sample.h"
#include "support/scratch.h"
#include "ui/present/latest_worker.h"
#include "ui/present/task_queue.h"

#include <atomic>
#include <cstdlib>
#include <fmt/core.h>
#include <future>

using namespace staveline;
using ui::LatestWorker;
using ui::TaskQueue;

namespace {

constexpr Day today{std::chrono::days{20605}}; // 2026-06-01

void hold(bool truth, const char* what) {
    if (truth)
        return;
    fmt::print(stderr, "threads: not so: {}\n", what);
    std::exit(1);
}

facts::Fact dip(int litres) {
    return facts::DipFact{"Plover", today, Litres{static_cast<double>(litres)}, ""};
}

/// What is asked replaces what waits and stops what runs; the last is always done.
void newestRequest(int rounds) {
    std::atomic<int> begun{0}, stopped{0};
    for (int round = 0; round < rounds; ++round) {
        std::promise<void> last;
        LatestWorker worker;
        for (int i = 0; i < 20; ++i)
            worker.post([&](const std::stop_token& stop) {
                ++begun;
                while (!stop.stop_requested())
                    std::this_thread::yield();
                ++stopped;
            });
        if (round % 2)
            worker.cancel();
        worker.post([&](const std::stop_token&) { last.set_value(); });
        last.get_future().wait();
    }
    hold(begun == stopped, "what was begun was stopped");
}

/// What is asked from several threads is done, also what waits when the queue goes.
void everyTask(int rounds) {
    for (int round = 0; round < rounds; ++round) {
        int done = 0; // by the queue's thread alone
        {
            TaskQueue queue;
            std::vector<std::jthread> askers;
            for (int asker = 0; asker < 3; ++asker)
                askers.emplace_back([&] {
                    for (int i = 0; i < 50; ++i)
                        queue.post([&done] { ++done; });
                });
        }
        hold(done == 150, "no task is lost");
    }
}

/// Advice on a snapshot while the book it came from is edited, undone and read.
void adviceMeanwhile(desk::Desk& cellar, int rounds) {
    std::atomic<int> answered{0};
    LatestWorker worker;
    for (int round = 0; round < rounds; ++round) {
        const auto made = cellar.adviceJob({"Plover", {}, {}, round % 2 == 1});
        hold(made.has_value(), "advice can be asked");
        const auto job = std::make_shared<const desk::AdviceJob>(*made);
        const auto told = std::make_shared<std::promise<void>>();
        worker.post([&answered, told, job](const std::stop_token& stop) {
            const auto advice = advice::advise(job->input, stop);
            answered += advice && !desk::toJson(*job, *advice).empty();
            told->set_value();
        });
        hold(cellar.record(dip(150 + round)).has_value(), "an edit can be made meanwhile");
        hold(!desk::toJson(*cellar.cellar()).empty(), "the cellar can be read meanwhile");
        hold(cellar.undo().has_value(), "an edit can be undone meanwhile");
        if (round % 5 == 4)
            worker.cancel(); // the answer comes all the same, or is dropped with the question
        else
            told->get_future().wait();
    }
    hold(answered > 0, "advice was given");
}

/// Checks, copies and exports on connections of their own while the window's one writes.
void bookTasks(desk::Desk& cellar, const testing::Scratch& scratch, int rounds) {
    std::atomic<int> sound{0};
    {
        TaskQueue queue;
        for (int round = 0; round < rounds; ++round) {
            queue.post([&, round] {
                const auto other = desk::Desk::open(
                    scratch / "s.cellar", [] { return today; }, book::OpenMode::readOnly);
                hold(other.has_value(), "a book in use can be read");
                const auto report = (*other)->check();
                const auto copied = (*other)->backup(scratch / fmt::format("copy{}.cellar", round));
                sound += report && report->sound() && copied && (*other)->exported();
            });
            hold(cellar.record(dip(150 + round)).has_value(), "an edit can be made beside a task");
        }
    }
    hold(sound == rounds, "each task was done and found the book sound");
}

} // namespace

int main(int count, char** words) {
    const int rounds = count > 1 ? std::atoi(words[1]) : 10;
    const testing::Scratch scratch;
    const auto cellar = desk::Desk::create(scratch / "s.cellar", [] { return today; });
    hold(cellar && (*cellar)->record(*facts::sampleCellar(today)), "the sample cellar can be made");
    newestRequest(rounds);
    everyTask(rounds);
    adviceMeanwhile(**cellar, rounds);
    bookTasks(**cellar, scratch, rounds);
    fmt::print("threads: {} rounds of 4 kinds\n", rounds);
}

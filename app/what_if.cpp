// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/what_if.h"
#include "app/commands.h"
#include "app/on_book.h"
#include "app/typed.h"

#include <cmath>
#include <fmt/core.h>

namespace staveline::app {
namespace {

Result<desk::WhatIf> trialOf(const Options& options) {
    desk::WhatIf what;
    what.inRow = options.inRow;
    for (auto taken : {take(what.capacity, options.capacity, "/capacity"), take(what.draw, options.draw, "/draw"),
                       take(what.interval, options.every, "/every"),
                       take(what.wanted, options.wantedAge, "/wanted-age", daysPerYear),
                       take(what.refillAge, options.refillAge, "/refill-age")})
        if (!taken)
            return fail(taken.error());
    return what;
}

void print(const desk::Prospect& prospect, const DisplayUnits& units) {
    fmt::print("{}\n", prospect.vessel.name);
    for (const auto* list : {&prospect.words, &prospect.doubts})
        for (const Message& message : *list)
            fmt::print("  {}\n", render(message, units));
    const bool row = prospect.inRow > 1;
    for (const auto& point : prospect.growth) {
        const Message line = say(row ? "app.growth_row" : "app.growth")
                                 .with("draw", std::int64_t{point.draw})
                                 .with("on", prospect.begins + std::chrono::days{std::lround(point.since.d)})
                                 .with("before", Age{point.before.d})
                                 .with("after", Age{point.after.d})
                                 .with("sd", Age{point.sd.d});
        fmt::print("  {}\n", render(line, units));
    }
}

} // namespace

int whatIf(const Options& options) {
    const auto what = trialOf(options);
    if (!what)
        return complain(what.error(), options);
    return onBook(options, book::OpenMode::readOnly, [&](desk::Desk& desk) {
        const auto prospect = desk.whatIf(options.vessel, *what);
        if (!prospect)
            return complain(prospect.error(), options);
        if (options.json)
            fmt::print("{}", toJson(*prospect));
        else
            print(*prospect, unitsOf(options));
        return 0;
    });
}

} // namespace staveline::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "benchmarks/closed_loop/figures.h"

#include <algorithm>
#include <cmath>
#include <fmt/core.h>

namespace staveline::loop {
namespace {

constexpr int redrawn = 1000;
constexpr double z80 = 1.2815515655446004;

double ratioOf(const std::vector<Part>& parts, const std::function<std::size_t(std::size_t)>& pick) {
    double part = 0, whole = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        part += parts[pick(i)].part;
        whole += parts[pick(i)].whole;
    }
    return whole > 0 ? part / whole : 0;
}

/// Cycles from..to, as far as there are so many.
struct Cycles {
    std::size_t from = 1, to = 12;
    [[nodiscard]] std::string name() const {
        return from == to ? fmt::format("cycle {}", from) : fmt::format("cycles {}-{}", from, to);
    }
};

template <class List, class Of> Part meanOver(const List& list, const Cycles& cycles, Of&& of) {
    Part sum{0, 0};
    for (std::size_t i = cycles.from; i < list.size() && i <= cycles.to; ++i) {
        sum.part += of(list[i]);
        sum.whole += 1;
    }
    return sum;
}

bool inside(const Look& look) {
    return std::abs(look.error) <= z80 * look.sd;
}

class Printer {
public:
    Printer(std::string cell, std::string policy) : cell_(std::move(cell)), policy_(std::move(policy)) {}

    void line(const std::string& name, const Figure& figure) const {
        fmt::print(
            "{{\"bench\": \"loop\", \"cell\": \"{}\", \"policy\": \"{}\", \"figure\": \"{}\", \"value\": {:.4f}, "
            "\"low\": {:.4f}, \"high\": {:.4f}, \"n\": {}}}\n",
            cell_, policy_, name, figure.value, figure.low, figure.high, figure.vessels);
    }

private:
    std::string cell_, policy_;
};

constexpr std::array<std::size_t, 5> toldDraws = {0, 1, 3, 6, 12};

void printGaps(const Printer& out, const Courses& courses) {
    for (std::size_t draw : toldDraws)
        if (draw < courses.front().gaps.size())
            out.line(fmt::format("gap at {}", draw), overCourses(courses, [&](const Course& c) {
                         return Part{meanGap(c, draw), 1};
                     }));
    const std::size_t last = courses.front().gaps.size() - 1;
    for (Dimension d : allDimensions) {
        out.line(fmt::format("gap at the end, {}", name(d)), overCourses(courses, [&](const Course& c) {
                     return Part{std::abs(c.gaps[last][d]), 1};
                 }));
        out.line(fmt::format("signed gap at the end, {}", name(d)), overCourses(courses, [&](const Course& c) {
                     return Part{c.gaps[last][d], 1};
                 }));
    }
}

void printMoves(const Printer& out, const Courses& courses) {
    const auto share = [](const std::vector<bool>& said) {
        return Part{static_cast<double>(std::count(said.begin(), said.end(), true)), static_cast<double>(said.size())};
    };
    out.line("levers moved a cycle", overCourses(courses, [](const Course& c) {
                 return meanOver(c.moved, {0, c.moved.size()}, [](int n) { return n; });
             }));
    out.line("cycles with a lever taken back",
             overCourses(courses, [&](const Course& c) { return share(c.takenBack); }));
    out.line("wrong way where the gap is above 1", overCourses(courses, [](const Course& c) {
                 return Part{double(c.wrong), double(c.far)};
             }));
    out.line("last refill soured beforehand", overCourses(courses, [](const Course& c) {
                 return Part{c.soured.back() ? 1.0 : 0.0, 1};
             }));
    out.line("taste again", overCourses(courses, [&](const Course& c) { return share(c.asked); }));
}

void printForecasts(const Printer& out, const Courses& courses) {
    if (courses.front().before.empty())
        return;
    for (const Cycles& cycles : {Cycles{1, 3}, Cycles{4, 6}, Cycles{7, 12}})
        out.line("forecast error, " + cycles.name(), overCourses(courses, [&](const Course& c) {
                     return meanOver(c.before, cycles, [](const PerDimension<Look>& looks) {
                         double sum = 0;
                         for (Dimension d : allDimensions)
                             sum += std::abs(looks[d].error) / 3;
                         return sum;
                     });
                 }));
    for (Dimension d : allDimensions)
        for (const Cycles& cycles : {Cycles{1, 3}, Cycles{7, 12}}) {
            const auto of = [&](const char* what, auto Course::*list, auto&& value) {
                out.line(fmt::format("{}, {}, {}", what, name(d), cycles.name()),
                         overCourses(courses, [&](const Course& c) {
                             return meanOver(c.*list, cycles, [&](const PerDimension<Look>& l) { return value(l[d]); });
                         }));
            };
            const auto covered = [](const Look& look) { return inside(look) ? 1.0 : 0.0; };
            of("80 % band before the sitting", &Course::before, covered);
            of("80 % band after the sitting", &Course::after, covered);
            of("forecast error", &Course::before, [](const Look& look) { return std::abs(look.error); });
            of("forecast bias", &Course::before, [](const Look& look) { return look.error; });
        }
}

void printAgainst(const Printer& out, const std::string& other, const Courses& courses, const Courses& others) {
    if (others.empty())
        return;
    for (std::size_t draw = 1; draw < courses.front().gaps.size(); ++draw) {
        out.line(fmt::format("gap at {} less {}", draw, other),
                 overPairs(courses, others, [&](const Course& a, const Course& b) {
                     return Part{meanGap(a, draw) - meanGap(b, draw), 1};
                 }));
        if (std::find(toldDraws.begin(), toldDraws.end(), draw) != toldDraws.end())
            out.line(fmt::format("gap at {} over {}", draw, other),
                     overPairs(courses, others, [&](const Course& a, const Course& b) {
                         return Part{meanGap(a, draw), meanGap(b, draw)};
                     }));
    }
}

} // namespace

Figure figureOf(const std::vector<Part>& parts) {
    const std::size_t count = parts.size();
    std::vector<double> values;
    for (int again = 0; again < redrawn; ++again) {
        const Noise noise(0, again);
        values.push_back(ratioOf(parts, [&](std::size_t i) {
            const double at = noise.uniform(Stream::redraw, {static_cast<int>(i)});
            return std::min(count - 1, static_cast<std::size_t>(at * static_cast<double>(count)));
        }));
    }
    std::sort(values.begin(), values.end());
    return {ratioOf(parts, [](std::size_t i) { return i; }), values[redrawn / 40], values[redrawn - 1 - redrawn / 40],
            static_cast<int>(count)};
}

Figure overCourses(const Courses& courses, const std::function<Part(const Course&)>& part) {
    std::vector<Part> parts;
    for (const Course& course : courses)
        parts.push_back(part(course));
    return figureOf(parts);
}

Figure overPairs(const Courses& a, const Courses& b, const std::function<Part(const Course&, const Course&)>& part) {
    std::vector<Part> parts;
    for (std::size_t i = 0; i < a.size(); ++i)
        parts.push_back(part(a[i], b[i]));
    return figureOf(parts);
}

double meanGap(const Course& course, std::size_t draw) {
    double sum = 0;
    for (Dimension d : allDimensions)
        sum += std::abs(course.gaps[draw][d]) / 3;
    return sum;
}

void print(const Cell& cell, const Outcome& outcome) {
    const auto tell = [&](const char* policy, const Courses& courses) {
        if (courses.empty())
            return;
        const Printer out(cell.name(), policy);
        printGaps(out, courses);
        printMoves(out, courses);
        printForecasts(out, courses);
    };
    tell("no change", outcome.noChange);
    tell("rule of thumb", outcome.ruleOfThumb);
    tell("oracle", outcome.oracle);
    tell("program", outcome.program);
    const Printer out(cell.name(), "program");
    printAgainst(out, "rule of thumb", outcome.program, outcome.ruleOfThumb);
    printAgainst(out, "oracle", outcome.program, outcome.oracle);
}

} // namespace staveline::loop

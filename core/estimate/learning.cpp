// SPDX-License-Identifier: GPL-3.0-or-later
#include "estimate/learning.h"

#include "estimate/square.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace staveline::estimate {

using tasting::Estimate;

namespace {

/// Walks a story once. Facts are looked at in order; a tasting and a titration of one week also at each other.
class Walk {
public:
    Walk(const Story& story, const Until& until, const tasting::ScoreParameters& parameters, const OffsetsOf& others,
         const EstimateConstants& by)
        : story_(story), parameters_(parameters), others_(others), by_(by) {
        const auto end = std::find_if(story.facts.begin(), story.facts.end(), [&](const StoryFact& fact) {
            return fact.on > until.on ||
                   (until.beforeFillings && fact.on == until.on && std::holds_alternative<Filling>(fact.what));
        });
        count_ = static_cast<std::size_t>(end - story.facts.begin());
    }

    Learned run(Day today) {
        for (at_ = 0; at_ < count_; ++at_)
            std::visit([&](const auto& what) { take(what); }, story_.facts[at_].what);
        if (started_)
            pass(today);
        else
            start();
        return std::move(learned_);
    }

private:
    [[nodiscard]] Day on() const { return story_.facts[at_].on; }
    [[nodiscard]] Offset& offset(Dimension d) { return learned_.offsets[d]; }

    void start() {
        const bool settled = story_.cyclesBefore + refills_ >= by_.longRun;
        for (Dimension d : allDimensions)
            offset(d) = settled ? longRunPrior(by_.offsets[d]) : firstFillPrior(by_.offsets[d]);
    }

    [[nodiscard]] Days since(Day day) const { return Days{static_cast<double>(daysBetween(walked_, day))}; }

    /// Time up to `day`; the first look at the vessel is where it starts.
    void pass(Day day) {
        for (Dimension d : allDimensions)
            passTime(offset(d), since(day), by_.offsets[d]);
        walked_ = day;
    }
    void look() {
        if (!started_)
            start();
        else
            pass(on());
        started_ = true;
        walked_ = on();
    }

    void take(const Filling& filling) {
        if (!filling.topUp) {
            ++refills_;
            pools_ = {};
            tastedInCycle_ = false;
        }
        if (!started_) {
            if (filling.from)
                startFrom(filling);
            return;
        }
        const double steps = filling.topUp ? filling.share.of1 / by_.usualShare : 1;
        const auto from = filling.from ? others_(*filling.from, on()) : PerDimension<Offset>{};
        for (Dimension d : allDimensions) {
            if (filling.from) {
                passTime(offset(d), since(on()), by_.offsets[d]);
                takeIn(offset(d), from[d], filling.share, by_.offsets[d]);
            } else {
                refill(offset(d), filling.share, since(on()), steps, by_.offsets[d]);
            }
        }
        walked_ = on();
    }
    /// Beer that another vessel has taught something about begins the story of an empty one.
    void startFrom(const Filling& filling) {
        if (filling.share.of1 < 1)
            return;
        const auto from = others_(*filling.from, on());
        for (Dimension d : allDimensions)
            takeIn(offset(d), from[d], {1}, by_.offsets[d]);
        started_ = true;
        walked_ = on();
    }

    void take(const Event& event) {
        // The new table has tasted on the day it was written down: what it opens is open already.
        if (!started_ || (event.newTasters && metStrangers_ == on()))
            return;
        pass(on());
        for (Dimension d : allDimensions) {
            loosen(offset(d), event.newTasters ? by_.newTasters : by_.event);
            announced_[d] = true;
        }
        pools_ = {};
        tastersAnnounced_ = tastersAnnounced_ || event.newTasters;
    }

    /// The estimate does not jump: what the model gains the offset loses.
    void take(const Correction& correction) {
        if (!started_)
            return;
        for (Dimension d : allDimensions) {
            offset(d).mean[Offset::now] -= correction.change[d];
            for (Lesson& lesson : learned_.lessons) {
                lesson.model[d] += correction.change[d];
                if (lesson.offset[d] && lesson.on == on()) // what stood at the end of its day
                    lesson.offset[d]->mean -= correction.change[d];
            }
        }
        for (AcidLesson& lesson : learned_.acidity)
            lesson.offset.mean -= correction.change[Dimension::acidity];
    }

    void take(const AcidReading& reading) {
        const AcidDoubt doubt = doubtOf(reading, by_);
        if (doubt != AcidDoubt::none) {
            learned_.doubts.push_back(
                {.kind = doubt == AcidDoubt::range ? Doubt::Kind::acidRange : Doubt::Kind::acidBalance,
                 .on = on(),
                 .ta = reading.ta,
                 .ph = reading.ph});
            return;
        }
        look();
        lookAtEachOther();
        if (void_.contains(at_))
            return;
        const AcidSeen seen = seenOf(reading, parameters_, by_);
        const double palate = acidity().mean[Offset::apart], open = acidity().cov[Offset::apart][Offset::apart];
        learned_.acidity.push_back({on(),
                                    reading.ta,
                                    reading.ph,
                                    {seen.slope * (seen.ta.gPerL - seen.model.gPerL) + palate,
                                     std::sqrt(square(seen.slope * seen.sd) + open)}});
        learn(acidity(), titrated(acidity(), seen.ta.gPerL, seen.model.gPerL, seen.slope, seen.sd));
    }

    void take(const Tasting& tasting) {
        if (!tasting.learns || tasting.tasters.empty()) { // set aside, or faults alone
            addLesson(tasting);
            return;
        }
        look();
        meet(tasting.tasters);
        lookAtEachOther();
        addLesson(tasting);
        lookAtTable(tasting);
        for (Dimension d : allDimensions)
            if (tasting.readings[d] && !(d == Dimension::acidity && void_.contains(at_)))
                learnScore(d, tasting);
        for (Dimension d : allDimensions)
            learned_.lessons.back().offset[d] = {offset(d).mean[Offset::now], offset(d).sd()};
        learned_.tasters.insert(tasting.tasters.begin(), tasting.tasters.end());
        tastersAnnounced_ = false;
        learned_.cycles += tastedInCycle_ ? 0 : 1;
        tastedInCycle_ = true;
    }

    /// An entirely new table opens what was learned with the old one.
    void meet(const Tasters& tasters) {
        const bool strangers = std::none_of(tasters.begin(), tasters.end(),
                                            [&](const std::string& t) { return learned_.tasters.contains(t); });
        if (!strangers || learned_.tasters.empty() || tastersAnnounced_)
            return;
        metStrangers_ = on();
        for (Dimension d : allDimensions)
            loosen(offset(d), by_.newTasters);
    }

    /// Two tasters who cannot have meant the same beer.
    void lookAtTable(const Tasting& tasting) {
        for (Dimension d : allDimensions)
            if (const auto& reading = tasting.readings[d];
                reading && reading->apart > by_.clash * std::sqrt(2 * oneMoreTaster(d, false)))
                learned_.doubts.push_back(
                    {.kind = Doubt::Kind::table, .dimension = d, .on = on(), .seen = reading->apart});
    }

    [[nodiscard]] double weighed(Dimension d, const Tasting& tasting) const {
        Tasters known = learned_.tasters;
        known.insert(story_.targetsSetBy.begin(), story_.targetsSetBy.end());
        return variance(*tasting.readings[d], tasting.tasters, known);
    }

    void addLesson(const Tasting& tasting) {
        Lesson lesson{.on = on(), .learned = {}, .model = tasting.model, .expected = {}, .tasted = {}, .offset = {}};
        for (Dimension d : allDimensions) {
            if (!tasting.readings[d])
                continue;
            lesson.tasted[d] = Estimate{tasting.readings[d]->mean, std::sqrt(weighed(d, tasting))};
            if (!started_)
                continue;
            Offset then = offset(d);
            passTime(then, since(on()), by_.offsets[d]);
            lesson.expected[d] = Estimate{tasting.model[d] + then.mean[Offset::now], then.sd()};
            lesson.offset[d] = Estimate{then.mean[Offset::now], then.sd()};
        }
        learned_.lessons.push_back(lesson);
    }

    void learnScore(Dimension d, const Tasting& tasting) {
        const double error = pooled(d, tasting.tasters, weighed(d, tasting));
        if (error <= 0)
            return;
        const auto seen = [&] { return tasted(offset(d), tasting.readings[d]->mean, tasting.model[d], error); };
        const Observation first = seen();
        if (learned_.sittings[d] > 0 && !announced_[d] &&
            std::abs(first.innovation) > by_.surprise * std::sqrt(spreadOf(offset(d), first))) {
            const Estimate expected{tasting.model[d] + offset(d).mean[Offset::now],
                                    std::sqrt(spreadOf(offset(d), first))};
            learned_.doubts.push_back({.kind = Doubt::Kind::surprise,
                                       .dimension = d,
                                       .on = on(),
                                       .expected = expected,
                                       .seen = tasting.readings[d]->mean});
            loosen(offset(d), by_.event);
        }
        learn(offset(d), seen());
        announced_[d] = false;
        ++learned_.sittings[d];
        learned_.lessons.back().learned[d] = true;
    }

    /// Sittings of one table within a month weigh together as one of the mean error, never less than what tasting again
    /// does not lessen: each adds what it brings on top of those before it. Nothing to add: 0.
    [[nodiscard]] double pooled(Dimension d, const Tasters& tasters, double error) {
        Pool& pool = pools_[d][tasters];
        if (pool.sum == 0 || daysBetween(pool.from, on()) > by_.poolDays)
            pool = {on(), 0, 0};
        const double floor = square(by_.tasterFloor) / static_cast<double>(tasters.size());
        const double before = pool.information;
        pool.sum += 1 / error;
        pool.information = std::min(pool.sum, 1 / std::min(floor, error));
        const double added = pool.information - before;
        return added > 1e-9 ? 1 / added : 0;
    }

    // --- a tasting and a titration of one week -------------------------------------------------------------------

    /// Marks this fact and one near it if they contradict each other; a repeat says which of them stays out.
    void lookAtEachOther() {
        if (void_.contains(at_) || acidAt(at_) == Acid::nothing)
            return;
        for (std::size_t j = at_ + 1; j < count_ && near(j); ++j)
            if (acidAt(j) != Acid::nothing && acidAt(j) != acidAt(at_) && !agree(at_, j)) {
                settleClash(at_, j);
                return;
            }
    }

    enum class Acid { nothing, titration, tasting };
    [[nodiscard]] Acid acidAt(std::size_t i) const {
        if (const auto* reading = std::get_if<AcidReading>(&story_.facts[i].what))
            return doubtOf(*reading, by_) == AcidDoubt::none ? Acid::titration : Acid::nothing;
        const auto* tasting = std::get_if<Tasting>(&story_.facts[i].what);
        return tasting && tasting->learns && tasting->readings[Dimension::acidity] ? Acid::tasting : Acid::nothing;
    }
    /// Within the week and of the same beer; a top-up makes no other one.
    [[nodiscard]] bool near(std::size_t j) const {
        return daysBetween(on(), story_.facts[j].on) <= by_.clashDays && sameBeer(at_, j);
    }
    [[nodiscard]] bool sameBeer(std::size_t i, std::size_t j) const {
        return std::none_of(story_.facts.begin() + static_cast<std::ptrdiff_t>(i),
                            story_.facts.begin() + static_cast<std::ptrdiff_t>(j), [](const StoryFact& fact) {
                                const auto* filling = std::get_if<Filling>(&fact.what);
                                return filling && !filling->topUp;
                            });
    }

    /// The acidity that a fact stands for as a score above the model's, palate apart, and its variance.
    struct Sourness {
        double above = 0, variance = 1;
    };
    [[nodiscard]] Sourness sournessAt(std::size_t i) {
        if (const auto* reading = std::get_if<AcidReading>(&story_.facts[i].what)) {
            const AcidSeen seen = seenOf(*reading, parameters_, by_);
            return {seen.slope * (seen.ta.gPerL - seen.model.gPerL), square(seen.slope * seen.sd)};
        }
        const auto& tasting = std::get<Tasting>(story_.facts[i].what);
        return {tasting.readings[Dimension::acidity]->mean - tasting.model[Dimension::acidity],
                weighed(Dimension::acidity, tasting)};
    }
    [[nodiscard]] bool agree(std::size_t i, std::size_t j) {
        const Sourness a = sournessAt(i), b = sournessAt(j);
        double apart = a.above - b.above, variance = a.variance + b.variance;
        if (acidAt(i) != acidAt(j)) {
            const double palate = acidity().mean[Offset::apart];
            apart += acidAt(i) == Acid::titration ? palate : -palate;
            variance += acidity().cov[Offset::apart][Offset::apart];
        }
        return std::abs(apart) <= by_.clash * std::sqrt(variance);
    }
    void settleClash(std::size_t i, std::size_t j) {
        void_.insert({i, j});
        for (std::size_t k = j + 1; k < count_ && sameBeer(i, k); ++k) {
            if (acidAt(k) == Acid::nothing || agree(i, k) == agree(j, k))
                continue;
            void_.erase(agree(i, k) ? i : j);
            return;
        }
        const Sourness first = sournessAt(i), second = sournessAt(j);
        learned_.doubts.push_back({.kind = Doubt::Kind::clash,
                                   .on = story_.facts[i].on,
                                   .other = story_.facts[j].on,
                                   .expected = {first.above, std::sqrt(first.variance)},
                                   .seen = second.above});
    }

    [[nodiscard]] Offset& acidity() { return learned_.offsets[Dimension::acidity]; }

    struct Pool {
        Day from{};
        double sum = 0, information = 0; ///< [1/points^2]
    };

    const Story& story_;
    const tasting::ScoreParameters& parameters_;
    const OffsetsOf& others_;
    const EstimateConstants& by_;
    std::size_t count_ = 0, at_ = 0;
    Learned learned_;
    bool started_ = false, tastersAnnounced_ = false, tastedInCycle_ = false;
    PerDimension<bool> announced_{}; ///< something happened since the last sitting
    std::optional<Day> metStrangers_;
    int refills_ = 0;
    Day walked_{};
    std::set<std::size_t> void_;                  ///< facts that acidity is not learned from
    PerDimension<std::map<Tasters, Pool>> pools_; ///< of this cycle
};

} // namespace

bool contradicted(const std::vector<Doubt>& doubts, Dimension dimension) {
    return std::any_of(doubts.begin(), doubts.end(), [&](const Doubt& doubt) {
        return doubt.kind == Doubt::Kind::clash && doubt.dimension == dimension;
    });
}

Learned learnFrom(const Story& story, const Until& until, const tasting::ScoreParameters& parameters,
                  const OffsetsOf& others, const EstimateConstants& by) {
    return Walk(story, until, parameters, others, by).run(until.on);
}

Story beforeThisCycle(Story story) {
    auto& facts = story.facts;
    const auto filled = std::find_if(facts.rbegin(), facts.rend(), [](const StoryFact& fact) {
        const auto* filling = std::get_if<Filling>(&fact.what);
        return filling && !filling->topUp;
    });
    facts.erase(std::remove_if(filled.base(), facts.end(),
                               [](const StoryFact& fact) {
                                   return std::holds_alternative<Tasting>(fact.what) ||
                                          std::holds_alternative<AcidReading>(fact.what);
                               }),
                facts.end());
    return story;
}

} // namespace staveline::estimate

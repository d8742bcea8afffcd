// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/draft.h"
#include "desk/filed.h"

#include <algorithm>
#include <map>
#include <set>

namespace staveline::ui {

using facts::SittingFact;
using tasting::Attribute;
using tasting::builtInSheet;
using tasting::FaultMark;
using tasting::Score;
using tasting::Sitting;

namespace {

using ScoreKey = std::pair<std::string, std::string>; ///< taster, attribute
using ScoreMap = std::map<ScoreKey, Score>;
using FaultMap = std::map<std::string, int>;

ScoreMap mapOf(const std::vector<Score>& scores) {
    ScoreMap map;
    for (const Score& score : scores)
        map.emplace(ScoreKey(score.taster, score.attribute), score);
    return map;
}
FaultMap mapOf(const std::vector<FaultMark>& marks) {
    FaultMap map;
    for (const FaultMark& mark : marks)
        map[mark.fault] = mark.severity;
    return map;
}

template <class V> V merged(const V& base, const V& mine, const V& theirs) {
    return mine == base ? theirs : mine;
}

template <class M> typename M::mapped_type valueIn(const M& map, const typename M::key_type& key) {
    const auto found = map.find(key);
    return found == map.end() ? typename M::mapped_type{} : found->second;
}

/// Theirs in their order, then what only the draft has.
std::vector<Score> mergedScores(const Sitting& base, const Sitting& mine, const Sitting& theirs) {
    if (mine.scores == base.scores)
        return theirs.scores;
    const ScoreMap was = mapOf(base.scores), here = mapOf(mine.scores), there = mapOf(theirs.scores);
    std::vector<Score> all = theirs.scores;
    for (const Score& score : mine.scores)
        if (!there.contains({score.taster, score.attribute}))
            all.push_back(score);
    for (Score& score : all) {
        const ScoreKey key(score.taster, score.attribute);
        const Score before = valueIn(was, key), typed = valueIn(here, key), now = valueIn(there, key);
        score.cold = merged(before.cold, typed.cold, now.cold);
        score.cellar = merged(before.cellar, typed.cellar, now.cellar);
    }
    std::erase_if(all, [](const Score& score) { return !score.cold && !score.cellar; });
    return all;
}

std::vector<FaultMark> mergedFaults(const Sitting& base, const Sitting& mine, const Sitting& theirs) {
    if (mine.faults == base.faults)
        return theirs.faults;
    const FaultMap was = mapOf(base.faults), here = mapOf(mine.faults), there = mapOf(theirs.faults);
    FaultMap all = there;
    all.insert(here.begin(), here.end());
    std::vector<FaultMark> marks;
    for (const auto& [fault, severity] : all)
        if (const int said = merged(valueIn(was, fault), valueIn(here, fault), valueIn(there, fault)); said > 0)
            marks.push_back({fault, said});
    return marks;
}

std::optional<double>& in(Score& score, Glass glass) {
    return glass == Glass::cold ? score.cold : score.cellar;
}
const std::optional<double>& in(const Score& score, Glass glass) {
    return glass == Glass::cold ? score.cold : score.cellar;
}

std::optional<double> scoreIn(const Sitting& sitting, const std::string& taster, const Attribute& attribute,
                              Glass glass) {
    for (const Score& score : sitting.scores)
        if (score.attribute == attribute.code && score.taster == taster)
            return attribute.bothTemperatures ? in(score, glass) : (score.cold ? score.cold : score.cellar);
    return std::nullopt;
}

/// The earlier scores a taster has not given yet, as they would be written.
std::vector<std::pair<std::string, std::pair<Glass, double>>> lacking(const SittingDraft& draft,
                                                                      const Sitting& earlier) {
    std::vector<std::pair<std::string, std::pair<Glass, double>>> all;
    for (const Score& score : earlier.scores) {
        const Attribute* attribute = builtInSheet().find(score.attribute);
        if (score.taster != draft.taster() || !attribute)
            continue;
        for (const Glass glass : bothGlasses)
            if (in(score, glass) && !draft.score(*attribute, glass))
                all.push_back({score.attribute, {glass, *in(score, glass)}});
    }
    return all;
}

} // namespace

std::vector<std::string> tastersOf(const Sitting& sitting) {
    std::vector<std::string> names;
    std::set<std::string> seen;
    for (const Score& score : sitting.scores)
        if (seen.insert(score.taster).second)
            names.push_back(score.taster);
    return names;
}

SittingDraft::SittingDraft(facts::VesselName vessel, Day on, std::vector<std::string> tasters) {
    now_.vessel = std::move(vessel);
    now_.sitting.on = on;
    stored_ = now_;
    if (!tasters.empty())
        tasters_ = std::move(tasters);
}

SittingDraft::SittingDraft(const desk::Filed<SittingFact>& stored)
    : id_(stored.id), stored_(stored.fact), now_(stored.fact) {
    if (auto names = tastersOf(now_.sitting); !names.empty())
        tasters_ = std::move(names);
}

bool SittingDraft::changed() const {
    return changedInTasting() || changedInUse();
}

bool SittingDraft::changedInUseAlone() const {
    return changedInUse() && !changedInTasting();
}

bool SittingDraft::changedInUse() const {
    return stored_.learn != now_.learn || stored_.learnReason != now_.learnReason;
}

bool SittingDraft::changedInTasting() const {
    const Sitting &a = stored_.sitting, &b = now_.sitting;
    return a.on != b.on || a.note != b.note || a.drawIt != b.drawIt ||
           (a.scores != b.scores && mapOf(a.scores) != mapOf(b.scores)) ||
           (a.faults != b.faults && mapOf(a.faults) != mapOf(b.faults));
}

bool SittingDraft::storable() const {
    return !now_.sitting.scores.empty() || !now_.sitting.faults.empty();
}

bool SittingDraft::waits() const {
    return !storable() && (!now_.sitting.note.empty() || now_.sitting.drawIt);
}

void SittingDraft::take(std::size_t index) {
    if (index < tasters_.size())
        inHand_ = index;
}

bool SittingDraft::addTaster(const std::string& name) {
    if (std::find(tasters_.begin(), tasters_.end(), name) != tasters_.end())
        return false;
    tasters_.push_back(name);
    inHand_ = tasters_.size() - 1;
    return true;
}

bool SittingDraft::renameTaster(const std::string& name) {
    const std::string before = taster();
    if (name == before)
        return true;
    if (std::find(tasters_.begin(), tasters_.end(), name) != tasters_.end())
        return false;
    for (Score& score : now_.sitting.scores)
        if (score.taster == before)
            score.taster = name;
    tasters_[inHand_] = name;
    return true;
}

std::optional<double> SittingDraft::score(const Attribute& attribute, Glass glass) const {
    return scoreIn(now_.sitting, taster(), attribute, glass);
}

void SittingDraft::restoreScore(const Attribute& attribute, Glass glass) {
    setScore(attribute, glass, scoreIn(stored_.sitting, taster(), attribute, glass));
}

void SittingDraft::setScore(const Attribute& attribute, Glass glass, std::optional<double> value) {
    std::vector<Score>& scores = now_.sitting.scores;
    auto at = std::find_if(scores.begin(), scores.end(), [&](const Score& score) {
        return score.attribute == attribute.code && score.taster == taster();
    });
    if (at == scores.end() && value)
        at = scores.insert(scores.end(), Score{taster(), attribute.code, {}, {}});
    if (at == scores.end())
        return;
    if (!attribute.bothTemperatures)
        at->cold = at->cellar = std::nullopt;
    in(*at, attribute.bothTemperatures ? glass : Glass::cold) = value;
    if (!at->cold && !at->cellar)
        scores.erase(at);
}

int SittingDraft::severity(const std::string& fault) const {
    for (const FaultMark& mark : now_.sitting.faults)
        if (mark.fault == fault)
            return mark.severity;
    return 0;
}

void SittingDraft::setSeverity(const std::string& fault, int severity) {
    std::vector<FaultMark>& marks = now_.sitting.faults;
    const auto at =
        std::find_if(marks.begin(), marks.end(), [&](const FaultMark& mark) { return mark.fault == fault; });
    if (severity <= 0 && at != marks.end())
        marks.erase(at);
    else if (severity > 0 && at != marks.end())
        at->severity = severity;
    else if (severity > 0)
        marks.push_back({fault, severity});
}

void SittingDraft::setLearn(bool learn, const std::string& reason) {
    now_.learn = learn;
    now_.learnReason = learn ? std::string() : reason;
}

int SittingDraft::fillable(const Sitting& earlier) const {
    return static_cast<int>(lacking(*this, earlier).size());
}

int SittingDraft::fillFrom(const Sitting& earlier) {
    const auto wanted = lacking(*this, earlier);
    for (const auto& [code, score] : wanted)
        setScore(*builtInSheet().find(code), score.first, score.second);
    return static_cast<int>(wanted.size());
}

void SittingDraft::beginOn(Day today) {
    if (!id_ && !gone_ && now_.sitting.on == stored_.sitting.on)
        now_.sitting.on = stored_.sitting.on = today;
}

void SittingDraft::settle(std::int64_t id) {
    id_ = id;
    gone_.reset();
    stored_ = now_;
}

void SittingDraft::settleRemoved() {
    gone_ = id_;
    id_.reset();
    stored_ = SittingFact();
    stored_.vessel = now_.vessel;
    stored_.sitting.on = now_.sitting.on;
    setLearn(true, {});
}

void SittingDraft::follow(const std::optional<SittingFact>& stored) {
    SittingFact theirs = stored.value_or(stored_);
    if (!stored) {
        theirs.sitting.scores.clear();
        theirs.sitting.faults.clear();
        theirs.learn = true;
        theirs.learnReason.clear();
    }
    now_.learn = merged(stored_.learn, now_.learn, theirs.learn);
    now_.learnReason = merged(stored_.learnReason, now_.learnReason, theirs.learnReason);
    const Sitting base = stored_.sitting, mine = now_.sitting;
    now_.vessel = theirs.vessel;
    now_.sitting.on = merged(base.on, mine.on, theirs.sitting.on);
    now_.sitting.note = merged(base.note, mine.note, theirs.sitting.note);
    now_.sitting.drawIt = merged(base.drawIt, mine.drawIt, theirs.sitting.drawIt);
    now_.sitting.scores = mergedScores(base, mine, theirs.sitting);
    now_.sitting.faults = mergedFaults(base, mine, theirs.sitting);
    stored_ = theirs;
    if (!stored)
        settleRemoved();
    gatherTasters(mine.scores);
}

void SittingDraft::comeBack(const desk::Filed<SittingFact>& stored) {
    id_ = stored.id;
    gone_.reset();
    follow(stored.fact);
}

/// Names whose scores went are gone, except the one in hand; a name that came for the one in hand is the same person.
void SittingDraft::gatherTasters(const std::vector<Score>& before) {
    const auto names = [](const std::vector<Score>& scores) {
        std::set<std::string> all;
        for (const Score& score : scores)
            all.insert(score.taster);
        return all;
    };
    const std::set<std::string> had = names(before), have = names(now_.sitting.scores);
    std::string hand = taster();
    std::vector<std::string> arrived;
    for (const std::string& name : tastersOf(now_.sitting))
        if (std::find(tasters_.begin(), tasters_.end(), name) == tasters_.end())
            arrived.push_back(name);
    const bool renamed = had.contains(hand) && !have.contains(hand) && !arrived.empty();
    std::vector<std::string> kept;
    for (const std::string& name : tasters_) {
        if (name == hand && renamed) {
            kept.push_back(arrived.front());
            arrived.erase(arrived.begin());
        } else if (name == hand || have.contains(name) || !had.contains(name)) {
            kept.push_back(name);
        }
        if (name == hand)
            inHand_ = kept.size() - 1;
    }
    kept.insert(kept.end(), arrived.begin(), arrived.end());
    tasters_ = std::move(kept);
}

} // namespace staveline::ui

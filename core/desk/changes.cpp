// SPDX-License-Identifier: GPL-3.0-or-later
// What one setting changes against another, in words.
#include "desk/changes.h"

#include "advice/board.h"
#include "facts/kept_words.h"

#include <cmath>

namespace staveline::desk {

using advice::Setting;
using brewing::Recipe;
using facts::keptWords;
using ingredient::Pantry;

namespace {

constexpr double shownShare = .0005; ///< a smaller difference of shares is not shown

/// `from` with every lever put where `to` has it; a lever that cannot be put there stays. Some levers act on what
/// others bring: they are tried twice.
Setting leveredTo(const Setting& from, const Setting& to, const Pantry& pantry) {
    Setting levered = from;
    for (int round = 0; round < 2; ++round)
        for (const auto& row : advice::builtInLevers())
            if (auto moved = withLever(levered, row.id, leverValue(to, row.id, pantry), pantry))
                levered = *std::move(moved);
    return levered;
}

/// The parts of a recipe that are told whole.
class Differences {
public:
    Differences(const Recipe& from, const Recipe& levered, const Recipe& to, const Pantry& pantry)
        : from_(from), levered_(levered), to_(to), pantry_(pantry) {}

    std::vector<std::string> words() {
        grains();
        if (!restsTold())
            tell("desk.change.mash", rests(from_), rests(to_));
        if (levered_.liquorToGrist != to_.liquorToGrist)
            tell("desk.change.liquor", from_.liquorToGrist, to_.liquorToGrist);
        if (levered_.boil != to_.boil)
            tell("desk.change.boil", from_.boil, to_.boil);
        if (levered_.hops != to_.hops)
            tell("desk.change.hops", hops(from_), hops(to_));
        if (levered_.sugar != to_.sugar && to_.sugarShare.of1 > 0)
            tell("desk.change.sugar", nameOf(from_.sugar), nameOf(to_.sugar));
        if (levered_.preSourTa != to_.preSourTa && to_.preSoured.of1 > 0)
            tell("desk.change.pre_sour_ta", from_.preSourTa, to_.preSourTa);
        return std::move(words_);
    }

private:
    void tell(const std::string& key, ArgumentValue from, ArgumentValue to, const std::string& name = {}) {
        words_.push_back(
            keptWords(say(key).with("to", std::move(to)).with("from", std::move(from)).with("name", name)));
    }
    [[nodiscard]] std::string nameOf(const std::string& id) const {
        const auto grain = pantry_.grain(id);
        return grain ? grain->name : id;
    }
    /// By the levers, which may take their own time for a rest.
    [[nodiscard]] bool restsTold() const {
        std::vector<brewing::MashStep> mash = levered_.mash;
        if (mash == to_.mash)
            return true;
        for (std::size_t i = 0; i < mash.size() && i < from_.mash.size(); ++i)
            mash[i].minutes = from_.mash[i].minutes;
        return mash == to_.mash;
    }
    using Grist = std::map<std::pair<std::string, bool>, double>; ///< by grain and whether it goes in late
    static Grist gristOf(const Recipe& recipe) {
        Grist shares;
        for (const auto& part : recipe.grist)
            shares[{part.grain, part.late}] += part.share.of1;
        return shares;
    }
    void grains() {
        Grist from = gristOf(from_), levered = gristOf(levered_), to = gristOf(to_), all = to;
        all.insert(from.begin(), from.end());
        for (const auto& [part, unused] : all)
            if (std::abs(to[part] - levered[part]) >= shownShare && std::abs(to[part] - from[part]) >= shownShare)
                tell(part.second ? "desk.change.grain.late" : "desk.change.grain", Share{from[part]}, Share{to[part]},
                     nameOf(part.first));
    }
    [[nodiscard]] std::string rests(const Recipe& recipe) const {
        return listed(recipe.mash, [](const brewing::MashStep& rest) {
            return say("desk.change.rest").with("at", rest.temperature).with("minutes", rest.minutes);
        });
    }
    [[nodiscard]] std::string hops(const Recipe& recipe) const {
        if (recipe.hops.empty())
            return keptWords(say("desk.change.hops.usual"));
        return listed(recipe.hops, [](const brewing::HopAddition& hop) {
            return say("desk.change.hop")
                .with("name", hop.name)
                .with("alpha", hop.alpha)
                .with("minutes", hop.boiled)
                .with("part", hop.ofBitterness);
        });
    }
    template <class T, class Word> std::string listed(const std::vector<T>& items, Word word) const {
        std::string all;
        for (const auto& item : items)
            all = all.empty() ? keptWords(word(item))
                              : keptWords(say("desk.change.and").with("all", all).with("next", keptWords(word(item))));
        return all;
    }

    const Recipe &from_, &levered_, &to_;
    const Pantry& pantry_;
    std::vector<std::string> words_;
};

} // namespace

std::vector<std::string> changesBetween(const Setting& from, const Setting& to, const Pantry& pantry) {
    advice::AdviceInput input;
    input.base = from;
    input.pantry = &pantry;
    std::vector<std::string> words;
    for (const auto& wording : wordingsOf(input, to))
        words.push_back(keptWords(wording));
    const Setting levered = leveredTo(from, to, pantry);
    const auto rest = Differences(from.recipe, levered.recipe, to.recipe, pantry).words();
    words.insert(words.end(), rest.begin(), rest.end());
    return words;
}

} // namespace staveline::desk

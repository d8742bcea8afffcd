// SPDX-License-Identifier: GPL-3.0-or-later
// A sitting as it is typed: what is in hand beside what the book holds, and how the two meet when the book changes.
#pragma once

#include "desk/filed.h"
#include "facts/facts.h"
#include "tasting/sitting.h"

#include <array>

namespace staveline::ui {

/// The temperature a glass was tasted at.
enum class Glass { cold, cellar };
inline constexpr std::array bothGlasses = {Glass::cold, Glass::cellar};

class SittingDraft {
public:
    SittingDraft() = default;
    /// A sitting nobody has stored, for the tasters of the last one.
    SittingDraft(facts::VesselName vessel, Day on, std::vector<std::string> tasters);
    explicit SittingDraft(const desk::Filed<facts::SittingFact>& stored);

    [[nodiscard]] const facts::SittingFact& now() const { return now_; }
    [[nodiscard]] std::optional<std::int64_t> id() const { return id_; }
    /// Something in hand differs from what the book holds.
    [[nodiscard]] bool changed() const;
    [[nodiscard]] bool changedInUseAlone() const; ///< nothing but whether it is learned from
    /// A score or a fault is there; the book takes nothing less.
    [[nodiscard]] bool storable() const;
    /// Words or a decision that wait for the first score.
    [[nodiscard]] bool waits() const;

    /// In order of appearance; those just added have no score yet. Never empty.
    [[nodiscard]] const std::vector<std::string>& tasters() const { return tasters_; }
    [[nodiscard]] const std::string& taster() const { return tasters_[inHand_]; }
    [[nodiscard]] std::size_t inHand() const { return inHand_; }
    void take(std::size_t index); ///< out of range: nothing happens
    /// False: there is one of that name.
    bool addTaster(const std::string& name);
    bool renameTaster(const std::string& name);

    /// Of the taster in hand. A line tasted once has its score in either glass.
    [[nodiscard]] std::optional<double> score(const tasting::Attribute& attribute, Glass glass) const;
    void setScore(const tasting::Attribute& attribute, Glass glass, std::optional<double> value);
    /// As it was before it was typed over.
    void restoreScore(const tasting::Attribute& attribute, Glass glass);
    [[nodiscard]] int severity(const std::string& fault) const;
    void setSeverity(const std::string& fault, int severity);
    void setNote(const std::string& note) { now_.sitting.note = note; }
    void setDrawIt(std::optional<bool> drawIt) { now_.sitting.drawIt = drawIt; }
    void setDay(Day on) { now_.sitting.on = on; }
    void setLearn(bool learn, const std::string& reason);

    /// Gives the taster in hand the scores of an earlier sitting wherever nothing is scored yet; how many those are.
    int fillFrom(const tasting::Sitting& earlier);
    [[nodiscard]] int fillable(const tasting::Sitting& earlier) const; ///< what fillFrom would do

    /// The day a sitting nobody stored begins, unless another was given.
    void beginOn(Day today);
    /// What is in hand is in the book now.
    void settle(std::int64_t id);
    void settleRemoved(); ///< and the book holds the sitting no more
    /// The book says otherwise: what was not touched here follows it. None: the sitting is gone from the book; its
    /// words stay in hand, its scores do not.
    void follow(const std::optional<facts::SittingFact>& stored);
    /// The sitting this was before it was taken out of the book; it may come back under that number.
    [[nodiscard]] std::optional<std::int64_t> gone() const { return gone_; }
    void comeBack(const desk::Filed<facts::SittingFact>& stored);
    /// A fresh sitting in the place of one just taken out of the book.
    void replaces(std::int64_t removed) { gone_ = removed; }

private:
    [[nodiscard]] bool changedInUse() const;
    [[nodiscard]] bool changedInTasting() const;
    void gatherTasters(const std::vector<tasting::Score>& before);

    std::optional<std::int64_t> id_, gone_;
    facts::SittingFact stored_, now_;
    std::vector<std::string> tasters_{std::string()};
    std::size_t inHand_ = 0;
};

/// Tasters of a sitting in order of appearance.
[[nodiscard]] std::vector<std::string> tastersOf(const tasting::Sitting& sitting);

} // namespace staveline::ui

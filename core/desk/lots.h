// SPDX-License-Identifier: GPL-3.0-or-later
// Drawn beer as it stands: how much is left, what it is like, where it came from and where it went, and what waits.
#pragma once

#include "facts/facts.h"
#include "finishing/blend.h"
#include "quantity/message.h"

#include <optional>
#include <string>
#include <vector>

namespace staveline::desk {

/// A value of the beer; its error is one standard deviation.
struct LotTrait {
    finishing::Trait trait = finishing::Trait::ta;
    double value = 0, sd = 0;
    bool measured = false; ///< else estimated by the replay of its vessels
};
/// Liquid that went in at one entry of a vessel.
struct LotGeneration {
    std::string brew; ///< empty: of a takeover, or of no recorded brew
    Day on{};         ///< it went in
    Share share{0};   ///< of the part
};
/// Of one draw, or of one addition that brought litres.
struct LotPartView {
    facts::VesselName vessel; ///< empty: an addition
    std::string added;        ///< in words; empty: a draw
    Day on{};
    Litres litres{0};                       ///< in what is left of the lot; where nothing is, in what was filled last
    Share share{0};                         ///< of those
    Days age{0};                            ///< mean, today
    std::vector<LotGeneration> generations; ///< newest first
};
struct LotLine {
    Day on{};
    Message text;      ///< "60.0 L drawn from Plover"
    std::string table; ///< to amend or remove it
    std::int64_t id = 0;
    Litres after{0}; ///< the lot holds then
    facts::Measured measured;
    std::string note;
};
struct PackageView {
    std::string name;
    facts::LotName lot;
    Day on{};
    facts::PackageKind kind = facts::PackageKind::bottle;
    Millilitres size{0};
    int count = 0, left = 0;
    std::optional<Co2Volumes> planned, found; ///< found: the mean of those that were measured
    std::optional<facts::Fizz> fizz;          ///< last told
    std::optional<Day> firstOpened;
    std::string verdict; ///< of the guard, as it was worded then
    std::string overrideReason;
    std::optional<Day> until; ///< it was cleared
    std::int64_t id = 0;      ///< of its row in "packaging"
};
enum class LotStage {
    ageing, ///< there is some left
    packed, ///< nothing left but packages
    gone    ///< nothing left at all
};
enum class LotWork { tasteFruit, testGravity, bottle, openFirst };
struct LotWait {
    LotWork work = LotWork::testGravity;
    Day on{};
    int inDays = 0; ///< negative: overdue
    Message text;   ///< "taste the fruit in 3 days"
};
struct LotView {
    facts::LotName name;
    Day since{};
    Litres litres{0};
    Days meanAge{0};                        ///< of what was drawn, today
    std::vector<LotTrait> traits;           ///< empty: nothing left, or drawn long ago and never told of again
    std::optional<SpecificGravity> gravity; ///< last measured of this very beer
    std::optional<Day> gravityOn;
    std::vector<LotPartView> parts;
    std::vector<LotLine> lines; ///< oldest first
    std::vector<PackageView> packages;
    LotStage stage = LotStage::ageing;
    std::vector<LotWait> waits; ///< what comes first is first
};

[[nodiscard]] std::string_view wordOf(LotStage stage);
[[nodiscard]] std::string_view wordOf(LotWork work);
/// "Cherry: 41.2 L, 1.4 years old", what it is like, what waits, in lines for a reader.
[[nodiscard]] std::vector<Message> wordsOf(const LotView& lot);
/// "30.0 L (75 %) drawn from Plover on 10 Jan 2026, 1.4 years old today"
[[nodiscard]] Message wordsOf(const LotPartView& part);
/// All lots in one array, or one object; for machines.
[[nodiscard]] std::string toJson(const std::vector<LotView>& lots);
[[nodiscard]] std::string toJson(const LotView& lot);

} // namespace staveline::desk

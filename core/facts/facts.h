// SPDX-License-Identifier: GPL-3.0-or-later
// Everything a brewer can record. Forms and JSON fill the same structs; fields.h describes each once, and from that
// description come the JSON reader and writer, the book's tables, the validator and the help. fact_list.h lists them.
#pragma once

#include "brewing/recipe.h"
#include "facts/words.h"
#include "ingredient/pantry.h"
#include "quantity/day.h"
#include "tasting/verdict.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace staveline::facts {

/// Vessel names as the brewer writes them; the desk resolves them to the immutable key stored in the book.
using VesselName = std::string;

struct VesselFact {
    VesselName name;
    VesselForm shape = VesselForm::cask;
    Material material = Material::oakUsed;
    Litres capacity{225};
    Celsius temperature{16}; ///< all year; of a vessel that stands in a room, the room's goes before it
    std::string room;        ///< name of a recorded room; empty: it stands at its own temperature
    bool canChangeTemperature = false;
    Days interval{240};
    std::optional<double> wantedAgeYears; ///< mean age at the draw, by which it is drawn; none: by the interval
    Share drawShare{.35};
    Days sampleBefore{30};
    bool drawMayMove = false;                ///< the adviser may propose another draw
    bool intervalMayMove = false;            ///< the adviser may propose another interval
    std::optional<Share> evaporationPerYear; ///< none: by material
    std::optional<double> oxygenPerYear;     ///< mg/(L year); none: by material
    std::optional<Share> cultureHeldBack;    ///< none: by material
    double fillsBefore = 0;                  ///< from empty, before it came to this cellar
    std::string note;
    std::optional<Day> retired;
    std::string retiredReason;
    bool operator==(const VesselFact&) const = default;
};
/// What is given replaces; what is absent stays.
struct VesselEditFact {
    VesselName vessel;
    std::optional<Day> on; ///< from when size, wood and cellar are so (a RefitFact); none: the day it is recorded
    std::optional<std::string> name, note;
    std::optional<VesselForm> shape;
    std::optional<Material> material;
    std::optional<Litres> capacity;
    std::optional<Celsius> temperature; ///< of its own: it stands in no room from then on
    std::optional<std::string> room;    ///< it was moved to; empty: back to its own temperature
    std::optional<bool> canChangeTemperature, drawMayMove, intervalMayMove;
    std::optional<Days> interval, sampleBefore;
    std::optional<Share> drawShare, evaporationPerYear, cultureHeldBack;
    std::optional<double> oxygenPerYear, wantedAgeYears, fillsBefore;
    std::vector<std::string> clear; ///< fields to go back to what the material says, or to no wanted age
    bool operator==(const VesselEditFact&) const = default;
};
/// What a vessel became on a day: before it the ledger and the model see the vessel as it was.
struct RefitFact {
    VesselName vessel;
    Day on{};
    std::optional<Litres> capacity;
    std::optional<Material> material;
    std::optional<Celsius> temperature; ///< of its own: it stands in no room from then on
    std::optional<std::string> room;    ///< it was moved to; empty: back to its own temperature
    std::optional<Share> evaporationPerYear, cultureHeldBack;
    std::optional<double> oxygenPerYear;
    std::vector<std::string> clear; ///< fields to go back to what the material says
    bool operator==(const RefitFact&) const = default;
};
/// A room and its year: a temperature for each month, or the coldest month and how far it goes from there to the
/// warmest half a year later. Told anew on a later day it was changed: a heater, a wall. Before the first day it was
/// the same.
struct RoomFact {
    Day on{};
    std::string name;
    std::optional<Celsius> coldest, warmest;
    std::optional<Month> coldestMonth;
    std::array<std::optional<Celsius>, 12> months; ///< January first; all of them or none
    std::string note;
    bool operator==(const RoomFact&) const = default;
};
struct RetireFact {
    VesselName vessel;
    Day on{};
    std::string reason;
    bool operator==(const RetireFact&) const = default;
};
/// A retired vessel is used again.
struct BringBackFact {
    VesselName vessel;
    Day on{};
    bool operator==(const BringBackFact&) const = default;
};
struct CultureFact {
    VesselName vessel;
    Day on{};
    std::string name;
    Brettanomyces brettanomyces = Brettanomyces::established;
    bool killerSensitive = true;
    bool diastatic = false;
    std::optional<Ibu> hopTolerance;
    std::string note;
    bool operator==(const CultureFact&) const = default;
};
struct EquipmentFact {
    Day on{};
    VesselName vessel{}; ///< whose brews are made on it; empty: those of all vessels without a kit of their own
    brewing::Equipment equipment;
    std::optional<Litres> brewLength; ///< fixed litres into the fermenter
    Share margin{.05};
    bool operator==(const EquipmentFact&) const = default;
};
struct BaseRecipeFact {
    VesselName vessel;
    Day on{};
    brewing::Recipe recipe;
    bool operator==(const BaseRecipeFact&) const = default;
};
struct TargetFact {
    VesselName vessel;
    Day on{};
    tasting::Target target;
    bool operator==(const TargetFact&) const = default;
};
struct Measured {
    std::optional<SpecificGravity> gravity;
    std::optional<Ph> ph;
    std::optional<GramsPerLitre> ta; ///< as lactic, to pH 8.2
    std::optional<Celsius> temperature;
    std::optional<Ibu> bitterness;
    bool operator==(const Measured&) const = default;
};
/// Entries of the ledger stand by day; within it by `at` ("14:30"), and what has no time after what was on record of
/// the day when it came: its `turn`, which the desk gives. Facts of one file share a turn and stand by their kinds.
struct OpeningFact {
    VesselName vessel;
    Day on{};
    Litres volume{0};
    std::optional<double> ageYears, ageSdYears; ///< mean age of the liquid; none: from the usual habit
    std::optional<double> yearsRunning;         ///< on the usual recipe
    std::optional<Days> usualInterval;
    std::optional<Share> usualShare;
    Measured measured;
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    bool operator==(const OpeningFact&) const = default;
};
struct SittingFact {
    VesselName vessel;
    tasting::Sitting sitting;     ///< its day is the fact's day
    bool learn = true;            ///< no: it stays on record and teaches nothing about the vessel
    std::string learnReason = {}; ///< why not; may be empty
    bool operator==(const SittingFact&) const = default;
};
/// Changes a sitting on record: whether it is learned from. The mark is kept with the sitting itself, so that it goes
/// where the sitting goes and cannot outlive it.
struct SittingUseFact {
    VesselName vessel;
    Day sitting{}; ///< its day
    int which = 1; ///< of several on one day, in the order they were recorded
    bool learn = true;
    std::string reason;
    bool operator==(const SittingUseFact&) const = default;
};
struct ReadingFact {
    VesselName vessel;
    Day on{};
    Measured measured;
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    bool operator==(const ReadingFact&) const = default;
};
struct SampleFact {
    VesselName vessel;
    Day on{};
    Litres volume{0.2};
    Measured measured;
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    bool operator==(const SampleFact&) const = default;
};
struct DipFact {
    VesselName vessel;
    Day on{};
    Litres volume{0}; ///< what the dip says the vessel holds
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    bool operator==(const DipFact&) const = default;
};
struct DrawOffFact {
    VesselName vessel;
    Day on{};
    Litres volume{0};
    std::string lot; ///< name for the drawn beer; several draws of one name are one lot
    Measured measured;
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    bool operator==(const DrawOffFact&) const = default;
};
struct RefillFact {
    VesselName vessel;
    Day on{};
    Litres volume{0};
    std::string brew;        ///< name of a recorded brew
    VesselName from;         ///< or the vessel it comes from; both empty: the usual recipe
    std::optional<Days> age; ///< of what goes in; none: the days since the brew
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    std::string lot = {};         ///< or the drawn beer it comes from
    bool operator==(const RefillFact&) const = default;
};
struct TopUpFact {
    VesselName vessel;
    Day on{};
    Litres volume{0};
    std::string brew;
    VesselName from;
    std::optional<Days> age;
    std::string note;
    std::string at = {};          ///< time of day; empty: not said
    std::optional<int> turn = {}; ///< on its day
    std::string lot = {};         ///< or the drawn beer it comes from
    bool operator==(const TopUpFact&) const = default;
};
/// Moves no liquid but what is lost with it.
struct EventFact {
    VesselName vessel;
    Day on{};
    Happening what = Happening::pitched;
    std::string note;
    std::string at = {};               ///< time of day; empty: not said
    std::optional<int> turn = {};      ///< on its day
    std::string culture = {};          ///< what was pitched
    std::optional<Litres> volume = {}; ///< left behind, run out or rinsed away with it
    bool operator==(const EventFact&) const = default;
};
/// Drawn beer goes on as a lot, by its name, which no vessel bears. A lot begins with its first draw, or when beer of
/// another one is moved into it. Within a day its draws come first, then what is moved, added, read and packed.
using LotName = std::string;
struct LotReadingFact {
    LotName lot;
    Day on{};
    Measured measured;
    bool keptWarm = false; ///< of a sample that was kept warm to see how far it ferments
    std::string note;
    bool operator==(const LotReadingFact&) const = default;
};
struct LotAdditionFact {
    LotName lot;
    Day on{};
    Added what = Added::fruit;
    std::string ingredient;        ///< id of a fruit or of a sugar; else free words
    std::optional<Kilograms> mass; ///< of acid: as lactic acid
    std::optional<Litres> volume;  ///< of wort, or of what comes as a liquid
    std::optional<Plato> extract;  ///< real, of wort; none: 12 P
    std::string note;
    bool operator==(const LotAdditionFact&) const = default;
};
struct LotMoveFact {
    LotName lot;
    Day on{};
    Litres volume{0};
    LotName to; ///< new or known; empty: it leaves the cellar
    LotMoveKind why = LotMoveKind::moved;
    std::string note;
    bool operator==(const LotMoveFact&) const = default;
};
/// Beer of a lot into bottles or kegs. What the guard said of it is stored with it and never recomputed.
struct PackagingFact {
    LotName lot;
    Day on{};
    std::string name; ///< of this filling; no other bears it
    PackageKind kind = PackageKind::bottle;
    Millilitres size{0}; ///< of each
    int count = 0;
    std::string make = {};                    ///< id of a make of bottle; empty: not told
    std::optional<GaugePressure> rating = {}; ///< by its maker
    std::string sugar = {};                   ///< id; empty: sucrose
    std::optional<GramsPerLitre> sugarWeight = {};
    std::optional<Co2Volumes> planned = {};
    std::optional<Co2Volumes> residual = {}; ///< measured in the beer before; none: by its warmth
    std::optional<Celsius> warmest = {};     ///< it will ever stand at; none: as is usual
    Litres lost{0};                          ///< in filling
    std::string overrideReason = {};         ///< for going against the guard
    std::string verdict = {};                ///< of the guard, as it was worded then; given by the desk
    std::optional<Day> until = {};           ///< it was cleared; given by the desk
    std::string note = {};
    bool operator==(const PackagingFact&) const = default;
};
struct OpenedFact {
    std::string packaging; ///< name of a filling
    Day on{};
    int count = 1;
    PackageUse what = PackageUse::opened;
    std::optional<Fizz> fizz = {};
    std::optional<Co2Volumes> found = {};
    std::optional<double> acidity = {}, funk = {}, body = {}; ///< 0..10
    std::string note = {};
    bool operator==(const OpenedFact&) const = default;
};
/// The look at a vessel that is made every month or so. Its level is a dip and what it is topped with a top-up: facts
/// of their own, recorded with it.
struct RoundFact {
    VesselName vessel;
    Day on{};
    std::optional<Bung> bung; ///< none of these: not looked at
    std::optional<Weep> weep;
    std::optional<Pellicle> pellicle;
    std::optional<Smell> smell;
    std::optional<Celsius> room; ///< temperature of the air
    bool purged = false;         ///< the headspace, with CO2
    std::optional<Day> nextLook;
    std::string note;
    bool operator==(const RoundFact&) const = default;
};
/// The day of the coming draw, put off or brought forward. It holds for this cycle alone.
struct DrawDateFact {
    VesselName vessel;
    Day on{};
    std::optional<Day> drawOn; ///< none: by the interval again
    std::string reason;
    bool operator==(const DrawDateFact&) const = default;
};
/// The same for its tasting or its brew.
struct WorkDateFact {
    VesselName vessel;
    Day on{};
    Work work = Work::taste;
    std::optional<Day> workOn; ///< none: by the draw again
    std::string reason;
    bool operator==(const WorkDateFact&) const = default;
};
struct BrewFact {
    std::string name;  ///< "Brew 31"
    VesselName vessel; ///< mostly brewed for; may be empty
    Day on{};
    brewing::Recipe recipe;                                       ///< as brewed
    std::optional<SpecificGravity> originalGravity, finalGravity; ///< as measured
    std::optional<Litres> intoFermenter;
    std::string note;
    bool operator==(const BrewFact&) const = default;
};
/// A malt, grain, sugar or extract of one's own, with all its numbers, so that a later data table does not change it. A
/// brew reads what was in force on its day: the latest by then, else the first.
struct OwnGrainFact {
    Day on{};         ///< from when it is so
    std::string like; ///< the built-in one it was made from
    ingredient::Grain item;
    std::optional<Share> fermentable; ///< of its extract, whatever the mash; none: the mash decides
    std::string note;
    bool operator==(const OwnGrainFact&) const = default;
};
struct OwnYeastFact {
    Day on{};
    std::string like;
    ingredient::Yeast item;
    Days primary{14};
    bool operator==(const OwnYeastFact&) const = default;
};
/// A recipe keeps name and alpha acids of its hops by itself; this is where they are taken from.
struct OwnHopFact {
    Day on{}; ///< of its alpha acids
    std::string like;
    ingredient::Hop item;
    std::string note;
    bool operator==(const OwnHopFact&) const = default;
};
struct LockFact {
    VesselName vessel;
    Day on{};
    std::string lever;
    std::optional<double> value; ///< numeric levers
    std::string choice;          ///< choice levers
    bool locked = true;
    bool operator==(const LockFact&) const = default;
};
/// What there is of an ingredient. The latest word on each counts.
struct AvailabilityFact {
    Day on{};
    std::string item; ///< id of a grain, sugar, yeast or hop
    bool available = true;
    std::optional<Day> readyOn = {};
    std::optional<Kilograms> mass = {}; ///< counted in the evening of that day; none: not counted
    std::optional<double> packs = {};   ///< of yeast
    std::optional<Day> bestBefore = {}; ///< not used after it
    bool operator==(const AvailabilityFact&) const = default;
};
/// What was promised when a proposal was chosen; stored, never recomputed.
struct Forecast {
    PerDimension<double> mean{}, sd{};
    PerDimension<std::optional<double>> low{}, high{}; ///< of the 80 % band as it was told; none: of an older book
    brewing::Recipe recipe;
    Litres draw{0};
    Days interval{240};
    Celsius temperature{16};
    Day thisDraw{}, nextDraw{};
    std::vector<std::string> moves, reasons; ///< worded in plain text
    std::string modelVersion, fingerprint;
    tasting::Target target;
    bool operator==(const Forecast&) const = default;
};
struct ChoiceFact {
    VesselName vessel;
    Day on{};
    static constexpr int own = -1;    ///< a setting of the brewer's own
    int proposal = 0;                 ///< 0: leave it alone
    std::optional<Forecast> forecast; ///< filled by the desk when the choice is made
    /// By what was said of the vessel itself after it; the promise stays as it was made.
    bool drawOverruled = false, intervalOverruled = false, temperatureOverruled = false;
    std::optional<int> turn = {}; ///< on its day, among the entries of the ledger: a later refill went in by it
    bool operator==(const ChoiceFact&) const = default;
};

} // namespace staveline::facts

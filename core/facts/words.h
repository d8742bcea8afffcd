// SPDX-License-Identifier: GPL-3.0-or-later
// Fields that are one of a few words, each beside its words as record files and the book have them.
#pragma once

#include <array>
#include <string_view>

namespace staveline::facts {

enum class VesselForm { cask, keg, foeder, tank, carboy, bucket };
enum class Material { oakNew, oakUsed, foeder, steel, glass, plastic };
enum class Brettanomyces { established, young, none };
/// What befell a vessel beside its liquid, after which it may taste otherwise than before.
enum class Happening {
    pitched,  ///< a culture was put in
    racked,   ///< the beer went to another vessel, or off its lees
    cleaned,  ///< the wood was cleaned hard
    moved,    ///< the vessel stands elsewhere
    tasters,  ///< other people taste it now
    repaired, ///< hoops, a stave, the head
    leaked
};
/// Of a cycle, before its draw.
enum class Work { taste, brew };

enum class Month { january, february, march, april, may, june, july, august, september, october, november, december };

// What a round sees.
enum class Bung { tight, loose, changed };
enum class Weep { none, damp, dripping };
enum class Pellicle { none, thin, full, broken };
enum class Smell { clean, vinegar, solvent, mould, sulphur };

// Drawn beer.
enum class Added { fruit, spice, dryHops, sugar, wort, acid, oak, fining };
/// Why beer leaves a lot.
enum class LotMoveKind { moved, joined, taken, pouredAway, lost };
enum class PackageKind { bottle, keg };
enum class PackageUse { opened, given, broken };
enum class Fizz { flat, low, asMeant, high, gushing };

namespace factWords {
inline constexpr std::array<std::string_view, 6> shapes = {"cask", "keg", "foeder", "tank", "carboy", "bucket"};
inline constexpr std::array<std::string_view, 6> materials = {"oak new", "oak used", "foeder",
                                                              "steel",   "glass",    "plastic"};
inline constexpr std::array<std::string_view, 3> brett = {"established", "young", "none"};
inline constexpr std::array<std::string_view, 7> happenings = {"pitched", "racked",   "cleaned", "moved",
                                                               "tasters", "repaired", "leaked"};
inline constexpr std::array<std::string_view, 2> works = {"taste", "brew"};
inline constexpr std::array<std::string_view, 12> months = {"january",   "february", "march",    "april",
                                                            "may",       "june",     "july",     "august",
                                                            "september", "october",  "november", "december"};
inline constexpr std::array<std::string_view, 3> bungs = {"tight", "loose", "changed"};
inline constexpr std::array<std::string_view, 3> weeps = {"none", "damp", "dripping"};
inline constexpr std::array<std::string_view, 4> pellicles = {"none", "thin", "full", "broken"};
inline constexpr std::array<std::string_view, 5> smells = {"clean", "vinegar", "solvent", "mould", "sulphur"};
inline constexpr std::array<std::string_view, 8> added = {"fruit", "spice", "dry_hops", "sugar",
                                                          "wort",  "acid",  "oak",      "fining"};
inline constexpr std::array<std::string_view, 5> lotMoves = {"moved", "joined", "taken", "poured_away", "lost"};
inline constexpr std::array<std::string_view, 2> packages = {"bottle", "keg"};
inline constexpr std::array<std::string_view, 3> packageUses = {"opened", "given", "broken"};
inline constexpr std::array<std::string_view, 5> fizzes = {"flat", "low", "as_meant", "high", "gushing"};
inline constexpr std::array<std::string_view, 2> paths = {"jump", "ramp"};
/// A vessel without it goes by its interval: cleared, it does again.
inline constexpr std::string_view wantedAge = "wanted_age_years";
/// What a vessel of each shape is made of more often than not.
inline constexpr std::array<Material, 6> usualMaterials = {Material::oakUsed, Material::steel, Material::foeder,
                                                           Material::steel,   Material::glass, Material::plastic};
/// Fields of a vessel that can go back to what its material says.
inline constexpr std::array<std::string_view, 3> clearable = {"evaporation_per_year", "oxygen_mg_l_year",
                                                              "culture_held_back"};
} // namespace factWords

[[nodiscard]] constexpr std::string_view wordOf(VesselForm form) {
    return factWords::shapes[static_cast<std::size_t>(form)];
}
[[nodiscard]] constexpr std::string_view wordOf(Material material) {
    return factWords::materials[static_cast<std::size_t>(material)];
}
[[nodiscard]] constexpr Material usualMaterial(VesselForm form) {
    return factWords::usualMaterials[static_cast<std::size_t>(form)];
}
[[nodiscard]] constexpr std::string_view wordOf(Brettanomyces state) {
    return factWords::brett[static_cast<std::size_t>(state)];
}

[[nodiscard]] constexpr std::string_view wordOf(Work work) {
    return factWords::works[static_cast<std::size_t>(work)];
}
[[nodiscard]] constexpr std::string_view wordOf(Month month) {
    return factWords::months[static_cast<std::size_t>(month)];
}
[[nodiscard]] constexpr std::string_view wordOf(Bung state) {
    return factWords::bungs[static_cast<std::size_t>(state)];
}
[[nodiscard]] constexpr std::string_view wordOf(Weep state) {
    return factWords::weeps[static_cast<std::size_t>(state)];
}
[[nodiscard]] constexpr std::string_view wordOf(Pellicle state) {
    return factWords::pellicles[static_cast<std::size_t>(state)];
}
[[nodiscard]] constexpr std::string_view wordOf(Smell smell) {
    return factWords::smells[static_cast<std::size_t>(smell)];
}
[[nodiscard]] constexpr std::string_view wordOf(Added what) {
    return factWords::added[static_cast<std::size_t>(what)];
}
[[nodiscard]] constexpr std::string_view wordOf(LotMoveKind why) {
    return factWords::lotMoves[static_cast<std::size_t>(why)];
}
[[nodiscard]] constexpr std::string_view wordOf(PackageKind kind) {
    return factWords::packages[static_cast<std::size_t>(kind)];
}
[[nodiscard]] constexpr std::string_view wordOf(PackageUse use) {
    return factWords::packageUses[static_cast<std::size_t>(use)];
}
[[nodiscard]] constexpr std::string_view wordOf(Fizz fizz) {
    return factWords::fizzes[static_cast<std::size_t>(fizz)];
}
/// It goes on under another name in this cellar.
[[nodiscard]] constexpr bool staysInCellar(LotMoveKind why) {
    return why == LotMoveKind::moved || why == LotMoveKind::joined;
}
/// Beer is left behind, spilt or runs out with it.
[[nodiscard]] constexpr bool losesBeer(Happening what) {
    return what != Happening::pitched && what != Happening::tasters;
}
/// After it a vessel may taste otherwise than its past says.
[[nodiscard]] constexpr bool changesTaste(Happening what) {
    return what != Happening::repaired && what != Happening::leaked;
}
/// It brings what ferments, or what wakes the culture.
[[nodiscard]] constexpr bool feeds(Added what) {
    return what != Added::oak && what != Added::fining && what != Added::acid;
}
/// The beer is stirred or fed, so that it may ferment again.
[[nodiscard]] constexpr bool wakesBeer(Happening what) {
    return what == Happening::pitched || what == Happening::racked || what == Happening::moved;
}
[[nodiscard]] constexpr std::string_view wordOf(Happening what) {
    return factWords::happenings[static_cast<std::size_t>(what)];
}

} // namespace staveline::facts

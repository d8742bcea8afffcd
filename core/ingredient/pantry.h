// SPDX-License-Identifier: GPL-3.0-or-later
// Malts, grains, sugars, yeasts and hops with the numbers the models need. Parsed from resources/data.
#pragma once

#include "ingredient/hop.h"
#include "quantity/constants.h"
#include "quantity/fault.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::ingredient {

enum class GrainKind {
    base,
    kilned,
    wheat,
    rye,
    oat,
    smoked,
    acid,
    unmalted,
    flaked,
    caramel,
    roast,
    sugar,
    extract,
    husk
};
/// In that order.
inline constexpr std::array<std::string_view, 14> grainKinds = {"base",   "kilned", "wheat",    "rye",    "oat",
                                                                "smoked", "acid",   "unmalted", "flaked", "caramel",
                                                                "roast",  "sugar",  "extract",  "husk"};

struct Grain {
    std::string id;
    std::string name;
    GrainKind kind = GrainKind::base;
    double extractDryBasis = 0.81; ///< fine grind, share of dry mass, 0..1
    double moisture = 0.045;       ///< share, 0..1
    Ebc colour{3};
    double diastaticPowerWk = 0; ///< Windisch-Kolbach
    double ferulicFree = 0;      ///< mg/kg
    double ferulicBound = 0;     ///< accessible bound [mg/kg]
    double esterase = 0;         ///< relative to Pilsner malt
    double coumaricFree = 0;     ///< mg/kg
    double coumaricBound = 0;    ///< mg/kg
    double betaGlucan = 0;       ///< kg/kg
    double glucanase = 0;        ///< relative to Pilsner malt
    double arabinoxylan = 0;     ///< g/L at 12 P if it were the whole grist
    double lactic = 0;           ///< lactic acid, kg/kg as it is weighed
    double ownRdf = -1;          ///< real fermentability of its extract, 0..1; negative: from the mash model
    double maxShare = 1.0;       ///< of the extract
    double extractAsIs = 0.80;   ///< kg/kg as is, as the phenol and glucan models were fitted with; only for them
    std::string source;          ///< key into sources.csv
    bool operator==(const Grain&) const = default;

    [[nodiscard]] bool isSugar() const { return kind == GrainKind::sugar; }
    /// Extract goes into the kettle.
    [[nodiscard]] bool mashed() const { return kind != GrainKind::extract; }
    /// Dry extract of a kilogram as it is weighed, fully converted.
    [[nodiscard]] double dryExtract() const { return extractDryBasis * (1 - moisture); }
    /// Unmalted: gelatinises late and brings no glucanase.
    [[nodiscard]] bool isRaw() const { return kind == GrainKind::unmalted || kind == GrainKind::flaked; }
    /// At least three times the glucan of barley malt: oats, flaked and raw barley, raw and flaked rye.
    [[nodiscard]] bool isGlucanRich() const { return betaGlucan >= constants::grain::glucanRich; }
};

struct Yeast {
    std::string id;
    std::string name;
    double takesMaltose = 1;       ///< 0..1
    double takesMaltotriose = .75; ///< 0..1
    double takesDextrin = 0;       ///< 0..1
    bool pof = false;              ///< makes clove notes (decarboxylates phenolic acids)
    double glycerolAt12P = 2.0;    ///< g/L
    bool killerPositive = false;
    int primaryDays = 14;
    std::string note;
    std::string source;
    bool operator==(const Yeast&) const = default;

    [[nodiscard]] bool diastatic() const { return takesDextrin > 0; }
};

class Pantry {
public:
    /// All are CSV with a header; a missing column, a bad number, a value outside columns.csv or outside the row's own
    /// range, or an id used twice is a fault at "/grains/<row>/<column>", "/yeasts/..." or "/hops/...".
    /// Without a table of hops there are none.
    static Result<Pantry> parse(std::string_view grainsCsv, std::string_view yeastsCsv, std::string_view hopsCsv = {});

    /// An unknown id is a fault that offers the nearest known one; never a silent default.
    [[nodiscard]] Result<Grain> grain(std::string_view id, std::string_view path = "") const;
    [[nodiscard]] Result<Yeast> yeast(std::string_view id, std::string_view path = "") const;
    [[nodiscard]] Result<Hop> hop(std::string_view id, std::string_view path = "") const;
    [[nodiscard]] const std::vector<Grain>& grains() const { return grains_; }
    [[nodiscard]] const std::vector<Yeast>& yeasts() const { return yeasts_; }
    [[nodiscard]] const std::vector<Hop>& hops() const { return hops_; }
    /// Adds or replaces by id (ingredients stored in a book win over the built-in ones).
    void put(Grain grain);
    void put(Yeast yeast);
    void put(Hop hop);

private:
    std::vector<Grain> grains_;
    std::vector<Yeast> yeasts_;
    std::vector<Hop> hops_;
};

/// Parsed once from resources/data/grains.csv, yeasts.csv and hops.csv.
[[nodiscard]] const Pantry& builtInPantry();

} // namespace staveline::ingredient

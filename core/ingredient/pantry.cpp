// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/pantry.h"

#include "ingredient/nearest.h"
#include "quantity/columns.h"
#include "quantity/day.h"
#include "quantity/language.h"
#include "resources/resources.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <utility>

namespace staveline::ingredient {
namespace {

constexpr double perCent = 0.01;

struct GrainNumber {
    std::string_view column;
    double Grain::*member;
    double scale = 1;
};
constexpr std::array grainNumbers = {
    GrainNumber{"extract_db_pct", &Grain::extractDryBasis, perCent},
    GrainNumber{"moisture_pct", &Grain::moisture, perCent},
    GrainNumber{"diastatic_power_wk", &Grain::diastaticPowerWk},
    GrainNumber{"ferulic_free_mg_kg", &Grain::ferulicFree},
    GrainNumber{"ferulic_bound_mg_kg", &Grain::ferulicBound},
    GrainNumber{"esterase_rel", &Grain::esterase},
    GrainNumber{"coumaric_free_mg_kg", &Grain::coumaricFree},
    GrainNumber{"coumaric_bound_mg_kg", &Grain::coumaricBound},
    GrainNumber{"beta_glucan_kg_kg", &Grain::betaGlucan},
    GrainNumber{"glucanase_rel", &Grain::glucanase},
    GrainNumber{"arabinoxylan_g_l_at_12p", &Grain::arabinoxylan},
    GrainNumber{"lactic_pct", &Grain::lactic, perCent},
    GrainNumber{"max_share_of_extract", &Grain::maxShare},
    GrainNumber{"extract_as_is", &Grain::extractAsIs},
};

struct YeastNumber {
    std::string_view column;
    double Yeast::*member;
};
constexpr std::array yeastNumbers = {
    YeastNumber{"takes_maltose", &Yeast::takesMaltose},
    YeastNumber{"takes_maltotriose", &Yeast::takesMaltotriose},
    YeastNumber{"takes_dextrin", &Yeast::takesDextrin},
    YeastNumber{"glycerol_g_l_at_12p", &Yeast::glycerolAt12P},
};

/// Reads the cells of one row; the first fault stays, so that a reader asks for all its cells and checks once.
class RowReader {
public:
    RowReader(const CsvTable& table, std::size_t row) : table_(table), row_(row) {}

    std::string text(std::string_view column) {
        const auto cell = table_.text(row_, column);
        if (cell.empty())
            refuse(column, say("ingredient.no_text").with("column", std::string(column)));
        return std::string(cell);
    }
    double number(std::string_view column) { return take(table_.number(row_, column)); }
    double number(std::string_view column, double whenEmpty) { return take(table_.number(row_, column, whenEmpty)); }
    int whole(std::string_view column) {
        const double value = number(column);
        if (value != std::floor(value))
            refuse(column, say("ingredient.not_whole").with("text", std::string(table_.text(row_, column))));
        return static_cast<int>(value);
    }
    /// May be empty.
    [[nodiscard]] std::string remark(std::string_view column) const { return std::string(table_.text(row_, column)); }
    /// The value must lie between those of two other columns.
    void checkWithin(std::string_view column, std::string_view low, std::string_view high) {
        const Range range{number(low), number(high)};
        const double value = number(column);
        if (!fault_ && !range.holds(value))
            fault_ = outOfRange(table_.text(row_, column), value, range, cellPath(row_, column));
    }
    void refuse(std::string_view column, Message cause) {
        if (!fault_)
            fault_ = Fault{FaultKind::input, cellPath(row_, column), std::move(cause), say("quantity.csv_remedy")};
    }
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }

private:
    double take(const Result<double>& value) {
        if (!value && !fault_)
            fault_ = value.error();
        return value.value_or(0.0);
    }

    const CsvTable& table_;
    std::size_t row_;
    std::optional<Fault> fault_;
};

/// A cell that holds one of a few words, by its place among them; the first when it holds none.
template <class Word>
Word readWord(RowReader& row, std::string_view column, std::span<const std::string_view> words, std::string unknown) {
    const auto word = row.text(column);
    const auto found = std::find(words.begin(), words.end(), word);
    if (found != words.end())
        return static_cast<Word>(found - words.begin());
    row.refuse(column, say(std::move(unknown)).with("text", excerpt(word)));
    return Word{};
}

bool readKiller(RowReader& row) {
    const auto word = row.text("killer");
    if (word != "positive" && word != "sensitive" && word != "neutral")
        row.refuse("killer", say("ingredient.unknown_killer").with("text", excerpt(word)));
    return word == "positive";
}

Grain readGrain(RowReader& row) {
    Grain grain;
    grain.id = row.text("id");
    grain.name = inLanguage(row.text("name"));
    grain.kind = readWord<GrainKind>(row, "kind", grainKinds, "ingredient.unknown_kind");
    for (const auto& number : grainNumbers)
        grain.*number.member = row.number(number.column) * number.scale;
    grain.colour = {row.number("colour_ebc")};
    grain.ownRdf = row.number("own_rdf", -1);
    grain.source = row.text("source");
    row.checkWithin("extract_db_pct", "extract_low_pct", "extract_high_pct");
    row.checkWithin("colour_ebc", "colour_low_ebc", "colour_high_ebc");
    row.checkWithin("diastatic_power_wk", "power_low_wk", "power_high_wk");
    row.checkWithin("lactic_pct", "lactic_low_pct", "lactic_high_pct");
    return grain;
}

Yeast readYeast(RowReader& row) {
    Yeast yeast;
    yeast.id = row.text("id");
    yeast.name = inLanguage(row.text("name"));
    for (const auto& number : yeastNumbers)
        yeast.*number.member = row.number(number.column);
    yeast.pof = row.whole("pof") == 1;
    yeast.killerPositive = readKiller(row);
    yeast.primaryDays = row.whole("primary_days");
    yeast.note = inLanguage(row.remark("note"));
    yeast.source = row.text("source");
    return yeast;
}

Hop readHop(RowReader& row) {
    Hop hop;
    hop.id = row.text("id");
    hop.name = inLanguage(row.text("name"));
    hop.alpha = Share{row.number("alpha_pct") * perCent};
    hop.lostInSixMonths = Share{row.number("lost_in_six_months_pct") * perCent};
    hop.age = Days{row.number("age_years") * daysPerYear};
    hop.storedAt = Celsius{row.number("stored_at_c")};
    hop.packed = readWord<HopPack>(row, "packed", hopPacks, "ingredient.unknown_pack");
    hop.source = row.text("source");
    row.checkWithin("alpha_pct", "alpha_low_pct", "alpha_high_pct");
    return hop;
}

template <class Item> auto findById(std::vector<Item>& items, std::string_view id) {
    return std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
}

template <class Item> void putById(std::vector<Item>& items, Item item) {
    if (const auto known = findById(items, item.id); known != items.end())
        *known = std::move(item);
    else
        items.push_back(std::move(item));
}

template <class Item>
Result<std::vector<Item>> readTable(std::string_view name, std::string_view csv, Item (*read)(RowReader&)) {
    const auto rows = CsvTable::parse(csv);
    if (!rows)
        return fail(rows.error());
    if (auto sound = builtInColumns().check(name, *rows); !sound)
        return fail(sound.error());
    std::vector<Item> items;
    for (std::size_t i = 0; i < rows->rows(); ++i) {
        RowReader row(*rows, i);
        auto item = read(row);
        if (findById(items, item.id) != items.end())
            row.refuse("id", say("quantity.csv_row_twice").with("name", item.id));
        if (row.fault())
            return fail(*row.fault());
        items.push_back(std::move(item));
    }
    return items;
}

/// The item with this id, else a fault that offers the one whose id or name looks most like it.
template <class Item>
Result<Item> lookUp(const std::vector<Item>& items, std::string_view id, std::string_view path, std::string key) {
    std::vector<Known> known;
    for (const auto& item : items) {
        if (item.id == id)
            return item;
        known.push_back({item.id, item.name});
    }
    auto remedy = known.empty() ? say("ingredient.none_known") : offer(id, known);
    return badInput(std::string(path), say(std::move(key)).with("id", excerpt(id)), std::move(remedy));
}

} // namespace

Result<Pantry> Pantry::parse(std::string_view grainsCsv, std::string_view yeastsCsv, std::string_view hopsCsv) {
    auto grains = readTable<Grain>("grains", grainsCsv, readGrain);
    if (!grains)
        return fail(under("/grains", grains.error()));
    auto yeasts = readTable<Yeast>("yeasts", yeastsCsv, readYeast);
    if (!yeasts)
        return fail(under("/yeasts", yeasts.error()));
    auto hops = hopsCsv.empty() ? Result<std::vector<Hop>>() : readTable<Hop>("hops", hopsCsv, readHop);
    if (!hops)
        return fail(under("/hops", hops.error()));
    Pantry pantry;
    pantry.hops_ = std::move(*hops);
    pantry.grains_ = std::move(*grains);
    pantry.yeasts_ = std::move(*yeasts);
    return pantry;
}

Result<Grain> Pantry::grain(std::string_view id, std::string_view path) const {
    return lookUp(grains_, id, path, "ingredient.unknown_grain");
}

Result<Yeast> Pantry::yeast(std::string_view id, std::string_view path) const {
    return lookUp(yeasts_, id, path, "ingredient.unknown_yeast");
}

Result<Hop> Pantry::hop(std::string_view id, std::string_view path) const {
    return lookUp(hops_, id, path, "ingredient.unknown_hop");
}

void Pantry::put(Grain grain) {
    putById(grains_, std::move(grain));
}

void Pantry::put(Yeast yeast) {
    putById(yeasts_, std::move(yeast));
}

void Pantry::put(Hop hop) {
    putById(hops_, std::move(hop));
}

const Pantry& builtInPantry() {
    static const Pantry pantry = Pantry::parse(resources::find("data/grains.csv"), resources::find("data/yeasts.csv"),
                                               resources::find("data/hops.csv"))
                                     .value();
    return pantry;
}

} // namespace staveline::ingredient

// SPDX-License-Identifier: GPL-3.0-or-later
#include "random_books.h"

#include "desk/desk.h"
#include "desk/ledger.h"
#include "facts/codec.h"
#include "ingredient/pantry.h"
#include "tasting/sitting.h"

#include <nlohmann/json.hpp>
#include <random>

namespace staveline::testing {

namespace {

using Entry = nlohmann::ordered_json;
using Numbers = std::vector<std::pair<std::string, std::pair<double, double>>>; ///< field, usual range

/// Draws of its own making: those of the library differ from one machine to the next.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : engine_(seed) {}
    int below(int count) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(count)); }
    bool chance(int percent) { return below(100) < percent; }
    double between(double low, double high) { return low + (high - low) * below(10001) / 10000.0; }
    template <class T> const T& one(const std::vector<T>& of) {
        return of[static_cast<std::size_t>(below(static_cast<int>(of.size())))];
    }

private:
    std::mt19937_64 engine_;
};

const book::Column* columnOf(const std::string& kind, const std::string& name) {
    for (const auto& table : facts::cellarSchema().tables)
        if (table.name == kind)
            for (const auto& column : table.columns)
                if (column.name == name)
                    return &column;
    return nullptr;
}

class Maker {
public:
    Maker(const std::filesystem::path& file, std::uint64_t seed, Day today)
        : dice_(seed), lotDice_(seed + 1), today_(today), desk_(*desk::Desk::create(file, [today] { return today; })) {}

    RandomBook fill() {
        const bool odd = dice_.chance(33);
        record("equipment", Entry{{"on", dayAt(-900)}}, kitNumbers);
        for (int i = 0; i <= dice_.below(2) + (odd ? 2 : 0); ++i)
            addVessel(dice_.one(names) + " " + std::to_string(i));
        for (const auto& vessel : book_.vessels)
            if (!(odd && vessel == book_.vessels.back() && dice_.chance(50)))
                live(vessel, odd);
        if (odd)
            leave(book_.vessels.front());
        addOwn(); // last: what was drawn before stays as it was
        return book_;
    }

private:
    [[nodiscard]] std::string dayAt(int days) const { return isoDay(today_ + std::chrono::days(days)); }

    /// At an end of the field, as the trade has it, or anywhere in it.
    double number(const std::string& kind, const std::string& field, std::pair<double, double> usual) {
        const book::Column* column = columnOf(kind, field);
        const double low = column && column->low ? *column->low : usual.first;
        const double high = column && column->high ? *column->high : usual.second;
        const int how = dice_.below(10);
        if (how < 6)
            return dice_.between(usual.first, usual.second);
        return how == 6 ? low : how == 7 ? high : dice_.between(low, high);
    }
    bool record(const std::string& kind, Entry fact, const Numbers& numbers = {}) {
        fact["kind"] = kind;
        for (const auto& [field, usual] : numbers)
            if (!fact.contains(field) && dice_.chance(60))
                fact[field] = number(kind, field, usual);
        const auto read = facts::parseRecords(fact.dump());
        const bool done = read && desk_->record(*read);
        ++(done ? book_.taken : book_.refused);
        return done;
    }
    void addVessel(const std::string& name) {
        Entry vessel{{"name", name},
                     {"capacity_l", number("vessel", "capacity_l", {20, 600})},
                     {"material", dice_.one(materials)}};
        for (const char* permission : {"temperature_can_change", "draw_may_move", "interval_may_move"})
            vessel[permission] = dice_.chance(50);
        if (record("vessel", vessel, vesselNumbers))
            book_.vessels.push_back(name);
    }
    /// Malts of one's own, some with a later state, and what was counted of them.
    void addOwn() {
        for (int i = dice_.below(3); i > 0; --i) {
            const std::string id = "own_" + std::to_string(i);
            Entry own{{"ingredient", id},
                      {"name", dice_.one(names) + " malt " + std::to_string(i)},
                      {"like", dice_.one(ingredient::builtInPantry().grains()).id}};
            for (const int on : {-800, -5})
                if (dice_.chance(70))
                    record("own_grain", with(own, {{"on", dayAt(on)}}), ownNumbers);
            record("availability", Entry{{"on", dayAt(-4)}, {"item", id}}, {{"mass_kg", {0, 80}}});
        }
        record("own_hop", Entry{{"ingredient", "own_hop"}, {"name", "=leaf"}, {"like", "hops_low"}, {"on", dayAt(-9)}},
               {{"alpha_share", {.01, .1}}, {"stored_c", {-18, 20}}});
    }
    Entry recipe(const std::string& kind) {
        Entry grist = Entry::array();
        int left = 20;
        for (int parts = 1 + dice_.below(4); parts > 0 && left > 0; --parts) {
            const int share = parts == 1 ? left : 1 + dice_.below(left);
            const auto& grains = ingredient::builtInPantry().grains();
            grist.push_back({{"grain", parts == 1 ? "pilsner" : dice_.one(grains).id},
                             {"share", share / 20.0},
                             {"late", parts > 1 && dice_.chance(20)}});
            left -= share;
        }
        Entry mash = Entry::array();
        for (int rests = 1 + dice_.below(3); rests > 0; --rests)
            mash.push_back({{"temperature_c", dice_.between(35, 80)}, {"minutes", dice_.between(1, 120)}});
        Entry all{{"grist", grist},
                  {"mash", mash},
                  {"yeast", dice_.one(ingredient::builtInPantry().yeasts()).id},
                  {"path", dice_.chance(50) ? "jump" : "ramp"}};
        for (const auto& [field, usual] : recipeNumbers)
            if (dice_.chance(40))
                all[field] = number(kind, field, usual);
        return all;
    }
    void live(const std::string& vessel, bool odd) {
        const int cycles = dice_.below(4), length = 60 + dice_.below(300);
        const int start = -cycles * length - dice_.below(length);
        Entry named{{"vessel", vessel}, {"on", dayAt(start)}};
        if (dice_.chance(80))
            record("opening", with(named, {{"volume_l", held(vessel) * dice_.between(.3, 1)}}), openingNumbers);
        else
            record("refill", with(named, {{"volume_l", held(vessel)}}));
        record("target", named, targetNumbers);
        record("culture", with(named, {{"diastatic", dice_.chance(30)}}), {{"hop_tolerance_ibu", {5, 30}}});
        if (dice_.chance(70))
            record("base_recipe", with(recipe("base_recipe"), named));
        for (int cycle = 0; cycle < cycles; ++cycle)
            turn(vessel, start + cycle * length, length, odd);
        evidence(vessel, -dice_.below(30));
        if (dice_.chance(15))
            record("choice", Entry{{"vessel", vessel}, {"on", dayAt(0)}, {"proposal", dice_.below(3)}});
        for (const char* lever : {"bitterness", "draw", "sacch_temperature"})
            if (dice_.chance(10))
                record("lock",
                       Entry{{"vessel", vessel}, {"on", dayAt(-1)}, {"lever", lever}, {"value", dice_.below(80)}});
    }
    void turn(const std::string& vessel, int from, int length, bool odd) {
        evidence(vessel, from + length / 2);
        const std::string brew = "Brew " + std::to_string(++brews_);
        const bool brewed = dice_.chance(60) &&
                            record("brew", with(recipe("brew"), {{"name", brew}, {"on", dayAt(from + length - 14)}}),
                                   {{"measured_original_gravity_sg", {1.03, 1.07}},
                                    {"measured_final_gravity_sg", {1.0, 1.02}},
                                    {"into_fermenter_l", {20, 300}}});
        const double litres = held(vessel) * dice_.between(.01, 1);
        Entry at{{"vessel", vessel}, {"on", dayAt(from + length - 1)}, {"volume_l", litres}};
        const std::string lot = "Lot " + std::to_string(brews_);
        if (record("draw_off", lotDice_.chance(60) ? with(at, {{"lot", lot}}) : at, measured))
            drawn(lot, vessel, from + length, litres);
        if (brewed)
            at["brew"] = brew;
        else if (odd && dice_.chance(50))
            at["from"] = dice_.one(book_.vessels);
        record(dice_.chance(80) ? "refill" : "top_up", at, {{"age_d", {10, 400}}});
    }
    /// What becomes of drawn beer; where the draw had no lot nothing of it is taken.
    void drawn(const std::string& lot, const std::string& vessel, int from, double litres) {
        const Entry at{{"lot", lot}, {"on", dayAt(std::min(0, from + lotDice_.below(60)))}};
        const Entry later{{"lot", lot}, {"on", dayAt(std::min(0, from + 60 + lotDice_.below(60)))}};
        const std::string to = lotDice_.chance(50) ? "Joined" : lot + " B";
        if (lotDice_.chance(40))
            record(
                "lot_addition",
                with(at, {{"what", "fruit"}, {"ingredient", "plum"}, {"mass_kg", litres * lotDice_.between(0, .7)}}));
        if (lotDice_.chance(30))
            record("lot_addition", with(at, {{"what", "acid"}, {"mass_kg", litres * lotDice_.between(0, .005)}}));
        if (lotDice_.chance(60))
            record("lot_reading", with(at, {{"gravity_sg", lotDice_.between(.996, 1.02)}, {"ph", 3.4}}));
        if (lotDice_.chance(60))
            record("lot_move", with(later, {{"volume_l", litres * lotDice_.between(0, 1.1)}, {"to", to}}));
        if (lotDice_.chance(60))
            record("packaging", with(later, {{"name", lot + " bottled"},
                                             {"size_ml", 750},
                                             {"count", 1 + lotDice_.below(60)},
                                             {"override_reason", lotDice_.chance(80) ? "on trial" : ""}}));
        if (lotDice_.chance(50))
            record("opened", Entry{{"packaging", lot + " bottled"}, {"on", dayAt(0)}, {"count", lotDice_.below(4)}});
        if (lotDice_.chance(30))
            record("top_up", Entry{{"vessel", vessel},
                                   {"on", dayAt(0)},
                                   {"volume_l", litres * lotDice_.between(0, .2)},
                                   {"lot", lot}});
    }
    void evidence(const std::string& vessel, int on) {
        Entry at{{"vessel", vessel}, {"on", dayAt(on)}};
        record("sample", at, measured);
        record("reading", at, measured);
        if (dice_.chance(20))
            record("dip", with(at, {{"volume_l", held(vessel) * dice_.between(0, 1)}}));
        if (dice_.chance(20))
            record("event", dice_.chance(50) ? with(at, {{"what", "racked"}, {"volume_l", held(vessel) * .01}})
                                             : with(at, {{"what", "tasters"}}));
        Entry scores = Entry::array();
        for (const char* taster : {"Rook", "Wren"})
            for (const auto& line : tasting::builtInSheet().attributes)
                if (dice_.chance(50))
                    scores.push_back({{"taster", taster},
                                      {"attribute", line.code},
                                      {"cold", dice_.below(21) / 2.0},
                                      {"cellar", dice_.below(21) / 2.0}});
        Entry faults = Entry::array();
        if (dice_.chance(15))
            faults.push_back({{"fault", dice_.one(tasting::builtInSheet().faults).id}, {"severity", dice_.below(4)}});
        record("sitting", with(at, {{"scores", scores}, {"faults", faults}}));
    }
    /// An emptied vessel, and one that is given up.
    void leave(const std::string& vessel) {
        if (dice_.chance(50))
            record("dip", Entry{{"vessel", vessel}, {"on", dayAt(0)}, {"volume_l", 0}});
        if (dice_.chance(50))
            record("retire", Entry{{"vessel", dice_.one(book_.vessels)}, {"on", dayAt(0)}, {"reason", "leaks"}});
    }
    [[nodiscard]] double held(const std::string& vessel) const {
        const auto cellar = desk_->cellar();
        for (const auto& each : *cellar)
            if (each.name == vessel)
                return each.facts.capacity.l;
        return 1;
    }
    static Entry with(Entry base, const Entry& more) {
        base.update(more);
        return base;
    }

    const std::vector<std::string> names = {"Plover", "Knot", "Caf\u00e9 \u201c5\u201d", "=1+1"};
    const std::vector<std::string> materials = {"oak used", "oak new", "steel", "plastic", "glass"};
    const Numbers kitNumbers = {{"mash_tun_l", {50, 600}},
                                {"kettle_l", {50, 600}},
                                {"fermenter_l", {50, 600}},
                                {"mash_and_lauter_efficiency", {.6, .9}},
                                {"boil_off_l_h", {2, 30}},
                                {"kettle_loss_l", {0, 10}},
                                {"heating_rate_c_min", {.3, 2}},
                                {"margin_share", {0, .1}},
                                {"cooling_shrinkage", {0, .05}},
                                {"grain_absorption_l_kg", {.6, 1.2}},
                                {"fermenter_loss_share", {0, .1}},
                                {"transfer_loss_l", {0, 3}},
                                {"tun_water_equivalent_kg", {0, 20}},
                                {"grain_temperature_c", {5, 25}}};
    const Numbers vesselNumbers = {{"temperature_c", {10, 20}},        {"interval_d", {60, 400}},
                                   {"draw_share", {.1, .6}},           {"sample_days_before_draw", {10, 40}},
                                   {"evaporation_per_year", {0, .06}}, {"oxygen_mg_l_year", {1, 30}},
                                   {"culture_held_back", {0, .5}}};
    const Numbers recipeNumbers = {
        {"original_gravity_p", {9, 15}}, {"bitterness_ibu", {0, 25}},        {"boil_min", {30, 90}},
        {"mash_ph", {5.2, 5.6}},         {"liquor_to_grist_l_kg", {2.5, 4}}, {"sugar_share", {0, .1}},
        {"pre_soured_share", {0, .5}},   {"pre_sour_ta_g_l", {3, 9}}};
    const Numbers targetNumbers = {{"acidity", {3, 7}},
                                   {"funk", {2, 6}},
                                   {"body", {2, 6}},
                                   {"acidity_band", {.5, 1}},
                                   {"funk_band", {.5, 1}},
                                   {"body_band", {.5, 1}},
                                   {"bitterness_ceiling_ibu", {8, 30}}};
    const Numbers openingNumbers = {{"age_years", {0, 4}},
                                    {"age_sd_years", {0, 1}},
                                    {"years_running", {0, 10}},
                                    {"usual_interval_d", {60, 400}},
                                    {"usual_draw_share", {.1, .6}}};
    const Numbers ownNumbers = {{"extract_dry_share", {.6, .85}}, {"moisture_share", {.03, .12}},
                                {"colour_ebc", {2, 60}},          {"diastatic_power_wk", {0, 350}},
                                {"fermentable_share", {.3, 1}},   {"lactic_share", {0, .03}}};
    const Numbers measured = {{"gravity_sg", {1.0, 1.012}},
                              {"ph", {3, 4}},
                              {"ta_g_l", {2, 10}},
                              {"temperature_c", {8, 22}},
                              {"ibu", {2, 25}}};
    Dice dice_, lotDice_; // the other one, so that a book without lots is the same
    Day today_;
    std::unique_ptr<desk::Desk> desk_;
    RandomBook book_;
    int brews_ = 0;
};

} // namespace

RandomBook makeRandomBook(const std::filesystem::path& file, std::uint64_t seed, const std::string& today) {
    return Maker(file, seed, *parseDay(today)).fill();
}

} // namespace staveline::testing

// SPDX-License-Identifier: GPL-3.0-or-later
// Writes what each fuzz target begins with, made from the sample cellar: the same files on every machine.
#include "advice/advise.h"
#include "brewing/brew_plan.h"
#include "desk/json.h"
#include "desk/recipe_exchange.h"
#include "facts/note_fields.h"
#include "facts/record_file.h"
#include "facts/table_csv.h"
#include "fuzz/cellar.h"
#include "resources/resources.h"

#include <fmt/core.h>
#include <set>

using namespace staveline;
namespace fs = std::filesystem;

namespace {

class Seeds {
public:
    Seeds(fs::path folder, const char* target) : folder_(std::move(folder) / target) {
        fs::create_directories(folder_);
    }
    void add(const std::string& text) { testing::writeAll(folder_ / fmt::format("{:03}", number_++), text); }

private:
    fs::path folder_;
    int number_ = 0;
};

/// The first of each kind alone, then a few together.
void records(const fs::path& folder) {
    Seeds seeds(folder, "records");
    const auto sample = *facts::sampleCellar(fuzz::today);
    std::set<std::size_t> seen;
    for (const auto& fact : sample)
        if (seen.insert(fact.index()).second)
            seeds.add(facts::writeRecords({fact}));
    seeds.add(facts::writeRecords({sample.begin() + 40, sample.begin() + 48}));
}

void notes(const fs::path& folder) {
    Seeds seeds(folder, "notes");
    for (std::size_t kind = 0; kind < facts::noteKinds().size(); ++kind)
        seeds.add(static_cast<char>(kind) + ("\x01" + facts::noteTemplate(facts::noteKinds()[kind])));
}

void tables(const fs::path& folder, const desk::Desk& cellar) {
    Seeds seeds(folder, "tables");
    const auto exported = cellar.exported();
    fuzz::hold(exported.has_value(), "the sample cellar can be exported");
    for (const auto& file : *exported)
        if (fs::path(file.name).extension() == ".csv")
            seeds.add(file.name + "\n" + file.text.substr(0, file.text.find('\n', file.text.find('\n') + 1) + 1));
    seeds.add("grains.csv\n" + std::string(resources::find("data/grains.csv").substr(0, 2000)));
}

void plans(const fs::path& folder, const desk::Desk& cellar) {
    Seeds seeds(folder, "plan");
    seeds.add(R"(p{"bitterness_ibu": 25, "draw_l": 20})");
    seeds.add(R"(p{"original_gravity_p": 12, "grist": [{"grain": "pilsner", "share": 0.75},
        {"grain": "wheat_malt", "share": 0.25}], "mash": [{"temperature_c": 66, "minutes": 60}], "yeast": "ale_clean"})");
    const auto setting = cellar.setting("Plover");
    const auto plan = cellar.brewPlan("Plover");
    fuzz::hold(setting && plan, "the sample cellar has a plan");
    const desk::RecipeToWrite what{"Seed", {}, setting->recipe, *plan, cellar.kit("Plover").equipment};
    seeds.add("j" + desk::writeRecipe(desk::RecipeFormat::beerJson, what, cellar.pantry()).text);
    seeds.add("x" + desk::writeRecipe(desk::RecipeFormat::beerXml, what, cellar.pantry()).text);
}

/// Each field of the file's head, the beginning of each page, one cut.
void damages(const fs::path& folder) {
    Seeds seeds(folder, "book");
    for (const int place : {0, 16, 18, 19, 21, 24, 28, 32, 36, 40, 52, 56, 60, 68, 92, 96, 100, 103, 105})
        seeds.add({static_cast<char>(place), 0, 0, 0, 1, 1, 0});
    for (int page = 1; page < 24; ++page)
        seeds.add(
            {static_cast<char>(page), 0, 0, 7, static_cast<char>(0xC0 + page % 4), static_cast<char>(page * 11), 0});
    seeds.add({1, 2, 3});
}

} // namespace

int main(int count, char** words) {
    if (count != 2)
        return 2;
    const fs::path folder = words[1];
    const testing::Scratch scratch;
    const auto cellar = fuzz::sampleBook(scratch / "s.cellar");
    records(folder);
    notes(folder);
    tables(folder, *cellar);
    plans(folder, *cellar);
    damages(folder);
    return 0;
}

// SPDX-License-Identifier: GPL-3.0-or-later
// What others planned: a plan file as `predict --plan` takes it, and recipes in BeerJSON and BeerXML by the first byte.
// What is read is predicted, with numbers or with words.
#include "advice/advise.h"
#include "advice/board.h"
#include "desk/json.h"
#include "desk/recipe_exchange.h"
#include "fuzz/cellar.h"

#include <cmath>

using namespace staveline;

namespace {

struct Asked {
    testing::Scratch scratch;
    std::unique_ptr<desk::Desk> cellar = fuzz::sampleBook(scratch / "s.cellar");
    advice::Setting base = *cellar->leftAlone("Plover");
};

void predicted(const Asked& asked, const advice::Setting& setting) {
    const auto trial = asked.cellar->predict("Plover", setting);
    if (trial)
        fuzz::hold(desk::toJson(*trial).find("null") == std::string::npos, "a prediction has its numbers");
    else
        fuzz::hold(!render(trial.error().cause).empty(), "a fault has a cause");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const Asked asked;
    if (size == 0)
        return 0;
    const auto text = fuzz::textOf(data + 1, size - 1);
    if (data[0] == 'p') {
        if (const auto setting = desk::parseSetting(text, asked.base))
            predicted(asked, *setting);
        return 0;
    }
    const auto format = data[0] == 'x' ? desk::RecipeFormat::beerXml : desk::RecipeFormat::beerJson;
    const auto read = desk::readRecipe(format, text, asked.cellar->pantry(), asked.base.recipe);
    if (!read) {
        fuzz::hold(!render(read.error().cause).empty(), "a fault has a cause");
        return 0;
    }
    auto setting = asked.base;
    setting.recipe = read->recipe;
    predicted(asked, setting);
    return 0;
}

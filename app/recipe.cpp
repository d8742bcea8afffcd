// SPDX-License-Identifier: GPL-3.0-or-later
// The refill recipe to and from other programs.
#include "advice/advise.h"
#include "app/commands.h"
#include "app/on_book.h"
#include "desk/advice.h"
#include "desk/brew.h"
#include "desk/json.h"
#include "desk/recipe_exchange.h"
#include "desk/whole_file.h"
#include "quantity/language.h"

#include <filesystem>
#include <fmt/core.h>
#include <nlohmann/json.hpp>

namespace staveline::app {
namespace {

using desk::Desk;

Result<desk::RecipeFormat> formatOf(const std::string& file, const char* path) {
    if (const auto format = desk::recipeFormatOf(std::filesystem::path(file).extension().string()))
        return *format;
    return badInput(path, say("app.unknown_ending").with("file", file),
                    say("app.unknown_ending.remedy").with("endings", fmt::format(".json {} .xml", inLanguage("or"))));
}

/// What could not be carried, beside the answer.
int answer(const std::string& words, const char* name, const std::string& value, const std::vector<Message>& left,
           const Options& options) {
    if (options.json) {
        nlohmann::ordered_json json{{name, value}, {"left", nlohmann::ordered_json::array()}};
        for (const auto& message : left)
            json["left"].push_back(render(message, unitsOf(options)));
        fmt::print("{}\n", json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace));
        return 0;
    }
    fmt::print("{}\n", words);
    for (const auto& message : left)
        fmt::print("  {}\n", render(message, unitsOf(options)));
    return 0;
}

int writeOut(const Desk& desk, const Options& options) {
    const auto format = formatOf(options.out, "/out");
    const auto setting = desk.setting(options.vessel);
    const auto plan = desk.brewPlan(options.vessel);
    if (!format || !setting || !plan)
        return complain(!format ? format.error() : !setting ? setting.error() : plan.error(), options);
    if (plan->cannot)
        return complain(*plan->cannot, options);
    const auto written = desk::writeRecipe(
        *format, {desk.nextBrewName(), {}, setting->recipe, *plan, desk.kit(options.vessel).equipment}, desk.pantry());
    if (auto stored = desk::writeWhole(options.out, written.text); !stored) {
        stored.error().path = "/out";
        return complain(stored.error(), options);
    }
    return answer(render(say("app.written").with("file", options.out)), "file", options.out, written.left, options);
}

/// The usual recipe from today on, or the plan for the coming refill with its promise.
Result<void> take(Desk& desk, const brewing::Recipe& recipe, const Options& options) {
    if (options.recipeAs != "plan") {
        facts::BaseRecipeFact usual;
        usual.vessel = options.vessel;
        usual.on = desk.today();
        usual.recipe = recipe;
        const auto name = say("app.recipe_edit")
                              .with("vessel", options.vessel)
                              .with("file", std::filesystem::path(options.recipeIn).filename().string());
        return desk.setToday(facts::Fact{usual}, {render(name), ""}).map([](const auto&) {});
    }
    const auto job = desk.adviceJob({options.vessel, {}, {}, false, true});
    auto setting = desk.setting(options.vessel);
    if (!job || !setting)
        return fail(job ? setting.error() : job.error());
    setting->recipe = recipe;
    return desk.adopt(*job, *setting).map([](const auto&) {});
}

int readIn(Desk& desk, const std::string& text, desk::RecipeFormat format, const Options& options) {
    const auto setting = desk.setting(options.vessel);
    if (!setting)
        return complain(setting.error(), options);
    const auto read = desk::readRecipe(format, text, desk.pantry(), setting->recipe);
    if (!read)
        return complain(read.error(), options);
    if (auto taken = take(desk, read->recipe, options); !taken)
        return complain(taken.error(), options);
    const char* key = options.recipeAs == "plan" ? "app.recipe_as_plan" : "app.recipe_as_usual";
    return answer(render(say(key).with("name", read->name).with("vessel", options.vessel)), "recipe", read->name,
                  read->left, options);
}

} // namespace

int recipe(const Options& options) {
    if (options.out.empty() == options.recipeIn.empty())
        return complain({FaultKind::input, "/out", say("app.recipe_where"), say("app.recipe_where.remedy")}, options);
    if (!options.out.empty())
        return onBook(options, book::OpenMode::readOnly, [&](Desk& desk) { return writeOut(desk, options); });
    const auto format = formatOf(options.recipeIn, "/in");
    const auto text = format ? readFile(options.recipeIn) : Result<std::string>(fail(format.error()));
    if (!text)
        return complain(text.error(), options);
    return onBook(options, book::OpenMode::readWrite,
                  [&](Desk& desk) { return readIn(desk, *text, *format, options); });
}

} // namespace staveline::app

// SPDX-License-Identifier: GPL-3.0-or-later
// One figure for one thing on the command line: words, the answer for machines and the brew sheet say the same tenths,
// of the sample cellar and of books that no brewer would keep.
#include "program.h"
#include "random_books.h"

#include "quantity/text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>
#include <regex>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr std::array dimensions = {"acidity", "funk", "body"};

std::string tenths(const Json& number) {
    return fmt::format("{:.1f}", number.get<double>());
}
std::string band(const Json& told) {
    return fmt::format("{} ({} to {})", tenths(told["value"]), tenths(told["low_80"]), tenths(told["high_80"]));
}

struct Compared : Terminal {
    int plans = 0, sheets = 0;

    Answer ask(const std::string& text) { return run("--today 2026-06-01 " + text); }
    void vessel(const std::string& book, const std::string& name) {
        const std::string of = " " + book + " --vessel '" + name + "' ";
        const Answer machine = ask("advise" + of + "--json"), words = ask("advise" + of);
        CHECK(machine.status == words.status);
        if (machine.status != 0)
            return;
        const Json json = Json::parse(machine.out);
        estimates(json, words.out);
        predictions(json, words.out);
        if (!json["proposals"].empty())
            sheet(of, json["proposals"][0]);
    }
    static void estimates(const Json& json, const std::string& words) {
        for (const char* d : dimensions) {
            const Json& told = json["verdicts"][d];
            const std::string line =
                fmt::format("  {:8} {} ±{}", d, tenths(told["estimate"]), tenths(told["plus_minus_80"]));
            INFO(line);
            // What all three wait for is said once, by the answer below them.
            const bool fault = told["verdict"] == "fault_first";
            CHECK(words.find(line + (fault ? "\n" : "  ")) != std::string::npos);
        }
    }
    /// Of all plans in their order.
    void predictions(const Json& json, const std::string& words) {
        Json all = json["proposals"];
        all.push_back(json["leave_it_alone"]);
        if (json.contains("usual_recipe"))
            all.push_back(json["usual_recipe"]);
        static const std::regex line("\n    (acidity|funk|body) +next draw ([^,\n]*)(, if kept up ([^\n]*))?");
        std::sregex_iterator at(words.begin(), words.end(), line);
        for (const Json& plan : all) {
            ++plans;
            for (const char* d : dimensions) {
                REQUIRE(at != std::sregex_iterator());
                CHECK((*at)[1] == d);
                CHECK((*at)[2] == band(plan["next_draw"][d]));
                if ((*at)[3].matched)
                    CHECK((*at)[4] == band(plan["if_kept_up"][d]));
                ++at;
            }
        }
        CHECK(at == std::sregex_iterator());
    }
    void sheet(const std::string& of, const Json& plan) {
        if (ask("advise" + of + "--choose 1").status != 0)
            return; // brewed already
        if (ask("sheet" + of + "--out s.txt").status != 0)
            return; // a kit it cannot be brewed on
        const std::string paper = readAll(scratch / "s.txt");
        ++sheets;
        for (const char* d : dimensions) {
            const Json& told = plan["next_draw"][d];
            const std::regex row(fmt::format("\n{} +{} +{} to {} ", d, tenths(told["value"]), tenths(told["low_80"]),
                                             tenths(told["high_80"])));
            INFO(paper << "\n" << told);
            CHECK(std::regex_search(paper, row));
        }
        INFO(paper << plan["draw_l"] << " drawn, " << plan["refill_l"] << " refilled");
        CHECK(std::regex_search(paper, litres("Drawn", plan["draw_l"])));
        CHECK(std::regex_search(paper, litres("Refilled", plan["refill_l"])));
    }
    static std::regex litres(const char* what, const Json& volume) {
        std::string shown = staveline::show(staveline::Litres{volume.get<double>()});
        shown.replace(shown.find('.') == std::string::npos ? shown.size() : shown.find('.'), 0, "\\");
        return std::regex("\n" + std::string(what) + " +" + shown + " ");
    }
};

} // namespace

TEST_CASE_METHOD(Compared, "the sample cellar tells one figure for one thing", "[app][figures]") {
    expect("--today 2026-06-01 new s.cellar --sample");
    const Json status = Json::parse(ask("status s.cellar --json").out);
    const std::string words = ask("status s.cellar").out;
    for (const Json& each : status) {
        CHECK(words.find(staveline::show(staveline::Age{each["mean_age_d"].get<double>()}) + " old on average") !=
              std::string::npos);
        vessel("s.cellar", each["vessel"]);
    }
    CHECK(plans > 5);
    CHECK(sheets == 1);
}

TEST_CASE_METHOD(Compared, "random books tell one figure for one thing", "[app][figures]") {
    for (const std::uint64_t seed : {20260701U, 20260702U, 20260703U, 20260704U, 20260705U}) {
        INFO("seed " << seed);
        std::filesystem::remove(scratch / "r.cellar");
        for (const auto& name : makeRandomBook(scratch / "r.cellar", seed, "2026-06-01").vessels)
            vessel("r.cellar", name);
    }
    CHECK(plans > 10);
    CHECK(sheets > 0);
}

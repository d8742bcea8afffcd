// SPDX-License-Identifier: GPL-3.0-or-later
// Random legal books through every command: nothing ends in an abort, no number is none, scores stay on their scale.
// STAVELINE_SOAK sets how many books (10000 is the long run), STAVELINE_SEED where to begin.
#include "program.h"
#include "random_books.h"

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <regex>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

constexpr const char* day = "2026-06-01";

std::uint64_t option(const char* name, std::uint64_t otherwise) {
    const char* text = std::getenv(name);
    return text ? std::strtoull(text, nullptr, 10) : otherwise;
}

/// Where a score lies outside 0..10; differences and errors stand under other keys.
void strayScores(const Json& json, const std::string& path, std::vector<std::string>& stray) {
    static const std::regex score(
        ".*/((acidity|funk|body)/(value|low_80|high_80|estimate|promised|tasted)|scores/(acidity|funk|body)|"
        "(acidity|funk|body)(_expected|_forecast)?)");
    static const std::regex difference(".*/(moves|loss|offsets)/.*");
    if (json.is_number() && std::regex_match(path, score) && !std::regex_match(path, difference) &&
        !(json.get<double>() >= 0 && json.get<double>() <= 10))
        stray.push_back(path + " = " + json.dump());
    if (json.is_structured())
        for (const auto& [key, value] : json.items())
            strayScores(value, path + "/" + key, stray);
}

struct Soaked : Terminal {
    int answered = 0;

    void command(const std::string& text, bool json = false) {
        const Answer answer = run("--today " + std::string(day) + " " + text);
        INFO(text << "\n" << answer.err);
        CHECK(answer.status <= 2); // not possible and bad input are answers, damage and a signal are none
        static const std::regex none("(^|[^A-Za-z])(nan|inf|null)([^A-Za-z]|$)");
        CHECK_FALSE(std::regex_search(answer.out + answer.err, none));
        answered += answer.status == 0 ? 1 : 0;
        if (!json)
            return;
        REQUIRE(Json::accept(answer.out));
        std::vector<std::string> stray;
        strayScores(Json::parse(answer.out), "", stray);
        for (const auto& each : stray)
            FAIL_CHECK(each);
    }
    void everyCommand(const std::string& vessel) {
        const std::string of = " b.cellar --vessel '" + vessel + "' ";
        command("status b.cellar");
        command("status b.cellar --json", true);
        command("advise" + of);
        command("advise" + of + "--json --levers 4", true);
        command("predict" + of + "--json --plan plan.json", true);
        command("history" + of + "--csv");
        command("history" + of + "--json", true);
        command("lots b.cellar");
        for (const char* paper : {"-", "s.html", "s.csv", "s.txt"})
            command("sheet" + of + "--out " + paper);
        command("advise" + of + "--choose 1 --json", true);
        command("advise" + of + "--choose 0");
        command("undo b.cellar");
        command("redo b.cellar");
        command("check b.cellar");
    }
};

} // namespace

TEST_CASE_METHOD(Soaked, "random legal books go through every command", "[app][soak]") {
    const auto books = option("STAVELINE_SOAK", 12), first = option("STAVELINE_SEED", 20260601);
    write("plan.json", R"({"bitterness_ibu": 25, "draw_l": 20})");
    int taken = 0, refused = 0;
    for (std::uint64_t seed = first; seed < first + books; ++seed) {
        INFO("STAVELINE_SOAK=1 STAVELINE_SEED=" << seed);
        std::filesystem::remove(scratch / "b.cellar");
        const RandomBook book = makeRandomBook(scratch / "b.cellar", seed, day);
        taken += book.taken;
        refused += book.refused;
        for (const auto& vessel : book.vessels)
            everyCommand(vessel);
    }
    CHECK(taken > refused);                        // the books are no empty ones
    CHECK(answered > 9 * static_cast<int>(books)); // nor are the answers refusals
}

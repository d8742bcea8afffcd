// SPDX-License-Identifier: GPL-3.0-or-later
#include "ingredient/nearest.h"
#include "quantity/text.h"

#include "support/property.h"

#include <algorithm>

namespace staveline {
using namespace ingredient;
namespace {

std::string shortWord() {
    return *rc::gen::resize(8, rc::gen::container<std::string>(rc::gen::inRange('a', 'e')));
}

std::string nearestId(std::string_view typed, const std::vector<Known>& known) {
    const Known* meant = nearest(typed, known);
    return meant ? std::string(meant->id) : std::string();
}

} // namespace

TEST_CASE("Edit distance counts single slips") {
    CHECK(editDistance("pilsner", "pilsner") == 0);
    CHECK(editDistance("pilsner", "pilser") == 1);
    CHECK(editDistance("pilsner", "pilsnerr") == 1);
    CHECK(editDistance("pilsner", "pilzner") == 1);
    CHECK(editDistance("pilsner", "plisner") == 1); // two letters swapped
    CHECK(editDistance("Pilsner", "pILSNER") == 0);
    CHECK(editDistance("", "rye") == 3);
    CHECK(editDistance("rye", "") == 3);
    CHECK(editDistance("", "") == 0);
}

TEST_CASE("Edit distance of the textbook pair") {
    // kitten -> sitting: two replacements, one insertion (Wagner & Fischer 1974, J. ACM 21:168; pair from memory).
    CHECK(editDistance("kitten", "sitting") == 3);
}

TEST_CASE("Edit distance is symmetric and bounded by the longer word") {
    CHECK_PROPERTY("symmetry and bounds", [] {
        const auto a = shortWord(), b = shortWord();
        const auto d = editDistance(a, b);
        RC_ASSERT(d == editDistance(b, a));
        RC_ASSERT(d <= std::max(a.size(), b.size()));
        RC_ASSERT(d >= std::max(a.size(), b.size()) - std::min(a.size(), b.size()));
        RC_ASSERT((d == 0) == (a == b));
    });
    CHECK_PROPERTY("one letter more is one edit more, at most", [] {
        const auto a = shortWord(), b = shortWord();
        const auto d = editDistance(a, b), longer = editDistance(a + 'x', b);
        RC_ASSERT(longer <= d + 1);
        RC_ASSERT(d <= longer + 1);
    });
}

TEST_CASE("A pasted page is compared by its start") {
    CHECK(editDistance(std::string(100'000, 'a'), std::string(100'000, 'a')) == 0);
    CHECK(editDistance(std::string(100'000, 'a'), "b") <= 64);
}

TEST_CASE("The nearest of the known ids and names is offered") {
    const std::vector<Known> known = {
        {"pilsner", "Pilsner malt"}, {"wheat_malt", "wheat malt"}, {"flaked_wheat", "flaked wheat"}};
    CHECK(nearestId("pilsener", known) == "pilsner");
    CHECK(nearestId("Pilsner Malt", known) == "pilsner");
    CHECK(nearestId("wheat malt", known) == "wheat_malt");
    CHECK(nearestId("wheatmalt", known) == "wheat_malt");
    CHECK(nearestId("flaked-wheat", known) == "flaked_wheat");
    CHECK(nearestId("wheat", known) == "wheat_malt");
    CHECK(nearestId("FLAKED", known) == "flaked_wheat");
    CHECK(nearestId("Peated", {{"a", "x"}, {"peated", "y"}, {"pitted", "z"}}) == "peated");
}

TEST_CASE("What is far from every known word is told what there is") {
    const std::vector<Known> known = {{"Plover", "Plover"}, {"Knot", "Knot"}};
    for (const char* far : {"", "x", "Dunlin", "Brew", "a page pasted by mistake"}) {
        INFO(far);
        CHECK(nearest(far, known) == nullptr);
        CHECK(render(offer(far, known)) == "Use one of: Plover, Knot.");
    }
    CHECK(render(offer("Plovr", known)) == "Did you mean \"Plover\"?");
    CHECK(render(offer("knott", known)) == "Did you mean \"Knot\"?");
}

} // namespace staveline

// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/origin.h"
#include "support/catch.h"

#include <set>

using namespace staveline;

TEST_CASE("Every origin comes back from its link, and no two share one") {
    std::set<std::string> links;
    std::size_t count = 0;
    const auto check = [&](const Origin& origin) {
        const auto link = linkOf(origin);
        INFO(link);
        CHECK(origin);
        CHECK(originFrom(link) == origin);
        links.insert(link);
        ++count;
    };
    for (auto kind = OriginKind::now; kind < OriginKind::moveEffect;
         kind = static_cast<OriginKind>(static_cast<int>(kind) + 1))
        for (auto d : allDimensions)
            check({kind, d});
    for (auto d : allDimensions)
        for (std::size_t move : {0U, 1U, 12U})
            check(Origin::ofMove(move, d));
    for (auto kind :
         {OriginKind::moveFrom, OriginKind::moveTo, OriginKind::vesselBitterness, OriginKind::aloneBitterness})
        check(kind);
    check(Origin::ofParameter("acidityExponent"));
    check(Origin::ofParameter("now/body"));
    CHECK(links.size() == count);
}

TEST_CASE("Links say the path of a number") {
    CHECK(linkOf({OriginKind::predictionNext, Dimension::acidity}) == "prediction/next/acidity");
    CHECK(linkOf(Origin::ofMove(1, Dimension::funk)) == "moves/1/next/funk");
    CHECK(linkOf(OriginKind::moveTo) == "move/to");
    CHECK(linkOf(OriginKind::aloneBitterness) == "alone/bitterness");
    CHECK(linkOf(Origin::ofParameter("xyz")) == "parameter/xyz");
}

TEST_CASE("What is no link leads nowhere") {
    CHECK_FALSE(Origin());
    CHECK(linkOf({}).empty());
    for (const char* text :
         {"", "/", "acidity", "/acidity", "now", "now/", "now/moon", "moves/next/acidity", "moves/1x/next/acidity",
          "moves/-1/next/acidity", "move/to/acidity", "move/sideways", "model/settled/acidity", "ledger/3"}) {
        INFO(text);
        CHECK_FALSE(originFrom(text));
    }
}

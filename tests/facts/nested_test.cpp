// SPDX-License-Identifier: GPL-3.0-or-later
// Lists kept as text in a book: a hostile one costs no more than its length.
#include "facts/field_kinds.h"
#include "support/catch.h"

using namespace staveline;
using namespace staveline::facts;

TEST_CASE("brackets without end in a stored list blow no stack", "[facts][bad]") {
    constexpr int levels = 1000000;
    const std::string deep = std::string(levels, '[') + std::string(levels, ']');
    for (const std::string& text :
         {deep, "[{\"grain\":" + deep + "}]", "[{\"late\":" + deep + ",\"grain\":\"pilsner\",\"share\":1}]"}) {
        std::vector<brewing::GristPart> grist{{"pilsner", Share{1}, false}};
        readNested(text, grist); // damaged: as it was
        CHECK(grist.size() == 1);
        CHECK(grist.front().grain == "pilsner");
    }
    std::vector<brewing::GristPart> words; // brackets in a text are no levels
    readNested(R"([{"grain": "\"[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[", "share": 1}])", words);
    CHECK(words.size() == 1);
}

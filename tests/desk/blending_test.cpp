// SPDX-License-Identifier: GPL-3.0-or-later
// Beers of vessels as they stand, blended to a target: measured values first, else estimates.
#include "desk/blending.h"
#include "desk/support.h"

#include <nlohmann/json.hpp>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::testing;
using finishing::Trait;

namespace {

struct BlendFixture : DeskFixture {
    BlendFixture() {
        addPlover();
        record(R"([{"kind": "vessel", "name": "Rail", "capacity_l": 120, "material": "steel"},
                   {"kind": "opening", "vessel": "Rail", "on": "2025-09-01", "volume_l": 100, "age_years": 0.5,
                    "ta_g_l": 3.4, "ph": 3.7}])");
    }
    void read(const std::string& vessel, const std::string& what) {
        record(R"({"kind": "reading", "vessel": ")" + vessel + R"(", "on": "2026-03-01", )" + what + "}");
    }
    static BlendRequest both(std::optional<Litres> litres = {}) {
        BlendRequest request;
        request.from = {{"Plover", {}, {}}, {"Rail", {}, {}}};
        request.litres = litres;
        return request;
    }
};

} // namespace

TEST_CASE_METHOD(BlendFixture, "what was measured is taken as it is, what was not is estimated", "[desk][blend]") {
    read("Plover", R"("ta_g_l": 7.9, "ph": 3.21)");
    BlendRequest request = both(Litres{60});
    request.aims[Trait::ta] = 5.5;
    const auto before = desk->revision();
    const auto answer = desk->blend(request);
    REQUIRE(answer);
    CHECK(desk->revision() == before);
    const auto& plover = answer->sources[0];
    CHECK(*traitOf(plover, Trait::ta) == Approx(7.9).margin(1e-6));
    CHECK(*traitOf(plover, Trait::ph) == Approx(3.21).margin(1e-6));
    CHECK(plover.measured[Trait::ta]);
    CHECK(plover.measured[Trait::ph]);
    CHECK_FALSE(plover.measured[Trait::alcohol]);
    const auto& rail = answer->sources[1];
    CHECK(rail.sd[Trait::alcohol] > 0);
    CHECK(rail.sd[Trait::funk] > 0);
    CHECK(answer->blend.litres == Litres{60});
    CHECK(answer->blend.reached());
}

TEST_CASE_METHOD(BlendFixture, "what is estimated has a wider error than what was measured", "[desk][blend]") {
    record(R"([{"kind": "vessel", "name": "Tern", "capacity_l": 60, "material": "steel"},
               {"kind": "opening", "vessel": "Tern", "on": "2025-09-01", "volume_l": 50, "age_years": 0.5}])");
    read("Plover", R"("ta_g_l": 7.9, "ph": 3.21, "ibu": 6)");
    BlendRequest request = both();
    request.from[1].vessel = "Tern";
    request.aims[Trait::ta] = 6;
    const auto answer = desk->blend(request);
    REQUIRE(answer);
    const auto &known = answer->sources[0], &guessed = answer->sources[1];
    for (const auto& [trait, measured, estimated] : {std::tuple{Trait::ta, .3, 1.0},
                                                     {Trait::ph, .05, .15},
                                                     {Trait::bitterness, 1.5, 3.0},
                                                     {Trait::alcohol, .5, .5}}) {
        CHECK(known.sd[trait] == Approx(measured));
        CHECK(guessed.sd[trait] == Approx(estimated));
    }
    CHECK(*traitOf(known, Trait::bitterness) == Approx(6).margin(.1)); // a day ago
}

TEST_CASE_METHOD(BlendFixture, "a source alone has the scores the estimates tell", "[desk][blend]") {
    BlendRequest request = both();
    request.aims[Trait::acidity] = 4;
    const auto answer = desk->blend(request);
    REQUIRE(answer);
    for (const auto& source : answer->sources) {
        const auto estimates = desk->estimates(source.name);
        REQUIRE(estimates);
        for (const auto& [trait, d] : {std::pair{Trait::acidity, Dimension::acidity},
                                       {Trait::funk, Dimension::funk},
                                       {Trait::body, Dimension::body}})
            CHECK(*traitOf(source, trait) == Approx(estimates->combined[d].mean).margin(1e-9));
    }
}

TEST_CASE_METHOD(BlendFixture, "the answer as JSON has litres that add up", "[desk][blend]") {
    BlendRequest request = both(Litres{50});
    request.aims[Trait::alcohol] = 5.5;
    const auto json = nlohmann::json::parse(toJson(desk->blend(request).value()));
    double litres = 0;
    for (const auto& part : json["parts"])
        litres += part["takes_l"].get<double>();
    CHECK(litres == Approx(50));
    CHECK(json["litres"] == 50);
    CHECK(json["blend"]["alcohol"]["aim"] == 5.5);
    CHECK(json["blend"]["ph"]["aim"].is_null());
    CHECK_FALSE(json["blend"].contains("colour"));
    CHECK_FALSE(json["cautions"].empty());
}

TEST_CASE_METHOD(BlendFixture, "what no vessel can give is refused at its source", "[desk][blend]") {
    BlendRequest request = both();
    request.aims[Trait::ta] = 5;
    request.from[1].litres = Litres{500};
    CHECK(desk->blend(request).error().path == "/from/1");
    request.from[1].litres = Litres{-1};
    CHECK(desk->blend(request).error().path == "/from/1");
    request.from[1] = {"Plover", {}, {}};
    CHECK(desk->blend(request).error().path == "/from/1");
    request.from[1] = {"Nobody", {}, {}};
    CHECK(desk->blend(request).error().path == "/from/1");
    record(R"({"kind": "vessel", "name": "Wren", "capacity_l": 50})");
    request.from[1] = {"Wren", {}, {}};
    CHECK(desk->blend(request).error().path == "/from/1");
    request = both();
    CHECK(desk->blend(request).error().path == "/aims");
}

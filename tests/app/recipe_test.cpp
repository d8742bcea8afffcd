// SPDX-License-Identifier: GPL-3.0-or-later
// Recipes to and from other programs. BeerJSON: the published schema of @beerjson/beerjson 1.0.2 with
// python3-jsonschema, where STAVELINE_BEERJSON names its folder (.ci/run does; else that test is skipped). BeerXML 1.0:
// xmllint for the form, and the list of required fields of its specification.
#include "program.h"

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <regex>

using namespace staveline::testing;
using Json = nlohmann::json;

namespace {

struct Recipes : Terminal {
    std::string vessel;
    Recipes() {
        expect("--today 2026-06-01 new s.cellar --sample");
        vessel = "Plover";
    }
    Answer recipe(const std::string& more) {
        return run("--today 2026-06-01 recipe s.cellar --vessel '" + vessel + "' " + more);
    }
    /// Words the same, numbers to the digits that a file holds of a gravity.
    static void sameButForRounding(const std::string& one, const std::string& other) {
        static const std::regex number("-?[0-9]+(\\.[0-9]+)?");
        CHECK(std::regex_replace(one, number, "#") == std::regex_replace(other, number, "#"));
        std::sregex_iterator a(one.begin(), one.end(), number), b(other.begin(), other.end(), number), end;
        for (; a != end && b != end; ++a, ++b)
            CHECK(std::stod(a->str()) == Approx(std::stod(b->str())).epsilon(1e-3));
        CHECK(a == b);
    }
    bool shell(const std::string& command) {
        return std::system(("cd '" + scratch.path().string() + "' && " + command).c_str()) == 0;
    }
};

} // namespace

TEST_CASE_METHOD(Recipes, "a recipe is valid BeerJSON of the published schema", "[app][recipe]") {
    const char* schema = std::getenv("STAVELINE_BEERJSON");
    if (!schema) {
        WARN("skipped: STAVELINE_BEERJSON names no folder with the schema");
        return;
    }
    write("check.py", R"(
import json, os, sys
from jsonschema import Draft7Validator, RefResolver
folder = sys.argv[1]
store = {}
for name in os.listdir(folder):
    schema = json.load(open(os.path.join(folder, name)))
    store[schema.get('$id', name)] = schema
beer = json.load(open(os.path.join(folder, 'beer.json')))
validator = Draft7Validator(beer, resolver=RefResolver.from_schema(beer, store=store))
errors = [e.message for e in validator.iter_errors(json.load(open(sys.argv[2])))]
print(errors)
sys.exit(1 if errors else 0)
)");
    for (const char* each : {"Plover", "Knot", "Dunlin"}) {
        vessel = each;
        INFO(each);
        REQUIRE(recipe("--out r.json").status == 0);
        CHECK(shell("/usr/bin/python3 check.py '" + std::string(schema) + "' r.json"));
        Json file = Json::parse(readAll(scratch / "r.json"));
        file["beerjson"]["recipes"][0].erase("batch_size"); // the check can fail
        write("bad.json", file.dump());
        CHECK_FALSE(shell("/usr/bin/python3 check.py '" + std::string(schema) + "' bad.json >/dev/null"));
    }
}

TEST_CASE_METHOD(Recipes, "a recipe is well-formed BeerXML with all that is required", "[app][recipe]") {
    REQUIRE(recipe("--out r.xml").status == 0);
    CHECK(shell("xmllint --noout r.xml"));
    write("check.py", R"(
import sys, xml.etree.ElementTree as tree
need = {'RECIPE': 'NAME VERSION TYPE STYLE BREWER BATCH_SIZE BOIL_SIZE BOIL_TIME EFFICIENCY HOPS FERMENTABLES MISCS '
                  'YEASTS WATERS MASH',
        'HOP': 'NAME VERSION ALPHA AMOUNT USE TIME', 'FERMENTABLE': 'NAME VERSION TYPE AMOUNT YIELD COLOR',
        'YEAST': 'NAME VERSION TYPE FORM AMOUNT', 'MASH': 'NAME VERSION GRAIN_TEMP MASH_STEPS',
        'MASH_STEP': 'NAME VERSION TYPE STEP_TIME STEP_TEMP',
        'STYLE': 'NAME CATEGORY VERSION CATEGORY_NUMBER STYLE_LETTER STYLE_GUIDE TYPE OG_MIN OG_MAX FG_MIN FG_MAX '
                 'IBU_MIN IBU_MAX COLOR_MIN COLOR_MAX'}
words = {('RECIPE', 'TYPE'): ['Extract', 'Partial Mash', 'All Grain'], ('HOP', 'USE'): ['Boil'],
         ('FERMENTABLE', 'TYPE'): ['Grain', 'Sugar', 'Extract', 'Dry Extract', 'Adjunct'],
         ('YEAST', 'TYPE'): ['Ale', 'Lager', 'Wheat', 'Wine', 'Champagne'],
         ('YEAST', 'FORM'): ['Liquid', 'Dry', 'Slant', 'Culture'],
         ('MASH_STEP', 'TYPE'): ['Infusion', 'Temperature', 'Decoction'],
         ('STYLE', 'TYPE'): ['Lager', 'Ale', 'Mead', 'Wheat', 'Mixed', 'Cider']}
root = tree.parse('r.xml').getroot()
assert root.tag == 'RECIPES'
seen = set()
for node in root.iter():
    assert not node.attrib and node.tag.isupper()
    for tag in need.get(node.tag, '').split():
        assert node.find(tag) is not None, (node.tag, tag)
    if node.tag in need:
        seen.add(node.tag)
        assert node.findtext('VERSION') == '1'
    for (tag, inner), allowed in words.items():
        if node.tag == tag:
            assert node.findtext(inner) in allowed, (tag, inner, node.findtext(inner))
    if node.tag == 'MASH_STEP' and node.findtext('TYPE') == 'Infusion':
        float(node.findtext('INFUSE_AMOUNT'))
assert seen == set(need), seen
)");
    CHECK(shell("/usr/bin/python3 check.py"));
}

TEST_CASE_METHOD(Recipes, "a recipe comes back from what was written", "[app][recipe]") {
    for (const char* file : {"r.json", "r.xml"}) {
        INFO(file);
        const auto out = recipe(std::string("--json --out ") + file);
        REQUIRE(out.status == 0);
        CHECK(Json::parse(out.out)["left"].size() >= 2); // vessel and culture are never in it
        const auto in = recipe(std::string("--json --in ") + file);
        REQUIRE(in.status == 0);
        CHECK(Json::parse(in.out)["left"].empty()); // all of it is known
        const std::string again = std::string("again") + (file[2] == 'j' ? ".json" : ".xml");
        REQUIRE(recipe("--out " + again).status == 0);
        sameButForRounding(readAll(scratch / again), readAll(scratch / file));
        CHECK(run("--today 2026-06-01 undo s.cellar").out.find(file) != std::string::npos);
    }
}

TEST_CASE_METHOD(Recipes, "a foreign recipe becomes the plan, and says what it could not take", "[app][recipe]") {
    write("f.json", R"({"beerjson": {"version": 1.0, "recipes": [{"name": "Dusk", "type": "all grain", "author": "Teal",
      "batch_size": {"unit": "gal", "value": 30}, "efficiency": {"brewhouse": {"unit": "%", "value": 72}},
      "boil": {"boil_time": {"unit": "hr", "value": 1}},
      "original_gravity": {"unit": "sg", "value": 1.050}, "ibu_estimate": {"method": "Tinseth"},
      "ingredients": {
       "fermentable_additions": [
        {"name": "Pilsner malt", "type": "grain", "amount": {"unit": "lb", "value": 44.092452},
         "color": {"unit": "Lovi", "value": 1.8}, "yield": {"fine_grind": {"unit": "%", "value": 80}}},
        {"name": "Moonlight malt", "type": "grain", "grain_group": "caramel", "amount": {"unit": "kg", "value": 5},
         "color": {"unit": "EBC", "value": 120}, "yield": {"fine_grind": {"unit": "%", "value": 75}}}],
       "hop_additions": [{"name": "Leaf", "alpha_acid": {"unit": "%", "value": 4}, "amount": {"unit": "oz", "value": 2},
         "timing": {"time": {"unit": "min", "value": 60}, "use": "add_to_boil"}},
        {"name": "Late leaf", "alpha_acid": {"unit": "%", "value": 4}, "amount": {"unit": "oz", "value": 2},
         "timing": {"use": "add_to_fermentation"}}],
       "miscellaneous_additions": [{"name": "coriander"}],
       "culture_additions": [{"name": "House brett", "type": "brett", "form": "liquid",
         "amount": {"unit": "pkg", "value": 1}}]},
      "mash": {"name": "m", "grain_temperature": {"unit": "C", "value": 18}, "mash_steps": [
        {"name": "a", "type": "infusion", "step_temperature": {"unit": "F", "value": 149},
         "step_time": {"unit": "min", "value": 60}},
        {"name": "b", "type": "sparge", "step_temperature": {"unit": "C", "value": 76},
         "step_time": {"unit": "min", "value": 10}}]}}]}})");
    const auto in = recipe("--in f.json --as plan");
    INFO(in.out << in.err);
    REQUIRE(in.status == 0);
    for (const char* words : {"Dusk is the plan for the coming refill of Plover.", "Moonlight malt is taken as caramel",
                              "Late leaf is left out", "coriander is left out", "House brett is left out",
                              "A step at 76 \u00b0C is left out", "The file says no yeast"})
        CHECK(in.out.find(words) != std::string::npos);
    REQUIRE(recipe("--out r.json").status == 0);
    const Json made = Json::parse(readAll(scratch / "r.json"))["beerjson"]["recipes"][0];
    CHECK(made["mash"]["mash_steps"][0]["step_temperature"]["value"].get<double>() == Approx(65));
    const Json& grist = made["ingredients"]["fermentable_additions"];
    REQUIRE(grist.size() == 2);
    CHECK(grist[0]["amount"]["value"].get<double>() / grist[1]["amount"]["value"].get<double>() ==
          Approx(4).epsilon(1e-3));
    CHECK(made["original_gravity"]["value"].get<double>() == Approx(12.39).margin(.02)); // Plato of 1.050, ASBC table
}

TEST_CASE_METHOD(Recipes, "what is no recipe is refused and nothing is stored", "[app][recipe]") {
    const auto before = readAll(scratch / "s.cellar");
    write("a.json", "{\"beerjson\": {\"version\": 1.0}}");
    write("b.xml", "<RECIPES><RECIPE>");
    write("c.xml", "<RECIPES></RECIPES>");
    write("d.xml", "<RECIPES><RECIPE><NAME>x</NAME></RECIPE></RECIPES>");
    write("e.json", "[");
    for (const char* file : {"a.json", "b.xml", "c.xml", "d.xml", "e.json", "f.txt", "nowhere.json"}) {
        INFO(file);
        const auto answer = recipe(std::string("--in ") + file);
        CHECK(answer.status >= 2);
        CHECK_FALSE(answer.err.empty());
    }
    CHECK(recipe("").status == 2);
    CHECK(recipe("--out x.json --in a.json").status == 2);
    CHECK(recipe("--out x.beer").status == 2);
    CHECK(readAll(scratch / "s.cellar") == before);
}

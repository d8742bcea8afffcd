// SPDX-License-Identifier: GPL-3.0-or-later
// Every row of the list of facts and of the table of entries is complete.
#include "facts/codec.h"
#include "facts/record_file.h"
#include "quantity/text.h"
#include "support/catch.h"
#include "vessel/materials.h"

#include <algorithm>
#include <set>

using namespace staveline;
using namespace staveline::facts;
using namespace staveline::vessel;

namespace {

template <class F> constexpr bool mayBeNamed = requires(F f) {
    f.lot;
}
|| requires(F f) {
    f.packaging;
};

bool hasTable(std::string_view name) {
    const auto& tables = cellarSchema().tables;
    return std::any_of(tables.begin(), tables.end(), [&](const auto& table) { return table.name == name; });
}

} // namespace

TEST_CASE("each kind of fact has a word of its own, a table where it is stored, and the name of its edit", "[facts]") {
    std::set<std::string_view> words;
    forEachFact([&]<class F>(std::type_identity<F>) {
        INFO(kindOf<F>);
        CHECK(words.insert(kindOf<F>).second);
        CHECK(hasTable(tableOf<F>) == factTraits<F>.stored());
        CHECK(builtInTexts().has("desk.edit." + std::string(kindOf<F>)));
        if (perVessel<F> || mayBeNamed<F>)
            CHECK(builtInTexts().has("desk.kind." + std::string(kindOf<F>))); // in a page of the vessel, or a fault
        CHECK(traitsOf(Fact{F{}}).kind == kindOf<F>);
        CHECK(writeRecords({Fact{F{}}}).find("\"" + std::string(kindOf<F>) + "\"") != std::string::npos);
    });
    CHECK(words.size() == std::variant_size_v<Fact>);
    CHECK(cellarSchema().tables.size() ==
          words.size() - 4 + 2); // no vessel_edit, retire, bring_back, sitting_use; grain and yeast beside
}

TEST_CASE("each kind of entry is a fact of its vessel with a form and a word on the screen", "[facts]") {
    for (const EntryTraits& entry : entryKinds) {
        INFO(entry.word);
        int facts = 0;
        withEntry(entry.kind, [&]<class F>(std::type_identity<F>) {
            ++facts;
            CHECK(kindOf<F> == entry.word);
            CHECK(perVessel<F>);
            CHECK(factTraits<F>.form == Form::flat);
            CHECK(factTraits<F>.amendable());
        });
        CHECK(facts == 1);
        CHECK(builtInTexts().has("ui.entry." + std::string(entry.word)));
        CHECK(builtInTexts().has("desk.line." + std::string(entry.word)));
        CHECK(entry.rank >= 0);
    }
}

TEST_CASE("every word of a material has its row in the table of materials", "[facts]") {
    const auto known = materialNames();
    CHECK(known.size() == factWords::materials.size());
    for (const auto word : factWords::materials)
        CHECK(std::count(known.begin(), known.end(), word) == 1);
    CHECK(wordOf(Material::oakUsed) == "oak used");
    CHECK(wordOf(VesselForm::bucket) == "bucket");
    CHECK(wordOf(Brettanomyces::none) == "none");
}

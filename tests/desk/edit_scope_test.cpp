// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit touched is kept with it as text; what that text does not say is read anew.
#include "support/catch.h"
#include "support/property.h"

#include "desk/edit_scope.h"

using namespace staveline;
using namespace staveline::desk;

TEST_CASE("what an edit touched comes back as it was kept", "[desk][undo]") {
    CHECK(toText({{3, 7}, true, false}) == "3,7,shared");
    CHECK(toText({{}, true, false}) == "shared");
    CHECK(toText({{3}, true, true}) == "*");
    CHECK_PROPERTY("there and back", [] {
        EditScope scope;
        for (const auto id : *rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 100000)))
            scope.vessels.insert(id);
        scope.shared = *rc::gen::arbitrary<bool>();
        RC_PRE(scope.shared || !scope.vessels.empty());
        RC_ASSERT(editScopeFrom(toText(scope)) == scope);
    });
}

TEST_CASE("what cannot be read of it means everything", "[desk][undo]") {
    for (const char* text : {"", "*", "x", "3,", "3,x", "3,*,shared", "3 7", "99999999999999999999"}) {
        INFO(text);
        CHECK(editScopeFrom(text) == EditScope{{}, false, true});
    }
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/json.h"
#include "facts/record_file.h"

namespace staveline {

Result<Setting> parseSetting(std::string_view text, const Setting& base) {
    auto plan = parsePlan(text, {base.recipe, base.draw, base.interval, base.temperature});
    if (!plan)
        return fail(plan.error());
    return Setting{std::move(plan->recipe), plan->draw, plan->interval, plan->temperature};
}

} // namespace staveline

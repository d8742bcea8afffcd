// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/json.h"

#include "advice/advise.h"
#include "facts/record_file.h"

namespace staveline::desk {

Result<advice::Setting> parseSetting(std::string_view text, const advice::Setting& base) {
    auto plan = facts::parsePlan(text, {base.recipe, base.draw, base.interval, base.temperature});
    if (!plan)
        return fail(plan.error());
    return advice::Setting{std::move(plan->recipe), plan->draw, plan->interval, plan->temperature};
}

} // namespace staveline::desk

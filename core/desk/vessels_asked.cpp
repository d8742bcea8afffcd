// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/vessels_asked.h"

namespace staveline::desk {

Result<std::vector<facts::VesselName>> vesselsAsked(const Desk& desk, const facts::VesselName& name) {
    if (!name.empty())
        return std::vector<facts::VesselName>{name};
    const auto all = desk.vessels();
    if (!all)
        return fail(all.error());
    std::vector<facts::VesselName> names;
    for (const facts::VesselFact& vessel : *all)
        if (!vessel.retired)
            names.push_back(vessel.name);
    return names;
}

} // namespace staveline::desk

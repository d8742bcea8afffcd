// SPDX-License-Identifier: GPL-3.0-or-later
#include "advice/cautions.h"

#include <algorithm>

namespace staveline::advice {
namespace {

bool says(const std::vector<Message>& cautions, const std::string& key) {
    return std::any_of(cautions.begin(), cautions.end(), [&](const Message& other) { return other.key == key; });
}

} // namespace

std::vector<Message> cautionsOf(const Proposal& proposal) {
    std::vector<Message> all;
    const auto take = [&](const std::vector<Message>& cautions) {
        for (const Message& caution : cautions)
            if (!says(all, caution.key))
                all.push_back(caution);
    };
    for (const Move& move : proposal.moves)
        take(move.cautions);
    take(proposal.cautions);
    return all;
}

std::vector<Message> addedCautions(const Proposal& proposal, const Proposal& leaveAlone) {
    auto added = cautionsOf(proposal);
    const auto anyway = cautionsOf(leaveAlone);
    std::erase_if(added, [&](const Message& caution) { return says(anyway, caution.key); });
    return added;
}

} // namespace staveline::advice

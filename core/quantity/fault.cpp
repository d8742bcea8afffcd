// SPDX-License-Identifier: GPL-3.0-or-later
#include "quantity/fault.h"

#include <utility>

namespace staveline {

Fault::Fault() = default;
Fault::Fault(FaultKind what, std::string where, Message why, Message help)
    : kind(what), path(std::move(where)), cause(std::move(why)), remedy(std::move(help)) {}
Fault::Fault(const Fault& other) = default;
Fault::Fault(Fault&& other) noexcept = default;
Fault& Fault::operator=(const Fault& other) = default;
Fault& Fault::operator=(Fault&& other) noexcept = default;
Fault::~Fault() = default;
bool Fault::operator==(const Fault& other) const = default;

tl::unexpected<Fault> fail(Fault fault) {
    return tl::unexpected<Fault>(std::move(fault));
}

tl::unexpected<Fault> badInput(std::string path, Message cause, Message remedy) {
    return fail({FaultKind::input, std::move(path), std::move(cause), std::move(remedy)});
}

Fault under(std::string prefix, Fault fault) {
    fault.path = std::move(prefix) + fault.path;
    return fault;
}

} // namespace staveline

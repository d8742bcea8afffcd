// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace staveline::desk {

/// A stored fact with what it takes to amend or remove it.
template <class F> struct Filed {
    std::int64_t id = 0;
    F fact;
};

} // namespace staveline::desk

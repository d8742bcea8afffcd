// SPDX-License-Identifier: GPL-3.0-or-later
// What assistive technology is told our own widgets are.
#pragma once

namespace staveline::ui {

/// Once per program; later calls do nothing.
void installAccessibleRoles();

} // namespace staveline::ui

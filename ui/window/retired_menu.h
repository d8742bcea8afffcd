// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/present/session.h"

#include <functional>

class QMenu;

namespace staveline::ui {

/// The vessels out of use, which stand in no list: choosing one brings it back. None: it says so.
void addRetiredVessels(QMenu& menu, std::function<Session*()> session);

} // namespace staveline::ui

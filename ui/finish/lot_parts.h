// SPDX-License-Identifier: GPL-3.0-or-later
// What a lot is: litres and age, what it is like, where it came from, what it was filled into, and what waits.
#pragma once

#include "desk/lots.h"
#include "ui/finish/answer_view.h"
#include "ui/present/session.h"

namespace staveline::ui {

/// First what waits, then part after part.
[[nodiscard]] FinishAnswer answerOf(const desk::LotView& lot, const Session& session);

} // namespace staveline::ui

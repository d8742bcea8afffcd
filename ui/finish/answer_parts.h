// SPDX-License-Identifier: GPL-3.0-or-later
// The desk's answers about finishing in parts: what the guard says first, each caution at the step it belongs to.
#pragma once

#include "desk/blending.h"
#include "desk/packing.h"
#include "ui/finish/answer_view.h"
#include "ui/present/session.h"

namespace staveline::ui {

[[nodiscard]] FinishAnswer answerOf(const desk::PackingAnswer& packing, const Session& session);
[[nodiscard]] FinishAnswer answerOf(const desk::BlendAnswer& blend, const Session& session);

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Tool tips of a part that says something else at each of its places.
#pragma once

#include <QHelpEvent>
#include <QToolTip>
#include <QWidget>

namespace staveline::ui {

/// Answers a tool-tip event with what `words` has at its place; no words: none is shown. False: it is another event.
template <class Words> bool tipAt(QEvent& event, QWidget& part, Words&& words) {
    if (event.type() != QEvent::ToolTip)
        return false;
    const auto& asked = static_cast<const QHelpEvent&>(event);
    QToolTip::showText(asked.globalPos(), words(asked.pos()), &part);
    return true;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Looks over everything visible in a window for what would keep someone from using it.
#pragma once

#include <QStringList>
#include <QWidget>

namespace staveline::testing {

struct AuditReport {
    int focusable = 0, tabStops = 0, labels = 0, contrasts = 0, shortcuts = 0, sheets = 0;
    double worstContrast = 21;
    QStringList findings;

    void add(const AuditReport& other);
    [[nodiscard]] QString summary() const;
};

/// Names and roles, tab chain, clipped words, contrast on pixels, keys and mnemonics, style sheets, sentences said
/// twice.
[[nodiscard]] AuditReport audit(QWidget& window);

/// Contrast of the strongest ink against the commonest colour in a part of a picture; 1 where nothing is drawn.
[[nodiscard]] double inkContrast(const QImage& picture, const QRect& part);

} // namespace staveline::testing

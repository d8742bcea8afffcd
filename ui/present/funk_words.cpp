// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/funk_words.h"

#include "ui/present/score_words.h"

#include <QCoreApplication>
#include <QStringList>

namespace staveline::ui {

QString sidesWords(const tasting::FunkSides& sides) {
    const auto tr = [](const char* source) { return QCoreApplication::translate("Scores", source); };
    const auto words = [](const tasting::DimensionReading& reading) {
        return estimateWords({reading.mean, reading.absoluteSe});
    };
    QStringList all;
    if (sides.spice)
        all << tr("spice %1").arg(words(*sides.spice));
    if (sides.horse)
        all << tr("horse %1").arg(words(*sides.horse));
    return all.join(QStringLiteral(", "));
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/score_line.h"

#include "ui/present/score_words.h"
#include "ui/widgets/theme.h"

namespace staveline::ui {

ScoreLine::ScoreLine(QWidget* parent) : QLabel(parent) {
    setWordWrap(true);
    setType(*this, Type::small);
    setForegroundRole(QPalette::PlaceholderText);
}

void ScoreLine::setBands(const PerDimension<ForecastBands>& bands) {
    QStringList parts;
    for (const Dimension d : allDimensions) {
        next_[d] = bandWords(bands[d].next);
        kept_[d] = bands[d].settled ? bandWords(*bands[d].settled) : QStringLiteral("…");
        QString part = inSentence(nameOf(d)) + QLatin1Char(' ') + next_[d];
        parts << part.replace(QLatin1Char(' '), QChar(QChar::Nbsp)); // a score is not torn from its name
    }
    setText(parts.join(QStringLiteral(", ")));
    setToolTip(sentence());
    setAccessibleName(sentence());
}

QString ScoreLine::sentence() const {
    QStringList parts;
    for (const Dimension d : allDimensions)
        parts << tr("%1 %2 at the next draw, %3 if repeated").arg(inSentence(nameOf(d)), next(d), kept(d));
    return parts.join(QStringLiteral("; "));
}

} // namespace staveline::ui

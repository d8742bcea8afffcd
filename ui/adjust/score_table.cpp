// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/score_table.h"

#include "ui/adjust/verdict_words.h"

#include <QGridLayout>
#include <QLabel>

namespace staveline::ui {

ScoreTable::ScoreTable(QWidget* parent) : QWidget(parent) {
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(lines(*this, .7));
    grid->setVerticalSpacing(0);
    const auto put = [&](const QString& words, int row, int column, bool quiet) {
        auto* label = new QLabel(words, this);
        setType(*label, Type::small);
        if (quiet)
            label->setForegroundRole(QPalette::PlaceholderText);
        grid->addWidget(label, row, column, Qt::AlignTop);
        return label;
    };
    put(tr("next draw"), 0, 1, true);
    put(tr("kept up"), 0, 2, true);
    int row = 1;
    for (const Dimension d : allDimensions) {
        put(nameOf(d).toLower(), row, 0, true);
        next_[d] = put({}, row, 1, false);
        settled_[d] = put({}, row++, 2, false);
    }
    grid->setColumnStretch(2, 1);
}

void ScoreTable::setBands(const PerDimension<ForecastBands>& bands) {
    for (const Dimension d : allDimensions) {
        next_[d]->setText(bandWords(bands[d].next));
        settled_[d]->setText(bands[d].settled ? bandWords(*bands[d].settled) : QStringLiteral("…"));
    }
    setAccessibleName(sentence());
}

QString ScoreTable::next(Dimension dimension) const {
    return next_[dimension]->text();
}
QString ScoreTable::kept(Dimension dimension) const {
    return settled_[dimension]->text();
}

QString ScoreTable::sentence() const {
    QStringList parts;
    for (const Dimension d : allDimensions)
        parts << tr("%1 %2 at the next draw, %3 if kept up").arg(nameOf(d).toLower(), next(d), kept(d));
    return parts.join(QStringLiteral("; "));
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/effect_cell.h"

#include "advice/board.h"
#include "ui/present/verdict_words.h"

#include <QLabel>
#include <QVBoxLayout>

#include <cmath>

namespace staveline::ui {
namespace {

constexpr double shown = .05;   // less is a matter of rounding
constexpr double keptLines = 2; // while a lever moves, the rows below it stay

} // namespace

EffectCell::EffectCell(QWidget* parent) : QWidget(parent), tasted_(new QLabel(this)), untasted_(new QLabel(this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    tasted_->setObjectName("tasted");
    untasted_->setObjectName("untasted");
    for (QLabel* label : {tasted_, untasted_}) {
        label->setWordWrap(true);
        setType(*label, Type::small);
        column->addWidget(label);
    }
    untasted_->setForegroundRole(QPalette::PlaceholderText);
    column->addStretch(1);
    setMinimumHeight(
        static_cast<int>(std::ceil(keptLines * QFontMetrics(ui::font(font(), Type::small)).lineSpacing())));
    for (QLabel* label : {tasted_, untasted_})
        label->setVisible(false);
}

void EffectCell::say(const QString& tasted, const QString& untasted) {
    if (tasted == tasted_->text() && untasted == untasted_->text())
        return; // a new layout for nothing
    tasted_->setText(tasted);
    tasted_->setVisible(!tasted.isEmpty());
    untasted_->setText(untasted);
    untasted_->setVisible(!untasted.isEmpty());
}

void EffectCell::setPoints(const Scores& points) {
    QStringList tasted, untasted;
    for (const Dimension d : allDimensions) {
        if (std::abs(points[d]) < shown)
            continue;
        // The number stays with its word when the line breaks.
        const QString words = inSentence(nameOf(d)) + QChar(QChar::Nbsp) + changeWords(points[d]);
        (advice::willBeTasted(points[d]) ? tasted : untasted) << words;
    }
    const QString quiet = untasted.join(QStringLiteral(", "));
    say(tasted.join(QStringLiteral(", ")), quiet.isEmpty() ? quiet : tr("%1 (too small to taste)").arg(quiet));
    if (tasted.isEmpty() && untasted.isEmpty())
        say({}, tr("no change"));
}

void EffectCell::showPending() {
    say({}, QStringLiteral("…"));
}
void EffectCell::clear() {
    say({}, {});
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/score_words.h"

#include "advice/on_scale.h"
#include "ui/present/text.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace staveline::ui {
namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Scores", source);
}

/// Tenths that look the same are the same.
bool lopsided(const advice::Band& band) {
    return std::abs((band.high - band.value) - (band.value - band.low)) > .15;
}

} // namespace

QString nameOf(Dimension dimension) {
    switch (dimension) {
    case Dimension::acidity:
        return tr("Acidity");
    case Dimension::funk:
        return tr("Funk");
    case Dimension::body:
        break;
    }
    return tr("Body");
}

QString scoreWords(double score) {
    return qs(show(Points{score}));
}
QString changeWords(double points) {
    return qs(show(SignedPoints{points}));
}

QString bandWords(const advice::Band& predicted) {
    const advice::Band band = advice::onScale(predicted);
    if (!(band.high > band.low))
        return scoreWords(band.value);
    if (lopsided(band))
        return tr("%1 (%2 to %3)").arg(scoreWords(band.value), scoreWords(band.low), scoreWords(band.high));
    return tr("%1 ±%2").arg(scoreWords(band.value), scoreWords((band.high - band.low) / 2));
}

advice::Band bandOf(const tasting::Estimate& estimate) {
    return {estimate.mean, estimate.mean - tasting::z80 * estimate.sd, estimate.mean + tasting::z80 * estimate.sd};
}
QString estimateWords(const tasting::Estimate& estimate) {
    return tr("%1 ±%2").arg(scoreWords(advice::onScale(estimate.mean)), scoreWords(tasting::z80 * estimate.sd));
}

QString sentenceCase(const QString& words) {
    return words.isEmpty() ? words : words.left(1).toUpper() + words.mid(1);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The numbers of a target, each described once.
#include "ui/adjust/target_form.h"

#include "quantity/density.h"

#include <QCoreApplication>

namespace staveline::ui {

using tasting::Target;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Target", source);
}

template <Dimension d> TargetNumber wanted(const char* path, const QString& name) {
    return {path,
            name,
            UnitKind::none,
            0,
            10,
            [](const Target& target) { return target.windows[d].wanted; },
            [](Target& target, double value) { target.windows[d].wanted = value; }};
}
template <Dimension d> TargetNumber band(const char* path, const QString& name) {
    return {path,
            name,
            UnitKind::none,
            .25,
            4,
            [](const Target& target) { return target.windows[d].band; },
            [](Target& target, double value) { target.windows[d].band = value; }};
}
template <Plato Target::*member> TargetNumber gravity(const char* path, const QString& name) {
    return {path,
            name,
            UnitKind::gravity,
            1.02,
            1.12,
            [](const Target& target) { return toGravity(target.*member).sg; },
            [](Target& target, double value) { target.*member = toPlato(SpecificGravity{value}); }};
}
template <PercentVol Target::*member> TargetNumber alcohol(const char* path, const QString& name) {
    return {path,
            name,
            UnitKind::share,
            0,
            .2,
            [](const Target& target) { return (target.*member).pct / 100; },
            [](Target& target, double value) { target.*member = PercentVol{value * 100}; }};
}
TargetNumber ceiling() {
    return {"bitterness_ceiling",
            tr("Bitterness at most"),
            UnitKind::bitterness,
            0,
            100,
            [](const Target& target) { return target.bitternessCeiling.ibu; },
            [](Target& target, double value) { target.bitternessCeiling = Ibu{value}; }};
}

} // namespace

const std::vector<TargetNumber>& targetNumbers() {
    static const std::vector<TargetNumber> all{wanted<Dimension::acidity>("acidity", tr("Acidity, target")),
                                               wanted<Dimension::funk>("funk", tr("Funk, target")),
                                               wanted<Dimension::body>("body", tr("Body, target")),
                                               band<Dimension::acidity>("acidity_band", tr("Acidity, range")),
                                               band<Dimension::funk>("funk_band", tr("Funk, range")),
                                               band<Dimension::body>("body_band", tr("Body, range")),
                                               ceiling(),
                                               gravity<&Target::gravityLow>("gravity_low", tr("Gravity from")),
                                               gravity<&Target::gravityHigh>("gravity_high", tr("Gravity to")),
                                               alcohol<&Target::alcoholLow>("alcohol_low", tr("Alcohol from")),
                                               alcohol<&Target::alcoholHigh>("alcohol_high", tr("Alcohol to"))};
    return all;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// A vessel to its shape and fill, its generations as strata from light (newest, on top) to dark (oldest).
#pragma once

#include "facts/words.h"
#include "quantity/text.h"
#include "vessel/ledger.h"

#include <QWidget>

#include <optional>

class QPainter;

namespace staveline::ui {

struct VesselLook {
    facts::VesselForm shape = facts::VesselForm::cask;
    Litres capacity{225};
    vessel::LedgerState now;
    std::optional<Litres> levelBefore; ///< drawn as a broken line: where the level stood before the entry in hand
};

/// Fits the vessel into `box`, keeping its proportions; lines scale with `lineHeight`.
void paintVessel(QPainter& painter, const QRectF& box, const VesselLook& look, const QPalette& palette,
                 double lineHeight);

struct Stratum {
    double from = 0, to = 0; ///< heights in the unit box, from above to below it
    double age = 0;          ///< 0 new .. 1 old, for the colour
    Share share{0};
    Day on{};
    bool rest = false; ///< the oldest ones together
};
/// From the surface downwards. Generations of less than a hundredth of the drawing are put together.
[[nodiscard]] std::vector<Stratum> strata(const VesselLook& look);

class VesselDrawing : public QWidget {
    Q_OBJECT
public:
    explicit VesselDrawing(QWidget* parent = nullptr);
    void setLook(const VesselLook& look, const DisplayUnits& units);
    [[nodiscard]] const VesselLook& look() const { return look_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintLabelsBeside(QPainter& painter, const QRectF& vessel, bool days) const; ///< else shares alone
    void paintLabelsBelow(QPainter& painter, const QRectF& vessel) const;

    VesselLook look_;
    DisplayUnits units_;
};

/// The drawing in one sentence.
[[nodiscard]] QString describe(const VesselLook& look, const DisplayUnits& units);

} // namespace staveline::ui

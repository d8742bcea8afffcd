// SPDX-License-Identifier: GPL-3.0-or-later
// The one place where stored numbers become shown numbers and back. Stored units never change.
#pragma once

#include "quantity/text.h"
#include "quantity/unit_kind.h"

#include <QString>

#include <optional>

namespace staveline::ui {

class UnitScale {
public:
    UnitScale(UnitKind kind, const DisplayUnits& units);

    [[nodiscard]] QString suffix() const; ///< "L", "°C", "SG"; empty for bare numbers
    [[nodiscard]] double toShown(double stored) const;
    [[nodiscard]] double toStored(double shown) const;
    /// As few decimals as say the same: "60", "15.85", "1.048".
    [[nodiscard]] QString show(double stored) const;
    /// What is shown is specific gravity, where 1048 is a slip for 1.048.
    [[nodiscard]] bool isSpecificGravity() const;

private:
    [[nodiscard]] int fewestDecimals() const;
    [[nodiscard]] int mostDecimals() const;

    UnitKind kind_;
    DisplayUnits units_;
};

} // namespace staveline::ui

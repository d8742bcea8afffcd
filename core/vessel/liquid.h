// SPDX-License-Identifier: GPL-3.0-or-later
// Ages inside one vessel: mean, spread and generations under pouring. Volumes are the ledger's.
#pragma once

#include "quantity/constants.h"
#include "vessel/ledger.h"

#include <deque>

namespace staveline::vessel {

inline constexpr double tinyShare =
    constants::ledger::tinyShare; ///< of the volume; too small for a generation of its own
inline constexpr auto mostGenerations =
    static_cast<std::size_t>(constants::ledger::mostGenerations); ///< older ones are merged

class Liquid {
public:
    struct Pour {
        std::int64_t entry = 0;
        Day on{};
        double age = 0; ///< [d]
        double sd = 0;  ///< of the age [d]
    };

    void clear();
    /// Fresh liquid that makes up `share` (0..1] of the volume after it.
    void pour(const Pour& fresh, double share);

    [[nodiscard]] Days meanAge(Day on) const;
    [[nodiscard]] Days ageSd() const;
    [[nodiscard]] std::vector<Generation> generations() const;

private:
    /// A generation by its birth day, so that nothing changes while days pass.
    struct Layer {
        std::int64_t entry = 0;
        Day on{};
        double weight = 0;   ///< share / scale_
        double birth = 0;    ///< mean, days since 1970
        double variance = 0; ///< d2
    };
    static void absorb(Layer& oldest, const Layer& younger);
    void mergeOldest();

    std::deque<Layer> layers_; ///< oldest first
    double scale_ = 1;         ///< one factor for all layers: a pour costs the same however many there are
    double birth_ = 0;         ///< of the whole: mean, days since 1970
    double variance_ = 0;      ///< of the whole [d2]
};

} // namespace staveline::vessel

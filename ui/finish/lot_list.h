// SPDX-License-Identifier: GPL-3.0-or-later
// The beers there are to finish: that of the vessel in view, then every lot, what is left of it and what waits.
#pragma once

#include "desk/lots.h"
#include "ui/present/session.h"

#include <QListWidget>

namespace staveline::ui {

class LotList : public QListWidget {
    Q_OBJECT
public:
    explicit LotList(Session& session, QWidget* parent = nullptr);
    /// The lots of this vessel come before others; the one chosen stays chosen while it is there.
    void show(const facts::VesselName& vessel, const std::vector<desk::LotView>& lots);
    void choose(const facts::LotName& lot); ///< empty: the beer of the vessel
    [[nodiscard]] facts::LotName chosen() const;

Q_SIGNALS:
    void chose();

private:
    [[nodiscard]] QString wordsOf(const desk::LotView& lot) const;

    Session& session_;
    bool filling_ = false;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The boil as a line of minutes with each hop addition hanging where it goes in.
#pragma once

#include "brewing/brew_plan.h"
#include "quantity/text.h"

#include <QWidget>

namespace staveline::ui {

class BoilTimeline : public QWidget {
    Q_OBJECT
public:
    explicit BoilTimeline(QWidget* parent = nullptr);
    void show(Minutes boil, const std::vector<brewing::WeighedHops>& hops, const DisplayUnits& units);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] double x(Minutes fromStart) const;
    [[nodiscard]] QString words(const brewing::WeighedHops& hops) const;
    Minutes boil_{60};
    std::vector<brewing::WeighedHops> hops_;
    DisplayUnits units_;
};

} // namespace staveline::ui

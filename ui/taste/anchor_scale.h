// SPDX-License-Identifier: GPL-3.0-or-later
// What the scores of the line in hand mean: five anchors on a scale from 0 to 10, and where the score stands.
#pragma once

#include "tasting/sitting.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class AnchorScale : public QWidget {
    Q_OBJECT
public:
    explicit AnchorScale(QWidget* parent = nullptr);
    /// Null: no line is in hand.
    void showLine(const tasting::Attribute* attribute, std::optional<double> score);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QRectF part(std::size_t anchor) const; ///< where an anchor's words stand

    const tasting::Attribute* attribute_ = nullptr;
    std::optional<double> score_;
};

} // namespace staveline::ui

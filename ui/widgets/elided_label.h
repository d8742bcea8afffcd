// SPDX-License-Identifier: GPL-3.0-or-later
// One line of the brewer's own words, as long as they are: where there is no room it is painted with an ellipsis, and
// the tooltip has the whole.
#pragma once

#include <QLabel>

namespace staveline::ui {

class ElidedLabel : public QLabel {
    Q_OBJECT
public:
    explicit ElidedLabel(QWidget* parent = nullptr);
    [[nodiscard]] QSize minimumSizeHint() const override; ///< room for a few letters

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] QString shown() const;
};

} // namespace staveline::ui

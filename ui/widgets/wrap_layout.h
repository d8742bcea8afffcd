// SPDX-License-Identifier: GPL-3.0-or-later
// A row of controls that goes on in the next row where the width ends: with large text nothing is pushed off the
// window.
#pragma once

#include "ui/widgets/parts_layout.h"

#include <vector>

namespace staveline::ui {

struct WrapPart {
    QLayoutItem* item;
    int before; ///< space in front of it
    bool right;
};

class WrapLayout : public PartsLayout<WrapPart> {
    Q_OBJECT
public:
    /// `gap` between the parts and between the rows, in pixels.
    WrapLayout(QWidget* parent, int gap);
    /// What is added from here on stands at the right end of its row.
    void addStretch();
    /// A space in front of what is added next, where both stand in one row.
    void addSpacing(int width);

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] QSize sizeHint() const override; ///< all in one row
    [[nodiscard]] int heightForWidth(int width) const override;
    void setGeometry(const QRect& box) override;

private:
    struct Row {
        std::vector<const WrapPart*> parts;
        int width = 0, height = 0;
    };
    [[nodiscard]] std::vector<Row> rowsIn(int width) const;
    static void place(const Row& row, const QRect& box);

    int gap_, nextSpace_ = 0;
    bool right_ = false;
};

} // namespace staveline::ui

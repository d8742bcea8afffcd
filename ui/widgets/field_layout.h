// SPDX-License-Identifier: GPL-3.0-or-later
// The fields of a form in as many columns of one width as there is room for; a field that needs more takes several.
#pragma once

#include "ui/widgets/parts_layout.h"

#include <utility>

namespace staveline::ui {

struct FieldPart {
    QLayoutItem* item;
    bool whole; ///< a row of its own
};

class FieldLayout : public PartsLayout<FieldPart> {
    Q_OBJECT
public:
    /// `gap` between columns, `rowGap` between rows [pixels].
    FieldLayout(QWidget* parent, int gap, int rowGap);
    /// A field with its caption; `whole`: it has a row of its own.
    void addField(QWidget* field, bool whole);

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] int heightForWidth(int width) const override;
    void setGeometry(const QRect& box) override;

private:
    /// Where each field stands in a box of that width, and how high they are together.
    [[nodiscard]] std::pair<std::vector<QRect>, int> placed(int width) const;
    [[nodiscard]] int narrowest() const;

    int gap_, rowGap_;
};

} // namespace staveline::ui

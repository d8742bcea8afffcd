// SPDX-License-Identifier: GPL-3.0-or-later
// A row of controls that goes on in the next row where the width ends: with large text nothing is pushed off the
// window.
#pragma once

#include <QLayout>

#include <memory>
#include <vector>

namespace staveline::ui {

class WrapLayout : public QLayout {
    Q_OBJECT
public:
    /// `gap` between the parts and between the rows, in pixels.
    WrapLayout(QWidget* parent, int gap);
    ~WrapLayout() override;
    /// What is added from here on stands at the right end of its row.
    void addStretch();
    /// A space in front of what is added next, where both stand in one row.
    void addSpacing(int width);

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] QSize sizeHint() const override;    ///< all in one row
    [[nodiscard]] QSize minimumSize() const override; ///< as wide as the widest
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    void setGeometry(const QRect& box) override;

private:
    struct Part {
        QLayoutItem* item;
        int before; ///< space in front of it
        bool right;
    };
    struct Row {
        std::vector<const Part*> parts;
        int width = 0, height = 0;
    };
    [[nodiscard]] std::vector<Row> rowsIn(int width) const;
    static void place(const Row& row, const QRect& box);

    std::vector<Part> parts_;
    int gap_, nextSpace_ = 0;
    bool right_ = false;
};

} // namespace staveline::ui

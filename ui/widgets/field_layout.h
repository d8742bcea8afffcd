// SPDX-License-Identifier: GPL-3.0-or-later
// The fields of a form in as many columns of one width as there is room for; a field that needs more takes several.
#pragma once

#include <QLayout>

#include <vector>

namespace staveline::ui {

class FieldLayout : public QLayout {
    Q_OBJECT
public:
    /// `gap` between columns, `rowGap` between rows [pixels].
    FieldLayout(QWidget* parent, int gap, int rowGap);
    ~FieldLayout() override;
    /// A field with its caption; `whole`: it has a row of its own.
    void addField(QWidget* field, bool whole);

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSize() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    void setGeometry(const QRect& box) override;

private:
    struct Field {
        QLayoutItem* item;
        bool whole;
    };
    /// Where each field stands in a box of that width, and how high they are together.
    [[nodiscard]] std::pair<std::vector<QRect>, int> placed(int width) const;
    [[nodiscard]] int narrowest() const;

    std::vector<Field> fields_;
    int gap_, rowGap_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The rests of the mash: typed beside the drawing, or moved in it; the same as a table.
#pragma once

#include "ui/brew/binder.h"
#include "ui/brew/mash_chart.h"

class QBoxLayout;
class QHBoxLayout;
class QPushButton;
class QStackedWidget;
class QTableWidget;

namespace staveline::ui {

class RowList;

class MashEditor : public QWidget {
    Q_OBJECT
public:
    /// `above` stands over the rests, beside the drawing.
    MashEditor(Binder& binder, QWidget& above, QWidget* parent = nullptr);
    [[nodiscard]] QSize minimumSizeHint() const override; ///< with the drawing below
    void sync();
    void add(); ///< a rest after the last
    void remove(std::size_t rest);
    void showTable(bool table);
    [[nodiscard]] QTableWidget& table() const { return *table_; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] QWidget* pathField();
    [[nodiscard]] QWidget* phField();
    void fillRow(std::size_t rest, QWidget& row, QHBoxLayout& layout);
    void moveRest(int rest, double celsius, double minutes);
    void fillTable();
    [[nodiscard]] MashLook look() const;
    [[nodiscard]] QString grain(bool late) const;

    Binder& binder_;
    RecipeEditorModel& model_;
    QWidget* left_;
    QBoxLayout* sides_;
    RowList* rows_;
    QPushButton* add_;
    QPushButton* asTable_;
    MashChart* chart_;
    QTableWidget* table_;
    QStackedWidget* stack_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Rows of fields, one for each part of a list in the recipe. They are made anew when their number changes.
#pragma once

#include <QWidget>

#include <functional>
#include <vector>

class QHBoxLayout;
class QLabel;
class QVBoxLayout;

namespace staveline::ui {

class RowList : public QWidget {
    Q_OBJECT
public:
    /// Fills row `index`; fields go into `layout`.
    using Fill = std::function<void(std::size_t index, QWidget& row, QHBoxLayout& layout)>;
    explicit RowList(Fill fill, QWidget* parent = nullptr);
    /// True: the rows were made anew, and their fields want to be shown and bound.
    bool sync(std::size_t count);
    [[nodiscard]] std::size_t count() const { return rows_.size(); }
    /// The row that has the focus; none: count().
    [[nodiscard]] std::size_t focused() const;
    /// The first field of a row; the last row when there are fewer.
    void focusRow(std::size_t index);

private:
    void retire(QWidget* row); ///< deleted later: it may be the one that asked

    Fill fill_;
    std::vector<QWidget*> rows_;
    QVBoxLayout* column_;
    QWidget* anchor_; ///< keeps the list's place in the Tab chain
};

/// A field with its words above it.
[[nodiscard]] QWidget* captioned(const QString& caption, QWidget* field, QWidget* buddy, QWidget* parent);
/// Words that recede.
[[nodiscard]] QLabel* quietLabel(const QString& words, QWidget* parent);

} // namespace staveline::ui

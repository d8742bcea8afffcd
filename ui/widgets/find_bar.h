// SPDX-License-Identifier: GPL-3.0-or-later
// A quiet line above a table: words to look for, how many rows have them, the next and the last of these. Out of sight
// until it is asked for; Esc puts it away.
#pragma once

#include <QWidget>

#include <functional>

class QLabel;
class QLineEdit;
class QTableView;
class QToolButton;

namespace staveline::ui {

class FindBar : public QWidget {
    Q_OBJECT
public:
    /// `table` is asked for at each search: a page may have several.
    FindBar(std::function<QTableView&()> table, QWidget* parent = nullptr);
    void open();       ///< with the words of last time, ready to be typed over
    void step(int by); ///< to the next row found, or the one before, around the ends; opens the line first
    void refresh();    ///< the table has other rows
    [[nodiscard]] QString words() const; ///< what it says was found

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void search(); ///< from the row in hand on, while it is typed
    void close();
    void tell();
    [[nodiscard]] QList<int> rowsFound() const;
    void select(int row);

    std::function<QTableView&()> table_;
    QLineEdit* edit_;
    QLabel* count_;
    QToolButton* previous_;
    QToolButton* next_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The report on a fault of the program, to be read before it is sent. The book goes with it only where that is chosen.
#pragma once

#include <QDialog>

class QCheckBox;
class QPlainTextEdit;
class QPushButton;

namespace staveline::ui {

class ReportDialog : public QDialog {
    Q_OBJECT
public:
    /// `words`: of program and machine. `hasBook`: one is in hand, and a copy of it can go along.
    ReportDialog(const QString& words, bool hasBook, QWidget* parent = nullptr);
    void add(const QString& words); ///< what the check found
    [[nodiscard]] QString words() const;
    [[nodiscard]] bool withBook() const;
    [[nodiscard]] QCheckBox& book() const { return *book_; }
    [[nodiscard]] QPushButton& save() const { return *save_; }

Q_SIGNALS:
    void saveAsked();

private:
    QPlainTextEdit* text_;
    QCheckBox* book_;
    QPushButton* save_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// A civil day as "2026-03-02", read back in words. Up and Down move a day, Page Up and Page Down a month.
#pragma once

#include "quantity/day.h"
#include "ui/widgets/field_message.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;

namespace staveline::ui {

class DateField : public QWidget {
    Q_OBJECT
public:
    explicit DateField(Day today, QWidget* parent = nullptr);
    void setToday(Day today);
    void setDay(Day day);
    /// Else it may be empty, and is until a day is set.
    void setRequired(bool required);
    /// A day, or nothing where none is required.
    [[nodiscard]] bool usable() const;
    /// Empty while what is typed is no day.
    [[nodiscard]] std::optional<Day> day() const { return day_; }
    void showFault(const Fault& fault);
    void recheck();
    void setName(const QString& name);
    [[nodiscard]] QLineEdit* edit() const { return edit_; }
    [[nodiscard]] QString words() const; ///< of the message shown

Q_SIGNALS:
    void edited();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void read();
    void step(int days, int months);
    void sayBack();

    Day today_;
    std::optional<Day> day_;
    bool required_ = true;
    QLineEdit* edit_;
    QLabel* back_;
    HungMessage message_;
};

/// The same day `months` later, or the last of that month.
[[nodiscard]] Day addMonths(Day day, int months);

} // namespace staveline::ui

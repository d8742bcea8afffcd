// SPDX-License-Identifier: GPL-3.0-or-later
// A number with its unit. '.' and ',' are both decimal marks, there are no group separators, the wheel does nothing,
// and the stored value changes only when someone types: switching units rewrites the text, never the value.
#pragma once

#include "quantity/parse.h"
#include "ui/present/unit_scale.h"
#include "ui/widgets/field_message.h"

#include <QWidget>

class QLabel;
class QLineEdit;

namespace staveline::ui {

class NumberField : public QWidget {
    Q_OBJECT
public:
    /// `range` in stored units; an empty field is a value of its own unless `required`.
    NumberField(UnitKind kind, Range range, bool required, QWidget* parent = nullptr);

    void setUnits(const DisplayUnits& units);
    void setStored(std::optional<double> value);
    /// Empty when nothing is typed, and when what is typed cannot be used (see `fault`).
    [[nodiscard]] std::optional<double> stored() const { return stored_; }
    /// Nothing typed into a required field counts once `complain` was called.
    [[nodiscard]] bool usable() const;
    [[nodiscard]] std::optional<Fault> fault() const { return fault_; }
    /// Shows a fault from elsewhere (the desk's validator) beside this field until the next keystroke.
    void showFault(const Fault& fault);
    void recheck(); ///< what was shown from elsewhere goes; what is typed is judged anew
    void complainIfEmpty();
    void setHint(const QString& hint);
    void setName(const QString& name); ///< for assistive technology
    [[nodiscard]] QLineEdit* edit() const { return edit_; }
    [[nodiscard]] QList<QWidget*> tabStops() const;
    [[nodiscard]] QString words() const; ///< of the message shown

Q_SIGNALS:
    void edited();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void read();
    void takeOffer(); ///< the value a slip clearly meant
    void say(const Fault& fault);
    void clearMessage();
    [[nodiscard]] Result<double> parsed(const QString& typed) const; ///< stored units

    UnitKind kind_;
    Range range_;
    bool required_;
    DisplayUnits units_;
    std::optional<double> stored_;
    std::optional<Fault> fault_;
    std::optional<QString> offer_;
    QLineEdit* edit_;
    QLabel* unit_;
    HungMessage message_;
};

} // namespace staveline::ui

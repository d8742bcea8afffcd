// SPDX-License-Identifier: GPL-3.0-or-later
// What Qt 6.4 tells assistive technology of some controls is not enough to use them; these tell the rest.
#pragma once

#include <QAccessibleWidget>

class QAbstractButton;
class QComboBox;

namespace staveline::ui {

class StepSlider;

/// Its accessible name, else the words of the label beside it.
[[nodiscard]] QString labelOf(const QWidget& widget);
/// Told as one of several of which one is in front, each with its own place in the tab order.
void tellAsOneOfSeveral(QAbstractButton& button);

/// A choice by its label and its value: "Draw it?, not decided". Qt tells only the value on this platform.
class ChoiceAccess : public QAccessibleWidget {
public:
    explicit ChoiceAccess(QComboBox& box);
    [[nodiscard]] QString text(QAccessible::Text kind) const override;
    [[nodiscard]] QAccessible::State state() const override;
    [[nodiscard]] QStringList actionNames() const override;
    void doAction(const QString& name) override;

private:
    [[nodiscard]] QComboBox& box() const;
};

/// A button where "toggle" is a click. Qt's own sets the mark without telling the program that someone asked for it.
class ButtonAccess : public QAccessibleWidget {
public:
    explicit ButtonAccess(QAbstractButton& button);
    [[nodiscard]] QString text(QAccessible::Text kind) const override;
    [[nodiscard]] QAccessible::Role role() const override;
    [[nodiscard]] QAccessible::State state() const override;
    [[nodiscard]] QStringList actionNames() const override;
    void doAction(const QString& name) override;
    [[nodiscard]] QStringList keyBindingsForAction(const QString& name) const override;

private:
    [[nodiscard]] QAbstractButton& button() const;
    [[nodiscard]] QString mainAction() const;
};

/// A slider by the values of its steps, in the units shown.
class SliderAccess : public QAccessibleWidget, public QAccessibleValueInterface {
public:
    explicit SliderAccess(StepSlider& slider);
    [[nodiscard]] void* interface_cast(QAccessible::InterfaceType type) override;
    [[nodiscard]] QString text(QAccessible::Text kind) const override;
    [[nodiscard]] QStringList actionNames() const override;
    void doAction(const QString& name) override;
    [[nodiscard]] QVariant currentValue() const override;
    void setCurrentValue(const QVariant& value) override;
    [[nodiscard]] QVariant maximumValue() const override;
    [[nodiscard]] QVariant minimumValue() const override;
    [[nodiscard]] QVariant minimumStepSize() const override;

private:
    [[nodiscard]] StepSlider& slider() const;
};

} // namespace staveline::ui

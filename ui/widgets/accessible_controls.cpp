// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/accessible_controls.h"

#include "ui/widgets/step_slider.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QMenu>
#include <QPushButton>

namespace staveline::ui {
namespace {

constexpr char oneOfSeveral[] = "oneOfSeveral";

/// "&&" is an ampersand, a single one marks a key.
QString withoutMnemonic(const QString& words) {
    QString plain;
    for (qsizetype i = 0; i < words.size(); ++i) {
        if (words[i] == QLatin1Char('&') && i + 1 < words.size())
            ++i;
        plain += words[i];
    }
    return plain;
}

QMenu* menuOf(const QAbstractButton& button) {
    const auto* push = qobject_cast<const QPushButton*>(&button);
    return push ? push->menu() : nullptr;
}

} // namespace

QString labelOf(const QWidget& widget) {
    if (!widget.accessibleName().isEmpty() || !widget.parentWidget())
        return widget.accessibleName();
    for (const QLabel* label : widget.parentWidget()->findChildren<QLabel*>(Qt::FindDirectChildrenOnly))
        if (label->buddy() == &widget)
            return withoutMnemonic(label->text());
    return {};
}

void tellAsOneOfSeveral(QAbstractButton& button) {
    button.setProperty(oneOfSeveral, true);
}

ChoiceAccess::ChoiceAccess(QComboBox& box) : QAccessibleWidget(&box, QAccessible::ComboBox) {}

QComboBox& ChoiceAccess::box() const {
    return *static_cast<QComboBox*>(widget());
}

QString ChoiceAccess::text(QAccessible::Text kind) const {
    if (kind == QAccessible::Value)
        return box().currentText();
    if (kind != QAccessible::Name)
        return QAccessibleWidget::text(kind);
    QStringList parts = {labelOf(box()), box().currentText()};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

QAccessible::State ChoiceAccess::state() const {
    QAccessible::State state = QAccessibleWidget::state();
    state.expandable = true;
    state.expanded = box().view()->isVisible();
    state.editable = box().isEditable();
    return state;
}

QStringList ChoiceAccess::actionNames() const {
    return QStringList{showMenuAction()} + QAccessibleWidget::actionNames();
}

void ChoiceAccess::doAction(const QString& name) {
    if (name != showMenuAction())
        QAccessibleWidget::doAction(name);
    else if (box().view()->isVisible())
        box().hidePopup();
    else if (box().isEnabled())
        box().showPopup();
}

ButtonAccess::ButtonAccess(QAbstractButton& button) : QAccessibleWidget(&button, QAccessible::PushButton) {}

QAbstractButton& ButtonAccess::button() const {
    return *static_cast<QAbstractButton*>(widget());
}

QString ButtonAccess::text(QAccessible::Text kind) const {
    if (kind == QAccessible::Name && button().accessibleName().isEmpty())
        return withoutMnemonic(button().text());
    return QAccessibleWidget::text(kind);
}

QAccessible::Role ButtonAccess::role() const {
    if (menuOf(button()))
        return QAccessible::ButtonMenu;
    if (!button().isCheckable())
        return QAccessible::PushButton;
    return button().autoExclusive() || button().property(oneOfSeveral).toBool() ? QAccessible::RadioButton
                                                                                : QAccessible::CheckBox;
}

QAccessible::State ButtonAccess::state() const {
    QAccessible::State state = QAccessibleWidget::state();
    state.checkable = button().isCheckable();
    state.checked = button().isChecked();
    state.pressed = button().isDown();
    state.hasPopup = menuOf(button()) != nullptr;
    const auto* push = qobject_cast<const QPushButton*>(&button());
    state.defaultButton = push && push->isDefault();
    return state;
}

QString ButtonAccess::mainAction() const {
    if (menuOf(button()))
        return showMenuAction();
    return button().isCheckable() ? toggleAction() : pressAction();
}

QStringList ButtonAccess::actionNames() const {
    QStringList names = QAccessibleWidget::actionNames();
    if (button().isEnabled())
        names.prepend(mainAction());
    return names;
}

void ButtonAccess::doAction(const QString& name) {
    if (name != mainAction())
        QAccessibleWidget::doAction(name);
    else if (name == showMenuAction()) // the menu runs its own loop: answer first
        QMetaObject::invokeMethod(&button(), "showMenu", Qt::QueuedConnection);
    else // what it starts may take a while or delete the button: answer first
        QMetaObject::invokeMethod(&button(), &QAbstractButton::click, Qt::QueuedConnection);
}

QStringList ButtonAccess::keyBindingsForAction(const QString& name) const {
    const QString key = button().shortcut().toString();
    return name == mainAction() && !key.isEmpty() ? QStringList{key} : QStringList{};
}

SliderAccess::SliderAccess(StepSlider& slider) : QAccessibleWidget(&slider, QAccessible::Slider) {}

StepSlider& SliderAccess::slider() const {
    return *static_cast<StepSlider*>(widget());
}

void* SliderAccess::interface_cast(QAccessible::InterfaceType type) {
    if (type == QAccessible::ValueInterface)
        return static_cast<QAccessibleValueInterface*>(this);
    return QAccessibleWidget::interface_cast(type);
}

QString SliderAccess::text(QAccessible::Text kind) const {
    const bool value = kind == QAccessible::Value || kind == QAccessible::Description;
    return value ? slider().words() : QAccessibleWidget::text(kind);
}

QStringList SliderAccess::actionNames() const {
    return QStringList{increaseAction(), decreaseAction()} + QAccessibleWidget::actionNames();
}

void SliderAccess::doAction(const QString& name) {
    if (name == increaseAction())
        slider().triggerAction(QAbstractSlider::SliderSingleStepAdd);
    else if (name == decreaseAction())
        slider().triggerAction(QAbstractSlider::SliderSingleStepSub);
    else
        QAccessibleWidget::doAction(name);
}

QVariant SliderAccess::currentValue() const {
    return slider().shown(slider().value());
}

void SliderAccess::setCurrentValue(const QVariant& value) {
    if (slider().isEnabled())
        slider().moveTo(value.toDouble());
}

QVariant SliderAccess::maximumValue() const {
    return slider().shown(slider().maximum());
}

QVariant SliderAccess::minimumValue() const {
    return slider().shown(slider().minimum());
}

QVariant SliderAccess::minimumStepSize() const {
    const int low = slider().minimum();
    return low < slider().maximum() ? slider().shown(low + 1) - slider().shown(low) : 0.0;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/accessible_roles.h"

#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/accessible_line.h"
#include "ui/widgets/step_slider.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QHash>
#include <QLineEdit>
#include <QWidget>

namespace staveline::ui {
namespace {

const QHash<QString, QAccessible::Role>& roles() {
    static const QHash<QString, QAccessible::Role> table = {
        {QStringLiteral("staveline::ui::PageView"), QAccessible::Document},
        {QStringLiteral("staveline::ui::VesselDrawing"), QAccessible::Graphic},
        {QStringLiteral("staveline::ui::ChartStack"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::PanelView"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::EventTimeline"), QAccessible::Graphic},
        {QStringLiteral("staveline::ui::MashChart"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::BoilTimeline"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::RestHandle"), QAccessible::Slider},
        {QStringLiteral("staveline::ui::StepSection"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::TargetTimeline"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::TargetForm"), QAccessible::Form},
        {QStringLiteral("staveline::ui::CycleTimeline"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::EntryForm"), QAccessible::Form},
        {QStringLiteral("staveline::ui::LotForm"), QAccessible::Form},
        {QStringLiteral("staveline::ui::ScoreSheet"), QAccessible::Form},
        {QStringLiteral("staveline::ui::FaultList"), QAccessible::Form},
        {QStringLiteral("staveline::ui::AnchorScale"), QAccessible::StaticText},
        {QStringLiteral("staveline::ui::MessageLabel"), QAccessible::AlertMessage},
        {QStringLiteral("staveline::ui::StatusLine"), QAccessible::StatusBar},
        {QStringLiteral("staveline::ui::LeverBoard"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::ProposalList"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::DecisionPanel"), QAccessible::Grouping},
        {QStringLiteral("QFrame"), QAccessible::Grouping}, // else the role of a top-level window
        {QStringLiteral("QSplitterHandle"), QAccessible::Separator}};
    return table;
}

bool isButton(const QString& className) {
    return className == QStringLiteral("QPushButton") || className == QStringLiteral("QCheckBox") ||
           className == QStringLiteral("QRadioButton");
}

/// Controls that Qt knows, told better. Qt owns what is made.
QAccessibleInterface* makeControl(const QString& className, QObject* object) {
    if (isButton(className))
        return new ButtonAccess(*qobject_cast<QAbstractButton*>(object));
    if (className == QStringLiteral("QComboBox"))
        return new ChoiceAccess(*qobject_cast<QComboBox*>(object));
    if (className == QStringLiteral("QLineEdit"))
        return new LineAccess(*qobject_cast<QLineEdit*>(object));
    if (className == QString::fromLatin1(StepSlider::staticMetaObject.className()))
        return new SliderAccess(*qobject_cast<StepSlider*>(object));
    return nullptr;
}

QAccessibleInterface* make(const QString& className, QObject* object) {
    if (!object || !object->isWidgetType())
        return nullptr;
    if (QAccessibleInterface* control = makeControl(className, object))
        return control;
    const auto role = roles().find(className);
    if (role == roles().end())
        return nullptr;
    return new QAccessibleWidget(qobject_cast<QWidget*>(object), *role); // Qt owns it
}

} // namespace

void installAccessibleRoles() {
    static const bool once = [] {
        QAccessible::installFactory(make);
        return true;
    }();
    static_cast<void>(once);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/accessible_roles.h"

#include <QAccessibleWidget>
#include <QHash>
#include <QWidget>

namespace staveline::ui {
namespace {

const QHash<QString, QAccessible::Role>& roles() {
    static const QHash<QString, QAccessible::Role> table = {
        {QStringLiteral("staveline::ui::PageView"), QAccessible::Document},
        {QStringLiteral("staveline::ui::VesselDrawing"), QAccessible::Graphic},
        {QStringLiteral("staveline::ui::ChartStack"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::PanelView"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::TimeStrip"), QAccessible::Graphic},
        {QStringLiteral("staveline::ui::MashChart"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::BoilStrip"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::RestGrip"), QAccessible::Slider},
        {QStringLiteral("staveline::ui::StepSection"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::WindowStrip"), QAccessible::Chart},
        {QStringLiteral("staveline::ui::TargetForm"), QAccessible::Form},
        {QStringLiteral("staveline::ui::TimeRibbon"), QAccessible::Grouping},
        {QStringLiteral("staveline::ui::EntryForm"), QAccessible::Form},
        {QStringLiteral("staveline::ui::ScoreSheet"), QAccessible::Form},
        {QStringLiteral("staveline::ui::FaultList"), QAccessible::Form},
        {QStringLiteral("staveline::ui::AnchorStrip"), QAccessible::StaticText},
        {QStringLiteral("staveline::ui::MessageLabel"), QAccessible::AlertMessage},
        {QStringLiteral("staveline::ui::StatusLine"), QAccessible::StatusBar}};
    return table;
}

QAccessibleInterface* make(const QString& className, QObject* object) {
    const auto role = roles().find(className);
    if (role == roles().end() || !object || !object->isWidgetType())
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

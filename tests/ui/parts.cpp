// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/parts.h"

#include "ui/widgets/message_label.h"

#include <QAbstractButton>
#include <QLabel>

namespace staveline::testing {

bool isCalled(const QWidget& widget, const QString& name) {
    if (widget.objectName() == name || widget.accessibleName() == name)
        return true;
    const auto* button = qobject_cast<const QAbstractButton*>(&widget);
    return button && QString(button->text()).remove('&') == name;
}

QString wordsOf(const QWidget& in, const QString& name) {
    const QWidget& found = part<QWidget>(in, name);
    if (const auto* message = qobject_cast<const ui::MessageLabel*>(&found))
        return message->words();
    const auto* label = qobject_cast<const QLabel*>(&found);
    INFO(name.toStdString() << " is no label");
    REQUIRE(label);
    return label->text();
}

} // namespace staveline::testing

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/choice_field.h"

#include "ui/present/text.h"

#include <QAbstractItemView>
#include <QHelpEvent>
#include <QStyleOptionComboBox>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>

namespace staveline::ui {

ChoiceField::ChoiceField(QWidget* parent) : QComboBox(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setSizeAdjustPolicy(QComboBox::AdjustToContents);
}

void ChoiceField::add(const QString& shown, const std::string& word) {
    addItem(shown, qs(word));
}

std::string ChoiceField::word() const {
    return toStd(currentData().toString());
}

void ChoiceField::setWord(const std::string& word) {
    int index = findData(qs(word));
    if (index < 0) {
        add(qs(word), word);
        index = count() - 1;
    }
    setCurrentIndex(index);
}

void ChoiceField::showPopup() {
    int widest = 0;
    for (int i = 0; i < count(); ++i)
        widest = std::max(widest, fontMetrics().horizontalAdvance(itemText(i)));
    view()->setMinimumWidth(widest + 2 * style()->pixelMetric(QStyle::PM_ScrollBarExtent, nullptr, this));
    QComboBox::showPopup();
}

QString ChoiceField::shown(const QStyleOptionComboBox& option) const {
    const QRect room = style()->subControlRect(QStyle::CC_ComboBox, &option, QStyle::SC_ComboBoxEditField, this);
    return fontMetrics().elidedText(option.currentText, Qt::ElideRight, room.width());
}

void ChoiceField::initStyleOption(QStyleOptionComboBox* option) const {
    QComboBox::initStyleOption(option);
    option->currentText = shown(*option);
}

bool ChoiceField::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip || !toolTip().isEmpty())
        return QComboBox::event(event);
    QStyleOptionComboBox option;
    initStyleOption(&option);
    if (option.currentText == currentText())
        return QComboBox::event(event);
    QToolTip::showText(static_cast<QHelpEvent*>(event)->globalPos(), currentText(), this);
    return true;
}

void ChoiceField::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

} // namespace staveline::ui

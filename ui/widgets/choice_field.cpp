// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/choice_field.h"

#include "ui/present/text.h"

#include <QWheelEvent>

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

void ChoiceField::wheelEvent(QWheelEvent* event) {
    event->ignore();
}

} // namespace staveline::ui

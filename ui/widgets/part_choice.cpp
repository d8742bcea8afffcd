// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/part_choice.h"

#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QPushButton>

namespace staveline::ui {

PartChoice::PartChoice(const QStringList& names, QWidget* parent) : QWidget(parent), row_(new QHBoxLayout(this)) {
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(lines(*this, .3));
    for (const QString& name : names) {
        auto* button = new QPushButton(name, this);
        button->setCheckable(true);
        tellAsOneOfSeveral(*button);
        const int part = static_cast<int>(buttons_.size());
        connect(button, &QPushButton::clicked, this, [this, part] { Q_EMIT chosen(part); });
        row_->addWidget(button);
        buttons_.push_back(button);
    }
    row_->addStretch(1);
    setFront(0);
}

void PartChoice::setFront(int part) {
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const bool inFront = static_cast<int>(i) == part;
        buttons_[i]->setChecked(inFront);
        setType(*buttons_[i], inFront ? Type::strong : Type::body);
    }
}

void PartChoice::addBeside(QWidget* widget) {
    row_->addWidget(widget);
}

} // namespace staveline::ui

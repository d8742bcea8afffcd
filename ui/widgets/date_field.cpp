// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/date_field.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>

namespace staveline::ui {

Day addMonths(Day day, int months) {
    using namespace std::chrono;
    const year_month_day civil{day};
    const year_month month = year_month{civil.year(), civil.month()} + std::chrono::months{months};
    const year_month_day wanted = month / civil.day();
    return wanted.ok() ? Day{wanted} : Day{month / last};
}

DateField::DateField(Day today, QWidget* parent)
    : QWidget(parent), today_(today), day_(today), edit_(new QLineEdit(this)), back_(new QLabel(this)),
      message_(*edit_) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .25));
    row->addWidget(edit_);
    row->addWidget(back_);
    row->addStretch(1);
    back_->setObjectName("read back");
    edit_->setFixedWidth(edit_->fontMetrics().horizontalAdvance(QStringLiteral("0000-00-00 ")) + lines(*this, .8));
    edit_->installEventFilter(this);
    connect(edit_, &QLineEdit::textEdited, this, [this] {
        read();
        Q_EMIT edited();
    });
    setDay(today);
}

void DateField::setName(const QString& name) {
    edit_->setAccessibleName(tr("%1, year-month-day").arg(name));
    setObjectName(name);
}

void DateField::setToday(Day today) {
    today_ = today;
    sayBack();
}

void DateField::setDay(Day day) {
    day_ = day;
    edit_->setText(qs(isoDay(day)));
    message_.clear();
    sayBack();
}

void DateField::setRequired(bool required) {
    required_ = required;
    if (required)
        return;
    edit_->clear();
    read();
}

bool DateField::usable() const {
    return day_ || (!required_ && edit_->text().trimmed().isEmpty());
}

void DateField::recheck() {
    read();
}

void DateField::read() {
    const auto parsed = parseDay(toStd(edit_->text().trimmed()));
    if (parsed) {
        day_ = *parsed;
        message_.clear();
    } else {
        day_.reset();
        if (usable())
            message_.clear();
        else
            message_.say(text(parsed.error()));
    }
    sayBack();
}

void DateField::sayBack() {
    back_->setText(day_ ? tr("%1, %2").arg(weekdayWords(*day_), distanceWords(daysBetween(today_, *day_))) : QString());
    edit_->setAccessibleDescription(day_ ? back_->text() : message_.words());
}

void DateField::showFault(const Fault& fault) {
    message_.say(text(fault));
    edit_->setAccessibleDescription(message_.words());
}

QString DateField::words() const {
    return message_.words();
}
void DateField::step(int days, int months) {
    setDay(addMonths(day_.value_or(today_), months) + std::chrono::days{days});
    Q_EMIT edited();
}

bool DateField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_Up:
            step(1, 0);
            return true;
        case Qt::Key_Down:
            step(-1, 0);
            return true;
        case Qt::Key_PageUp:
            step(0, 1);
            return true;
        case Qt::Key_PageDown:
            step(0, -1);
            return true;
        default:
            break;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/share_line.h"

#include "quantity/text.h"
#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>

#include <cmath>

namespace staveline::ui {
namespace {

constexpr double exact = 5e-4; // half of the last decimal shown

} // namespace

Share restOf(Share sum) {
    return Share{1 - sum.of1};
}
bool addsUp(Share sum) {
    return std::abs(restOf(sum).of1) < exact;
}

ShareLine::ShareLine(QWidget* parent)
    : QWidget(parent), words_(new QLabel(this)), button_(new QPushButton(tr("Fill to 100 % (=)"), this)) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .8));
    row->addWidget(words_);
    row->addWidget(button_);
    row->addStretch(1);
    button_->setAutoDefault(false);
    connect(button_, &QPushButton::clicked, this, [this] { Q_EMIT restAsked(row_); });
}

void ShareLine::say(Share sum, std::size_t parts) {
    const Share rest = restOf(sum);
    const char* key = addsUp(sum) ? "ui.brew.adds_up" : rest.of1 > 0 ? "ui.brew.missing" : "ui.brew.too_much";
    words_->setText(text(staveline::say(key).with("sum", sum).with("rest", Share{std::abs(rest.of1)})));
    words_->setFont(ui::font(font(), addsUp(sum) ? Type::body : Type::strong));
    button_->setVisible(parts > 0);
    button_->setEnabled(!locked_ && !addsUp(sum));
}

void ShareLine::setLocked(bool locked) {
    locked_ = locked;
}

void ShareLine::watch(QWidget* field, std::size_t row) {
    field->setProperty("row", static_cast<int>(row));
    field->installEventFilter(this);
}

QString ShareLine::words() const {
    return words_->text();
}

bool ShareLine::eventFilter(QObject* watched, QEvent* event) {
    const int row = watched->property("row").toInt();
    if (event->type() == QEvent::FocusIn)
        row_ = row;
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->text() == QStringLiteral("=")) {
        Q_EMIT restAsked(row);
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace staveline::ui

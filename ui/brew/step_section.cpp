// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/step_section.h"

#include "ui/brew/row_list.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>

namespace staveline::ui {
StepSection::StepSection(const QString& name, QWidget* parent)
    : QWidget(parent), name_(new QLabel(name, this)), amount_(new QLabel(this)), more_(quietLabel({}, this)),
      fault_(new MessageLabel(this)), findings_(new MessageLabel(this)), cautions_(new MessageLabel(this)),
      body_(new QVBoxLayout) {
    setAccessibleName(name);
    amount_->setObjectName("amount");
    more_->setObjectName("more");
    setType(*name_, Type::strong);
    setType(*amount_, Type::number);
    amount_->setWordWrap(true);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, lines(*this, .4), 0, lines(*this, .8));
    grid->setVerticalSpacing(lines(*this, .2));
    auto* head = new QHBoxLayout;
    head->setSpacing(lines(*this, .8));
    head->addWidget(name_);
    head->addWidget(amount_, 1);
    grid->addLayout(head, 0, 0);
    grid->addWidget(more_, 2, 0);
    body_->setContentsMargins(0, lines(*this, .4), 0, 0);
    body_->setSpacing(lines(*this, .5));
    grid->addLayout(body_, 3, 0);
    grid->addWidget(fault_, 4, 0);
    grid->addWidget(findings_, 5, 0);
    grid->addWidget(cautions_, 6, 0);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void StepSection::sayAmounts(const QString& amount, const QString& more) {
    amount_->setText(amount);
    amount_->setVisible(!amount.isEmpty());
    more_->setText(more);
    more_->setVisible(!more.isEmpty());
}

void StepSection::setNotes(const QStringList& findings, const QStringList& cautions) {
    findings_->say(MessageLabel::Weight::warning, findings.join(QLatin1Char('\n')));
    cautions_->say(MessageLabel::Weight::warning, cautions.join(QLatin1Char('\n')));
}

void StepSection::addWidget(QWidget* widget) {
    body_->addWidget(widget);
}

QStringList StepSection::notes() const {
    return (findings_->words() + QLatin1Char('\n') + cautions_->words()).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

QString StepSection::name() const {
    return name_->text();
}

void StepSection::focusFirst() {
    for (QWidget* child : findChildren<QWidget*>())
        if ((child->focusPolicy() & Qt::TabFocus) && child->isVisible() && child->isEnabled() && !child->focusProxy()) {
            child->setFocus(Qt::OtherFocusReason);
            return;
        }
}

/// A thin line parts it from the step above.
void StepSection::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(QPen(hairline(palette()), 1));
    painter.drawLine(QPointF(0, 0), QPointF(width(), 0));
}

} // namespace staveline::ui

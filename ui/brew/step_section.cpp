// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/step_section.h"

#include "ui/brew/row_list.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QPainterPath>

namespace staveline::ui {
namespace {

constexpr double bandRoom = 5; // for the widest band, in lines

} // namespace

StepSection::StepSection(const QString& name, QWidget* parent)
    : QWidget(parent), name_(new QLabel(name, this)), amount_(new QLabel(this)), more_(quietLabel({}, this)),
      fault_(new MessageLabel(this)), findings_(new MessageLabel(this)), cautions_(new MessageLabel(this)),
      body_(new QVBoxLayout) {
    setAccessibleName(name);
    setType(*name_, Type::strong);
    setType(*amount_, Type::number);
    amount_->setWordWrap(true);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(lines(*this, bandRoom + 1.2), lines(*this, .4), 0, lines(*this, .8));
    grid->setVerticalSpacing(lines(*this, .2));
    grid->addWidget(name_, 0, 0);
    grid->addWidget(amount_, 1, 0);
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

void StepSection::setBand(Litres enters, Litres leaves, Litres widest) {
    enters_ = enters;
    leaves_ = leaves;
    widest_ = widest;
    update();
}

void StepSection::setNotes(const QStringList& findings, const QStringList& cautions) {
    findings_->say(MessageLabel::Weight::warning, findings.join(QLatin1Char('\n')));
    cautions_->say(MessageLabel::Weight::note, cautions.join(QLatin1Char('\n')));
}

void StepSection::addWidget(QWidget* widget) {
    body_->addWidget(widget);
}

QString StepSection::amounts() const {
    return amount_->text() + QLatin1Char(' ') + more_->text();
}

QStringList StepSection::notes() const {
    return (findings_->words() + QLatin1Char('\n') + cautions_->words()).split(QLatin1Char('\n'), Qt::SkipEmptyParts);
}

QString StepSection::name() const {
    return name_->text();
}

/// The band narrows where the step loses liquid: between the words of its amounts and its foot.
void StepSection::paintEvent(QPaintEvent*) {
    if (widest_.l <= 0)
        return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double room = lines(*this, bandRoom), middle = room / 2;
    const double top = room * (enters_ / widest_) / 2, foot = room * (leaves_ / widest_) / 2;
    const double from = height() * .35, to = height() * .65;
    QPainterPath band(QPointF(middle - top, 0));
    band.lineTo(middle - top, from);
    band.cubicTo(middle - top, (from + to) / 2, middle - foot, (from + to) / 2, middle - foot, to);
    band.lineTo(middle - foot, height());
    band.lineTo(middle + foot, height());
    band.lineTo(middle + foot, to);
    band.cubicTo(middle + foot, (from + to) / 2, middle + top, (from + to) / 2, middle + top, from);
    band.lineTo(middle + top, 0);
    band.closeSubpath();
    painter.fillPath(band, stratum(palette(), .15));
    painter.setPen(QPen(hairline(palette()), 1));
    painter.drawLine(QPointF(room + lines(*this, 1.2), 0), QPointF(width(), 0));
}

} // namespace staveline::ui

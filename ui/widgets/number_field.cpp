// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/number_field.h"

#include "ui/present/text.h"
#include "ui/widgets/theme.h"

#include <QFontMetrics>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr std::string_view widestNumber = "0000.000 ";

/// The value a fault's remedy offers instead, as it should be typed.
std::optional<QString> offered(const Fault& fault) {
    for (const Argument& argument : fault.remedy.arguments) {
        if (argument.name != "instead")
            continue;
        if (const auto* amount = std::get_if<Amount>(&argument.value); amount && amount->kind == UnitKind::gravity)
            return numberWords(amount->value, 3);
        return qs(show(argument.value));
    }
    return std::nullopt;
}

} // namespace

NumberField::NumberField(UnitKind kind, Range range, bool required, QWidget* parent)
    : QWidget(parent), kind_(kind), range_(range), required_(required), edit_(new QLineEdit(this)),
      unit_(new QLabel(this)), message_(*edit_) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, .25));
    row->addWidget(edit_);
    row->addWidget(unit_);
    row->addStretch(1);
    edit_->setAlignment(Qt::AlignRight);
    edit_->setFixedWidth(edit_->fontMetrics().horizontalAdvance(qs(widestNumber)) + lines(*this, .8));
    edit_->installEventFilter(this);
    connect(edit_, &QLineEdit::textEdited, this, [this] {
        read();
        Q_EMIT edited();
    });
    connect(message_.get(), &FieldMessage::offerTaken, this, &NumberField::takeOffer);
    setUnits({});
}

void NumberField::setName(const QString& name) {
    const QString suffix = unit_->text();
    edit_->setAccessibleName(suffix.isEmpty() ? name : tr("%1 in %2").arg(name, suffix));
    setObjectName(name);
}

void NumberField::setUnits(const DisplayUnits& units) {
    units_ = units;
    unit_->setText(UnitScale(kind_, units_).suffix());
    unit_->setVisible(!unit_->text().isEmpty());
    if (!objectName().isEmpty())
        setName(objectName());
    if (!stored_ && !edit_->text().trimmed().isEmpty()) {
        read(); // what could not be used is judged anew
        return;
    }
    const std::optional<Fault> fault = fault_; // from elsewhere: the value itself was read
    setStored(stored_);
    if (fault)
        say(*fault);
}

void NumberField::setStored(std::optional<double> value) {
    stored_ = value;
    edit_->setText(value ? UnitScale(kind_, units_).show(*value) : QString());
    clearMessage();
}

bool NumberField::usable() const {
    return !fault_ && (stored_ || !required_);
}

Result<double> NumberField::parsed(const QString& typed) const {
    const UnitScale scale(kind_, units_);
    if (scale.isSpecificGravity()) {
        const auto gravity = parseGravity(toStd(typed));
        return gravity ? Result<double>(scale.toStored(gravity->sg)) : Result<double>(fail(gravity.error()));
    }
    const auto [low, high] = std::minmax({scale.toShown(range_.low), scale.toShown(range_.high)});
    const auto number = parseNumber(toStd(typed), Range{low, high});
    return number ? Result<double>(scale.toStored(*number)) : number;
}

void NumberField::read() {
    clearMessage();
    stored_.reset();
    const QString typed = edit_->text().trimmed();
    if (typed.isEmpty())
        return;
    if (const auto value = parsed(typed))
        stored_ = *value;
    else
        say(value.error());
}

void NumberField::say(const Fault& fault) {
    fault_ = fault;
    message_.say(text(fault, units_));
    edit_->setAccessibleDescription(message_.words());
    offer_ = offered(fault);
    if (offer_)
        message_.offer(tr("Take %1 (Enter)").arg(*offer_), tr("Take %1 instead").arg(*offer_));
    else
        message_.offer({}, {});
}

void NumberField::showFault(const Fault& fault) {
    say(fault);
}

void NumberField::recheck() {
    const auto kept = stored_;
    if (edit_->text().trimmed().isEmpty() && fault_ && required_)
        return; // still empty after a complaint
    if (kept)
        clearMessage();
    else
        read();
}

void NumberField::clearMessage() {
    fault_.reset();
    offer_.reset();
    message_.clear();
    edit_->setAccessibleDescription({});
}

void NumberField::complainIfEmpty() {
    if (required_ && !stored_ && !fault_)
        say({FaultKind::input,
             {},
             staveline::say(kind_ == UnitKind::volume ? "ui.field.enter_volume" : "ui.field.enter_number"),
             {}});
}

QList<QWidget*> NumberField::tabStops() const {
    return {edit_, message_.get()->offerButton()};
}

void NumberField::setHint(const QString& hint) {
    edit_->setPlaceholderText(hint);
}

QString NumberField::words() const {
    return message_.words();
}

void NumberField::takeOffer() {
    if (!offer_)
        return;
    edit_->setText(*offer_);
    read();
    edit_->setFocus();
    Q_EMIT edited();
}

bool NumberField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride && !edit_->isModified()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore(); // nothing typed here: the book's own undo
            return true;
        }
    }
    if (event->type() == QEvent::KeyPress && offer_) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Return || key == Qt::Key_Enter) {
            takeOffer();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace staveline::ui

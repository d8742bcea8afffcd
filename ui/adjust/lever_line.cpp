// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/lever_line.h"

#include "ingredient/pantry.h"
#include "quantity/density.h"
#include "ui/adjust/effect_cell.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/step_slider.h"

#include <QCheckBox>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QSlider>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using advice::LeverValue;

namespace {

constexpr double mostLitres = 100000; // the board itself says what can be drawn

Range rangeOf(const advice::LeverRow& lever) {
    return lever.kind == UnitKind::volume ? Range{0, mostLitres} : Range{lever.low, lever.high};
}

bool same(const LeverValue& a, const LeverValue& b) {
    const auto *x = std::get_if<double>(&a), *y = std::get_if<double>(&b);
    return x && y ? std::abs(*x - *y) < 1e-9 : a == b;
}

} // namespace

LeverLine::LeverLine(const advice::LeverRow& lever, QWidget& page, QGridLayout& grid, int row)
    : QObject(&page), kind_(lever.kind), name_(new QLabel(sentenceCase(qs(lever.name)), &page)),
      now_(new QLabel(&page)), control_(new QWidget(&page)), next_(new EffectCell(&page)),
      settled_(new EffectCell(&page)), lock_(new QCheckBox(&page)), notes_(new MessageLabel(&page)) {
    line_.row = lever;
    for (QLabel* label : {name_, now_})
        label->setWordWrap(true);
    setType(*now_, Type::small);
    now_->setForegroundRole(QPalette::PlaceholderText);
    lever.isChoice() ? makeChoice() : makeNumber(page);
    lock_->setAccessibleName(tr("Lock %1").arg(qs(lever.name)));
    lock_->setObjectName(QStringLiteral("lock ") + qs(lever.id));
    next_->setObjectName(QStringLiteral("next ") + qs(lever.id));
    settled_->setObjectName(QStringLiteral("kept ") + qs(lever.id));
    connect(lock_, &QCheckBox::clicked, this, &LeverLine::lockAsked);
    lock_->setToolTip(lock_->accessibleName());
    // As high as a field: one line of words stands beside it.
    const int high = number_ ? number_->edit()->sizeHint().height() : choice_->sizeHint().height();
    for (QWidget* part : std::initializer_list<QWidget*>{name_, now_, next_, settled_, lock_})
        part->setMinimumHeight(std::max(high, part->minimumHeight()));
    place(grid, row);
}

void LeverLine::place(QGridLayout& grid, int row) {
    int column = 0;
    const auto put = [&](QWidget* part, int at, int from, int wide) {
        grid.removeWidget(part);
        grid.addWidget(part, at, from, 1, wide, wide == 1 ? Qt::AlignTop : Qt::Alignment());
    };
    for (QWidget* part : std::initializer_list<QWidget*>{name_, now_, control_, next_, settled_, lock_})
        put(part, row, column++, 1);
    put(notes_, row + 1, 0, column);
}

void LeverLine::makeNumber(QWidget& page) {
    auto* slider = new StepSlider(control_);
    slider->setScale([this](int step) { return shownAt(step); }, [this] { return UnitScale(kind_, units_).suffix(); });
    slider_ = slider;
    slider_->setPageStep(2);
    slider_->setAccessibleName(sentenceCase(qs(line_.row.name)));
    slider_->setObjectName(QStringLiteral("slide ") + qs(line_.row.id));
    number_ = new NumberField(kind_, rangeOf(line_.row), true, control_);
    number_->setName(tr("%1, number").arg(sentenceCase(qs(line_.row.name))));
    name_->setBuddy(slider_);
    slider_->setMinimumWidth(lines(page, 4.5));
    slider_->setMinimumHeight(number_->edit()->sizeHint().height());
    number_->setMinimumWidth(number_->edit()->maximumWidth() + lines(page, 2.4)); // units stand in one column
    auto* beside = new QHBoxLayout(control_);
    beside->setContentsMargins(0, 0, 0, 0);
    beside->setSpacing(lines(page, .3));
    beside->addWidget(slider_, 1);
    beside->addWidget(number_);
    connect(slider_, &QSlider::valueChanged, this, &LeverLine::fromSlider);
    connect(number_, &NumberField::edited, this, &LeverLine::fromField);
    connect(number_->edit(), &QLineEdit::editingFinished, this, [this] {
        if (number_->edit()->isModified())
            number_->complainIfEmpty();
    });
}

double LeverLine::shownAt(int step) const {
    if (step < 0 || step >= static_cast<int>(line_.steps.size()))
        return 0;
    const double value = std::get<double>(line_.steps[static_cast<std::size_t>(step)]);
    return UnitScale(kind_, units_).toShown(value);
}

void LeverLine::makeChoice() {
    choice_ = new ChoiceField(control_);
    choice_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    choice_->setMinimumContentsLength(14);
    choice_->setAccessibleName(sentenceCase(qs(line_.row.name)));
    choice_->setObjectName(QStringLiteral("choose ") + qs(line_.row.id));
    name_->setBuddy(choice_);
    auto* column = new QVBoxLayout(control_);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(choice_);
    connect(choice_, &QComboBox::activated, this, &LeverLine::fromChoice);
    if (line_.row.id != "yeast")
        return;
    missing_ = new QCheckBox(tr("not at hand"), control_);
    column->addWidget(missing_);
    missing_->setObjectName(QStringLiteral("missing ") + qs(line_.row.id));
    connect(missing_, &QCheckBox::clicked, this, &LeverLine::missingAsked);
}

void LeverLine::setLine(const advice::BoardLine& line, const Session& session, bool writable) {
    const bool fresh = line_.steps != line.steps || line_.choices.size() != line.choices.size();
    line_ = line;
    const QString value = session.words(advice::valueText(line.row.id, line.now, session.desk().pantry()));
    now_->setText(line.applies ? value : tr("no effect here"));
    if (!line.steps.empty()) {
        const auto words = [&](const LeverValue& at) {
            return session.words(advice::valueText(line.row.id, at, session.desk().pantry()));
        };
        name_->setToolTip(tr("From %1 to %2").arg(words(line.steps.front()), words(line.steps.back())));
    }
    if (number_ && session.units() != units_)
        number_->setUnits(session.units());
    units_ = session.units();
    if (choice_)
        fillChoices();
    else if (fresh)
        fillSteps();
    lock_->setChecked(line.lockedAt.has_value());
    lock_->setEnabled(writable);
    if (missing_)
        missing_->setEnabled(writable);
    showEnabled();
    showMissing();
}

void LeverLine::setPlanLocked(bool locked) {
    planLocked_ = locked;
    showEnabled();
}

void LeverLine::showEnabled() {
    for (QWidget* control : std::initializer_list<QWidget*>{slider_, number_, choice_})
        if (control)
            control->setEnabled(line_.applies && !line_.lockedAt && !planLocked_);
}

void LeverLine::fillChoices() {
    const QSignalBlocker quiet(choice_);
    choice_->clear();
    for (const advice::BoardChoice& each : line_.choices)
        choice_->add(each.atHand ? qs(each.name) : tr("%1 (not at hand)").arg(qs(each.name)), each.id);
    if (const auto* id = std::get_if<std::string>(&tried_))
        choice_->setWord(*id);
}

void LeverLine::fillSteps() {
    const QSignalBlocker quiet(slider_);
    slider_->setRange(0, std::max(0, static_cast<int>(line_.steps.size()) - 1));
    if (const auto* value = std::get_if<double>(&tried_))
        slider_->setValue(nearestStep(*value));
}

int LeverLine::nearestStep(double value) const {
    const auto distance = [&](const LeverValue& step) { return std::abs(std::get<double>(step) - value); };
    const auto nearest =
        std::min_element(line_.steps.begin(), line_.steps.end(),
                         [&](const LeverValue& a, const LeverValue& b) { return distance(a) < distance(b); });
    return static_cast<int>(nearest - line_.steps.begin());
}

void LeverLine::setTried(const LeverValue& value) {
    byHand_ = false;
    tried_ = value;
    if (const auto* number = std::get_if<double>(&value); number && number_)
        number_->setStored(*number);
    showTried();
}

void LeverLine::follow(const LeverValue& value) {
    const bool typed = number_ && number_->isEnabled() && number_->edit()->isModified();
    const auto stored = typed ? number_->stored() : std::nullopt;
    const bool byHand = byHand_ && !line_.lockedAt;
    if (!typed || (stored && !number_->edit()->hasFocus())) {
        // New units may have made a number of what was none.
        const bool known = !stored || same(*stored, tried_);
        setTried(known ? value : LeverValue(*stored));
        byHand_ = byHand;
        return;
    }
    tried_ = stored ? LeverValue(*stored) : value;
    showTried();
}

void LeverLine::showTried() {
    if (const auto* number = std::get_if<double>(&tried_); number && slider_ && !line_.steps.empty()) {
        const QSignalBlocker quiet(slider_);
        slider_->setValue(nearestStep(*number));
    } else if (const auto* id = std::get_if<std::string>(&tried_); id && choice_) {
        const QSignalBlocker quiet(choice_);
        choice_->setWord(*id);
    }
    showMissing();
}

bool LeverLine::unusable() const {
    return number_ && line_.applies && (!number_->stored() || number_->fault());
}

void LeverLine::complain() {
    if (!number_)
        return;
    number_->complainIfEmpty();
    number_->edit()->setFocus(Qt::OtherFocusReason);
}

bool LeverLine::moved() const {
    return !same(tried_, line_.now);
}

void LeverLine::fromSlider(int step) {
    if (step < 0 || step >= static_cast<int>(line_.steps.size()))
        return;
    tried_ = line_.steps[static_cast<std::size_t>(step)];
    byHand_ = true;
    number_->setStored(std::get<double>(tried_));
    Q_EMIT triedChanged();
}

void LeverLine::fromField() {
    const auto stored = number_->stored();
    if (!stored) {
        Q_EMIT halfTyped(); // or a slip that the field itself names
        return;
    }
    tried_ = *stored;
    byHand_ = true;
    showTried();
    Q_EMIT triedChanged();
}

void LeverLine::fromChoice() {
    tried_ = choice_->word();
    byHand_ = true;
    showMissing();
    Q_EMIT triedChanged();
}

void LeverLine::showMissing() {
    if (!missing_)
        return;
    const auto* id = std::get_if<std::string>(&tried_);
    const auto found = std::find_if(line_.choices.begin(), line_.choices.end(),
                                    [&](const advice::BoardChoice& each) { return id && each.id == *id; });
    const bool known = found != line_.choices.end();
    missing_->setChecked(known && !found->atHand);
    missing_->setAccessibleName(known ? tr("%1 is not at hand").arg(qs(found->name)) : tr("Not at hand"));
}

void LeverLine::showPart(const advice::Trial::Part* part, advice::TrialDepth depth) {
    if (!part) {
        next_->clear();
        settled_->clear();
        return;
    }
    next_->setPoints(part->next);
    if (depth == advice::TrialDepth::settled)
        settled_->setPoints(part->settled);
    else
        settled_->showPending();
}

void LeverLine::showNotes(const QStringList& cautions, const QString& price) {
    QStringList all = cautions;
    if (!price.isEmpty())
        all << price;
    if (all.join(QLatin1Char(' ')) == notes_->words())
        return;
    if (all.isEmpty())
        notes_->clear();
    else
        notes_->say(cautions.isEmpty() ? MessageLabel::Weight::note : MessageLabel::Weight::warning,
                    all.join(QLatin1Char(' ')));
}

void LeverLine::showFault(const Fault& fault, const DisplayUnits& units) {
    if (number_)
        number_->showFault(fault);
    else
        notes_->say(MessageLabel::Weight::fault, text(fault, units));
}

void LeverLine::clearFault() {
    if (number_ && number_->fault()) // nothing to do for most, and a slider may be in motion
        number_->recheck();
}

QString LeverLine::notes() const {
    return notes_->words();
}

QWidget* LeverLine::firstStop() const {
    return slider_ ? static_cast<QWidget*>(slider_) : choice_;
}

QList<QWidget*> LeverLine::tabStops() const {
    QList<QWidget*> stops;
    if (slider_)
        stops << slider_ << number_->tabStops();
    if (choice_)
        stops << choice_;
    if (missing_)
        stops << missing_;
    return stops << lock_;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/target_form.h"

#include "ui/present/verdict_words.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using tasting::scores;
using tasting::Target;

namespace {

QString severityWord(int severity) {
    return own("ui.taste.severity." + std::to_string(std::clamp(severity, 0, 3)));
}

QString faultName(const std::string& id) {
    const tasting::FaultRule* rule = tasting::builtInSheet().findFault(id);
    return qs(rule ? rule->name : id);
}

/// "draw 7, 11 Mar 2025: acidity 5.8 ±0.6, funk 4.1 ±0.7"
QString drawWords(const desk::PastDraw& draw) {
    QStringList scores;
    for (const Dimension d : allDimensions)
        if (draw.tasted[d])
            scores << inSentence(nameOf(d)) + QLatin1Char(' ') + estimateWords(*draw.tasted[d]);
    const QString name = draw.lot.empty() ? TargetForm::tr("Draw of %1").arg(dayWords(draw.on))
                                          : TargetForm::tr("%1, %2").arg(qs(draw.lot), dayWords(draw.on));
    return TargetForm::tr("%1: %2").arg(name, scores.isEmpty() ? TargetForm::tr("not tasted")
                                                               : scores.join(QStringLiteral(", ")));
}

/// As high as a field, so that it stands beside it and not beside the message below.
QLabel* labelBeside(const QString& words, TargetForm& form) {
    auto* label = new QLabel(words, &form);
    label->setMinimumHeight(form.setBy().sizeHint().height());
    return label;
}

QHBoxLayout* rowIn(QVBoxLayout& column) {
    auto* row = new QHBoxLayout;
    column.addLayout(row);
    return row;
}

} // namespace

TargetForm::TargetForm(Session& session, QWidget* parent)
    : QFrame(parent), session_(session), message_(new MessageLabel(this)), draws_(new ChoiceField(this)),
      like_(new QPushButton(tr("Use as target"), this)), setBy_(new QLineEdit(this)), trait_(new ChoiceField(this)),
      severity_(new ChoiceField(this)), addTrait_(new QPushButton(tr("Accept"), this)) {
    setAccessibleName(tr("Target"));
    message_->keepRoom(1.1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, lines(*this, .6));
    column->setSpacing(lines(*this, .4));
    auto* title = new QLabel(tr("Target"), this);
    setType(*title, Type::strong);
    column->addWidget(title);
    column->addWidget(message_);
    addWindows(*column);
    addBounds(*column);
    addSetBy(*column);
    addTraits(*column);
    connect(&session, &Session::storeAsked, this, &TargetForm::finishTyping);
}

QWidget* TargetForm::addNumber(const TargetNumber& about) {
    auto* field = new NumberField(about.unit, {about.low, about.high}, true, this);
    field->setName(about.name);
    entries_.push_back({&about, field});
    const Entry entry = entries_.back();
    connect(field->edit(), &QLineEdit::editingFinished, this, [this, entry] { finish(entry); });
    return field;
}

void TargetForm::addWindows(QVBoxLayout& column) {
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(lines(*this, .8));
    grid->setVerticalSpacing(lines(*this, .2));
    const auto& all = targetNumbers();
    grid->addWidget(labelBeside(tr("target"), *this), 1, 0, Qt::AlignTop);
    grid->addWidget(labelBeside(tr("±"), *this), 2, 0, Qt::AlignTop);
    for (int i = 0; i < 3; ++i) {
        const auto at = static_cast<std::size_t>(i);
        grid->addWidget(new QLabel(nameOf(allDimensions[at]), this), 0, i + 1);
        grid->addWidget(addNumber(all[at]), 1, i + 1, Qt::AlignTop);
    }
    for (int i = 0; i < 3; ++i)
        grid->addWidget(addNumber(all[static_cast<std::size_t>(3 + i)]), 2, i + 1, Qt::AlignTop);
    grid->setColumnStretch(4, 1);
    column.addLayout(grid);
    auto* row = rowIn(column);
    draws_->setAccessibleName(tr("A draw you liked"));
    draws_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    draws_->setMinimumContentsLength(24);
    row->addWidget(draws_, 1);
    row->addWidget(like_);
    connect(like_, &QPushButton::clicked, this, &TargetForm::likeChosenDraw);
}

void TargetForm::addBounds(QVBoxLayout& column) {
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(lines(*this, .8));
    grid->setVerticalSpacing(lines(*this, .2));
    const auto& all = targetNumbers();
    int row = 0;
    const auto put = [&](std::size_t at, int line, int place) {
        grid->addWidget(labelBeside(all[at].name, *this), line, 2 * place, Qt::AlignTop);
        grid->addWidget(addNumber(all[at]), line, 2 * place + 1, Qt::AlignTop);
    };
    put(6, row++, 0);
    for (std::size_t at = 7; at + 1 < all.size(); at += 2, ++row) {
        put(at, row, 0);
        put(at + 1, row, 1);
    }
    grid->setColumnStretch(4, 1);
    column.addLayout(grid);
}

void TargetForm::addSetBy(QVBoxLayout& column) {
    auto* row = rowIn(column);
    auto* label = new QLabel(tr("Set by"), this);
    label->setBuddy(setBy_);
    setBy_->setAccessibleName(tr("Set by, a taster"));
    setBy_->setMaximumWidth(lines(*this, 12));
    row->addWidget(label);
    row->addWidget(setBy_);
    row->addStretch(1);
    connect(setBy_, &QLineEdit::editingFinished, this, &TargetForm::finishSetBy);
}

void TargetForm::finishSetBy() {
    Target changed = target();
    changed.setBy = toStd(setBy_->text().trimmed());
    const bool news = setBy_->isModified() && changed != target();
    setBy_->setModified(news && !store(changed, tr("set by"), "set_by")); // refused: Enter tries again
}

void TargetForm::addTraits(QVBoxLayout& column) {
    auto* label = new QLabel(own("ui.adjust.target.traits"), this);
    label->setWordWrap(true);
    column.addWidget(label);
    traitColumn_ = new QVBoxLayout;
    column.addLayout(traitColumn_);
    auto* row = rowIn(column);
    for (const tasting::FaultRule& rule : tasting::builtInSheet().faults)
        trait_->add(qs(rule.name), rule.id);
    for (int severity = 1; severity <= 3; ++severity)
        severity_->add(severityWord(severity), std::to_string(severity));
    trait_->setAccessibleName(tr("Trait"));
    trait_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    trait_->setMinimumContentsLength(16);
    severity_->setAccessibleName(tr("Up to"));
    addTrait_->setAccessibleName(tr("Accept this trait"));
    row->addWidget(trait_);
    row->addWidget(new QLabel(tr("up to"), this));
    row->addWidget(severity_);
    row->addWidget(addTrait_);
    row->addStretch(1);
    connect(addTrait_, &QPushButton::clicked, this, [this] { putTrait(trait_->word(), std::stoi(severity_->word())); });
}

std::optional<desk::Filed<facts::TargetFact>> TargetForm::filed() const {
    const auto found = session_.desk().target(vessel_);
    return found ? *found : std::nullopt;
}
Target TargetForm::target() const {
    const auto found = filed();
    return found ? found->fact.target : Target{};
}

void TargetForm::setVessel(const facts::VesselName& vessel) {
    if (vessel == vessel_)
        return;
    vessel_ = vessel;
    message_->clear();
    session_.setUnstored("target", {});
    const Target now = target();
    for (const Entry& entry : entries_)
        entry.field->setStored(entry.about->get(now)); // what was half typed was about another vessel
    setBy_->setText(qs(now.setBy));
    refresh();
}

void TargetForm::refresh() {
    if (vessel_.empty())
        return;
    const bool writable = !session_.desk().readOnly();
    const auto found = filed();
    const Target now = found ? found->fact.target : Target{};
    for (const Entry& entry : entries_) {
        const bool held = entry.field->edit()->isModified() || entry.field->fault();
        entry.field->setEnabled(writable);
        if (session_.units() != units_)
            entry.field->setUnits(session_.units());
        if (held)
            entry.field->edit()->setModified(true); // new units rewrite the text
        else
            entry.field->setStored(entry.about->get(now));
    }
    units_ = session_.units();
    if (!setBy_->isModified())
        setBy_->setText(qs(now.setBy));
    setBy_->setEnabled(writable);
    fillDraws();
    like_->setEnabled(writable && !pastDraws_.empty());
    fillTraits(now, writable);
    if (!found)
        message_->say(MessageLabel::Weight::note, own("ui.adjust.target.default"));
    else if (message_->weight() == MessageLabel::Weight::note)
        message_->clear();
}

void TargetForm::fillDraws() {
    const auto found = session_.desk().pastDraws(vessel_);
    pastDraws_ = found ? *found : std::vector<desk::PastDraw>{};
    std::erase_if(pastDraws_, [](const desk::PastDraw& draw) {
        return std::none_of(draw.tasted.values.begin(), draw.tasted.values.end(),
                            [](const auto& estimate) { return estimate.has_value(); });
    });
    const std::string kept = draws_->word();
    draws_->clear();
    for (std::size_t i = 0; i < pastDraws_.size(); ++i)
        draws_->add(drawWords(pastDraws_[i]), std::to_string(i));
    if (pastDraws_.empty())
        draws_->add(tr("No draw of this vessel was tasted yet"), "");
    if (draws_->findData(qs(kept)) >= 0)
        draws_->setWord(kept);
    draws_->setEnabled(!pastDraws_.empty());
}

void TargetForm::fillTraits(const Target& now, bool writable) {
    for (QWidget* control : std::initializer_list<QWidget*>{trait_, severity_, addTrait_})
        control->setEnabled(writable);
    if (traitList_) {
        if (traitList_->isAncestorOf(focusWidget()))
            trait_->setFocus(Qt::OtherFocusReason);
        traitList_->hide();
        traitList_->deleteLater(); // the button that was pressed is in it
    }
    traitList_ = new QWidget(this);
    auto* column = new QVBoxLayout(traitList_);
    column->setContentsMargins(0, 0, 0, 0);
    for (const tasting::FaultMark& mark : now.wantedTraits) {
        auto* row = rowIn(*column);
        auto* label = new QLabel(tr("%1 up to %2").arg(faultName(mark.fault), severityWord(mark.severity)), traitList_);
        label->setObjectName(QStringLiteral("wanted trait"));
        auto* remove = new QPushButton(tr("Accept no longer"), traitList_);
        remove->setAccessibleName(tr("Accept %1 no longer").arg(faultName(mark.fault)));
        remove->setEnabled(writable);
        connect(remove, &QPushButton::clicked, this, [this, fault = mark.fault] { putTrait(fault, 0); });
        row->addWidget(label);
        row->addWidget(remove);
        row->addStretch(1);
    }
    traitColumn_->addWidget(traitList_);
    traitList_->setVisible(!now.wantedTraits.empty());
}

void TargetForm::finish(const Entry& entry) {
    if (!entry.field->edit()->isModified())
        return;
    entry.field->recheck(); // a refusal of the desk may not hold any more
    entry.field->complainIfEmpty();
    const auto value = entry.field->stored();
    if (!value || entry.field->fault())
        return; // the field says why
    entry.field->edit()->setModified(false);
    Target changed = target();
    entry.about->set(changed, *value);
    if (changed != target() && !store(changed, entry.about->name, entry.about->path))
        entry.field->edit()->setModified(true); // Enter tries again
}

void TargetForm::finishTyping() {
    for (const Entry& entry : entries_)
        finish(entry);
    finishSetBy();
}

void TargetForm::likeChosenDraw() {
    const int at = draws_->currentIndex();
    if (at < 0 || at >= static_cast<int>(pastDraws_.size()))
        return;
    for (const Entry& entry : entries_) // the windows are replaced, half typed or not
        entry.field->edit()->setModified(false);
    store(likeDraw(target(), pastDraws_[static_cast<std::size_t>(at)]), tr("like an earlier draw"), "like");
}

void TargetForm::putTrait(const std::string& fault, int severity) {
    Target changed = target();
    std::erase_if(changed.wantedTraits, [&](const tasting::FaultMark& mark) { return mark.fault == fault; });
    if (severity > 0)
        changed.wantedTraits.push_back({fault, severity});
    store(changed, tr("accepted traits"), "traits");
}

bool TargetForm::store(const Target& changed, const QString& what, const std::string& key) {
    const facts::TargetFact fact{vessel_, session_.desk().today(), changed};
    const desk::EditNote note{toStd(tr("target of %1: %2").arg(qs(vessel_), inSentence(what))),
                              "target/" + vessel_ + "/" + key};
    const auto done = session_.setToday(facts::Fact{fact}, note);
    session_.setUnstored("target", done ? QStringList() : QStringList{tr("target of %1").arg(qs(vessel_))});
    if (!done) {
        showFault(done.error());
        return false;
    }
    message_->clear();
    Q_EMIT session_.said(tr("Recorded: %1").arg(qs(done->edit)));
    return true;
}

void TargetForm::showFault(const Fault& fault) {
    const Entry* at = nullptr; // the longest name: "/acidity_band" begins like "/acidity"
    for (const Entry& entry : entries_)
        if (fault.path.starts_with("/" + entry.about->path) &&
            (!at || entry.about->path.size() > at->about->path.size()))
            at = &entry;
    if (at)
        at->field->showFault(fault);
    else
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
}

NumberField* TargetForm::number(const std::string& path) const {
    for (const Entry& entry : entries_)
        if (entry.about->path == path)
            return entry.field;
    return nullptr;
}

void TargetForm::focusFirst() {
    entries_.front().field->edit()->setFocus(Qt::OtherFocusReason);
}

QStringList TargetForm::traits() const {
    QStringList all;
    for (const QLabel* label : traitList_->findChildren<QLabel*>(QStringLiteral("wanted trait")))
        all << label->text();
    return all;
}

QString TargetForm::words() const {
    return message_->words();
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/entry_form.h"

#include "advice/advise.h"
#include "desk/brew.h"
#include "desk/history.h"
#include "desk/ledger.h"
#include "desk/lots.h"
#include "ui/draw_refill/brew_offers.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using facts::Fact;
using vessel::EntryKind;

namespace {

Fact blank(EntryKind kind, const facts::VesselName& vessel, Day today) {
    Fact fact;
    facts::withEntry(kind, [&]<class F>(std::type_identity<F>) {
        F entry;
        entry.vessel = vessel;
        entry.on = today;
        fact = std::move(entry);
    });
    return fact;
}

/// What stands among the entries of the ledger and is none looks as an event does.
EntryKind kindOf(const Fact& fact) {
    return facts::traitsOf(fact).entry.value_or(EntryKind::event);
}

QString wordsOf(const Fact& fact) {
    const facts::FactTraits& traits = facts::traitsOf(fact);
    return traits.entry ? wordOf(*traits.entry) : own("ui.history.what." + std::string(traits.kind));
}

} // namespace

EntryForm::EntryForm(Session& session, QWidget* parent)
    : QFrame(parent), session_(session), title_(new QLabel(this)), form_(new FactForm(this)),
      message_(new MessageLabel(this)), asking_(new QWidget(this)), question_(new MessageLabel(asking_)),
      goOn_(new QPushButton(tr("Go on with it"), asking_)), instead_(new QPushButton(asking_)),
      record_(new QPushButton(this)), leave_(new QPushButton(this)) {
    setAccessibleName(tr("Entry"));
    message_->keepRoom(2.2);
    setType(*title_, Type::strong);
    record_->setDefault(true);
    record_->setAutoDefault(true);
    leave_->setText(tr("Cancel (Esc)"));
    leave_->setFlat(true);
    leave_->setAutoDefault(true); // Enter on it leaves, it does not record
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->setSpacing(lines(*this, .5));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(record_);
    buttons->addWidget(leave_);
    buttons->addStretch(1);
    column->addWidget(title_);
    column->addWidget(form_);
    column->addWidget(message_);
    column->addLayout(buttons);
    column->addWidget(asking_);
    makeQuestion();
    connect(form_, &FactForm::edited, this, &EntryForm::edited);
    connect(record_, &QPushButton::clicked, this, &EntryForm::record);
    connect(leave_, &QPushButton::clicked, this, &EntryForm::leave);
    connect(&session, &Session::unitsChanged, this, [this] {
        form_->setUnits(session_.units());
        addHint();
    });
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            record();
    });
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
    setVisible(false);
}

/// Stands below the entry it is about.
void EntryForm::makeQuestion() {
    auto* column = new QVBoxLayout(asking_);
    column->setContentsMargins(0, 0, 0, 0);
    auto* row = new QHBoxLayout;
    for (QPushButton* button : {goOn_, instead_}) {
        button->setAutoDefault(true);
        row->addWidget(button);
    }
    row->addStretch(1);
    column->addWidget(question_);
    column->addLayout(row);
    asking_->setVisible(false);
    connect(goOn_, &QPushButton::clicked, this, &EntryForm::goOn);
    connect(instead_, &QPushButton::clicked, this, [this] {
        const auto open = afterwards_;
        endQuestion();
        open();
    });
}

bool EntryForm::started() const {
    return active_ && form_->touched();
}

bool EntryForm::asking() const {
    return !asking_->isHidden();
}

void EntryForm::unlessStarted(const QString& instead, std::function<void()> open) {
    if (!started()) {
        open();
        return;
    }
    afterwards_ = std::move(open);
    instead_->setText(tr("Cancel and start: %1").arg(instead));
    asking_->setVisible(true);
    question_->say(MessageLabel::Weight::warning, text(say("ui.entry.begun").with("entry", toStd(inWords()))));
    goOn_->setFocus(Qt::OtherFocusReason);
}

void EntryForm::endQuestion() {
    asking_->setVisible(false);
    afterwards_ = nullptr;
}

void EntryForm::goOn() {
    form_->focusFirst();
    endQuestion();
}

void EntryForm::setAside(bool aside) {
    endQuestion();
    setVisible(!aside);
}

/// For a draw a name of its own first, then the lots it can join; else the lots there is beer of.
std::vector<Offer> EntryForm::lotOffers(EntryKind kind, const facts::VesselName& vessel) const {
    const auto lots = session_.desk().lots().value_or(std::vector<desk::LotView>());
    std::vector<Offer> offers;
    if (kind == EntryKind::drawOff) {
        const auto taken = [&](const QString& name) {
            return std::any_of(lots.begin(), lots.end(), [&](const auto& lot) { return qs(lot.name) == name; });
        };
        const auto draws = session_.desk().pastDraws(vessel).value_or(std::vector<desk::PastDraw>());
        std::size_t number = draws.size() + 1;
        while (taken(tr("%1 draw %2").arg(qs(vessel)).arg(number)))
            ++number;
        const QString fresh = tr("%1 draw %2").arg(qs(vessel)).arg(number);
        offers.push_back({fresh, toStd(fresh)});
    }
    for (const desk::LotView& lot : lots)
        if (lot.stage == desk::LotStage::ageing)
            offers.push_back({qs(lot.name), lot.name});
    return offers;
}

FormContext EntryForm::context(EntryKind kind, const facts::VesselName& vessel) const {
    FormContext made;
    made.today = session_.desk().today();
    made.units = session_.units();
    made.labels = vessel::traitsOf(kind).word;
    if (kind == EntryKind::refill || kind == EntryKind::topUp)
        made.brews = brewOffers(session_.desk().brewsToPour(vessel).value_or(std::vector<desk::BrewStock>()), session_);
    made.withoutBrew = kind != EntryKind::refill ? own("ui.choice.usual_recipe")
                       : amended_                ? own("ui.choice.planned_then")
                                                 : withoutBrew(session_.desk(), vessel);
    if (kind == EntryKind::drawOff || kind == EntryKind::refill || kind == EntryKind::topUp)
        made.offers["lot"] = lotOffers(kind, vessel);
    const auto vessels = session_.desk().vessels().value_or(std::vector<facts::VesselFact>());
    for (const facts::VesselFact& other : vessels)
        if (other.name != vessel && !other.retired)
            made.vessels.push_back(other.name);
    return made;
}

void EntryForm::begin(EntryKind kind, const facts::VesselName& vessel) {
    if (active_ && !amended_ && kind == kind_ && vessel == vessel_) {
        goOn();
        return;
    }
    const auto found = session_.desk().vessel(vessel);
    const QString word = wordOf(kind, found && found->toFill);
    unlessStarted(word, [this, kind, vessel, word] {
        amended_.reset();
        title_->setText(tr("%1, %2").arg(word, qs(vessel)));
        record_->setText(tr("&Record"));
        Fact fact = blank(kind, vessel, dayFor(vessel));
        if (auto* refill = std::get_if<facts::RefillFact>(&fact))
            refill->brew = brewMadeFor(session_.desk().brewsToPour(vessel).value_or(std::vector<desk::BrewStock>()));
        open(fact, kind);
    });
}

Day EntryForm::dayFor(const facts::VesselName& vessel) const {
    return dayTyped_ && dayTyped_->first == vessel ? dayTyped_->second : session_.desk().today();
}

/// What is taken from a notebook comes day by day. A takeover is followed by later days.
void EntryForm::rememberDay(const Fact& fact) {
    const Day on = dayOf(fact);
    dayTyped_.reset();
    if (on != session_.desk().today() && kind_ != EntryKind::opening)
        dayTyped_ = {vessel_, on};
}

void EntryForm::amend(const std::string& table, std::int64_t id) {
    if (active_ && amended_ && amended_->table == table && amended_->id == id)
        goOn();
    else
        unlessStarted(tr("the entry selected"), [this, table, id] { openRecorded({table, id}); });
}

void EntryForm::openRecorded(const Amended& entry) {
    const auto fact = session_.desk().fact(entry.table, entry.id);
    if (!fact) {
        Q_EMIT session_.failed(fact.error());
        return;
    }
    amended_ = entry;
    const EntryKind kind = kindOf(*fact);
    title_->setText(tr("%1, %2: amend").arg(wordsOf(*fact), qs(vesselOf(*fact))));
    record_->setText(tr("&Amend"));
    open(*fact, kind);
}

void EntryForm::open(const Fact& fact, EntryKind kind) {
    kind_ = kind;
    vessel_ = vesselOf(fact);
    form_->build(fact, context(kind, vessel_));
    message_->clear();
    active_ = true;
    setVisible(true);
    askForEvent();
    addHint();
    form_->focusFirst();
    preview();
    tell();
}

/// "draw-off of Heron"
QString EntryForm::inWords() const {
    const QString words = amended_ ? tr("amended %1 of %2") : tr("%1 of %2");
    return words.arg(wordsOf(form_->fact()).toLower(), qs(vessel_));
}

/// For who looks whether all is stored.
void EntryForm::tell() {
    session_.setUnstored("entry/" + vessel_, started() ? QStringList{inWords()} : QStringList());
}

/// What happened decides what can be said of it.
void EntryForm::askForEvent() {
    const ChoiceField* what = kind_ == EntryKind::event ? form_->choice("what") : nullptr;
    if (!what)
        return;
    const auto happened = std::get<facts::EventFact>(form_->fact()).what;
    form_->ask("culture", happened == facts::Happening::pitched);
    form_->ask("volume_l", facts::losesBeer(happened));
}

void EntryForm::edited() {
    endQuestion();
    askForEvent();
    preview();
    tell();
}

/// What is planned stands in the empty field as a hint; nothing is filled in that was not measured.
void EntryForm::addHint() {
    if (amended_ || !active_)
        return;
    Litres planned{0};
    if (kind_ == EntryKind::drawOff) {
        if (const auto setting = session_.desk().setting(vessel_))
            planned = setting->draw;
    } else if (kind_ == EntryKind::refill) {
        if (const auto plan = session_.desk().brewPlan(vessel_))
            planned = plan->intoVessel;
    }
    if (planned.l <= 0)
        return;
    const double shown = UnitScale(UnitKind::volume, session_.units()).toShown(planned.l);
    const int decimals = shown < 10 ? 2 : shown < 1000 ? 1 : 0; // no finer than a brewer draws
    form_->setHint("volume_l", tr("plan %1").arg(QString::number(shown, 'f', decimals)));
}

void EntryForm::refresh() {
    if (active_)
        preview();
}

void EntryForm::preview() {
    message_->clear();
    form_->recheck();
    if (!form_->previewable()) {
        Q_EMIT previewed(std::nullopt);
        return;
    }
    const desk::Desk& desk = session_.desk();
    const auto preview =
        amended_ ? desk.preview(amended_->table, amended_->id, form_->fact()) : desk.preview(form_->fact());
    if (!preview) {
        Q_EMIT previewed(std::nullopt);
        showFault(preview.error(), false);
        return;
    }
    QStringList words;
    for (const Message& finding : preview->findings)
        words << session_.words(finding);
    if (!words.isEmpty())
        message_->say(MessageLabel::Weight::warning, words.join(QLatin1Char('\n')));
    Q_EMIT previewed(*preview);
}

void EntryForm::showFault(const Fault& fault, bool goThere) {
    if (!form_->showFault(fault, goThere))
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
}

void EntryForm::record() {
    if (!form_->usable()) {
        form_->complain();
        return;
    }
    if (kind_ == EntryKind::event && !amended_ && !form_->touched()) { // nobody said that anything happened
        message_->say(MessageLabel::Weight::fault, own("ui.entry.event.nothing"));
        form_->choice("what")->setFocus(Qt::OtherFocusReason);
        return;
    }
    const auto batch = session_.batch(); // the ledger is read anew when the form is closed
    const Fact fact = form_->fact();
    const auto done = amended_ ? session_.amend(amended_->table, amended_->id, fact) : session_.record(fact);
    if (!done) {
        showFault(done.error(), true);
        return;
    }
    if (!amended_)
        rememberDay(fact);
    leave();
}

void EntryForm::leave() {
    if (!active_)
        return;
    active_ = false;
    tell();
    amended_.reset();
    setAside(true);
    Q_EMIT previewed(std::nullopt);
    Q_EMIT closed();
}

QString EntryForm::words() const {
    return message_->words();
}

void EntryForm::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape && asking())
        goOn();
    else if (event->key() == Qt::Key_Escape)
        leave();
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        record();
    else
        QFrame::keyPressEvent(event);
}

} // namespace staveline::ui

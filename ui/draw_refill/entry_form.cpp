// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/entry_form.h"

#include "advice/advise.h"
#include "desk/brew.h"
#include "desk/history.h"
#include "desk/ledger.h"
#include "desk/lots.h"
#include "ui/draw_refill/brew_offers.h"
#include "ui/present/text.h"
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

EntryForm::EntryForm(Session& session, QWidget* parent) : EntryFrame(session, 2.2, parent) {}

/// For a draw a name of its own first, then the lots it can join; else the lots there is beer of.
std::vector<Offer> EntryForm::lotOffers(EntryKind kind, const facts::VesselName& vessel) const {
    const auto lots = session().desk().lotsInBrief().value_or(std::vector<desk::LotView>());
    std::vector<Offer> offers;
    if (kind == EntryKind::drawOff) {
        const auto taken = [&](const QString& name) {
            return std::any_of(lots.begin(), lots.end(), [&](const auto& lot) { return qs(lot.name) == name; });
        };
        const auto draws = session().desk().pastDraws(vessel).value_or(std::vector<desk::PastDraw>());
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

FormContext EntryForm::context(EntryKind kind, const facts::VesselName& vessel, bool recorded) const {
    FormContext made;
    made.today = session().desk().today();
    made.units = session().units();
    made.labels = vessel::traitsOf(kind).word;
    if (kind == EntryKind::refill || kind == EntryKind::topUp)
        made.brews =
            brewOffers(session().desk().brewsToPour(vessel).value_or(std::vector<desk::BrewStock>()), session());
    made.withoutBrew = kind != EntryKind::refill ? own("ui.choice.usual_recipe")
                       : recorded                ? own("ui.choice.planned_then")
                                                 : withoutBrew(session().desk(), vessel);
    if (kind == EntryKind::drawOff || kind == EntryKind::refill || kind == EntryKind::topUp)
        made.offers["lot"] = lotOffers(kind, vessel);
    const auto vessels = session().desk().vessels().value_or(std::vector<facts::VesselFact>());
    for (const facts::VesselFact& other : vessels)
        if (other.name != vessel && !other.retired)
            made.vessels.push_back(other.name);
    return made;
}

void EntryForm::begin(EntryKind kind, const facts::VesselName& vessel) {
    if (active() && !amended() && kind == kind_ && vessel == vessel_) {
        goOn();
        return;
    }
    const auto found = session().desk().vessel(vessel);
    const QString word = wordOf(kind, found && found->toFill);
    unlessStarted(word, [this, kind, vessel, word] {
        Fact fact = blank(kind, vessel, dayFor(vessel));
        if (auto* refill = std::get_if<facts::RefillFact>(&fact))
            refill->brew = brewMadeFor(session().desk().brewsToPour(vessel).value_or(std::vector<desk::BrewStock>()));
        open(fact, kind, tr("%1, %2").arg(word, qs(vessel)), std::nullopt);
    });
}

Day EntryForm::dayFor(const facts::VesselName& vessel) const {
    return dayTyped_ && dayTyped_->first == vessel ? dayTyped_->second : session().desk().today();
}

/// What is taken from a notebook comes day by day. A takeover is followed by later days.
void EntryForm::rememberDay(const Fact& fact) {
    const Day on = dayOf(fact);
    dayTyped_.reset();
    if (on != session().desk().today() && kind_ != EntryKind::opening)
        dayTyped_ = {vessel_, on};
}

void EntryForm::amend(const std::string& table, std::int64_t id) {
    if (active() && amended() == Amended{table, id})
        goOn();
    else
        unlessStarted(tr("the entry selected"), [this, table, id] { openRecorded({table, id}); });
}

void EntryForm::openRecorded(const Amended& entry) {
    const auto fact = session().desk().fact(entry.table, entry.id);
    if (!fact)
        Q_EMIT session().failed(fact.error());
    else
        open(*fact, kindOf(*fact), tr("%1, %2: amend").arg(wordsOf(*fact), qs(vesselOf(*fact))), entry);
}

void EntryForm::open(const Fact& fact, EntryKind kind, const QString& title, const std::optional<Amended>& recorded) {
    kind_ = kind;
    vessel_ = vesselOf(fact);
    EntryFrame::open(fact, context(kind, vessel_, recorded.has_value()), title, recorded);
}

void EntryForm::opened() {
    askForEvent();
    addHint();
    preview();
}

/// "draw-off of Heron"
QString EntryForm::inWords() const {
    const QString words = amended() ? tr("amended %1 of %2") : tr("%1 of %2");
    return words.arg(inSentence(wordsOf(fields().fact())), qs(vessel_));
}

std::string EntryForm::unstoredKey() const {
    return "entry/" + vessel_;
}

/// What happened decides what can be said of it.
void EntryForm::askForEvent() {
    const ChoiceField* what = kind_ == EntryKind::event ? fields().choice("what") : nullptr;
    if (!what)
        return;
    const auto happened = std::get<facts::EventFact>(fields().fact()).what;
    fields().ask("culture", happened == facts::Happening::pitched);
    fields().ask("volume_l", facts::losesBeer(happened));
}

void EntryForm::edited() {
    askForEvent();
    preview();
}

/// What is planned stands in the empty field as a hint; nothing is filled in that was not measured.
void EntryForm::addHint() {
    if (amended() || !active())
        return;
    Litres planned{0};
    if (kind_ == EntryKind::drawOff) {
        if (const auto setting = session().desk().setting(vessel_))
            planned = setting->draw;
    } else if (kind_ == EntryKind::refill) {
        if (const auto plan = session().desk().brewPlan(vessel_))
            planned = plan->intoVessel;
    }
    if (planned.l <= 0)
        return;
    const double shown = UnitScale(UnitKind::volume, session().units()).toShown(planned.l);
    const int decimals = shown < 10 ? 2 : shown < 1000 ? 1 : 0; // no finer than a brewer draws
    fields().setHint("volume_l", tr("plan %1").arg(numberWords(shown, decimals)));
}

void EntryForm::refresh() {
    if (active())
        preview();
}

void EntryForm::preview() {
    message().clear();
    fields().recheck();
    if (!fields().previewable()) {
        Q_EMIT previewed(std::nullopt);
        return;
    }
    const desk::Desk& desk = session().desk();
    const auto preview =
        amended() ? desk.preview(amended()->table, amended()->id, fields().fact()) : desk.preview(fields().fact());
    if (!preview) {
        Q_EMIT previewed(std::nullopt);
        showFault(preview.error(), false);
        return;
    }
    QStringList words;
    for (const Message& finding : preview->findings)
        words << session().words(finding);
    if (!words.isEmpty())
        message().say(MessageLabel::Weight::warning, words.join(QLatin1Char('\n')));
    Q_EMIT previewed(*preview);
}

/// Of an event untouched nobody said that anything happened.
bool EntryForm::mayRecord() {
    if (kind_ != EntryKind::event || amended() || fields().touched())
        return true;
    message().say(MessageLabel::Weight::fault, own("ui.entry.event.nothing"));
    fields().choice("what")->setFocus(Qt::OtherFocusReason);
    return false;
}

void EntryForm::stored(const Fact& fact) {
    if (!amended())
        rememberDay(fact);
}

void EntryForm::left() {
    Q_EMIT previewed(std::nullopt);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/page.h"

#include "sheet/document.h"
#include "ui/finish/answer_parts.h"
#include "ui/finish/beer_panel.h"
#include "ui/finish/blend_form.h"
#include "ui/finish/lot_ledger.h"
#include "ui/finish/lot_list.h"
#include "ui/finish/lot_parts.h"
#include "ui/finish/pack_form.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/part_choice.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"

#include <QPushButton>
#include <QSignalBlocker>
#include <QStackedWidget>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace staveline::ui {
namespace {

constexpr int pause = 250; // ms without a keystroke before the answer is worked out
constexpr auto note = MessageLabel::Weight::note;

/// As it was asked about; the brewer corrects what came out otherwise.
facts::PackagingFact fillingOf(const desk::LotView& lot, const desk::PackingRequest& asked,
                               const desk::PackingAnswer& answer, Day today) {
    facts::PackagingFact filled;
    filled.lot = lot.name;
    filled.on = today;
    filled.name = toStd(FinishPage::tr("%1, filling %2").arg(qs(lot.name)).arg(lot.packages.size() + 1));
    filled.size = answer.package.size;
    filled.count = static_cast<int>(answer.priming.packages);
    filled.make = asked.make;
    filled.rating = asked.package.rating;
    filled.sugar = answer.sugar.id;
    if (!answer.sugar.isLiquid())
        filled.sugarWeight = answer.priming.perLitre;
    filled.lost = answer.lost;
    filled.planned = answer.wanted;
    if (answer.residual.measured)
        filled.residual = answer.residual.value;
    filled.warmest = asked.package.warmest;
    return filled;
}

/// What was measured for the question belongs to the record that the filling rests on.
std::vector<facts::Fact> measuredWith(const desk::PackingRequest& asked, Day today) {
    std::vector<facts::Fact> readings;
    const auto add = [&](SpecificGravity gravity, Day on, bool keptWarm) {
        facts::LotReadingFact reading;
        reading.lot = asked.lot;
        reading.on = on;
        reading.measured.gravity = gravity;
        reading.keptWarm = keptWarm;
        readings.emplace_back(reading);
    };
    if (asked.gravity)
        add(*asked.gravity, today, false);
    if (asked.forced)
        add(*asked.forced, asked.forcedOn.value_or(today), true);
    return readings;
}

} // namespace

FinishPage::FinishPage(Session& session, QWidget* parent)
    : WorkPage(session, parent), beer_(new BeerPanel(session)), list_(new LotList(session)),
      keep_(new QPushButton(tr("Keep as packed"))), places_(new QStackedWidget), ledger_(new LotLedger(session)),
      answer_(new AnswerView), later_(new QTimer(this)) {
    auto* inner = new Panes(QStringLiteral("finish_answer"));
    inner->addPane(makeMiddle(), 25, 18);
    auto* answers = new SteadyScroll(answer_, inner);
    answers->setAccessibleName(tr("Answer"));
    inner->addPane(answers, 22, 15);
    auto* outer = new Panes(QStringLiteral("finish"), this);
    outer->addPane(makeLeft(), 14, 10);
    outer->addPane(inner, 47, 0);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .5), 0, 0);
    column->addWidget(outer);
    later_->setSingleShot(true);
    later_->setInterval(pause);
    connect(later_, &QTimer::timeout, this, &FinishPage::answerNow);
    connect(list_, &LotList::chose, this, [this] {
        showBeer();
        showPart(lot() ? Part::ledger : part_);
    });
    connect(ledger_, &LotLedger::keptWith, this, [this](const QString& lot) {
        if (const auto of = forms_.find(toStd(lot)); of != forms_.end())
            of->second.pack->forgetMeasured();
    });
    connect(keep_, &QPushButton::clicked, this, &FinishPage::keepAsPacked);
}

/// The list has what room it needs before the drawing.
QWidget* FinishPage::makeLeft() {
    auto* left = new QWidget;
    beerPlace_ = new SteadyScroll(beer_, left);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, lines(*this, .3), 0);
    column->addWidget(list_, 1);
    column->addWidget(beerPlace_, 3);
    return left;
}

QWidget* FinishPage::makeMiddle() {
    auto* middle = new QWidget;
    choice_ = new PartChoice({tr("Pack"), tr("Blend"), tr("Ledger")}, middle);
    choice_->addBeside(keep_);
    connect(choice_, &PartChoice::chosen, this, [this](int part) { showPart(static_cast<Part>(part)); });
    places_->addWidget(ledger_);
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(lines(*this, .6), 0, 0, 0);
    column->addWidget(choice_);
    column->addWidget(places_, 1);
    return middle;
}

FinishPage::Forms FinishPage::makeForms() {
    Forms made;
    made.pack = new PackForm(session());
    made.blend = new BlendForm(session());
    const std::array<QuestionForm*, 2> each = {made.pack, made.blend};
    for (std::size_t i = 0; i < each.size(); ++i) {
        made.places[i] = new SteadyScroll(each[i], places_);
        made.places[i]->setAccessibleName(choice_->button(static_cast<int>(i)).text());
        places_->addWidget(made.places[i]);
        connect(each[i], &QuestionForm::edited, later_, qOverload<>(&QTimer::start));
    }
    return made;
}

FinishPage::Forms& FinishPage::forms() {
    const auto known = forms_.find(beer());
    return known != forms_.end() ? known->second : forms_.emplace(beer(), makeForms()).first->second;
}

QuestionForm& FinishPage::inFront() {
    if (part_ == Part::pack)
        return *forms().pack;
    return *forms().blend;
}

const desk::LotView* FinishPage::lot() const {
    const facts::LotName name = list_->chosen();
    const auto at = std::find_if(lots_.begin(), lots_.end(), [&](const auto& lot) { return lot.name == name; });
    return at != lots_.end() ? &*at : nullptr;
}

std::string FinishPage::beer() const {
    return lot() ? lot()->name : vessel();
}

void FinishPage::chooseLot(const facts::LotName& lot) {
    list_->choose(lot);
}

void FinishPage::showPart(Part part) {
    part_ = part == Part::ledger && !lot() ? Part::pack : part;
    part = part_;
    choice_->setFront(static_cast<int>(part));
    if (vessel().empty())
        return;
    if (part == Part::blend)
        forms().blend->offer(vessels_, lots_, beer());
    if (part == Part::ledger)
        places_->setCurrentWidget(ledger_);
    else
        places_->setCurrentWidget(forms().places[static_cast<std::size_t>(part)]);
    answerNow();
}

void FinishPage::refresh() {
    const auto ledger = session().desk().ledger(vessel());
    auto vessels = session().desk().cellar();
    auto lots = session().desk().lotsInBrief();
    const auto cannot = [this](const auto& result) {
        if (!result)
            Q_EMIT session().failed(result.error());
        return !result;
    };
    if (cannot(ledger) || cannot(vessels) || cannot(lots))
        return;
    lots_ = std::move(*lots);
    vessels_ = std::move(*vessels);
    beer_->show(*ledger);
    list_->show(vessel(), lots_);
    showBeer();
    showPart(part_);
    if (std::exchange(shown_, vessel()) != vessel())
        for (SteadyScroll* scroll : findChildren<SteadyScroll*>())
            scroll->toTop();
}

/// Of a lot its ledger in the middle, of the vessel its drawing below the list.
void FinishPage::showBeer() {
    const desk::LotView* inView = lot();
    beerPlace_->setVisible(inView == nullptr);
    choice_->button(static_cast<int>(Part::ledger)).setVisible(inView != nullptr);
    if (inView)
        ledger_->show(*inView, lots_);
}

void FinishPage::showLot() {
    if (const auto inFull = session().desk().lot(beer()))
        answer_->show(answerOf(*inFull, session()));
    else
        answer_->wait(MessageLabel::Weight::fault, session().words(inFull.error()));
}

void FinishPage::answerNow() {
    later_->stop();
    packed_.reset();
    keep_->setVisible(lot() != nullptr && part_ == Part::pack);
    keep_->setEnabled(false);
    if (part_ == Part::ledger)
        showLot();
    else
        answer(inFront());
    Q_EMIT answered();
}

void FinishPage::answer(QuestionForm& form) {
    form.recheck();
    if (!form.usable())
        answer_->wait(note, own("ui.finish.unusable"));
    else if (part_ == Part::pack)
        answerPack(*forms().pack);
    else
        answerBlend(*forms().blend);
}

template <class Form> void FinishPage::tell(Form& form, const Fault& fault) {
    if (form.showFault(fault))
        answer_->wait(note, own("ui.finish.unusable"));
    else
        answer_->wait(MessageLabel::Weight::fault, session().words(fault));
}

void FinishPage::answerPack(PackForm& form) {
    if (!form.asks()) {
        answer_->wait(note, own("ui.finish.pack.first"));
        return;
    }
    const auto request = form.request(vessel(), lot() ? lot()->name : facts::LotName());
    const auto answer = request.and_then([this](const auto& each) { return session().desk().pack(each); });
    if (!answer) {
        tell(form, answer.error());
        return;
    }
    asked_ = *request;
    packed_ = *answer;
    keep_->setEnabled(!session().desk().readOnly() && request->fruit.empty()); // fruit is an addition to the lot
    keep_->setToolTip(request->fruit.empty() ? QString() : own("ui.finish.keep_fruit"));
    form.sayWhatCame(*answer);
    answer_->show(answerOf(*answer, session()));
}

void FinishPage::answerBlend(BlendForm& form) {
    if (!form.asks()) {
        answer_->wait(note, own("ui.finish.blend.first"));
        return;
    }
    const auto answer = session().desk().blend(form.request());
    if (!answer)
        tell(form, answer.error());
    else
        answer_->show(answerOf(*answer, session()));
}

std::optional<Printout::Made> FinishPage::paper() const {
    if (!packed_)
        return {};
    return Printout::Made{session().desk().packingSheet(*packed_, session().units()),
                          tr("%1 packaging %2").arg(qs(packed_->name), qs(isoDay(session().desk().today())))};
}

std::optional<Printout::Made> FinishPage::labels() const {
    if (!packed_)
        return {};
    auto made = session().desk().bottleLabels(*packed_, session().units());
    if (!made)
        return {};
    return Printout::Made{*std::move(made),
                          tr("%1 labels %2").arg(qs(packed_->name), qs(isoDay(session().desk().today())))};
}

void FinishPage::keepAsPacked() {
    answerNow();
    const desk::LotView* of = lot();
    if (!packed_ || !of)
        return;
    const facts::PackagingFact filled = fillingOf(*of, *asked_, *packed_, session().desk().today());
    const auto measured = measuredWith(*asked_, session().desk().today());
    showPart(Part::ledger);
    ledger_->begin(filled, measured);
}

void FinishPage::leaveVessel() {
    const QSignalBlocker quiet(list_);
    list_->choose({});
}

void FinishPage::focusWork() {
    if (part_ == Part::ledger)
        ledger_->focusWork();
    else
        inFront().focusFirst();
}

} // namespace staveline::ui

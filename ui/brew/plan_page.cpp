// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/plan_page.h"

#include "advice/advise.h"
#include "desk/brew.h"
#include "ui/brew/flow_diagram.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/row_list.h"
#include "ui/brew/step_section.h"
#include "ui/present/choice_words.h"
#include "ui/present/score_words.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QTimer>
#include <QVBoxLayout>

namespace staveline::ui {

using desk::PlannedRecipe;

namespace {

/// Adopted as it is written down, not a setting of the brewer's own.
bool isUsual(const PlannedRecipe& planned) {
    return planned.usual && planned.proposal == facts::ChoiceFact::own;
}

Message originOf(const PlannedRecipe& planned) {
    const Day since = planned.since.value_or(Day{});
    switch (planned.from) {
    case PlannedRecipe::From::baseRecipe:
        return say("ui.brew.from_usual").with("since", toStd(dayWords(since)));
    case PlannedRecipe::From::choice:
        break;
    case PlannedRecipe::From::lastRefill:
        return say("ui.brew.from_last").with("on", toStd(dayWords(since)));
    case PlannedRecipe::From::habit:
        return say("ui.brew.from_habit");
    }
    return say("ui.brew.from_choice")
        .with("choice", toStd(sentenceCase(isUsual(planned) ? usualName() : choiceName(planned.proposal))))
        .with("on", toStd(dayWords(since)));
}

/// What is edited becomes the recipe that the vessel runs on.
Message firstFillOrigin(const PlannedRecipe& planned) {
    if (planned.from == PlannedRecipe::From::habit || !planned.since)
        return say("ui.brew.first_fill.habit");
    return say("ui.brew.first_fill.known").with("since", *planned.since);
}

} // namespace

QString originWords(const PlannedRecipe& planned) {
    if (planned.firstFill)
        return text(firstFillOrigin(planned));
    const bool also = planned.usual && planned.from == PlannedRecipe::From::choice && !isUsual(planned);
    return text(originOf(planned)) + (also ? QLatin1Char(' ') + own("ui.brew.also_usual") : QString());
}

PlanPage::PlanPage(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), model_(new RecipeEditorModel(session, this)), origin_(new QLabel(this)),
      moves_(quietLabel({}, this)), message_(new MessageLabel(this)),
      usual_(new QPushButton(tr("Make this the usual recipe"), this)), scroll_(new SteadyScroll(nullptr, this)),
      flow_(new FlowPage(*model_, FlowPage::Purpose::plan)), kit_(new KitEditor(*model_)) {
    model_->setStore([this](const advice::Setting& setting, const desk::EditNote& note) {
        return session_.revise(vessel_, setting, note);
    });
    origin_->setObjectName("origin");
    moves_->setObjectName("moves");
    message_->setObjectName("message");
    message_->keepRoom(1.1);
    origin_->setWordWrap(true);
    auto* head = new QHBoxLayout;
    auto* words = new QVBoxLayout;
    words->setSpacing(0);
    words->addWidget(origin_);
    words->addWidget(moves_);
    head->addLayout(words, 1);
    head->addWidget(usual_, 0, Qt::AlignTop);
    auto* page = new QWidget;
    auto* inner = new QVBoxLayout(page);
    inner->setContentsMargins(0, 0, 0, 0);
    inner->setSpacing(0);
    inner->addWidget(flow_);
    inner->addWidget(kit_);
    inner->addStretch(1);
    scroll_->setWidget(page);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(head);
    column->addWidget(message_);
    column->addWidget(&flow_->diagram());
    column->addWidget(scroll_, 1);
    connect(flow_, &FlowPage::wentTo, this, [this](QWidget* step) {
        scroll_->verticalScrollBar()->setValue(step->mapTo(scroll_->widget(), QPoint()).y());
    });
    connect(&kit_->button(), &QPushButton::toggled, this, [this](bool open) {
        if (open) // it opens below what is in sight
            QTimer::singleShot(0, kit_, [this] { scroll_->ensureWidgetVisible(&kit_->form(), 0, lines(*this, 2)); });
    });
    connect(usual_, &QPushButton::clicked, this, &PlanPage::makeUsual);
    connect(model_, &RecipeEditorModel::recalculated, this, &PlanPage::sayState);
}

void PlanPage::showVessel(const facts::VesselName& vessel) {
    if (vessel == vessel_)
        return;
    vessel_ = vessel;
    planned_.reset();
    scroll_->toTop();
}

void PlanPage::refresh() {
    const bool first = !planned_;
    const auto planned = session_.desk().planned(vessel_);
    scroll_->setVisible(planned.has_value());
    flow_->diagram().setVisible(planned.has_value());
    usual_->setVisible(planned.has_value());
    if (!planned) {
        planned_.reset();
        origin_->clear();
        moves_->clear();
        message_->say(MessageLabel::Weight::note, session_.words(planned.error()));
        return;
    }
    planned_ = *planned;
    message_->clear();
    model_->setLocked(planned_->brewed.has_value() || session_.desk().readOnly());
    const facts::EquipmentFact kit = session_.desk().kit(vessel_);
    flow_->setFirstFill(planned_->firstFill);
    if (first)
        model_->begin(vessel_, planned_->setting, kit);
    else
        model_->rebase(planned_->setting, kit);
    kit_->sync();
    sayOrigin();
}

void PlanPage::sayOrigin() {
    origin_->setText(originWords(*planned_));
    QStringList moves;
    for (const std::string& move : planned_->moves)
        moves << qs(move);
    moves_->setText(moves.join(QStringLiteral("; ")));
    moves_->setVisible(!moves.isEmpty());
    usual_->setEnabled(!session_.desk().readOnly() && !planned_->usual);
    sayState();
}

/// The field at fault may be scrolled away: the head of the page says that there is one.
void PlanPage::sayState() {
    message_->clear();
    if (!planned_)
        return;
    if (model_->refused())
        message_->say(MessageLabel::Weight::fault,
                      session_.words(*model_->fault()) + QLatin1Char(' ') + own("ui.brew.refused"));
    else if (model_->fault())
        message_->say(MessageLabel::Weight::warning, own("ui.brew.not_stored"));
    else if (planned_->brewed)
        message_->say(MessageLabel::Weight::note, text(say("ui.brew.locked")
                                                           .with("brew", planned_->brewed->name)
                                                           .with("on", toStd(dayWords(planned_->brewed->on)))));
}

void PlanPage::storeInHand() {
    if (planned_)
        model_->finish();
}

void PlanPage::makeUsual() {
    if (!planned_)
        return;
    storeInHand();
    const facts::BaseRecipeFact usual{vessel_, session_.desk().today(), planned_->setting.recipe};
    if (const auto done = session_.record(facts::Fact{usual}); !done)
        message_->say(MessageLabel::Weight::fault, session_.words(done.error()));
}

void PlanPage::focusFirst() {
    if (planned_)
        flow_->focusFirst();
}

} // namespace staveline::ui

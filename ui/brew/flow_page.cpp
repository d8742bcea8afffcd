// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/flow_page.h"

#include "advice/advise.h"
#include "quantity/density.h"
#include "ui/brew/flow_diagram.h"
#include "ui/brew/grist_editor.h"
#include "ui/brew/hop_editor.h"
#include "ui/brew/mash_editor.h"
#include "ui/brew/row_list.h"
#include "ui/brew/step_section.h"
#include "ui/brew/yeast_editor.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {

using advice::Setting;
using brewing::BrewPlan;
using brewing::Recipe;

namespace {

constexpr Celsius cold{20}; // litres of water and wort are stated at

struct Belongs {
    std::string_view begin;
    FlowPage::Step step;
};
constexpr std::array places = {
    Belongs{"caution.mash.", FlowPage::mash},         Belongs{"caution.kettle.", FlowPage::kettle},
    Belongs{"caution.yeast.", FlowPage::fermenter},   Belongs{"caution.fermenter.", FlowPage::fermenter},
    Belongs{"caution.draw.", FlowPage::vessel},       Belongs{"caution.refill.", FlowPage::vessel},
    Belongs{"brewing.water_", FlowPage::water},       Belongs{"brewing.strike_", FlowPage::water},
    Belongs{"brewing.tun_", FlowPage::mash},          Belongs{"brewing.late_", FlowPage::mash},
    Belongs{"brewing.run_off", FlowPage::mash},       Belongs{"brewing.power_", FlowPage::mash},
    Belongs{"brewing.not_converted", FlowPage::mash}, Belongs{"brewing.starch_closed", FlowPage::mash},
    Belongs{"brewing.house.extract", FlowPage::mash}, Belongs{"brewing.house.final", FlowPage::fermenter},
    Belongs{"brewing.kettle_", FlowPage::kettle},     Belongs{"brewing.fermenter_", FlowPage::fermenter},
    Belongs{"brewing.brew_short", FlowPage::vessel}};

/// Fields of the recipe that are one number.
template <class Q> NumberTie tieOf(const char* path, const QString& name, UnitKind unit, Q Recipe::*member) {
    return {path,
            name,
            unit,
            [member](const Setting& s) { return raw(s.recipe.*member); },
            [member](Setting& s, double value) { s.recipe.*member = Q{value}; },
            {}};
}

} // namespace

FlowPage::Step FlowPage::stepOf(const std::string& key) {
    const auto at =
        std::find_if(places.begin(), places.end(), [&](const Belongs& p) { return key.starts_with(p.begin); });
    return at == places.end() ? wanted : at->step;
}

FlowPage::FlowPage(RecipeEditorModel& model, Purpose purpose, QWidget* parent)
    : QWidget(parent), model_(model), purpose_(purpose), binder_(new Binder(model, this)),
      diagram_(new FlowDiagram(stepCount_ - 1, this)) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, lines(*this, .6), 0);
    column->setSpacing(0);
    const QString begin = purpose == Purpose::plan ? tr("The refill") : tr("The brew");
    const std::array<QString, stepCount_> names = {begin,        tr("Water"),     tr("Mash"),
                                                   tr("Kettle"), tr("Fermenter"), tr("Vessel")};
    auto* first = new QHBoxLayout; // two short steps beside each other: the mash comes sooner into sight
    first->setSpacing(lines(*this, 1.5));
    for (std::size_t i = 0; i < names.size(); ++i) {
        steps_[i] = new StepSection(names[i], this);
        if (i < mash)
            first->addWidget(steps_[i], i == wanted ? 3 : 2, Qt::AlignTop);
        else
            column->addWidget(steps_[i]);
    }
    column->insertLayout(0, first);
    connect(diagram_, &FlowDiagram::chosen, this, &FlowPage::goTo);
    column->addStretch(1);
    addWanted();
    addFields(water,
              {tieOf("/liquor_to_grist_l_kg", tr("Water to grain"), UnitKind::thickness, &Recipe::liquorToGrist)});
    grist_ = new GristEditor(*binder_, purpose == Purpose::plan ? GristEditor::Of::plan : GristEditor::Of::brewed,
                             steps_[mash]);
    mash_ = new MashEditor(*binder_, *grist_, steps_[mash]);
    steps_[mash]->addWidget(mash_);
    addKettle();
    yeast_ = new YeastEditor(*binder_, steps_[fermenter]);
    steps_[fermenter]->addWidget(yeast_);
    binder_->place("", steps_[wanted]->fault());
    connect(&model, &RecipeEditorModel::recalculated, this, &FlowPage::refresh);
    connect(&model.session(), &Session::unitsChanged, this, [this] { refresh(false); });
}

void FlowPage::addWanted() {
    std::vector<NumberTie> ties = {
        {"/original_gravity_p",
         tr("Original gravity"),
         UnitKind::gravity,
         [](const Setting& s) { return toGravity(s.recipe.originalGravity).sg; },
         [](Setting& s, double value) { s.recipe.originalGravity = toPlato(SpecificGravity{value}); },
         {}},
        tieOf("/bitterness_ibu", tr("Bitterness"), UnitKind::bitterness, &Recipe::bitterness)};
    if (purpose_ == Purpose::plan)
        ties.push_back({"/draw_l",
                        tr("Draw"),
                        UnitKind::volume,
                        [](const Setting& s) { return s.draw.l; },
                        [](Setting& s, double value) { s.draw = Litres{value}; },
                        {}});
    addFields(wanted, ties);
}

void FlowPage::setFirstFill(bool firstFill) {
    firstFill_ = firstFill;
    binder_->numberAt("/draw_l")->parentWidget()->setVisible(!firstFill);
}

void FlowPage::addKettle() {
    addFields(kettle,
              {tieOf("/boil_min", tr("Boil"), UnitKind::minutes, &Recipe::boil),
               tieOf("/sugar_share", tr("Sugar, of the extract"), UnitKind::share, &Recipe::sugarShare)},
              sugarKind());
    hops_ = new HopEditor(*binder_, steps_[kettle]);
    steps_[kettle]->addWidget(hops_);
    addFields(kettle,
              {tieOf("/pre_soured_share", tr("Soured before the boil"), UnitKind::share, &Recipe::preSoured),
               tieOf("/pre_sour_ta_g_l", tr("Acidity of that part"), UnitKind::concentration, &Recipe::preSourTa)});
}

QWidget* FlowPage::sugarKind() {
    auto* both = new QWidget(steps_[kettle]);
    auto* kind = new ChoiceField(both);
    auto* message = new MessageLabel(both);
    offerGrain(*kind, model_.session(), true);
    binder_->tie(*kind,
                 {"/sugar", tr("Kind of sugar"), [](const Setting& s) { return s.recipe.sugar; },
                  [](Setting& s, const std::string& id) { s.recipe.sugar = id; }},
                 message);
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(kind, 0, Qt::AlignLeft);
    column->addWidget(message);
    return captioned(tr("Kind of sugar"), both, kind, steps_[kettle]);
}

void FlowPage::addFields(Step step, const std::vector<NumberTie>& ties, QWidget* last) {
    auto* line = new QWidget(steps_[step]);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, 1));
    for (const NumberTie& tie : ties) {
        NumberField* field = binder_->number(tie, line);
        row->addWidget(captioned(tie.name, field, field->edit(), line), 1, Qt::AlignTop);
    }
    if (last)
        row->addWidget(last, 1, Qt::AlignTop);
    for (std::size_t i = ties.size() + (last ? 1 : 0); i < 3; ++i)
        row->addStretch(1);
    steps_[step]->addWidget(line);
}

void FlowPage::refresh(bool anew) {
    grist_->sync();
    mash_->sync();
    hops_->sync();
    yeast_->sync();
    if (model_.draft()) {
        sayAmounts(model_.draft()->plan);
        sayNotes(model_.draft()->plan);
        showDiagram(model_.draft()->plan);
    }
    binder_->show(anew);
}

void FlowPage::sayAmounts(const BrewPlan& plan) {
    const Session& session = model_.session();
    const auto words = [&](Message message) { return session.words(message); };
    steps_[wanted]->sayAmounts(
        words(say("ui.brew.wanted").with("into", plan.intoVessel).with("gravity", plan.originalGravity)),
        words(moreOfRefill(plan)));
    const Celsius strike = plan.mash.empty() ? cold : plan.mash.front().waterTemperature;
    steps_[water]->sayAmounts(words(say("ui.brew.water").with("water", plan.strikeAndInfusion + plan.sparge)),
                              words(say(plan.cannot ? "ui.brew.water_boils" : "ui.brew.water_more")
                                        .with("cold", cold)
                                        .with("mashing", plan.strikeAndInfusion)
                                        .with("strike", strike)
                                        .with("sparge", plan.sparge)));
    steps_[mash]->sayAmounts(
        words(say("ui.brew.mash").with("preBoil", plan.preBoilHot).with("gravity", plan.preBoilGravity)),
        words(say("ui.brew.mash_more").with("volume", plan.mashVolume).with("grist", plan.gristMass)));
    steps_[kettle]->sayAmounts(
        words(say("ui.brew.kettle").with("hot", plan.postBoilHot).with("gravity", plan.originalGravity)),
        words(say(plan.sugar.kg > 0 ? "ui.brew.kettle_sugar" : "ui.brew.kettle_more")
                  .with("cold", plan.postBoil)
                  .with("at", cold)
                  .with("bitterness", plan.bitterness)
                  .with("sugar", plan.sugar)));
    steps_[fermenter]->sayAmounts(
        words(say("ui.brew.fermenter").with("into", plan.intoFermenter).with("gravity", plan.originalGravity)),
        words(moreOfFermenter(plan)));
    steps_[vessel]->sayAmounts(
        words(say("ui.brew.vessel").with("into", plan.intoVessel).with("gravity", plan.finalGravity)),
        words(say(plan.leftOver.l > 0 ? "ui.brew.left_over" : "ui.brew.nothing_left").with("left", plan.leftOver)));
}

Message FlowPage::moreOfRefill(const BrewPlan& plan) const {
    const auto& litres = model_.measured().intoFermenter;
    return say(firstFill_                  ? "ui.brew.wanted_first"
               : purpose_ == Purpose::plan ? "ui.brew.wanted_more"
               : litres                    ? "ui.brew.brewed_back"
                                           : "ui.brew.brewed_more")
        .with("draw", model_.setting().draw)
        .with("litres", litres.value_or(plan.intoFermenter))
        .with("bitterness", plan.bitterness)
        .with("alcohol", plan.alcohol)
        .with("colour", plan.colour);
}

Message FlowPage::moreOfFermenter(const BrewPlan& plan) const {
    const desk::BrewMeasures& measured = model_.measured();
    return say(measured.finalGravity     ? "ui.brew.fermenter_ended"
               : measured.intoFermenter  ? "ui.brew.fermenter_measured"
               : model_.kit().brewLength ? "ui.brew.fermenter_fixed"
                                         : "ui.brew.fermenter_more")
        .with("days", Days{static_cast<double>(plan.primaryDays)})
        .with("final", plan.finalGravity)
        .with("alcohol", plan.alcohol);
}

void FlowPage::sayNotes(const BrewPlan& plan) {
    std::array<QStringList, stepCount_> findings, cautions;
    for (const Message& finding : plan.findings)
        findings[stepOf(finding.key)] << model_.session().words(finding);
    for (const auto* notes : {&plan.assumptions, &plan.cautions})
        for (const Message& note : *notes)
            cautions[stepOf(note.key)] << model_.session().words(note);
    for (std::size_t i = 0; i < steps_.size(); ++i)
        steps_[i]->setNotes(findings[i], cautions[i]);
    steps_[water]->fault().say(MessageLabel::Weight::fault,
                               plan.cannot ? model_.session().words(*plan.cannot) : QString());
}

void FlowPage::showDiagram(const BrewPlan& plan) {
    const Session& session = model_.session();
    const Litres cold = plan.strikeAndInfusion + plan.sparge, beer = plan.intoVessel + plan.leftOver;
    std::array<QStringList, stepCount_> findings;
    for (const Message& finding : plan.findings)
        findings[stepOf(finding.key)] << session.words(finding);
    if (plan.cannot)
        findings[water] << session.words(*plan.cannot);
    const auto cell = [&](Step step, Litres amount, const QString& how, Litres enters, Litres leaves) {
        return FlowCell{steps_[step]->name(), session.amount(amount), how, enters, leaves, findings[step]};
    };
    const auto at = [&](const char* key, Plato gravity) { return session.words(say(key).with("gravity", gravity)); };
    const char* const hot = "ui.brew.flow.hot";
    const char* const cool = "ui.brew.flow.cold";
    diagram_->show({cell(water, cold, own("ui.brew.flow.water"), cold, cold),
                    cell(mash, plan.preBoilHot, at(hot, plan.preBoilGravity), cold, plan.preBoilHot),
                    cell(kettle, plan.postBoilHot, at(hot, plan.originalGravity), plan.preBoilHot, plan.postBoilHot),
                    cell(fermenter, plan.intoFermenter, at(cool, plan.originalGravity), plan.intoFermenter, beer),
                    cell(vessel, plan.intoVessel, at(cool, plan.finalGravity), beer, plan.intoVessel)});
}

void FlowPage::goTo(int cell) {
    StepSection* step = steps_[static_cast<std::size_t>(cell) + water];
    Q_EMIT wentTo(step);
    step->focusFirst();
}

void FlowPage::focusFirst() {
    if (model_.locked())
        diagram_->focusFirst();
    else
        binder_->numberAt("/original_gravity_p")->edit()->setFocus(Qt::OtherFocusReason);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/pack_form.h"

#include "quantity/constants.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/number_field.h"

#include <QLineEdit>

#include <cmath>

namespace staveline::ui {

using finishing::ResidualKnown;

namespace {

namespace limit = constants::finishing;

// What is no number of its kind at all; the desk judges the rest, with its reason.
constexpr Range packed{.01, 1e6}, gravities{.98, 1.2}, volumes{0, 20}, weights{0, 1000}, extracts{0, 40};
constexpr Range pressures{0, 100}, temperatures{-10, 60}, sizes{1, 100'000}, fruitWeights{0, 5000};
constexpr double usualVolumes = 2.5;
constexpr double gramsPerKilogram = 1000;

template <class Q> std::optional<Q> as(const NumberField& field) {
    return field.stored() ? std::optional(Q{*field.stored()}) : std::nullopt;
}

template <class List> void offer(ChoiceField& field, const QString& none, const List& list) {
    field.add(none, {});
    for (const auto& one : list)
        field.add(qs(one.name), one.id);
}

} // namespace

PackForm::PackForm(Session& session, QWidget* parent) : QuestionForm(session, parent) {
    addBeer();
    addCarbonation();
    addBottle();
    addKegAndFruit();
    volumes_->setStored(usualVolumes);
    size_->setStored(finishing::Package{}.size.ml);
    warmest_->setStored(limit::warmest);
    excludeEachOther(*volumes_, *weight_);
    excludeEachOther(*residual_, *head_);
    connect(sugar_, &ChoiceField::activated, this, &PackForm::showWhatCounts);
    connect(fruit_, &ChoiceField::activated, this, &PackForm::showWhatCounts);
    showWhatCounts();
}

void PackForm::addBeer() {
    beginPart(tr("Beer"));
    litres_ = addNumber("/litres", tr("Litres to pack"), UnitKind::volume, packed);
    gravity_ = addNumber("/gravity", tr("Gravity measured today"), UnitKind::gravity, gravities);
    forced_ = addNumber("/forced_test", tr("A sample kept warm ended at"), UnitKind::gravity, gravities);
    forcedOn_ = addDate("/forced_on", tr("It ended on"));
}

void PackForm::addCarbonation() {
    beginPart(tr("Carbonation"));
    volumes_ = addNumber("/volumes", tr("Volumes of CO2"), UnitKind::carbonation, volumes);
    weight_ = addNumber("/sugar_g_l", tr("or weight of sugar"), UnitKind::concentration, weights);
    sugar_ = addChoice(tr("Sugar"));
    for (const auto& sugar : finishing::builtInSugars())
        sugar_->add(qs(sugar.name), sugar.id);
    extract_ = addNumber("/extract_p", tr("Its real extract"), UnitKind::extract, extracts);
    residual_ = addNumber("/residual_vol", tr("CO2 measured in the beer"), UnitKind::carbonation, volumes);
    head_ = addNumber("/head_bar", tr("or pressure of its head"), UnitKind::pressure, pressures);
    headAt_ = addNumber("/head_c", tr("Beer under it at"), UnitKind::temperature, temperatures);
}

void PackForm::addBottle() {
    beginPart(tr("Bottle"));
    make_ = addChoice(tr("Make"));
    offer(*make_, tr("not told"), finishing::builtInBottles());
    size_ = addNumber("/bottle_ml", tr("Size"), UnitKind::smallVolume, sizes);
    rating_ = addNumber("/rating_bar", tr("Rated by its maker for"), UnitKind::pressure, pressures);
    warmest_ = addNumber("/warmest_c", tr("Warmest it will stand"), UnitKind::temperature, temperatures);
}

void PackForm::addKegAndFruit() {
    beginPart(tr("Keg and fruit"));
    keg_ = addNumber("/keg_c", tr("Temperature of a keg"), UnitKind::temperature, temperatures);
    fruit_ = addChoice(tr("Fruit that lay in it"));
    offer(*fruit_, tr("no fruit"), finishing::builtInFruits());
    fruitMass_ = addNumber("/fruit", tr("Fruit to each litre"), UnitKind::concentration, fruitWeights);
}

void PackForm::excludeEachOther(NumberField& one, NumberField& other) {
    const auto empty = [this](const NumberField& typed, NumberField& left) {
        connect(&typed, &NumberField::edited, this, [&typed, &left] {
            if (typed.stored())
                left.setStored(std::nullopt);
            left.setHint({});
        });
    };
    empty(one, other);
    empty(other, one);
}

void PackForm::showWhatCounts() {
    const auto sugar = finishing::primingSugar(sugar_->word());
    const bool liquid = sugar && sugar->isLiquid();
    showField(*extract_, liquid);
    showField(*weight_, !liquid);
    showField(*fruitMass_, !fruit_->word().empty());
    if (liquid)
        weight_->setStored(std::nullopt);
}

bool PackForm::asks() const {
    return !litres_->edit()->text().trimmed().isEmpty();
}

Result<std::optional<ResidualKnown>> PackForm::residual() const {
    if (residual_->stored())
        return ResidualKnown(Co2Volumes{*residual_->stored()});
    if (!head_->stored())
        return std::optional<ResidualKnown>();
    if (!headAt_->stored())
        return badInput("/head_c", say("ui.finish.head"), say("ui.finish.head.remedy"));
    return ResidualKnown(finishing::UnderHead{GaugePressure{*head_->stored()}, Celsius{*headAt_->stored()}});
}

Result<desk::PackingRequest> PackForm::request(const facts::VesselName& vessel, const facts::LotName& lot) const {
    desk::PackingRequest made;
    const auto known = residual();
    if (!known)
        return fail(known.error());
    made.vessel = lot.empty() ? vessel : facts::VesselName();
    made.lot = lot;
    made.litres = as<Litres>(*litres_).value_or(Litres{0});
    made.volumes = as<Co2Volumes>(*volumes_);
    made.sugarWeight = as<GramsPerLitre>(*weight_);
    made.sugar = sugar_->word();
    made.extract = as<Plato>(*extract_).value_or(made.extract);
    made.package.size = as<Millilitres>(*size_).value_or(made.package.size);
    made.package.rating = as<GaugePressure>(*rating_);
    made.package.warmest = as<Celsius>(*warmest_).value_or(made.package.warmest);
    made.make = make_->word();
    made.gravity = as<SpecificGravity>(*gravity_);
    made.forced = as<SpecificGravity>(*forced_);
    if (made.forced) // the day alone says nothing
        made.forcedOn = forcedOn_->day();
    made.residual = *known;
    made.fruit = fruit_->word();
    made.fruitKgPerLitre = fruitMass_->stored().value_or(0) / gramsPerKilogram;
    made.keg = as<Celsius>(*keg_);
    return made;
}

void PackForm::forgetMeasured() {
    for (NumberField* field : {gravity_, forced_})
        field->setStored(std::nullopt);
    forcedOn_->setRequired(false);
}

void PackForm::sayWhatCame(const desk::PackingAnswer& answer) {
    const auto hint = [](NumberField& field, double value) {
        field.setHint(field.stored() ? QString() : numberWords(value, 1));
    };
    hint(*volumes_, answer.wanted.vol);
    hint(*weight_, answer.priming.perLitre.gPerL);
}

} // namespace staveline::ui

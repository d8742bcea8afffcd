// SPDX-License-Identifier: GPL-3.0-or-later
// What is asked about beer that is to be packed. Volumes and weight of sugar are two ways to ask the same: typing one
// empties the other, which then says what it comes to.
#pragma once

#include "desk/packing.h"
#include "ui/finish/question_form.h"

namespace staveline::ui {

class PackForm : public QuestionForm {
    Q_OBJECT
public:
    explicit PackForm(Session& session, QWidget* parent = nullptr);
    /// Litres are given; without them there is nothing to answer.
    [[nodiscard]] bool asks() const;
    /// Of the lot, if one is named. One that is half given is a fault with its field: a head pressure without its
    /// temperature.
    [[nodiscard]] Result<desk::PackingRequest> request(const facts::VesselName& vessel,
                                                       const facts::LotName& lot) const;
    void forgetMeasured();                               ///< the gravities: they are on record now
    void sayWhatCame(const desk::PackingAnswer& answer); ///< in the empty one of volumes and weight

private:
    void addBeer();
    void addCarbonation();
    void addBottle();
    void addKegAndFruit();
    void excludeEachOther(NumberField& one, NumberField& other);
    void showWhatCounts(); ///< the extract of wort, the weight of sugar
    [[nodiscard]] Result<std::optional<finishing::ResidualKnown>> residual() const;

    NumberField *litres_, *gravity_, *forced_;
    DateField* forcedOn_;
    NumberField *volumes_, *weight_, *extract_;
    ChoiceField* sugar_;
    NumberField *residual_, *head_, *headAt_;
    ChoiceField* make_;
    NumberField *size_, *rating_, *warmest_;
    NumberField* keg_;
    ChoiceField* fruit_;
    NumberField* fruitMass_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/blend_form.h"

#include "desk/ledger.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/number_field.h"

#include <QLineEdit>

#include <algorithm>

namespace staveline::ui {

using finishing::Trait;

namespace {

constexpr Range poured{.01, 1e6}, colours{0, constants::finishing::mostColour}, scores{0, 10};

struct AimField {
    Trait trait;
    QString caption;
    UnitKind kind;
    Range range; ///< what is no number of its kind at all
};

std::vector<AimField> aimFields() {
    return {{Trait::ta, BlendForm::tr("TA"), UnitKind::concentration, {0, 100}},
            {Trait::ph, BlendForm::tr("pH"), UnitKind::ph, {0, 14}},
            {Trait::acidity, BlendForm::tr("Acidity"), UnitKind::points, scores},
            {Trait::funk, BlendForm::tr("Funk"), UnitKind::points, scores},
            {Trait::body, BlendForm::tr("Body"), UnitKind::points, scores},
            {Trait::alcohol, BlendForm::tr("Alcohol"), UnitKind::alcohol, {0, 30}},
            {Trait::bitterness, BlendForm::tr("Bitterness"), UnitKind::bitterness, {0, 200}},
            {Trait::colour, BlendForm::tr("Colour"), UnitKind::colour, colours}};
}

std::string pathOf(std::size_t index) {
    return "/from/" + std::to_string(index);
}

} // namespace

BlendForm::BlendForm(Session& session, QWidget* parent) : QuestionForm(session, parent) {
    for (std::size_t i = 0; i < rows_.size(); ++i)
        addRow(i);
    addAims();
    showRows();
}

void BlendForm::addRow(std::size_t index) {
    const int number = static_cast<int>(index) + 1;
    beginPart(index == 0 ? tr("Sources") : QString());
    Row& row = rows_[index];
    row.beer = addChoice(tr("Source %1").arg(number));
    row.litres = addNumber(pathOf(index), tr("Litres of %1").arg(number), UnitKind::volume, poured);
    row.colour =
        addNumber("/colour_of/" + std::to_string(index), tr("Colour of %1").arg(number), UnitKind::colour, colours);
    connect(row.beer, &ChoiceField::activated, this, &BlendForm::showRows);
}

void BlendForm::addAims() {
    beginPart(tr("Aim at"));
    for (const AimField& aim : aimFields())
        aims_[aim.trait] = addNumber("/" + std::string(wordOf(aim.trait)), aim.caption, aim.kind, aim.range);
    litres_ = addNumber("/litres", tr("Litres of the blend"), UnitKind::volume, poured);
    litres_->setHint(tr("all"));
    connect(aims_[Trait::colour], &NumberField::edited, this, &BlendForm::showRows);
}

void BlendForm::offerIn(std::size_t row, const std::vector<std::pair<std::string, Litres>>& beers,
                        const std::string& own) {
    ChoiceField& field = *rows_[row].beer;
    const std::string chosen = offered_ || row > 0 ? field.word() : own;
    field.clear();
    field.add(tr("no beer"), {});
    for (const auto& [name, litres] : beers)
        field.add(qs(name), name);
    field.setCurrentIndex(std::max(0, field.findData(qs(chosen))));
}

void BlendForm::offer(const std::vector<desk::VesselSummary>& vessels, const std::vector<desk::LotView>& lots,
                      const std::string& own) {
    std::vector<std::pair<std::string, Litres>> beers;
    for (const desk::VesselSummary& vessel : vessels)
        if (!vessel.retired && vessel.now.volume.l > 0)
            beers.emplace_back(vessel.name, vessel.now.volume);
    for (const desk::LotView& lot : lots)
        if (lot.litres.l > 0)
            beers.emplace_back(lot.name, lot.litres);
    held_.clear();
    const UnitScale scale(UnitKind::volume, session().units());
    for (const auto& [name, litres] : beers)
        held_[name] = numberWords(scale.toShown(litres.l), 1);
    for (std::size_t i = 0; i < rows_.size(); ++i)
        offerIn(i, beers, own);
    offered_ = true;
    showRows();
}

void BlendForm::showRows() {
    std::size_t last = 1;
    for (const std::size_t row : used())
        last = std::max(last, row + 1);
    const bool coloured = !aims_[Trait::colour]->edit()->text().trimmed().isEmpty();
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const Row& row = rows_[i];
        const std::string name = row.beer->word();
        row.beer->parentWidget()->parentWidget()->setVisible(i <= last);
        showField(*row.litres, !name.empty());
        showField(*row.colour, !name.empty() && coloured);
        row.litres->setHint(name.empty() ? QString() : held_[name]);
    }
}

std::vector<std::size_t> BlendForm::used() const {
    std::vector<std::size_t> used;
    for (std::size_t i = 0; i < rows_.size(); ++i)
        if (!rows_[i].beer->word().empty())
            used.push_back(i);
    return used;
}

bool BlendForm::asks() const {
    const auto given = [](const NumberField* aim) { return !aim->edit()->text().trimmed().isEmpty(); };
    return used().size() > 1 && std::any_of(aims_.values.begin(), aims_.values.end(), given);
}

desk::BlendRequest BlendForm::request() const {
    desk::BlendRequest made;
    for (const std::size_t i : used()) {
        desk::BlendFrom from{rows_[i].beer->word(), {}, {}};
        if (const auto stored = rows_[i].litres->stored())
            from.litres = Litres{*stored};
        if (const auto stored = rows_[i].colour->stored())
            from.colour = Ebc{*stored};
        made.from.push_back(from);
    }
    for (const Trait trait : finishing::allTraits)
        made.aims[trait] = aims_[trait]->stored();
    if (litres_->stored())
        made.litres = Litres{*litres_->stored()};
    return made;
}

/// The path counts the sources that are named.
bool BlendForm::showFault(const Fault& fault) {
    const auto rows = used();
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (fault.path == pathOf(i)) {
            Fault there = fault;
            there.path = pathOf(rows[i]);
            return QuestionForm::showFault(there);
        }
    return QuestionForm::showFault(fault);
}

} // namespace staveline::ui

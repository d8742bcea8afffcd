// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/grist_editor.h"

#include "advice/advise.h"
#include "brewing/as_brewed.h"
#include "ingredient/pantry.h"
#include "ui/brew/row_list.h"
#include "ui/brew/share_line.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using advice::Setting;
using brewing::GristPart;

namespace {

std::string partPath(std::size_t part, const char* field) {
    return "/grist/" + std::to_string(part) + "/" + field;
}
Share sumOf(const std::vector<GristPart>& grist) {
    Share sum{0};
    for (const GristPart& part : grist)
        sum += part.share;
    return sum;
}
bool holds(const Setting& setting, std::size_t part) {
    return part < setting.recipe.grist.size();
}

/// One part takes a share; the others give in proportion.
void takeShare(std::vector<GristPart>& grist, std::size_t part, double share) {
    const double others = sumOf(grist).of1 - grist[part].share.of1;
    if (others <= 0)
        return; // alone it is the whole grist
    for (std::size_t i = 0; i < grist.size(); ++i)
        grist[i].share = i == part ? Share{share} : grist[i].share * ((1 - share) / others);
}

} // namespace

GristEditor::GristEditor(Binder& binder, Of of, QWidget* parent)
    : QWidget(parent), binder_(binder), model_(binder.model()),
      rows_(new RowList([this](std::size_t i, QWidget& row, QHBoxLayout& layout) { fillRow(i, row, layout); }, this)),
      sum_(new ShareLine(this)), add_(new QPushButton(tr("Add grain"), this)),
      switch_(new QPushButton(tr("In kilograms"), this)), of_(of), kilograms_(of == Of::brewed) {
    switch_->setCheckable(true);
    switch_->setVisible(of == Of::plan);
    sum_->setVisible(of == Of::plan);
    auto* title = new QLabel(tr("Grist"), this);
    setType(*title, Type::strong);
    auto* head = new QHBoxLayout;
    head->addWidget(title);
    head->addStretch(1);
    head->addWidget(switch_);
    auto* foot = new QHBoxLayout;
    foot->addWidget(add_);
    foot->addSpacing(lines(*this, .8));
    foot->addWidget(sum_, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addLayout(head);
    column->addWidget(rows_);
    column->addLayout(foot);
    auto* fault = new MessageLabel(this);
    column->addWidget(fault);
    binder.place("/grist", *fault);
    connect(add_, &QPushButton::clicked, this, &GristEditor::add);
    connect(switch_, &QPushButton::toggled, this, &GristEditor::showKilograms);
    connect(sum_, &ShareLine::restAsked, this, &GristEditor::shareRest);
}

void GristEditor::fillRow(std::size_t part, QWidget& row, QHBoxLayout& layout) {
    auto* both = new QWidget(&row);
    auto* grain = new ChoiceField(both);
    auto* message = new MessageLabel(both);
    makeSearching(*grain);
    offerGrain(*grain, model_.session(), false);
    grain->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    grain->setMinimumContentsLength(22);
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grain);
    column->addWidget(message);
    binder_.tie(*grain,
                {partPath(part, "grain"), tr("Grain %1").arg(part + 1),
                 [part](const Setting& s) { return holds(s, part) ? s.recipe.grist[part].grain : std::string(); },
                 [part](Setting& s, const std::string& id) {
                     if (holds(s, part))
                         s.recipe.grist[part].grain = id;
                 }},
                message);
    grain->lineEdit()->setAccessibleName(grain->accessibleName());
    layout.addWidget(both, 3, Qt::AlignTop);
    if (of_ == Of::brewed)
        addWeighed(part, row, layout);
    else if (kilograms_)
        addMass(part, row, layout);
    else
        addShare(part, row, layout);
    auto* other = quietLabel({}, &row);
    other->setWordWrap(false);
    other->setMinimumSize(lines(*this, 4), grain->sizeHint().height());
    other_.push_back(other);
    auto* late = new QCheckBox(tr("in at the last rest"), &row);
    binder_.tie(*late, {partPath(part, "late"), tr("Grain %1 goes in at the last rest").arg(part + 1),
                        [part](const Setting& s) { return holds(s, part) && s.recipe.grist[part].late; },
                        [part](Setting& s, bool on) {
                            if (holds(s, part))
                                s.recipe.grist[part].late = on;
                        }});
    auto* remove = new QPushButton(tr("Take out"), &row);
    remove->setFlat(true);
    remove->setEnabled(!model_.locked());
    remove->setAccessibleName(tr("Take out grain %1").arg(part + 1));
    connect(remove, &QPushButton::clicked, this, [this, part] { this->remove(part); });
    layout.addWidget(other, 0, Qt::AlignTop);
    layout.addWidget(late, 0, Qt::AlignTop);
    layout.addWidget(remove, 0, Qt::AlignTop);
}

void GristEditor::addShare(std::size_t part, QWidget& row, QHBoxLayout& layout) {
    NumberField* share =
        binder_.number({partPath(part, "share"),
                        tr("Share of grain %1").arg(part + 1),
                        UnitKind::share,
                        [part](const Setting& s) { return holds(s, part) ? s.recipe.grist[part].share.of1 : 0; },
                        [part](Setting& s, double value) {
                            if (holds(s, part))
                                s.recipe.grist[part].share = Share{value};
                        },
                        {}},
                       &row);
    sum_->watch(share->edit(), part);
    layout.addWidget(share, 1, Qt::AlignTop);
}

void GristEditor::addMass(std::size_t part, QWidget& row, QHBoxLayout& layout) {
    NumberField* mass =
        binder_.number({partPath(part, "mass"), tr("Kilograms of grain %1").arg(part + 1), UnitKind::mass,
                        [this, part](const Setting&) { return massOf(part).value_or(Kilograms{0}).kg; },
                        [this, part](Setting& s, double kilograms) {
                            if (model_.draft() && holds(s, part))
                                takeShare(s.recipe.grist, part, kilograms / model_.draft()->plan.gristMass.kg);
                        },
                        Range{0, 100000}},
                       &row);
    connect(mass, &NumberField::edited, this, [this, mass, part] {
        if (mass->stored())
            settleMass(part, *mass->stored());
    });
    layout.addWidget(mass, 1, Qt::AlignTop);
}

/// What was weighed of one grain is nothing to the others.
void GristEditor::addWeighed(std::size_t part, QWidget& row, QHBoxLayout& layout) {
    NumberField* mass = binder_.number({partPath(part, "mass_kg"),
                                        tr("Kilograms of grain %1").arg(part + 1),
                                        UnitKind::mass,
                                        [part](const Setting& s) -> std::optional<double> {
                                            if (!holds(s, part) || !s.recipe.grist[part].mass)
                                                return {};
                                            return s.recipe.grist[part].mass->kg;
                                        },
                                        [part](Setting& s, double kilograms) {
                                            if (!holds(s, part))
                                                return;
                                            s.recipe.grist[part].mass = Kilograms{kilograms};
                                            s.recipe = asWeighed(std::move(s.recipe));
                                        },
                                        {},
                                        [part](Setting& s) {
                                            if (holds(s, part))
                                                s.recipe.grist[part].mass.reset();
                                        }},
                                       &row);
    layout.addWidget(mass, 1, Qt::AlignTop);
}

/// The whole changes a little with its parts: once or twice more brings the plan to what was typed.
void GristEditor::settleMass(std::size_t part, double kilograms) {
    for (int again = 0; again < 3 && !model_.fault(); ++again) {
        const auto planned = massOf(part);
        if (!planned || planned->kg <= 0 || std::abs(planned->kg - kilograms) < 1e-3 * kilograms)
            return;
        const double total = model_.draft()->plan.gristMass.kg;
        model_.change(
            [part, share = kilograms / total](Setting& s) {
                if (holds(s, part))
                    takeShare(s.recipe.grist, part, share);
            },
            tr("Kilograms of grain %1").arg(part + 1), partPath(part, "mass"));
    }
}

std::optional<Kilograms> GristEditor::massOf(std::size_t part) const {
    if (!model_.draft() || part >= model_.draft()->plan.grist.size())
        return std::nullopt;
    return model_.draft()->plan.grist[part].mass;
}

void GristEditor::sync() {
    const auto& grist = model_.recipe().grist;
    if (grist.size() != rows_->count()) {
        binder_.forget("/grist/");
        other_.clear();
    }
    rows_->sync(grist.size());
    sayOther();
    sum_->setLocked(model_.locked());
    sum_->say(sumOf(grist), grist.size());
    add_->setEnabled(!model_.locked());
}

void GristEditor::sayOther() {
    for (std::size_t i = 0; i < other_.size(); ++i) {
        const auto mass = massOf(i);
        if (kilograms_)
            other_[i]->setText(model_.session().amount(model_.recipe().grist[i].share));
        else
            other_[i]->setText(mass ? model_.session().amount(*mass) : QString());
    }
}

void GristEditor::showKilograms(bool kilograms) {
    if (kilograms == kilograms_)
        return;
    kilograms_ = kilograms;
    switch_->setChecked(kilograms);
    binder_.forget("/grist/");
    other_.clear();
    rows_->sync(0);
    sync();
    binder_.show();
}

/// The first grain of the pantry that is not in the grist yet.
std::string GristEditor::unused() const {
    for (const ingredient::Grain& grain : model_.session().desk().pantry().grains())
        if (!grain.isSugar() && std::none_of(model_.recipe().grist.begin(), model_.recipe().grist.end(),
                                             [&](const GristPart& part) { return part.grain == grain.id; }))
            return grain.id;
    return "pilsner";
}

void GristEditor::add() {
    model_.change(
        [grain = unused()](Setting& s) {
            auto& grist = s.recipe.grist;
            grist.push_back({grain, Share{std::max(0., restOf(sumOf(grist)).of1)}, false});
        },
        tr("grain added"), "/grist/add" + std::to_string(rows_->count()));
    rows_->focusRow(rows_->count());
    model_.finish();
}

void GristEditor::remove(std::size_t part) {
    model_.change(
        [part](Setting& s) {
            if (holds(s, part))
                s.recipe.grist.erase(s.recipe.grist.begin() + static_cast<std::ptrdiff_t>(part));
            s.recipe = asWeighed(std::move(s.recipe));
        },
        tr("grain taken out"), partPath(part, "remove") + std::to_string(rows_->count()));
    if (rows_->count() > 0)
        rows_->focusRow(part);
    else
        add_->setFocus(Qt::OtherFocusReason);
    model_.finish();
}

void GristEditor::shareRest(int part) {
    const std::size_t count = model_.recipe().grist.size();
    if (count == 0 || model_.locked())
        return;
    const std::size_t at = part < 0 ? count - 1 : std::min(static_cast<std::size_t>(part), count - 1);
    model_.change(
        [at](Setting& s) {
            if (holds(s, at))
                s.recipe.grist[at].share += restOf(sumOf(s.recipe.grist));
        },
        tr("rest of the grist"), partPath(at, "rest"));
    if (NumberField* field = binder_.numberAt(partPath(at, "share"))) {
        field->edit()->setModified(false);
        binder_.show();
    }
    model_.finish();
}

} // namespace staveline::ui

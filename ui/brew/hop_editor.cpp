// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/hop_editor.h"

#include "advice/advise.h"
#include "desk/stock.h"
#include "ui/brew/boil_timeline.h"
#include "ui/brew/row_list.h"
#include "ui/brew/share_line.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/theme.h"

#include <QCompleter>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace staveline::ui {

using advice::Setting;
using brewing::HopAddition;

namespace {

std::string hopPath(std::size_t addition, const char* field) {
    return "/hops/" + std::to_string(addition) + "/" + field;
}
bool holds(const Setting& setting, std::size_t addition) {
    return addition < setting.recipe.hops.size();
}
Share sumOf(const std::vector<HopAddition>& hops) {
    Share sum{0};
    for (const HopAddition& hop : hops)
        sum += hop.ofBitterness;
    return sum;
}

} // namespace

HopEditor::HopEditor(Binder& binder, QWidget* parent)
    : QWidget(parent), binder_(binder), model_(binder.model()), timeline_(new BoilTimeline(this)),
      usual_(quietLabel({}, this)),
      rows_(new RowList([this](std::size_t i, QWidget& row, QHBoxLayout& layout) { fillRow(i, row, layout); }, this)),
      sum_(new ShareLine(this)), add_(new QPushButton(tr("Add hops"), this)) {
    auto* title = new QLabel(tr("Hops"), this);
    setType(*title, Type::strong);
    auto* foot = new QHBoxLayout;
    foot->addWidget(add_);
    foot->addSpacing(lines(*this, .8));
    foot->addWidget(sum_, 1);
    foot->addStretch(0);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*this, .3));
    column->addWidget(title);
    column->addWidget(timeline_);
    column->addWidget(usual_);
    column->addWidget(rows_);
    column->addLayout(foot);
    auto* fault = new MessageLabel(this);
    column->addWidget(fault);
    binder.place("/hops", *fault);
    connect(add_, &QPushButton::clicked, this, &HopEditor::add);
    connect(sum_, &ShareLine::restAsked, this, &HopEditor::shareRest);
}

NumberField* HopEditor::number(std::size_t addition, const char* field, const QString& name, UnitKind unit,
                               double (*get)(const HopAddition&), void (*set)(HopAddition&, double), QWidget& row) {
    return binder_.number(
        {hopPath(addition, field),
         name,
         unit,
         [addition, get](const Setting& s) { return holds(s, addition) ? get(s.recipe.hops[addition]) : 0; },
         [addition, set](Setting& s, double value) {
             if (holds(s, addition))
                 set(s.recipe.hops[addition], value);
         },
         {}},
        &row);
}

void HopEditor::fillRow(std::size_t addition, QWidget& row, QHBoxLayout& layout) {
    const auto n = addition + 1;
    auto* name = new QLineEdit(&row);
    binder_.tie(*name, {hopPath(addition, "name"), tr("Hops %1, name").arg(n),
                        [addition](const Setting& s) {
                            return holds(s, addition) ? s.recipe.hops[addition].name : std::string();
                        },
                        [addition](Setting& s, const std::string& word) {
                            if (holds(s, addition))
                                s.recipe.hops[addition].name = word;
                        }});
    offerNames(*name, addition);
    NumberField* alpha = number(
        addition, "alpha_share", tr("Hops %1, alpha acids").arg(n), UnitKind::share,
        [](const HopAddition& hop) { return hop.alpha.of1; },
        [](HopAddition& hop, double value) { hop.alpha = Share{value}; }, row);
    NumberField* boiled = number(
        addition, "minutes", tr("Hops %1, boiled").arg(n), UnitKind::minutes,
        [](const HopAddition& hop) { return hop.boiled.min; },
        [](HopAddition& hop, double value) { hop.boiled = Minutes{value}; }, row);
    NumberField* part = number(
        addition, "bitterness_share", tr("Hops %1, part of the bitterness").arg(n), UnitKind::share,
        [](const HopAddition& hop) { return hop.ofBitterness.of1; },
        [](HopAddition& hop, double value) { hop.ofBitterness = Share{value}; }, row);
    sum_->watch(part->edit(), addition);
    auto* grams = quietLabel({}, &row);
    grams->setWordWrap(false);
    grams->setMinimumSize(lines(*this, 3), name->sizeHint().height());
    grams_.push_back(grams);
    auto* remove = new QPushButton(tr("Take out"), &row);
    remove->setFlat(true);
    remove->setEnabled(!model_.locked());
    remove->setAccessibleName(tr("Take out hops %1").arg(n));
    connect(remove, &QPushButton::clicked, this, [this, addition] { this->remove(addition); });
    layout.addWidget(captioned(tr("Name"), name, name, &row), 3, Qt::AlignTop);
    layout.addWidget(captioned(tr("Alpha acids"), alpha, alpha->edit(), &row), 2, Qt::AlignTop);
    layout.addWidget(captioned(tr("Boiled"), boiled, boiled->edit(), &row), 2, Qt::AlignTop);
    layout.addWidget(captioned(tr("Of the bitterness"), part, part->edit(), &row), 2, Qt::AlignTop);
    layout.addWidget(captioned(tr("Weighs"), grams, nullptr, &row), 1, Qt::AlignTop);
    layout.addWidget(captioned({}, remove, nullptr, &row), 0, Qt::AlignTop);
}

/// Those of the book, as they are typed; what is typed need not be one of them.
void HopEditor::offerNames(QLineEdit& name, std::size_t addition) {
    QStringList names;
    for (const desk::HopOffer& hop : model_.session().desk().hops())
        names << qs(hop.name);
    auto* completer = new QCompleter(names, &name);
    completer->setFilterMode(Qt::MatchContains);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    name.setCompleter(completer);
    connect(completer, qOverload<const QString&>(&QCompleter::activated), this,
            [this, addition](const QString& chosen) { takeHops(addition, chosen); });
}

/// With the alpha acids they have today.
void HopEditor::takeHops(std::size_t addition, const QString& name) {
    for (const desk::HopOffer& hop : model_.session().desk().hops())
        if (qs(hop.name) == name)
            model_.change(
                [addition, hop](Setting& s) {
                    if (!holds(s, addition))
                        return;
                    s.recipe.hops[addition].name = hop.name;
                    s.recipe.hops[addition].alpha = Share{std::round(hop.alpha.of1 * 1000) / 1000};
                },
                tr("hops %1").arg(name), hopPath(addition, "name"));
    model_.finish();
}

void HopEditor::add() {
    model_.change(
        [](Setting& s) {
            HopAddition hop;
            hop.boiled = s.recipe.boil;
            hop.ofBitterness = Share{std::max(0., restOf(sumOf(s.recipe.hops)).of1)};
            s.recipe.hops.push_back(hop);
        },
        tr("hops added"), "/hops/add" + std::to_string(rows_->count()));
    rows_->focusRow(rows_->count());
    model_.finish();
}

void HopEditor::remove(std::size_t addition) {
    model_.change(
        [addition](Setting& s) {
            if (holds(s, addition))
                s.recipe.hops.erase(s.recipe.hops.begin() + static_cast<std::ptrdiff_t>(addition));
        },
        tr("hops taken out"), hopPath(addition, "remove") + std::to_string(rows_->count()));
    if (rows_->count() > 0)
        rows_->focusRow(addition);
    else
        add_->setFocus(Qt::OtherFocusReason);
    model_.finish();
}

void HopEditor::shareRest(int addition) {
    const std::size_t count = model_.recipe().hops.size();
    if (count == 0 || model_.locked())
        return;
    const std::size_t at = addition < 0 ? count - 1 : std::min(static_cast<std::size_t>(addition), count - 1);
    model_.change(
        [at](Setting& s) {
            if (holds(s, at))
                s.recipe.hops[at].ofBitterness += restOf(sumOf(s.recipe.hops));
        },
        tr("rest of the bitterness"), hopPath(at, "rest"));
    if (NumberField* field = binder_.numberAt(hopPath(at, "bitterness_share"))) {
        field->edit()->setModified(false);
        binder_.show();
    }
    model_.finish();
}

void HopEditor::sync() {
    const auto& hops = model_.recipe().hops;
    if (hops.size() != rows_->count()) {
        binder_.forget("/hops/");
        grams_.clear();
    }
    rows_->sync(hops.size());
    sum_->setVisible(!hops.empty());
    sum_->setLocked(model_.locked());
    sum_->say(sumOf(hops), hops.size());
    add_->setEnabled(!model_.locked());
    if (!model_.draft())
        return;
    const auto& weighed = model_.draft()->plan.hops;
    timeline_->show(model_.recipe().boil, weighed, model_.session().units());
    for (std::size_t i = 0; i < grams_.size(); ++i)
        grams_[i]->setText(i < weighed.size() ? model_.session().amount(weighed[i].mass) : QString());
    usual_->setVisible(hops.empty());
    if (hops.empty() && !weighed.empty())
        usual_->setText(model_.session().words(
            say("ui.brew.usual_hops").with("mass", weighed.front().mass).with("alpha", weighed.front().alpha)));
    else if (hops.empty())
        usual_->setText(own("ui.brew.no_hops"));
}

QString HopEditor::words() const {
    return usual_->text();
}

} // namespace staveline::ui

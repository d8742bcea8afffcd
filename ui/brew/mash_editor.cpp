// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/mash_editor.h"

#include "advice/advise.h"
#include "ingredient/pantry.h"
#include "ui/brew/row_list.h"
#include "ui/present/text.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/table_copy.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QStackedWidget>
#include <QTableWidget>
#include <QVBoxLayout>

#include <cmath>

namespace staveline::ui {

using advice::Setting;

namespace {

constexpr double tableStep = 5; // minutes between rows

std::string restPath(std::size_t rest, const char* field) {
    return "/mash/" + std::to_string(rest) + "/" + field;
}
bool holds(const Setting& setting, std::size_t rest) {
    return rest < setting.recipe.mash.size();
}

/// Rows of a trace worth reading: every few minutes, the first and the last.
std::vector<std::size_t> rowsOf(const brewing::MashTrace& trace) {
    std::vector<std::size_t> rows;
    double next = 0;
    for (std::size_t i = 0; i < trace.minute.size(); ++i)
        if (trace.minute[i] >= next - 1e-9 || i + 1 == trace.minute.size()) {
            rows.push_back(i);
            next = (std::floor(trace.minute[i] / tableStep + 1e-9) + 1) * tableStep;
        }
    return rows;
}

} // namespace

MashEditor::MashEditor(Binder& binder, QWidget& above, QWidget* parent)
    : QWidget(parent), binder_(binder), model_(binder.model()), left_(new QWidget(this)),
      sides_(new QBoxLayout(QBoxLayout::LeftToRight, this)),
      rows_(new RowList([this](std::size_t i, QWidget& row, QHBoxLayout& layout) { fillRow(i, row, layout); }, this)),
      add_(new QPushButton(tr("Add a rest"), this)), asTable_(new QPushButton(tr("As a table (T)"), this)),
      chart_(new MashChart), table_(new QTableWidget), stack_(new QStackedWidget(this)) {
    asTable_->setCheckable(true);
    table_->setAccessibleName(tr("Mash over time as a table"));
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setTabKeyNavigation(false);
    new TableCopy(*table_);
    table_->verticalHeader()->hide();
    table_->verticalHeader()->setDefaultSectionSize(lines(*this, 1.5));
    stack_->addWidget(chart_);
    stack_->addWidget(table_);

    auto* left = new QVBoxLayout(left_);
    left->setContentsMargins(0, 0, 0, 0);
    left->setSpacing(lines(*this, .4));
    left->addWidget(&above);
    auto* title = new QLabel(tr("Rests"), this);
    setType(*title, Type::strong);
    left->addWidget(title);
    left->addWidget(rows_);
    auto* fault = new MessageLabel(this);
    binder.place("/mash", *fault);
    left->addWidget(fault);
    left->addWidget(add_, 0, Qt::AlignLeft);
    auto* fields = new QHBoxLayout;
    fields->setSpacing(lines(*this, .6));
    fields->addWidget(pathField(), 2);
    fields->addWidget(phField(), 1);
    left->addLayout(fields);
    left->addWidget(asTable_, 0, Qt::AlignLeft);
    left->addStretch(1);
    sides_->setContentsMargins(0, 0, 0, 0);
    sides_->setSpacing(lines(*this, 1));
    sides_->addWidget(left_, 1);
    sides_->addWidget(stack_, 1);
    connect(add_, &QPushButton::clicked, this, &MashEditor::add);
    connect(asTable_, &QPushButton::toggled, this, &MashEditor::showTable);
    auto* key = new QShortcut(QKeySequence(Qt::Key_T), this);
    key->setContext(Qt::WidgetWithChildrenShortcut);
    connect(key, &QShortcut::activated, this, [this] {
        showTable(!asTable_->isChecked());
        stack_->currentWidget() == table_ ? table_->setFocus() : chart_->focusRest();
    });
    connect(chart_, &MashChart::restMoved, this, &MashEditor::moveRest);
    connect(chart_, &MashChart::restReleased, this, [this] { model_.finish(); });
}

QSize MashEditor::minimumSizeHint() const {
    const int wide = std::max(left_->minimumSizeHint().width(), chart_->minimumSizeHint().width());
    return {wide, sides_->minimumSize().height()};
}

/// Where there is no room for both, the drawing stands below the fields.
void MashEditor::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const int both = left_->minimumSizeHint().width() + chart_->minimumSizeHint().width() + sides_->spacing();
    sides_->setDirection(width() < both ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
}

QWidget* MashEditor::pathField() {
    auto* path = new ChoiceField(this);
    path->add(tr("by hot water, at once"), "jump");
    path->add(tr("heated, as fast as the kit can"), "ramp");
    binder_.tie(*path,
                {"/path", tr("From rest to rest"),
                 [](const Setting& s) { return s.recipe.path == brewing::MashPath::jump ? "jump" : "ramp"; },
                 [](Setting& s, const std::string& word) {
                     s.recipe.path = word == "ramp" ? brewing::MashPath::ramp : brewing::MashPath::jump;
                 }},
                nullptr);
    return captioned(tr("From rest to rest"), path, path, this);
}

QWidget* MashEditor::phField() {
    NumberField* ph = binder_.number({"/mash_ph",
                                      tr("Mash pH"),
                                      UnitKind::ph,
                                      [](const Setting& s) { return s.recipe.mashPh.ph; },
                                      [](Setting& s, double value) { s.recipe.mashPh = Ph{value}; },
                                      {}},
                                     this);
    return captioned(tr("Mash pH"), ph, ph->edit(), this);
}

void MashEditor::fillRow(std::size_t rest, QWidget& row, QHBoxLayout& layout) {
    NumberField* temperature =
        binder_.number({restPath(rest, "temperature_c"),
                        tr("Rest %1, temperature").arg(rest + 1),
                        UnitKind::temperature,
                        [rest](const Setting& s) { return holds(s, rest) ? s.recipe.mash[rest].temperature.c : 0; },
                        [rest](Setting& s, double value) {
                            if (holds(s, rest))
                                s.recipe.mash[rest].temperature = Celsius{value};
                        },
                        {}},
                       &row);
    NumberField* minutes =
        binder_.number({restPath(rest, "minutes"),
                        tr("Rest %1, minutes").arg(rest + 1),
                        UnitKind::minutes,
                        [rest](const Setting& s) { return holds(s, rest) ? s.recipe.mash[rest].minutes.min : 0; },
                        [rest](Setting& s, double value) {
                            if (holds(s, rest))
                                s.recipe.mash[rest].minutes = Minutes{value};
                        },
                        {}},
                       &row);
    auto* remove = new QPushButton(tr("Take out"), &row);
    remove->setFlat(true);
    remove->setEnabled(!model_.locked());
    remove->setAccessibleName(tr("Take out rest %1").arg(rest + 1));
    connect(remove, &QPushButton::clicked, this, [this, rest] { this->remove(rest); });
    layout.addWidget(temperature, 1, Qt::AlignTop);
    layout.addWidget(minutes, 1, Qt::AlignTop);
    layout.addWidget(remove, 0, Qt::AlignTop);
}

void MashEditor::add() {
    model_.change(
        [](Setting& s) {
            auto& mash = s.recipe.mash;
            const double warmest = recipeRange("temperature_c").high;
            mash.push_back(mash.empty()
                               ? brewing::MashStep{}
                               : brewing::MashStep{Celsius{std::min(warmest, mash.back().temperature.c + 6)}, {20}});
        },
        tr("rest added"), "/mash/add" + std::to_string(rows_->count()));
    rows_->focusRow(rows_->count());
    model_.finish();
}

void MashEditor::remove(std::size_t rest) {
    model_.change(
        [rest](Setting& s) {
            if (holds(s, rest))
                s.recipe.mash.erase(s.recipe.mash.begin() + static_cast<std::ptrdiff_t>(rest));
        },
        tr("rest taken out"), restPath(rest, "remove") + std::to_string(rows_->count()));
    if (rows_->count() > 0)
        rows_->focusRow(rest);
    else
        add_->setFocus(Qt::OtherFocusReason);
    model_.finish();
}

void MashEditor::moveRest(int rest, double celsius, double minutes) {
    const auto at = static_cast<std::size_t>(rest);
    model_.change(
        [at, step = brewing::MashStep{Celsius{celsius}, Minutes{minutes}}](Setting& s) {
            if (holds(s, at))
                s.recipe.mash[at] = step;
        },
        tr("rest %1").arg(rest + 1), restPath(at, "moved"));
}

void MashEditor::sync() {
    const auto& mash = model_.recipe().mash;
    if (mash.size() != rows_->count())
        binder_.forget("/mash/");
    rows_->sync(mash.size());
    add_->setEnabled(!model_.locked());
    chart_->setLook(look());
    chart_->setLocked(model_.locked());
    if (stack_->currentWidget() == table_)
        fillTable();
}

QString MashEditor::grain(bool late) const {
    QStringList names;
    for (const brewing::GristPart& part : model_.recipe().grist)
        if (part.late == late) {
            const auto known = model_.session().desk().pantry().grain(part.grain);
            names << tr("%1 %2").arg(known ? qs(known->name) : qs(part.grain), model_.session().amount(part.share));
        }
    return names.join(tr(", "));
}

MashLook MashEditor::look() const {
    MashLook look;
    look.rests = model_.recipe().mash;
    look.rate = rampRate(model_.recipe(), model_.kit().equipment.heatingRate);
    look.early = grain(false);
    look.late = grain(true);
    if (model_.draft())
        look.trace = model_.draft()->mash;
    look.current = !model_.fault();
    look.units = model_.session().units();
    return look;
}

void MashEditor::showTable(bool table) {
    asTable_->setChecked(table);
    if (table)
        fillTable();
    stack_->setCurrentWidget(table ? static_cast<QWidget*>(table_) : chart_);
}

/// Units stand in the heads; numbers of a column have the same decimals.
void MashEditor::fillTable() {
    const brewing::MashTrace& trace = chart_->look().trace;
    struct Column {
        QString head;
        UnitKind unit;
        const std::vector<double>& values;
        int decimals;
    };
    const std::array columns = {Column{tr("Time"), UnitKind::minutes, trace.minute, 0},
                                Column{tr("Mash"), UnitKind::temperature, trace.temperature, 1},
                                Column{tr("Fermentable"), UnitKind::share, trace.fermentable, 1},
                                Column{tr("Dextrin"), UnitKind::share, trace.dextrin, 1},
                                Column{tr("Ferulic acid"), UnitKind::trace, trace.ferulic, 1},
                                Column{tr("Beta-glucan"), UnitKind::concentration, trace.betaGlucan, 2}};
    const auto rows = rowsOf(trace);
    table_->setColumnCount(static_cast<int>(columns.size()));
    table_->setRowCount(static_cast<int>(rows.size()));
    for (int at = 0; at < table_->columnCount(); ++at) {
        const Column& column = columns[static_cast<std::size_t>(at)];
        const UnitScale scale(column.unit, model_.session().units());
        table_->setHorizontalHeaderItem(at, new QTableWidgetItem(tr("%1, %2").arg(column.head, scale.suffix())));
        for (int row = 0; row < table_->rowCount(); ++row) {
            const double value = scale.toShown(column.values[rows[static_cast<std::size_t>(row)]]);
            auto* cell = new QTableWidgetItem(numberWords(value, column.decimals));
            cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
            table_->setItem(row, at, cell);
        }
    }
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
}

} // namespace staveline::ui

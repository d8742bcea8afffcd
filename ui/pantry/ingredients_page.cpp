// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pantry/ingredients_page.h"

#include "ingredient/pantry.h"
#include "ui/pantry/ingredient_lines.h"
#include "ui/pantry/stock_form.h"
#include "ui/present/score_words.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/quiet_table.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace staveline::ui {
namespace {

constexpr int nameColumn = 0, stockColumn = 1;

/// What the brewer is not asked: it follows from the name, or from what it was made from.
const std::set<std::string> untyped = {"ingredient", "like"};

std::string& idIn(facts::Fact& fact) {
    static std::string none;
    std::string* found = &none;
    std::visit(
        [&](auto& each) {
            if constexpr (requires { each.item.id; })
                found = &each.item.id;
        },
        fact);
    return *found;
}
std::string nameIn(const facts::Fact& fact) {
    return std::visit(
        [](const auto& each) {
            if constexpr (requires { each.item.name; })
                return each.item.name;
            else
                return std::string();
        },
        fact);
}

} // namespace

IngredientsPage::IngredientsPage(Session& session, QWidget* parent)
    : AsidePage(parent), session_(session), sort_(new ChoiceField(this)), table_(new QTableWidget(this)),
      title_(new QLabel(this)), about_(new QLabel(this)), form_(new FactForm(this)), message_(new MessageLabel(this)),
      make_(new QPushButton(tr("&Make one of your own like it"), this)), keep_(new QPushButton(tr("&Keep it"), this)),
      remove_(new QPushButton(tr("&Take it out"), this)), cancel_(new QPushButton(tr("Cancel (Esc)"), this)),
      stock_(new StockForm(session, this)) {
    auto* heading = new QLabel(tr("Ingredients and stock"), this);
    setType(*heading, Type::title);
    auto* intro = new QLabel(own("ui.ingredients.words"), this);
    intro->setWordWrap(true);
    auto* panes = new Panes(QStringLiteral("ingredients"), this);
    panes->addPane(makeList(), 34, 20);
    panes->addPane(makeDetails(), 44, 24);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(lines(*this, .6));
    column->addWidget(heading);
    column->addWidget(intro);
    column->addWidget(panes, 1);
    connect(&session, &Session::changed, this, &IngredientsPage::refresh);
    connect(&session, &Session::unitsChanged, this, [this] {
        form_->setUnits(session_.units());
        refresh();
    });
    connect(&session, &Session::storeAsked, this, [this] {
        if (started())
            keep();
    });
}

QWidget* IngredientsPage::makeList() {
    auto* side = new QWidget(this);
    sort_->setAccessibleName(tr("Sort of ingredient"));
    for (const auto sort : ingredientSorts)
        sort_->add(own("ui.ingredients.sort." + std::string(sort)), std::string(sort));
    makeQuiet(*table_, tr("Ingredients"));
    table_->setColumnCount(2);
    table_->setHorizontalHeaderLabels({tr("Name"), tr("At hand")});
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setSelectionMode(QAbstractItemView::SingleSelection);
    table_->horizontalHeader()->setSectionResizeMode(nameColumn, QHeaderView::Stretch);
    table_->horizontalHeader()->setSectionResizeMode(stockColumn, QHeaderView::Stretch);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(sort_, 0, Qt::AlignLeft);
    column->addWidget(table_, 1);
    connect(sort_, &ChoiceField::currentIndexChanged, this, [this] {
        fillTable();
        showChosen();
    });
    connect(table_, &QTableWidget::currentCellChanged, this, [this] {
        if (!filling_)
            showChosen();
    });
    return side;
}

QWidget* IngredientsPage::makeDetails() {
    auto* page = new QWidget(this);
    setType(*title_, Type::strong);
    title_->setWordWrap(true);
    about_->setWordWrap(true);
    message_->keepRoom(2.2);
    cancel_->setFlat(true);
    auto* buttons = new QWidget(page);
    auto* row = new WrapLayout(buttons, lines(*this, .6));
    for (QPushButton* button : {keep_, cancel_, make_, remove_})
        row->addWidget(button);
    auto* column = new QVBoxLayout(page);
    column->setContentsMargins(lines(*this, .6), 0, lines(*this, .6), 0);
    column->setSpacing(lines(*this, .5));
    for (QWidget* part : std::initializer_list<QWidget*>{title_, about_, form_, message_, buttons, stock_})
        column->addWidget(part);
    column->addStretch(1);
    connect(form_, &FactForm::edited, this, [this] {
        form_->recheck();
        message_->clear();
        tell();
    });
    connect(make_, &QPushButton::clicked, this, &IngredientsPage::makeOwn);
    connect(keep_, &QPushButton::clicked, this, &IngredientsPage::keep);
    connect(remove_, &QPushButton::clicked, this, &IngredientsPage::removeChosen);
    connect(cancel_, &QPushButton::clicked, this, &IngredientsPage::endEditing);
    return new SteadyScroll(page, this);
}

bool IngredientsPage::started() const {
    return !form_->isHidden() && (making_ || form_->touched());
}

void IngredientsPage::tell() {
    session_.setUnstored("ingredients", started() ? QStringList{tr("the ingredient")} : QStringList());
    cancel_->setVisible(started());
}

void IngredientsPage::begin() {
    if (!started()) {
        fillTable();
        showChosen();
    }
    table_->setFocus(Qt::OtherFocusReason);
}

/// What is being typed stays, whatever else is stored meanwhile.
void IngredientsPage::refresh() {
    if (isHidden())
        return; // it is filled when it is shown
    fillTable();
    if (!started())
        showChosen();
}

void IngredientsPage::showEvent(QShowEvent* event) {
    refresh();
    AsidePage::showEvent(event);
}

void IngredientsPage::fillTable() {
    const IngredientLine* before = chosen();
    const std::string id = before ? before->id : std::string();
    filling_ = true;
    lines_ = linesOf(static_cast<IngredientSort>(std::max(0, sort_->currentIndex())), session_.desk());
    table_->setRowCount(static_cast<int>(lines_.size()));
    const auto stock = session_.desk().stock();
    int at = 0;
    for (std::size_t i = 0; i < lines_.size(); ++i) {
        const IngredientLine& line = lines_[i];
        const int tableRow = static_cast<int>(i);
        const QString name = sentenceCase(line.name);
        table_->setItem(tableRow, nameColumn, new QTableWidgetItem(line.own ? tr("%1 (your own)").arg(name) : name));
        table_->setItem(tableRow, stockColumn,
                        new QTableWidgetItem(stockWords(stock, line.id, session_.desk().today(), session_.units())));
        at = line.id == id ? tableRow : at;
    }
    table_->setCurrentCell(at, nameColumn);
    filling_ = false;
}

const IngredientLine* IngredientsPage::chosen() const {
    const auto at = static_cast<std::size_t>(std::max(0, table_->currentRow()));
    return at < lines_.size() ? &lines_[at] : nullptr;
}

void IngredientsPage::choose(const std::string& id) {
    const auto at =
        std::find_if(lines_.begin(), lines_.end(), [&](const IngredientLine& line) { return line.id == id; });
    if (at != lines_.end())
        table_->setCurrentCell(static_cast<int>(at - lines_.begin()), nameColumn);
}

void IngredientsPage::showChosen() {
    making_ = false;
    message_->clear();
    const IngredientLine* line = chosen();
    const bool writable = !session_.desk().readOnly();
    form_->setVisible(line && line->own);
    stored_.reset();
    if (line && line->own) {
        stored_ = line->own->id;
        build(line->own->fact);
    }
    title_->setText(line ? sentenceCase(line->name) : QString());
    about_->setText(line && !line->own ? own("ui.ingredients.built_in") : own("ui.ingredients.own"));
    make_->setVisible(line != nullptr);
    make_->setEnabled(writable);
    form_->setEnabled(writable);
    for (QPushButton* button : {keep_, remove_}) {
        button->setVisible(line && line->own);
        button->setEnabled(writable);
    }
    stock_->show(line ? line->id : std::string(), sort_->word() == ingredientSorts[2]);
    stock_->setVisible(line != nullptr);
    tell();
}

void IngredientsPage::build(const facts::Fact& fact) {
    FormContext context;
    context.today = session_.desk().today();
    context.units = session_.units();
    context.hidden = untyped;
    context.labels = facts::traitsOf(fact).kind;
    form_->build(fact, context);
}

void IngredientsPage::makeOwn() {
    const IngredientLine* line = chosen();
    if (!line || session_.desk().readOnly())
        return;
    const auto sort = static_cast<IngredientSort>(sort_->currentIndex());
    build(startedLike(sort, *line, session_.desk().today()));
    making_ = true;
    stored_.reset();
    title_->setText(tr("One of your own, like %1").arg(line->name));
    about_->setText(own("ui.ingredients.making"));
    form_->setVisible(true);
    keep_->setVisible(true);
    make_->setVisible(false);
    remove_->setVisible(false);
    stock_->setVisible(false);
    tell();
    form_->focusFirst();
}

/// Of another day it is a further state of the same ingredient: what was brewed until then keeps its numbers.
void IngredientsPage::keep() {
    if (form_->isHidden())
        return;
    if (!form_->usable())
        return form_->complain();
    facts::Fact fact = form_->fact();
    if (making_)
        idIn(fact) = shortName(nameIn(fact), session_.desk().pantry());
    const std::string id = idIn(fact);
    const auto batch = session_.batch();
    const auto before =
        stored_ ? session_.desk().fact(std::string(facts::traitsOf(fact).kind), *stored_) : Result<facts::Fact>(fact);
    const bool sameDay = stored_ && before && dayOf(*before) == dayOf(fact);
    const bool wasMaking = std::exchange(making_, false);
    const auto done =
        sameDay ? session_.amend(std::string(facts::traitsOf(fact).kind), *stored_, fact) : session_.record(fact);
    if (!done) {
        making_ = wasMaking;
        return say(done.error());
    }
    fillTable();
    choose(id);
    showChosen();
}

void IngredientsPage::removeChosen() {
    const IngredientLine* line = chosen();
    if (!line || !line->own)
        return;
    const std::string table(facts::traitsOf(line->own->fact).kind);
    if (const auto done = session_.remove(table, line->own->id); !done)
        say(done.error());
}

void IngredientsPage::endEditing() {
    showChosen();
    table_->setFocus(Qt::OtherFocusReason);
}

void IngredientsPage::say(const Fault& fault) {
    if (!form_->showFault(fault, true))
        message_->say(MessageLabel::Weight::fault, session_.words(fault));
    tell();
}

QString IngredientsPage::words() const {
    return message_->words();
}

void IngredientsPage::finish() {
    if (started())
        keep();
}

void IngredientsPage::leave() {
    if (started())
        endEditing();
    else
        Q_EMIT left();
}

} // namespace staveline::ui

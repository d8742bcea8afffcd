// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/lot_ledger.h"

#include "ui/finish/lot_form.h"
#include "ui/widgets/quiet_table.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

enum Column { dayColumn, entryColumn, leftColumn, columnCount };

QTableWidgetItem* cell(const QString& words) {
    auto* item = new QTableWidgetItem(words);
    item->setFlags(item->flags() & ~Qt::ItemIsEditable);
    return item;
}

} // namespace

LotLedger::LotLedger(Session& session, QWidget* parent)
    : QWidget(parent), session_(session), table_(new QTableWidget(0, columnCount, this)), form_(new LotForm(session)),
      open_(nullptr), amend_(new QPushButton(tr("Amend"), this)), remove_(new QPushButton(tr("Remove"), this)) {
    table_->setHorizontalHeaderLabels({tr("Day"), tr("Entry"), tr("Left")});
    makeQuiet(*table_, tr("Ledger of the lot"));
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setSectionResizeMode(entryColumn, QHeaderView::Stretch);
    table_->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->setWordWrap(true);
    table_->installEventFilter(this);
    auto* buttons = new QWidget(this);
    addButtons(*buttons);
    auto* place = new QWidget(this); // shown while the form is not
    auto* inPlace = new QVBoxLayout(place);
    inPlace->setContentsMargins(0, 0, 0, 0);
    inPlace->addWidget(form_);
    auto* room = new SteadyScroll(place, this);
    room->fitPage();
    room->setAccessibleName(tr("Entry"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .4), lines(*this, .6), 0);
    column->addWidget(buttons);
    column->addWidget(table_, 1);
    auto* chosen = new QHBoxLayout;
    for (QPushButton* button : {amend_, remove_})
        chosen->addWidget(button);
    chosen->addStretch(1);
    column->addLayout(chosen);
    column->addWidget(room);
    connect(table_, &QTableWidget::currentCellChanged, this, &LotLedger::follow);
    connect(form_, &LotForm::keptWith, this, &LotLedger::keptWith);
    connect(form_, &LotForm::closed, this, &LotLedger::focusWork);
}

void LotLedger::addButtons(QWidget& row) {
    auto* layout = new WrapLayout(&row, lines(*this, .3));
    const auto add = [&](const QString& words, auto make) {
        auto* button = new QPushButton(words, &row);
        layout->addWidget(button);
        entries_.push_back(button);
        connect(button, &QPushButton::clicked, this, [this, make] { begin(make()); });
        return button;
    };
    const auto blank = [this]<class F>(std::type_identity<F>) {
        return [this] {
            F fact;
            fact.lot = lot_.name;
            fact.on = session_.desk().today();
            return facts::Fact{fact};
        };
    };
    add(tr("Reading"), blank(std::type_identity<facts::LotReadingFact>{}));
    add(tr("Addition"), blank(std::type_identity<facts::LotAdditionFact>{}));
    add(tr("Move or take"), blank(std::type_identity<facts::LotMoveFact>{}));
    open_ = add(tr("Opened"), [this] {
        facts::OpenedFact fact;
        fact.on = session_.desk().today();
        for (const desk::PackageView& package : lot_.packages)
            if (package.left > 0)
                fact.packaging = package.name;
        return facts::Fact{fact};
    });
    connect(amend_, &QPushButton::clicked, this, &LotLedger::amendSelected);
    connect(remove_, &QPushButton::clicked, this, &LotLedger::removeSelected);
}

void LotLedger::show(const desk::LotView& lot, const std::vector<desk::LotView>& all) {
    if (lot.name != lot_.name && !form_->started()) // what is begun stays, under the name of its own lot
        form_->leave();
    const int row = table_->currentRow();
    lot_ = lot;
    std::reverse(lot_.lines.begin(), lot_.lines.end());
    form_->knowLots(all);
    table_->setRowCount(static_cast<int>(lot_.lines.size()));
    for (std::size_t i = 0; i < lot_.lines.size(); ++i) {
        const desk::LotLine& line = lot_.lines[i];
        const int at = static_cast<int>(i);
        QString words = session_.words(line.text);
        if (!line.note.empty())
            words += QLatin1Char('\n') + qs(line.note);
        table_->setItem(at, dayColumn, cell(dayWords(line.on)));
        table_->setItem(at, entryColumn, cell(words));
        table_->setItem(at, leftColumn, cell(session_.amount(line.after)));
    }
    if (table_->rowCount() > 0)
        table_->setCurrentCell(std::clamp(row, 0, table_->rowCount() - 1), entryColumn);
    follow();
}

void LotLedger::follow() {
    const bool writable = !session_.desk().readOnly();
    for (QPushButton* button : entries_)
        button->setEnabled(writable);
    open_->setEnabled(writable && std::any_of(lot_.packages.begin(), lot_.packages.end(),
                                              [](const desk::PackageView& package) { return package.left > 0; }));
    for (QPushButton* button : {amend_, remove_})
        button->setEnabled(writable && selected());
}

/// What a vessel's ledger holds is amended there.
const desk::LotLine* LotLedger::selected() const {
    const int row = table_->currentRow();
    if (row < 0 || row >= static_cast<int>(lot_.lines.size()))
        return nullptr;
    const desk::LotLine& line = lot_.lines[static_cast<std::size_t>(row)];
    return line.table.empty() || line.table == "draw_off" || line.table == "refill" || line.table == "top_up" ? nullptr
                                                                                                              : &line;
}

void LotLedger::begin(const facts::Fact& fact, const std::vector<facts::Fact>& before) {
    form_->begin(fact, lot_.name, before);
}

void LotLedger::amendSelected() {
    if (const desk::LotLine* line = selected())
        form_->amend(line->table, line->id, lot_.name);
}

void LotLedger::removeSelected() {
    const desk::LotLine* line = selected();
    if (!line)
        return;
    const std::string table = line->table; // the line goes when the lots are read anew
    if (const auto removed = session_.remove(table, line->id); !removed)
        Q_EMIT session_.failed(removed.error());
}

void LotLedger::focusWork() {
    if (form_->active())
        form_->goOn();
    else
        table_->setFocus(Qt::OtherFocusReason);
}

bool LotLedger::eventFilter(QObject* watched, QEvent* event) {
    if (watched != table_ || event->type() != QEvent::KeyPress || !selected() || session_.desk().readOnly())
        return QWidget::eventFilter(watched, event);
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter)
        amendSelected();
    else if (key == Qt::Key_Delete)
        removeSelected();
    else
        return QWidget::eventFilter(watched, event);
    return true;
}

} // namespace staveline::ui

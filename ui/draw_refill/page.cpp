// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/page.h"

#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/widgets/entry_look.h"
#include "ui/widgets/find_bar.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/steady_scroll.h"
#include "ui/widgets/theme.h"
#include "ui/widgets/wrap_layout.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace staveline::ui {

using vessel::EntryKind;

DrawRefillPage::DrawRefillPage(Session& session, QWidget* parent)
    : WorkPage(session, parent), model_(new LedgerModel(session, this)), table_(new LedgerTable(*model_, this)),
      find_(new FindBar([this]() -> QTableView& { return *table_; }, this)), empty_(new QWidget(this)),
      emptyWords_(new QLabel(own("ui.empty.ledger"), empty_)), formPlace_(new QWidget(this)),
      panel_(new VesselPanel(session, this)), amend_(new QPushButton(tr("Amend"), this)),
      remove_(new QPushButton(tr("Remove"), this)) {
    auto* panes = new Panes(QStringLiteral("draw_refill"), this);
    panes->addPane(makeLeft(), 46, 22);
    panes->addPane(new SteadyScroll(panel_, this), 29, 12);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(panes);
    connect(find_, &FindBar::closed, this, [this] { table_->setFocus(Qt::OtherFocusReason); });
    connect(table_, &LedgerTable::amendAsked, this, &DrawRefillPage::amendSelected);
    connect(table_, &LedgerTable::removeAsked, this, &DrawRefillPage::removeSelected);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { select(current.row()); });
}

QWidget* DrawRefillPage::makeLeft() {
    auto* buttons = new QWidget(this);
    addEntryButtons(*buttons);
    emptyWords_->setWordWrap(true);
    auto* emptyColumn = new QVBoxLayout(empty_);
    emptyColumn->setContentsMargins(0, lines(*this, 1), 0, 0);
    emptyColumn->addWidget(emptyWords_);
    emptyColumn->addStretch(1);
    auto* forms = new QVBoxLayout(formPlace_);
    forms->setContentsMargins(0, 0, 0, 0);
    form_ = makeForm();
    auto* left = new QWidget(this);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, lines(*this, .6), 0);
    column->addWidget(buttons);
    column->addWidget(find_);
    column->addWidget(table_, 1);
    column->addWidget(empty_, 1);
    auto* room = new SteadyScroll(formPlace_, left);
    room->fitPage();
    room->setAccessibleName(tr("Entry"));
    column->addWidget(room);
    column->addStretch(); // a short ledger keeps its entry beside it
    return left;
}

EntryForm* DrawRefillPage::makeForm() {
    auto* form = new EntryForm(session(), formPlace_);
    formPlace_->layout()->addWidget(form);
    connect(form, &EntryForm::previewed, this, [this, form](const std::optional<desk::LedgerPreview>& preview) {
        panel_->showPreview(preview, form->active());
    });
    connect(form, &EntryForm::closed, this, [this, form] { closed(form); });
    return form;
}

void DrawRefillPage::closed(EntryForm* form) {
    if (form != form_) { // stored while another vessel is in front
        std::erase_if(aside_, [&](const auto& each) { return each.second == form; });
        form->deleteLater();
        return;
    }
    if (!isVisible() || vessel().empty())
        return;
    refresh();
    focusWork();
}

void DrawRefillPage::addEntryButtons(QWidget& row) {
    auto* layout = new WrapLayout(&row, lines(*this, .3));
    for (const vessel::EntryTraits& entry : vessel::entryKinds) {
        const EntryKind kind = entry.kind;
        auto* button = new QPushButton(wordOf(kind), &row);
        button->setObjectName(QStringLiteral("enter ") + wordOf(kind));
        connect(button, &QPushButton::clicked, this, [this, kind] { begin(kind); });
        layout->addWidget(button);
        entryButtons_.emplace_back(kind, button);
    }
    layout->addStretch();
    for (QPushButton* button : {amend_, remove_})
        layout->addWidget(button);
    connect(amend_, &QPushButton::clicked, this, &DrawRefillPage::amendSelected);
    connect(remove_, &QPushButton::clicked, this, &DrawRefillPage::removeSelected);
}

void DrawRefillPage::leaveVessel() {
    if (!form_->started()) {
        form_->leave();
        return;
    }
    form_->setAside(true);
    aside_[vessel()] = form_;
    form_ = makeForm();
    panel_->showPreview(std::nullopt, false);
}

/// The entry that waited for this vessel.
void DrawRefillPage::takeUp() {
    const auto kept = aside_.find(vessel());
    if (kept == aside_.end() || form_->active())
        return;
    form_->deleteLater();
    form_ = kept->second;
    aside_.erase(kept);
    form_->setAside(false);
}

void DrawRefillPage::refresh() {
    const auto view = session().desk().ledger(vessel(), true);
    if (!view) {
        Q_EMIT session().failed(view.error());
        return;
    }
    takeUp();
    showLedger(*view);
    form_->refresh();
    find_->refresh();
}

void DrawRefillPage::showLedger(const desk::LedgerView& view) {
    const int row = table_->currentIndex().row();
    const auto before = selected() ? std::optional(book::RowKey{selected()->table, selected()->id}) : std::nullopt;
    model_->show(view);
    const bool same = std::exchange(shown_, vessel()) == vessel();
    panel_->showVessel(view.vessel);
    table_->setVisible(!view.lines.empty());
    empty_->setVisible(view.lines.empty());
    amend_->setVisible(!view.lines.empty());
    remove_->setVisible(!view.lines.empty());
    const bool writable = !session().desk().readOnly();
    for (const auto& [kind, button] : entryButtons_) {
        button->setVisible((kind == EntryKind::opening) != view.vessel.opened || kind == EntryKind::refill);
        button->setEnabled(writable);
        button->setText(wordOf(kind, view.vessel.toFill));
    }
    table_->fit();
    select(-1);
    if (!same) {
        table_->scrollToTop();
        return;
    }
    if (const int next = rowAfter(before, row); next >= 0)
        table_->selectRow(next);
}

/// The newest entry just stored or brought back; else the one selected before; else the one that stands in its place.
int DrawRefillPage::rowAfter(const std::optional<book::RowKey>& before, int row) const {
    int newest = -1; // newest first: the lowest
    for (const auto& [table, id] : session().stored())
        if (const int at = model_->rowOf(id, table); at >= 0 && (newest < 0 || at < newest))
            newest = at;
    if (newest >= 0 || !before)
        return newest;
    const int same = model_->rowOf(before->id, before->table);
    return same >= 0 ? same : std::min(row, model_->rowCount() - 1);
}

const desk::LedgerLine* DrawRefillPage::selected() const {
    return model_->at(table_->currentIndex().row());
}

void DrawRefillPage::select(int row) {
    amend_->setEnabled(hasSelected() && !session().desk().readOnly());
    remove_->setEnabled(hasSelected() && !session().desk().readOnly());
    const vessel::LedgerState* state = row > 0 ? model_->stateAt(row) : nullptr;
    panel_->showPast(state ? std::optional(*state) : std::nullopt);
    Q_EMIT selectionChanged();
}

/// What went to another vessel is amended there.
bool DrawRefillPage::hasSelected() const {
    const desk::LedgerLine* line = selected();
    return line && !line->table.empty();
}

void DrawRefillPage::begin(EntryKind kind) {
    if (vessel().empty() || session().desk().readOnly())
        return;
    form_->begin(kind, vessel());
}

void DrawRefillPage::amendSelected() {
    if (hasSelected() && !session().desk().readOnly())
        form_->amend(selected()->table, selected()->id);
}

void DrawRefillPage::removeSelected() {
    if (!hasSelected() || session().desk().readOnly())
        return;
    const std::string table = selected()->table; // the line goes when the ledger refreshes
    if (const auto removed = session().remove(table, selected()->id); !removed)
        Q_EMIT session().failed(removed.error());
}

void DrawRefillPage::find() {
    if (model_->rowCount() > 0)
        find_->open();
}

void DrawRefillPage::findAgain(int by) {
    if (model_->rowCount() > 0)
        find_->step(by);
}

void DrawRefillPage::focusWork() {
    if (form_->active()) {
        form_->goOn();
        return;
    }
    if (table_->isVisible()) {
        if (!table_->currentIndex().isValid() && model_->rowCount() > 0)
            table_->selectRow(0);
        table_->setFocus(Qt::OtherFocusReason);
        return;
    }
    for (const auto& [kind, button] : entryButtons_)
        if (kind == EntryKind::refill) // nothing is recorded yet: the first fill
            button->setFocus(Qt::OtherFocusReason);
}

} // namespace staveline::ui

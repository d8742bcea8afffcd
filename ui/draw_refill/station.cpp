// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/station.h"

#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/widgets/panes.h"
#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr std::array allEntries = {EntryKind::opening, EntryKind::drawOff, EntryKind::refill, EntryKind::topUp,
                                   EntryKind::sample,  EntryKind::dip,     EntryKind::reading};

} // namespace

DrawRefillStation::DrawRefillStation(Session& session, QWidget* parent)
    : StationPage(session, parent), model_(new LedgerModel(session, this)), table_(new LedgerTable(*model_, this)),
      empty_(new QWidget(this)), emptyWords_(new QLabel(own("ui.empty.ledger"), empty_)),
      form_(new EntryForm(session, this)), panel_(new VesselPanel(session, this)),
      amend_(new QPushButton(tr("Amend"), this)), remove_(new QPushButton(tr("Remove"), this)) {
    auto* buttons = new QWidget(this);
    addEntryButtons(*buttons);
    emptyWords_->setWordWrap(true);
    auto* emptyColumn = new QVBoxLayout(empty_);
    emptyColumn->setContentsMargins(0, lines(*this, 1), 0, 0);
    emptyColumn->addWidget(emptyWords_);
    emptyColumn->addStretch(1);

    auto* left = new QWidget(this);
    auto* leftColumn = new QVBoxLayout(left);
    leftColumn->setContentsMargins(0, 0, lines(*this, .6), 0);
    leftColumn->addWidget(buttons);
    leftColumn->addWidget(table_, 1);
    leftColumn->addWidget(empty_, 1);
    leftColumn->addWidget(form_);

    auto* panes = new Panes(QStringLiteral("draw_refill"), this);
    panes->addPane(left, 46, 22);
    panes->addPane(panel_, 29, 12);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, lines(*this, .6), 0, 0);
    column->addWidget(panes);

    connect(table_, &LedgerTable::amendAsked, this, &DrawRefillStation::amendSelected);
    connect(table_, &LedgerTable::removeAsked, this, &DrawRefillStation::removeSelected);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& current) { select(current.row()); });
    connect(form_, &EntryForm::previewed, panel_, &VesselPanel::showPreview);
    connect(form_, &EntryForm::closed, this, [this] {
        if (!isVisible() || vessel().empty())
            return;
        refresh();
        focusWork();
    });
}

void DrawRefillStation::addEntryButtons(QWidget& row) {
    auto* layout = new QHBoxLayout(&row);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(lines(*this, .3));
    for (const EntryKind kind : allEntries) {
        auto* button = new QPushButton(wordOf(kind), &row);
        button->setObjectName(QStringLiteral("enter ") + wordOf(kind));
        connect(button, &QPushButton::clicked, this, [this, kind] { begin(kind); });
        layout->addWidget(button);
        entryButtons_.emplace_back(kind, button);
    }
    layout->addStretch(1);
    for (QPushButton* button : {amend_, remove_}) {
        button->setFlat(true);
        layout->addWidget(button);
    }
    connect(amend_, &QPushButton::clicked, this, &DrawRefillStation::amendSelected);
    connect(remove_, &QPushButton::clicked, this, &DrawRefillStation::removeSelected);
}

void DrawRefillStation::leaveVessel() {
    form_->leave();
}

void DrawRefillStation::refresh() {
    const LedgerLine* kept = selected();
    const std::pair<std::int64_t, std::string> before =
        kept ? std::pair(kept->id, kept->table) : std::pair<std::int64_t, std::string>();
    const auto view = session().desk().ledger(vessel());
    if (!view) {
        Q_EMIT session().failed(view.error());
        return;
    }
    model_->show(*view);
    panel_->showVessel(view->vessel);
    table_->setVisible(!view->lines.empty());
    empty_->setVisible(view->lines.empty());
    amend_->setVisible(!view->lines.empty());
    remove_->setVisible(!view->lines.empty());
    const bool writable = !session().desk().readOnly();
    for (const auto& [kind, button] : entryButtons_) {
        button->setVisible((kind == EntryKind::opening) != view->vessel.opened || kind == EntryKind::refill);
        button->setEnabled(writable);
    }
    table_->fit();
    select(-1);
    if (const int row = model_->rowOf(before.first, before.second); row >= 0)
        table_->selectRow(row);
    form_->refresh();
}

const LedgerLine* DrawRefillStation::selected() const {
    return model_->at(table_->currentIndex().row());
}

void DrawRefillStation::select(int row) {
    const LedgerLine* line = model_->at(row);
    const bool own = line && !line->table.empty(); // what went to another vessel is amended there
    amend_->setEnabled(own && !session().desk().readOnly());
    remove_->setEnabled(own && !session().desk().readOnly());
    const LedgerState* state = row > 0 ? model_->stateAt(row) : nullptr;
    panel_->showPast(state ? std::optional(*state) : std::nullopt);
    Q_EMIT selectionChanged();
}

void DrawRefillStation::begin(EntryKind kind) {
    if (vessel().empty() || session().desk().readOnly())
        return;
    form_->begin(kind, vessel());
}

void DrawRefillStation::amendSelected() {
    if (const LedgerLine* line = selected(); line && !line->table.empty() && !session().desk().readOnly())
        form_->amend(line->table, line->id);
}

void DrawRefillStation::removeSelected() {
    const LedgerLine* line = selected();
    if (!line || line->table.empty() || session().desk().readOnly())
        return;
    const std::string table = line->table; // the line goes when the ledger refreshes
    if (const auto removed = session().remove(table, line->id); !removed)
        Q_EMIT session().failed(removed.error());
}

void DrawRefillStation::focusWork() {
    if (table_->isVisible()) {
        if (!table_->currentIndex().isValid() && model_->rowCount() > 0)
            table_->selectRow(0);
        table_->setFocus(Qt::OtherFocusReason);
        return;
    }
    for (const auto& [kind, button] : entryButtons_)
        if (button->isVisible()) {
            button->setFocus(Qt::OtherFocusReason);
            return;
        }
}

} // namespace staveline::ui

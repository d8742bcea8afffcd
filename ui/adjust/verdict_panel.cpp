// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/verdict_panel.h"

#include "ui/adjust/target_timeline.h"
#include "ui/adjust/verdict_column.h"
#include "ui/present/verdict_words.h"
#include "ui/widgets/table_copy.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QStackedWidget>
#include <QTableWidget>

namespace staveline::ui {

VerdictPanel::VerdictPanel(QWidget* parent)
    : QWidget(parent), pages_(new QStackedWidget(this)), table_(new QTableWidget(0, 4, this)) {
    auto* timelines = new QWidget(this);
    auto* row = new QHBoxLayout(timelines);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(lines(*this, 1));
    for (const Dimension d : allDimensions) {
        columns_[d] = new VerdictColumn(d, timelines);
        row->addWidget(columns_[d], 1);
        connect(columns_[d], &VerdictColumn::asked, this, &VerdictPanel::asked);
        connect(&columns_[d]->timeline(), &TargetTimeline::tableAsked, this, [this] { showTable(true); });
    }
    table_->setAccessibleName(tr("The three dimensions over time"));
    table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table_->setSelectionBehavior(QAbstractItemView::SelectRows);
    table_->setTabKeyNavigation(false);
    new TableCopy(*table_);
    table_->setShowGrid(false);
    table_->verticalHeader()->hide();
    table_->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table_->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table_->verticalHeader()->setMinimumSectionSize(lines(*this, 1.4));
    table_->verticalHeader()->setDefaultSectionSize(lines(*this, 1.4));
    table_->setHorizontalHeaderLabels(
        {tr("What"), nameOf(Dimension::acidity), nameOf(Dimension::funk), nameOf(Dimension::body)});
    table_->installEventFilter(this);
    pages_->addWidget(timelines);
    pages_->addWidget(table_);
    auto* column = new QHBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(pages_);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void VerdictPanel::setVerdicts(const PerDimension<tasting::Verdict>& verdicts, const DisplayUnits& units) {
    for (const Dimension d : allDimensions)
        columns_[d]->setVerdict(verdicts[d], units);
}

void VerdictPanel::setTimelines(const PerDimension<TargetTimelineData>& timelines) {
    timelines_ = timelines;
    for (const Dimension d : allDimensions)
        columns_[d]->timeline().setLook(timelines[d]);
    if (tableShown())
        fillTable();
}

void VerdictPanel::setRoom(int height, bool scrolls) {
    // The decision below them stays in sight; what is higher than a usual window is theirs in good part.
    const int usual = lines(*this, 38);
    const double room = .17 * std::min(height, usual) + .45 * std::max(0, height - usual);
    for (const Dimension d : allDimensions) {
        TargetTimeline& timeline = columns_[d]->timeline();
        timeline.setFixedHeight(std::max(timeline.minimumSizeHint().height(), scrolls ? 0 : static_cast<int>(room)));
    }
}

void VerdictPanel::showTable(bool table) {
    if (table == tableShown())
        return;
    if (table)
        fillTable();
    pages_->setCurrentIndex(table ? 1 : 0);
    if (table)
        table_->setFocus(Qt::OtherFocusReason);
    else
        columns_[Dimension::acidity]->timeline().setFocus(Qt::OtherFocusReason);
    Q_EMIT tableAsked(table);
}

bool VerdictPanel::tableShown() const {
    return pages_->currentIndex() == 1;
}

void VerdictPanel::fillTable() {
    const auto rows = tableOf(timelines_);
    table_->setRowCount(static_cast<int>(rows.size()));
    int at = 0;
    for (const TimelineRow& row : rows) {
        table_->setItem(at, 0, new QTableWidgetItem(row.what));
        int column = 1;
        for (const Dimension d : allDimensions)
            table_->setItem(at, column++, new QTableWidgetItem(row.cells[d]));
        ++at;
    }
}

bool VerdictPanel::eventFilter(QObject* watched, QEvent* event) {
    if (watched == table_ && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Escape || key == Qt::Key_T) {
            showTable(false);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

QStringList VerdictPanel::words() const {
    QStringList all;
    for (const Dimension d : allDimensions)
        all << columns_[d]->words();
    return all;
}

} // namespace staveline::ui

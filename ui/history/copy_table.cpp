// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/copy_table.h"

#include "ui/widgets/theme.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>

#include <algorithm>

namespace staveline::ui {
namespace {

QString oneLine(QString words) {
    return words.replace(QLatin1Char('\n'), QLatin1Char(' ')).replace(QLatin1Char('\t'), QLatin1Char(' '));
}

bool isLetter(const QKeyEvent& event) {
    const bool plain = !(event.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
    return plain && !event.text().isEmpty() && event.text().front().isLetter();
}

} // namespace

CopyTable::CopyTable(const QString& name, QAbstractItemModel& model, QWidget* parent) : QTableView(parent) {
    setModel(&model);
    setAccessibleName(name);
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setAlternatingRowColors(true);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    verticalHeader()->setVisible(false);
    verticalHeader()->setMinimumSectionSize(1);
    verticalHeader()->setDefaultSectionSize(lines(*this, 1.6));
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setResizeContentsPrecision(64); // rows looked at for the width of a column
}

void CopyTable::copy() const {
    QModelIndexList chosen = selectionModel()->selectedIndexes();
    chosen.removeIf([this](const QModelIndex& index) { return isColumnHidden(index.column()); });
    if (chosen.isEmpty())
        return;
    std::sort(chosen.begin(), chosen.end());
    QString text;
    if (chosen.size() > 1) {
        for (const QModelIndex& index : chosen)
            if (index.row() == chosen.front().row())
                text += (text.isEmpty() ? QString() : QStringLiteral("\t")) +
                        oneLine(model()->headerData(index.column(), Qt::Horizontal).toString());
        text += QLatin1Char('\n');
    }
    int row = chosen.front().row();
    bool first = true;
    for (const QModelIndex& index : chosen) {
        if (!first)
            text += index.row() == row ? QLatin1Char('\t') : QLatin1Char('\n');
        text += oneLine(index.data().toString());
        row = index.row();
        first = false;
    }
    QGuiApplication::clipboard()->setText(text);
}

void CopyTable::keyPressEvent(QKeyEvent* event) {
    if (event->matches(QKeySequence::Copy))
        copy();
    else if (isLetter(*event))
        event->ignore(); // no searching as one types: the letter is a key of the page
    else
        QTableView::keyPressEvent(event);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/brew/row_list.h"

#include "ui/widgets/theme.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include <algorithm>

namespace staveline::ui {
namespace {

/// What Tab stops at in a widget, in the order it was made.
QList<QWidget*> stopsIn(QWidget& widget) {
    QList<QWidget*> stops;
    for (QWidget* child : widget.findChildren<QWidget*>())
        if ((child->focusPolicy() & Qt::TabFocus) && !child->focusProxy() && child->window() == widget.window())
            stops << child;
    return stops;
}

} // namespace

RowList::RowList(Fill fill, QWidget* parent)
    : QWidget(parent), fill_(std::move(fill)), column_(new QVBoxLayout(this)), anchor_(new QWidget(this)) {
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(lines(*this, .25));
    anchor_->setFocusPolicy(Qt::ClickFocus);
    anchor_->hide();
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void RowList::retire(QWidget* row) {
    // A field that loses the focus by going away has not been finished.
    for (QObject* child : row->findChildren<QObject*>())
        child->blockSignals(true);
    column_->removeWidget(row);
    row->hide();
    row->setParent(nullptr);
    row->deleteLater();
}

bool RowList::sync(std::size_t count) {
    if (count == rows_.size())
        return false;
    const std::size_t at = focused();
    for (QWidget* row : rows_)
        retire(row);
    rows_.clear();
    QWidget* before = anchor_;
    for (std::size_t i = 0; i < count; ++i) {
        auto* row = new QWidget(this);
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        layout->setSpacing(lines(*this, .6));
        fill_(i, *row, *layout);
        column_->addWidget(row);
        row->show();
        rows_.push_back(row);
        for (QWidget* stop : stopsIn(*row)) {
            setTabOrder(before, stop);
            before = stop;
        }
    }
    if (at < count + 1 && at < rows_.size())
        focusRow(at);
    return true;
}

std::size_t RowList::focused() const {
    const auto holds = [](const QWidget* row) {
        const QWidget* focus = row->window()->focusWidget();
        return focus && row->isAncestorOf(focus);
    };
    return static_cast<std::size_t>(std::find_if(rows_.begin(), rows_.end(), holds) - rows_.begin());
}

void RowList::focusRow(std::size_t index) {
    if (rows_.empty())
        return;
    if (const auto stops = stopsIn(*rows_[std::min(index, rows_.size() - 1)]); !stops.isEmpty())
        stops.front()->setFocus(Qt::OtherFocusReason);
}

QWidget* captioned(const QString& caption, QWidget* field, QWidget* buddy, QWidget* parent) {
    auto* both = new QWidget(parent);
    auto* column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(lines(*both, .15));
    auto* label = new QLabel(caption, both);
    label->setBuddy(buddy);
    column->addWidget(label);
    column->addWidget(field);
    column->addStretch(1);
    return both;
}

QLabel* quietLabel(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setForegroundRole(QPalette::PlaceholderText);
    label->setWordWrap(true);
    return label;
}

} // namespace staveline::ui

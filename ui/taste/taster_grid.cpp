// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/taste/taster_grid.h"

#include "ui/present/text.h"
#include "ui/taste/quiet_delegate.h"
#include "ui/taste/score_cell.h"
#include "ui/taste/sitting_header.h"
#include "ui/widgets/table_copy.h"
#include "ui/widgets/theme.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>

namespace staveline::ui {

using tasting::Attribute;

namespace {

std::string keyOf(const std::string& code, const std::string& taster) {
    return code + '\n' + taster;
}

/// Names of lines beside the rows, on the background of the rows.
class LineHeader : public QHeaderView {
public:
    explicit LineHeader(QWidget* parent) : QHeaderView(Qt::Vertical, parent) {}

protected:
    void paintEvent(QPaintEvent* event) override {
        QHeaderView::paintEvent(event);
        // Below the last line the background goes on without a rule.
        QPainter painter(viewport());
        painter.fillRect(QRect(0, length() - offset(), width(), height()), palette().color(QPalette::Base));
    }
    void paintSection(QPainter* painter, const QRect& box, int section) const override {
        const int pad = lines(*this, .4);
        painter->fillRect(box, palette().color(section % 2 == 0 ? QPalette::Base : QPalette::AlternateBase));
        painter->setPen(palette().color(QPalette::Text));
        painter->drawText(box.adjusted(pad, 0, -pad, 0), Qt::AlignLeft | Qt::AlignVCenter,
                          model()->headerData(section, Qt::Vertical, Qt::DisplayRole).toString());
    }
};

QString orDash(std::optional<double> score) {
    return score ? scoreText(score) : QStringLiteral("\u2013");
}

} // namespace

void TasterModel::showDraft(const SittingDraft& draft, bool all) {
    beginResetModel();
    lines_.clear();
    for (const Attribute& attribute : tasting::builtInSheet().attributes)
        if (all || attribute.shortSheet)
            lines_.push_back(&attribute);
    tasters_ = draft.tasters();
    scores_ = draft.now().sitting.scores;
    where_.clear();
    for (std::size_t i = 0; i < scores_.size(); ++i)
        where_.emplace(keyOf(scores_[i].attribute, scores_[i].taster), i);
    endResetModel();
}

int TasterModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(lines_.size());
}
int TasterModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(tasters_.size());
}

const Attribute* TasterModel::attribute(int row) const {
    return row >= 0 && row < rowCount() ? lines_[static_cast<std::size_t>(row)] : nullptr;
}

const tasting::Score* TasterModel::scoreAt(const QModelIndex& index) const {
    const Attribute* line = attribute(index.row());
    if (!line || index.column() < 0 || index.column() >= columnCount())
        return nullptr;
    const auto found = where_.find(keyOf(line->code, tasters_[static_cast<std::size_t>(index.column())]));
    return found == where_.end() ? nullptr : &scores_[found->second];
}

QVariant TasterModel::data(const QModelIndex& index, int role) const {
    const Attribute* line = attribute(index.row());
    if (!line)
        return {};
    const tasting::Score* score = scoreAt(index);
    switch (role) {
    case Qt::DisplayRole:
        if (!score)
            return QString();
        if (!line->bothTemperatures)
            return scoreText(score->cold ? score->cold : score->cellar);
        return orDash(score->cold) + QStringLiteral("  ") + orDash(score->cellar);
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    case Qt::AccessibleTextRole:
        return tr("%1, %2: %3")
            .arg(qs(line->name), headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                 score ? tr("cold %1, cellar %2").arg(orDash(score->cold), orDash(score->cellar)) : tr("not scored"));
    default:
        return {};
    }
}

QVariant TasterModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(
            Qt::Alignment((orientation == Qt::Vertical ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter));
    if (role != Qt::DisplayRole || section < 0)
        return {};
    if (orientation == Qt::Vertical)
        return attribute(section) ? qs(attribute(section)->name) : QString();
    return section < columnCount() ? tabWords(tasters_, static_cast<std::size_t>(section)) : QString();
}

TasterGrid::TasterGrid(QWidget* parent) : QTableView(parent), model_(new TasterModel(this)) {
    setModel(model_);
    setAccessibleName(tr("All tasters, cold and cellar"));
    setFrameShape(QFrame::NoFrame);
    setShowGrid(false);
    setItemDelegate(new QuietDelegate(QPalette::Text, this));
    setVerticalHeader(new LineHeader(this));
    setAlternatingRowColors(true);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setTabKeyNavigation(false);
    setCornerButtonEnabled(false);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    for (QHeaderView* header : {horizontalHeader(), verticalHeader()}) {
        header->setSectionsClickable(false);
        header->setHighlightSections(false);
        header->setSectionResizeMode(QHeaderView::Fixed);
    }
    horizontalHeader()->setDefaultSectionSize(lines(*this, 5.5));
    verticalHeader()->setDefaultSectionSize(lines(*this, 1.6));
    new TableCopy(*this);
    connect(this, &QAbstractItemView::doubleClicked, this, &TasterGrid::open);
}

void TasterGrid::showDraft(const SittingDraft& draft, bool all) {
    const int row = std::max(currentIndex().row(), 0);
    model_->showDraft(draft, all);
    setCurrentIndex(model_->index(std::min(row, model_->rowCount() - 1), static_cast<int>(draft.inHand())));
}

void TasterGrid::open(const QModelIndex& index) {
    if (const Attribute* attribute = model_->attribute(index.row()))
        Q_EMIT opened(index.column(), qs(attribute->code));
}

void TasterGrid::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        open(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

} // namespace staveline::ui

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

#include <algorithm>

namespace staveline::ui {

using tasting::Attribute;

namespace {

std::string keyOf(const std::string& code, const std::string& taster) {
    return code + '\n' + taster;
}

/// What a taster says of a line: the mean of the glasses that were scored.
std::optional<double> ofBothGlasses(const tasting::Score& score) {
    if (score.cold && score.cellar)
        return (*score.cold + *score.cellar) / 2;
    return score.cold ? score.cold : score.cellar;
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
    return parent.isValid() ? 0 : columnOf(static_cast<int>(tasters_.size())) + 2;
}

int TasterModel::tasterAt(int column) const {
    return column >= 0 && column < columnCount() - 2 ? column / 2 : -1;
}

const Attribute* TasterModel::attribute(int row) const {
    return row >= 0 && row < rowCount() ? lines_[static_cast<std::size_t>(row)] : nullptr;
}

const tasting::Score* TasterModel::scoreOf(const Attribute& line, int taster) const {
    if (taster < 0)
        return nullptr;
    const auto found = where_.find(keyOf(line.code, tasters_[static_cast<std::size_t>(taster)]));
    return found == where_.end() ? nullptr : &scores_[found->second];
}

QString TasterModel::wholeTable(const Attribute& line, bool mean) const {
    double sum = 0, low = 10, high = 0;
    int count = 0;
    for (int taster = 0; taster < static_cast<int>(tasters_.size()); ++taster) {
        const tasting::Score* score = scoreOf(line, taster);
        const auto own = score ? ofBothGlasses(*score) : std::nullopt;
        if (!own)
            continue;
        sum += *own;
        low = std::min(low, *own);
        high = std::max(high, *own);
        ++count;
    }
    if (count == 0 || (!mean && count < 2))
        return {};
    return numberWords(mean ? sum / count : high - low, 1);
}

QString TasterModel::cell(const Attribute& line, int column) const {
    const int taster = tasterAt(column);
    if (taster < 0)
        return wholeTable(line, column == columnCount() - 2);
    const tasting::Score* score = scoreOf(line, taster);
    if (!score)
        return {};
    if (!line.bothTemperatures) // tasted once, in the first of the two columns
        return column % 2 == 0 ? scoreText(score->cold ? score->cold : score->cellar) : QString();
    return scoreText(column % 2 == 0 ? score->cold : score->cellar);
}

QVariant TasterModel::data(const QModelIndex& index, int role) const {
    const Attribute* line = attribute(index.row());
    if (!line || index.column() < 0 || index.column() >= columnCount())
        return {};
    switch (role) {
    case Qt::DisplayRole:
        return cell(*line, index.column());
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::Alignment(Qt::AlignRight | Qt::AlignVCenter));
    case Qt::AccessibleTextRole: {
        const QString words = cell(*line, index.column());
        return tr("%1, %2: %3")
            .arg(qs(line->name), headerData(index.column(), Qt::Horizontal, Qt::AccessibleTextRole).toString(),
                 words.isEmpty() ? tr("not scored") : words);
    }
    default:
        return {};
    }
}

QVariant TasterModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(
            Qt::Alignment((orientation == Qt::Vertical ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter));
    if ((role != Qt::DisplayRole && role != Qt::AccessibleTextRole) || section < 0)
        return {};
    if (orientation == Qt::Vertical)
        return attribute(section) ? qs(attribute(section)->name) : QString();
    if (section >= columnCount())
        return {};
    const int taster = tasterAt(section);
    if (taster < 0)
        return section == columnCount() - 2 ? tr("mean") : tr("apart");
    const QString name = tabWords(tasters_, static_cast<std::size_t>(taster));
    const QString glass = glassWord(section % 2 == 0 ? Glass::cold : Glass::cellar);
    return role == Qt::DisplayRole ? tr("%1\n%2").arg(section % 2 == 0 ? name : QString(), glass)
                                   : tr("%1, %2").arg(name, glass);
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
    horizontalHeader()->setDefaultSectionSize(lines(*this, 4));
    verticalHeader()->setDefaultSectionSize(lines(*this, 1.6));
    new TableCopy(*this);
    connect(this, &QAbstractItemView::doubleClicked, this, &TasterGrid::open);
}

void TasterGrid::showDraft(const SittingDraft& draft, bool all) {
    const int row = std::max(currentIndex().row(), 0);
    model_->showDraft(draft, all);
    setCurrentIndex(
        model_->index(std::min(row, model_->rowCount() - 1), model_->columnOf(static_cast<int>(draft.inHand()))));
}

void TasterGrid::open(const QModelIndex& index) {
    const int taster = model_->tasterAt(index.column());
    if (const Attribute* attribute = model_->attribute(index.row()); attribute && taster >= 0)
        Q_EMIT opened(taster, qs(attribute->code));
}

void TasterGrid::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        open(currentIndex());
    else
        QTableView::keyPressEvent(event);
}

} // namespace staveline::ui

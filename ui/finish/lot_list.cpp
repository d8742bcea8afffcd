// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/lot_list.h"

#include "ui/widgets/theme.h"

#include <QStyle>
#include <QStyledItemDelegate>

#include <algorithm>

namespace staveline::ui {
namespace {

bool isOf(const desk::LotView& lot, const facts::VesselName& vessel) {
    return std::any_of(lot.parts.begin(), lot.parts.end(),
                       [&](const desk::LotPartView& part) { return part.vessel == vessel; });
}

/// What there is to do something with before what nobody told of for long.
int rankOf(const desk::LotView& lot) {
    if (lot.stage == desk::LotStage::ageing)
        return lot.waits.empty() ? 2 : 0;
    return lot.stage == desk::LotStage::packed ? 1 : 3;
}

/// As high as its lines are when they are wrapped to the list.
class WrappedLines : public QStyledItemDelegate {
public:
    explicit WrappedLines(QListWidget& list) : QStyledItemDelegate(&list), list_(list) {}
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const int margin = list_.style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, &list_) + 1;
        const int wide = list_.viewport()->width() - 2 * list_.spacing();
        const QRect space(0, 0, wide - 2 * margin, QWIDGETSIZE_MAX);
        const QRect lines =
            option.fontMetrics.boundingRect(space, Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());
        return {wide, lines.height() + 2};
    }

private:
    QListWidget& list_;
};

} // namespace

LotList::LotList(Session& session, QWidget* parent) : QListWidget(parent), session_(session) {
    setAccessibleName(tr("Beers"));
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setWordWrap(true);
    setItemDelegate(new WrappedLines(*this));
    setSpacing(lines(*this, .2)); // lots are told apart
    setResizeMode(QListView::Adjust);
    connect(this, &QListWidget::currentRowChanged, this, [this](int row) {
        if (row >= 0 && !filling_)
            Q_EMIT chose();
    });
}

QString LotList::wordsOf(const desk::LotView& lot) const {
    QStringList words;
    switch (lot.stage) {
    case desk::LotStage::ageing:
        words << tr("%1: %2, %3 old").arg(qs(lot.name), session_.amount(lot.litres), spanWords(lot.meanAge));
        break;
    case desk::LotStage::packed:
        words << tr("%1: all of it packed").arg(qs(lot.name));
        break;
    case desk::LotStage::gone:
        words << tr("%1: nothing left").arg(qs(lot.name));
        break;
    }
    words << tr("since %1").arg(dayWords(lot.since));
    if (!lot.waits.empty())
        words << session_.words(lot.waits.front().text);
    return words.join(QLatin1Char('\n'));
}

void LotList::show(const facts::VesselName& vessel, const std::vector<desk::LotView>& lots) {
    const facts::LotName before = chosen();
    std::vector<const desk::LotView*> order;
    for (const desk::LotView& lot : lots)
        order.push_back(&lot);
    std::stable_sort(order.begin(), order.end(), [&](const auto* a, const auto* b) {
        return std::pair(rankOf(*a), !isOf(*a, vessel)) < std::pair(rankOf(*b), !isOf(*b, vessel));
    });
    filling_ = true;
    clear();
    addItem(tr("In the vessel"));
    for (const desk::LotView* lot : order) {
        addItem(wordsOf(*lot));
        item(count() - 1)->setData(Qt::UserRole, qs(lot->name));
    }
    choose(before);
    filling_ = false;
}

void LotList::choose(const facts::LotName& lot) {
    for (int row = 0; row < count(); ++row)
        if (toStd(item(row)->data(Qt::UserRole).toString()) == lot) {
            setCurrentRow(row);
            return;
        }
    setCurrentRow(0);
}

facts::LotName LotList::chosen() const {
    return currentItem() ? toStd(currentItem()->data(Qt::UserRole).toString()) : facts::LotName();
}

} // namespace staveline::ui

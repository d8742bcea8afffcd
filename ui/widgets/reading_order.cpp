// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/reading_order.h"

#include "ui/widgets/work_page.h"

#include <QGridLayout>
#include <QScrollArea>
#include <QSplitter>

#include <algorithm>

namespace staveline::ui {
namespace {

constexpr const char* ownOrderMark = "own tab order";
constexpr const char* lastMark = "read last";

bool takesTab(const QWidget& widget) {
    return (widget.focusPolicy() & Qt::TabFocus) && widget.isVisible() && widget.isEnabled() && !widget.focusProxy();
}

/// A grid is filled in any order.
QList<QLayoutItem*> itemsOf(QLayout& layout) {
    QList<QLayoutItem*> items;
    for (int i = 0; i < layout.count(); ++i)
        items << layout.itemAt(i);
    const auto* grid = qobject_cast<QGridLayout*>(&layout);
    if (!grid)
        return items;
    const auto cell = [&](int at) {
        int row = 0, column = 0, rows = 0, columns = 0;
        grid->getItemPosition(at, &row, &column, &rows, &columns);
        return std::pair(row, column);
    };
    QList<int> order(items.size());
    std::generate(order.begin(), order.end(), [at = 0]() mutable { return at++; });
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return cell(a) < cell(b); });
    QList<QLayoutItem*> sorted;
    for (const int at : order)
        sorted << items[at];
    return sorted;
}

void addWidgetsOf(QLayout& layout, QList<QWidget*>& parts) {
    for (QLayoutItem* item : itemsOf(layout)) {
        if (QWidget* widget = item->widget())
            parts << widget;
        else if (QLayout* inner = item->layout())
            addWidgetsOf(*inner, parts);
    }
}

/// As they are read; what stands in no layout comes last, in the order it was made.
QList<QWidget*> partsOf(const QWidget& widget) {
    QList<QWidget*> parts;
    if (const auto* area = qobject_cast<const QScrollArea*>(&widget))
        return area->widget() ? QList<QWidget*>{area->widget()} : parts;
    if (const auto* split = qobject_cast<const QSplitter*>(&widget))
        for (int i = 0; i < split->count(); ++i)
            parts << split->widget(i);
    if (QLayout* layout = widget.layout())
        addWidgetsOf(*layout, parts);
    for (QObject* child : widget.children())
        if (auto* part = qobject_cast<QWidget*>(child); part && !part->isWindow() && !parts.contains(part))
            parts << part;
    return parts;
}

class Reader {
public:
    void read(QWidget& widget) {
        if (takesTab(widget))
            stops_ << &widget;
        if (widget.property(ownOrderMark).toBool())
            readChain(widget);
        else if (qobject_cast<WorkPage*>(&widget))
            readPage(widget);
        else
            readParts(widget);
    }
    [[nodiscard]] const QList<QWidget*>& stops() const { return stops_; }

private:
    void readParts(const QWidget& widget) {
        for (QWidget* part : partsOf(widget)) {
            if (!part->isVisible())
                continue;
            if (part->property(lastMark).toBool())
                waiting_ << part;
            else
                read(*part);
        }
    }
    void readPage(const QWidget& page) {
        readParts(page);
        for (QWidget* part : std::exchange(waiting_, {}))
            read(*part);
    }
    void readChain(const QWidget& part) {
        for (QWidget* next = part.nextInFocusChain(); next != &part; next = next->nextInFocusChain())
            if (part.isAncestorOf(next) && takesTab(*next))
                stops_ << next;
    }

    QList<QWidget*> stops_, waiting_;
};

} // namespace

QList<QWidget*> inReadingOrder(QWidget& root) {
    Reader reader;
    reader.read(root);
    return reader.stops();
}

bool stepInReadingOrder(QWidget& root, bool forward) {
    const QList<QWidget*> stops = inReadingOrder(root);
    if (stops.isEmpty())
        return false;
    QWidget* focus = root.window()->focusWidget();
    while (focus && !stops.contains(focus)) // an editor inside a table stands for the table
        focus = focus->parentWidget();
    const qsizetype at = stops.indexOf(focus), count = stops.size();
    const qsizetype next = at < 0 ? (forward ? 0 : count - 1) : (at + (forward ? 1 : count - 1)) % count;
    stops[next]->setFocus(forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
    return true;
}

void keepOwnTabOrder(QWidget& part) {
    part.setProperty(ownOrderMark, true);
}

void readLast(QWidget& part) {
    part.setProperty(lastMark, true);
}

} // namespace staveline::ui

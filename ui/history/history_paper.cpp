// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/history/history_paper.h"

#include "ui/print/model_table.h"

namespace staveline::ui {
namespace {

using Columns = std::vector<int>;

/// The columns from `from` on, as many as there are up to `end`, that hold anything.
Columns filled(const HistoryModel& days, int from, int end) {
    Columns columns;
    for (int column = from; column < end; ++column)
        if (!days.isEmptyColumn(column))
            columns.push_back(column);
    return columns;
}

void add(sheet::Document& paper, const QAbstractItemModel& model, Columns columns, const Columns& repeated) {
    if (columns.empty())
        return;
    columns.insert(columns.begin(), repeated.begin(), repeated.end());
    sheet::Table table = tableOf(model, columns, static_cast<int>(repeated.size()));
    if (!table.rows.empty())
        paper.blocks.emplace_back(std::move(table));
}

void heading(sheet::Document& paper, const char* key) {
    paper.blocks.emplace_back(sheet::Heading{1, toStd(own(key))});
}

/// More columns than a page is wide: what belongs together stands in a table of its own.
void addDays(sheet::Document& paper, const HistoryModel& days) {
    constexpr int repeated = 2, scoresAndLevel = 8; // columns
    const int note = days.columnCount() - 1;
    heading(paper, "ui.paper.by_day");
    add(paper, days, filled(days, repeated, scoresAndLevel), {0, 1});
    add(paper, days, filled(days, scoresAndLevel, note), {0, 1});
    add(paper, days, filled(days, note, note + 1), {0, 1});
}

void addPromises(sheet::Document& paper, const PromiseModel& promises) {
    constexpr int repeated = 3;
    if (promises.rowCount() == 0)
        return;
    heading(paper, "ui.paper.promises");
    const int each = (promises.columnCount() - repeated) / static_cast<int>(allDimensions.size());
    for (int first = repeated; first < promises.columnCount(); first += each) {
        Columns columns;
        for (int column = first; column < first + each; ++column)
            columns.push_back(column);
        add(paper, promises, columns, {0, 1, 2});
    }
}

} // namespace

sheet::Document historyPaper(const HistoryPaperInput& input, const HistoryModel& days, const PromiseModel& promises) {
    sheet::Document paper;
    paper.title = render(say("ui.paper.history").with("vessel", input.vessel));
    paper.subtitle = render(say("ui.paper.printed").with("day", input.today));
    paper.footer = render(say("ui.paper.footer").with("vessel", input.vessel).with("day", input.today));
    paper.blocks.emplace_back(sheet::Paragraph{toStd(input.record)});
    paper.blocks.emplace_back(sheet::Picture{input.charts.toStdString(), toStd(input.chartsInWords)});
    addPromises(paper, promises);
    addDays(paper, days);
    return paper;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "tasting/anova.h"

#include "tasting/statistics.h"

#include <algorithm>

namespace staveline::tasting {

OneWayAnova oneWayAnova(const std::vector<std::vector<double>>& groups) {
    OneWayAnova out;
    std::vector<double> means, all;
    // Away from a shared origin, so that a large constant part costs no digits.
    const double origin = groups.front().front();
    for (auto group : groups) {
        for (double& v : group)
            v -= origin;
        out.ssWithin += sumOfSquares(group);
        means.push_back(meanOf(group));
        all.insert(all.end(), group.begin(), group.end());
    }
    const double grand = meanOf(all);
    for (std::size_t i = 0; i < groups.size(); ++i)
        out.ssBetween += static_cast<double>(groups[i].size()) * (means[i] - grand) * (means[i] - grand);
    out.dfBetween = static_cast<double>(groups.size()) - 1;
    out.dfWithin = static_cast<double>(all.size() - groups.size());
    return out;
}

void setComponents(PanelAnova& table) {
    const double perCell = table.replicates, perAssessor = table.temperatures * perCell;
    table.varError = table.msError;
    table.varInteraction = std::max(0.0, (table.msInteraction - table.msError) / perCell);
    table.varAssessor = std::max(0.0, (table.msAssessor - table.msInteraction) / perAssessor);
}

namespace {

using Cube = std::vector<std::vector<std::vector<double>>>;

bool oneShape(const Cube& y) {
    if (y.size() < 2 || y.front().size() < 2 || y.front().front().size() < 2)
        return false;
    return std::all_of(y.begin(), y.end(), [&](const auto& assessor) {
        return assessor.size() == y.front().size() && std::all_of(assessor.begin(), assessor.end(), [&](const auto& c) {
                   return c.size() == y.front().front().size();
               });
    });
}

/// Means of the columns of a table of equal rows.
std::vector<double> columnMeans(const std::vector<std::vector<double>>& rows) {
    std::vector<double> means;
    for (std::size_t t = 0; t < rows.front().size(); ++t) {
        std::vector<double> column;
        column.reserve(rows.size());
        for (const auto& row : rows)
            column.push_back(row[t]);
        means.push_back(meanOf(column));
    }
    return means;
}

} // namespace

Result<PanelAnova> panelAnova(const Cube& y) {
    if (!oneShape(y))
        return badInput("", say("tasting.panel.shape"), say("tasting.panel.shape.remedy"));
    PanelAnova out;
    out.assessors = static_cast<int>(y.size());
    out.temperatures = static_cast<int>(y.front().size());
    out.replicates = static_cast<int>(y.front().front().size());
    std::vector<std::vector<double>> cells, cellMeans;
    std::vector<double> assessorMeans;
    for (const auto& assessor : y) {
        auto& row = cellMeans.emplace_back();
        for (const auto& cell : assessor) {
            cells.push_back(cell);
            row.push_back(meanOf(cell));
        }
        assessorMeans.push_back(meanOf(row));
    }
    const auto temperatureMeans = columnMeans(cellMeans);
    out.mean = meanOf(assessorMeans);
    const double n = out.assessors, t = out.temperatures, r = out.replicates;
    out.msError = oneWayAnova(cells).msWithin();
    out.msAssessor = t * r * sumOfSquares(assessorMeans) / (n - 1);
    out.msTemperature = n * r * sumOfSquares(temperatureMeans) / (t - 1);
    double interaction = 0;
    for (std::size_t a = 0; a < cellMeans.size(); ++a)
        for (std::size_t c = 0; c < cellMeans[a].size(); ++c) {
            const double off = cellMeans[a][c] - assessorMeans[a] - temperatureMeans[c] + out.mean;
            interaction += off * off;
        }
    out.msInteraction = r * interaction / ((n - 1) * (t - 1));
    setComponents(out);
    return out;
}

} // namespace staveline::tasting

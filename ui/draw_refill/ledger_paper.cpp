// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/draw_refill/ledger_paper.h"

#include "desk/ledger.h"
#include "ui/print/model_table.h"

namespace staveline::ui {

std::optional<sheet::Document> ledgerPaper(const facts::VesselName& vessel, const LedgerModel& model, Day today) {
    if (model.rowCount() == 0)
        return std::nullopt;
    sheet::Document paper;
    paper.title = render(say("ui.paper.ledger").with("vessel", vessel));
    paper.subtitle = render(say("ui.paper.printed").with("day", today));
    paper.footer = render(say("ui.paper.footer").with("vessel", vessel).with("day", today));
    sheet::Table table =
        tableOf(model, {LedgerModel::day, LedgerModel::entry, LedgerModel::level, LedgerModel::age}, 0);
    for (int row = 0; row < model.rowCount(); ++row) {
        std::string& entry = table.rows[static_cast<std::size_t>(row)][LedgerModel::entry];
        if (const std::string& note = model.at(row)->note; !note.empty())
            entry += " \u2013 " + note;
        for (const QString& finding : model.findings(row))
            entry += " \u25b2 " + toStd(finding);
    }
    paper.blocks.emplace_back(std::move(table));
    return paper;
}

} // namespace staveline::ui

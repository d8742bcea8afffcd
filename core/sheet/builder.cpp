// SPDX-License-Identifier: GPL-3.0-or-later
#include "sheet/builder.h"

#include <algorithm>

namespace staveline::sheet {
namespace {

/// "caution.mash.hotLiquor" -> "mash".
std::string stepOf(const std::string& key) {
    const auto first = key.find('.');
    const auto second = first == std::string::npos ? first : key.find('.', first + 1);
    return second == std::string::npos ? "" : key.substr(first + 1, second - first - 1);
}

} // namespace

SheetBuilder::SheetBuilder(const DisplayUnits& units, const Catalogue& texts) : units_(units), texts_(texts) {
    document.cautionWord = text("sheet.caution");
}

void SheetBuilder::heading(std::string_view key) {
    document.blocks.emplace_back(Heading{1, text(key)});
}

void SheetBuilder::paragraph(const Message& message) {
    document.blocks.emplace_back(Paragraph{text(message)});
}

void SheetBuilder::paragraphs(const std::vector<Message>& messages) {
    for (const auto& message : messages)
        paragraph(message);
}

void SheetBuilder::table(std::initializer_list<std::string_view> columnKeys, std::vector<bool> numeric,
                         std::vector<std::vector<std::string>> rows) {
    Table table{{}, std::move(rows), std::move(numeric)};
    for (auto key : columnKeys)
        table.columns.push_back(text(key));
    document.blocks.emplace_back(std::move(table));
}

void SheetBuilder::bullets(const std::vector<Message>& messages) {
    BulletList list;
    for (const auto& message : messages)
        list.items.push_back(text(message));
    document.blocks.emplace_back(std::move(list));
}

void SheetBuilder::steps(const std::vector<Message>& messages) {
    bullets(messages);
    std::get<BulletList>(document.blocks.back()).boxes = true;
}

void SheetBuilder::keep(const Message& caution) {
    Waiting entry{stepOf(caution.key), text(caution)};
    if (std::none_of(waiting_.begin(), waiting_.end(), [&](const Waiting& w) { return w.text == entry.text; }))
        waiting_.push_back(std::move(entry));
}

void SheetBuilder::keep(const std::vector<Message>& cautions) {
    for (const auto& caution : cautions)
        keep(caution);
}

void SheetBuilder::place(std::string_view step) {
    for (const auto& w : waiting_)
        if (w.step == step)
            document.blocks.emplace_back(Caution{w.text});
}

void SheetBuilder::placeAllBut(std::initializer_list<std::string_view> steps) {
    for (const auto& w : waiting_)
        if (std::find(steps.begin(), steps.end(), w.step) == steps.end())
            document.blocks.emplace_back(Caution{w.text});
}

} // namespace staveline::sheet

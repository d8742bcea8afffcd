// SPDX-License-Identifier: GPL-3.0-or-later
// Puts a paper together from texts and quantities; cautions wait in a tray until their step comes.
#pragma once

#include "sheet/document.h"

#include <initializer_list>
#include <string_view>

namespace staveline::sheet {

class SheetBuilder {
public:
    SheetBuilder(const DisplayUnits& units, const Catalogue& texts);

    [[nodiscard]] std::string text(const Message& message) const { return render(message, units_, texts_); }
    [[nodiscard]] std::string text(std::string_view key) const { return std::string(texts_.find(key)); }
    /// A quantity with its unit.
    [[nodiscard]] std::string value(const ArgumentValue& v) const { return show(v, units_); }

    void heading(std::string_view key);
    void paragraph(const Message& message);
    void paragraphs(const std::vector<Message>& messages);
    void table(std::initializer_list<std::string_view> columnKeys, std::vector<bool> numeric,
               std::vector<std::vector<std::string>> rows);
    void bullets(const std::vector<Message>& messages);
    /// Steps in their order, each with a box to tick.
    void steps(const std::vector<Message>& messages);

    /// A caution said twice stands once.
    void keep(const Message& caution);
    void keep(const std::vector<Message>& cautions);
    /// Sets those of one step ("mash" for keys "caution.mash.…").
    void place(std::string_view step);
    /// Sets those whose step is none of these.
    void placeAllBut(std::initializer_list<std::string_view> steps);

    Document document;

private:
    struct Waiting {
        std::string step, text;
    };
    DisplayUnits units_;
    const Catalogue& texts_;
    std::vector<Waiting> waiting_;
};

} // namespace staveline::sheet

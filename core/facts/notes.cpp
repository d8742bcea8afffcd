// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/notes.h"

#include "facts/codec.h"
#include "facts/field_kinds.h"
#include "facts/note_cells.h"
#include "quantity/words.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace staveline::facts {
namespace {

const NoteField* fieldNamed(const std::vector<NoteField>& fields, std::string_view name) {
    const auto at =
        std::find_if(fields.begin(), fields.end(), [&](const NoteField& each) { return each.name == name; });
    return at == fields.end() ? nullptr : &*at;
}

/// Calls `then` with the field and the text of every cell that is taken and not empty.
template <class Then>
void eachCell(const NoteTable& table, const NoteForm& form, const std::vector<NoteField>& fields, Then then) {
    for (std::size_t column = 0; column < form.fields.size(); ++column)
        if (const NoteField* field = fieldNamed(fields, form.fields[column]))
            for (const auto& row : table.rows)
                if (column < row.cells.size() && row.cells[column] && !row.cells[column]->empty())
                    then(*field, *row.cells[column]);
}

Result<void> checkColumns(const NoteForm& form, const std::vector<NoteField>& fields) {
    std::vector<std::string> known;
    std::set<std::string> taken;
    for (const auto& field : fields)
        known.push_back(field.name);
    for (const auto& name : form.fields) {
        if (name.empty())
            continue;
        if (!fieldNamed(fields, name))
            return badInput("/columns", say("desk.unknown_field").with("field", excerpt(name)), offerName(name, known));
        if (!taken.insert(name).second)
            return badInput("/columns", say("facts.notes_twice").with("field", name), say("facts.notes_twice.remedy"));
    }
    for (const auto& field : fields)
        if (field.required && !taken.contains(field.name) && !(field.name == "vessel" && !form.vessel.empty()))
            return badInput("/columns", say("facts.notes_missing").with("field", field.name),
                            say("facts.notes_missing.remedy"));
    return {};
}

/// Which of the orders read every day of the file.
struct ReadableOrders {
    std::vector<DateOrder> orders;
    std::string twoWays; ///< a cell that two of them read differently
};
ReadableOrders readableOrders(const std::vector<std::string>& days) {
    ReadableOrders found;
    std::size_t most = 0;
    for (const auto order : {DateOrder::ymd, DateOrder::dmy, DateOrder::mdy}) {
        const auto read = static_cast<std::size_t>(
            std::count_if(days.begin(), days.end(), [&](const auto& day) { return readDay(day, order).has_value(); }));
        if (read > most)
            found.orders.clear();
        if (read >= most)
            found.orders.push_back(order);
        most = std::max(most, read);
    }
    for (const auto& day : days)
        for (const auto order : found.orders)
            if (readDay(day, order) != readDay(day, found.orders.front()))
                found.twoWays = day;
    return found;
}

Result<DateOrder> datesIn(const std::vector<std::string>& days) {
    const ReadableOrders found = readableOrders(days);
    if (found.twoWays.empty())
        return found.orders.front();
    return badInput("/dates", say("facts.notes_dates").with("text", excerpt(found.twoWays)),
                    say("facts.notes_dates.remedy"));
}

struct MarkedCell {
    const NoteField* field;
    std::string text;
    [[nodiscard]] std::optional<double> read(char mark) const {
        const auto number = field->cell == NoteCell::share ? readShare(text, mark) : readNumber(text, mark);
        return number && *number >= field->low && *number <= field->high ? number : std::nullopt;
    }
};

/// A mark is known where it alone makes numbers of their field's range.
Result<char> decimalIn(const std::vector<MarkedCell>& cells) {
    std::size_t point = 0, comma = 0;
    const MarkedCell* twoWays = nullptr;
    for (const auto& cell : cells) {
        const auto byPoint = cell.read('.'), byComma = cell.read(',');
        point += byPoint && !byComma ? 1U : 0U;
        comma += byComma && !byPoint ? 1U : 0U;
        if (byPoint && byComma && *byPoint != *byComma)
            twoWays = &cell;
        if (byPoint != byComma && point > 0 && comma > 0)
            twoWays = &cell;
    }
    if ((point > 0) != (comma > 0))
        return point > 0 ? '.' : ',';
    if (!twoWays)
        return '.';
    return badInput("/decimal", say("facts.notes_decimal").with("text", excerpt(twoWays->text)),
                    say("facts.notes_decimal.remedy"));
}

} // namespace

Result<NoteTable> readNotes(std::string_view text) {
    if (!isUtf8(text))
        return badInput("", say("facts.notes_encoding"), say("facts.notes_encoding.remedy"));
    auto sheet = readSheet(text);
    if (!sheet)
        return fail(sheet.error());
    if (sheet->records.size() < 2)
        return badInput("", say("facts.notes_empty"), say("facts.notes_empty.remedy"));
    NoteTable table;
    for (const auto& cell : sheet->records.front().cells)
        table.headings.push_back(cell.value_or(""));
    table.rows.assign(std::make_move_iterator(sheet->records.begin() + 1),
                      std::make_move_iterator(sheet->records.end()));
    return table;
}

Result<NoteForm> settled(NoteForm form, const NoteTable& table) {
    const auto fields = noteFields(form.kind);
    if (fields.empty())
        return badInput("/kind", say("desk.unknown_kind").with("kind", excerpt(form.kind)),
                        offerName(form.kind, noteKinds()));
    if (auto sound = checkColumns(form, fields); !sound)
        return fail(sound.error());
    std::vector<std::string> days;
    std::vector<MarkedCell> numbers;
    eachCell(table, form, fields, [&](const NoteField& field, const std::string& text) {
        if (field.cell == NoteCell::day)
            days.push_back(text);
        if ((field.cell == NoteCell::number || field.cell == NoteCell::share) &&
            text.find_first_of(".,") != std::string::npos)
            numbers.push_back({&field, text});
    });
    if (!form.dates) {
        auto order = datesIn(days);
        if (!order)
            return fail(order.error());
        form.dates = *order;
    }
    if (!form.decimal) {
        auto mark = decimalIn(numbers);
        if (!mark)
            return fail(mark.error());
        form.decimal = *mark;
    }
    return form;
}

} // namespace staveline::facts

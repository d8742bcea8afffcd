// SPDX-License-Identifier: GPL-3.0-or-later
// A brewer's own notes in CSV: the first byte says the kind, the next how days and numbers are meant, the rest is the
// file. Every row becomes a fact or is rejected in words.
#include "facts/notes.h"
#include "fuzz/hold.h"
#include "quantity/text.h"

#include <array>

using namespace staveline;
using namespace staveline::facts;

namespace {

NoteForm formOf(std::uint8_t kind, std::uint8_t how, const NoteTable& table) {
    constexpr std::array orders = {DateOrder::ymd, DateOrder::dmy, DateOrder::mdy};
    NoteForm form;
    form.kind = noteKinds()[kind % noteKinds().size()];
    form.vessel = how & 1 ? "Plover" : "";
    form.fields = guessFields(form.kind, table.headings);
    if (how & 2)
        form.dates = orders[(how >> 2) % orders.size()];
    if (how & 64)
        form.decimal = how & 128 ? ',' : '.';
    return form;
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const ingredient::Pantry& pantry = ingredient::builtInPantry();
    if (size < 2)
        return 0;
    const auto table = readNotes(fuzz::textOf(data + 2, size - 2));
    if (!table) {
        fuzz::hold(!render(table.error().cause).empty(), "a fault has a cause");
        return 0;
    }
    const auto form = settled(formOf(data[0], data[1], *table), *table);
    if (!form)
        return 0;
    const auto noted = factsIn(*table, *form, pantry);
    fuzz::hold(noted.facts.size() == noted.lines.size(), "each fact has its lines");
    std::size_t lines = noted.rejected.size();
    for (const auto& of : noted.lines)
        lines += of.size();
    fuzz::hold(lines >= table->rows.size(), "each row is taken or rejected");
    for (const auto& rejected : noted.rejected)
        fuzz::hold(!render(rejected.why.cause).empty(), "a rejected row says why");
    return 0;
}

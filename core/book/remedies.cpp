// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/faults.h"

#include <algorithm>
#include <array>

namespace staveline::book {

namespace {

struct Advice {
    std::string_view cause, remedy;
};
constexpr std::array<Advice, 47> advice{{
    {"book.no_such_file", "book.remedy.new_book"},
    {"book.is_folder", "book.remedy.name_file"},
    {"book.not_a_file", "book.remedy.name_file"},
    {"book.is_link", "book.remedy.other_name"},
    {"book.of_another", "book.remedy.other_name"},
    {"book.is_database", "book.remedy.other_name"},
    {"book.empty_file", "book.remedy.restore_or_new"},
    {"book.cannot_read", "book.remedy.rights"},
    {"book.not_a_book", "book.remedy.choose_book"},
    {"book.other_program", "book.remedy.choose_book"},
    {"book.newer_major", "book.remedy.update"},
    {"book.older_major", "book.remedy.in_between"},
    {"book.wrong_schema", "book.remedy.restore"},
    {"book.unfinished", "book.remedy.finish"},
    {"book.exists", "book.remedy.other_name"},
    {"book.no_such_folder", "book.remedy.make_folder"},
    {"book.cannot_create", "book.remedy.other_folder"},
    {"book.locked", "book.remedy.wait"},
    {"book.changed_elsewhere", "book.remedy.look_again"},
    {"book.read_only", "book.remedy.writable_copy"},
    {"book.disk_full", "book.remedy.make_room"},
    {"book.disk_error", "book.remedy.check_disk"},
    {"book.not_writable", "book.remedy.rights"},
    {"book.folder_not_writable", "book.remedy.rights"},
    {"book.file_moved", "book.remedy.find_file"},
    {"book.damaged", "book.remedy.restore"},
    {"book.no_memory", "book.remedy.close_programs"},
    {"book.too_big", "book.remedy.shorten"},
    {"book.failed", "book.remedy.reopen"},
    {"book.backup_onto_itself", "book.remedy.other_name"},
    {"book.backup_unsound", "book.remedy.check"},
    {"book.no_such_row", "book.remedy.list_again"},
    {"book.no_such_table", "book.remedy.check_name"},
    {"book.no_such_column", "book.remedy.check_name"},
    {"book.value_count", "book.remedy.each_column"},
    {"book.value_missing", "book.remedy.give_value"},
    {"book.value_type", "book.remedy.kind"},
    {"book.value_range", "book.remedy.range"},
    {"book.value_not_finite", "book.remedy.number"},
    {"book.value_refused", "book.remedy.values"},
    {"book.id_taken", "book.remedy.other_value"},
    {"book.not_unique", "book.remedy.other_value"},
    {"book.reference_missing", "book.remedy.record_first"},
    {"book.still_used", "book.remedy.remove_first"},
    {"book.nothing_to_undo", "book.remedy.undo_later"},
    {"book.nothing_to_redo", "book.remedy.redo_later"},
    {"book.undo_floor", "book.remedy.open_copy"},
}};

} // namespace

std::string remedyOf(std::string_view cause) {
    const auto found = std::find_if(advice.begin(), advice.end(), [&](const Advice& a) { return a.cause == cause; });
    return std::string(found == advice.end() ? cause : found->remedy);
}

} // namespace staveline::book

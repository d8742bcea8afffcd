// SPDX-License-Identifier: GPL-3.0-or-later
// The history as a spreadsheet, written by libxlsxwriter.
#include "desk/history_table.h"
#include "desk/json.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <unistd.h>
#include <xlsxwriter.h>

namespace staveline::desk {
namespace {

/// A file of the library's own, gone when it was read.
class PassingFile {
public:
    PassingFile() {
        std::error_code unknown;
        path_ = (std::filesystem::temp_directory_path(unknown) / "staveline-XXXXXX").string();
        if (const int file = ::mkstemp(path_.data()); file >= 0)
            ::close(file);
    }
    ~PassingFile() { std::remove(path_.c_str()); }
    PassingFile(const PassingFile&) = delete;
    PassingFile& operator=(const PassingFile&) = delete;

    [[nodiscard]] const char* path() const { return path_.c_str(); }
    [[nodiscard]] std::string bytes() const {
        std::ifstream in(path_, std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }

private:
    std::string path_;
};

class CellWriter {
public:
    CellWriter(lxw_worksheet* sheet, lxw_format* day) : sheet_(sheet), day_(day) {}

    void write(std::size_t row, std::size_t column, const HistoryTable::Cell& cell) const {
        const auto at = static_cast<lxw_row_t>(row);
        const auto in = static_cast<lxw_col_t>(column);
        if (const auto* number = std::get_if<double>(&cell))
            worksheet_write_number(sheet_, at, in, *number, nullptr);
        else if (const auto* text = std::get_if<std::string>(&cell))
            worksheet_write_string(sheet_, at, in, text->c_str(), nullptr); // never a formula
        else if (const auto* day = std::get_if<Day>(&cell))
            writeDay(at, in, *day);
    }

private:
    void writeDay(lxw_row_t row, lxw_col_t column, Day day) const {
        const std::chrono::year_month_day civil{day};
        lxw_datetime date{static_cast<int>(civil.year()),
                          static_cast<int>(static_cast<unsigned>(civil.month())),
                          static_cast<int>(static_cast<unsigned>(civil.day())),
                          0,
                          0,
                          0};
        worksheet_write_datetime(sheet_, row, column, &date, day_);
    }

    lxw_worksheet* sheet_;
    lxw_format* day_;
};

lxw_format* formatOf(lxw_workbook* book, const char* numbers) {
    lxw_format* format = workbook_add_format(book);
    format_set_num_format(format, numbers);
    return format;
}

void writeTable(lxw_workbook* book, const HistoryTable& table) {
    lxw_worksheet* sheet = workbook_add_worksheet(book, nullptr);
    lxw_format* bold = workbook_add_format(book);
    format_set_bold(bold);
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        worksheet_write_string(sheet, 0, static_cast<lxw_col_t>(i), table.columns[i].c_str(), bold);
    const CellWriter cells(sheet, formatOf(book, "yyyy-mm-dd"));
    for (std::size_t row = 0; row < table.rows.size(); ++row)
        for (std::size_t i = 0; i < table.rows[row].size(); ++i)
            cells.write(row + 1, i, table.rows[row][i]);
    worksheet_freeze_panes(sheet, 1, 1);
    constexpr double dayWidth = 11; // characters
    worksheet_set_column(sheet, 0, 0, dayWidth, nullptr);
}

} // namespace

Result<std::string> toXlsx(const std::vector<HistoryRow>& history) {
    const PassingFile file;
    lxw_workbook* book = workbook_new(file.path());
    if (book)
        writeTable(book, tableOf(history));
    if (!book || workbook_close(book) != LXW_NO_ERROR)
        return fail({FaultKind::storage, "/out", say("desk.no_workbook"), say("desk.no_workbook.remedy")});
    return file.bytes();
}

} // namespace staveline::desk

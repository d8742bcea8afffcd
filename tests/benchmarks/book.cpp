// SPDX-License-Identifier: GPL-3.0-or-later
// The book with ROWS entries (default 200000) in 200 vessels: open, read, check, copy, one edit, one undo.
//   bench_book [ROWS] [FOLDER]   FOLDER: on which disk, since every commit waits for it
#include "book/book.h"
#include "support/bench.h"

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <unistd.h>

namespace {

using namespace staveline;
using namespace staveline::book;
namespace fs = std::filesystem;

constexpr std::int64_t vessels = 200;

Column column(const char* name, ColumnType type, bool required = false) {
    Column made;
    made.name = name;
    made.type = type;
    made.required = required;
    return made;
}

Schema ledger() {
    Column vessel = column("vessel", ColumnType::integer, true);
    vessel.references = "vessel";
    TableSpec entry{"entry", {vessel}, {}, {{"vessel", "day"}}};
    for (const char* name : {"day", "kind"})
        entry.columns.push_back(column(name, ColumnType::text, true));
    for (const char* name : {"litres", "gravity", "ph", "ta"})
        entry.columns.push_back(column(name, ColumnType::real));
    entry.columns.push_back(column("note", ColumnType::text));
    return {1, 0, {{"vessel", {column("name", ColumnType::text, true)}, {{"name"}}, {}}, entry}};
}

/// Throws the words of a fault: a benchmark that goes wrong measures nothing.
template <class T> T must(Result<T> result) {
    if (!result)
        throw std::runtime_error(result.error().cause.key);
    if constexpr (!std::is_void_v<T>)
        return std::move(*result);
}

std::vector<Value> entryOf(std::int64_t vessel, std::int64_t week) {
    const double drift = static_cast<double>(week % 100) / 100;
    return {vessel,
            fmt::format("20{:02}-{:02}-{:02}", week / 48 % 100, 1 + week / 4 % 12, 1 + week % 4 * 7),
            std::string("reading"),
            60.0 + drift,
            1.002 + drift / 1000,
            3.3 + drift / 10,
            week % 3 == 0 ? Value(6.5 + drift) : Value(),
            std::string("round, nothing to see")};
}

void addHistory(Book& book, std::int64_t vessel, std::int64_t entries) {
    must(book.commit({"history", "import", "", ""}, [&](Writer& writer) -> Result<void> {
        must(writer.insert("vessel", {fmt::format("Vessel {}", vessel)}));
        for (std::int64_t week = 0; week < entries; ++week)
            must(writer.insert("entry", entryOf(vessel, week)));
        return {};
    }));
}

void fill(const fs::path& file, std::int64_t rows) {
    const auto book = must(Book::create(file, ledger()));
    for (std::int64_t vessel = 1; vessel <= vessels; ++vessel)
        addHistory(*book, vessel, rows / vessels);
}

struct Subject {
    fs::path file;
    std::size_t rows;

    void print(const char* name, const std::vector<double>& times, double sync = 0) const {
        const double median = bench::quantile(times, .5);
        std::string more = fmt::format("\"rows\": {}, \"p95\": {:.4g}", rows, bench::quantile(times, .95));
        if (sync > 0)
            more += fmt::format(", \"peer\": \"disk_sync\", \"ratio\": {:.3g}", median / sync);
        bench::print(name, median, "ms", times.size(), more);
    }
};

void readAll(const Subject& subject) {
    subject.print("book_open", bench::timesMs(50, [&] { must(Book::open(subject.file, ledger())); }));
    const auto book = must(Book::open(subject.file, ledger()));
    subject.print("book_read_all", bench::timesMs(9, [&] { must(book->rows("entry")); }));
    std::int64_t vessel = 0;
    subject.print("book_read_vessel", bench::timesMs(50, [&] {
                      must(book->rowsWhere("entry", "vessel", ++vessel % vessels + 1, {"day"}));
                  }));
    subject.print("book_check", bench::timesMs(3, [&] { must(book->check()); }));
    const fs::path copy = subject.file.string() + ".copy";
    subject.print("book_backup", bench::timesMs(3, [&] { must(book->backup(copy)); }));
    fs::remove(copy);
}

/// What the disk alone takes to store a page and say so; a commit waits for about four of these.
double syncPage(const Subject& subject) {
    const fs::path file = subject.file.string() + ".sync";
    std::FILE* out = std::fopen(file.c_str(), "wb");
    const std::string page(4096, 'p');
    const auto times = bench::timesMs(50, [&] {
        std::fwrite(page.data(), 1, page.size(), out);
        std::fflush(out);
        ::fsync(::fileno(out));
    });
    std::fclose(out);
    fs::remove(file);
    subject.print("disk_sync", times);
    return bench::quantile(times, .5);
}

void editAndUndo(const Subject& subject) {
    const double sync = syncPage(subject);
    const auto book = must(Book::open(subject.file, ledger()));
    std::int64_t week = 0;
    const auto edit = [&](Writer& writer) -> Result<void> {
        ++week;
        return writer.insert("entry", entryOf(week % vessels + 1, week)).map([](RowId) {});
    };
    const EditLabel label{"reading", "reading", "Vessel 7", ""};
    subject.print("book_edit", bench::timesMs(200, [&] { must(book->commit(label, edit)); }), sync);
    subject.print("book_undo", bench::timesMs(100, [&] { must(book->undo()); }), sync);
    subject.print("book_redo", bench::timesMs(100, [&] { must(book->redo()); }), sync);
}

} // namespace

int main(int count, char** arguments) {
    const std::int64_t rows = count > 1 ? std::atoll(arguments[1]) : 200000;
    const fs::path folder = count > 2 ? fs::path(arguments[2]) : fs::temp_directory_path();
    const Subject subject{folder / fmt::format("bench-{}.cellar", ::getpid()), static_cast<std::size_t>(rows)};
    fill(subject.file, rows);
    bench::print("book_size", static_cast<double>(fs::file_size(subject.file)) / 1e6, "MB", subject.rows);
    readAll(subject);
    editAndUndo(subject);
    fs::remove(subject.file);
    return 0;
}

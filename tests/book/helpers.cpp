// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/helpers.h"

#include "quantity/text.h"

#include <cstdlib>
#include <fstream>
#include <unistd.h>

namespace staveline::book {

Scratch::Scratch(Medium medium) {
    const fs::path memory = "/dev/shm";
    const bool inMemory = medium == Medium::memory && ::access(memory.c_str(), W_OK) == 0;
    std::string pattern = ((inMemory ? memory : fs::temp_directory_path()) / "cellar-XXXXXX").string();
    REQUIRE(::mkdtemp(pattern.data()) != nullptr);
    folder_ = pattern;
}

Scratch::~Scratch() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
}

std::string bytesOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void writeBytes(const fs::path& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary | std::ios::trunc) << bytes;
    REQUIRE(fs::file_size(file) == bytes.size());
}

void tamper(const fs::path& file, const std::string& sql) {
    sqlite3* database = nullptr;
    REQUIRE(sqlite3_open_v2(file.c_str(), &database, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, nullptr) == SQLITE_OK);
    const int code = sqlite3_exec(database, sql.c_str(), nullptr, nullptr, nullptr);
    INFO(sql << ": " << sqlite3_errmsg(database));
    CHECK(code == SQLITE_OK);
    sqlite3_close(database);
}

std::int64_t ask(const fs::path& file, const std::string& sql) {
    sqlite3* database = nullptr;
    sqlite3_stmt* query = nullptr;
    REQUIRE(sqlite3_open_v2(file.c_str(), &database, SQLITE_OPEN_READONLY, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_prepare_v2(database, sql.c_str(), -1, &query, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_step(query) == SQLITE_ROW);
    const std::int64_t answer = sqlite3_column_int64(query, 0);
    sqlite3_finalize(query);
    sqlite3_close(database);
    return answer;
}

namespace {

BookPtr required(Result<BookPtr> result) {
    if (!result)
        FAIL(words(result.error()));
    return std::move(*result);
}

} // namespace

BookPtr created(const fs::path& path, const Schema& schema, Now now) {
    return required(Book::create(path, schema, std::move(now)));
}

BookPtr opened(const fs::path& path, const Schema& schema, OpenMode mode, Now now) {
    return required(Book::open(path, schema, mode, std::move(now)));
}

fs::path smallBook(const Scratch& scratch, int edits) {
    fs::path path = scratch / "small.cellar";
    std::mt19937_64 random(7);
    const BookPtr book = created(path);
    for (int i = 0; i < edits; ++i)
        REQUIRE(sample::randomEdit(*book, random));
    return path;
}

std::string words(const Message& message) {
    std::string text = render(message);
    INFO(message.key << ": " << text);
    CHECK(builtInTexts().has(message.key));
    CHECK(text.find('{') == std::string::npos);
    return text;
}

std::string words(const Fault& fault) {
    return words(fault.cause) + " " + words(fault.remedy);
}

Result<std::int64_t> addVessel(Book& book, const std::string& name, const std::string& mergeKey) {
    return book.commit({"vessel " + name, "vessel", name, mergeKey}, [&](Writer& writer) -> Result<void> {
        return writer.insert("vessel", {name, 225.0}).map([](RowId) {});
    });
}

std::size_t setting(const char* name, std::size_t otherwise) {
    const char* value = std::getenv(name);
    return value == nullptr ? otherwise : static_cast<std::size_t>(std::strtoull(value, nullptr, 10));
}

} // namespace staveline::book

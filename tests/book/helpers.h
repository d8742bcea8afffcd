// SPDX-License-Identifier: GPL-3.0-or-later
// What the book's tests share: a folder of their own, raw access to files, a clock to turn, words checked.
#pragma once

#include "book/sample.h"
#include "support/catch.h"

#include <sqlite3.h>

namespace staveline::book {

namespace fs = std::filesystem;

enum class Medium { memory, disk };

/// A folder that goes with everything in it. In memory, where there is such a place, a sync costs nothing.
class Scratch {
public:
    explicit Scratch(Medium medium = Medium::memory);
    ~Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    [[nodiscard]] fs::path operator/(const std::string& name) const { return folder_ / name; }
    [[nodiscard]] const fs::path& path() const { return folder_; }

private:
    fs::path folder_;
};

[[nodiscard]] std::string bytesOf(const fs::path& file);
void writeBytes(const fs::path& file, const std::string& bytes);
/// Runs statements on a file behind the book's back.
void tamper(const fs::path& file, const std::string& sql);
/// The single number a query gives, read behind the book's back.
[[nodiscard]] std::int64_t ask(const fs::path& file, const std::string& sql);

/// A clock that stands until it is turned; 2026-03-02T10:00:00Z at first.
struct TestClock {
    std::shared_ptr<std::chrono::system_clock::time_point> at = std::make_shared<std::chrono::system_clock::time_point>(
        std::chrono::sys_days{std::chrono::year{2026} / 3 / 2} + std::chrono::hours{10});
    void turn(std::chrono::milliseconds by) const { *at += by; }
    [[nodiscard]] Now now() const {
        return [moment = at] { return *moment; };
    }
};

using BookPtr = std::unique_ptr<Book>;
/// Both fail the test with the words of the fault.
[[nodiscard]] BookPtr created(const fs::path& path, const Schema& schema = sample::schema(), Now now = {});
[[nodiscard]] BookPtr opened(const fs::path& path, const Schema& schema = sample::schema(),
                             OpenMode mode = OpenMode::readWrite, Now now = {});
/// A book with vessel 1 and a few entries, closed again.
[[nodiscard]] fs::path smallBook(const Scratch& scratch, int edits = 12);

/// The words a user reads. Fails the test when a text is missing or a placeholder is left open.
std::string words(const Message& message);
std::string words(const Fault& fault);
/// The cause's key, its words checked on the way; "" when there is no fault.
template <class T> std::string keyOf(const Result<T>& result) {
    if (result)
        return "";
    words(result.error());
    return result.error().cause.key;
}

Result<std::int64_t> addVessel(Book& book, const std::string& name, const std::string& mergeKey = "");
/// A setting of the environment, for longer runs.
[[nodiscard]] std::size_t setting(const char* name, std::size_t otherwise);

} // namespace staveline::book

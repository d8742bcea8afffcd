// SPDX-License-Identifier: GPL-3.0-or-later
// A process of its own for the tests that need one: it writes, says what it has written, and may be killed at any time.
//   edits BOOK SEED        random edits, undos and redos for ever; after each "revision fingerprint"
//   share BOOK NAME COUNT  COUNT vessels of that name; after each its number; starts over when another was first
//   upgrade BOOK           opens with the next minor version of the schema
//   fill BOOK LIMIT        edits until the file may not grow beyond LIMIT bytes; then the key of the fault
//   nobody BOOK            opens without any rights; then whether the book is read-only, and why
#include "book/sample.h"

#include <csignal>
#include <cstdlib>
#include <fmt/core.h>
#include <string_view>
#include <sys/resource.h>
#include <unistd.h>

namespace {

using namespace staveline::book;

/// At once, in one piece: what is said has happened.
void tell(const std::string& line) {
    const std::string text = line + "\n";
    if (::write(STDOUT_FILENO, text.data(), text.size()) < 0)
        std::_Exit(5);
}

int stop(const staveline::Fault& fault) {
    tell(fault.cause.key);
    return 3;
}

void tellState(const Book& book) {
    tell(fmt::format("{} {}", book.revision(), sample::fingerprint(sample::dump(book))));
}

int edits(Book& book, std::uint64_t seed) {
    std::mt19937_64 random(seed);
    tellState(book);
    for (;;) {
        if (auto done = sample::randomStep(book, random); !done)
            return stop(done.error());
        tellState(book);
    }
}

int share(Book& book, const std::string& name, int count) {
    for (int i = 0; i < count;) {
        const std::string each = fmt::format("{} {}", name, i);
        const auto done = book.commit({each, "vessel", each, ""}, [&](Writer& writer) -> staveline::Result<void> {
            return writer.insert("vessel", {each, 1.0}).map([](RowId) {});
        });
        if (done)
            tell(std::to_string(i++));
        else if (done.error().cause.key != "book.changed_elsewhere")
            return stop(done.error());
        else
            book.reload();
    }
    return 0;
}

int fill(Book& book, rlim_t limit) {
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit size{limit, limit};
    if (::setrlimit(RLIMIT_FSIZE, &size) != 0)
        return 5;
    const std::string note(500, 'n');
    for (;;) {
        const auto done = book.commit({"fill", "fill", "", ""}, [&](Writer& writer) {
            return sample::insertBoth(writer, sample::entry(1, 1.0, note));
        });
        if (!done)
            return stop(done.error());
        tellState(book);
    }
}

int nobody(const char* path) {
    constexpr uid_t none = 65534;
    if (::geteuid() == 0 && (::setgid(none) != 0 || ::setuid(none) != 0))
        return 5;
    const auto book = Book::open(path, sample::schema());
    if (!book)
        return stop(book.error());
    tell((*book)->readOnly() ? "read-only" : "read-write");
    for (const auto& notice : (*book)->notices())
        tell(notice.key);
    return 0;
}

int work(std::string_view what, Book& book, char** arguments) {
    if (what == "edits")
        return edits(book, std::strtoull(arguments[3], nullptr, 10));
    if (what == "share")
        return share(book, arguments[3], std::atoi(arguments[4]));
    if (what == "fill")
        return fill(book, std::strtoull(arguments[3], nullptr, 10));
    tellState(book);
    return 0;
}

} // namespace

int main(int count, char** arguments) {
    if (count < 3)
        return 5;
    const std::string_view what = arguments[1];
    if (what == "nobody")
        return nobody(arguments[2]);
    const auto book = Book::open(arguments[2], what == "upgrade" ? sample::nextMinor() : sample::schema());
    return book ? work(what, **book, arguments) : stop(book.error());
}

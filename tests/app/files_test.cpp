// SPDX-License-Identifier: GPL-3.0-or-later
// What the command line writes and where: never over the book or what belongs to others, and a fault in words where
// the answer or the paper does not fit.
#include "program.h"

#include <nlohmann/json.hpp>

using namespace staveline::testing;
using Json = nlohmann::json;
namespace fs = std::filesystem;

namespace {

constexpr const char* today = "--today 2026-06-01 ";

struct Cellar : Terminal {
    Cellar() { expect(std::string(today) + "new s.cellar --sample"); }
    Answer command(const std::string& text, const std::string& before = "", const std::string& out = "out.txt") {
        return run(today + text, before, out);
    }
    /// Writes the sheet and expects a fault at the file.
    void refused(const std::string& to, const std::string& book = "s.cellar", const std::string& before = "") {
        const Answer answer = command("sheet " + book + " --vessel Plover --out " + to, before);
        INFO(to << "\n" << answer.out << answer.err);
        CHECK(answer.status == 3);
        CHECK(answer.err.find("/out: ") != std::string::npos);
        CHECK(answer.err.find(to) != std::string::npos);
        CHECK(answer.err.find("..") == std::string::npos); // one full stop ends a sentence
    }
    [[nodiscard]] std::size_t files() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(scratch.path()), {}));
    }
};

} // namespace

TEST_CASE_METHOD(Cellar, "a paper never takes the place of a book, a link or a folder", "[app][bad]") {
    for (const std::string ending : {"md", "html", "csv", "txt", "pdf"}) {
        const std::string book = "book." + ending, link = "link." + ending, folder = "folder." + ending;
        fs::copy_file(scratch / "s.cellar", scratch / book);
        write("victim.txt", "precious");
        fs::create_symlink("victim.txt", scratch / link);
        fs::create_directory(scratch / folder);
        const std::string before = readAll(scratch / book);
        const std::size_t files = this->files();
        refused(book, book); // onto itself
        refused(book);
        refused(link);
        refused(folder);
        CHECK(readAll(scratch / book) == before);
        CHECK(readAll(scratch / "victim.txt") == "precious");
        CHECK(fs::is_symlink(scratch / link));
        CHECK(this->files() == files);
    }
}

TEST_CASE_METHOD(Cellar, "an earlier sheet is replaced, with its rights, beside what others are writing", "[app]") {
    write("victim.txt", "precious");
    for (const std::string ending : {"md", "pdf"}) {
        const std::string sheet = "sheet." + ending;
        write(sheet + ".part", "another program is at work");
        write(sheet, "the sheet of last time");
        fs::permissions(scratch / sheet, fs::perms::owner_read | fs::perms::owner_write);
        CHECK(command("sheet s.cellar --vessel Plover --out " + sheet).status == 0);
        CHECK(readAll(scratch / sheet).size() > 500);
        CHECK(readAll(scratch / (sheet + ".part")) == "another program is at work");
        CHECK((fs::status(scratch / sheet).permissions() & fs::perms::mask) ==
              (fs::perms::owner_read | fs::perms::owner_write));
        fs::remove(scratch / (sheet + ".part"));
        fs::create_symlink("victim.txt", scratch / (sheet + ".part"));
        CHECK(command("sheet s.cellar --vessel Plover --out " + sheet).status == 0);
    }
    CHECK(readAll(scratch / "victim.txt") == "precious");
}

TEST_CASE_METHOD(Cellar, "a file that may not grow is a fault that leaves nothing behind", "[app][bad]") {
    const std::size_t files = this->files();
    for (const std::string ending : {"html", "pdf"})
        refused("sheet." + ending, "s.cellar", "ulimit -f 2;");
    CHECK(this->files() == files);
}

TEST_CASE_METHOD(Cellar, "an answer that cannot be written out is a fault", "[app][bad]") {
    write("plan.json", "{}");
    for (const std::string text :
         {"status s.cellar", "status s.cellar --json", "history s.cellar --vessel Plover --csv",
          "advise s.cellar --vessel Plover", "predict s.cellar --vessel Plover --plan plan.json",
          "sheet s.cellar --vessel Plover --out -", "check s.cellar"}) {
        const Answer answer = command(text, "", "/dev/full");
        INFO(text << "\n" << answer.err);
        CHECK(answer.status == 3);
        CHECK(answer.err.find("could not be written out. ") != std::string::npos);
    }
}

TEST_CASE_METHOD(Cellar, "a folder in place of a file is said", "[app][bad]") {
    for (const std::string text : {"record s.cellar .", "predict s.cellar --vessel Plover --plan ."}) {
        const Answer answer = command(text);
        INFO(text << "\n" << answer.err);
        CHECK(answer.status == 3);
        CHECK(answer.err.find("cannot be read") != std::string::npos);
    }
}

TEST_CASE_METHOD(Cellar, "bytes that are no text are answered in JSON", "[app][bad]") {
    write("plan.json", "{}");
    const std::string odd = "\"$(printf 'Pl\\377over')\"";
    for (const std::string& text :
         {"status " + odd + " --json", "advise s.cellar --json --vessel " + odd,
          "history s.cellar --json --vessel " + odd, "advise s.cellar --vessel Plover --json --lock " + odd + "=1",
          "advise s.cellar --vessel Plover --json --lock yeast=" + odd,
          "sheet s.cellar --json --out x.md --vessel " + odd,
          "predict s.cellar --plan plan.json --json --vessel " + odd}) {
        const Answer answer = command(text);
        INFO(text << "\n" << answer.out << answer.err);
        CHECK((answer.status == 2 || answer.status == 3));
        CHECK(Json::accept(answer.out));
    }
}

TEST_CASE_METHOD(Cellar, "papers need no display, whatever the environment asks for", "[app]") {
    CHECK(command("sheet s.cellar --vessel Plover --out sheet.pdf", "QT_QPA_PLATFORM=none-such").status == 0);
    CHECK(readAll(scratch / "sheet.pdf").starts_with("%PDF-"));
}

TEST_CASE_METHOD(Cellar, "a lock reads numbers as everywhere, alone or in the lever's own unit", "[app]") {
    const auto ask = [&](const std::string& lock) {
        return command("advise s.cellar --vessel Plover --json --lock '" + lock + "'");
    };
    const Answer plain = ask("draw=79.5");
    REQUIRE(plain.status == 0);
    for (const char* same : {"draw=79,5", "draw=79.5L", "draw=79,5 L", "draw= 79.50 l", "draw=+79.5 litres"}) {
        INFO(same);
        const Answer answer = ask(same);
        CHECK(answer.status == 0);
        CHECK(answer.out == plain.out);
    }
    CHECK(ask("sacch_temperature=64,5\u00b0C").out == ask("sacch_temperature=64.5").out);
    CHECK(ask("sugar=5 %").out == ask("sugar=5").out);
    for (const char* wrong : {"draw=79 gal", "draw=79C", "draw=7.9.5", "draw=abc", "draw=nan", "draw=1e2", "draw=0x4f",
                              "draw=L", "bitterness=10 EBU", "draw=79 5"}) {
        const Answer answer = ask(wrong);
        INFO(wrong << "\n" << answer.out);
        CHECK(answer.status == 2);
        CHECK(Json::parse(answer.out)["fault"]["path"] == "/lock");
    }
    CHECK(Json::parse(ask("draw=79 gal").out)["fault"]["remedy"] == "Give it in L, or the number alone.");
}

TEST_CASE_METHOD(Cellar, "the cards of all vessels are written like the other papers", "[app][card]") {
    for (const std::string ending : {"md", "html", "csv", "txt", "pdf"}) {
        INFO(ending);
        CHECK(command("card s.cellar --out cards." + ending).status == 0);
    }
    CHECK(readAll(scratch / "cards.pdf").starts_with("%PDF-"));
    const std::string all = command("card s.cellar --out -").out,
                      one = command("card s.cellar --vessel Knot --out -").out;
    for (const char* vessel : {"## Plover", "## Knot", "## Dunlin"}) {
        CHECK(all.find(vessel) != std::string::npos);
        CHECK((one.find(vessel) != std::string::npos) == (std::string(vessel) == "## Knot"));
    }
    CHECK(command("card s.cellar --vessel Nobody --out -").status == 2);
}

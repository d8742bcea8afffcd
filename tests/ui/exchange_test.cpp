// SPDX-License-Identifier: GPL-3.0-or-later
// Notes into the open book, the whole book out of it, and a book of such a folder: from the menu.
#include "ui/parts.h"
#include "ui/support.h"

#include "desk/folder.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/message_label.h"
#include "ui/window/notes_import.h"

#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"

#include <QElapsedTimer>
#include <QPushButton>
#include <QTableWidget>
#include <QTimer>

using namespace staveline;
using namespace staveline::testing;
using namespace staveline::ui;

namespace {

struct Importing : WindowInScratch {
    NotesImport* dialog = nullptr;

    explicit Importing(const std::string& notes) {
        writeAll(scratch / "notes.csv", notes);
        prompt.answers = {scratch / "notes.csv"};
        action("Import notes").trigger();
        dialog = window->findChild<NotesImport*>();
        if (dialog)
            ready();
    }
    void ready() const {
        REQUIRE(QTest::qWaitFor([this] { return !dialog->busy(); }, 20000));
    }
    [[nodiscard]] ChoiceField& choice(const QString& name) const { return part<ChoiceField>(*dialog, name); }
    void choose(const QString& name, const std::string& word) const {
        ChoiceField& field = choice(name);
        field.setWord(word);
        Q_EMIT field.activated(field.currentIndex());
        ready();
    }
    [[nodiscard]] QString words() const { return part<MessageLabel>(*dialog).words(); }
    [[nodiscard]] QPushButton& button(const QString& name) const { return part<QPushButton>(*dialog, name); }
    [[nodiscard]] const QTableWidget& rejected() const {
        return part<QTableWidget>(*dialog, "Rows that are not taken");
    }
    [[nodiscard]] std::size_t entries() const { return desk().ledger("Heron")->lines.size(); }
};

} // namespace

TEST_CASE("notes are mapped, previewed and imported in one edit", "[ui][exchange]") {
    Importing w("Date;pH;Acid;Note\n05.01.2026;3,41;6,1;clear\n13.01.2026;3,40;6,2;\n14.01.2026;sour;6,2;\n");
    REQUIRE(w.dialog);
    const auto before = w.entries();
    CHECK(w.choice("Date means").word() == "on");
    CHECK(w.choice("Acid means").word().empty());
    w.choose("Acid means", "ta_g_l");
    w.choose("Vessel, where a row names none", "Heron");
    CHECK(w.words() == "Rows: 3. Entries to take: 2. Rows not taken: 1. Nothing is stored yet.");
    REQUIRE(w.rejected().rowCount() == 1);
    CHECK(w.rejected().item(0, 0)->text() == "4");
    CHECK(w.rejected().item(0, 1)->text() == "pH (ph)");
    CHECK(w.entries() == before);
    w.button("Import").click();
    REQUIRE(QTest::qWaitFor([&] { return w.entries() == before + 2; }, 20000));
    CHECK(w.window->status().words().contains("Rows: 3. Entries taken: 2. Rows not taken: 1."));
    CHECK(w.desk().undoText() == "import of notes.csv");
    w.action("Undo").trigger();
    CHECK(w.entries() == before);
}

TEST_CASE("an order of days that cannot be known is asked in the dialog", "[ui][exchange]") {
    Importing w("Date,pH\n05.01.2026,3.41\n");
    REQUIRE(w.dialog);
    CHECK(w.words().contains("dmy"));
    CHECK_FALSE(w.button("Import").isEnabled());
    w.choose("Days", "dmy");
    CHECK(w.words().startsWith("Rows: 1. Entries to take: 1."));
    CHECK(w.button("Import").isEnabled());
}

TEST_CASE("another kind of notes has other columns", "[ui][exchange]") {
    Importing w("Date,Litres\n2026-01-05,5\n");
    REQUIRE(w.dialog);
    CHECK(w.choice("Litres means").word().empty());
    REQUIRE(w.rejected().rowCount() == 1); // the row as a whole: a reading that says nothing
    CHECK(w.rejected().item(0, 1)->text().isEmpty());
    CHECK_FALSE(w.rejected().item(0, 2)->text().isEmpty());
    w.choose("Each row is a", "draw_off");
    CHECK(w.choice("Litres means").word() == "volume_l");
}

TEST_CASE("a large import never holds the window up, and stops when told", "[ui][exchange]") {
    std::string notes = "date,ph,note\n";
    for (int i = 0; i < 10000; ++i)
        notes += isoDay(day(2024, 1, 1) + std::chrono::days(i % 700)) + ",3.4," + std::to_string(i) + "\n";
    int beats = 0;
    Importing w(notes);
    REQUIRE(w.dialog);
    const auto before = w.entries();
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, [&] { ++beats; });
    timer.start(5);
    w.choose("Days", "ymd"); // a preview of all of them
    timer.stop();
    CHECK(beats > 5); // the window went on all the while
    w.button("Import").click();
    w.button("Stop").click();
    w.ready();
    CHECK(w.words().contains("broken off"));
    CHECK(w.entries() == before);
}

TEST_CASE("a file that is no table of notes is told in the window", "[ui][exchange]") {
    Importing w("date,ph\n\"open,3\n");
    CHECK_FALSE(w.dialog);
    CHECK(w.window->notices().words().contains("Quotes"));
}

TEST_CASE("the whole book is exported and comes back from the menu", "[ui][exchange]") {
    WindowInScratch w;
    w.prompt.answers = {w.scratch / "out"};
    w.action("Export whole book").trigger();
    REQUIRE(QTest::qWaitFor([&] { return w.window->status().words().contains("Exported to out"); }, 20000));
    CHECK(std::filesystem::exists(w.scratch / "out" / "contents.html"));
    const auto before = fingerprint(w.desk());
    w.prompt.answers = {w.scratch / "out", w.scratch / "again.cellar"};
    w.action("New cellar from an exported folder").trigger();
    REQUIRE(QTest::qWaitFor([&] { return w.desk().path() == w.scratch / "again.cellar"; }, 20000));
    CHECK(fingerprint(w.desk()) == before);
    w.prompt.answers = {w.scratch / "out"}; // holds something
    w.action("Export whole book").trigger();
    REQUIRE(QTest::qWaitFor([&] { return w.window->notices().words().contains("holds something"); }, 20000));
}

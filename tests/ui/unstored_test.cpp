// SPDX-License-Identifier: GPL-3.0-or-later
// "All changes stored" is true or not said, and closing with something that is not stored asks.
#include "ui/support.h"

#include "support/full_disk.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/taste/page.h"
#include "ui/taste/score_cell.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QLineEdit>
#include <QPlainTextEdit>

using namespace staveline;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtTaste : WindowInScratch {
    AtTaste() { show("Heron"); }
    void show(const VesselName& vessel) const {
        window->cellar()->showVessel(vessel);
        key(Qt::Key_1, Qt::ControlModifier);
    }
    [[nodiscard]] FullDisk fullDisk() const {
        return FullDisk(static_cast<rlim_t>(std::filesystem::file_size(book) / 4));
    }
    void score(const char* typed) const {
        window->cellar()->taste().sheet().cell("TA1", Glass::cold)->setFocus();
        type(QString::fromLatin1(typed));
        key(Qt::Key_Tab);
    }
    [[nodiscard]] bool says(const char* words) const { return window->status().words().contains(QLatin1String(words)); }
    [[nodiscard]] std::size_t sittings(const VesselName& vessel) const {
        return (*Desk::open(
                    book, [this] { return today; }, book::OpenMode::readOnly))
            ->sittings(vessel)
            ->size();
    }
    void beginDraw(const char* litres) const {
        key(Qt::Key_4, Qt::ControlModifier);
        key(Qt::Key_D, Qt::ControlModifier);
        type(QString::fromLatin1(litres));
    }
};

} // namespace

TEST_CASE("what a full disk refuses is not called stored, and closing asks", "[ui][unstored]") {
    AtTaste w;
    CHECK(w.says("all changes stored"));
    {
        const FullDisk full = w.fullDisk();
        w.score("9");
        CHECK_FALSE(w.says("all changes stored"));
        CHECK(w.says("not stored yet: tasting of Heron"));
        CHECK_FALSE(w.window->close()); // the brewer stays
        REQUIRE(w.prompt.unstored.size() == 1);
        CHECK(w.prompt.unstored.front() == QStringList{"tasting of Heron"});
        w.prompt.leaving = Leaving::storeFirst;
        CHECK_FALSE(w.window->close()); // there is still no room
        CHECK(w.window->notices().words().contains("tasting of Heron"));
        CHECK(w.window->isVisible());
    }
    CHECK(w.window->close());
    CHECK(w.prompt.unstored.size() == 3);
    CHECK(w.sittings("Heron") == 1);
}

TEST_CASE("what waits is stored with the next score, and then all is", "[ui][unstored]") {
    AtTaste w;
    {
        const FullDisk full = w.fullDisk();
        w.score("9");
    }
    w.type("8");
    w.key(Qt::Key_Tab);
    CHECK(w.says("all changes stored"));
    CHECK(w.window->close());
    CHECK(w.prompt.unstored.empty());
}

TEST_CASE("closing without what is not stored is one answer", "[ui][unstored]") {
    AtTaste w;
    const FullDisk full = w.fullDisk();
    w.score("9");
    w.prompt.leaving = Leaving::without;
    CHECK(w.window->close());
    CHECK(w.prompt.unstored.size() == 1);
}

TEST_CASE("scores refused for a vessel left behind are stored when it is asked for", "[ui][unstored]") {
    AtTaste w;
    {
        const FullDisk full = w.fullDisk();
        w.score("9");
        w.show("Teal");
        CHECK(w.says("tasting of Heron"));
    }
    w.prompt.leaving = Leaving::storeFirst;
    CHECK(w.window->close());
    CHECK(w.sittings("Heron") == 1);
}

TEST_CASE("a book that was moved away stores nothing, and the window says so", "[ui][unstored]") {
    AtTaste w;
    std::filesystem::rename(w.book, w.scratch / "elsewhere.cellar");
    w.score("9");
    CHECK_FALSE(w.says("all changes stored"));
    CHECK_FALSE(w.window->close());
    CHECK(w.prompt.unstored.size() == 1);
    std::filesystem::rename(w.scratch / "elsewhere.cellar", w.book);
    w.prompt.leaving = Leaving::storeFirst;
    CHECK(w.window->close());
    CHECK(w.sittings("Heron") == 1);
}

TEST_CASE("what is half typed is stored by closing, without a question", "[ui][unstored]") {
    AtTaste w;
    w.window->cellar()->taste().sheet().cell("TA1", Glass::cold)->setFocus();
    w.type("7");
    CHECK(w.window->close());
    CHECK(w.prompt.unstored.empty());
    CHECK(w.sittings("Heron") == 1);
}

TEST_CASE("a note that waits for its first score is asked about", "[ui][unstored]") {
    AtTaste w;
    w.window->cellar()->taste().note().setFocus();
    w.type("cloudy");
    CHECK_FALSE(w.window->close());
    CHECK(w.prompt.unstored.size() == 1);
    CHECK(w.window->cellar()->taste().note().toPlainText() == "cloudy");
}

TEST_CASE("an entry that is begun is asked about and can be recorded then", "[ui][unstored]") {
    AtTaste w;
    w.beginDraw("60");
    CHECK_FALSE(w.window->close());
    CHECK(w.prompt.unstored.front() == QStringList{"draw-off of Heron"});
    CHECK(w.window->cellar()->drawRefill().form().active());
    w.window->cellar()->showVessel("Teal"); // it waits with its vessel
    w.prompt.leaving = Leaving::storeFirst;
    CHECK(w.window->close());
    const auto desk = *Desk::open(
        w.book, [&] { return w.today; }, book::OpenMode::readOnly);
    CHECK(desk->ledger("Heron")->lines.size() == 10);
}

TEST_CASE("an entry that cannot be recorded keeps the window open and says why", "[ui][unstored]") {
    AtTaste w;
    w.beginDraw("5000");
    w.prompt.leaving = Leaving::storeFirst;
    CHECK_FALSE(w.window->close());
    CHECK_FALSE(w.window->cellar()->drawRefill().form().fields().number("volume_l")->words().isEmpty());
    CHECK(w.window->notices().words().contains("draw-off of Heron"));
}

TEST_CASE("another book and the first page ask as closing does", "[ui][unstored]") {
    AtTaste w;
    *Desk::create(w.scratch / "other.cellar", [&] { return w.today; });
    w.beginDraw("60");
    CHECK_FALSE(w.window->openBook(w.scratch / "other.cellar"));
    w.action("Close the book").trigger();
    CHECK(w.window->session());
    CHECK(w.prompt.unstored.size() == 2);
    w.prompt.leaving = Leaving::without;
    CHECK(w.window->openBook(w.scratch / "other.cellar"));
    CHECK(w.says("all changes stored"));
}

TEST_CASE("a vessel half described is kept, and asked about", "[ui][unstored]") {
    AtTaste w;
    w.key(Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    w.type("Godwit");
    CHECK(w.says("not stored yet: the new vessel"));
    w.window->cellar()->showVessel("Teal");
    w.window->cellar()->changeVessel();
    VesselPage& page = part<VesselPage>(*w.window->cellar());
    CHECK(page.fields().line("name")->text() == "Godwit");
    CHECK_FALSE(page.words().isEmpty());
    CHECK_FALSE(w.window->close());
    w.window->cellar()->addVessel();
    CHECK(page.fields().line("name")->text() == "Godwit");
    w.key(Qt::Key_Escape);
    CHECK(w.says("all changes stored"));
}

// SPDX-License-Identifier: GPL-3.0-or-later
// Help that can be searched, what is new after an update, and the report on a fault of the program.
#include "ui/support.h"

#include "ui/cellar/start_page.h"
#include "ui/widgets/message_label.h"
#include "ui/window/help_search.h"
#include "ui/window/news.h"
#include "ui/window/report_dialog.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTextBrowser>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

bool hasPage(const std::vector<HelpHit>& hits, const QString& page) {
    return std::any_of(hits.begin(), hits.end(), [&](const HelpHit& hit) { return hit.page == page; });
}

constexpr const char* changes =
    "# Changes\n\n## 0.3.0\n\n- third\n\n## 0.2.1\n\n- second\n\n## 0.1.0 (first)\n\n- first\n";

} // namespace

TEST_CASE("every page with help is in the list that is looked through", "[ui][help]") {
    for (const QString& page : helpPages())
        CHECK(helpFor(page).size() >= 2);
    for (const auto& [key, words] : builtInTexts().all())
        if (key.starts_with("ui.help."))
            CHECK(helpPages().contains(qs(key).section('.', 2, 2)));
}

TEST_CASE("help is found by words in any order and case", "[ui][help]") {
    CHECK(hasPage(findInHelp("walk sheet"), "round"));
    CHECK(hasPage(findInHelp("SHEET walk"), "round"));
    CHECK_FALSE(hasPage(findInHelp("walk sheet"), "history"));
    CHECK(findInHelp("").empty());
    CHECK(findInHelp("   ").empty());
    CHECK(findInHelp("zeppelin").empty());
}

TEST_CASE("typing in the help looks for it everywhere, and back", "[ui][help]") {
    const WindowInScratch w;
    w.key(Qt::Key_F1);
    const QString before = w.help().words();
    auto& field = part<QLineEdit>(w.help());
    field.setFocus();
    w.type("pellicle");
    CHECK(w.help().words().startsWith("Found in all help"));
    CHECK(w.help().words().contains("The round"));
    CHECK(w.window->session());
    field.clear();
    w.type("calendar");
    CHECK(w.help().words().contains("In the menus"));
    field.clear();
    w.type("<b>zeppelin");
    CHECK(w.help().words().contains("Nothing is said about this."));
    field.clear();
    CHECK(w.help().words() == before);
}

TEST_CASE("a title that was found leads to its page", "[ui][help]") {
    const WindowInScratch w;
    w.key(Qt::Key_F1);
    w.help().find("pellicle");
    Q_EMIT part<QTextBrowser>(w.help()).anchorClicked(QUrl("round"));
    CHECK(w.help().words().startsWith("The round"));
}

TEST_CASE("news are the versions later than the one seen", "[ui][news]") {
    CHECK(newsSince("0.2.1", changes) == "## 0.3.0\n\n- third\n\n");
    CHECK(newsSince("0.1", changes).contains("second"));
    CHECK_FALSE(newsSince("0.1.0", changes).contains("first"));
    CHECK(newsSince("", changes).contains("## 0.1.0 (first)"));
    CHECK(newsSince("0.3.0", changes).isEmpty());
    CHECK(changesFile().contains("## " + programVersion()));
}

TEST_CASE("only a later program is an update", "[ui][news]") {
    CHECK_FALSE(isUpdate({}));
    CHECK_FALSE(isUpdate(programVersion()));
    CHECK_FALSE(isUpdate("99.0"));
    CHECK(isUpdate("0.0.9"));
}

TEST_CASE("after an update the window tells once what is new, and takes no key for it", "[ui][news]") {
    WindowInScratch w;
    CHECK_FALSE(w.help().isVisible());
    w.settings.setValue("version", "0.0.9");
    w.open();
    w.window->start(w.book);
    REQUIRE(w.help().isVisible());
    CHECK(w.help().words().startsWith("What is new since version 0.0.9"));
    CHECK_FALSE(w.help().isAncestorOf(w.focus()));
    w.window->remember();
    w.open();
    w.window->start(w.book);
    CHECK_FALSE(w.help().isVisible());
    w.action("What is new").trigger();
    CHECK(w.help().words().contains(programVersion()));
}

TEST_CASE("where the news would hide the page they wait for a wider window", "[ui][news]") {
    WindowInScratch w;
    w.settings.setValue("version", "0.0.9");
    w.open();
    const int wide = w.window->width();
    w.window->resize(lines(*w.window, 45), w.window->height());
    w.window->start(w.book);
    CHECK_FALSE(w.help().isVisible());
    CHECK(w.window->settings().seenVersion == "0.0.9");
    w.window->resize(wide, w.window->height());
    w.window->start(w.book);
    CHECK(w.help().isVisible());
}

TEST_CASE("a report is read, then saved; the book goes along only where that is chosen", "[ui][report]") {
    WindowInScratch w;
    w.action("Report a fault of the program").trigger();
    auto& dialog = part<ReportDialog>(*w.window);
    REQUIRE(QTest::qWaitFor([&] { return dialog.save().isEnabled(); }, 20000));
    CHECK(dialog.words().contains("Staveline " + programVersion()));
    CHECK(dialog.words().contains("no damage"));
    CHECK_FALSE(dialog.words().contains("Heron"));
    CHECK_FALSE(dialog.withBook());
    w.prompt.answers = {w.scratch / "a.txt", w.scratch / "b.txt"};
    dialog.save().click();
    CHECK(qs(readAll(w.scratch / "a.txt")).trimmed() == dialog.words().trimmed());
    CHECK_FALSE(std::filesystem::exists(w.scratch / "a.cellar"));
    dialog.book().setChecked(true);
    dialog.save().click();
    CHECK(QTest::qWaitFor([&] { return std::filesystem::exists(w.scratch / "b.cellar"); }, 20000));
}

TEST_CASE("without a book the report tells of the program alone", "[ui][report]") {
    WindowInScratch w(false);
    w.action("Report a fault of the program").trigger();
    auto& dialog = part<ReportDialog>(*w.window);
    CHECK(dialog.save().isEnabled());
    CHECK_FALSE(dialog.book().isVisible());
    w.prompt.answers = {w.scratch / "no" / "such" / "a.txt"};
    dialog.save().click();
    CHECK_FALSE(part<MessageLabel>(w.window->startPage()).words().isEmpty());
}

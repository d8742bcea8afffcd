// SPDX-License-Identifier: GPL-3.0-or-later
// Starting where little is as it should be: settings that cannot be kept, damaged ones, no fonts at all.
#include "ui/bad_input_support.h"

#include <QDir>
#include <QProcess>

#include <cstdio>

using namespace staveline;
using namespace staveline::ui;
using testing::SampleWindow;

TEST_CASE("settings that cannot be written are nobody's trouble", "[ui][badstart]") {
    const SampleWindow w;
    w.window->closeBook();
    const auto folder = w.scratch / "folder.ini";
    std::filesystem::create_directory(folder);
    for (const QString& path : {QStringLiteral("/dev/null/x/window.ini"), qs(folder.string()), QString()}) {
        INFO(path.toStdString());
        testing::ScriptedPrompt prompt;
        QSettings nowhere(path, QSettings::IniFormat);
        MainWindow window([&w] { return w.today; }, prompt, nowhere);
        window.start(std::nullopt);
        window.show();
        CHECK_FALSE(window.session());
        REQUIRE(window.openBook(w.book));
        DisplayUnits units;
        units.volume = DisplayUnits::Volume::usGallon;
        window.setUnits(units);
        window.close();
        CHECK_FALSE(window.isVisible());
        CHECK_FALSE(window.notices().isVisible());
        CHECK(window.settings().units == units); // for as long as it runs
    }
    CHECK(std::filesystem::is_directory(folder));
}

TEST_CASE("settings of nonsense open the window at a size that can be used", "[ui][badstart]") {
    const SampleWindow w;
    w.window->closeBook();
    const auto ini = w.scratch / "odd.ini";
    for (const std::string& text :
         {"[session]\nbook=" + (w.scratch / "gone.cellar").string() + "\nvessel=Nobody\nstation=99\n",
          "[session]\nbook=" + w.scratch.path().string() + "\n", // a folder
          "[session]\nbook=" + w.book.string() + "\nvessel=Nobody\nstation=nonsense\ngeometry=@ByteArray(zz)\n",
          std::string("[session]\ngeometry=@ByteArray(\\x1\\xd9\\xd0\\xcb\\0\\x3\\0\\0\\x7f\\xff\\xff\\xff)\n")}) {
        INFO(text);
        testing::writeAll(ini, text);
        testing::ScriptedPrompt prompt;
        QSettings settings(qs(ini.string()), QSettings::IniFormat);
        MainWindow window([&w] { return w.today; }, prompt, settings);
        window.start(std::nullopt);
        window.show();
        CHECK(window.isVisible());
        CHECK(window.width() > 300);
        CHECK(window.width() < 4000);
        if (window.session())
            CHECK_FALSE(window.cellar()->vessel().empty());
        CHECK_FALSE(testing::shownWords(window).isEmpty());
    }
}

TEST_CASE("without a single font the window starts, works and closes", "[ui][badstart]") {
    const testing::Scratch scratch;
    std::filesystem::create_directory(scratch / "fonts");
    testing::writeAll(scratch / "fonts.conf", "<?xml version=\"1.0\"?><fontconfig></fontconfig>");
    QProcess child;
    QProcessEnvironment bare = QProcessEnvironment::systemEnvironment();
    bare.insert("QT_QPA_FONTDIR", qs((scratch / "fonts").string()));
    bare.insert("FONTCONFIG_FILE", qs((scratch / "fonts.conf").string()));
    child.setProcessEnvironment(bare);
    child.start(QCoreApplication::applicationFilePath(), {"[child]"});
    REQUIRE(child.waitForFinished(120000));
    INFO(child.readAllStandardError().toStdString());
    const QByteArray said = child.readAllStandardOutput();
    INFO(said.toStdString());
    CHECK(child.exitStatus() == QProcess::NormalExit);
    CHECK(said.contains("child closed its window"));
    CHECK(said.contains("All tests passed"));
}

// Run by the case above in a process of its own.
TEST_CASE("the window of a child process", "[.][child]") {
    const SampleWindow w;
    for (const PageId workPage : testing::allPages) {
        w.go(workPage);
        CHECK_FALSE(w.window->grab().isNull());
    }
    w.put(w.scoreCell(), "6", Qt::Key_Tab);
    CHECK(w.desk().sittings("Plover")->front().fact.sitting.on == w.today);
    w.window->close();
    CHECK_FALSE(w.window->isVisible());
    std::printf("child closed its window\n");
    std::fflush(stdout);
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start.h"

#include "ui/present/text.h"
#include "ui/present/window_words.h"
#include "ui/widgets/prompt.h"
#include "ui/window/cellar_view.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QIcon>
#include <QProcess>
#include <QSettings>

#include <algorithm>

static void initIcons() {
    Q_INIT_RESOURCE(icons);
}

namespace staveline::ui {
namespace {

/// Wayland, else X, else nothing to see: a dead or missing display must not end the program.
void choosePlatform() {
    if (qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
        return;
    const bool wayland = !qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY");
    qputenv("QT_QPA_PLATFORM", wayland ? "wayland;xcb;offscreen" : "xcb;offscreen");
}

} // namespace

bool hasDisplay() {
    if (qEnvironmentVariableIsEmpty("DISPLAY") && qEnvironmentVariableIsEmpty("WAYLAND_DISPLAY"))
        return false;
    choosePlatform();
    int count = 1;
    char name[] = "staveline";
    char* arguments[] = {name, nullptr};
    const QGuiApplication probe(count, arguments);
    return QGuiApplication::platformName() != QStringLiteral("offscreen");
}

namespace {

QSettings windowSettings() {
    return {QSettings::IniFormat, QSettings::UserScope, QStringLiteral("staveline"), QStringLiteral("window")};
}

/// As the program was started, but for the language, which was chosen anew.
QStringList argumentsAgain() {
    QStringList arguments = QApplication::arguments().mid(1);
    for (qsizetype at = 0; at < arguments.size();)
        if (arguments[at] == QStringLiteral("--language"))
            arguments.remove(at, std::min<qsizetype>(2, arguments.size() - at));
        else if (arguments[at].startsWith(QStringLiteral("--language=")))
            arguments.removeAt(at);
        else
            ++at;
    return arguments;
}

/// Whether the language was changed and the program is to start anew.
bool showWindow(const std::optional<std::filesystem::path>& book, desk::Clock clock, QSettings& settings) {
    DialogPrompt prompt;
    MainWindow window(std::move(clock), prompt, settings);
    window.start(book);
    window.show();
    if (CellarView* cellar = window.cellar())
        cellar->focusWork(); // now that something is visible; else the first button would have the focus: undo
    QApplication::exec();
    return window.startsAgain();
}

} // namespace

int runWindow(int argc, char** argv, const std::optional<std::filesystem::path>& book, desk::Clock clock) {
    choosePlatform();
    initIcons();
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Staveline"));
    QApplication::setDesktopFileName(QStringLiteral("staveline"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/staveline.svg")));
    rememberSystemPalette(QApplication::palette());
    speakIn(application);
    auto settings = windowSettings();
    if (showWindow(book, std::move(clock), settings))
        QProcess::startDetached(QApplication::applicationFilePath(), argumentsAgain());
    return 0;
}

std::string chosenLanguage() {
    return toStd(load(windowSettings()).language);
}

} // namespace staveline::ui

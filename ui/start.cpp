// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start.h"

#include "ui/widgets/prompt.h"
#include "ui/window/cellar_view.h"
#include "ui/window/main_window.h"

#include <QApplication>
#include <QIcon>
#include <QSettings>

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

int runWindow(int argc, char** argv, const std::optional<std::filesystem::path>& book, desk::Clock clock) {
    choosePlatform();
    initIcons();
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("Staveline"));
    QApplication::setDesktopFileName(QStringLiteral("staveline"));
    QApplication::setWindowIcon(QIcon(QStringLiteral(":/icons/staveline.svg")));
    rememberSystemPalette(QApplication::palette());
    QSettings settings(QSettings::IniFormat, QSettings::UserScope, QStringLiteral("staveline"),
                       QStringLiteral("window"));
    DialogPrompt prompt;
    MainWindow window(std::move(clock), prompt, settings);
    window.start(book);
    window.show();
    if (CellarView* cellar = window.cellar())
        cellar->focusWork(); // now that something is visible; else the first button would have the focus: undo
    return QApplication::exec();
}

} // namespace staveline::ui

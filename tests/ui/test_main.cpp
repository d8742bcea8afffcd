// SPDX-License-Identifier: GPL-3.0-or-later
// The window's tests need an application before the first case, and no warning of Qt may pass unseen.
#define CATCH_CONFIG_RUNNER
#include "support/catch.h"

#include "quantity/language.h"
#include "ui/present/window_words.h"
#include "ui/test_warnings.h"
#include "ui/widgets/accessible_roles.h"

#include <QApplication>
#include <QLocale>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <cstdio>

namespace {

int unexpected = 0;

/// What offscreen Qt always says, and says nothing about us.
bool isKnown(const QString& message) {
    for (const char* known :
         {"This plugin does not support propagateSizeHints", "This plugin does not support grabbing the keyboard",
          "This plugin does not support raise()", "XDG_RUNTIME_DIR",
          // reading a settings file of garbage, as a test does
          "QVariant::load: unknown user type",
          // a printer that refuses, as a test has it
          "QPainter::begin(): Returned false"})
        if (message.contains(QLatin1String(known)))
            return true;
    return false;
}

void judge(QtMsgType type, const QMessageLogContext&, const QString& message) {
    if (type == QtDebugMsg || type == QtInfoMsg || isKnown(message))
        return;
    ++unexpected;
    std::fprintf(stderr, "Qt: %s\n", message.toLocal8Bit().constData());
}

} // namespace

namespace staveline::testing {

int unexpectedWarnings() {
    return unexpected;
}

} // namespace staveline::testing

int main(int argc, char** argv) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QTemporaryDir runtime;
    if (!qEnvironmentVariableIsSet("XDG_RUNTIME_DIR"))
        qputenv("XDG_RUNTIME_DIR", runtime.path().toUtf8());
    qInstallMessageHandler(judge);
    QStandardPaths::setTestModeEnabled(true);
    QLocale::setDefault(QLocale::c());
    QApplication application(argc, argv);
    QApplication::setStyle(QStringLiteral("Fusion"));
    QApplication::setCursorFlashTime(0);
    staveline::speak(staveline::languageFor(qEnvironmentVariable("STAVELINE_LANGUAGE").toStdString()));
    staveline::ui::speakIn(application);
    staveline::ui::installAccessibleRoles(); // as a window does: some cases show a page alone
    const int failed = Catch::Session().run(argc, argv);
    if (unexpected > 0)
        std::fprintf(stderr, "%d unexpected warnings of Qt\n", unexpected);
    return failed != 0 ? failed : unexpected;
}

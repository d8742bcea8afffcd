// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/window_words.h"

#include "quantity/language.h"
#include "ui/present/text.h"

#include <QCoreApplication>
#include <QLibraryInfo>

namespace staveline::ui {

QString WindowWords::translate(const char* /*context*/, const char* source, const char* /*what*/, int n) const {
    // A line of the texts' files cannot hold a line break.
    const QString key = QString::fromUtf8(source).replace(QLatin1Char('\n'), QStringLiteral("\\n"));
    return qs(inLanguage(toStd(key), n)).replace(QStringLiteral("\\n"), QStringLiteral("\n"));
}

void speakIn(QCoreApplication& application) {
    QCoreApplication::installTranslator(new WindowWords(&application));
    auto* dialogs = new QTranslator(&application);
    if (dialogs->load(QStringLiteral("qtbase_") + qs(spoken().code),
                      QLibraryInfo::path(QLibraryInfo::TranslationsPath)))
        QCoreApplication::installTranslator(dialogs);
}

} // namespace staveline::ui

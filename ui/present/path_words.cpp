// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/path_words.h"

#include <QDir>
#include <QFileInfo>

namespace staveline::ui {

QString folderWords(const QString& file) {
    const QString folder = QFileInfo(file).absolutePath(), home = QDir::homePath();
    const bool own = folder == home || folder.startsWith(home + QLatin1Char('/'));
    return own ? QLatin1Char('~') + folder.mid(home.size()) : QDir::toNativeSeparators(folder);
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/news.h"

#include "quantity/language.h"
#include "resources/resources.h"
#include "ui/present/text.h"

#include <QStringList>
#include <QVersionNumber>

namespace staveline::ui {
namespace {

const QLatin1String heading("## ");

QVersionNumber versionOf(const QString& section) {
    return QVersionNumber::fromString(section.mid(heading.size()));
}

} // namespace

QString programVersion() {
    return QStringLiteral(STAVELINE_VERSION);
}

QString newsSince(const QString& version, const QString& changes) {
    const auto seen = QVersionNumber::fromString(version);
    QStringList later;
    for (qsizetype at = changes.indexOf(heading); at >= 0;) {
        const qsizetype end = changes.indexOf(QLatin1String("\n## "), at);
        const QString section = end < 0 ? changes.mid(at) : changes.mid(at, end + 1 - at);
        if (seen.isNull() || versionOf(section) > seen)
            later << section;
        at = end < 0 ? -1 : end + 1;
    }
    return later.join(QString());
}

QString changesFile() {
    const std::string own = "changes/" + std::string(spoken().code) + ".md";
    const auto found = resources::find(own);
    return qs(std::string(found.empty() ? resources::find("CHANGELOG.md") : found));
}

bool isUpdate(const QString& seen) {
    return !seen.isEmpty() && QVersionNumber::fromString(seen) < QVersionNumber::fromString(programVersion());
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/help_search.h"

#include "ui/present/text.h"

#include <algorithm>

namespace staveline::ui {
namespace {

QStringList numbered(const std::string& start) {
    QStringList found;
    for (int i = 1; builtInTexts().has(start + std::to_string(i)); ++i)
        found << own(start + std::to_string(i));
    return found;
}

} // namespace

const QStringList& helpPages() {
    static const QStringList pages = {
        QStringLiteral("start"),      QStringLiteral("cellar"),      QStringLiteral("vessel"),
        QStringLiteral("round"),      QStringLiteral("room"),        QStringLiteral("ingredients"),
        QStringLiteral("taste"),      QStringLiteral("adjust"),      QStringLiteral("brew"),
        QStringLiteral("brew_sheet"), QStringLiteral("draw_refill"), QStringLiteral("finish"),
        QStringLiteral("history"),    QStringLiteral("about")};
    return pages;
}

QStringList helpFor(const QString& page) {
    return numbered("ui.help." + toStd(page) + ".");
}

QStringList keysOf(const QString& page) {
    return numbered("ui.keys." + toStd(page) + ".");
}

bool tells(const QString& words, const QString& sought) {
    const QStringList each = sought.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return !each.isEmpty() && std::all_of(each.begin(), each.end(), [&](const QString& word) {
        return words.contains(word, Qt::CaseInsensitive);
    });
}

std::vector<HelpHit> findInHelp(const QString& sought) {
    std::vector<HelpHit> hits;
    for (const QString& page : helpPages()) {
        QStringList paragraphs = helpFor(page);
        const QString title = paragraphs.isEmpty() ? QString() : paragraphs.takeFirst();
        for (const QString& words : paragraphs + keysOf(page))
            if (tells(title + QLatin1Char(' ') + words, sought))
                hits.push_back({page, words});
    }
    return hits;
}

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Looking for words in the help of all pages.
#pragma once

#include <QString>
#include <QStringList>

#include <vector>

namespace staveline::ui {

/// Every page that has help, in the order of the work.
[[nodiscard]] const QStringList& helpPages();
/// Paragraphs of a page; the first is its title.
[[nodiscard]] QStringList helpFor(const QString& page);
/// Keys of a page that no menu shows, each "key: what it does".
[[nodiscard]] QStringList keysOf(const QString& page);

struct HelpHit {
    QString page, words;
};
/// Whether each word of `sought` stands in it, in any order and case; never of no words.
[[nodiscard]] bool tells(const QString& words, const QString& sought);
/// Paragraphs and keys that tell of what is sought; the title of their page counts as theirs.
[[nodiscard]] std::vector<HelpHit> findInHelp(const QString& sought);

} // namespace staveline::ui

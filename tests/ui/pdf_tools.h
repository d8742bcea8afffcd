// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a PDF by programs that are not ours (poppler-utils); a test says so and ends where they are not installed.
#pragma once

#include "support/catch.h"
#include "ui/present/text.h"

#include <QProcess>
#include <QRegularExpression>
#include <QStandardPaths>

#include <filesystem>
#include <vector>

namespace staveline::testing {

inline bool hasPdfTools() {
    return !QStandardPaths::findExecutable("pdftotext").isEmpty() &&
           !QStandardPaths::findExecutable("pdfinfo").isEmpty();
}

inline QString outputOf(const QString& program, const QStringList& arguments) {
    QProcess tool;
    tool.start(program, arguments);
    REQUIRE(tool.waitForFinished());
    return QString::fromUtf8(tool.readAllStandardOutput());
}

/// Text page by page; `how`: "-layout" as it looks, "-raw" in the order it was written.
inline QStringList pdfPages(const std::filesystem::path& pdf, const char* how = "-layout") {
    QStringList pages = outputOf("pdftotext", {how, ui::qs(pdf.string()), "-"}).split('\f');
    pages.removeLast();
    return pages;
}

struct PdfWord {
    QString text;
    double x = 0, y = 0, right = 0, bottom = 0;
};

/// The words of the first page with their places in points, by a program that is not ours.
inline std::vector<PdfWord> wordsOn(const std::filesystem::path& pdf) {
    const QString page = outputOf("pdftotext", {"-bbox", "-l", "1", ui::qs(pdf.string()), "-"});
    std::vector<PdfWord> words;
    const QRegularExpression word(
        R"re(xMin="([0-9.]+)" yMin="([0-9.]+)" xMax="([0-9.]+)" yMax="([0-9.]+)">([^<]*)<)re");
    for (auto found = word.globalMatch(page); found.hasNext();) {
        const auto each = found.next();
        words.push_back({each.captured(5), each.captured(1).toDouble(), each.captured(2).toDouble(),
                         each.captured(3).toDouble(), each.captured(4).toDouble()});
    }
    return words;
}

} // namespace staveline::testing

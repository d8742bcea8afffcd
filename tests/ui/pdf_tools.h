// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a PDF by programs that are not ours (poppler-utils); a test says so and ends where they are not installed.
#pragma once

#include "support/catch.h"
#include "ui/present/text.h"

#include <QProcess>
#include <QStandardPaths>

#include <filesystem>

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

} // namespace staveline::testing

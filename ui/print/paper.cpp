// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper.h"

#include "ui/present/text.h"
#include "ui/print/pdf.h"

#include <QSaveFile>

namespace staveline::ui {
namespace {

Fault cannotWrite(const std::filesystem::path& to, const QString& reason) {
    return {FaultKind::storage, "", say("ui.cannot_write").with("path", to.string()).with("reason", toStd(reason)),
            say("ui.write_elsewhere")};
}

} // namespace

std::optional<PaperSize> paperNamed(std::string_view name) {
    if (name == "a4")
        return PaperSize::a4;
    if (name == "letter")
        return PaperSize::letter;
    return std::nullopt;
}

std::optional<PaperFormat> formatOf(const std::filesystem::path& path) {
    const std::string ending = path.extension().string();
    if (ending == ".pdf")
        return PaperFormat::pdf;
    if (ending == ".html" || ending == ".htm")
        return PaperFormat::html;
    if (ending == ".md")
        return PaperFormat::markdown;
    if (ending == ".csv")
        return PaperFormat::csv;
    if (ending == ".txt")
        return PaperFormat::text;
    return std::nullopt;
}

Result<void> saveFile(const std::filesystem::path& to, std::string_view bytes) {
    QSaveFile file(qs(to.string()));
    if (!file.open(QIODevice::WriteOnly))
        return fail(cannotWrite(to, file.errorString()));
    const auto length = static_cast<qint64>(bytes.size());
    // A disk that fills up takes a part of the last block without an error: only flush() tells, commit() would not.
    if (file.write(bytes.data(), length) != length || !file.flush() || !file.commit())
        return fail(cannotWrite(to, file.errorString()));
    return {};
}

Result<void> writePaper(const Document& document, const std::filesystem::path& to, PaperSize size) {
    const auto format = formatOf(to);
    if (!format)
        return badInput("", say("ui.unknown_ending").with("path", to.filename().string()), say("ui.known_endings"));
    switch (*format) {
    case PaperFormat::pdf:
        return writePdf(document, to, size);
    case PaperFormat::html:
        return saveFile(to, writeHtml(document));
    case PaperFormat::markdown:
        return saveFile(to, writeMarkdown(document));
    case PaperFormat::csv:
        return saveFile(to, writeCsv(document));
    case PaperFormat::text:
        break;
    }
    return saveFile(to, writeText(document));
}

} // namespace staveline::ui

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

const PaperSizeRow& rowOf(PaperSize size) {
    return *std::find_if(paperSizes.begin(), paperSizes.end(), [&](auto& row) { return row.size == size; });
}

std::optional<PaperSize> paperNamed(std::string_view word) {
    for (const auto& row : paperSizes)
        if (row.word == word)
            return row.size;
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
    const PaperFormatRow* format = formatOf(to.extension().string());
    if (!format)
        return badInput("", say("ui.unknown_ending").with("path", to.filename().string()),
                        say("ui.known_endings").with("endings", knownEndings()));
    return format->write ? saveFile(to, format->write(document)) : writePdf(document, to, size);
}

} // namespace staveline::ui

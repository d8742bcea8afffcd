// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/paper.h"

#include "ui/present/text.h"
#include "ui/print/paged_paper.h"

#include <QBuffer>
#include <QFileInfo>
#include <QGuiApplication>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

namespace staveline::ui {
namespace {

constexpr int resolution = 600; // dots per inch

/// Fonts need a GUI application; a program without a window gets one that shows nothing.
class OffscreenPainting {
public:
    OffscreenPainting() {
        if (QCoreApplication::instance())
            return;
        if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM"))
            qputenv("QT_QPA_PLATFORM", "offscreen");
        application_ = std::make_unique<QGuiApplication>(count_, arguments_);
    }

private:
    int count_ = 1;
    char name_[10] = "staveline";
    char* arguments_[2] = {name_, nullptr};
    std::unique_ptr<QGuiApplication> application_;
};

Fault cannotWrite(const std::filesystem::path& to, const QString& reason) {
    return {FaultKind::storage, "", say("ui.cannot_write").with("path", to.string()).with("reason", toStd(reason)),
            say("ui.write_elsewhere")};
}

QByteArray pdfBytes(const Document& document, PaperSize size) {
    const OffscreenPainting application;
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(resolution);
    writer.setPageLayout(PagedPaper::layout(size));
    writer.setTitle(qs(document.title));
    writer.setCreator(QStringLiteral("Staveline"));
    const PagedPaper paper(document, size);
    QPainter painter(&writer);
    painter.scale(resolution / 72.0, resolution / 72.0);
    for (int page = 0; page < paper.pages(); ++page) {
        if (page > 0)
            writer.newPage();
        paper.paint(painter, page);
    }
    painter.end();
    return bytes;
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
    // commit() flushes and reports a disk that filled up in between.
    if (file.write(bytes.data(), length) != length || !file.commit())
        return fail(cannotWrite(to, file.errorString()));
    return {};
}

Result<void> writePdf(const Document& document, const std::filesystem::path& to, PaperSize size) {
    const QByteArray bytes = pdfBytes(document, size);
    return saveFile(to, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
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

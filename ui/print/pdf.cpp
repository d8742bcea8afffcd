// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/pdf.h"

#include "desk/whole_file.h"
#include "ui/present/text.h"
#include "ui/print/paged_paper.h"
#include "ui/print/printing.h"

#include <QBuffer>
#include <QGuiApplication>
#include <QPdfWriter>

#include <cstdio>

namespace staveline::ui {
namespace {

constexpr int resolution = 600; // dots per inch

/// Fonts need a GUI application; a program without a window gets one that shows nothing, whatever display the
/// environment asks for.
class OffscreenPainting {
public:
    OffscreenPainting() {
        if (QCoreApplication::instance())
            return;
        before_ = qInstallMessageHandler(onlyFatal);
        qputenv("QT_QPA_PLATFORM", "offscreen");
        application_ = std::make_unique<QGuiApplication>(count_, arguments_);
    }

    ~OffscreenPainting() {
        if (!application_)
            return;
        application_.reset();
        qInstallMessageHandler(before_);
    }
    OffscreenPainting(const OffscreenPainting&) = delete;
    OffscreenPainting& operator=(const OffscreenPainting&) = delete;

private:
    /// What the toolkit misses without a desktop is nothing to a paper: what goes wrong with that is a fault.
    static void onlyFatal(QtMsgType type, const QMessageLogContext& context, const QString& words) {
        if (type == QtFatalMsg)
            std::fputs(qFormatLogMessage(type, context, words).append(QLatin1Char('\n')).toUtf8().constData(), stderr);
    }

    QtMessageHandler before_ = nullptr;
    int count_ = 1;
    char name_[10] = "staveline";
    char* arguments_[2] = {name_, nullptr};
    std::unique_ptr<QGuiApplication> application_;
};

QByteArray pdfBytes(const sheet::Document& document, PaperSize size) {
    const OffscreenPainting application;
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(resolution);
    writer.setPageLayout(PagedPaper::layout(size));
    writer.setTitle(qs(document.title));
    writer.setCreator(QStringLiteral("Staveline"));
    (void)paintPages(writer, document, size); // memory takes every page
    return bytes;
}

} // namespace

Result<void> writePdf(const sheet::Document& document, const std::filesystem::path& to, PaperSize size) {
    const QByteArray bytes = pdfBytes(document, size);
    return desk::writeWhole(to, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

} // namespace staveline::ui

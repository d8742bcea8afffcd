// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/printout.h"

#include "desk/whole_file.h"
#include "ui/print/printing.h"

#include <QCoreApplication>
#include <QPrinter>

#include <algorithm>

namespace staveline::ui {

using sheet::PaperFormat;

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Printout", words);
}

Result<void> write(const Printout::Made& paper, const std::filesystem::path& to, PaperSize size) {
    const sheet::PaperFormatRow* typed = sheet::formatOf(to.extension().string());
    if (paper.csv && typed && typed->format == PaperFormat::csv)
        return desk::writeWhole(to, *paper.csv);
    return writePaper(paper.document, to, size);
}

} // namespace

Printout::Printout(Session& session, Prompt& prompt, QString name, std::vector<PaperFormat> formats, Maker make)
    : session_(session), prompt_(prompt), name_(std::move(name)), formats_(std::move(formats)), make_(std::move(make)) {
}

bool Printout::offers(PaperFormat format) const {
    return std::find(formats_.begin(), formats_.end(), format) != formats_.end();
}

std::optional<Printout::Made> Printout::made() const {
    auto paper = make_();
    if (!paper)
        Q_EMIT session_.said(tr("There is no %1 here yet.").arg(name_));
    return paper;
}

void Printout::tell(const Result<void>& done, const QString& words) const {
    if (done)
        Q_EMIT session_.said(words);
    else
        Q_EMIT session_.failed(done.error());
}

void Printout::save(QWidget& asker, PaperFormat format) const {
    const auto paper = made(); // the book may change while the question stands
    if (!paper)
        return;
    const QString ending = qs(rowOf(format).ending);
    if (const auto to = prompt_.fileToWrite(&asker, tr("Save the %1").arg(name_), paper->file + ending, ending))
        tell(write(*paper, *to, size_), tr("Saved %1").arg(qs(to->string())));
}

void Printout::print(QWidget& asker) const {
    const auto paper = made();
    if (!paper)
        return;
    QPrinter printer(QPrinter::HighResolution);
    prepare(printer, paper->document, size_);
    if (prompt_.setUpPrinter(&asker, printer))
        tell(ui::print(printer, paper->document, size_), tr("Printed the %1").arg(name_));
}

} // namespace staveline::ui

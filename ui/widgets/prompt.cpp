// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/prompt.h"

#include "ui/present/text.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>

namespace staveline::ui {
namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Prompt", words);
}

std::optional<std::filesystem::path> pathOf(const QString& chosen) {
    return chosen.isEmpty() ? std::nullopt : std::optional(std::filesystem::path(toStd(chosen)));
}

} // namespace

QString fileKind(const QString& ending) {
    static const std::pair<const char*, const char*> kinds[] = {{".cellar", QT_TRANSLATE_NOOP("Prompt", "Cellar book")},
                                                                {".pdf", QT_TRANSLATE_NOOP("Prompt", "PDF page")},
                                                                {".html", QT_TRANSLATE_NOOP("Prompt", "Web page")},
                                                                {".md", QT_TRANSLATE_NOOP("Prompt", "Markdown text")},
                                                                {".csv", QT_TRANSLATE_NOOP("Prompt", "Table")},
                                                                {".png", QT_TRANSLATE_NOOP("Prompt", "Picture")},
                                                                {".svg", QT_TRANSLATE_NOOP("Prompt", "Drawing")},
                                                                {".xlsx", QT_TRANSLATE_NOOP("Prompt", "Spreadsheet")},
                                                                {".txt", QT_TRANSLATE_NOOP("Prompt", "Text")}};
    for (const auto& [known, words] : kinds)
        if (ending == QLatin1String(known))
            return QStringLiteral("%1 (*%2)").arg(tr(words), ending);
    return QLatin1Char('*') + ending;
}

std::optional<std::filesystem::path> DialogPrompt::bookToOpen(QWidget* parent, const QString& folder) {
    return pathOf(
        QFileDialog::getOpenFileName(parent, tr("Open a cellar book"), folder, fileKind(QStringLiteral(".cellar"))));
}

std::optional<std::filesystem::path> DialogPrompt::fileToWrite(QWidget* parent, const QString& title,
                                                               const QString& suggestion, const QString& ending) {
    QString chosen = QFileDialog::getSaveFileName(parent, title, suggestion, fileKind(ending));
    if (!chosen.isEmpty() && QFileInfo(chosen).suffix().isEmpty())
        chosen += ending;
    return pathOf(chosen);
}

std::optional<std::filesystem::path> DialogPrompt::fileToRead(QWidget* parent, const QString& title,
                                                              const QString& folder, const QString& ending) {
    return pathOf(QFileDialog::getOpenFileName(parent, title, folder, fileKind(ending)));
}

std::optional<std::filesystem::path> DialogPrompt::folderToRead(QWidget* parent, const QString& title,
                                                                const QString& folder) {
    return pathOf(QFileDialog::getExistingDirectory(parent, title, folder));
}

std::optional<std::filesystem::path> DialogPrompt::folderToMake(QWidget* parent, const QString& title,
                                                                const QString& suggestion) {
    return pathOf(QFileDialog::getSaveFileName(parent, title, suggestion));
}

bool DialogPrompt::setUpPrinter(QWidget* parent, QPrinter& printer) {
    return QPrintDialog(&printer, parent).exec() == QDialog::Accepted;
}

Leaving DialogPrompt::leaveUnstored(QWidget* parent, const QStringList& unstored) {
    QMessageBox box(QMessageBox::Warning, tr("Not stored yet"), own("ui.leave.unstored"), QMessageBox::NoButton,
                    parent);
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(unstored.join(QLatin1Char('\n')));
    const auto* store = box.addButton(tr("&Store it now"), QMessageBox::AcceptRole);
    const auto* without = box.addButton(tr("&Close without it"), QMessageBox::DestructiveRole);
    QPushButton* stay = box.addButton(tr("S&tay"), QMessageBox::RejectRole);
    box.setEscapeButton(stay);
    box.setDefaultButton(stay);
    box.exec();
    if (box.clickedButton() == store)
        return Leaving::storeFirst;
    return box.clickedButton() == without ? Leaving::without : Leaving::stay;
}

} // namespace staveline::ui

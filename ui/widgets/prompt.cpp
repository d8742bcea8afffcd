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

std::optional<std::filesystem::path> pathOf(const QString& chosen) {
    return chosen.isEmpty() ? std::nullopt : std::optional(std::filesystem::path(toStd(chosen)));
}

} // namespace

std::optional<std::filesystem::path> DialogPrompt::bookToOpen(QWidget* parent, const QString& folder) {
    return pathOf(QFileDialog::getOpenFileName(parent, QCoreApplication::translate("Prompt", "Open a cellar book"),
                                               folder,
                                               QCoreApplication::translate("Prompt", "Cellar books (*.cellar)")));
}

std::optional<std::filesystem::path> DialogPrompt::fileToWrite(QWidget* parent, const QString& title,
                                                               const QString& suggestion, const QString& ending) {
    QString chosen = QFileDialog::getSaveFileName(parent, title, suggestion, QStringLiteral("*") + ending);
    if (!chosen.isEmpty() && QFileInfo(chosen).suffix().isEmpty())
        chosen += ending;
    return pathOf(chosen);
}

bool DialogPrompt::setUpPrinter(QWidget* parent, QPrinter& printer) {
    return QPrintDialog(&printer, parent).exec() == QDialog::Accepted;
}

Leaving DialogPrompt::leaveUnstored(QWidget* parent, const QStringList& unstored) {
    const auto tr = [](const char* words) { return QCoreApplication::translate("Prompt", words); };
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

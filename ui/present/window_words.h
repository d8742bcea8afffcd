// SPDX-License-Identifier: GPL-3.0-or-later
// The window's own texts, tr("..."), looked up where all others are: in the texts of the language spoken.
#pragma once

#include <QTranslator>

class QCoreApplication;

namespace staveline::ui {

class WindowWords : public QTranslator {
    Q_OBJECT
public:
    using QTranslator::QTranslator;
    [[nodiscard]] QString translate(const char* context, const char* source, const char* what, int n) const override;
    [[nodiscard]] bool isEmpty() const override { return false; }
};

/// The window's words and those of Qt's own dialogs, for as long as the application runs.
void speakIn(QCoreApplication& application);

} // namespace staveline::ui

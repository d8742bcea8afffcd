// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that must ask the brewer in a dialog goes through here, so that a test can answer.
#pragma once

#include <QString>

#include <filesystem>
#include <optional>

class QPrinter;
class QWidget;

namespace staveline::ui {

class Prompt {
public:
    virtual ~Prompt() = default;
    /// Empty: cancelled.
    virtual std::optional<std::filesystem::path> bookToOpen(QWidget* parent, const QString& folder) = 0;
    /// `ending` with its dot is added when none is typed.
    virtual std::optional<std::filesystem::path> fileToWrite(QWidget* parent, const QString& title,
                                                             const QString& suggestion, const QString& ending) = 0;
    /// False: the brewer thought better of it.
    virtual bool setUpPrinter(QWidget* parent, QPrinter& printer) = 0;
};

/// Asks with the desktop's dialogs.
class DialogPrompt : public Prompt {
public:
    std::optional<std::filesystem::path> bookToOpen(QWidget* parent, const QString& folder) override;
    std::optional<std::filesystem::path> fileToWrite(QWidget* parent, const QString& title, const QString& suggestion,
                                                     const QString& ending) override;
    bool setUpPrinter(QWidget* parent, QPrinter& printer) override;
};

} // namespace staveline::ui

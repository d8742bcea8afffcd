// SPDX-License-Identifier: GPL-3.0-or-later
// Everything that must ask the brewer in a dialog goes through here, so that a test can answer.
#pragma once

#include <QStringList>

#include <filesystem>
#include <optional>

class QPrinter;
class QWidget;

namespace staveline::ui {

/// What to do with what is not stored when its book is about to be closed.
enum class Leaving { storeFirst, without, stay };

class Prompt {
public:
    virtual ~Prompt() = default;
    /// Empty: cancelled.
    virtual std::optional<std::filesystem::path> bookToOpen(QWidget* parent, const QString& folder) = 0;
    /// `ending` with its dot is added when none is typed.
    virtual std::optional<std::filesystem::path> fileToWrite(QWidget* parent, const QString& title,
                                                             const QString& suggestion, const QString& ending) = 0;
    /// `ending` of the files that are offered.
    virtual std::optional<std::filesystem::path> fileToRead(QWidget* parent, const QString& title,
                                                            const QString& folder, const QString& ending) = 0;
    virtual std::optional<std::filesystem::path> folderToRead(QWidget* parent, const QString& title,
                                                              const QString& folder) = 0;
    /// A new one; `suggestion` with its name.
    virtual std::optional<std::filesystem::path> folderToMake(QWidget* parent, const QString& title,
                                                              const QString& suggestion) = 0;
    /// False: the brewer thought better of it.
    virtual bool setUpPrinter(QWidget* parent, QPrinter& printer) = 0;
    /// `unstored` in words, one line each; never empty.
    virtual Leaving leaveUnstored(QWidget* parent, const QStringList& unstored) = 0;
};

/// What a dialog calls the files of an ending: "Cellar book (*.cellar)".
[[nodiscard]] QString fileKind(const QString& ending);

/// Asks with the desktop's dialogs.
class DialogPrompt : public Prompt {
public:
    std::optional<std::filesystem::path> bookToOpen(QWidget* parent, const QString& folder) override;
    std::optional<std::filesystem::path> fileToWrite(QWidget* parent, const QString& title, const QString& suggestion,
                                                     const QString& ending) override;
    std::optional<std::filesystem::path> fileToRead(QWidget* parent, const QString& title, const QString& folder,
                                                    const QString& ending) override;
    std::optional<std::filesystem::path> folderToRead(QWidget* parent, const QString& title,
                                                      const QString& folder) override;
    std::optional<std::filesystem::path> folderToMake(QWidget* parent, const QString& title,
                                                      const QString& suggestion) override;
    bool setUpPrinter(QWidget* parent, QPrinter& printer) override;
    Leaving leaveUnstored(QWidget* parent, const QStringList& unstored) override;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// A small invented cellar, answers for the prompts, and a window that lives in a scratch folder.
#pragma once

#include "advice/board.h"
#include "advice/explain.h"
#include "desk/advice.h"
#include "desk/brew.h"
#include "desk/desk.h"
#include "desk/draw_day.h"
#include "desk/filed.h"
#include "desk/full_answer.h"
#include "desk/history.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/tasting.h"
#include "facts/record_file.h"
#include "forward/predict.h"
#include "sheet/brew_sheet.h"
#include "sheet/tasting_paper.h"
#include "support/catch.h"
#include "support/scratch.h"
#include "ui/parts.h"
#include "ui/present/text.h"
#include "ui/widgets/prompt.h"
#include "ui/window/help_panel.h"
#include "ui/window/main_window.h"

#include <QSettings>
#include <QtTest>

namespace staveline::testing {

inline constexpr Day day(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / static_cast<int>(m) / static_cast<int>(d);
}
inline constexpr Day testToday = day(2026, 3, 2);

/// Answers in the order they will be asked for; an empty answer is "cancelled".
class ScriptedPrompt : public ui::Prompt {
public:
    std::vector<std::filesystem::path> answers;
    std::vector<QString> asked;
    bool printerSet = false;
    ui::Leaving leaving = ui::Leaving::stay;
    std::vector<QStringList> unstored; ///< each time it was asked

    std::optional<std::filesystem::path> bookToOpen(QWidget*, const QString& folder) override { return next(folder); }
    std::optional<std::filesystem::path> fileToWrite(QWidget*, const QString&, const QString& suggestion,
                                                     const QString&) override {
        return next(suggestion);
    }
    std::optional<std::filesystem::path> fileToRead(QWidget*, const QString& title, const QString&,
                                                    const QString&) override {
        return next(title);
    }
    std::optional<std::filesystem::path> folderToRead(QWidget*, const QString& title, const QString&) override {
        return next(title);
    }
    std::optional<std::filesystem::path> folderToMake(QWidget*, const QString&, const QString& suggestion) override {
        return next(suggestion);
    }
    bool setUpPrinter(QWidget*, QPrinter&) override { return printerSet; }
    ui::Leaving leaveUnstored(QWidget*, const QStringList& what) override {
        unstored.push_back(what);
        return leaving;
    }

private:
    std::optional<std::filesystem::path> next(const QString& question) {
        asked.push_back(question);
        if (answers.empty() || answers.front().empty())
            return std::nullopt;
        const auto answer = answers.front();
        answers.erase(answers.begin());
        return answer;
    }
};

/// Records JSON and expects it to work.
void recordAll(desk::Desk& desk, const std::string& json);
void recordAll(ui::Session& session, const std::string& json);
/// Three invented vessels: a cask with history, a keg just opened, a foeder without an entry.
void fillCellar(desk::Desk& desk);

/// Everything of a desk that can be told, for bit-for-bit comparison.
[[nodiscard]] std::string fingerprint(const desk::Desk& desk);

struct DeskInScratch {
    Scratch scratch;
    Day today = testToday;
    std::filesystem::path book = scratch / "heron.cellar";
    std::unique_ptr<desk::Desk> desk = *desk::Desk::create(book, [this] { return today; });
};

/// What a menu shows, without the mark of its key and the dots of a question.
[[nodiscard]] QString wordsOf(const QAction& action);

/// A window on a filled book, shown and active.
struct WindowInScratch {
    explicit WindowInScratch(bool withBook = true);
    Scratch scratch;
    Day today = testToday;
    std::filesystem::path book = scratch / "heron.cellar";
    ScriptedPrompt prompt;
    QSettings settings{ui::qs((scratch / "window.ini").string()), QSettings::IniFormat};
    std::unique_ptr<ui::MainWindow> window;

    void open(); ///< makes the window anew, as after a restart
    /// What a menu offers, by its words; what it would undo or why it cannot be is not part of them.
    [[nodiscard]] QAction& action(const QString& words) const;
    [[nodiscard]] ui::CellarView& cellar() const { return *window->cellar(); }
    [[nodiscard]] const desk::Desk& desk() const { return window->session()->desk(); }
    [[nodiscard]] ui::HelpPanel& help() const { return part<ui::HelpPanel>(*window); }
    [[nodiscard]] QWidget* focus() const { return window->focusWidget(); }
    /// Real key events to what has the focus.
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) const;
    void type(const QString& text) const;
    /// Tab until the widget with this accessible name has the focus; fails after a round.
    void tabTo(const QString& accessibleName) const;
};

[[nodiscard]] QString accessibleName(QWidget& widget);

} // namespace staveline::testing

// SPDX-License-Identifier: GPL-3.0-or-later
// Years of notes into the open book: what each column means, what would be taken and what not, and then all of it in
// one edit. The work is done by a thread with a connection of its own, and can be broken off.
#pragma once

#include "desk/notes.h"
#include "ui/present/latest_worker.h"

#include <QDialog>

#include <atomic>

class QProgressBar;
class QPushButton;
class QTableWidget;

namespace staveline::ui {

class ChoiceField;
class MessageLabel;

class NotesImport : public QDialog {
    Q_OBJECT
public:
    struct Source {
        std::filesystem::path book;
        std::string text; ///< of the file
        std::string name; ///< of the file, without its folder
        facts::NoteTable table;
        std::vector<std::string> vessels;
        std::string vessel; ///< in hand
    };
    NotesImport(Source source, desk::Clock clock, QWidget* parent = nullptr);

    [[nodiscard]] bool busy() const { return busy_; }

Q_SIGNALS:
    void taken(const QString& words);

private:
    void makeChoices();
    void makeColumns();
    [[nodiscard]] QWidget* makeButtons();
    /// Another kind has other fields: the columns are guessed anew.
    void guess();
    [[nodiscard]] facts::NoteForm form() const;
    void preview();
    void take();
    void work(bool trial);
    void show(const Result<desk::NotesOutcome>& outcome, bool trial);
    void showRejected(const std::vector<facts::RejectedRow>& rejected);
    void setBusy(bool busy);

    Source source_;
    desk::Clock clock_;
    ChoiceField *kind_, *vessel_, *dates_, *decimal_;
    QTableWidget *columns_, *rejected_;
    std::vector<ChoiceField*> fields_; ///< of each heading
    MessageLabel* message_;
    QProgressBar* progress_;
    QPushButton *take_, *stop_;
    bool busy_ = false;
    std::atomic<bool> stopped_ = false; ///< by the brewer: the work in hand answers that it was broken off
    int asked_ = 0;                     ///< the preview or import that is waited for
    LatestWorker worker_;               ///< last: its thread uses all of the above
};

} // namespace staveline::ui

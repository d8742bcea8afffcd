// SPDX-License-Identifier: GPL-3.0-or-later
// History: all cycles of a vessel as aligned charts with one cursor, the same data as a table, the promises and how
// they came out, and all of it as files.
#pragma once

#include "desk/history.h"
#include "ui/print/printout.h"
#include "ui/widgets/work_page.h"

class QAction;
class QLabel;
class QMenu;
class QPushButton;
class QStackedWidget;

namespace staveline::ui {

class ChartStack;
class ChoiceField;
class CopyTable;
class FindBar;
class HistoryModel;
class MessageLabel;
class PromiseModel;

class HistoryPage : public WorkPage {
    Q_OBJECT
public:
    enum class Face { charts, table, promises };
    enum class Format { png, svg, csv, xlsx };

    HistoryPage(Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void focusWork() override;
    void showFace(Face face);
    [[nodiscard]] Face face() const { return face_; }
    /// Asks where to; what the file system refuses is said on the page, and the file is whole or as it was.
    void save(Format format);
    [[nodiscard]] Printout& printout() { return printout_; }
    [[nodiscard]] bool hasHistory() const { return !history_.rows.empty(); }
    void find(); ///< in a table; from the charts it opens that of the days
    void findAgain(int by);
    void addToMenus(const QList<QAction*>& actions); ///< of charts and tables

    [[nodiscard]] CopyTable& table() const { return *table_; }
    [[nodiscard]] HistoryModel& model() const { return *model_; }
    [[nodiscard]] QString cursorWords() const; ///< what stands at the cursor
    [[nodiscard]] QString words() const;       ///< of the message shown; empty: none

Q_SIGNALS:
    /// From the empty page: the work that makes a history.
    void firstEntryAsked();
    void faceChanged();

protected:
    void refresh() override;
    void leaveVessel() override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void fillEmptyPage();
    void addTools(QWidget& row);
    QPushButton* addFaceButton(QWidget& row, Face face, const QString& words);
    void addSaveMenu(QWidget& row);
    void fillPanelMenu();
    void fillContextMenus();
    void copyPicture() const;
    void showHistory();
    void showRecord();
    void fitTable();
    void placeTable();
    void chooseSpan();
    void matchSpan(); ///< the choice says "part" when the charts were zoomed
    void readCursor(bool byKeyboard);
    [[nodiscard]] Printout::Made paper() const;
    [[nodiscard]] QString fileName() const; ///< without its ending
    [[nodiscard]] Result<QByteArray> bytesOf(Format format) const;

    Prompt& prompt_;
    Printout printout_;
    desk::HistoryView history_;
    Face face_ = Face::charts;
    HistoryModel* model_;
    PromiseModel* promiseModel_;
    QWidget* empty_;
    QPushButton* firstEntry_;
    QWidget* page_;
    ChoiceField* spanChoice_;
    QMenu* panelMenu_;
    std::vector<std::pair<Face, QPushButton*>> faceButtons_;
    MessageLabel* message_;
    QLabel* record_;
    QStackedWidget* stack_;
    ChartStack* charts_;
    QLabel* reading_;
    QLabel* learned_;
    QLabel* lastPromise_;
    CopyTable* table_;
    CopyTable* promiseTable_;
    FindBar* find_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// All vessels at once: what is due and how late, how each stands to its target, and the year ahead, with brews that one
// day could make. A row opens the page where its work is done.
#pragma once

#include "desk/brew_days.h"
#include "ui/cellar/overview_model.h"
#include "ui/print/printout.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace staveline::ui {

class ChoiceField;
class OverviewFilter;
class OverviewTable;
class WorkDateLine;

class CellarPage : public QWidget {
    Q_OBJECT
public:
    CellarPage(CellarModel& cellar, Session& session, Prompt& prompt, QWidget* parent = nullptr);
    void showVessel(const facts::VesselName& name); ///< its row is in hand
    void showYear(bool year);
    [[nodiscard]] bool isYear() const;
    void focusWork();
    void find(); ///< to the line of words
    [[nodiscard]] Printout& printout() { return printout_; }
    [[nodiscard]] OverviewTable& table() const { return *table_; }
    [[nodiscard]] OverviewModel& model() const { return *model_; }

Q_SIGNALS:
    void opened(const QString& vessel, staveline::vessel::DueKind work);

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void addTools(QWidget& row);
    void openInHand();
    void showHand();
    void showBrewDays();
    void brewTogether(const desk::BrewDay& day);
    void tellCount();
    [[nodiscard]] std::optional<Printout::Made> paper() const;

    Session& session_;
    OverviewModel* model_;
    OverviewFilter* shown_;
    Printout printout_;
    QLineEdit* words_;
    ChoiceField* which_;
    QLabel* count_;
    QPushButton *tableFace_, *yearFace_;
    OverviewTable* table_;
    WorkDateLine* dates_;
    QWidget* brewDays_;
    QStringList brewDayWords_; ///< as they are shown
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Adjust: what to brew, and why. The time lines above; below, left, the decision and the try board; right, the
// alternatives and the reasons; the explanation behind every number.
#pragma once

#include "advice/board.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/target_timeline_data.h"
#include "ui/adjust/trial_runner.h"
#include "ui/widgets/work_page.h"

#include <QPointer>

class QAction;
class QBoxLayout;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace staveline::ui {

class DecisionPanel;
class ExplanationPanel;
class DrawDayPage;
class SteadyScroll;
class StockList;
class LeverBoard;
class MessageLabel;
class MoreNotes;
class Permissions;
class TimelineLegend;
class TargetForm;
class TotalBar;
class VerdictPanel;

class AdjustPage : public WorkPage {
    Q_OBJECT
public:
    explicit AdjustPage(Session& session, QWidget* parent = nullptr);
    void focusWork() override;
    /// The chosen proposal, or what is tried; nothing while it cannot be.
    void adopt();
    void asNow(); ///< every lever back to what is in use
    void openTarget(bool open);
    void openDrawDay(bool open);
    void cancel();
    /// Changes in one plan, 1..4; the advice is asked anew.
    [[nodiscard]] int mostMoved() const;
    void setMostMoved(int levers);
    void addToMenu(const QList<QAction*>& actions);       ///< of the proposals
    [[nodiscard]] QSize minimumSizeHint() const override; ///< of its two columns one above the other
    [[nodiscard]] bool busy() const { return advice_->busy() || trials_->busy(); }

Q_SIGNALS:
    void tasteAsked();
    void drawAsked();
    void firstEntryAsked(staveline::vessel::EntryKind kind); ///< of an empty vessel: its first fill, or a takeover

protected:
    void refresh() override;
    void leaveVessel() override;
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeAnswer();
    QWidget* makeEmpty();
    void fitRoom();
    QWidget* makeTools();
    QWidget* makeLeft();
    QWidget* makeRight();
    void connectParts();
    void showEmpty(bool empty);
    void readDesk();
    void askAnew();
    void showJob();
    void showFirst();
    void showAnswer(const Answer& answer);
    void showWorking();
    void endWork(bool cancelled);
    void pick(int number);
    void tryValues();
    void showTrial(const advice::Trial& trial);
    void showDeep(const DeepTrial& deep);
    void showTimelines();
    void showPlan();
    void showAdopted();
    void showLocked();
    [[nodiscard]] QString firstNow() const;
    void foldAlternatives();
    void openAlternatives(bool open); ///< where one is adopted
    void showAdoptable();
    void refuseAdopt();
    void explainNumber(int proposal, int move, const Origin& origin);
    void closeExplanation();
    void say(const Fault& fault);
    [[nodiscard]] bool fresh(const Answer& answer) const;
    [[nodiscard]] int matching(const TriedValues& tried) const; ///< proposal with these moves, or none's own
    [[nodiscard]] std::optional<advice::Setting> usualInView() const;
    void dropStale();
    [[nodiscard]] QString nameOfTried() const;
    [[nodiscard]] Result<desk::Chosen> adoptChosen();

    JobPtr job_;
    Day readOn_{}; ///< the day job_ speaks of
    Answer answer_;
    std::optional<advice::Trial> trial_; ///< of what the board shows
    PerDimension<TargetTimelineData> timelines_;
    bool touched_ = false; ///< the brewer tried something in this vessel
    bool adoptedHere_ = false, alternativesOpen_ = false;
    QPointer<QWidget> asker_; ///< gets the focus back from the explanation

    AdviceRunner* advice_;
    TrialRunner* trials_;
    QStackedWidget* pages_;
    QPushButton* firstFill_ = nullptr;
    QPushButton* targetButton_ = nullptr;
    QPushButton* drawDayButton_ = nullptr;
    QPushButton* tableButton_ = nullptr;
    QLabel* working_ = nullptr;
    QPushButton* cancel_ = nullptr;
    TimelineLegend* legend_ = nullptr;
    VerdictPanel* verdicts_;
    MessageLabel* message_;
    MessageLabel* locked_; ///< why nothing can be changed, and how it can again
    QStackedWidget* middle_;
    QBoxLayout* answerRow_ = nullptr;
    SteadyScroll* whole_ = nullptr;
    SteadyScroll* left_ = nullptr;
    SteadyScroll* proposalsArea_ = nullptr;
    SteadyScroll* explanationArea_ = nullptr;
    QStackedWidget* right_ = nullptr;
    TargetForm* target_ = nullptr;
    LeverBoard* board_ = nullptr;
    StockList* stock_ = nullptr;
    DecisionPanel* decision_ = nullptr;
    QPushButton* alternativesButton_ = nullptr;
    Permissions* permissions_ = nullptr;
    ProposalList* proposals_ = nullptr;
    MoreNotes* notes_ = nullptr;
    ExplanationPanel* explanation_ = nullptr;
    DrawDayPage* drawDay_ = nullptr;
    TotalBar* total_;
};

} // namespace staveline::ui

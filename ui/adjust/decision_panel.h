// SPDX-License-Identifier: GPL-3.0-or-later
// What to brew, and why: the decision in a sentence, what moves, what is adopted, what the vessel has taught, what one
// more taster would be worth, and what does not fit.
#pragma once

#include "desk/full_answer.h"
#include "ui/adjust/plan_in_view.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace staveline::ui {

class AnswerPanel;
class LinkedLabel;
class MessageLabel;
class MoveTable;

class DecisionPanel : public QWidget {
    Q_OBJECT
public:
    explicit DecisionPanel(Session& session, QWidget* parent = nullptr);
    void setKnown(const desk::AdviceJob& job); ///< what is so before any advice
    void setAdopted(const QString& words, const QString& since);
    void setAdvice(const Answer& answer);
    void clearAdvice();
    void clear();                          ///< of a vessel that goes
    void setWaiting(const QString& words); ///< what stands where no plan is yet
    void setPlan(const PlanInView& plan);
    [[nodiscard]] bool neverTasted() const { return never_; } ///< there is nothing to choose from then
    [[nodiscard]] QPushButton& tasteButton() const { return *taste_; }

Q_SIGNALS:
    void explainAsked(int move, const Origin& origin);
    void tasteAsked();

private:
    void setAnswers(const PerDimension<tasting::Verdict>& verdicts, const desk::AdviceJob& job);
    void showHead();

    Session& session_;
    bool never_ = false;
    /// Something else is done first: a fault treated, a sample tasted. What is brewed all the same still says what
    /// moves and what is not at hand.
    bool withoutPlan_ = false;
    QString waiting_;
    std::optional<Message> taster_; ///< worth asking: goes before the plan
    PlanInView plan_;
    AnswerPanel* answers_;
    QPushButton* taste_;
    QLabel* head_;
    QLabel* working_;
    LinkedLabel* why_;
    MessageLabel* missing_;
    MoveTable* moves_;
    QLabel* adopted_;
    QLabel* since_;
    PerDimension<QLabel*> taught_{};
    QLabel* tasting_;
    MessageLabel* doubts_;
};

} // namespace staveline::ui

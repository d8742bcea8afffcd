// SPDX-License-Identifier: GPL-3.0-or-later
// The proposals, "leave it alone" and the usual recipe, one of them chosen, with its reasons, limits and cautions
// below; what moves and what is not at hand stands with the decision. The alternatives fold once one is adopted.
#pragma once

#include "advice/advise.h"
#include "facts/facts.h"
#include "ui/adjust/advice_runner.h"
#include "ui/present/session.h"

#include <QWidget>

class QButtonGroup;
class QLabel;
class QRadioButton;
class QTimer;
class QVBoxLayout;

namespace staveline::ui {

class LinkedLabel;
class ScoreLine;

class ProposalList : public QWidget {
    Q_OBJECT
public:
    static constexpr int own = facts::ChoiceFact::own; ///< what is tried is nobody's proposal
    static constexpr int usual = -2;                   ///< the usual recipe, where it differs from leaving alone

    explicit ProposalList(Session& session, QWidget* parent = nullptr);
    /// The chosen one stays chosen when it is still there.
    void setAnswer(const Answer& answer);
    void clear();
    /// Without a signal; 0: leave it alone, own: none of them. `lazily`: the detail follows when there is time, as
    /// while a slider moves.
    void choose(int number, bool lazily = false);
    void postpone(); ///< a lever moves: what is to follow waits
    [[nodiscard]] int chosen() const { return chosen_; }
    [[nodiscard]] const advice::Proposal* proposal(int number) const; ///< null: there is none
    [[nodiscard]] int count() const;                                  ///< without "leave it alone" and the usual
    [[nodiscard]] std::vector<int> numbers() const;                   ///< as they stand, best first
    [[nodiscard]] bool empty() const { return !answer_.advice; }
    void focusChosen();
    void setLocked(bool locked); ///< nothing is chosen any more; what is said of the chosen one stays
    void setFolded(bool folded); ///< the alternatives; what is said of the chosen one stays

    [[nodiscard]] QRadioButton* radio(int number) const;
    [[nodiscard]] ScoreLine* scores(int number) const;

Q_SIGNALS:
    void picked(int number);
    void explainAsked(int proposal, const Origin& origin);

private:
    struct Card {
        int number = 0;
        QWidget* frame = nullptr;
        QRadioButton* radio = nullptr;
        QLabel* title = nullptr;
        ScoreLine* scores = nullptr;
    };
    Card makeCard(int number, const advice::Proposal& proposal);
    [[nodiscard]] static int idOf(int number); ///< in the group of buttons, where negative ones are taken
    void makeOwn();
    void showLocked();
    void showDetail();
    void addMessages(QVBoxLayout& column, const QString& title, const std::vector<Message>& messages);
    void addMessage(QVBoxLayout& column, const Message& message);
    bool eventFilter(QObject* watched, QEvent* event) override;

    Session& session_;
    Answer answer_;
    int chosen_ = 0;
    bool folded_ = false, locked_ = false;
    QVBoxLayout* column_;
    QTimer* later_; ///< rebuilds the detail
    QWidget* list_ = nullptr;
    QWidget* detail_ = nullptr;
    QButtonGroup* group_ = nullptr;
    QRadioButton* own_ = nullptr;
    std::vector<Card> cards_;
};

} // namespace staveline::ui

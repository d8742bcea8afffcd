// SPDX-License-Identifier: GPL-3.0-or-later
// Where a number comes from: formula, inputs and source, link by link, with a way back.
#pragma once

#include "advice/explain.h"
#include "ui/adjust/advice_runner.h"
#include "ui/present/session.h"

#include <QFrame>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace staveline::ui {

class LinkedLabel;

class ExplanationPanel : public QFrame {
    Q_OBJECT
public:
    explicit ExplanationPanel(Session& session, QWidget* parent = nullptr);
    /// Begins an explanation at one number of an answer.
    void open(const Answer& answer, int proposal, int move, const Origin& origin);
    void back(); ///< one number back; from the first: closes
    void leave();
    [[nodiscard]] bool isOpen() const { return !trail_.empty(); }
    [[nodiscard]] QString title() const;
    [[nodiscard]] QList<LinkedLabel*> inputs() const;

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void follow(const Origin& origin);
    void showLink(const advice::Explanation& link);
    void showTop();

    Session& session_;
    Answer answer_;
    int proposal_ = 0;
    int move_ = 0;
    std::vector<Origin> trail_; ///< origins, the one shown last
    QPushButton* back_;
    QPushButton* close_;
    QLabel* title_;
    QLabel* formula_;
    QWidget* inputs_ = nullptr;
    QLabel* source_;
    QVBoxLayout* column_;
};

} // namespace staveline::ui

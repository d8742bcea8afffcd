// SPDX-License-Identifier: GPL-3.0-or-later
// One score, 0 to 10 in half steps, typed as a brewer would at the table. What is no score stays as typed.
#pragma once

#include "ui/taste/draft.h"
#include "ui/widgets/field_message.h"

#include <QLineEdit>

class QTimer;

namespace staveline::ui {

class ScoreCell : public QLineEdit {
    Q_OBJECT
public:
    ScoreCell(const tasting::Attribute& attribute, Glass glass, QWidget* parent = nullptr);
    [[nodiscard]] const tasting::Attribute& attribute() const { return attribute_; }
    [[nodiscard]] Glass glass() const { return glass_; }

    /// What the sitting holds; what is being typed, or cannot be a score, stays.
    void showScore(std::optional<double> score);
    /// The same for another taster or sitting: nothing typed stays.
    void resetScore(std::optional<double> score);
    [[nodiscard]] std::optional<double> score() const { return score_; }
    [[nodiscard]] const std::optional<Fault>& fault() const { return fault_; }
    /// Tells of a score that was typed and not told of yet.
    void finish();
    [[nodiscard]] QSize sizeHint() const override;

Q_SIGNALS:
    void typed();             ///< the text changed; `score` and `fault` say to what
    void finished();          ///< a score to keep
    void entered();           ///< the focus came
    void moved(int by);       ///< down (or up) the column
    void crossed(bool right); ///< to the other glass
    void sameAgain();         ///< the key that asks for the last sitting's scores

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    void read();
    void step(double by, bool repeated);
    void clearScore();
    void describe();
    [[nodiscard]] bool moves(const QKeyEvent& event);

    const tasting::Attribute& attribute_;
    Glass glass_;
    std::optional<double> score_, shown_; ///< as typed; as the sitting had it
    std::optional<Fault> fault_;
    bool pending_ = false;
    QTimer* pause_;
    HungMessage message_;
};

/// "6.5"; empty when there is none.
[[nodiscard]] QString scoreText(std::optional<double> score);
/// "plainly sour, like a green apple"
[[nodiscard]] QString anchorText(const tasting::Attribute& attribute, double score);
[[nodiscard]] QString glassWord(Glass glass);

} // namespace staveline::ui

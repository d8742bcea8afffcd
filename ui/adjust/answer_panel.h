// SPDX-License-Identifier: GPL-3.0-or-later
// What to do when the answer is not a recipe: treat the fault, wait, taste again, or leave everything as it is.
#pragma once

#include "desk/views.h"
#include "ui/present/session.h"

#include <QWidget>

class QVBoxLayout;

namespace staveline::ui {

/// One thing to say: "What to do", "Leave it alone; Brettanomyces clears it in time."
struct AnswerLine {
    QString head, words;
};
struct FullAnswer {
    Verdict verdict; ///< for the shape
    QString title;
    std::vector<AnswerLine> lines;
};
/// Fault first alone when there is one; else wait, taste again and hold, in this order, for the dimensions concerned.
/// Nothing when every dimension has a recipe answer.
[[nodiscard]] std::vector<FullAnswer> answersOf(const EstimatesView& estimates, const Schedule& dates,
                                                const DisplayUnits& units);

class AnswerPanel : public QWidget {
    Q_OBJECT
public:
    explicit AnswerPanel(QWidget* parent = nullptr);
    void setAnswers(const std::vector<FullAnswer>& answers);
    [[nodiscard]] QStringList words() const;

protected:
    void changeEvent(QEvent* event) override;

private:
    void build();
    void add(QVBoxLayout& column, const FullAnswer& answer);

    std::vector<FullAnswer> answers_;
    QVBoxLayout* column_;
    QWidget* page_ = nullptr;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What to do when the answer is not a recipe: treat the fault, wait, taste again, or leave everything as it is.
#pragma once

#include "desk/full_answer.h"
#include "ui/present/session.h"

#include <QWidget>

class QVBoxLayout;

namespace staveline::ui {

class AnswerPanel : public QWidget {
    Q_OBJECT
public:
    explicit AnswerPanel(QWidget* parent = nullptr);
    void setAnswers(const std::vector<desk::FullAnswer>& answers, const DisplayUnits& units);
    [[nodiscard]] QStringList words() const;

protected:
    void changeEvent(QEvent* event) override;

private:
    void build();
    void add(QVBoxLayout& column, const desk::FullAnswer& answer);

    std::vector<desk::FullAnswer> answers_;
    DisplayUnits units_;
    QVBoxLayout* column_;
    QWidget* page_ = nullptr;
};

} // namespace staveline::ui

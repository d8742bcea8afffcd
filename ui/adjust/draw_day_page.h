// SPDX-License-Identifier: GPL-3.0-or-later
// The day of the draw: what is true against what was planned, what to do about it, and what to do next.
#pragma once

#include "desk/draw_day.h"
#include "ui/present/session.h"
#include "ui/widgets/message_label.h"

#include <QWidget>

class QLabel;
class QPushButton;
class QVBoxLayout;

namespace staveline::ui {

class DrawDayPage : public QWidget {
    Q_OBJECT
public:
    explicit DrawDayPage(Session& session, QWidget* parent = nullptr);
    void setVessel(const facts::VesselName& vessel); ///< reads the desk
    [[nodiscard]] QStringList words() const;         ///< every line of the page
    [[nodiscard]] QPushButton& tasteButton() const { return *taste_; }
    [[nodiscard]] QPushButton& drawButton() const { return *draw_; }

Q_SIGNALS:
    void tasteAsked();
    void drawAsked();

private:
    void build(const desk::DrawDayView& view);
    void addLitres(QVBoxLayout& column, const desk::DrawDayView& view);
    void addScores(QVBoxLayout& column, const desk::DrawDayView& view);
    void addMessages(QVBoxLayout& column, const QString& title, const std::vector<Message>& messages,
                     MessageLabel::Weight weight);
    void addLine(QVBoxLayout& column, const QString& what, const QString& words);
    void addHead(QVBoxLayout& column, const QString& words);

    Session& session_;
    QVBoxLayout* column_;
    QWidget* page_ = nullptr;
    MessageLabel* message_;
    QPushButton* taste_;
    QPushButton* draw_;
};

} // namespace staveline::ui

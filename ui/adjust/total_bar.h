// SPDX-License-Identifier: GPL-3.0-or-later
// What all tried values do together, and the two things to do with them: take them back, or adopt them.
#pragma once

#include "advice/board.h"
#include "ui/adjust/trial_runner.h"
#include "ui/present/session.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace staveline::ui {

class MessageLabel;

class TotalBar : public QWidget {
    Q_OBJECT
public:
    explicit TotalBar(Session& session, QWidget* parent = nullptr);
    void setTrial(const QString& name, const advice::Trial& trial);
    void setTogether(const std::vector<Message>& findings); ///< what belongs to no single lever
    void clear();
    /// `why` stands beside the button while it is off, unless it stands on the page already.
    void setAdoptable(bool can, const QString& why, bool saidAbove = false);
    [[nodiscard]] QString words() const;
    [[nodiscard]] QString findings() const;
    [[nodiscard]] QString whyNot() const;
    [[nodiscard]] QPushButton& adoptButton() const { return *adopt_; }

Q_SIGNALS:
    void resetAsked();
    void adoptAsked();

private:
    Session& session_;
    QLabel* total_;
    QLabel* why_;
    MessageLabel* findings_;
    QPushButton* reset_;
    QPushButton* adopt_;
};

} // namespace staveline::ui

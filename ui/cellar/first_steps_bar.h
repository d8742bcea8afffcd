// SPDX-License-Identifier: GPL-3.0-or-later
// The first hour with a new book: the steps that lead to the first advice, in a row, with what is done ticked. Each
// leads to the page where it is taken; nothing has to be done in this order.
#pragma once

#include "desk/first_steps.h"
#include "ui/present/session.h"

#include <QWidget>

class QLabel;
class QPushButton;

namespace staveline::ui {

class FirstStepsBar : public QWidget {
    Q_OBJECT
public:
    explicit FirstStepsBar(Session& session, QWidget* parent = nullptr);
    /// Empty: no vessel yet.
    void showVessel(const facts::VesselName& vessel);
    /// Put away until it is asked for again.
    void setAway(bool away);
    void recall();                       ///< asked for: it shows, also where the book is no longer new
    [[nodiscard]] QString words() const; ///< what comes next
    [[nodiscard]] QPushButton& step(desk::FirstStep step) const { return *steps_[static_cast<std::size_t>(step)]; }
    [[nodiscard]] QPushButton& close() const { return *close_; }

Q_SIGNALS:
    void asked(staveline::desk::FirstStep step);
    void putAway();

protected:
    void changeEvent(QEvent* event) override;

private:
    void refresh();
    void tick(desk::FirstStep step, bool done, bool next);

    Session& session_;
    facts::VesselName vessel_;
    bool away_ = false;
    bool wasNew_ = false; ///< the book was, while it is open: that all is done is said too
    std::array<QPushButton*, desk::firstStepsInOrder.size()> steps_{};
    QPushButton* close_;
    QLabel* words_;
};

} // namespace staveline::ui

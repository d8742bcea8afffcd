// SPDX-License-Identifier: GPL-3.0-or-later
// What else the adviser has to say, and on request what would turn each verdict into another.
#pragma once

#include "ui/adjust/advice_runner.h"
#include "ui/present/session.h"

#include <QWidget>

class QPushButton;

namespace staveline::ui {

class MoreNotes : public QWidget {
    Q_OBJECT
public:
    explicit MoreNotes(Session& session, QWidget* parent = nullptr);
    void setAnswer(const Answer& answer);
    void clear();
    [[nodiscard]] QStringList words() const;       ///< the notes
    [[nodiscard]] QStringList changeWords() const; ///< what would change it

Q_SIGNALS:
    void explainAsked(const Origin& origin);

private:
    QWidget* makeList(const std::vector<Message>& messages, const QString& empty);

    Session& session_;
    QPushButton* change_;
    QWidget* notes_ = nullptr;
    QWidget* changes_ = nullptr;
};

} // namespace staveline::ui

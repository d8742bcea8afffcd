// SPDX-License-Identifier: GPL-3.0-or-later
// One dimension: its verdict in a word, a shape and a sentence, above its timeline.
#pragma once

#include "tasting/verdict.h"
#include "ui/present/session.h"

#include <QWidget>

class QLabel;

namespace staveline::ui {

class LinkedLabel;
class TargetTimeline;

class VerdictColumn : public QWidget {
    Q_OBJECT
public:
    explicit VerdictColumn(Dimension dimension, QWidget* parent = nullptr);
    void setVerdict(const tasting::Verdict& verdict, const DisplayUnits& units);
    void setSides(const QString& words); ///< of funk: spice and horse; empty: none
    [[nodiscard]] TargetTimeline& timeline() const { return *timeline_; }
    [[nodiscard]] QString word() const;
    [[nodiscard]] QString words() const; ///< word and reason
    [[nodiscard]] LinkedLabel& reason() const { return *reason_; }

Q_SIGNALS:
    void asked(const Origin& origin);

protected:
    void changeEvent(QEvent* event) override;

private:
    void paintShape();

    Dimension dimension_;
    tasting::Verdict verdict_;
    QLabel* shape_;
    QLabel* word_;
    LinkedLabel* reason_;
    TargetTimeline* timeline_;
    QLabel* sides_;
};

} // namespace staveline::ui

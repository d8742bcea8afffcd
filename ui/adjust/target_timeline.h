// SPDX-License-Identifier: GPL-3.0-or-later
// One dimension on a small time line: sittings, today, the target window, and the coming draws. Markers differ in shape
// as well as in colour: disc tasted, square today, ring left alone, triangle proposed.
#pragma once

#include "advice/advise.h"
#include "ui/adjust/target_timeline_data.h"

#include <QWidget>

namespace staveline::ui {

enum class TimelineMark { tasted, today, alone, tried };
void paintMark(QPainter& painter, QPointF at, TimelineMark mark, const QPalette& palette, double line);

class TargetTimeline : public QWidget {
    Q_OBJECT
public:
    explicit TargetTimeline(Dimension dimension, QWidget* parent = nullptr);
    void setLook(const TargetTimelineData& look);
    [[nodiscard]] const TargetTimelineData& look() const { return look_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Where a score stands, for tests.
    [[nodiscard]] double yOf(double score) const;
    /// Of the mark that stands there: "Tasted 3 May 2026: 6.2 ±0.3"; empty: none does.
    [[nodiscard]] QString wordsAt(QPointF at) const;

Q_SIGNALS:
    void tableAsked(); ///< Enter or T

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    bool event(QEvent* event) override; ///< a mark tells its day and score under the mouse

private:
    [[nodiscard]] QRectF plot() const;
    [[nodiscard]] double xOf(Day on) const; ///< of a sitting
    [[nodiscard]] double slot(double share) const;
    void paintWindow(QPainter& painter) const;
    void paintAxis(QPainter& painter) const;
    void paintTasted(QPainter& painter) const;
    void paintBands(QPainter& painter, const ForecastBands& bands, TimelineMark mark, double shift) const;
    void paintPoint(QPainter& painter, double x, const advice::Band& band, TimelineMark mark) const;

    TargetTimelineData look_;
    ScoreSpan span_;
};

/// Shapes and their words in a row.
class TimelineLegend : public QWidget {
    Q_OBJECT
public:
    explicit TimelineLegend(QWidget* parent = nullptr);
    void setTriedName(const QString& name); ///< empty: nothing is tried
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] std::vector<std::pair<TimelineMark, QString>> entries() const;
    QString tried_;
};

} // namespace staveline::ui

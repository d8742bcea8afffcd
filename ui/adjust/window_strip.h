// SPDX-License-Identifier: GPL-3.0-or-later
// One dimension on a small time line: sittings, today, the target window, and the coming draws. Markers differ in shape
// as well as in colour: disc tasted, square today, ring left alone, triangle proposed.
#pragma once

#include "advice/advise.h"
#include "ui/adjust/strip_look.h"

#include <QWidget>

namespace staveline::ui {

enum class StripMark { tasted, today, alone, tried };
void paintMark(QPainter& painter, QPointF at, StripMark mark, const QPalette& palette, double line);

class WindowStrip : public QWidget {
    Q_OBJECT
public:
    explicit WindowStrip(Dimension dimension, QWidget* parent = nullptr);
    void setLook(const StripLook& look);
    [[nodiscard]] const StripLook& look() const { return look_; }
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;
    /// Where a score stands, for tests.
    [[nodiscard]] double yOf(double score) const;

Q_SIGNALS:
    void tableAsked(); ///< Enter or T

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] QRectF plot() const;
    [[nodiscard]] double xOf(Day on) const; ///< of a sitting
    [[nodiscard]] double slot(double share) const;
    void paintWindow(QPainter& painter) const;
    void paintAxis(QPainter& painter) const;
    void paintTasted(QPainter& painter) const;
    void paintCourse(QPainter& painter, const StripCourse& course, StripMark mark, double shift) const;
    void paintPoint(QPainter& painter, double x, const Band& band, StripMark mark) const;

    StripLook look_;
    ScoreSpan span_;
};

/// Shapes and their words in a row.
class StripLegend : public QWidget {
    Q_OBJECT
public:
    explicit StripLegend(QWidget* parent = nullptr);
    void setTriedName(const QString& name); ///< empty: nothing is tried
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    [[nodiscard]] std::vector<std::pair<StripMark, QString>> entries() const;
    QString tried_;
};

} // namespace staveline::ui

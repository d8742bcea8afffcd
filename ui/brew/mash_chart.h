// SPDX-License-Identifier: GPL-3.0-or-later
// The mash as temperature over time, and under it what the model says becomes of the grain. Rests are moved in it.
#pragma once

#include "brewing/refill_beer.h"
#include "quantity/text.h"

#include <QWidget>

#include <array>
#include <vector>

class QPainter;

namespace staveline::ui {

class RestHandle;

struct MashLook {
    std::vector<brewing::MashStep> rests;
    CelsiusPerMinute rate{10}; ///< between rests
    QString early, late;       ///< grain by name, as it goes in; empty: none
    brewing::MashTrace trace;
    bool current = true; ///< the curves are of these rests; otherwise of the last ones that can be mashed
    DisplayUnits units;
};
/// When a rest begins and ends [min].
struct RestSpan {
    double from = 0, to = 0;
};
[[nodiscard]] std::vector<RestSpan> spansOf(const std::vector<brewing::MashStep>& rests, CelsiusPerMinute rate);
/// The mash in one sentence, with what the wort holds at its end.
[[nodiscard]] QString describe(const MashLook& look);

class MashChart : public QWidget {
    Q_OBJECT
public:
    explicit MashChart(QWidget* parent = nullptr);
    void setLook(const MashLook& look);
    void setLocked(bool locked);
    [[nodiscard]] const MashLook& look() const { return look_; }
    void focusRest(); ///< the first
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

    // For the handles: what a distance on the screen means.
    [[nodiscard]] double minutesPerPixel() const;
    [[nodiscard]] double degreesPerPixel() const;
    /// Moves a rest between its neighbours' temperatures and within what a mash takes.
    void move(std::size_t rest, brewing::MashStep to);
    void release();

Q_SIGNALS:
    void restMoved(int rest, double celsius, double minutes);
    void restReleased(); ///< the move is finished

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    struct Panel {
        QString title, end; ///< "ferulic acid, mg/L"; its last value with its unit
        const std::vector<double>* values;
        double top; ///< of its scale
        double scale;
    };
    [[nodiscard]] std::array<Panel, 4> panels() const;
    [[nodiscard]] QRectF plot() const; ///< of the temperature
    [[nodiscard]] QRectF panelRect(std::size_t index) const;
    [[nodiscard]] double x(double minute) const;
    [[nodiscard]] double y(double celsius) const;
    void place(); ///< handles
    void chooseSpan();
    void paintGrid(QPainter& painter) const;
    void paintTemperature(QPainter& painter) const;
    void paintHanging(QPainter& painter, double minute, const QString& words, int row) const;
    void paintPanel(QPainter& painter, const Panel& panel, const QRectF& box) const;

    MashLook look_;
    std::vector<RestSpan> spans_;
    std::vector<RestHandle*> handles_;
    double span_ = 60; ///< minutes drawn; stays while a rest is moved
    bool moving_ = false;
};

/// A rest in the drawing: Up and Down move its temperature, Left and Right its minutes, Shift by more.
class RestHandle : public QWidget {
    Q_OBJECT
public:
    RestHandle(std::size_t rest, MashChart& chart);
    void show(const brewing::MashStep& step, const DisplayUnits& units);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    [[nodiscard]] Celsius warmer(double steps) const;  ///< by half degrees C, or whole degrees F
    [[nodiscard]] bool atEnd(const QPointF& at) const; ///< where minutes are dragged

    std::size_t rest_;
    MashChart& chart_;
    brewing::MashStep step_;
    DisplayUnits units_;
    struct Drag {
        QPointF from;
        brewing::MashStep step;
        bool minutes = false;
    };
    std::optional<Drag> drag_;
};

} // namespace staveline::ui

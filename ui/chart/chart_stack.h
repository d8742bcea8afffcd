// SPDX-License-Identifier: GPL-3.0-or-later
// The charts of a vessel, one above the other on one time axis, with one cursor through all of them. Keys: Left and
// Right to the last and next event, Ctrl with them a year, Home and End, + and -, Shift with Left and Right through
// time, 0 for all of it, Up and Down through the panels.
#pragma once

#include "ui/chart/chart.h"

#include <QImage>
#include <QSet>
#include <QWidget>

class QScrollArea;
class QVBoxLayout;

namespace staveline::ui {

class PanelView;
struct ChartStyle;
class EventTimeline;

class ChartStack : public QWidget {
    Q_OBJECT
public:
    explicit ChartStack(QWidget* parent = nullptr);
    ~ChartStack() override;
    /// Span and cursor stay when the subject does and they still lie within it.
    void setData(const ChartData& chartData);
    [[nodiscard]] const ChartData& chartData() const { return chartData_; }

    void setSpan(const TimeSpan& span); ///< cut to what there is
    [[nodiscard]] const TimeSpan& span() const { return span_; }
    void moveCursor(Day day); ///< the span follows
    [[nodiscard]] Day cursorDay() const { return cursor_; }
    /// What happened at the cursor, and what each open panel says there.
    [[nodiscard]] QString cursorWords() const;

    void toTop(); ///< scrolls to the first chart
    void setOpen(const QString& panel, bool open);
    [[nodiscard]] bool isOpen(const QString& panel) const { return !folded_.contains(panel); }
    [[nodiscard]] const std::vector<PanelView*>& panels() const { return panels_; }

    /// The open panels on one sheet in light colours, whatever the window's.
    [[nodiscard]] QImage picture(double scale) const;
    [[nodiscard]] QImage printed(double scale) const; ///< the same on white
    [[nodiscard]] QByteArray svg() const;

Q_SIGNALS:
    void cursorMoved(bool byKeyboard);
    void spanChanged();
    void panelsChanged(); ///< one was folded or opened

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void rebuild();
    void placeCursor(Day day, bool byKeyboard);
    void step(int by); ///< stops
    bool cursorKey(QKeyEvent& event);
    bool spanKey(QKeyEvent& event);
    bool scrollKey(QKeyEvent& event);
    void zoom(double factor);
    void pan(double part);
    void moveSpan(const TimeSpan& span, bool byKeyboard); ///< the cursor comes along
    [[nodiscard]] QImage sheet(double scale, const ChartStyle& style) const;
    [[nodiscard]] ChartData sheetData() const; ///< of what is open

    ChartData chartData_;
    std::vector<Day> stops_;
    TimeSpan span_;
    Day cursor_{};
    QSet<QString> folded_;
    QScrollArea* scroll_;
    QVBoxLayout* column_ = nullptr;
    EventTimeline* timeline_;
    std::vector<PanelView*> panels_;
};

} // namespace staveline::ui

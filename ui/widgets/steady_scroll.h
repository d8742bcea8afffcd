// SPDX-License-Identifier: GPL-3.0-or-later
// Scrolls up and down only. What has the focus stays where it is on the screen when something above it comes or goes:
// nothing jumps under the pointer.
#pragma once

#include <QPointer>
#include <QScrollArea>

namespace staveline::ui {

class SteadyScroll : public QScrollArea {
    Q_OBJECT
public:
    /// `page` is shown in it, or what `setWidget` gives it; its own frame and focus stay out of the way.
    SteadyScroll(QWidget* page, QWidget* parent);
    ~SteadyScroll() override;
    void toTop();
    /// As high as its page asks where there is room for it, and never lower than a few lines.
    void fitPage();
    /// As high as its page, whatever the room: it is inside something that scrolls.
    void setWhole(bool whole);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void follow(QWidget*, QWidget* focus);
    void note();   ///< where the focus is seen
    void settle(); ///< puts it back there
    [[nodiscard]] int pageHeight() const;

    QPointer<QWidget> held_;
    int seenAt_ = 0;
    bool settling_ = false, fits_ = false, whole_ = false;
};

} // namespace staveline::ui

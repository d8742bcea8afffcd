// SPDX-License-Identifier: GPL-3.0-or-later
// While someone types, the keys of some actions stay with the field.
#pragma once

#include <QList>
#include <QObject>
#include <QPointer>

class QAction;
class QWidget;

namespace staveline::ui {

class TypingGuard : public QObject {
    Q_OBJECT
public:
    TypingGuard(QList<QAction*> actions, QObject* parent);
    [[nodiscard]] bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void watch(QWidget* focus);

    QList<QAction*> actions_;
    QPointer<QWidget> field_; ///< that is typed into
};

} // namespace staveline::ui

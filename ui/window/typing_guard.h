// SPDX-License-Identifier: GPL-3.0-or-later
// While someone types, the keys of some actions stay with the field. Undo and redo take back the typing first, and what
// is in the book only when nothing typed is left to take back.
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
    TypingGuard(QList<QAction*> actions, const QAction& undo, const QAction& redo, QObject* parent);
    [[nodiscard]] bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void watch(QWidget* focus);

    [[nodiscard]] bool isSpent(const QKeySequence& pressed) const;

    QList<QAction*> actions_;
    const QAction& undo_;
    const QAction& redo_;
    QPointer<QWidget> field_; ///< that is typed into
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/typing_guard.h"

#include <QAction>
#include <QApplication>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>

#include <algorithm>

namespace staveline::ui {
namespace {

/// Of a field, or of a choice that can be typed: it keeps the keys and hands them on.
const QLineEdit* lineOf(const QWidget* widget) {
    const auto* choice = qobject_cast<const QComboBox*>(widget);
    return choice ? choice->lineEdit() : qobject_cast<const QLineEdit*>(widget);
}

bool takesText(const QWidget* widget) {
    if (const QLineEdit* line = lineOf(widget))
        return !line->isReadOnly();
    const auto* text = qobject_cast<const QPlainTextEdit*>(widget);
    return text && !text->isReadOnly();
}

} // namespace

TypingGuard::TypingGuard(QList<QAction*> actions, const QAction& undo, const QAction& redo, QObject* parent)
    : QObject(parent), actions_(std::move(actions)), undo_(undo), redo_(redo) {
    connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* focus) { watch(focus); });
}

void TypingGuard::watch(QWidget* focus) {
    if (field_)
        field_->removeEventFilter(this);
    field_ = takesText(focus) ? focus : nullptr;
    if (field_)
        field_->installEventFilter(this);
}

/// Undo or redo, with nothing typed that it could take back.
bool TypingGuard::isSpent(const QKeySequence& pressed) const {
    const QLineEdit* line = lineOf(field_);
    const auto* text = qobject_cast<const QPlainTextEdit*>(field_);
    if (undo_.shortcuts().contains(pressed))
        return line ? !line->isUndoAvailable() : text && !text->document()->isUndoAvailable();
    if (redo_.shortcuts().contains(pressed))
        return line ? !line->isRedoAvailable() : text && !text->document()->isRedoAvailable();
    return false;
}

/// A key that a field claims goes to the field; one it has no use for is then nobody's.
bool TypingGuard::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride)
        return QObject::eventFilter(watched, event);
    const QKeySequence pressed(static_cast<QKeyEvent*>(event)->keyCombination());
    if (isSpent(pressed)) {
        event->ignore(); // the field would claim it all the same
        return true;
    }
    const bool guarded = std::any_of(actions_.begin(), actions_.end(),
                                     [&](const QAction* action) { return action->shortcut() == pressed; });
    if (guarded)
        event->accept();
    return guarded;
}

} // namespace staveline::ui

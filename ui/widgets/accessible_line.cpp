// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/accessible_line.h"

#include "ui/widgets/accessible_controls.h"

#include <QLineEdit>

namespace staveline::ui {

LineAccess::LineAccess(QLineEdit& line) : QAccessibleWidget(&line, QAccessible::EditableText) {}

QLineEdit& LineAccess::line() const {
    return *static_cast<QLineEdit*>(widget());
}

QString LineAccess::shown() const {
    return line().displayText();
}

void* LineAccess::interface_cast(QAccessible::InterfaceType type) {
    if (type == QAccessible::TextInterface)
        return static_cast<QAccessibleTextInterface*>(this);
    if (type == QAccessible::EditableTextInterface && !line().isReadOnly())
        return static_cast<QAccessibleEditableTextInterface*>(this);
    return QAccessibleWidget::interface_cast(type);
}

QString LineAccess::text(QAccessible::Text kind) const {
    if (kind == QAccessible::Value)
        return shown();
    if (kind == QAccessible::Name)
        return labelOf(line());
    if (kind == QAccessible::Description && line().accessibleDescription().isEmpty() &&
        !line().placeholderText().isEmpty())
        return line().placeholderText();
    return QAccessibleWidget::text(kind);
}

void LineAccess::setText(QAccessible::Text kind, const QString& text) {
    if (kind == QAccessible::Value)
        replaceText(0, characterCount(), text);
    else
        QAccessibleWidget::setText(kind, text);
}

QAccessible::State LineAccess::state() const {
    QAccessible::State state = QAccessibleWidget::state();
    state.editable = !line().isReadOnly();
    state.readOnly = line().isReadOnly();
    state.passwordEdit = line().echoMode() != QLineEdit::Normal;
    state.selectableText = true;
    return state;
}

void LineAccess::selection(int selectionIndex, int* startOffset, int* endOffset) const {
    const bool any = selectionIndex == 0 && line().hasSelectedText();
    *startOffset = any ? line().selectionStart() : 0;
    *endOffset = any ? line().selectionEnd() : 0;
}

int LineAccess::selectionCount() const {
    return line().hasSelectedText() ? 1 : 0;
}

void LineAccess::addSelection(int startOffset, int endOffset) {
    setSelection(0, startOffset, endOffset);
}

void LineAccess::removeSelection(int selectionIndex) {
    if (selectionIndex == 0)
        line().deselect();
}

void LineAccess::setSelection(int selectionIndex, int startOffset, int endOffset) {
    if (selectionIndex == 0)
        line().setSelection(startOffset, endOffset - startOffset);
}

int LineAccess::cursorPosition() const {
    return line().cursorPosition();
}

void LineAccess::setCursorPosition(int position) {
    line().setCursorPosition(position);
}

QString LineAccess::text(int startOffset, int endOffset) const {
    return startOffset < 0 || endOffset < startOffset ? QString() : shown().mid(startOffset, endOffset - startOffset);
}

int LineAccess::characterCount() const {
    return static_cast<int>(shown().size());
}

/// From the cursor, whose place is known, by the width of what lies between.
QRect LineAccess::characterRect(int offset) const {
    if (offset < 0 || offset > characterCount())
        return {};
    const QFontMetrics metrics = line().fontMetrics();
    const auto before = [&](int to) { return metrics.horizontalAdvance(shown().left(to)); };
    QRect place = line().inputMethodQuery(Qt::ImCursorRectangle).toRect();
    place.moveLeft(place.left() + before(offset) - before(cursorPosition()));
    place.setWidth(metrics.horizontalAdvance(shown().mid(offset, 1)));
    return {line().mapToGlobal(place.topLeft()), place.size()};
}

int LineAccess::offsetAtPoint(const QPoint& point) const {
    const QPoint at = line().mapFromGlobal(point);
    return line().rect().contains(at) ? line().cursorPositionAt(at) : -1;
}

void LineAccess::scrollToSubstring(int startIndex, int endIndex) {
    setCursorPosition(endIndex);
    setCursorPosition(startIndex);
}

QString LineAccess::attributes(int offset, int* startOffset, int* endOffset) const {
    const bool inside = offset >= 0 && offset <= characterCount();
    *startOffset = inside ? 0 : -1;
    *endOffset = inside ? characterCount() : -1;
    return {};
}

void LineAccess::deleteText(int startOffset, int endOffset) {
    replaceText(startOffset, endOffset, {});
}

void LineAccess::insertText(int offset, const QString& text) {
    replaceText(offset, offset, text);
}

/// As typing over what is selected does, with its signals and its step of undo.
void LineAccess::replaceText(int startOffset, int endOffset, const QString& text) {
    if (line().isReadOnly() || !line().isEnabled())
        return;
    line().setSelection(startOffset, endOffset - startOffset);
    if (endOffset <= startOffset)
        line().setCursorPosition(startOffset);
    line().insert(text);
    line().setModified(true);
}

} // namespace staveline::ui

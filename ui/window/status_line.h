// SPDX-License-Identifier: GPL-3.0-or-later
// The last line of the window: what happened, when it was stored, what undo would take back.
#pragma once

#include <QWidget>

class QAction;
class QLabel;
class QPushButton;

namespace staveline::ui {

class Session;

class StatusLine : public QWidget {
    Q_OBJECT
public:
    StatusLine(QAction& undo, QAction& redo, QAction& help, QWidget* parent = nullptr);
    void follow(Session* session);
    void say(const QString& words);
    [[nodiscard]] QString words() const;

private:
    void refresh();
    QPushButton* buttonFor(QAction& action, const QString& fixedWords = {});

    Session* session_ = nullptr;
    QString said_;
    QLabel* stored_;
};

/// What a brewer typed, for a menu or a button: an ampersand in it marks no key.
[[nodiscard]] QString withoutKeys(QString words);
/// The words of a menu or button as they are read there.
[[nodiscard]] QString shownWords(QString words);
/// A label that shortens its text to the room there is; the whole text stays in the tool tip and for screen readers.
[[nodiscard]] QString shortened(const QString& text, const QFont& font, int width);

} // namespace staveline::ui

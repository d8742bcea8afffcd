// SPDX-License-Identifier: GPL-3.0-or-later
// A sentence with links. Tab comes to it once and leaves it; the arrow keys go from link to link, Enter follows.
#pragma once

#include "ui/present/linked_text.h"

#include <QLabel>

namespace staveline::ui {

class LinkedLabel : public QLabel {
    Q_OBJECT
public:
    explicit LinkedLabel(QWidget* parent = nullptr);
    void say(const Message& message, const DisplayUnits& units);
    /// A sentence that leads to `origin` as a whole when none of its numbers leads anywhere.
    void say(const Message& message, const Origin& origin, const DisplayUnits& units);
    [[nodiscard]] QString words() const { return words_; } ///< without markup

Q_SIGNALS:
    void asked(const Origin& origin);

protected:
    bool focusNextPrevChild(bool next) override;
    void focusInEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    void put(const QString& html, const QString& words, bool links);

    QString words_;
};

} // namespace staveline::ui

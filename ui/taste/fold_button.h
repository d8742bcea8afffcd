// SPDX-License-Identifier: GPL-3.0-or-later
// A heading that folds what stands under it.
#pragma once

#include <QToolButton>

namespace staveline::ui {

class FoldButton : public QToolButton {
    Q_OBJECT
public:
    explicit FoldButton(bool open, QWidget* parent = nullptr);
    [[nodiscard]] bool isOpen() const { return open_; }
    void setOpen(bool open);
    void say(const QString& words, const QString& spoken);

Q_SIGNALS:
    void folded();

private:
    bool open_;
};

} // namespace staveline::ui

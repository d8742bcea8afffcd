// SPDX-License-Identifier: GPL-3.0-or-later
// A large button: a title and what it means.
#pragma once

#include <QAbstractButton>

namespace staveline::ui {

class StartChoice : public QAbstractButton {
    Q_OBJECT
public:
    StartChoice(const QString& title, const QString& words, QWidget* parent = nullptr);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override; ///< all its words

protected:
    void keyPressEvent(QKeyEvent* event) override; ///< Enter chooses, as Space does
    void paintEvent(QPaintEvent* event) override;

private:
    QString words_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What concerns the whole book, above everything: notices that stay, faults that can be put away.
#pragma once

#include <QWidget>

class QToolButton;

namespace staveline::ui {

class MessageLabel;

class NoticeBar : public QWidget {
    Q_OBJECT
public:
    explicit NoticeBar(QWidget* parent = nullptr);
    void setNotices(const QStringList& notices);
    void showFault(const QString& words);
    void clearFault();
    [[nodiscard]] QString words() const;

private:
    MessageLabel* notices_;
    MessageLabel* fault_;
    QToolButton* close_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Whether a sitting on record is learned from, and why not.
#pragma once

#include <QWidget>

class QLineEdit;
class QPushButton;

namespace staveline::ui {

class MessageLabel;

class LearnChoice : public QWidget {
    Q_OBJECT
public:
    explicit LearnChoice(QWidget* parent = nullptr);
    /// `anew`: of another sitting, where nothing half typed belongs.
    void showUse(bool learn, const std::string& reason, bool anew);
    void setReadOnly(bool readOnly);
    void finish(); ///< a reason that is typed is told of

Q_SIGNALS:
    void decided(bool learn);
    void reasoned(const QString& reason); ///< why it is not learned from

private:
    bool learn_ = true;
    MessageLabel* words_;
    QPushButton* act_;
    QLineEdit* reason_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// One step of the liquid's way: its name, litres and gravity, its fields, and what is said of it.
#pragma once

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QVBoxLayout;

namespace staveline::ui {

class MessageLabel;

class StepSection : public QWidget {
    Q_OBJECT
public:
    explicit StepSection(const QString& name, QWidget* parent = nullptr);
    /// What stands beside the name; empty parts are not shown.
    void sayAmounts(const QString& amount, const QString& more);
    /// What applies at this step: findings first, then cautions.
    void setNotes(const QStringList& findings, const QStringList& cautions);
    void addWidget(QWidget* widget);
    [[nodiscard]] MessageLabel& fault() const { return *fault_; } ///< where faults of the step are said
    [[nodiscard]] QStringList notes() const;
    [[nodiscard]] QString name() const;
    void focusFirst(); ///< its first field

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QLabel* name_;
    QLabel* amount_;
    QLabel* more_;
    MessageLabel* fault_;
    MessageLabel* findings_;
    MessageLabel* cautions_;
    QVBoxLayout* body_;
};

} // namespace staveline::ui

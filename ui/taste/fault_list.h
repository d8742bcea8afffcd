// SPDX-License-Identifier: GPL-3.0-or-later
// The faults of the sheet, each none, trace, clear or strong; what is marked shows its cause and usual action.
#pragma once

#include "ui/taste/draft.h"

#include <QRadioButton>
#include <QWidget>

class QButtonGroup;
class QGridLayout;
class QLabel;

namespace staveline::ui {

class FoldButton;

/// "none", "trace", "clear", "strong"
[[nodiscard]] QString severityWord(int severity);

/// One step of one fault. 0 to 3 choose a step, Up and Down go to the fault above or below.
class SeverityButton : public QRadioButton {
    Q_OBJECT
public:
    SeverityButton(const tasting::FaultRule& fault, int severity, QWidget* parent);

Q_SIGNALS:
    void chose(int severity);
    void moved(int by);

protected:
    void keyPressEvent(QKeyEvent* event) override;
};

class FaultList : public QWidget {
    Q_OBJECT
public:
    explicit FaultList(QWidget* parent = nullptr);
    void showDraft(const SittingDraft& draft);
    void setReadOnly(bool readOnly);
    /// All faults, or only those that are marked.
    void unfold(bool all);
    [[nodiscard]] FoldButton* header() const { return header_; }
    [[nodiscard]] SeverityButton* button(std::string_view fault, int severity) const;
    [[nodiscard]] QString wordsOf(std::string_view fault) const; ///< cause and action on show; empty: not marked

Q_SIGNALS:
    void marked(const QString& fault, int severity);

private:
    struct Row {
        const tasting::FaultRule* fault;
        QLabel* name;
        QButtonGroup* steps;
        QLabel* about;
    };
    void addHeader();
    void addRow(const tasting::FaultRule& fault);
    void makeRows(); ///< when they are first needed
    void fillRow(const Row& row, int severity);
    void arrange();
    void moveFrom(const Row& row, int by);
    [[nodiscard]] static int severityOf(const Row& row);

    QGridLayout* grid_;
    FoldButton* header_;
    std::array<QLabel*, 4> heads_{};
    std::vector<Row> rows_;
    bool readOnly_ = false;
};

} // namespace staveline::ui

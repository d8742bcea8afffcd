// SPDX-License-Identifier: GPL-3.0-or-later
// Hop additions: name, alpha acids, minutes, and the part of the bitterness each brings; grams follow.
#pragma once

#include "ui/brew/binder.h"

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace staveline::ui {

class BoilTimeline;
class RowList;
class ShareLine;

class HopEditor : public QWidget {
    Q_OBJECT
public:
    explicit HopEditor(Binder& binder, QWidget* parent = nullptr);
    void sync();
    void add();
    void remove(std::size_t addition);
    void offerNames(QLineEdit& name, std::size_t addition);
    void takeHops(std::size_t addition, const QString& name);
    void shareRest(int addition); ///< negative: the last
    [[nodiscard]] ShareLine& sum() const { return *sum_; }
    [[nodiscard]] BoilTimeline& timeline() const { return *timeline_; }
    [[nodiscard]] QString words() const; ///< of the one addition nobody named

private:
    void fillRow(std::size_t addition, QWidget& row, QHBoxLayout& layout);
    NumberField* number(std::size_t addition, const char* field, const QString& name, UnitKind unit,
                        double (*get)(const brewing::HopAddition&), void (*set)(brewing::HopAddition&, double),
                        QWidget& row);

    Binder& binder_;
    RecipeEditorModel& model_;
    BoilTimeline* timeline_;
    QLabel* usual_; ///< says what happens without an addition of one's own
    RowList* rows_;
    ShareLine* sum_;
    QPushButton* add_;
    std::vector<QLabel*> grams_;
};

} // namespace staveline::ui

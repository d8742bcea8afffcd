// SPDX-License-Identifier: GPL-3.0-or-later
// The grist: grain by name, in shares or kilograms, at the start or at the last rest.
#pragma once

#include "ui/brew/binder.h"

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace staveline::ui {

class RowList;
class ShareLine;

class GristEditor : public QWidget {
    Q_OBJECT
public:
    /// Of a plan, or of a brew as it was made: its kilograms are those weighed, and say the shares.
    enum class Of { plan, brewed };
    GristEditor(Binder& binder, Of of, QWidget* parent = nullptr);
    /// Rows and words follow what is in hand.
    void sync();
    /// In kilograms the gravity fixes the whole: what one grain takes, the others give.
    void showKilograms(bool kilograms);
    void add();
    void remove(std::size_t part);
    void shareRest(int part); ///< negative: the last
    [[nodiscard]] ShareLine& sum() const { return *sum_; }

private:
    void fillRow(std::size_t part, QWidget& row, QHBoxLayout& layout);
    void addShare(std::size_t part, QWidget& row, QHBoxLayout& layout);
    void addMass(std::size_t part, QWidget& row, QHBoxLayout& layout);
    void addWeighed(std::size_t part, QWidget& row, QHBoxLayout& layout);
    void settleMass(std::size_t part, double kilograms);
    [[nodiscard]] std::optional<Kilograms> massOf(std::size_t part) const; ///< as planned
    [[nodiscard]] std::string unused() const;
    void sayOther();

    Binder& binder_;
    RecipeEditorModel& model_;
    RowList* rows_;
    ShareLine* sum_;
    QPushButton* add_;
    QPushButton* switch_;
    Of of_;
    bool kilograms_;
    std::vector<QLabel*> other_; ///< of each row: the amount in the other unit
};

/// Fills a choice with the pantry's grain or its sugars; what is not at hand says so.
void offerGrain(ChoiceField& field, const Session& session, bool sugars);
void offerYeast(ChoiceField& field, const Session& session);
/// Typing searches anywhere in the names.
void makeSearching(ChoiceField& field);

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Ties fields to the recipe in hand: they show it, edit it, and take the faults that name them.
#pragma once

#include "advice/advise.h"
#include "quantity/parse.h"
#include "ui/brew/recipe_editor_model.h"
#include "ui/present/unit_scale.h"

#include <QPointer>

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace staveline::ui {

class ChoiceField;
class MessageLabel;
class NumberField;

/// What a field of a recipe accepts, from the description all faces share. Stored units.
[[nodiscard]] Range recipeRange(const std::string& field);

struct NumberTie {
    std::string path; ///< as faults name it: "/mash/0/temperature_c"
    QString name;     ///< for people and assistive technology
    UnitKind unit = UnitKind::none;
    std::function<std::optional<double>(const advice::Setting&)> get; ///< stored units; none: not given
    std::function<void(advice::Setting&, double)> set;                ///< makes nothing of a place that is gone
    std::optional<Range> range;                                       ///< none: as the recipe's description says
    std::function<void(advice::Setting&)> clear{};                    ///< what an empty field means; none: it is needed
};
struct WordTie {
    std::string path;
    QString name;
    std::function<std::string(const advice::Setting&)> get;
    std::function<void(advice::Setting&, const std::string&)> set;
};
struct FlagTie {
    std::string path;
    QString name;
    std::function<bool(const advice::Setting&)> get;
    std::function<void(advice::Setting&, bool)> set;
};

class Binder : public QObject {
    Q_OBJECT
public:
    explicit Binder(RecipeEditorModel& model, QObject* parent = nullptr);
    NumberField* number(const NumberTie& tie, QWidget* parent);
    /// Choosing is finished at once. An editable one also takes what is typed; an unknown word is the recipe's fault.
    void tie(ChoiceField& field, const WordTie& tie, MessageLabel* message);
    void tie(QLineEdit& field, const WordTie& tie);
    void tie(QCheckBox& field, const FlagTie& tie);
    /// Where a fault that names no field of its own is said: "/grist".
    void place(const std::string& path, MessageLabel& label);
    /// Fields whose row is gone take nothing with them.
    void forget(const std::string& pathPrefix);
    /// All fields show what is in hand; what is half typed stays unless `all`.
    void show(bool all = false);

    [[nodiscard]] NumberField* numberAt(const std::string& path) const; ///< null: no such field
    [[nodiscard]] RecipeEditorModel& model() const { return model_; }

private:
    struct Number {
        NumberTie tie;
        QPointer<NumberField> field;
    };
    struct Choice {
        WordTie tie;
        QPointer<ChoiceField> field;
        QPointer<MessageLabel> message;
    };
    struct Line {
        WordTie tie;
        QPointer<QLineEdit> field;
    };
    struct Flag {
        FlagTie tie;
        QPointer<QCheckBox> field;
    };
    struct Place {
        std::string path;
        QPointer<MessageLabel> label;
    };
    void showNumber(const Number& number, bool all) const;
    void showChoice(const Choice& choice, bool all) const;
    void take(const WordTie& tie, ChoiceField& field);
    void showFault(const Fault& fault);
    [[nodiscard]] MessageLabel* placeOf(const std::string& path) const;
    void clearPlaces();

    RecipeEditorModel& model_;
    std::vector<Number> numbers_;
    std::vector<Choice> choices_;
    std::vector<Line> lines_;
    std::vector<Flag> flags_;
    std::vector<Place> places_;
};

} // namespace staveline::ui

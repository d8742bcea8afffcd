// SPDX-License-Identifier: GPL-3.0-or-later
// What a new vessel is asked beside its own facts: what lives in it, what it is brewed on, what it should taste of.
// Each can be left for later.
#pragma once

#include "facts/fact_list.h"
#include "quantity/text.h"

#include <QWidget>

#include <array>

class QVBoxLayout;

namespace staveline::ui {

class ChoiceField;
class FactForm;
class NumberField;

class NewVesselQuestions : public QWidget {
    Q_OBJECT
public:
    explicit NewVesselQuestions(QWidget* parent = nullptr);
    /// All left for later. `kit`: the one in use, none before one is described.
    void begin(Day today, const DisplayUnits& units, const std::optional<std::string>& kit);
    void setUnits(const DisplayUnits& units);
    [[nodiscard]] bool touched() const;
    [[nodiscard]] bool usable() const;
    void complain();
    /// What was answered, about this vessel.
    [[nodiscard]] std::vector<facts::Fact> answers(const facts::VesselName& vessel) const;
    /// False: it belongs to no field here.
    bool showFault(const Fault& fault);

    [[nodiscard]] ChoiceField& choice(const char* about) const; ///< "culture", "kit" or "target"
    [[nodiscard]] FactForm& culture() const { return *culture_; }
    [[nodiscard]] FactForm& kit() const { return *kit_; }
    [[nodiscard]] NumberField& wanted(Dimension dimension) const;

Q_SIGNALS:
    void edited();

private:
    struct Question {
        const char* about;
        ChoiceField* choice = nullptr;
        QWidget* answer = nullptr;
    };
    void ask(QVBoxLayout& column, const char* about, const QString& title, QWidget* answer);
    [[nodiscard]] QWidget* makeTarget();
    void fold();
    [[nodiscard]] bool answered(const char* about) const;
    [[nodiscard]] std::vector<FactForm*> answeredForms() const;

    Day today_{};
    bool kitKnown_ = false; ///< one is recorded, for all vessels
    std::vector<Question> questions_;
    FactForm* culture_;
    FactForm* kit_;
    std::array<NumberField*, 3> wanted_{};
};

} // namespace staveline::ui

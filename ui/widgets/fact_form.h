// SPDX-License-Identifier: GPL-3.0-or-later
// A form for one fact, built from the fact's own description. Faults stand beside their field.
#pragma once

#include "ui/present/fact_fields.h"
#include "ui/widgets/offered_line.h"

#include <QWidget>

#include <set>

class QCheckBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace staveline::ui {

class ChoiceField;
class DateField;
class NumberField;

/// What the form offers to choose from, and how it shows numbers.
struct FormContext {
    Day today{};
    DisplayUnits units;
    std::vector<Offer> brews;
    QString withoutBrew; ///< what it is when none of them is chosen
    std::vector<facts::VesselName> vessels;
    std::vector<std::string> rooms;
    std::set<std::string> hidden; ///< fields left as they are
    std::string labels;           ///< "dip": labels "ui.field.dip.volume_l" win over "ui.field.volume_l"; so with words
    std::map<std::string, std::vector<Offer>> offers; ///< of text fields, beside what is typed there
};

class FactForm : public QWidget {
    Q_OBJECT
public:
    explicit FactForm(QWidget* parent = nullptr);
    void build(const facts::Fact& start, const FormContext& context);
    /// The fact as the fields now say.
    [[nodiscard]] facts::Fact fact() const;
    /// Something was typed or chosen since it was built, whether it can be used or not.
    [[nodiscard]] bool touched() const;
    /// Every field can be used; empty fields that are needed count as not usable.
    [[nodiscard]] bool usable() const;
    /// Enough is given to say what the fact would do; a slip in a field that is not needed does not matter for that.
    [[nodiscard]] bool previewable() const;
    /// Takes back faults shown from elsewhere.
    void recheck();
    /// Says beside each needed field that it is empty, and goes to the first that cannot be used.
    void complain();
    /// Shows the fault at its field; false: it belongs to none.
    bool showFault(const Fault& fault, bool goThere);
    void setUnits(const DisplayUnits& units);
    /// Words in an empty number field.
    void setHint(const std::string& field, const QString& hint);
    void focusFirst();
    /// Whether a number or words are asked for; what is not stays empty.
    void ask(const std::string& field, bool asked);

    [[nodiscard]] NumberField* number(const std::string& field) const;
    [[nodiscard]] DateField* date(const std::string& field) const;
    [[nodiscard]] QLineEdit* line(const std::string& field) const;
    [[nodiscard]] ChoiceField* choice(const std::string& field) const;

Q_SIGNALS:
    void edited();

private:
    /// One field on the screen; exactly one of the typed pointers is set.
    struct Editor {
        FieldSpec spec;
        QLabel* label = nullptr;
        QWidget* widget = nullptr;
        QWidget* frame = nullptr; ///< around both
        bool asked = true;
        QList<QWidget*> stops = {}; ///< of the Tab key; the first takes the focus
        NumberField* number = nullptr;
        DateField* date = nullptr;
        QLineEdit* line = nullptr;
        ChoiceField* choice = nullptr;
        QCheckBox* flag = nullptr;
        OfferedLine* offered = nullptr; ///< the line, where it offers something
    };
    [[nodiscard]] Editor make(const FieldSpec& spec);
    void makeNumber(Editor& editor);
    void makeDate(Editor& editor);
    void makeLine(Editor& editor);
    void makeChoice(Editor& editor);
    void fill(const FieldValues& values);
    void fill(Editor& editor, const FieldValue& value);
    void layOut();
    void orderTabs();
    [[nodiscard]] FieldValue valueOf(const Editor& editor) const;
    [[nodiscard]] const Editor* find(const std::string& field) const;
    [[nodiscard]] QString labelOf(const FieldSpec& spec) const;
    [[nodiscard]] QString wordOf(const std::string& word) const;

    facts::Fact start_;
    facts::Fact asBuilt_; ///< what the fields said before anyone typed
    FormContext context_;
    std::vector<Editor> editors_;
    /// Takes no key; holds the form's place in the Tab chain while its fields come and go.
    QWidget* anchor_;
    QWidget* page_ = nullptr;
};

} // namespace staveline::ui

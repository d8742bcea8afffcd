// SPDX-License-Identifier: GPL-3.0-or-later
// A brew as it was made: recorded on brew day, completed when it has fermented, what it means for the next draw and
// what it says of the kit. It opens at the brew that waits; what is half typed stays while another vessel is in front.
#pragma once

#include "ui/brew/flow_page.h"

#include <map>

class QBoxLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QTimer;

namespace staveline::ui {

class DateField;
class MeaningView;
class MessageLabel;
class NumberField;
class SteadyScroll;

class AsBrewedPage : public QWidget {
    Q_OBJECT
public:
    explicit AsBrewedPage(Session& session, QWidget* parent = nullptr);
    void showVessel(const facts::VesselName& vessel);
    void refresh(); ///< the book changed; a brew in hand stays as it is typed
    void record();  ///< or amends
    void begin();   ///< a new brew: the recipe and the kilograms as planned
    void takeOut(); ///< the brew in hand leaves the book; it can be undone
    /// An earlier brew, by its name; an unknown one does nothing.
    void open(const std::string& brew);
    void focusFirst();
    [[nodiscard]] FlowPage& flow() const { return *flow_; }
    [[nodiscard]] const RecipeEditorModel& model() const { return *model_; }
    [[nodiscard]] QLineEdit& name() const { return *name_; }
    [[nodiscard]] DateField& date() const { return *date_; }
    [[nodiscard]] QLineEdit& note() const { return *note_; }
    [[nodiscard]] QListWidget& list() const { return *list_; }
    [[nodiscard]] MeaningView& meaning() const { return *meaning_; }
    [[nodiscard]] QString words() const; ///< of the message shown
    void weighNow();                     ///< what the brew in hand means, at once

    [[nodiscard]] QSize minimumSizeHint() const override; ///< of the parts one above the other

Q_SIGNALS:
    void refillAsked();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    struct InHand {
        facts::BrewFact start, made;
        std::optional<facts::BrewFact> kept;
        std::optional<std::int64_t> amended;
    };
    void layOut();
    void openFirst();
    [[nodiscard]] std::optional<std::string> waiting() const;
    void putAside();
    void takeUp(const InHand& hand);
    bool recordNew(facts::BrewFact made);
    void storeInHand();
    void storeAside();
    void sayUnstored();
    void sayEfficiency();
    void useEfficiency();
    [[nodiscard]] bool touched() const;
    [[nodiscard]] bool store(const facts::BrewFact& made);
    void addFields(QWidget& panel);
    void fitList();
    void fill(const facts::BrewFact& brew);
    void fillList();
    void edited();
    void showFault(const Fault& fault);
    [[nodiscard]] bool usable() const;
    [[nodiscard]] facts::BrewFact brew() const; ///< as typed
    [[nodiscard]] std::optional<facts::BrewFact> planned() const;

    Session& session_;
    facts::VesselName vessel_;
    std::optional<facts::BrewFact> start_;      ///< what the form was filled from
    std::optional<facts::BrewFact> kept_;       ///< a new brew, half typed, while another is looked at
    std::optional<std::int64_t> amended_;       ///< row of the brew in hand; none: a new one
    std::map<facts::VesselName, InHand> aside_; ///< half typed, of vessels that are not in front
    bool filling_ = false;
    RecipeEditorModel* model_;
    QListWidget* list_;
    QWidget* form_;
    QLineEdit* name_;
    DateField* date_;
    NumberField* original_;
    NumberField* final_;
    NumberField* litres_;
    QLineEdit* note_;
    MessageLabel* message_;
    QPushButton* record_;
    QPushButton* refill_;
    QPushButton* takeOut_;
    QLabel* efficiency_;
    QPushButton* useEfficiency_;
    MeaningView* meaning_;
    QBoxLayout* top_;
    SteadyScroll* scroll_;
    FlowPage* flow_;
    QTimer* weigh_; ///< the meaning is told when typing pauses
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// One lever of the try board: name and present value, slider and number (or choice), what it does, lock.
#pragma once

#include "advice/advise.h"
#include "advice/board.h"
#include "ui/present/session.h"
#include "ui/present/unit_scale.h"

#include <QObject>

class QCheckBox;
class QGridLayout;
class QLabel;
class QSlider;

namespace staveline::ui {

class ChoiceField;
class EffectCell;
class MessageLabel;
class NumberField;

class LeverLine : public QObject {
    Q_OBJECT
public:
    static constexpr int rows = 2; ///< of the grid, for one lever
    /// Puts its widgets into the grid from `row` on.
    LeverLine(const advice::LeverRow& lever, QWidget& page, QGridLayout& grid, int row);
    void place(QGridLayout& grid, int row); ///< moves them to another

    /// The lever as it stands; what is being typed stays.
    void setLine(const advice::BoardLine& line, const Session& session, bool writable);
    void setPlanLocked(bool locked); ///< the refill is brewed: nothing is tried any more
    /// Puts the controls to a value without saying so, whatever was typed.
    void setTried(const advice::LeverValue& value);
    /// The same, but what is typed and cannot be used (yet) stays in its field.
    void follow(const advice::LeverValue& value);
    /// The field holds no number, or one that is refused.
    [[nodiscard]] bool unusable() const;
    void complain(); ///< says at the field what is wrong with it, and goes there
    [[nodiscard]] const advice::LeverValue& tried() const { return tried_; }
    [[nodiscard]] bool moved() const; ///< tried is not what is in use
    /// What a lock holds: what the brewer put in here by hand, else what is in use, whatever a plan would make of it.
    [[nodiscard]] const advice::LeverValue& toLock() const { return byHand_ ? tried_ : line_.now; }
    [[nodiscard]] const advice::BoardLine& line() const { return line_; }

    void showPart(const advice::Trial::Part* part, advice::TrialDepth depth); ///< null: nothing tried here
    void showNotes(const QStringList& cautions, const QString& price);
    void showFault(const Fault& fault, const DisplayUnits& units);
    void clearFault();

    [[nodiscard]] QSlider* slider() const { return slider_; }
    [[nodiscard]] NumberField* number() const { return number_; }
    [[nodiscard]] ChoiceField* choice() const { return choice_; }
    [[nodiscard]] QCheckBox* lock() const { return lock_; }
    [[nodiscard]] QCheckBox* missing() const { return missing_; } ///< of a yeast: not at hand
    [[nodiscard]] QString notes() const;
    [[nodiscard]] QList<QWidget*> tabStops() const;
    [[nodiscard]] QWidget* firstStop() const;

Q_SIGNALS:
    void triedChanged();
    void halfTyped(); ///< what the field holds is no value now
    void lockAsked(bool locked);
    void missingAsked(bool missing);

private:
    void makeNumber(QWidget& page);
    void makeChoice();
    void fillChoices();
    void fillSteps();
    void fromSlider(int step);
    void fromField();
    void fromChoice();
    void showEnabled();
    void showTried(); ///< slider, choice and box; not the field
    void showMissing();
    [[nodiscard]] int nearestStep(double value) const;
    [[nodiscard]] double shownAt(int step) const; ///< a step of the slider in the units shown

    advice::BoardLine line_;
    DisplayUnits units_;
    UnitKind kind_;
    advice::LeverValue tried_;
    bool byHand_ = false, planLocked_ = false;
    QLabel* name_;
    QLabel* now_;
    QWidget* control_;
    QSlider* slider_ = nullptr;
    NumberField* number_ = nullptr;
    ChoiceField* choice_ = nullptr;
    QCheckBox* missing_ = nullptr;
    EffectCell* next_;
    EffectCell* settled_;
    QCheckBox* lock_;
    MessageLabel* notes_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The try board: one line a lever. Trying writes nothing; locks and what is not at hand are recorded.
#pragma once

#include "advice/advise.h"
#include "advice/board.h"
#include "ui/adjust/lever_line.h"
#include "ui/adjust/trial_runner.h"

#include <QWidget>

class QCheckBox;
class QGridLayout;
class QLabel;

namespace staveline::ui {

class LeverBoard : public QWidget {
    Q_OBJECT
public:
    explicit LeverBoard(Session& session, QWidget* parent = nullptr);
    /// The levers as they stand; what is tried stays where it can, and so does what is half typed.
    void setJob(const JobPtr& job, bool writable);
    void leave(); ///< what is tried and typed is about a vessel that goes
    void setPrices(const std::vector<advice::RestrictionPrice>& prices);
    /// Everything as now, locks where they hold, then these values, which stand first from now on.
    void setTried(const TriedValues& values);
    /// What differs from the setting in use.
    [[nodiscard]] TriedValues tried() const;
    [[nodiscard]] TriedValues forced() const; ///< what locks alone change
    /// What is tried as moves, with what each does in `trial`.
    [[nodiscard]] std::vector<advice::Move> movesOf(const advice::Trial& trial) const;
    [[nodiscard]] const std::vector<LeverLine*>& inOrder() const { return order_; } ///< as they stand on the board

    void showTrial(const advice::Trial& trial);
    void showNotes(const DeepTrial& deep);
    /// At the lever its path names; false: at none.
    bool showFault(const Fault& fault);
    void clearFaults();
    /// The first whose field holds no usable number; null: none.
    [[nodiscard]] LeverLine* unusable() const;

    [[nodiscard]] LeverLine* line(const std::string& lever) const;
    [[nodiscard]] const std::vector<LeverLine*>& all() const { return lines_; }
    void focusFirst();

Q_SIGNALS:
    void triedChanged();
    void halfTyped();                           ///< a field holds no number now
    void failed(const staveline::Fault& fault); ///< of a lock or availability that could not be recorded

private:
    void addHead();
    void addLines();
    void movedFirst(); ///< never while a lever is in motion
    void chainTabs();
    [[nodiscard]] static advice::LeverValue valueAt(const LeverLine& line, const TriedValues& values);
    void lock(LeverLine& line, bool locked);
    void setMissing(LeverLine& line, bool missing);
    /// A box whose fact is refused goes back.
    void record(const facts::Fact& fact, QCheckBox& box);
    void showNotesAt(LeverLine& line);
    [[nodiscard]] QString priceWords(const LeverLine& line) const;

    Session& session_;
    JobPtr job_;
    QGridLayout* grid_;
    QLabel* hint_; ///< while nothing is tried
    std::vector<LeverLine*> lines_, order_;
    std::vector<advice::RestrictionPrice> prices_;
    std::map<std::string, std::vector<Message>> notes_;
};

/// "its price is 0.8: without it the best would be "cooler mash""
[[nodiscard]] QString priceSentence(const advice::RestrictionPrice& price, const DisplayUnits& units);

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What is at hand of one ingredient: an amount as it was counted, and until when it is good.
#pragma once

#include "desk/stock.h"
#include "ui/present/session.h"

#include <QWidget>

#include <span>

class QCheckBox;
class QLabel;
class QPushButton;

namespace staveline::ui {

class DateField;
class MessageLabel;
class NumberField;

class StockForm : public QWidget {
    Q_OBJECT
public:
    explicit StockForm(Session& session, QWidget* parent = nullptr);
    /// Yeasts are counted in packs, the rest is weighed.
    void show(const std::string& item, bool yeast);
    void count();
    [[nodiscard]] NumberField& mass() const { return *mass_; }
    [[nodiscard]] NumberField& packs() const { return *packs_; }
    [[nodiscard]] QCheckBox& dated() const { return *dated_; }
    [[nodiscard]] DateField& bestBefore() const { return *bestBefore_; }
    [[nodiscard]] QPushButton& button() const { return *count_; }
    [[nodiscard]] QString words() const; ///< what is there, and what is wrong

private:
    void tellStock();
    Session& session_;
    std::string item_;
    bool yeast_ = false;
    QLabel* now_;
    NumberField *mass_, *packs_;
    QLabel *massLabel_, *packsLabel_;
    QCheckBox* dated_;
    DateField* bestBefore_;
    QPushButton* count_;
    MessageLabel* message_;
};

/// "12.0 kg, counted on 3 Mar 2026, best before 1 Jun 2027"; empty: nothing is known of it.
[[nodiscard]] QString stockWords(std::span<const desk::AtHand> stock, const std::string& item, Day today,
                                 const DisplayUnits& units);

} // namespace staveline::ui

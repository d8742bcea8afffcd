// SPDX-License-Identifier: GPL-3.0-or-later
// What cannot be had for this brew: each thing with the day it is ready and what its lack costs; anything can be added.
#pragma once

#include "ui/adjust/advice_runner.h"
#include "ui/present/session.h"

#include <QWidget>

class QCheckBox;
class QPushButton;
class QVBoxLayout;

namespace staveline::ui {

class ChoiceField;
class DateField;

class StockList : public QWidget {
    Q_OBJECT
public:
    explicit StockList(Session& session, QWidget* parent = nullptr);
    void refresh(); ///< from the desk
    void setPrices(const std::vector<advice::RestrictionPrice>& prices);

    [[nodiscard]] QPushButton& add() const { return *add_; }
    [[nodiscard]] QStringList words() const; ///< one line a thing that is missing

Q_SIGNALS:
    void failed(const staveline::Fault& fault);

private:
    void fillItems();
    void addMissing();
    void recordMissing(const std::string& item, bool available, std::optional<Day> readyOn);
    [[nodiscard]] QString sentence(const facts::AvailabilityFact& fact) const;

    Session& session_;
    std::vector<advice::RestrictionPrice> prices_;
    std::vector<std::pair<std::string, std::string>> offered_; ///< id and name
    QVBoxLayout* list_;
    QWidget* lines_ = nullptr;
    ChoiceField* item_;
    QCheckBox* dated_;
    DateField* readyOn_;
    QPushButton* add_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// What is asked about a blend: two to five sources with their litres, and what it should come to. A row more is
// offered as soon as the last one names a beer.
#pragma once

#include "desk/blending.h"
#include "desk/lots.h"
#include "ui/finish/question_form.h"

#include <array>

namespace staveline::ui {

class BlendForm : public QuestionForm {
    Q_OBJECT
public:
    explicit BlendForm(Session& session, QWidget* parent = nullptr);
    /// The vessels and lots that hold beer, with their litres; `own` stands in the first row until another is chosen.
    void offer(const std::vector<desk::VesselSummary>& vessels, const std::vector<desk::LotView>& lots,
               const std::string& own);
    /// Two sources and something to aim at are given; without them there is nothing to answer.
    [[nodiscard]] bool asks() const;
    [[nodiscard]] desk::BlendRequest request() const;
    /// A source's fault goes to its row.
    bool showFault(const Fault& fault);

private:
    struct Row {
        ChoiceField* beer = nullptr;
        NumberField* litres = nullptr;
        NumberField* colour = nullptr;
    };
    void offerIn(std::size_t row, const std::vector<std::pair<std::string, Litres>>& beers, const std::string& own);
    void addRow(std::size_t index);
    void addAims();
    void showRows();
    [[nodiscard]] std::vector<std::size_t> used() const; ///< the rows that name a beer

    std::array<Row, 5> rows_;
    finishing::PerTrait<NumberField*> aims_;
    NumberField* litres_ = nullptr;
    std::map<std::string, QString> held_;
    bool offered_ = false;
};

} // namespace staveline::ui

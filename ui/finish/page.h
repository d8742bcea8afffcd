// SPDX-License-Identifier: GPL-3.0-or-later
// Finish: the beer of the vessel on its way into bottles, kegs and blends. What is asked is answered as it is typed;
// nothing of it is written.
#pragma once

#include "ui/widgets/work_page.h"

#include <array>
#include <map>

class QPushButton;
class QStackedWidget;
class QTimer;

namespace staveline::ui {

class AnswerView;
class BeerPanel;
class BlendForm;
class PackForm;
class QuestionForm;
class SteadyScroll;

class FinishPage : public WorkPage {
    Q_OBJECT
public:
    enum class Part { pack, blend };

    explicit FinishPage(Session& session, QWidget* parent = nullptr);
    void showPart(Part part);
    [[nodiscard]] Part part() const { return part_; }
    void focusWork() override;
    void answerNow(); ///< does not wait for a pause in typing

protected:
    void refresh() override; ///< what is typed stays, with its vessel

private:
    /// What is being asked about one vessel.
    struct Forms {
        PackForm* pack = nullptr;
        BlendForm* blend = nullptr;
        std::array<SteadyScroll*, 2> places{};
    };
    QWidget* makeMiddle();
    Forms makeForms();
    [[nodiscard]] Forms& forms();
    [[nodiscard]] QuestionForm& inFront();
    void answerPack(PackForm& form);
    void answerBlend(BlendForm& form);
    /// At its field, else in place of the answer.
    template <class Form> void tell(Form& form, const Fault& fault);

    Part part_ = Part::pack;
    BeerPanel* beer_;
    std::array<QPushButton*, 2> choices_{};
    QStackedWidget* places_;
    std::map<facts::VesselName, Forms> forms_;
    facts::VesselName shown_; ///< whose beer stands on the left
    AnswerView* answer_;
    QTimer* later_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// Finish: the beer of the vessel and its lots on their way into bottles, kegs and blends. What is asked is answered as
// it is typed; what happened to a lot is written in its ledger.
#pragma once

#include "desk/ledger.h"
#include "desk/lots.h"
#include "desk/packing.h"
#include "ui/print/printout.h"
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
class LotLedger;
class LotList;
class PackForm;
class PartChoice;
class QuestionForm;
class SteadyScroll;

class FinishPage : public WorkPage {
    Q_OBJECT
public:
    enum class Part { pack, blend, ledger };

    explicit FinishPage(Session& session, QWidget* parent = nullptr);
    void showPart(Part part);
    [[nodiscard]] Part part() const { return part_; }
    void focusWork() override;
    void answerNow(); ///< does not wait for a pause in typing
    void chooseLot(const facts::LotName& lot);
    void keepAsPacked(); ///< opens the entry of a filling as it was asked about
    /// The day sheet of what is asked about a filling; none: nothing that can be answered is.
    [[nodiscard]] std::optional<Printout::Made> paper() const;
    /// Its labels; none for what the guard refuses either.
    [[nodiscard]] std::optional<Printout::Made> labels() const;

Q_SIGNALS:
    void answered(); ///< or no longer

protected:
    void refresh() override;     ///< what is typed stays, with its beer
    void leaveVessel() override; ///< and the lot in view

private:
    /// What is being asked about one vessel or lot.
    struct Forms {
        PackForm* pack = nullptr;
        BlendForm* blend = nullptr;
        std::array<SteadyScroll*, 2> places{};
    };
    QWidget* makeMiddle();
    Forms makeForms();
    [[nodiscard]] Forms& forms();
    [[nodiscard]] QuestionForm& inFront();
    [[nodiscard]] const desk::LotView* lot() const; ///< in view; none: the beer of the vessel
    [[nodiscard]] std::string beer() const;         ///< the name of what is in view
    QWidget* makeLeft();
    void showBeer();
    void showLot();
    void answer(QuestionForm& form);
    void answerPack(PackForm& form);
    void answerBlend(BlendForm& form);
    /// At its field, else in place of the answer.
    template <class Form> void tell(Form& form, const Fault& fault);

    Part part_ = Part::pack;
    BeerPanel* beer_;
    LotList* list_;
    SteadyScroll* beerPlace_;
    PartChoice* choice_ = nullptr;
    QPushButton* keep_;
    QStackedWidget* places_;
    std::map<std::string, Forms> forms_; ///< by the name of the beer
    facts::VesselName shown_;            ///< whose beer stands on the left
    LotLedger* ledger_;
    std::vector<desk::LotView> lots_;
    std::vector<desk::VesselSummary> vessels_;
    std::optional<desk::PackingRequest> asked_; ///< that the answer is of
    std::optional<desk::PackingAnswer> packed_;
    AnswerView* answer_;
    QTimer* later_;
};

} // namespace staveline::ui

// SPDX-License-Identifier: GPL-3.0-or-later
// The Adjust page on the sample cellar, in a window of the size it gets.
#pragma once

#include "ui/support.h"

#include "desk/advice.h"
#include "facts/sample.h"
#include "ui/adjust/answer_panel.h"
#include "ui/adjust/draw_day_page.h"
#include "ui/adjust/effect_cell.h"
#include "ui/adjust/explanation_panel.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/more_notes.h"
#include "ui/adjust/move_table.h"
#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/score_line.h"
#include "ui/adjust/stock_list.h"
#include "ui/adjust/target_form.h"
#include "ui/adjust/target_timeline.h"
#include "ui/adjust/total_bar.h"
#include "ui/adjust/verdict_column.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/number_field.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QSlider>
#include <QTableWidget>

namespace staveline::testing {

inline constexpr Day sampleDay = day(2026, 6, 1);

struct AtAdjust {
    explicit AtAdjust(const facts::VesselName& vessel = "Plover") {
        ui::installAccessibleRoles();
        auto desk = *desk::Desk::create(book, [this] { return today; });
        REQUIRE(desk->record(*facts::sampleCellar(sampleDay)));
        session = std::make_unique<ui::Session>(std::move(desk));
        open(vessel);
    }
    void open(const facts::VesselName& vessel) {
        workPage = std::make_unique<ui::AdjustPage>(*session);
        workPage->resize(1000, 600);
        workPage->showVessel(vessel);
        workPage->show();
        REQUIRE(QTest::qWaitForWindowActive(workPage.get()));
    }
    /// Until both workers have said all.
    void settle() const {
        REQUIRE(QTest::qWaitFor([this] { return !workPage->busy(); }, 60000));
        QTest::qWait(0);
    }
    [[nodiscard]] ui::ProposalList& proposals() const { return part<ui::ProposalList>(*workPage); }
    [[nodiscard]] ui::VerdictPanel& verdicts() const { return part<ui::VerdictPanel>(*workPage); }
    [[nodiscard]] ui::ExplanationPanel& explanation() const { return part<ui::ExplanationPanel>(*workPage); }
    [[nodiscard]] ui::AnswerPanel& answers() const { return part<ui::AnswerPanel>(*workPage); }
    [[nodiscard]] ui::StockList& stock() const { return part<ui::StockList>(*workPage); }
    [[nodiscard]] ui::LeverBoard& board() const { return part<ui::LeverBoard>(*workPage); }
    [[nodiscard]] ui::TargetForm& target() const { return part<ui::TargetForm>(*workPage); }
    [[nodiscard]] ui::DrawDayPage& drawDay() const { return part<ui::DrawDayPage>(*workPage); }
    [[nodiscard]] ui::MoreNotes& notes() const { return part<ui::MoreNotes>(*workPage); }
    [[nodiscard]] QStringList moves() const { return part<ui::MoveTable>(*workPage).words(); }
    /// The head of the decision.
    [[nodiscard]] QString sentence() const { return wordsOf(*workPage, "decision"); }
    /// The sentence of the plan in view, wherever it stands.
    [[nodiscard]] QString plan() const {
        const QString working = wordsOf(*workPage, "meanwhile");
        return working.isEmpty() ? sentence() : working;
    }
    [[nodiscard]] ui::TotalBar& total() const { return part<ui::TotalBar>(*workPage); }
    [[nodiscard]] ui::LeverLine& line(const char* lever) const {
        ui::LeverLine* found = board().line(lever);
        REQUIRE(found);
        return *found;
    }
    /// Of a lever at the next draw, or if kept up: "next bitterness", "kept bitterness".
    [[nodiscard]] ui::EffectCell& effect(const QString& name) const { return part<ui::EffectCell>(board(), name); }
    void slide(const char* lever, Qt::Key key, int times = 1) const {
        for (int i = 0; i < times; ++i)
            QTest::keyClick(line(lever).slider(), key);
    }
    [[nodiscard]] desk::AdviceJob jobOf(const facts::VesselName& vessel) const {
        desk::AdviceRequest request;
        request.vessel = vessel;
        return *desk().adviceJob(request);
    }
    [[nodiscard]] const desk::Desk& desk() const { return session->desk(); }
    [[nodiscard]] std::int64_t revision() const { return desk().revision(); }

    Scratch scratch;
    Day today = sampleDay;
    std::filesystem::path book = scratch / "sample.cellar";
    std::unique_ptr<ui::Session> session;
    std::unique_ptr<ui::AdjustPage> workPage;
};

inline QPushButton* buttonSaying(QWidget& in, const QString& words) {
    for (QPushButton* button : in.findChildren<QPushButton*>())
        if (button->text() == words && button->isVisible())
            return button;
    return nullptr;
}

} // namespace staveline::testing

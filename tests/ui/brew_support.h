// SPDX-License-Identifier: GPL-3.0-or-later
// A Brew page in a window of its own, on the invented cellar of support.h.
#pragma once

#include "ui/support.h"

#include "ui/brew/as_brewed_page.h"
#include "ui/brew/grist_editor.h"
#include "ui/brew/hop_editor.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/mash_chart.h"
#include "ui/brew/mash_editor.h"
#include "ui/brew/meaning_view.h"
#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/brew/share_line.h"
#include "ui/brew/step_section.h"
#include "ui/brew/yeast_editor.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"

#include <QCheckBox>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QTableWidget>
#include <QVBoxLayout>

namespace staveline::testing {

/// Where the plan comes from and how it stands.
inline QString planWords(const ui::BrewPage& workPage) {
    const auto& plan = part<ui::PlanPage>(workPage);
    return wordsOf(plan, "origin") + ' ' + wordsOf(plan, "moves") + ' ' + wordsOf(plan, "message");
}
/// Litres and gravity of a step.
inline QString amountsOf(const ui::StepSection& step) {
    return wordsOf(step, "amount") + ' ' + wordsOf(step, "more");
}
/// The rests that can be moved in the drawing.
inline QList<ui::RestHandle*> handles(const ui::MashChart& chart) {
    QList<ui::RestHandle*> all = parts<ui::RestHandle>(chart);
    all.removeIf([](const ui::RestHandle* handle) { return handle->isHidden(); });
    return all;
}

struct AtBrew : DeskInScratch {
    explicit AtBrew(const facts::VesselName& vessel = "Heron") {
        fillCellar(*desk);
        session = std::make_unique<ui::Session>(std::move(desk));
        auto* column = new QVBoxLayout(&window);
        workPage = new ui::BrewPage(*session, prompt);
        column->addWidget(workPage);
        window.resize(1000, 600);
        workPage->showVessel(vessel);
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    /// Replaces what a field holds, as a brewer types; Enter finishes.
    static void type(QLineEdit* edit, const QString& text, bool finish = true) {
        REQUIRE(edit);
        edit->setFocus();
        edit->selectAll();
        if (text.isEmpty())
            QTest::keyClick(edit, Qt::Key_Delete);
        QTest::keyClicks(edit, text);
        if (finish)
            QTest::keyClick(edit, Qt::Key_Return);
    }
    void type(const std::string& path, const QString& text, bool finish = true) const {
        INFO(path);
        REQUIRE(field(path));
        type(field(path)->edit(), text, finish);
    }
    [[nodiscard]] brewing::Recipe recipe(const facts::VesselName& vessel = "Heron") const {
        return session->desk().planned(vessel)->setting.recipe;
    }
    [[nodiscard]] ui::PlanPage& planPage() const { return part<ui::PlanPage>(*workPage); }
    [[nodiscard]] ui::AsBrewedPage& asBrewedPage() const { return part<ui::AsBrewedPage>(*workPage); }
    [[nodiscard]] ui::FlowPage& flow() const { return planPage().flow(); }
    [[nodiscard]] ui::GristEditor& grist() const { return part<ui::GristEditor>(flow()); }
    [[nodiscard]] ui::HopEditor& hops() const { return part<ui::HopEditor>(flow()); }
    [[nodiscard]] ui::MashChart& mashChart() const { return part<ui::MashChart>(flow()); }
    [[nodiscard]] QPushButton& usualButton() const {
        return part<QPushButton>(planPage(), "Make this the usual recipe");
    }
    /// A number of the planned recipe by its path: "/original_gravity_p", "/mash/0/minutes". Null: no such field.
    [[nodiscard]] ui::NumberField* field(const std::string& path) const { return flow().fields().numberAt(path); }
    [[nodiscard]] QString origin() const { return planWords(*workPage); }
    [[nodiscard]] const brewing::BrewPlan& plan() const { return planPage().model().draft()->plan; }
    [[nodiscard]] std::int64_t revision() const { return session->desk().revision(); }

    ScriptedPrompt prompt;
    std::unique_ptr<ui::Session> session;
    QWidget window;
    ui::BrewPage* workPage = nullptr; ///< the window's
};

} // namespace staveline::testing

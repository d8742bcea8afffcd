// SPDX-License-Identifier: GPL-3.0-or-later
// A Brew station in a window of its own, on the invented cellar of support.h.
#pragma once

#include "ui/support.h"

#include "ui/brew/as_brewed_page.h"
#include "ui/brew/grist_editor.h"
#include "ui/brew/hop_editor.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/mash_editor.h"
#include "ui/brew/meaning_view.h"
#include "ui/brew/plan_page.h"
#include "ui/brew/share_line.h"
#include "ui/brew/station.h"
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

struct AtBrew : DeskInScratch {
    explicit AtBrew(const VesselName& vessel = "Heron") {
        fillCellar(*desk);
        session = std::make_unique<ui::Session>(std::move(desk));
        auto* column = new QVBoxLayout(&window);
        station = new ui::BrewStation(*session, prompt);
        column->addWidget(station);
        window.resize(1000, 600);
        station->showVessel(vessel);
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
        REQUIRE(station->field(path));
        type(station->field(path)->edit(), text, finish);
    }
    [[nodiscard]] Recipe recipe(const VesselName& vessel = "Heron") const {
        return session->desk().planned(vessel)->setting.recipe;
    }
    [[nodiscard]] ui::FlowPage& flow() const { return station->plan().flow(); }
    [[nodiscard]] const BrewPlan& plan() const { return station->plan().bench().draft()->plan; }
    [[nodiscard]] std::int64_t revision() const { return session->desk().revision(); }

    ScriptedPrompt prompt;
    std::unique_ptr<ui::Session> session;
    QWidget window;
    ui::BrewStation* station = nullptr; ///< the window's
};

} // namespace staveline::testing

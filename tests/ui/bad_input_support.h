// SPDX-License-Identifier: GPL-3.0-or-later
// The whole window on the sample cellar, for those who do everything wrong.
#pragma once

#include "ui/support.h"

#include "facts/sample.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/target_form.h"
#include "ui/adjust/total_bar.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/history/page.h"
#include "ui/taste/page.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/notice_bar.h"
#include "ui/window/status_line.h"

#include <QAction>
#include <QLabel>
#include <QLineEdit>

namespace staveline::testing {

inline const QList<ui::PageId> allPages = {ui::PageId::taste,      ui::PageId::adjust, ui::PageId::brew,
                                           ui::PageId::drawRefill, ui::PageId::finish, ui::PageId::history};

/// Every word on show in a window.
inline QString shownWords(const QWidget& in) {
    QStringList words;
    for (const QLabel* label : in.findChildren<QLabel*>())
        if (label->isVisible())
            words << label->text();
    return words.join('\n');
}

struct SampleWindow : WindowInScratch {
    SampleWindow() : WindowInScratch(false) {
        REQUIRE(window->sampleBook(book));
        cellar().showVessel("Plover");
        QTest::qWait(0);
    }
    [[nodiscard]] ui::AdjustPage& adjust() const { return cellar().adjust(); }
    [[nodiscard]] ui::ProposalList& proposals() const { return part<ui::ProposalList>(adjust()); }
    [[nodiscard]] ui::VerdictPanel& verdicts() const { return part<ui::VerdictPanel>(adjust()); }
    [[nodiscard]] ui::TotalBar& total() const { return part<ui::TotalBar>(adjust()); }
    void go(ui::PageId workPage) const {
        key(static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(workPage)), Qt::ControlModifier);
        REQUIRE(cellar().workPage() == workPage);
    }
    void waitForAdvice() const {
        REQUIRE(QTest::qWaitFor([this] { return !adjust().busy(); }, 60000));
        QTest::qWait(0);
    }
    /// Another program writes into the same file; this window sees it when it looks the next time.
    void elsewhere(const std::string& json) const {
        auto other = *desk::Desk::open(book, [this] { return today; });
        recordAll(*other, json);
    }

    // --- a field of each page, opened as a brewer would
    [[nodiscard]] QLineEdit* scoreCell() const {
        go(ui::PageId::taste);
        key(Qt::Key_T, Qt::ControlModifier | Qt::ShiftModifier);
        return cellar().taste().sheet().cell("TA1", ui::Glass::cold);
    }
    [[nodiscard]] QLineEdit* targetField() const {
        go(ui::PageId::adjust);
        adjust().openTarget(true);
        return part<ui::TargetForm>(adjust()).number("acidity")->edit();
    }
    [[nodiscard]] QLineEdit* leverField(const char* lever = "sacch_temperature") const {
        go(ui::PageId::adjust);
        return part<ui::LeverBoard>(adjust()).line(lever)->number()->edit();
    }
    [[nodiscard]] ui::NumberField& recipeNumber(const char* path) const {
        return *part<ui::PlanPage>(cellar().brew()).flow().fields().numberAt(path);
    }
    [[nodiscard]] QLineEdit* recipeField(const char* path = "/bitterness_ibu") const {
        go(ui::PageId::brew);
        return recipeNumber(path).edit();
    }
    [[nodiscard]] QLineEdit* entryField(const char* field = "volume_l") const {
        go(ui::PageId::drawRefill);
        key(Qt::Key_D, Qt::ControlModifier);
        REQUIRE(cellar().drawRefill().form().active());
        return cellar().drawRefill().form().fields().number(field)->edit();
    }
    /// Replaces what the field holds; nothing is finished.
    void put(QLineEdit* edit, const QString& text) const {
        edit->setFocus();
        edit->selectAll();
        text.isEmpty() ? QTest::keyClick(edit, Qt::Key_Delete) : QTest::keyClicks(edit, text);
    }
    void put(QLineEdit* edit, const QString& text, Qt::Key then) const {
        put(edit, text);
        QTest::keyClick(edit, then);
    }
};

} // namespace staveline::testing

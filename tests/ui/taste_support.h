// SPDX-License-Identifier: GPL-3.0-or-later
// A Taste page in a small window over the test cellar; Heron was tasted once, last autumn.
#pragma once

#include "ui/support.h"

#include "ui/taste/fault_list.h"
#include "ui/taste/fold_button.h"
#include "ui/taste/page.h"
#include "ui/taste/sitting_header.h"
#include "ui/taste/sitting_summary.h"
#include "ui/taste/taster_grid.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/theme.h"

#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

namespace staveline::testing {

inline constexpr const char* tastedBefore = R"([
  {"kind": "sitting", "vessel": "Heron", "on": "2025-11-05", "note": "Firm.", "scores": [
    {"taster": "Rook", "attribute": "AP4", "cold": 0},
    {"taster": "Rook", "attribute": "TA1", "cold": 6, "cellar": 6.5},
    {"taster": "Rook", "attribute": "TA2", "cold": 5.5, "cellar": 5.5},
    {"taster": "Rook", "attribute": "MF1", "cold": 3.5, "cellar": 4}]},
  {"kind": "target", "vessel": "Heron", "on": "2025-01-05", "acidity": 5.5, "funk": 4, "body": 4}
])";

struct AtTaste : DeskInScratch {
    explicit AtTaste(bool before = true, book::OpenMode mode = book::OpenMode::readWrite) {
        ui::installAccessibleRoles();
        fillCellar(*desk);
        if (before)
            recordAll(*desk, tastedBefore);
        if (mode == book::OpenMode::readOnly) {
            desk.reset();
            desk = *desk::Desk::open(
                book, [this] { return today; }, mode);
        }
        session = std::make_unique<ui::Session>(std::move(desk));
        workPage = new ui::TastePage(*session, prompt, &window);
        auto* column = new QVBoxLayout(&window);
        column->addWidget(workPage);
        window.resize(1000, 640);
        workPage->showVessel("Heron");
        window.show();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    [[nodiscard]] ui::ScoreCell* cell(const char* code, ui::Glass glass = ui::Glass::cold) const {
        return workPage->sheet().cell(code, glass);
    }
    [[nodiscard]] ui::FaultList& faults() const { return part<ui::FaultList>(*workPage); }
    [[nodiscard]] ui::SittingSummary& summary() const { return part<ui::SittingSummary>(*workPage); }
    [[nodiscard]] ui::ChoiceField& drawIt() const { return part<ui::ChoiceField>(*workPage, "Draw it?"); }
    [[nodiscard]] ui::ChoiceField& glasses() const { return part<ui::ChoiceField>(*workPage, "Tasted at"); }
    [[nodiscard]] QWidget* focus() const { return window.focusWidget(); }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) const {
        REQUIRE(focus());
        QTest::keyClick(focus(), key, modifiers);
    }
    void type(const char* text) const {
        REQUIRE(focus());
        QTest::keyClicks(focus(), QString::fromLatin1(text));
    }
    void at(const char* code, ui::Glass glass = ui::Glass::cold) const { cell(code, glass)->setFocus(); }
    [[nodiscard]] std::vector<desk::Filed<facts::SittingFact>> stored() const {
        return *session->desk().sittings("Heron");
    }
    /// The newest sitting in the book.
    [[nodiscard]] tasting::Sitting newest() const { return stored().front().fact.sitting; }
    [[nodiscard]] std::optional<double> storedScore(const char* code, ui::Glass glass = ui::Glass::cold,
                                                    const char* taster = "Rook") const {
        for (const tasting::Score& score : newest().scores)
            if (score.attribute == code && score.taster == taster)
                return glass == ui::Glass::cold ? score.cold : score.cellar;
        return std::nullopt;
    }
    [[nodiscard]] std::size_t count() const { return stored().size(); }

    ScriptedPrompt prompt;
    std::unique_ptr<ui::Session> session;
    QWidget window;
    ui::TastePage* workPage;
};

inline QPushButton* buttonIn(QWidget& in, const char* words) {
    for (QPushButton* button : in.findChildren<QPushButton*>())
        if (button->text() == QLatin1String(words) && button->isVisible())
            return button;
    return nullptr;
}

} // namespace staveline::testing

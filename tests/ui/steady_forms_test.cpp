// SPDX-License-Identifier: GPL-3.0-or-later
// A message comes and goes without moving a field, a button or a lock: nothing jumps under the pointer.
#include "ui/support.h"

#include "ui/adjust/lever_board.h"
#include "ui/adjust/lever_line.h"
#include "ui/adjust/page.h"
#include "ui/adjust/target_form.h"
#include "ui/brew/as_brewed_page.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/cellar/vessel_page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/taste/page.h"
#include "ui/taste/score_sheet.h"
#include "ui/taste/sitting_header.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/field_message.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/paper_style.h"
#include "ui/window/cellar_view.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLineEdit>
#include <QScrollArea>
#include <QSlider>
#include <QVBoxLayout>

#include <functional>

using namespace staveline;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

struct AtForms : WindowInScratch {
    AtForms() : WindowInScratch(false) { REQUIRE(window->sampleBook(scratch / "sample.cellar")); }
    void at(const char* vessel, PageId page) const {
        cellar().showVessel(vessel);
        cellar().showPage(page);
        settle();
    }
    void settle() const {
        REQUIRE(QTest::qWaitFor([this] { return !cellar().adjust().busy(); }, 60000));
        QTest::qWait(30);
    }
};

bool isControl(const QWidget& widget) {
    const bool part = qobject_cast<const QComboBox*>(widget.parentWidget()) != nullptr; // of a choice
    const bool hung = qobject_cast<const FieldMessage*>(widget.parentWidget()) != nullptr;
    return !part && !hung &&
           (qobject_cast<const QLineEdit*>(&widget) || qobject_cast<const QAbstractButton*>(&widget) ||
            qobject_cast<const QComboBox*>(&widget) || qobject_cast<const QSlider*>(&widget));
}

/// Where every field and button of a form stands in the window.
QMap<const QWidget*, QRect> placesIn(const QWidget& form) {
    QMap<const QWidget*, QRect> places;
    for (const QWidget* widget : form.findChildren<QWidget*>())
        if (isControl(*widget) && widget->isVisible())
            places[widget] = QRect(widget->mapTo(widget->window(), QPoint(0, 0)), widget->size());
    return places;
}

QString moved(const QMap<const QWidget*, QRect>& before, const QMap<const QWidget*, QRect>& after) {
    QStringList all;
    for (auto it = before.begin(); it != before.end(); ++it)
        if (after.contains(it.key()) && after[it.key()] != it.value())
            all << QString("%1 from %2,%3 to %4,%5")
                       .arg(accessibleName(*const_cast<QWidget*>(it.key())))
                       .arg(it.value().x())
                       .arg(it.value().y())
                       .arg(after[it.key()].x())
                       .arg(after[it.key()].y());
    return all.join("; ");
}

void write(QLineEdit& edit, const char* text) {
    edit.setFocus(Qt::OtherFocusReason);
    edit.selectAll();
    QTest::keyClicks(&edit, QString::fromLatin1(text));
    QTest::qWait(30);
}

/// Effects come up to 600 ms after a key, and later where the machine is busy: where all stands when nothing moves any
/// more.
QMap<const QWidget*, QRect> settledPlaces(const QWidget& form) {
    QMap<const QWidget*, QRect> places = placesIn(form);
    int still = 0;
    for (int looks = 0; still < 3 && looks < 100; ++looks) {
        QTest::qWait(250);
        const auto now = placesIn(form);
        still = now == places ? still + 1 : 0;
        places = now;
    }
    REQUIRE(still == 3);
    return places;
}

void expectSteady(const QWidget& form, const std::function<void()>& slip, const std::function<QString()>& words) {
    const auto before = settledPlaces(form);
    REQUIRE_FALSE(before.isEmpty());
    slip();
    const auto after = settledPlaces(form);
    CHECK_FALSE(words().isEmpty());
    CHECK(moved(before, after).toStdString() == "");
}

} // namespace

TEST_CASE("the entry form stays where it is while it complains", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::drawRefill);
    DrawRefillPage& page = s.cellar().drawRefill();
    page.begin(vessel::EntryKind::drawOff);
    FactForm& fields = page.form().fields();
    expectSteady(
        page.form(), [&] { write(*fields.number("gravity")->edit(), "1002"); },
        [&] { return fields.number("gravity")->words(); });
    fields.number("gravity")->edit()->clear();
    page.form().leave();
    page.begin(vessel::EntryKind::refill);
    expectSteady(
        page.form(), [&] { write(*page.form().fields().number("volume_l")->edit(), "400"); },
        [&] { return page.form().fields().number("volume_l")->words() + page.form().words(); });
}

TEST_CASE("the vessel's form stays where it is while it complains", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::drawRefill);
    s.cellar().changeVessel();
    VesselPage& page = part<VesselPage>(s.cellar());
    FactForm& fields = *page.findChild<FactForm*>();
    expectSteady(
        page, [&] { write(*fields.number("capacity_l")->edit(), "-4"); },
        [&] { return fields.number("capacity_l")->words(); });
}

TEST_CASE("the target's form stays where it is while it complains", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::adjust);
    s.cellar().adjust().openTarget(true);
    TargetForm& form = part<TargetForm>(s.cellar().adjust());
    expectSteady(
        form, [&] { write(*form.number("acidity")->edit(), "55"); }, [&] { return form.number("acidity")->words(); });
}

TEST_CASE("recipe and kit stay where they are while they complain", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::brew);
    PlanPage& plan = part<PlanPage>(s.cellar().brew());
    NumberField* field = nullptr;
    for (NumberField* each : parts<NumberField>(plan))
        if (each->isVisible() && each->edit()->isEnabled() && !each->edit()->isReadOnly())
            field = each;
    REQUIRE(field);
    expectSteady(
        plan, [&] { write(*field->edit(), "99999"); }, [&] { return field->words(); });
    QTest::keyClick(field->edit(), Qt::Key_Escape);
    plan.kit().unfold(true);
    QTest::qWait(30);
    FactForm& kit = part<FactForm>(plan.kit());
    NumberField* number = parts<NumberField>(kit).front();
    expectSteady(
        plan.kit(), [&] { write(*number->edit(), "-9"); }, [&] { return number->words(); });
}

TEST_CASE("the brew as made stays where it is while it complains", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::brew);
    s.cellar().brew().showAsBrewed();
    QTest::qWait(60);
    AsBrewedPage& page = part<AsBrewedPage>(s.cellar().brew());
    NumberField& gravity = part<NumberField>(page, "Original gravity, measured");
    expectSteady(
        page, [&] { write(*gravity.edit(), "2.5"); }, [&] { return gravity.words(); });
}

TEST_CASE("on the board the lever in hand stays where it is, and no number moves another", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::adjust);
    LeverBoard& board = part<LeverBoard>(s.cellar().adjust());
    LeverLine* line = board.line("gravity");
    NumberField& number = part<NumberField>(board, "Refill original gravity, number");
    expectSteady(
        board, [&] { write(*number.edit(), "3"); }, [&] { return number.words(); });
    number.setStored(1.048);
    QSlider* slider = line->slider();
    for (QWidget* at = slider; at; at = at->parentWidget())
        if (auto* area = qobject_cast<QScrollArea*>(at))
            area->ensureWidgetVisible(slider);
    slider->setFocus(Qt::MouseFocusReason);
    s.settle();
    (void)settledPlaces(board);
    const auto at = [&] { return slider->mapTo(s.window.get(), QPoint(0, 0)).y(); };
    const int before = at();
    for (int i = 0; i < 4; ++i) {
        QTest::keyClick(slider, Qt::Key_Right);
        s.settle();
        (void)settledPlaces(board);
        CHECK(at() == before); // though decision and notes above it have grown
    }
}

TEST_CASE("the sheet stays where it is while a score or a name is no good", "[ui][face][steady]") {
    const AtForms s;
    s.at("Plover", PageId::taste);
    TastePage& page = s.cellar().taste();
    ScoreCell* cell = page.sheet().cell("TA1", Glass::cold);
    expectSteady(
        page, [&] { write(*cell, "77"); }, [&] { return page.sheet().faultWords("TA1"); });
    cell->resetScore(std::nullopt);
}

TEST_CASE("a message hangs below its field, gives way to what it covers, and the field keeps a mark",
          "[ui][face][steady]") {
    QWidget window;
    auto* column = new QVBoxLayout(&window);
    auto* first = new NumberField(UnitKind::points, {0, 10}, true);
    auto* second = new NumberField(UnitKind::points, {0, 10}, true);
    column->addWidget(first);
    column->addWidget(second);
    column->addStretch();
    window.resize(300, 200);
    window.show();
    REQUIRE(QTest::qWaitForWindowActive(&window));
    const QImage before = first->edit()->grab().toImage();
    write(*first->edit(), "77");
    FieldMessage* message = nullptr;
    for (FieldMessage* each : window.findChildren<FieldMessage*>())
        if (each->isVisible())
            message = each;
    REQUIRE(message);
    CHECK(message->words() == first->words());
    CHECK(window.rect().contains(message->geometry()));
    second->edit()->setFocus();
    QTest::qWait(20);
    CHECK_FALSE(message->isVisible());
    CHECK(first->edit()->property(refusedProperty).toBool());
    CHECK(first->edit()->toolTip() == first->words());
    CHECK(first->edit()->grab().toImage() != before);
    first->edit()->setFocus();
    QTest::qWait(20);
    CHECK(message->isVisible());
    const QPoint covered = second->edit()->mapTo(&window, second->edit()->rect().center());
    REQUIRE(message->geometry().contains(covered)); // a click on the message is meant for what it covers
    QTest::mouseClick(message, Qt::LeftButton, {}, message->mapFrom(&window, covered));
    QTest::qWait(20);
    CHECK(second->edit()->hasFocus());
    CHECK_FALSE(message->isVisible());
    first->setStored(5);
    CHECK_FALSE(message->isVisible());
    CHECK_FALSE(first->edit()->property(refusedProperty).toBool());
}

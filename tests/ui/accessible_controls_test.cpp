// SPDX-License-Identifier: GPL-3.0-or-later
// What assistive technology is told of choices, buttons and sliders, and what it can do with them.
#include "ui/support.h"

#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/step_slider.h"

#include <QAccessible>
#include <QCheckBox>
#include <QFrame>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QRadioButton>
#include <QSignalSpy>
#include <QSplitter>
#include <QVBoxLayout>

using namespace staveline::ui;

namespace {

struct Page {
    QWidget window;
    Page() {
        installAccessibleRoles();
        new QVBoxLayout(&window);
    }
    template <class W, class... A> W& add(A&&... arguments) {
        auto* made = new W(std::forward<A>(arguments)...);
        window.layout()->addWidget(made);
        return *made;
    }
};

QAccessibleInterface& seen(QWidget& widget) {
    QAccessibleInterface* face = QAccessible::queryAccessibleInterface(&widget);
    REQUIRE(face);
    return *face;
}

QString nameOf(QWidget& widget) {
    return seen(widget).text(QAccessible::Name);
}

void act(QWidget& widget, const QString& action) {
    REQUIRE(seen(widget).actionInterface());
    CHECK(seen(widget).actionInterface()->actionNames().contains(action));
    seen(widget).actionInterface()->doAction(action);
    QCoreApplication::processEvents();
}

} // namespace

TEST_CASE("a choice is told by its label and its value", "[ui][accessible]") {
    Page page;
    auto& named = page.add<ChoiceField>();
    named.add("A4", "a4");
    named.add("Letter", "letter");
    CHECK(nameOf(named) == "A4");
    named.setAccessibleName("Paper");
    CHECK(nameOf(named) == "Paper, A4");
    named.setWord("letter");
    CHECK(nameOf(named) == "Paper, Letter");
    CHECK(seen(named).text(QAccessible::Value) == "Letter");
    CHECK(seen(named).role() == QAccessible::ComboBox);
    auto& labelled = page.add<ChoiceField>();
    labelled.add("not decided", "");
    page.add<QLabel>("&Draw it?").setBuddy(&labelled);
    CHECK(nameOf(labelled) == "Draw it?, not decided");
}

TEST_CASE("a choice opens and closes without a mouse, and says so", "[ui][accessible]") {
    Page page;
    auto& field = page.add<ChoiceField>();
    field.add("cold", "cold");
    page.window.show();
    CHECK(seen(field).state().expandable);
    act(field, QAccessibleActionInterface::showMenuAction());
    CHECK(seen(field).state().expanded);
    act(field, QAccessibleActionInterface::showMenuAction());
    CHECK_FALSE(seen(field).state().expanded);
    field.setEnabled(false);
    seen(field).actionInterface()->doAction(QAccessibleActionInterface::showMenuAction());
    CHECK_FALSE(seen(field).state().expanded);
}

TEST_CASE("toggling by assistive technology is a click", "[ui][accessible]") {
    Page page;
    auto& box = page.add<QCheckBox>("&lock");
    QSignalSpy clicked(&box, &QAbstractButton::clicked);
    CHECK(nameOf(box) == "lock");
    CHECK(seen(box).role() == QAccessible::CheckBox);
    CHECK_FALSE(seen(box).state().checked);
    act(box, QAccessibleActionInterface::toggleAction());
    CHECK(clicked.size() == 1);
    CHECK(seen(box).state().checked);
    box.setEnabled(false);
    CHECK_FALSE(seen(box).actionInterface()->actionNames().contains(QAccessibleActionInterface::toggleAction()));
    seen(box).actionInterface()->doAction(QAccessibleActionInterface::toggleAction());
    QCoreApplication::processEvents();
    CHECK(clicked.size() == 1);
}

TEST_CASE("buttons are told by what they do", "[ui][accessible]") {
    Page page;
    auto& plain = page.add<QPushButton>("Save && &close");
    plain.setShortcut(QKeySequence(Qt::CTRL | Qt::Key_K));
    QSignalSpy clicked(&plain, &QAbstractButton::clicked);
    CHECK(nameOf(plain) == "Save & close");
    CHECK(seen(plain).role() == QAccessible::PushButton);
    act(plain, QAccessibleActionInterface::pressAction());
    CHECK(clicked.size() == 1);
    CHECK(seen(plain).actionInterface()->keyBindingsForAction(QAccessibleActionInterface::pressAction()) ==
          QStringList{"Ctrl+K"});
    plain.setAccessibleName("Store");
    CHECK(nameOf(plain) == "Store");
    auto& switching = page.add<QPushButton>("Charts");
    switching.setCheckable(true);
    CHECK(seen(switching).role() == QAccessible::CheckBox);
    tellAsOneOfSeveral(switching);
    CHECK(seen(switching).role() == QAccessible::RadioButton);
    CHECK(seen(page.add<QRadioButton>("one of several")).role() == QAccessible::RadioButton);
    auto& opening = page.add<QPushButton>("Save as");
    QMenu menu;
    opening.setMenu(&menu);
    CHECK(seen(opening).role() == QAccessible::ButtonMenu);
    CHECK(seen(opening).state().hasPopup);
    CHECK(seen(opening).actionInterface()->actionNames().contains(QAccessibleActionInterface::showMenuAction()));
}

TEST_CASE("a slider is told by the values of its steps", "[ui][accessible]") {
    Page page;
    auto& slider = page.add<StepSlider>();
    slider.setRange(0, 4);
    slider.setAccessibleName("Saccharification temperature");
    slider.setScale([](int step) { return 62 + .5 * step; }, [] { return QStringLiteral("°C"); });
    slider.setValue(1);
    QAccessibleValueInterface* value = seen(slider).valueInterface();
    REQUIRE(value);
    CHECK(nameOf(slider) == "Saccharification temperature");
    CHECK(seen(slider).text(QAccessible::Description) == QString("62.5") + QChar(QChar::Nbsp) + "°C");
    CHECK(value->currentValue().toDouble() == 62.5);
    CHECK(value->minimumValue().toDouble() == 62);
    CHECK(value->maximumValue().toDouble() == 64);
    CHECK(value->minimumStepSize().toDouble() == .5);
    act(slider, QAccessibleActionInterface::increaseAction());
    CHECK(slider.value() == 2);
    act(slider, QAccessibleActionInterface::decreaseAction());
    CHECK(slider.value() == 1);
    value->setCurrentValue(63.6);
    CHECK(slider.value() == 3);
    slider.setEnabled(false);
    value->setCurrentValue(62);
    CHECK(slider.value() == 3);
}

TEST_CASE("frames and handles have roles of their own", "[ui][accessible]") {
    Page page;
    CHECK(seen(page.add<QFrame>()).role() == QAccessible::Grouping);
    auto& split = page.add<QSplitter>();
    split.addWidget(new QLabel("left"));
    split.addWidget(new QLabel("right"));
    CHECK(seen(*split.handle(1)).role() == QAccessible::Separator);
}

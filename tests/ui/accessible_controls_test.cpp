// SPDX-License-Identifier: GPL-3.0-or-later
// What assistive technology is told of choices, buttons and sliders, and what it can do with them.
#include "ui/support.h"

#include "ui/widgets/accessible_controls.h"
#include "ui/widgets/accessible_roles.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/step_slider.h"

#include <QAccessible>
#include <QCheckBox>
#include <QFrame>
#include <QLabel>
#include <QLineEdit>
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

TEST_CASE("a line of text is told and can be read by its parts", "[ui][accessible]") {
    Page page;
    auto& line = page.add<QLineEdit>("0.5 points");
    page.add<QLabel>("&Drawn").setBuddy(&line);
    line.setPlaceholderText("plan 79");
    CHECK(seen(line).role() == QAccessible::EditableText);
    CHECK(nameOf(line) == "Drawn");
    CHECK(seen(line).text(QAccessible::Description) == "plan 79");
    CHECK(seen(line).text(QAccessible::Value) == "0.5 points");
    line.setAccessibleName("Drawn in L");
    line.setAccessibleDescription("half of it");
    CHECK(nameOf(line) == "Drawn in L");
    CHECK(seen(line).text(QAccessible::Description) == "half of it");
    QAccessibleTextInterface* text = seen(line).textInterface();
    REQUIRE(text);
    CHECK(text->characterCount() == 10);
    CHECK(text->text(4, 10) == "points");
    CHECK(text->text(4, 2).isEmpty());
    int from = 0, to = 0;
    CHECK(text->textAtOffset(5, QAccessible::WordBoundary, &from, &to) == "points");
    CHECK(from == 4);
    text->setSelection(0, 0, 3);
    CHECK(line.selectedText() == "0.5");
    text->selection(0, &from, &to);
    CHECK(from == 0);
    CHECK(to == 3);
    CHECK(text->selectionCount() == 1);
    text->removeSelection(0);
    CHECK(text->selectionCount() == 0);
    text->setCursorPosition(4);
    CHECK(text->cursorPosition() == 4);
    text->attributes(3, &from, &to);
    CHECK(to == 10);
}

TEST_CASE("the place of a character leads back to it", "[ui][accessible]") {
    Page page;
    auto& line = page.add<QLineEdit>("1.048");
    page.window.show();
    QAccessibleTextInterface* text = seen(line).textInterface();
    REQUIRE(text);
    for (int offset = 0; offset < text->characterCount(); ++offset) {
        const QRect place = text->characterRect(offset);
        CHECK(seen(line).rect().contains(place.center()));
        CHECK(std::abs(text->offsetAtPoint(place.center()) - offset) <= 1);
    }
    CHECK(text->characterRect(0).left() < text->characterRect(4).left());
    CHECK(text->characterRect(99).isNull());
    CHECK(text->offsetAtPoint({-5000, -5000}) == -1);
}

TEST_CASE("what assistive technology enters counts as typed", "[ui][accessible]") {
    Page page;
    auto& line = page.add<QLineEdit>("60");
    QSignalSpy typed(&line, &QLineEdit::textEdited);
    QAccessibleEditableTextInterface* text = seen(line).editableTextInterface();
    REQUIRE(text);
    text->replaceText(0, 2, "61");
    CHECK(line.text() == "61");
    CHECK(typed.size() == 1);
    CHECK(line.isModified());
    text->insertText(2, ".5");
    CHECK(line.text() == "61.5");
    text->deleteText(2, 4);
    CHECK(line.text() == "61");
    CHECK(typed.size() == 3);
    seen(line).setText(QAccessible::Value, "70");
    CHECK(line.text() == "70");
    CHECK(typed.size() == 4);
    line.setEnabled(false);
    text->insertText(0, "9");
    CHECK(line.text() == "70");
    auto& fixed = page.add<QLineEdit>("stands");
    fixed.setReadOnly(true);
    CHECK_FALSE(seen(fixed).editableTextInterface());
    CHECK(seen(fixed).state().readOnly);
    auto& hidden = page.add<QLineEdit>("secret");
    hidden.setEchoMode(QLineEdit::Password);
    CHECK(seen(hidden).text(QAccessible::Value) != "secret");
    CHECK(seen(hidden).state().passwordEdit);
}

TEST_CASE("a number entered by assistive technology is read by its field", "[ui][accessible]") {
    Page page;
    auto& field = page.add<NumberField>(staveline::UnitKind::volume, staveline::Range{0, 100}, true);
    QSignalSpy edited(&field, &NumberField::edited);
    seen(*field.edit()).editableTextInterface()->replaceText(0, 0, "61,5");
    CHECK(field.stored() == 61.5);
    CHECK(edited.size() == 1);
}

TEST_CASE("frames and handles have roles of their own", "[ui][accessible]") {
    Page page;
    CHECK(seen(page.add<QFrame>()).role() == QAccessible::Grouping);
    auto& split = page.add<QSplitter>();
    split.addWidget(new QLabel("left"));
    split.addWidget(new QLabel("right"));
    CHECK(seen(*split.handle(1)).role() == QAccessible::Separator);
}

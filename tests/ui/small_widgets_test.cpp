// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/support.h"

#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/message_label.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/window/typing_guard.h"

#include <QAbstractItemView>
#include <QAction>
#include <QComboBox>
#include <QHelpEvent>
#include <QLineEdit>
#include <QStyleOptionComboBox>
#include <QToolTip>
#include <QVBoxLayout>

using namespace staveline;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

void sendWheel(QWidget& widget) {
    QWheelEvent wheel(QPointF(4, 4), QPointF(4, 4), QPoint(0, 0), QPoint(0, -120), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&widget, &wheel);
}

} // namespace

TEST_CASE("a date is typed as year-month-day and read back in words", "[ui][date]") {
    DateField field(day(2026, 3, 2));
    field.edit()->clear();
    QTest::keyClicks(field.edit(), QStringLiteral("2026-02-27"));
    REQUIRE(field.day());
    CHECK(*field.day() == day(2026, 2, 27));
    CHECK(testing::wordsOf(field, "read back") == QStringLiteral("Fri 27 Feb 2026, 3 days ago"));
}

TEST_CASE("what is no day is said and not kept", "[ui][date][bad]") {
    DateField field(day(2026, 3, 2));
    for (const char* text : {"2026-02-30", "3/2/2026", "yesterday", "2026-3", ""}) {
        field.edit()->clear();
        QTest::keyClicks(field.edit(), QString::fromLatin1(text));
        field.edit()->textEdited(field.edit()->text());
        INFO(text);
        CHECK_FALSE(field.day());
        CHECK_FALSE(field.words().isEmpty());
    }
}

TEST_CASE("arrow keys move a date by days and months", "[ui][date]") {
    DateField field(day(2026, 3, 31));
    QTest::keyClick(field.edit(), Qt::Key_Up);
    CHECK(*field.day() == day(2026, 4, 1));
    QTest::keyClick(field.edit(), Qt::Key_Down);
    QTest::keyClick(field.edit(), Qt::Key_PageDown);
    CHECK(*field.day() == day(2026, 2, 28)); // the last of the month
    QTest::keyClick(field.edit(), Qt::Key_PageUp);
    CHECK(*field.day() == day(2026, 3, 28));
    CHECK(addMonths(day(2024, 1, 31), 1) == day(2024, 2, 29));
    CHECK(addMonths(day(2026, 11, 15), 3) == day(2027, 2, 15));
}

TEST_CASE("days and spans in words", "[ui][words]") {
    CHECK(dayWords(day(2026, 3, 2)) == QStringLiteral("2 Mar 2026"));
    CHECK(weekdayWords(day(2026, 3, 2)) == QStringLiteral("Mon 2 Mar 2026"));
    CHECK(distanceWords(0) == QStringLiteral("today"));
    CHECK(distanceWords(1) == QStringLiteral("tomorrow"));
    CHECK(distanceWords(-1) == QStringLiteral("yesterday"));
    CHECK(distanceWords(12) == QStringLiteral("in 12 days"));
    CHECK(distanceWords(-400) == QStringLiteral("13 months ago"));
    CHECK(spanWords(Days{1}) == QStringLiteral("1 day"));
    CHECK(spanWords(Days{91}) == QStringLiteral("91 days"));
    CHECK(spanWords(Days{92}) == QStringLiteral("3 months"));
    CHECK(spanWords(Days{1000}) == QStringLiteral("33 months"));
    CHECK(spanWords(Days{1461}) == QStringLiteral("4.0 years"));
}

TEST_CASE("a choice is not changed by the wheel and keeps words it does not know", "[ui][choice]") {
    ChoiceField field;
    field.add(QStringLiteral("Cask"), "cask");
    field.add(QStringLiteral("Keg"), "keg");
    field.show();
    field.setFocus();
    sendWheel(field);
    CHECK(field.word() == "cask");
    field.setWord("amphora");
    CHECK(field.word() == "amphora");
    field.setWord("keg");
    CHECK(field.word() == "keg");
}

TEST_CASE("a choice without room for its words ends them in dots and tells the whole", "[ui][choice]") {
    struct Look : ChoiceField {
        [[nodiscard]] QString painted() const {
            QStyleOptionComboBox option;
            initStyleOption(&option);
            return option.currentText;
        }
    } field;
    const QString words = QStringLiteral("ale yeast, clean and highly attenuative");
    field.add(words, "clean");
    field.resize(field.sizeHint());
    CAPTURE(field.width(), field.fontMetrics().horizontalAdvance(words));
    CHECK(field.painted() == words);
    field.resize(field.sizeHint().width() / 2, field.height());
    CHECK(field.painted().endsWith(QChar(0x2026)));
    CHECK(field.fontMetrics().horizontalAdvance(field.painted()) < field.width());
    field.show();
    QHelpEvent asked(QEvent::ToolTip, QPoint(), field.mapToGlobal(QPoint(2, 2)));
    QApplication::sendEvent(&field, &asked);
    CHECK(QToolTip::text() == words);
    field.showPopup();
    CHECK(field.view()->minimumWidth() >= field.fontMetrics().horizontalAdvance(words));
    field.hidePopup();
    QToolTip::hideText();
}

TEST_CASE("the pages are not changed by the wheel", "[ui][pages]") {
    UnderlinedTabs bar;
    bar.addTab(QStringLiteral("One"));
    bar.addTab(QStringLiteral("Two"));
    bar.show();
    sendWheel(bar);
    CHECK(bar.currentIndex() == 0);
    QTest::keyClick(&bar, Qt::Key_Right);
    CHECK(bar.currentIndex() == 1);
}

TEST_CASE("a message shows while it has words and is heard", "[ui][message][a11y]") {
    QWidget page;
    QVBoxLayout column(&page);
    auto* label = new MessageLabel;
    column.addWidget(label);
    page.show();
    CHECK_FALSE(label->isVisible());
    label->say(MessageLabel::Weight::fault, QStringLiteral("Too much."));
    CHECK(label->isVisible());
    CHECK(testing::accessibleName(*label) == QStringLiteral("Too much."));
    label->clear();
    CHECK_FALSE(label->isVisible());
}

TEST_CASE("a choice that can be typed into keeps the keys of typing like a field", "[ui][typing]") {
    QWidget page;
    QVBoxLayout column(&page);
    auto* choice = new QComboBox;
    choice->setEditable(true);
    column.addWidget(choice);
    QAction act, undo, redo;
    act.setShortcut(QKeySequence(Qt::CTRL | Qt::Key_D)); // no key of a field by itself
    page.addAction(&act);
    int acted = 0;
    QObject::connect(&act, &QAction::triggered, [&] { ++acted; });
    const TypingGuard guard({&act}, undo, redo, nullptr);
    page.show();
    page.activateWindow();
    REQUIRE(QTest::qWaitForWindowActive(&page));
    choice->setFocus();
    QTest::keyClick(choice, Qt::Key_D, Qt::ControlModifier);
    CHECK(acted == 0);
    choice->setEditable(false);
    choice->clearFocus();
    choice->setFocus();
    QTest::keyClick(choice, Qt::Key_D, Qt::ControlModifier);
    CHECK(acted == 1);
}

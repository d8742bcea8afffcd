// SPDX-License-Identifier: GPL-3.0-or-later
// The Draw & refill page: what an entry would do is seen before it is recorded, and all of it can be taken back.
#include "ui/parts.h"
#include "ui/support.h"

#include "desk/advice.h"
#include "ui/draw_refill/brew_offers.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/draw_refill/vessel_panel.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/date_field.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/vessel_drawing.h"
#include "ui/window/cellar_view.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::facts;
using namespace staveline::vessel;
using namespace staveline::ui;
using staveline::testing::day;

namespace {

struct AtPage : testing::DeskInScratch {
    AtPage() {
        testing::fillCellar(*desk);
        session = std::make_unique<Session>(std::move(desk));
        workPage = std::make_unique<DrawRefillPage>(*session);
        workPage->resize(1000, 640);
        workPage->showVessel("Heron");
        workPage->show();
        REQUIRE(QTest::qWaitForWindowActive(workPage.get()));
    }
    void volume(const char* text) const {
        auto* edit = workPage->form().fields().number("volume_l")->edit();
        edit->clear();
        QTest::keyClicks(edit, QString::fromLatin1(text));
    }
    [[nodiscard]] VesselDrawing& drawing() const { return testing::part<VesselDrawing>(workPage->panel()); }
    [[nodiscard]] QString levelWords() const { return testing::wordsOf(workPage->panel(), "level"); }
    [[nodiscard]] double level() const { return session->desk().vessel("Heron")->now.volume.l; }
    std::unique_ptr<Session> session;
    std::unique_ptr<DrawRefillPage> workPage;
};

QPushButton* buttonNamed(QWidget& in, const QString& words) {
    for (QPushButton* button : in.findChildren<QPushButton*>())
        if (button->text() == words && button->isVisible())
            return button;
    return nullptr;
}

} // namespace

TEST_CASE("typing a draw shows the level fall before it is recorded", "[ui][page]") {
    AtPage s;
    const double before = s.level();
    const auto revision = s.session->desk().revision();
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    CHECK(s.levelWords().contains(QChar(0x2192)));
    const VesselLook& look = s.drawing().look();
    REQUIRE(look.levelBefore);
    CHECK(look.levelBefore->l == Approx(before));
    CHECK(look.now.volume.l == Approx(before - 60));
    CHECK(s.session->desk().revision() == revision); // nothing is written by looking
    s.workPage->form().record();
    CHECK(s.level() == Approx(before - 60));
    CHECK_FALSE(s.workPage->form().active());
    CHECK_FALSE(s.drawing().look().levelBefore);
}

TEST_CASE("a draw offers a name for what is drawn, and the names it can join", "[ui][page][lots]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    auto& line = testing::part<OfferedLine>(s.workPage->form());
    CHECK(line.placeholderText() == "Heron draw 4"); // a hint: without a name the beer is not followed
    CHECK(line.text().isEmpty());
    line.setFocus();
    QTest::keyClick(&line, Qt::Key_Down);
    QWidget* offers = QApplication::activePopupWidget();
    REQUIRE(offers);
    QTest::keyClick(offers, Qt::Key_Return);
    CHECK(line.text() == "Heron draw 4");
    QTest::keyClick(&line, Qt::Key_Return);
    CHECK_FALSE(s.workPage->form().active());
    CHECK(s.session->desk().pastDraws("Heron")->front().lot == "Heron draw 4");
    s.workPage->begin(EntryKind::drawOff);
    auto& next = testing::part<OfferedLine>(s.workPage->form());
    CHECK(next.placeholderText() == "Heron draw 5");
    CHECK(next.toolTip().contains("Heron draw 4; Draw 3; Draw 2; Draw 1"));
}

TEST_CASE("a refill shows a new layer on top before it is recorded", "[ui][page]") {
    AtPage s;
    REQUIRE(s.session->record(DrawOffFact{"Heron", testing::testToday, Litres{70}, "", {}, ""}));
    const auto before = strata(s.drawing().look()).size();
    s.workPage->begin(EntryKind::refill);
    s.volume("72");
    const auto after = strata(s.drawing().look());
    CHECK(after.size() == before + 1);
    CHECK(after.front().on == testing::testToday);
}

TEST_CASE("leaving an entry leaves the vessel as it is", "[ui][page]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    QTest::keyClick(s.workPage->focusWidget(), Qt::Key_Escape);
    CHECK_FALSE(s.workPage->form().active());
    CHECK(s.levelWords().contains("of 225"));
    CHECK(s.workPage->table().hasFocus());
}

TEST_CASE("what is impossible is said at its field and nothing is written", "[ui][page][bad]") {
    AtPage s;
    const auto revision = s.session->desk().revision();
    s.workPage->begin(EntryKind::drawOff);
    s.volume("5000");
    s.workPage->form().record();
    CHECK(s.workPage->form().active());
    auto* volume = s.workPage->form().fields().number("volume_l");
    CHECK_FALSE(volume->words().isEmpty());
    CHECK(s.session->desk().revision() == revision);
    s.volume("-5");
    CHECK_FALSE(volume->words().isEmpty());
    s.volume("60");
    CHECK(volume->words().isEmpty());
    auto* date = s.workPage->form().fields().date("on");
    date->edit()->clear();
    QTest::keyClicks(date->edit(), "2019-01-01"); // before the opening
    s.workPage->form().record();
    CHECK(s.workPage->form().active());
    CHECK_FALSE(date->words().isEmpty());
    CHECK(s.session->desk().revision() == revision);
}

TEST_CASE("an empty entry is not recorded and says what is needed", "[ui][page][bad]") {
    AtPage s;
    const auto revision = s.session->desk().revision();
    s.workPage->begin(EntryKind::drawOff);
    QTest::keyClick(s.workPage->focusWidget(), Qt::Key_Return);
    CHECK(s.workPage->form().active());
    CHECK_FALSE(s.workPage->form().fields().number("volume_l")->words().isEmpty());
    CHECK(s.session->desk().revision() == revision);
}

TEST_CASE("each kind of entry is recorded from its form", "[ui][page]") {
    AtPage s;
    const auto enter = [&](EntryKind kind, const char* litres) {
        const int rows = s.workPage->model().rowCount();
        s.workPage->begin(kind);
        if (litres)
            s.volume(litres);
        else
            QTest::keyClicks(s.workPage->form().fields().number("ph")->edit(), "3,29");
        s.workPage->form().record();
        INFO(s.workPage->form().words().toStdString());
        CHECK_FALSE(s.workPage->form().active());
        CHECK(s.workPage->model().rowCount() == rows + 1);
        // Entries of one day stand in the order of the day's work, not of typing.
        bool there = false;
        for (int row = 0; row < s.workPage->model().rowCount(); ++row)
            there = there || (s.workPage->model().at(row)->kind == kind && s.workPage->model().at(row)->on == s.today);
        CHECK(there);
    };
    enter(EntryKind::reading, nullptr);
    enter(EntryKind::sample, "0.25");
    enter(EntryKind::drawOff, "61,5");
    enter(EntryKind::refill, "58");
    enter(EntryKind::topUp, "1.5");
    enter(EntryKind::dip, "205");
    s.workPage->showVessel("Teal");
    enter(EntryKind::sample, "0.1");
}

TEST_CASE("an event is begun by its key, chosen and recorded without the mouse", "[ui][page][event]") {
    testing::WindowInScratch w;
    w.window->cellar()->showVessel("Heron");
    w.key(Qt::Key_4, Qt::ControlModifier);
    const Desk& desk = w.window->session()->desk();
    const double level = desk.vessel("Heron")->now.volume.l;
    w.key(Qt::Key_H, Qt::ControlModifier);
    const DrawRefillPage& page = w.window->cellar()->drawRefill();
    REQUIRE(page.form().active());
    CHECK(w.focus() == page.form().fields().choice("what"));
    const auto revision = desk.revision();
    w.key(Qt::Key_Return); // nothing was said to have happened
    CHECK(page.form().active());
    CHECK(desk.revision() == revision);
    CHECK_FALSE(page.form().words().isEmpty());
    const FactForm& fields = page.form().fields(); // of a pitching nothing is lost, of a cleaning nothing pitched
    CHECK(fields.line("culture")->isVisible());
    CHECK_FALSE(fields.number("volume_l")->isVisible());
    w.key(Qt::Key_Down);
    w.key(Qt::Key_Down);
    CHECK_FALSE(fields.line("culture")->isVisible());
    CHECK(fields.number("volume_l")->isVisible());
    w.tabTo("Note");
    w.type("soda, two hot rinses");
    w.key(Qt::Key_Return);
    CHECK_FALSE(page.form().active());
    const LedgerLine line = desk.ledger("Heron")->lines.back();
    CHECK(line.kind == EntryKind::event);
    CHECK(std::get<EventFact>(*desk.fact(line.table, line.id)) ==
          EventFact{"Heron", testing::testToday, Happening::cleaned, "soda, two hot rinses"});
    CHECK(desk.vessel("Heron")->now.volume.l == level);
    w.key(Qt::Key_E, Qt::ControlModifier); // the line just stored is chosen
    REQUIRE(page.form().active());
    w.key(Qt::Key_Down);
    w.key(Qt::Key_Return);
    CHECK(std::get<EventFact>(*desk.fact(line.table, line.id)).what == Happening::moved);
    w.key(Qt::Key_Delete);
    CHECK_FALSE(desk.fact(line.table, line.id));
    for (int i = 0; i < 3; ++i)
        w.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.ledger("Heron")->lines.back().kind == EntryKind::refill);
    w.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(desk.ledger("Heron")->lines.back().kind == EntryKind::event);
}

TEST_CASE("a vessel without entries offers its first fill, or a takeover", "[ui][page]") {
    AtPage s;
    s.workPage->showVessel("Bittern");
    CHECK(s.workPage->table().isHidden());
    CHECK(buttonNamed(*s.workPage, "Takeover"));
    CHECK_FALSE(buttonNamed(*s.workPage, "Draw-off"));
    QPushButton* fill = buttonNamed(*s.workPage, "First fill");
    REQUIRE(fill);
    s.workPage->focusWork();
    CHECK(fill->hasFocus());
    s.workPage->begin(EntryKind::opening);
    s.volume("840");
    s.workPage->form().record();
    CHECK(s.session->desk().vessel("Bittern")->opened);
    CHECK_FALSE(buttonNamed(*s.workPage, "Takeover"));
    CHECK(buttonNamed(*s.workPage, "Refill"));
    CHECK(buttonNamed(*s.workPage, "Draw-off"));
    CHECK(s.workPage->table().isVisible());
}

TEST_CASE("amending starts from what is recorded and changes only what is typed", "[ui][page]") {
    AtPage s;
    const int row = 1; // draw 3
    s.workPage->table().selectRow(row);
    const LedgerLine line = *s.workPage->model().at(row);
    const Fact before = *s.session->desk().fact(line.table, line.id);
    s.workPage->amendSelected();
    CHECK(s.workPage->form().fields().fact() == before);
    s.volume("78.5");
    s.workPage->form().record();
    auto expected = std::get<DrawOffFact>(before);
    expected.volume = Litres{78.5};
    const LedgerLine after = *s.workPage->model().at(s.workPage->model().rowOf(line.id, line.table));
    CHECK(*s.session->desk().fact(after.table, after.id) == Fact(expected));
    s.session->undo();
    CHECK(*s.session->desk().fact(line.table, line.id) == before);
}

TEST_CASE("removing is undone without a question", "[ui][page]") {
    AtPage s;
    const auto whole = testing::fingerprint(s.session->desk());
    const int rows = s.workPage->model().rowCount();
    s.workPage->table().selectRow(4);
    s.workPage->table().setFocus();
    QTest::keyClick(&s.workPage->table(), Qt::Key_Delete);
    CHECK(s.workPage->model().rowCount() == rows - 1);
    s.session->undo();
    CHECK(s.workPage->model().rowCount() == rows);
    CHECK(testing::fingerprint(s.session->desk()) == whole);
}

TEST_CASE("what a later draw lived on is not removed, and the later draw is named", "[ui][page][bad]") {
    AtPage s;
    QStringList told;
    QObject::connect(s.session.get(), &Session::failed, s.session.get(),
                     [&](const Fault& fault) { told << s.session->words(fault); });
    const int rows = s.workPage->model().rowCount();
    s.workPage->table().selectRow(rows - 1); // the opening
    s.workPage->removeSelected();
    CHECK(s.workPage->model().rowCount() == rows);
    REQUIRE(told.size() == 1);
    CHECK(told.front().startsWith("The draw-off of "));
}

TEST_CASE("the time of an entry is typed beside its date and shown in the ledger", "[ui][page][order]") {
    AtPage s;
    const auto add = [&](const char* litres, const char* time) {
        s.workPage->begin(EntryKind::topUp);
        s.volume(litres);
        QTest::keyClicks(s.workPage->form().fields().line("at"), QString::fromLatin1(time));
        s.workPage->form().record();
    };
    add("1", "14:30");
    add("2", "9:15");
    REQUIRE_FALSE(s.workPage->form().active());
    const auto cell = [&](int row, int column) { return s.workPage->model().index(row, column).data().toString(); };
    CHECK(cell(0, LedgerModel::day).endsWith(", 14:30"));
    CHECK(cell(1, LedgerModel::day).endsWith(", 9:15"));
    CHECK(cell(1, LedgerModel::entry).contains("2.0"));
    s.workPage->table().selectRow(0);
    s.workPage->amendSelected();
    auto* time = s.workPage->form().fields().line("at");
    CHECK(time->text() == "14:30");
    time->clear();
    QTest::keyClicks(time, "8:00");
    s.workPage->form().record();
    CHECK(cell(0, LedgerModel::day).endsWith(", 9:15"));
}

TEST_CASE("an entry that does not agree is marked where it stands", "[ui][page]") {
    AtPage s;
    REQUIRE(s.session->record(Fact{DipFact{"Heron", s.session->desk().today(), Litres{30}, "stick"}}));
    QStringList findings;
    for (int row = 0; row < s.workPage->model().rowCount(); ++row)
        findings << s.workPage->model().findings(row);
    CHECK_FALSE(findings.isEmpty());
    for (const QString& finding : findings)
        CHECK_FALSE(finding.contains("{"));
    const QModelIndex first = s.workPage->model().index(0, LedgerModel::entry);
    CHECK(first.data(Qt::AccessibleDescriptionRole).isValid());
}

TEST_CASE("moving along the ledger shows the vessel as it was", "[ui][page]") {
    AtPage s;
    s.workPage->table().setFocus();
    s.workPage->table().selectRow(0);
    QTest::keyClick(&s.workPage->table(), Qt::Key_Down);
    CHECK(s.drawing().look().now.volume.l == Approx(s.workPage->model().at(1)->volumeAfter.l));
    QTest::keyClick(&s.workPage->table(), Qt::Key_Up);
    CHECK(s.drawing().look().now.volume.l == Approx(s.level()));
}

TEST_CASE("next dates stand beside the vessel", "[ui][page]") {
    AtPage s;
    QStringList words;
    for (const QLabel* label : s.workPage->panel().findChildren<QLabel*>())
        words << label->text();
    const Schedule dates = s.session->desk().vessel("Heron")->dates;
    for (const Day on : {dates.sample, dates.brew, dates.draw, dates.nextSample, dates.nextDraw})
        CHECK(words.contains(weekdayWords(on)));
}

TEST_CASE("the draw is moved beside its dates, and goes by the interval again", "[ui][page]") {
    AtPage s;
    const auto dates = [&] { return s.session->desk().vessel("Heron")->dates; };
    const Day before = dates().draw;
    auto& day = testing::part<DateField>(s.workPage->panel(), "Day of the draw");
    const auto button = [&](const QString& words) {
        for (QPushButton* each : s.workPage->panel().findChildren<QPushButton*>())
            if (each->text() == words)
                return each;
        FAIL("no button " << words.toStdString());
        return static_cast<QPushButton*>(nullptr);
    };
    CHECK_FALSE(button("Move the draw")->isEnabled()); // it is that day already
    CHECK_FALSE(button("By the interval again")->isVisible());
    day.edit()->setText("2026-13-01");
    QTest::keyClick(day.edit(), Qt::Key_Backspace);
    CHECK_FALSE(button("Move the draw")->isEnabled());
    const Day later = before + std::chrono::days{21};
    day.edit()->selectAll();
    QTest::keyClicks(day.edit(), qs(isoDay(later)));
    QTest::keyClick(day.edit(), Qt::Key_Return);
    CHECK(dates().draw == later);
    CHECK(qs(s.session->desk().undoText()) == "day of the draw of Heron");
    for (const QPushButton* each : {button("Move the draw"), button("By the interval again")})
        CHECK(each->width() >= each->minimumSizeHint().width()); // nothing of their words is cut
    button("By the interval again")->click();
    CHECK(dates().draw == before);
}

TEST_CASE("switching units rewrites the page and no stored bit", "[ui][page]") {
    AtPage s;
    const auto whole = testing::fingerprint(s.session->desk());
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60.123");
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    units.temperature = DisplayUnits::Temperature::fahrenheit;
    s.session->setUnits(units);
    CHECK(s.levelWords().contains("gal"));
    CHECK(s.workPage->form().fields().number("volume_l")->edit()->text() == "15.883");
    CHECK(s.workPage->form().fields().number("volume_l")->stored() == 60.123);
    s.session->setUnits({});
    s.workPage->form().leave();
    CHECK(testing::fingerprint(s.session->desk()) == whole);
}

TEST_CASE("a book for reading only shows everything and offers no entry", "[ui][page]") {
    testing::DeskInScratch made;
    testing::fillCellar(*made.desk);
    made.desk.reset();
    Session session(*Desk::open(
        made.book, [] { return testing::testToday; }, book::OpenMode::readOnly));
    DrawRefillPage workPage(session);
    workPage.showVessel("Heron");
    workPage.show();
    CHECK(workPage.model().rowCount() == 9);
    for (const QPushButton* button : workPage.findChildren<QPushButton*>())
        if (button->isVisible())
            CHECK_FALSE(button->isEnabled());
    workPage.begin(EntryKind::drawOff);
    CHECK_FALSE(workPage.form().active());
    workPage.table().selectRow(0);
    workPage.removeSelected();
    CHECK(workPage.model().rowCount() == 9);
}

TEST_CASE("what another program writes appears, and an entry in hand stays", "[ui][page]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    s.volume("33");
    auto other = *Desk::open(s.book, [] { return testing::testToday; });
    testing::recordAll(*other, R"({"kind": "dip", "vessel": "Heron", "on": "2026-03-01", "volume_l": 201})");
    s.session->poll();
    CHECK(s.workPage->model().at(0)->kind == EntryKind::dip);
    CHECK(s.workPage->form().active());
    CHECK(s.workPage->form().fields().number("volume_l")->stored() == 33.0);
    CHECK(s.drawing().look().levelBefore);
}

TEST_CASE("what is planned stands in the empty field and is not filled in", "[ui][page]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    auto* volume = s.workPage->form().fields().number("volume_l");
    const double planned = s.session->desk().setting("Heron")->draw.l;
    CHECK(volume->edit()->placeholderText() == "plan " + QString::number(planned, 'f', 1));
    CHECK_FALSE(volume->stored());
    DisplayUnits units;
    units.volume = DisplayUnits::Volume::usGallon;
    s.session->setUnits(units);
    CHECK(volume->edit()->placeholderText() == "plan " + QString::number(planned / 3.785411784, 'f', 1));
    s.workPage->begin(EntryKind::refill);
    CHECK(s.workPage->form().fields().number("volume_l")->edit()->placeholderText().startsWith("plan "));
    s.workPage->begin(EntryKind::dip);
    CHECK(s.workPage->form().fields().number("volume_l")->edit()->placeholderText().isEmpty());
}

TEST_CASE("Enter on leaving leaves, it does not record", "[ui][page]") {
    AtPage s;
    const auto revision = s.session->desk().revision();
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    QPushButton* leave = buttonNamed(*s.workPage, "Cancel (Esc)");
    REQUIRE(leave);
    leave->setFocus();
    QTest::keyClick(leave, Qt::Key_Return);
    CHECK_FALSE(s.workPage->form().active());
    CHECK(s.session->desk().revision() == revision);
}

TEST_CASE("an entry begun stays with its vessel while another is looked at", "[ui][page]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    s.workPage->showVessel("Teal");
    CHECK_FALSE(s.workPage->form().active());
    CHECK_FALSE(s.drawing().look().levelBefore);
    CHECK(s.levelWords().contains("of 50"));
    s.workPage->showVessel("Heron");
    CHECK(s.workPage->form().active());
    CHECK(s.workPage->form().fields().number("volume_l")->stored() == 60.0);
    CHECK(s.drawing().look().levelBefore);
}

TEST_CASE("what the desk refuses is said until it is put right", "[ui][page][bad]") {
    AtPage s;
    s.workPage->begin(EntryKind::refill);
    s.volume("150"); // does not fit
    s.workPage->form().record();
    CHECK(s.workPage->form().active());
    CHECK_FALSE(s.workPage->form().fields().number("volume_l")->words().isEmpty());
    s.volume("5");
    CHECK(s.workPage->form().fields().number("volume_l")->words().isEmpty());
    CHECK(s.drawing().look().levelBefore);
}

// --- after an entry ------------------------------------------------------------------------------------------------

namespace {

/// The entry selected, and that the drawing shows the vessel after it.
const LedgerLine& seen(const AtPage& s) {
    const int row = s.workPage->table().currentIndex().row();
    const LedgerLine* line = s.workPage->model().at(row);
    REQUIRE(line);
    CHECK(s.workPage->table().selectionModel()->isRowSelected(row));
    if (row > 0)
        CHECK(s.drawing().look().now.volume.l == Approx(line->volumeAfter.l));
    return *line;
}
void dated(const AtPage& s, const char* day) {
    QLineEdit* date = s.workPage->form().fields().date("on")->edit();
    date->clear();
    QTest::keyClicks(date, QString::fromLatin1(day));
}

} // namespace

TEST_CASE("what was recorded is selected and seen", "[ui][page][after]") {
    AtPage s;
    s.workPage->table().selectRow(4);
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    s.workPage->form().record();
    CHECK(seen(s).kind == EntryKind::drawOff);
    CHECK(seen(s).on == s.today);
    CHECK(s.drawing().look().now.volume.l == Approx(s.level()));
    s.workPage->begin(EntryKind::dip);
    s.volume("203");
    dated(s, "2025-03-04");
    s.workPage->form().record();
    CHECK(seen(s).kind == EntryKind::dip);
    CHECK(s.drawing().look().now.volume.l == Approx(203));
}

TEST_CASE("what was amended is selected where it stands now", "[ui][page][after]") {
    AtPage s;
    s.workPage->table().selectRow(2); // the top-up of January
    const std::int64_t id = s.workPage->model().at(2)->id;
    s.workPage->amendSelected();
    dated(s, "2025-12-01");
    s.workPage->table().selectRow(6);
    s.workPage->form().record();
    CHECK(seen(s).kind == EntryKind::topUp);
    CHECK(seen(s).id == id);
    CHECK(s.workPage->table().currentIndex().row() == 0);
    s.session->undo();
    CHECK(seen(s).id == id);
    CHECK(s.workPage->table().currentIndex().row() == 2);
}

TEST_CASE("an amended word nobody sees in the ledger selects its entry too", "[ui][page][after]") {
    AtPage s;
    const int opening = s.workPage->model().rowCount() - 1;
    s.workPage->table().selectRow(opening);
    s.workPage->amendSelected();
    QLineEdit* years = s.workPage->form().fields().number("years_running")->edit();
    QTest::keyClicks(years, "3");
    s.workPage->table().selectRow(1);
    s.workPage->form().record();
    CHECK(seen(s).kind == EntryKind::opening);
}

TEST_CASE("what comes before an entry is seen when it is taken out, and it again when it is back",
          "[ui][page][after]") {
    AtPage s;
    s.workPage->table().selectRow(3);
    const LedgerLine gone = *s.workPage->model().at(3), before = *s.workPage->model().at(4);
    s.workPage->removeSelected();
    CHECK(seen(s).id == before.id);
    CHECK(seen(s).kind == before.kind);
    s.workPage->table().selectRow(0);
    s.session->undo();
    CHECK(seen(s).id == gone.id);
    CHECK(seen(s).kind == gone.kind);
    s.session->redo();
    CHECK(seen(s).id == before.id);
}

TEST_CASE("undoing an entry shows the vessel as it was before it", "[ui][page][after]") {
    AtPage s;
    s.workPage->begin(EntryKind::drawOff);
    s.volume("60");
    s.workPage->form().record();
    s.session->undo();
    CHECK(s.workPage->table().currentIndex().row() == 0);
    CHECK(s.drawing().look().now.volume.l == Approx(s.level()));
    s.session->redo();
    CHECK(seen(s).kind == EntryKind::drawOff);
}

TEST_CASE("what another program writes does not take the brewer along", "[ui][page][after]") {
    AtPage s;
    s.workPage->table().selectRow(3);
    const std::int64_t id = s.workPage->model().at(3)->id;
    auto other = *Desk::open(s.book, [] { return testing::testToday; });
    testing::recordAll(*other, R"({"kind": "dip", "vessel": "Heron", "on": "2026-03-01", "volume_l": 201})");
    s.session->poll();
    CHECK(seen(s).id == id);
}

// --- the brew of a refill ------------------------------------------------------------------------------------------

namespace {

BrewStock stock(const char* name, Day on, std::optional<Litres> left, bool made = false) {
    BrewStock each;
    each.brew.name = name;
    each.brew.vessel = "Heron";
    each.brew.on = on;
    each.left = left;
    each.forThisRefill = made;
    return each;
}

constexpr const char* brews = R"([
  {"kind": "brew", "name": "Brew 8", "vessel": "Teal", "on": "2025-09-10", "original_gravity_p": 12,
   "bitterness_ibu": 10, "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 66, "minutes": 60}],
   "yeast": "ale_clean", "into_fermenter_l": 40},
  {"kind": "brew", "name": "Brew 9", "vessel": "Heron", "on": "2026-02-05", "original_gravity_p": 12,
   "bitterness_ibu": 10, "grist": [{"grain": "pilsner", "share": 1}], "mash": [{"temperature_c": 64, "minutes": 60}],
   "yeast": "ale_clean", "into_fermenter_l": 70}])";

} // namespace

TEST_CASE("brews are offered with day, vessel and litres left, those used up last", "[ui][page][brews]") {
    testing::DeskInScratch made;
    const Session session(std::move(made.desk));
    const auto offers =
        brewOffers({stock("Brew 9", day(2026, 2, 5), Litres{64.2}, true), stock("Brew 8", day(2026, 1, 5), Litres{0}),
                    stock("Brew 7", day(2025, 12, 5), std::nullopt)},
                   session);
    REQUIRE(offers.size() == 3);
    CHECK(offers[0].word == "Brew 9");
    for (const char* part : {"Brew 9", "for Heron", "64.2 L left"})
        CHECK(offers[0].shown.contains(QLatin1String(part)));
    CHECK(offers[0].shown.contains(dayWords(day(2026, 2, 5))));
    CHECK(offers[1].word == "Brew 7");
    CHECK(offers[1].shown.contains("litres not recorded"));
    CHECK(offers[2].word == "Brew 8");
    CHECK(offers[2].shown.contains("nothing left"));
}

TEST_CASE("a brew that was poured stands last, also where its litres were never recorded", "[ui][page][brews]") {
    testing::DeskInScratch made;
    const Session session(std::move(made.desk));
    BrewStock old = stock("Brew 7", day(2025, 12, 5), std::nullopt);
    old.poured = true;
    const auto offers = brewOffers({old, stock("Brew 6", day(2025, 11, 5), std::nullopt)}, session);
    CHECK(offers[0].word == "Brew 6");
    CHECK(offers[1].word == "Brew 7");
    CHECK(offers[1].shown.contains("poured"));
}

TEST_CASE("without a brew on record a refill is by the plan adopted for it", "[ui][page][brews]") {
    AtPage s;
    const auto shown = [&](EntryKind kind) {
        s.workPage->begin(kind);
        const QString words = s.workPage->form().fields().choice("brew")->currentText();
        s.workPage->form().leave();
        return words;
    };
    CHECK(shown(EntryKind::refill) != "the plan of 2 Mar 2026");
    const auto job = s.session->desk().adviceJob({"Heron", {}, {}, false});
    REQUIRE(job);
    REQUIRE(s.session->adopt(*job, job->input.base));
    CHECK(shown(EntryKind::refill) == "the plan of 2 Mar 2026");
    CHECK(shown(EntryKind::topUp) == "the usual recipe");
}

TEST_CASE("a refill is filled in with the brew made for it, and with no other", "[ui][page][brews]") {
    AtPage s;
    testing::recordAll(*s.session, brews);
    s.workPage->begin(EntryKind::refill);
    const ChoiceField* brew = s.workPage->form().fields().choice("brew");
    CHECK(brew->word() == "Brew 9");
    CHECK_FALSE(s.workPage->form().started());
    CHECK(brew->itemText(1).startsWith("Brew 9"));
    CHECK(brew->itemText(2).startsWith("Brew 8"));
    REQUIRE(s.session->record(DrawOffFact{"Heron", s.today, Litres{70}, "", {}, ""}));
    s.volume("60");
    s.workPage->form().record();
    REQUIRE_FALSE(s.workPage->form().active());
    CHECK(seen(s).kind == EntryKind::refill);
    CHECK(std::get<RefillFact>(*s.session->desk().fact("refill", seen(s).id)).brew == "Brew 9");
    s.workPage->begin(EntryKind::refill);
    CHECK(s.workPage->form().fields().choice("brew")->word().empty());
}

TEST_CASE("more litres than a brew has left are refused at the litres", "[ui][page][brews][bad]") {
    AtPage s;
    testing::recordAll(*s.session, brews);
    REQUIRE(s.session->record(DrawOffFact{"Heron", s.today, Litres{100}, "", {}, ""}));
    s.workPage->begin(EntryKind::refill);
    s.volume("95");
    const NumberField* volume = s.workPage->form().fields().number("volume_l");
    CHECK(volume->words().contains("Brew 9"));
    s.workPage->form().record();
    CHECK(s.workPage->form().active());
    s.volume("60");
    CHECK(volume->words().isEmpty());
}

// SPDX-License-Identifier: GPL-3.0-or-later
// Units: every number shown is read back as it was, and switching units leaves no word of the old ones on any page.
#include "ui/support.h"

#include "quantity/parse.h"
#include "ui/adjust/page.h"
#include "ui/brew/page.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/present/unit_scale.h"
#include "ui/taste/page.h"
#include "ui/widgets/number_field.h"
#include "ui/window/cellar_view.h"
#include "ui/window/status_line.h"

#include <QAbstractItemView>
#include <QAccessible>
#include <QAction>
#include <QLineEdit>
#include <QMenuBar>
#include <QRegularExpression>

#include <cmath>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::sheet;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

std::vector<DisplayUnits> everyUnits() {
    std::vector<DisplayUnits> all;
    for (const auto volume :
         {DisplayUnits::Volume::litre, DisplayUnits::Volume::usGallon, DisplayUnits::Volume::hectolitre})
        for (const auto temperature : {DisplayUnits::Temperature::celsius, DisplayUnits::Temperature::fahrenheit})
            for (const auto gravity : {DisplayUnits::Gravity::plato, DisplayUnits::Gravity::specific})
                all.push_back({volume, temperature, gravity, DisplayUnits::Colour::ebc});
    return all;
}

struct Kind {
    UnitKind kind;
    double low, high;
};
const std::vector<Kind> kinds{
    {UnitKind::none, -50, 50},         {UnitKind::volume, 0.05, 9000},   {UnitKind::temperature, -2, 110},
    {UnitKind::gravity, 0.99, 1.12},   {UnitKind::ph, 2.5, 7},           {UnitKind::concentration, 0, 20},
    {UnitKind::bitterness, 0, 80},     {UnitKind::days, 0, 4000},        {UnitKind::years, 0, 30},
    {UnitKind::share, 0, 1},           {UnitKind::oxygenUptake, 0, 200}, {UnitKind::minutes, 0, 600},
    {UnitKind::mass, 0, 500},          {UnitKind::thickness, 1.5, 10},   {UnitKind::flow, 0, 90},
    {UnitKind::heatingRate, 0.05, 10}, {UnitKind::pressure, 0, 10}};

int decimalsOf(const QString& number) {
    const auto mark = number.indexOf('.');
    return mark < 0 ? 0 : static_cast<int>(number.size() - mark - 1);
}

double read(QString number, bool comma) {
    if (comma)
        number.replace('.', ',');
    const auto value = parseNumber(toStd(number), {-1e9, 1e9});
    INFO(number.toStdString());
    REQUIRE(value);
    return *value;
}

/// What assistive technology is told about everything visible below, menus and named edits apart.
void hear(QAccessibleInterface* at, QStringList& words) {
    if (!at || at->state().invisible || at->role() == QAccessible::MenuBar || qobject_cast<StatusLine*>(at->object()))
        return;
    for (const auto part : {QAccessible::Name, QAccessible::Description, QAccessible::Value})
        if (const QString text = at->text(part); !text.isEmpty())
            words << text;
    const bool cells = at->role() == QAccessible::Table || at->role() == QAccessible::List;
    for (int i = 0; i < at->childCount() && !cells; ++i) // cells: from their model
        hear(at->child(i), words);
}
void readCells(const QAbstractItemView& view, QStringList& words) {
    const QAbstractItemModel& model = *view.model();
    for (int column = 0; column < model.columnCount(); ++column) {
        words << model.headerData(column, Qt::Horizontal).toString();
        for (int row = 0; row < model.rowCount(); ++row)
            words << model.index(row, column).data().toString();
    }
}
QStringList everyWord(QWidget& window) {
    QStringList words;
    hear(QAccessible::queryAccessibleInterface(&window), words);
    for (const auto* view : window.findChildren<QAbstractItemView*>())
        if (view->isVisible() && view->model())
            readCells(*view, words);
    return words;
}

/// Litres, degrees Celsius, gravities, EBC and bar as words; g/L, mg/L and L/kg are the same in every system.
const QRegularExpression metric("(\\d L\\b(?!/)|\\bin L\\b(?!/)|L/h|°C|\\bSG\\b|\\d EBC\\b|in EBC|\\d bar\\b|in bar)");

struct Walk {
    explicit Walk(WindowInScratch& w) : window(*w.window), cellar(*w.window->cellar()) {}

    void each(const std::function<void(const char*)>& look) {
        cellar.showVessel("Heron");
        cellar.showPage(PageId::taste);
        look("taste");
        cellar.showPage(PageId::adjust);
        REQUIRE(QTest::qWaitFor([&] { return !cellar.adjust().busy(); }, 60000));
        look("adjust");
        cellar.adjust().openTarget(true);
        look("target");
        cellar.adjust().openTarget(false);
        cellar.adjust().openDrawDay(true);
        look("draw day");
        cellar.adjust().openDrawDay(false);
        cellar.showPage(PageId::brew);
        look("brew");
        cellar.brew().showAsBrewed();
        look("as brewed");
        cellar.brew().showPlan();
        finish(look);
        cellar.showPage(PageId::history);
        look("history");
        cellar.history().showFace(HistoryPage::Face::table);
        look("history table");
        cellar.history().showFace(HistoryPage::Face::charts);
        cellar.showPage(PageId::drawRefill);
        look("ledger");
        for (const EntryKind kind : {EntryKind::drawOff, EntryKind::reading}) {
            cellar.beginEntry(kind);
            look("entry");
            cellar.drawRefill().form().leave();
        }
        cellar.changeVessel();
        look("vessel page");
        cellar.showVessel("Heron");
    }
    /// With an answer about a rated bottle, a keg and fruit.
    void finish(const std::function<void(const char*)>& look) {
        cellar.showPage(PageId::finish);
        for (const auto& [field, text] :
             {std::pair{"Litres to pack", "4"}, {"Temperature of a keg", "40"}, {"Rated by its maker for", "8"}}) {
            auto* edit = part<NumberField>(cellar.finish(), field).edit();
            edit->selectAll();
            QTest::keyClicks(edit, text);
        }
        cellar.finish().answerNow();
        look("pack");
    }
    MainWindow& window;
    CellarView& cellar;
};

} // namespace

TEST_CASE("every number shown is read back as shown, in every unit, with point and comma", "[ui][units]") {
    for (const auto& units : everyUnits())
        for (const auto& [kind, low, high] : kinds) {
            const UnitScale scale(kind, units);
            for (int i = 0; i <= 60; ++i) {
                const double stored = low + (high - low) * i / 60 + (i % 7) * 0.00137 * (high - low) / 60;
                const QString shown = scale.show(stored);
                INFO(static_cast<int>(kind) << " " << stored << " shown as " << shown.toStdString());
                const double back = read(shown, i % 2);
                CHECK(std::abs(scale.toShown(stored) - back) <= 0.5 * std::pow(10, -decimalsOf(shown)) + 1e-9);
                CHECK(scale.show(scale.toStored(back)) == shown);
                CHECK(scale.toStored(scale.toShown(stored)) == Approx(stored).margin(1e-9));
            }
        }
}

TEST_CASE("what is shown says nearly what is stored", "[ui][units]") {
    // a hundredth of the unit a brewer reads: 0.05 L of a cask, a tenth of a degree, half a gravity point
    const std::map<UnitKind, double> fine{{UnitKind::volume, .01},   {UnitKind::temperature, .01},
                                          {UnitKind::gravity, 6e-5}, {UnitKind::ph, .006},
                                          {UnitKind::share, 6e-5},   {UnitKind::heatingRate, .01}};
    for (const auto& units : everyUnits())
        for (const auto& [kind, low, high] : kinds)
            if (const auto margin = fine.find(kind); margin != fine.end())
                for (int i = 0; i <= 40; ++i) {
                    const double stored = low + (high - low) * (i + .37) / 41;
                    const UnitScale scale(kind, units);
                    INFO(static_cast<int>(kind) << ": " << stored);
                    CHECK(std::abs(scale.toStored(read(scale.show(stored), false)) - stored) <= margin->second);
                }
}

TEST_CASE("no page keeps a word of the units left behind, and all come back", "[ui][units]") {
    WindowInScratch w;
    const auto before = readAll(w.book);
    std::map<std::string, QStringList> metricWords;
    Walk walk(w);
    int place = 0;
    walk.each([&](const char* page) { metricWords[page + std::to_string(place++)] = everyWord(*w.window); });
    CHECK(metricWords.size() == 13);
    int found = 0;
    for (const auto& [page, words] : metricWords)
        found += static_cast<int>(words.filter(metric).size());
    CHECK(found > 60); // the words the walk looks for are there to be found
    walk.each([&](const char* page) {
        w.window->setUnits({});
        w.window->setUnits({DisplayUnits::Volume::usGallon, DisplayUnits::Temperature::fahrenheit,
                            DisplayUnits::Gravity::plato, DisplayUnits::Colour::srm,
                            DisplayUnits::Pressure::psi}); // while the page is in front
        QTest::qWait(0);
        INFO(page);
        for (const QString& word : everyWord(*w.window).filter(metric))
            FAIL_CHECK(page << ": " << word.toStdString());
    });
    w.window->setUnits({});
    place = 0;
    walk.each([&](const char* page) {
        INFO(page);
        const QStringList was = metricWords[page + std::to_string(place++)], is = everyWord(*w.window);
        for (const QString& word : was.filter(metric))
            if (!is.contains(word))
                FAIL_CHECK(page << " no longer says " << word.toStdString());
    });
    CHECK(readAll(w.book) == before);
}

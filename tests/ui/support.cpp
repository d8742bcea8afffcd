// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/support.h"

#include <QAccessible>
#include <QAction>
#include <QRegularExpression>

namespace staveline::testing {
using namespace brewing;
using namespace desk;
using namespace facts;

namespace {

template <class Writer> void recordAllBy(Writer& writer, const std::string& json) {
    const auto facts = parseRecords(json);
    INFO(json);
    if (!facts)
        FAIL(facts.error().path << ": " << render(facts.error().cause));
    const auto done = writer.record(*facts);
    if (!done)
        FAIL(done.error().path << ": " << render(done.error().cause) << " " << render(done.error().remedy));
}

} // namespace

void recordAll(Desk& desk, const std::string& json) {
    recordAllBy(desk, json);
}
void recordAll(ui::Session& session, const std::string& json) {
    recordAllBy(session, json);
}

void fillCellar(Desk& desk) {
    recordAll(desk, R"([
      {"kind": "equipment", "on": "2023-01-10", "name": "shed kit"},
      {"kind": "vessel", "name": "Heron", "shape": "cask", "material": "oak used", "capacity_l": 225, "interval_d": 240},
      {"kind": "vessel", "name": "Teal", "shape": "keg", "material": "steel", "capacity_l": 50, "interval_d": 120},
      {"kind": "vessel", "name": "Bittern", "shape": "foeder", "material": "foeder", "capacity_l": 900},
      {"kind": "base_recipe", "vessel": "Heron", "on": "2023-02-01",
       "grist": [{"grain": "pilsner", "share": 0.75}, {"grain": "wheat_malt", "share": 0.25}],
       "mash": [{"temperature_c": 66, "minutes": 60}], "original_gravity_p": 12, "bitterness_ibu": 10},
      {"kind": "opening", "vessel": "Heron", "on": "2023-02-01", "volume_l": 214, "age_years": 1.6, "age_sd_years": 0.5,
       "ta_g_l": 5.8, "ph": 3.34, "gravity_sg": 1.003, "note": "Taken over from a notebook."},
      {"kind": "draw_off", "vessel": "Heron", "on": "2023-09-12", "volume_l": 75, "lot": "Draw 1"},
      {"kind": "refill", "vessel": "Heron", "on": "2023-09-12", "volume_l": 80, "age_d": 21},
      {"kind": "draw_off", "vessel": "Heron", "on": "2024-06-03", "volume_l": 72, "lot": "Draw 2", "ta_g_l": 6.4},
      {"kind": "refill", "vessel": "Heron", "on": "2024-06-03", "volume_l": 78, "age_d": 18},
      {"kind": "reading", "vessel": "Heron", "on": "2024-11-20", "ph": 3.31, "gravity_sg": 1.002, "temperature_c": 15},
      {"kind": "top_up", "vessel": "Heron", "on": "2025-01-15", "volume_l": 4, "age_d": 60},
      {"kind": "draw_off", "vessel": "Heron", "on": "2025-07-08", "volume_l": 80, "lot": "Draw 3",
       "note": "Clear, firm, a little barnyard."},
      {"kind": "refill", "vessel": "Heron", "on": "2025-07-08", "volume_l": 82, "age_d": 16},
      {"kind": "opening", "vessel": "Teal", "on": "2025-10-01", "volume_l": 46, "age_years": 0.7}
    ])");
}

namespace {

/// What was tasted, wanted, held and chosen.
std::string decisionsOf(const Desk& desk, const VesselName& vessel) {
    std::vector<Fact> facts;
    const auto sittings = desk.sittings(vessel).value();
    const auto locks = desk.locks(vessel).value();
    for (const auto& sitting : sittings)
        facts.emplace_back(sitting.fact);
    if (const auto target = desk.target(vessel).value())
        facts.emplace_back(target->fact);
    for (const auto& lock : locks)
        facts.emplace_back(lock);
    if (const auto choice = desk.lastChoice(vessel))
        facts.emplace_back(*choice);
    if (const auto culture = desk.culture(vessel))
        facts.emplace_back(*culture);
    return writeRecords(facts);
}

} // namespace

std::string fingerprint(const Desk& desk) {
    const auto cellar = desk.cellar().value();
    std::string all = toJson(cellar);
    for (const BrewFact& brew : desk.brews())
        all += writeRecords({brew});
    for (const VesselSummary& vessel : cellar) {
        all += decisionsOf(desk, vessel.name);
        if (const auto view = desk.ledger(vessel.name))
            for (const LedgerLine& line : view->lines)
                if (const auto fact = desk.fact(line.table, line.id))
                    all += writeRecords({*fact});
    }
    return all;
}

WindowInScratch::WindowInScratch(bool withBook) {
    if (withBook) {
        auto desk = *Desk::create(book, [this] { return today; });
        fillCellar(*desk);
    }
    open();
    if (withBook)
        REQUIRE(window->openBook(book));
    // The focus follows the window's activation.
    QTest::qWait(0);
}

void WindowInScratch::open() {
    window.reset();
    window = std::make_unique<ui::MainWindow>([this] { return today; }, prompt, settings);
    window->resize(1280, 800);
    window->show();
    REQUIRE(QTest::qWaitForWindowActive(window.get()));
}

QString wordsOf(const QAction& action) {
    static const QRegularExpression key("&(.)");
    return action.text().replace(key, "\\1").remove(QChar(0x2026));
}

QAction& WindowInScratch::action(const QString& words) const {
    QAction* found = nullptr;
    for (QAction* one : window->actions()) {
        const QString said = wordsOf(*one);
        if (said == words || said.startsWith(words + ": ") || said.startsWith(words + " ("))
            found = one;
    }
    INFO(words.toStdString());
    REQUIRE(found);
    return *found;
}

void WindowInScratch::key(Qt::Key key, Qt::KeyboardModifiers modifiers) const {
    QTest::keyClick(focus() ? focus() : window.get(), key, modifiers);
}

void WindowInScratch::type(const QString& text) const {
    REQUIRE(focus());
    QTest::keyClicks(focus(), text);
}

QString accessibleName(QWidget& widget) {
    QAccessibleInterface* seen = QAccessible::queryAccessibleInterface(&widget);
    return seen ? seen->text(QAccessible::Name) : QString();
}

void WindowInScratch::tabTo(const QString& name) const {
    QStringList met;
    for (int i = 0; i < 120; ++i) {
        met << (focus() ? accessibleName(*focus()) : QString("nothing"));
        if (met.last() == name)
            return;
        key(Qt::Key_Tab);
    }
    FAIL("Tab never reached " << name.toStdString() << " but " << met.mid(0, 40).join(", ").toStdString());
}

} // namespace staveline::testing

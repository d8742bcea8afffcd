// SPDX-License-Identifier: GPL-3.0-or-later
// Pictures of every page and state in the whole window, to look at and for the README.
//   all, in both palettes:  STAVELINE_SHOTS=folder test_ui "[screenshots]"    (QT_SCALE_FACTOR=2: at scale 2)
//     in another size: STAVELINE_SIZE=1920x1080, with larger text: STAVELINE_TEXT=1.5
//   those of the README:    STAVELINE_SHOTS=resources/pictures test_ui "[readme]" &&
//                           mogrify +dither -colors 128 resources/pictures/*.png
#include "ui/support.h"

#include "ui/adjust/explanation_panel.h"
#include "ui/adjust/lever_board.h"
#include "ui/adjust/lever_line.h"
#include "ui/adjust/linked_label.h"
#include "ui/adjust/page.h"
#include "ui/adjust/proposal_list.h"
#include "ui/adjust/verdict_panel.h"
#include "ui/brew/as_brewed_page.h"
#include "ui/brew/flow_page.h"
#include "ui/brew/kit_editor.h"
#include "ui/brew/mash_editor.h"
#include "ui/brew/page.h"
#include "ui/brew/plan_page.h"
#include "ui/cellar/cellar_page.h"
#include "ui/chart/chart_stack.h"
#include "ui/draw_refill/entry_form.h"
#include "ui/draw_refill/ledger_table.h"
#include "ui/draw_refill/page.h"
#include "ui/finish/lot_form.h"
#include "ui/finish/lot_ledger.h"
#include "ui/finish/page.h"
#include "ui/history/page.h"
#include "ui/pantry/ingredients_page.h"
#include "ui/print/paged_paper.h"
#include "ui/print/pdf.h"
#include "ui/taste/fault_list.h"
#include "ui/taste/page.h"
#include "ui/taste/score_sheet.h"
#include "ui/taste/sitting_header.h"
#include "ui/widgets/choice_field.h"
#include "ui/widgets/fact_form.h"
#include "ui/widgets/number_field.h"
#include "ui/widgets/underlined_tabs.h"
#include "ui/window/cellar_view.h"
#include "ui/window/notes_import.h"
#include "ui/window/notice_bar.h"
#include "ui/window/preferences.h"

#include <QDir>
#include <QLineEdit>
#include <QPainter>
#include <QRadioButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QSlider>

using namespace staveline;
using namespace staveline::brewing;
using namespace staveline::culture;
using namespace staveline::desk;
using namespace staveline::sheet;
using namespace staveline::vessel;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

QString folderOfShots() {
    const QString folder = qEnvironmentVariable("STAVELINE_SHOTS");
    if (folder.isEmpty())
        FAIL("STAVELINE_SHOTS names no folder");
    REQUIRE(QDir().mkpath(folder));
    return folder;
}

/// The window's size and that of its text as the environment asks.
void fitToEnvironment(QWidget& window) {
    const QStringList size = qEnvironmentVariable("STAVELINE_SIZE").split('x');
    if (size.size() == 2)
        window.resize(size[0].toInt(), size[1].toInt());
}
struct LargerText {
    QFont usual = QApplication::font();
    LargerText() {
        QFont font = usual;
        font.setPointSizeF(usual.pointSizeF() * std::max(1.0, qEnvironmentVariable("STAVELINE_TEXT").toDouble()));
        QApplication::setFont(font);
    }
    ~LargerText() { QApplication::setFont(usual); }
    LargerText(const LargerText&) = delete;
    LargerText& operator=(const LargerText&) = delete;
};

/// A blank picture would pass unseen: a page has many colours.
void keep(const QImage& picture, const QString& file) {
    QSet<QRgb> colours;
    for (int y = 0; y < picture.height(); y += 3)
        for (int x = 0; x < picture.width(); x += 3)
            colours << picture.pixel(x, y);
    CHECK(colours.size() > 10);
    REQUIRE(picture.save(file));
}

/// The window on its way through the pages; a name makes a picture.
class Walk {
public:
    Walk(WindowInScratch& w, QString folder, QString ending)
        : w_(w), folder_(std::move(folder)), ending_(std::move(ending)) {}

    void take(const char* name) const {
        QTest::qWait(60);
        MainWindow& window = *w_.window;
        const QImage picture = window.grab().toImage();
        REQUIRE(picture.size() == window.size() * window.devicePixelRatioF());
        keep(picture, folder_ + '/' + QLatin1String(name) + ending_ + ".png");
    }
    [[nodiscard]] CellarView& cellar() const { return *w_.window->cellar(); }
    [[nodiscard]] const Desk& desk() const { return w_.window->session()->desk(); }
    void openSample() const { REQUIRE(w_.window->sampleBook(w_.scratch / "sample.cellar")); }
    void at(const char* vessel, PageId workPage) const {
        cellar().showVessel(vessel);
        cellar().showPage(workPage);
        QTest::qWait(0);
        cellar().focusWork();
        if (workPage == PageId::adjust)
            settle();
    }
    void settle() const {
        REQUIRE(QTest::qWaitFor([this] { return !cellar().adjust().busy(); }, 60000));
    }
    void write(QLineEdit* edit, const char* text) const {
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, QString::fromLatin1(text));
    }
    void fill(const char* field, const char* text) const {
        write(cellar().drawRefill().form().fields().number(field)->edit(), text);
    }
    static void scroll(QWidget& page, double part) {
        for (auto* area : page.findChildren<QScrollArea*>())
            if (area->isVisible() && area->verticalScrollBar()->maximum() > 0)
                area->verticalScrollBar()->setValue(static_cast<int>(part * area->verticalScrollBar()->maximum()));
    }

    void halfASitting() const;
    void workPages() const;
    void taste() const;
    void adjust() const;
    void otherAnswers() const;
    void brew() const;
    void asBrewed() const;
    void drawAndRefill() const;
    void choose(const char* field, const char* word) const; ///< in Finish
    void pack() const;
    void finish() const;
    void history() const;
    void allVessels() const;
    void emptyVessel() const;
    void vessels() const;
    void importing() const;
    void papers() const;

private:
    WindowInScratch& w_;
    QString folder_, ending_;
};

void Walk::halfASitting() const {
    at("Plover", PageId::taste);
    for (const char* score : {"0", "6", "6.5", "5.5", "6", "4", "4.5", "3"}) {
        w_.type(score);
        w_.key(Qt::Key_Tab);
    }
}

void Walk::taste() const {
    halfASitting();
    take("taste-half");
    TastePage& workPage = cellar().taste();
    FaultList& faults = part<FaultList>(workPage);
    faults.unfold(true);
    faults.button("acetic", 2)->click();
    scroll(workPage, 1);
    take("taste-faults");
    faults.button("acetic", 0)->click();
    faults.unfold(false);
    workPage.showLongSheet(true);
    scroll(workPage, 0);
    take("taste-long");
    workPage.showLongSheet(false);
    workPage.header().tasters().setCurrentIndex(1);
    workPage.sameAgain();
    workPage.showAllTasters(true);
    take("taste-tasters");
    workPage.showAllTasters(false);
    workPage.showBlankSheet(true);
    take("taste-blank");
    workPage.showBlankSheet(false);
    at("Knot", PageId::taste);
    const auto sittings = w_.window->session()->desk().sittings("Knot");
    for (const auto& filed : *sittings)
        if (!filed.fact.learn)
            workPage.openSitting(filed.id);
    scroll(workPage, 1);
    take("taste-set-aside");
}

void Walk::adjust() const {
    at("Plover", PageId::adjust);
    take("adjust");
    AdjustPage& workPage = cellar().adjust();
    scroll(workPage, 1);
    take("adjust-lower");
    scroll(workPage, 0);
    ProposalList& proposals = part<ProposalList>(workPage);
    for (LinkedLabel* label : parts<LinkedLabel>(proposals))
        if (label->focusPolicy() != Qt::NoFocus) {
            label->setFocus(Qt::TabFocusReason);
            QTest::keyClick(label, Qt::Key_Return);
            break;
        }
    take("adjust-number");
    part<ExplanationPanel>(workPage).leave();
    for (int i = 0; i < 4; ++i)
        QTest::keyClick(part<LeverBoard>(workPage).line("sacch_temperature")->slider(), Qt::Key_Left);
    settle();
    take("adjust-tried");
    workPage.asNow();
    part<VerdictPanel>(workPage).showTable(true);
    take("adjust-table");
    part<VerdictPanel>(workPage).showTable(false);
    workPage.openTarget(true);
    take("adjust-target");
    workPage.openTarget(false);
    workPage.openDrawDay(true);
    take("adjust-draw-day");
    workPage.openDrawDay(false);
    settle();
    proposals.radio(proposals.count() > 0 ? 1 : 0)->click();
    settle();
    workPage.adopt();
    settle();
    take("adjust-adopted");
}

void Walk::otherAnswers() const {
    at("Dunlin", PageId::adjust);
    take("adjust-fault-first");
    cellar().adjust().openDrawDay(true);
    take("adjust-fault-draw-day");
    cellar().adjust().openDrawDay(false);
    at("Knot", PageId::adjust);
    take("adjust-knot");
}

void Walk::brew() const {
    at("Plover", PageId::brew);
    take("brew");
    PlanPage& plan = part<PlanPage>(cellar().brew());
    scroll(plan, .35);
    take("brew-mash");
    part<MashEditor>(plan).showTable(true);
    take("brew-mash-table");
    part<MashEditor>(plan).showTable(false);
    scroll(plan, .7);
    take("brew-kettle");
    scroll(plan, 1);
    take("brew-lower");
    plan.kit().unfold(true);
    QTest::qWait(20);
    scroll(plan, 1);
    take("brew-kit");
    plan.kit().unfold(false);
    asBrewed();
    cellar().showBrewSheet();
    take("brew-sheet");
    cellar().brew().showPlan();
}

void Walk::asBrewed() const {
    cellar().brew().showAsBrewed();
    AsBrewedPage& page = part<AsBrewedPage>(cellar().brew());
    write(part<NumberField>(page, "Original gravity, measured").edit(), "1.055");
    page.weighNow();
    take("brew-as-brewed");
    scroll(page, 1);
    take("brew-as-brewed-lower");
}

void Walk::drawAndRefill() const {
    at("Plover", PageId::drawRefill);
    take("draw-and-refill");
    DrawRefillPage& workPage = cellar().drawRefill();
    workPage.begin(EntryKind::drawOff);
    fill("volume_l", "62");
    fill("gravity", "1002");
    take("draw-entry");
    workPage.form().leave();
    workPage.begin(EntryKind::refill);
    fill("volume_l", "400");
    take("refill-too-much");
    workPage.form().leave();
    workPage.begin(EntryKind::event);
    take("event-entry");
    workPage.form().leave();
    workPage.amendSelected();
    take("draw-amend");
    workPage.form().leave();
}

void Walk::choose(const char* field, const char* word) const {
    auto& choice = part<ChoiceField>(cellar().finish(), field);
    choice.setWord(word);
    Q_EMIT choice.activated(choice.currentIndex());
}

void Walk::pack() const {
    at("Plover", PageId::finish);
    write(part<NumberField>(cellar().finish(), "Litres to pack").edit(), "60");
    choose("Make", "thick");
    cellar().finish().answerNow();
}

void Walk::finish() const {
    at("Plover", PageId::finish);
    take("finish-first");
    FinishPage& workPage = cellar().finish();
    w_.type("60");
    workPage.answerNow();
    take("finish-refused");
    pack();
    take("finish-pack");
    write(part<NumberField>(workPage, "Size").edit(), "9000");
    workPage.answerNow();
    take("finish-marked");
    workPage.showPart(FinishPage::Part::blend);
    choose("Source 2", "Knot");
    write(part<NumberField>(workPage, "Litres of 1").edit(), "60");
    write(part<NumberField>(workPage, "TA").edit(), "6.5");
    workPage.answerNow();
    take("finish-blend");
    workPage.showPart(FinishPage::Part::pack);
    workPage.chooseLot("Plover draw 8");
    take("finish-lot");
    facts::LotAdditionFact addition;
    addition.lot = "Plover draw 8";
    addition.on = w_.today;
    part<LotLedger>(workPage).begin(addition);
    take("finish-lot-entry");
    part<LotForm>(workPage).leave();
    workPage.chooseLot({});
}

void Walk::history() const {
    at("Plover", PageId::history);
    take("history");
    HistoryPage& workPage = cellar().history();
    scroll(workPage, 1);
    take("history-lower");
    w_.key(Qt::Key_Plus);
    w_.key(Qt::Key_Plus);
    w_.key(Qt::Key_Left);
    take("history-zoomed");
    workPage.showFace(HistoryPage::Face::table);
    take("history-table");
    workPage.showFace(HistoryPage::Face::promises);
    take("history-promises");
    workPage.showFace(HistoryPage::Face::charts);
}

void Walk::vessels() const {
    w_.window->showPreferences();
    QTest::qWait(60);
    auto& preferences = part<Preferences>(*w_.window);
    keep(preferences.grab().toImage(), folder_ + "/preferences" + ending_ + ".png");
    preferences.close();
    allVessels();
    cellar().addVessel();
    take("vessel-new");
    at("Plover", PageId::drawRefill);
    cellar().changeVessel();
    take("vessel-change");
    cellar().showRound();
    take("round");
    cellar().showIngredients();
    cellar().ingredients().choose("pilsner");
    cellar().ingredients().makeOwn();
    take("ingredients");
    recordAll(*w_.window->session(), R"([{"kind": "room", "on": "2025-01-01", "name": "Barn", "coldest_c": 6,
                                          "warmest_c": 24, "coldest_month": "january"},
                                         {"kind": "vessel_edit", "vessel": "Plover", "room": "Barn"}])");
    cellar().showRooms();
    take("rooms");
    cellar().showPage(PageId::taste);
    for (const PageId workPage : {PageId::taste, PageId::adjust, PageId::brew, PageId::finish, PageId::history}) {
        cellar().showPage(workPage);
        w_.window->toggleHelp();
        take(QByteArray("help-").append(QByteArray::number(static_cast<int>(workPage))).constData());
        w_.window->toggleHelp();
    }
}

void Walk::allVessels() const {
    cellar().showAll();
    REQUIRE(QTest::qWaitFor([this] { return cellar().all().model().knowsPlans(); }, 60000));
    take("all-vessels");
    cellar().all().showYear(true);
    take("all-vessels-year");
    cellar().all().showYear(false);
}

void Walk::importing() const {
    writeAll(w_.scratch / "notes.csv", "Date;SG;pH;Acid;Remarks\n13.05.2026;1,004;3,41;6,1;clear\n"
                                       "14.05.2026;1,004;9;6,2;\nsoon;1,003;3,4;6,2;dull\n");
    w_.prompt.answers = {w_.scratch / "notes.csv"};
    w_.action("Import notes").trigger();
    auto& dialog = part<NotesImport>(*w_.window);
    REQUIRE(QTest::qWaitFor([&] { return !dialog.busy(); }, 20000));
    keep(dialog.grab().toImage(), folder_ + "/import" + ending_ + ".png");
    dialog.close();
}

void Walk::emptyVessel() const {
    recordAll(*w_.window->session(),
              R"({"kind": "vessel", "name": "Curlew", "shape": "tank", "material": "steel", "capacity_l": 500,
                  "wanted_age_years": 2})");
    at("Curlew", PageId::taste);
    take("empty-taste");
    at("Curlew", PageId::adjust);
    take("empty-adjust");
    at("Curlew", PageId::brew);
    take("empty-brew");
    at("Curlew", PageId::drawRefill);
    take("empty-draw");
    cellar().drawRefill().begin(EntryKind::opening);
    take("opening");
    cellar().drawRefill().form().leave();
    at("Curlew", PageId::finish);
    take("empty-finish");
    at("Curlew", PageId::history);
    take("empty-history");
    w_.window->notices().showFault(QStringLiteral("The disk is full: what you typed last is not stored.\nMake room on "
                                                  "the disk, then type it again."));
    take("notice");
    w_.window->notices().clearFault();
}

void Walk::workPages() const {
    take("start");
    openSample();
    taste();
    adjust();
    otherAnswers();
    brew();
    drawAndRefill();
    finish();
    history();
    vessels();
    importing();
    emptyVessel();
    for (const bool shortSheet : {true, false})
        REQUIRE(writePdf(desk().tastingPaper("Plover", shortSheet),
                         (folder_ + (shortSheet ? "/tasting-short.pdf" : "/tasting-long.pdf")).toStdString()));
    REQUIRE(writePdf(*desk().brewSheet("Plover"), (folder_ + "/brew-sheet.pdf").toStdString()));
    papers();
}

/// Those of the pages that show no paper.
void Walk::papers() const {
    for (const PageId page : {PageId::drawRefill, PageId::history}) {
        at("Plover", page);
        const PaperInFront paper = cellar().paperInFront();
        w_.prompt.answers = {(folder_ + '/' + paper.printout->name() + ".pdf").toStdString()};
        paper.printout->save(*w_.window, PaperFormat::pdf);
    }
}

/// The first page as it leaves the printer, at `dpi`.
QImage firstPage(const Document& document, double dpi) {
    const PagedPaper paper(document, PaperSize::a4);
    QImage page((paper.pagePoints() * dpi / 72).toSize(), QImage::Format_RGB32);
    page.fill(Qt::white);
    QPainter painter(&page);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.scale(dpi / 72, dpi / 72);
    paper.paint(painter, 0);
    return page;
}

template <class Then> void inBothPalettes(Then then) {
    const QString folder = folderOfShots();
    const LargerText text;
    for (const Appearance look : {Appearance::light, Appearance::dark}) {
        WindowInScratch w(false);
        fitToEnvironment(*w.window);
        w.window->setAppearance(look);
        const QString scale = w.window->devicePixelRatioF() > 1 ? QStringLiteral("@2x") : QString();
        then(Walk(w, folder, (look == Appearance::dark ? "-dark" : "-light") + scale));
    }
    install(*qApp, Appearance::light);
}

} // namespace

TEST_CASE("pictures of every page in both palettes", "[.][screenshots]") {
    inBothPalettes([](const Walk& walk) { walk.workPages(); });
}

TEST_CASE("pictures of Finish in both palettes", "[.][finish_shots]") {
    inBothPalettes([](const Walk& walk) {
        walk.openSample();
        walk.finish();
    });
}

TEST_CASE("pictures for the README", "[.][readme]") {
    const QString folder = folderOfShots();
    WindowInScratch w(false);
    w.window->setAppearance(Appearance::light);
    const Walk walk(w, folder, QString());
    walk.openSample();
    walk.at("Plover", PageId::adjust);
    walk.take("adjust");
    walk.at("Plover", PageId::history);
    walk.take("history");
    walk.at("Plover", PageId::brew);
    walk.take("brew");
    walk.at("Plover", PageId::drawRefill);
    walk.cellar().drawRefill().begin(EntryKind::drawOff);
    walk.fill("volume_l", "62");
    walk.take("draw-and-refill");
    walk.cellar().drawRefill().form().leave();
    walk.pack();
    walk.take("finish");
    keep(firstPage(*walk.desk().brewSheet("Plover"), 90), folder + "/brew-sheet.png");
    walk.halfASitting();
    walk.take("taste");
    walk.allVessels();
}

TEST_CASE("pictures of the first steps for the README", "[.][readme]") {
    const QString folder = folderOfShots();
    WindowInScratch w(false);
    w.window->setAppearance(Appearance::light);
    const Walk walk(w, folder, QString());
    REQUIRE(w.window->newBook(w.scratch / "my cellar.cellar"));
    w.type("Curlew");
    walk.take("new-vessel");
    w.key(Qt::Key_Return);
    walk.fill("volume_l", "210");
    w.tabTo("Mean age of the beer in years");
    w.type("1.5");
    walk.take("takeover");
}

// SPDX-License-Identifier: GPL-3.0-or-later
// One figure for one thing: what the answer for machines says stands on the list, the foot, the time lines, the chain
// of reasons, the draw day and the sheet, tenth for tenth.
#include "ui/adjust_support.h"

#include "advice/explain.h"
#include "desk/brew.h"
#include "desk/draw_day.h"
#include "desk/json.h"
#include "sheet/document.h"
#include "ui/present/score_words.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

using namespace staveline;
using namespace staveline::advice;
using namespace staveline::desk;
using namespace staveline::ui;
using namespace staveline::testing;

namespace {

QString key(Dimension d) {
    return qs(std::string(name(d)));
}

struct Figures : AtAdjust {
    explicit Figures(const facts::VesselName& vessel) : AtAdjust(vessel), vessel_(vessel) {
        settle();
        const auto job = jobOf(vessel);
        const auto advice = advise(job.input);
        REQUIRE(advice);
        json = QJsonDocument::fromJson(QByteArray::fromStdString(toJson(job, *advice))).object();
        REQUIRE_FALSE(json.isEmpty());
    }
    [[nodiscard]] QJsonObject proposal(int number) const {
        return number == 0                     ? json["leave_it_alone"].toObject()
               : number == ProposalList::usual ? json["usual_recipe"].toObject()
                                               : json["proposals"].toArray()[number - 1].toObject();
    }
    [[nodiscard]] static QString words(const QJsonValue& bands, Dimension d) {
        const QJsonObject band = bands.toObject()[key(d)].toObject();
        return bandWords({band["value"].toDouble(), band["low_80"].toDouble(), band["high_80"].toDouble()});
    }
    [[nodiscard]] QString next(int number, Dimension d) const { return words(proposal(number)["next_draw"], d); }
    [[nodiscard]] QString kept(int number, Dimension d) const { return words(proposal(number)["if_kept_up"], d); }
    /// The cells of a row of the time lines' table.
    [[nodiscard]] QString cell(const QString& row, Dimension d) const {
        auto& table = part<QTableWidget>(verdicts());
        for (int i = 0; i < table.rowCount(); ++i)
            if (table.item(i, 0)->text() == row)
                return table.item(i, 1 + static_cast<int>(d))->text();
        return {};
    }
    void estimatesAgree() const {
        for (const Dimension d : allDimensions) {
            const QJsonObject verdict = json["verdicts"].toObject()[key(d)].toObject();
            const QString told =
                estimateWords({verdict["estimate"].toDouble(), verdict["plus_minus_80"].toDouble() / tasting::z80});
            CHECK(cell("Best estimate today", d) == told);
            CHECK(drawDay().words().contains(told));
            const auto window = jobOf(vessel_).input.target.windows[d];
            CHECK(cell("Target", d) == QString("%1 ±%2").arg(scoreWords(window.wanted), scoreWords(window.band)));
        }
    }
    void proposalAgrees(int number) const {
        proposals().radio(number)->click();
        settle();
        const QString foot = total().words();
        const auto predicted = desk().predict(vessel_, proposals().proposal(number)->setting);
        REQUIRE(predicted);
        CHECK(foot.contains(session->amount(predicted->nextBeer.bitterness)));
        for (const Dimension d : allDimensions) {
            CAPTURE(number, key(d).toStdString(), foot.toStdString());
            CHECK(proposals().scores(number)->next(d) == next(number, d));
            CHECK(proposals().scores(number)->kept(d) == kept(number, d));
            CHECK(foot.contains(key(d) + ' ' + next(number, d)));
            CHECK(foot.mid(foot.indexOf("if repeated")).contains(key(d) + ' ' + kept(number, d)));
            const QString row = number == 0  ? QString("Leave it alone")
                                : number > 0 ? QString("Proposal %1").arg(number)
                                             : QString("The usual recipe");
            CHECK(cell(row + ", next draw", d) == next(number, d));
            CHECK(cell(row + ", if repeated", d) == kept(number, d));
        }
    }
    /// Of a table on the sheet, the row that begins so.
    [[nodiscard]] static std::vector<std::string> rowOf(const sheet::Document& paper, const std::string& begins) {
        for (const auto& block : paper.blocks)
            if (const auto* table = std::get_if<sheet::Table>(&block))
                for (const auto& row : table->rows)
                    if (row.front() == begins)
                        return row;
        return {};
    }

    facts::VesselName vessel_;
    QJsonObject json;
};

QString inWords(const Band& band) {
    return bandWords(band);
}

} // namespace

TEST_CASE("estimates and predictions are the same on list, foot and time lines as in the answer for machines",
          "[ui][figures]") {
    for (const char* vessel : {"Plover", "Knot", "Dunlin"}) {
        CAPTURE(vessel);
        const Figures s(vessel);
        s.verdicts().showTable(true);
        s.workPage->openDrawDay(true);
        s.estimatesAgree();
        s.workPage->openDrawDay(false);
        for (const int number : s.proposals().numbers())
            s.proposalAgrees(number);
    }
}

TEST_CASE("what is adopted is promised as the list had it, on the page, the draw day and the sheet", "[ui][figures]") {
    const Figures s("Plover");
    REQUIRE(s.proposals().count() > 0);
    s.proposals().radio(1)->click();
    s.settle();
    s.workPage->adopt();
    s.settle();
    const auto paper = s.desk().brewSheet("Plover");
    REQUIRE(paper);
    s.workPage->openDrawDay(true);
    const auto view = s.desk().drawDay("Plover");
    for (const Dimension d : allDimensions) {
        const QString told = s.next(1, d);
        CAPTURE(key(d).toStdString(), told.toStdString());
        CHECK(wordsOf(*s.workPage, "adopted").contains(told));
        CHECK(s.drawDay().words().contains(told));
        const QJsonObject band = s.proposal(1)["next_draw"].toObject()[key(d)].toObject();
        const auto row = s.rowOf(*paper, std::string(builtInTexts().find("sheet.dimension." + std::string(name(d)))));
        REQUIRE(row.size() > 2);
        CHECK(row[1] == show(Points{band["value"].toDouble()}));
        CHECK(row[2].find(show(Points{band["low_80"].toDouble()})) != std::string::npos);
        CHECK(row[2].find(show(Points{band["high_80"].toDouble()})) != std::string::npos);
        CHECK(inWords(promisedBand(*view->choice->forecast, d)) == told);
    }
}

TEST_CASE("litres drawn and refilled are the plan's on draw day and on the sheet", "[ui][figures]") {
    for (const char* vessel : {"Plover", "Knot", "Dunlin"}) {
        CAPTURE(vessel);
        const AtAdjust s(vessel);
        const auto plan = s.desk().brewPlan(vessel);
        const auto view = s.desk().drawDay(vessel);
        REQUIRE(plan);
        REQUIRE(view);
        CHECK(view->refill.l == Approx(plan->intoVessel.l).margin(1e-9));
        const auto paper = s.desk().brewSheet(vessel);
        REQUIRE(paper);
        CHECK(Figures::rowOf(*paper, "Refilled")[1] == show(plan->intoVessel));
        CHECK(Figures::rowOf(*paper, "Drawn")[1] == show(view->plannedDraw));
        s.workPage->openDrawDay(true);
        CHECK(s.drawDay().words().join('\n').contains(s.session->amount(plan->intoVessel)));
        CHECK(s.drawDay().words().join('\n').contains(s.session->amount(view->plannedDraw)));
    }
}

TEST_CASE("a difference in the chain of reasons has its sign", "[ui][figures]") {
    const AtAdjust s;
    s.settle();
    const auto job = s.jobOf("Plover");
    const double gap =
        job.input.target.windows[Dimension::acidity].wanted - job.input.combined[Dimension::acidity].mean;
    REQUIRE(gap < -.1); // the vessel is too sour
    const auto advice = *advise(job.input);
    const auto made = explain({job.input, advice, 0, 0}, {OriginKind::verdictGap, Dimension::acidity});
    REQUIRE(made);
    CHECK(render(made->title).find(show(Points{gap})) != std::string::npos);
    CHECK(show(Points{gap}).front() == '-');
}

TEST_CASE("scores are told within the scale of the sheet", "[ui][figures]") {
    CHECK(bandWords({9.8, 9.1, 10.6}) == "9.8 (9.1 to 10.0)");
    CHECK(bandWords({-.3, -.9, .4}) == "0.0 (0.0 to 0.4)");
    CHECK(bandWords({11, 10.5, 12}) == "10.0");
    CHECK(estimateWords({10.4, .39}) == "10.0 ±0.5");
    Trial trial;
    for (const Dimension d : allDimensions)
        trial.next[d] = {9.8, 9.1, 10.6};
    CHECK(forecastBandsOf(trial)[Dimension::body].next.high == 10);
}

TEST_CASE("a mark on a time line tells its day and score", "[ui][figures]") {
    const AtAdjust s;
    s.settle();
    const TargetTimeline& line = part<TargetTimeline>(*s.workPage, "timeline Acidity");
    const TargetTimelineData& look = line.look();
    REQUIRE_FALSE(look.tasted.empty());
    QStringList said;
    for (double x = 0; x < line.width(); x += 1)
        for (double y = 0; y < line.height(); y += 2)
            if (const QString words = line.wordsAt({x, y}); !words.isEmpty() && !said.contains(words))
                said << words;
    for (const TimelinePoint& point : look.tasted)
        CHECK(said.contains(QString("Tasted %1: %2").arg(dayWords(point.on), bandWords(point.band))));
    CHECK(said.filter("draw of " + dayWords(look.nextDraw)).size() >= 1);
    CHECK(line.wordsAt({-50, -50}).isEmpty());
}

// SPDX-License-Identifier: GPL-3.0-or-later
// What the command line answers to --json.
#include "advice/on_scale.h"
#include "desk/advice.h"
#include "desk/full_answer.h"
#include "desk/history.h"
#include "desk/history_table.h"
#include "desk/json.h"
#include "desk/ledger.h"
#include "desk/round.h"
#include "facts/csv_records.h"
#include "quantity/csv.h"

#include <cmath>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace staveline::desk {
namespace {

using Json = nlohmann::ordered_json;

/// A path, an argument or a damaged row may hold bytes that are no UTF-8.
std::string jsonText(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json words(const std::vector<Message>& messages) {
    Json list = Json::array();
    for (const auto& message : messages)
        list.push_back(render(message));
    return list;
}

Json noteJson(const LedgerNote& note) {
    return Json{{"on", isoDay(note.on)}, {"entry", note.entry}, {"text", render(note.text)}};
}

Json notesJson(const std::vector<LedgerNote>& notes) {
    Json list = Json::array();
    for (const auto& note : notes)
        list.push_back(noteJson(note));
    return list;
}

Json perDimension(auto&& of) {
    Json json = Json::object();
    for (Dimension d : allDimensions)
        json[name(d)] = of(d);
    return json;
}

Json bandsJson(const PerDimension<advice::Band>& bands) {
    return perDimension([&](Dimension d) {
        const advice::Band told = advice::onScale(bands[d]);
        return Json{{"value", told.value}, {"low_80", told.low}, {"high_80", told.high}};
    });
}

Json valueJson(const advice::LeverValue& value) {
    return std::visit([](const auto& v) { return Json(v); }, value);
}

std::string verdictWord(tasting::VerdictKind kind) {
    constexpr std::array<std::string_view, 8> names = {"fault_first", "wait_until", "never_tasted", "hold",
                                                       "open",        "move",       "leave_alone",  "taste_again"};
    return std::string(names[static_cast<std::size_t>(kind)]);
}

/// What is not known is null, not nought.
Json partJson(const std::optional<Scores>& part) {
    return part ? perDimension([&](Dimension d) { return Json((*part)[d]); }) : Json();
}

Json moveJson(const advice::Move& move) {
    return Json{{"lever", move.lever},
                {"from", valueJson(move.from)},
                {"to", valueJson(move.to)},
                {"next_draw", partJson(move.next)},
                {"if_kept_up", partJson(move.settled)},
                {"wording", render(move.wording)},
                {"cautions", words(move.cautions)}};
}

Json proposalJson(const advice::Proposal& proposal, bool settled) {
    Json moves = Json::array();
    for (const auto& move : proposal.moves)
        moves.push_back(moveJson(move));
    Json json{{"title", render(proposal.title)},      {"moves", moves},
              {"draw_l", proposal.setting.draw.l},    {"interval_d", proposal.setting.interval.d},
              {"refill_l", proposal.refill.l},        {"this_draw", bandsJson(proposal.thisDraw)},
              {"next_draw", bandsJson(proposal.next)}};
    if (settled)
        json["if_kept_up"] = bandsJson(proposal.settled);
    json["why"] = render(proposal.why);
    json["loss"] = perDimension([&](Dimension d) { return Json(proposal.loss[d]); });
    json["cost"] = proposal.cost;
    json["worth"] = proposal.worth;
    json["reasons"] = words(proposal.reasons);
    json["limits"] = words(proposal.limits);
    json["cautions"] = words(proposal.cautions);
    return json;
}

Json offsetJson(const estimate::Offset& offset) {
    const auto sd = [&](estimate::Offset::Part part) { return std::sqrt(std::max(0.0, offset.cov[part][part])); };
    return Json{{"mean", offset.mean[estimate::Offset::now]},
                {"sd", sd(estimate::Offset::now)},
                {"settled_mean", offset.mean[estimate::Offset::settled]},
                {"settled_sd", sd(estimate::Offset::settled)}};
}

Json evidenceJson(const std::vector<estimate::Evidence>& evidence) {
    Json list = Json::array();
    for (const auto& part : evidence) {
        Json json{{"kind", wordOf(part.kind)}, {"score", part.estimate.mean}, {"sd", part.estimate.sd}};
        if (part.on)
            json["on"] = isoDay(*part.on);
        if (part.kind == estimate::Evidence::Kind::learned)
            json["sittings"] = part.sittings;
        list.push_back(json);
    }
    return list;
}

Json tastingValueJson(const advice::TastingValue& tasting) {
    Json json{{"value", tasting.value}, {"worth_it", tasting.dimension.has_value()}};
    if (tasting.dimension)
        json["dimension"] = name(*tasting.dimension);
    return json;
}

Json verdictsJson(const PerDimension<tasting::Verdict>& verdicts, const estimate::Estimates& estimates) {
    return perDimension([&](Dimension d) {
        const tasting::Verdict& v = verdicts[d];
        Json json{{"verdict", verdictWord(v.kind)},
                  {"estimate", advice::onScale(estimates.combined[d].mean)},
                  {"plus_minus_80", estimates.combined[d].sd * tasting::z80},
                  {"gap", v.gap},
                  {"reason", render(v.reason)}};
        if (v.until)
            json["until"] = isoDay(*v.until);
        return json;
    });
}

Json outcomeJson(const forward::Outcome& outcome, const PerDimension<advice::Band>& bands) {
    return Json{{"scores", perDimension([&](Dimension d) { return Json(advice::onScale(bands[d].value)); })},
                {"bands", bandsJson(bands)},
                {"ph", outcome.ph.ph},
                {"ta_g_l", outcome.ta.gPerL},
                {"alcohol_pct_vol", outcome.alcohol.pct},
                {"apparent_extract_p", outcome.gravity.p},
                {"bitterness_ibu", outcome.bitterness.ibu}};
}

} // namespace

namespace {

Json steeringJson(const AgeSteering& s) {
    Json json{{"wanted_age_d", s.wanted.d},
              {"reachable", s.reachable},
              {"reached_on", isoDay(s.reached)},
              {"age_at_draw_d", s.atDraw.d},
              {"age_after_refill_d", s.afterRefill.d},
              {"next_draw_on", isoDay(s.again)},
              {"age_at_next_draw_d", s.atNextDraw.d},
              {"by_interval_on", isoDay(s.byInterval)}};
    json["draw_to_keep_l"] = s.keeps ? Json(s.keeps->l) : Json();
    json["draw_to_bring_back_l"] = s.brings ? Json(s.brings->l) : Json();
    json["words"] = words(s.words);
    return json;
}

} // namespace

std::string toJson(const std::vector<VesselSummary>& cellar) {
    Json list = Json::array();
    for (const auto& vessel : cellar) {
        Json json{{"vessel", vessel.name},
                  {"shape", wordOf(vessel.facts.shape)},
                  {"material", wordOf(vessel.facts.material)},
                  {"capacity_l", vessel.facts.capacity.l},
                  {"volume_l", vessel.now.volume.l},
                  {"mean_age_d", vessel.now.meanAge.d},
                  {"age_sd_d", vessel.now.ageSd.d},
                  {"retired", vessel.retired},
                  {"headline", render(vessel.headline)},
                  {"due", render(vessel.due.text)},
                  {"due_on", isoDay(vessel.due.on)},
                  {"empty", vessel.toFill},
                  {"findings", notesJson(vessel.findings)}};
        if (vessel.toFill && !vessel.retired)
            json["dates"] = Json{{"brew", isoDay(vessel.dates.brew)},
                                 {"fill", isoDay(vessel.dates.draw)},
                                 {"next_sample", isoDay(vessel.dates.nextSample)},
                                 {"next_draw", isoDay(vessel.dates.nextDraw)}};
        else if (vessel.opened)
            json["dates"] = Json{{"sample", isoDay(vessel.dates.sample)},
                                 {"brew", isoDay(vessel.dates.brew)},
                                 {"draw", isoDay(vessel.dates.draw)},
                                 {"next_sample", isoDay(vessel.dates.nextSample)},
                                 {"next_draw", isoDay(vessel.dates.nextDraw)}};
        if (!vessel.facts.room.empty())
            json["room"] = vessel.facts.room;
        if (vessel.round)
            json["round"] = Json{{"on", isoDay(vessel.round->last.on)},
                                 {"seen", render(seenWords(vessel.round->last))},
                                 {"next_look", isoDay(vessel.round->next)}};
        if (!vessel.seen.words.empty())
            json["at_vessel"] = words(vessel.seen.words);
        if (vessel.steering)
            json["by_age"] = steeringJson(*vessel.steering);
        if (!vessel.fault.empty())
            json["fault"] = vessel.fault;
        Json generations = Json::array();
        for (const auto& generation : vessel.now.generations)
            generations.push_back({{"on", isoDay(generation.on)}, {"share", generation.share.of1}});
        json["generations"] = generations;
        list.push_back(json);
    }
    return jsonText(list);
}

std::string toJson(const AdviceJob& job, const advice::Advice& advice) {
    Json answers = Json::array();
    for (const auto& answer : answersOf(advice.verdicts, job.estimates.faults, job.dates)) {
        Json lines = Json::array();
        for (const auto& line : answer.lines)
            lines.push_back({{"head", render(line.head)}, {"words", render(line.words)}});
        answers.push_back({{"title", render(answer.title)}, {"lines", lines}});
    }
    Json proposals = Json::array();
    for (const auto& proposal : advice.proposals)
        proposals.push_back(proposalJson(proposal, job.input.withSettled));
    Json json{{"vessel", job.vessel},
              {"model_version", std::string(forward::modelVersion)},
              {"draw_on", isoDay(job.dates.draw)},
              {"brew_on", isoDay(job.dates.brew)},
              {"verdicts", verdictsJson(advice.verdicts, job.estimates)},
              {"offsets", perDimension([&](Dimension d) { return offsetJson(job.input.offsets[d]); })},
              {"evidence", perDimension([&](Dimension d) { return evidenceJson(job.input.evidence[d]); })},
              {"value_of_tasting", tastingValueJson(advice.tasting)},
              {"fault_first", advice.faultFirst},
              {"answers", answers},
              {"proposals", proposals},
              {"leave_it_alone", proposalJson(advice.leaveAlone, job.input.withSettled)},
              {"notes", words(advice.notes)},
              {"findings", notesJson(job.findings)}};
    if (job.steering)
        json["by_age"] = steeringJson(*job.steering);
    if (advice.usual)
        json["usual_recipe"] = proposalJson(*advice.usual, job.input.withSettled);
    return jsonText(json);
}

std::string toJson(const advice::Trial& prediction) {
    return jsonText(Json{{"this_draw", outcomeJson(prediction.thisBeer, prediction.thisDraw)},
                         {"next_draw", outcomeJson(prediction.nextBeer, prediction.next)},
                         {"if_kept_up", bandsJson(prediction.settled)},
                         {"loss", perDimension([&](Dimension d) { return Json(prediction.loss[d]); })}});
}

std::string toJson(const brewing::BrewPlan& plan) {
    Json grist = Json::array(), mash = Json::array(), hops = Json::array();
    for (const auto& grain : plan.grist)
        grist.push_back({{"grain", grain.id}, {"kg", grain.mass.kg}, {"late", grain.late}});
    for (const auto& stage : plan.mash)
        mash.push_back({{"temperature_c", stage.temperature.c},
                        {"minutes", stage.rest.min},
                        {"water_l", stage.water.l},
                        {"water_c", stage.waterTemperature.c}});
    for (const auto& addition : plan.hops)
        hops.push_back({{"name", addition.name},
                        {"g", addition.mass.g},
                        {"minutes", addition.boiled.min},
                        {"ibu", addition.brings.ibu}});
    return jsonText(Json{{"into_vessel_l", plan.intoVessel.l},
                         {"into_fermenter_l", plan.intoFermenter.l},
                         {"left_over_l", plan.leftOver.l},
                         {"pre_boil_hot_l", plan.preBoilHot.l},
                         {"sparge_l", plan.sparge.l},
                         {"mash_volume_l", plan.mashVolume.l},
                         {"original_gravity_p", plan.originalGravity.p},
                         {"final_gravity_p", plan.finalGravity.p},
                         {"alcohol_pct_vol", plan.alcohol.pct},
                         {"bitterness_ibu", plan.bitterness.ibu},
                         {"colour_ebc", plan.colour.ebc},
                         {"sugar_kg", plan.sugar.kg},
                         {"grist", grist},
                         {"mash", mash},
                         {"hops", hops},
                         {"findings", words(plan.findings)},
                         {"assumptions", words(plan.assumptions)},
                         {"cautions", words(plan.cautions)}});
}

std::string toJson(const std::string& name, const std::string& value) {
    return jsonText(Json{{name, value}});
}

std::string toJson(const Recorded& recorded) {
    Json findings = Json::array();
    for (const auto& [vessel, note] : recorded.findings) {
        Json json = noteJson(note);
        json["vessel"] = vessel;
        findings.push_back(json);
    }
    return jsonText(Json{{"edit", recorded.edit}, {"findings", findings}});
}

std::string toJson(const Fault& fault) {
    return jsonText(
        Json{{"fault", Json{{"path", fault.path}, {"cause", render(fault.cause)}, {"remedy", render(fault.remedy)}}}});
}

std::string toJson(const book::CheckReport& report) {
    Json damages = Json::array();
    for (const auto& damage : report.damages)
        damages.push_back({{"table", damage.table}, {"row", damage.row}, {"what", render(damage.what)}});
    return jsonText(Json{{"sound", report.sound()}, {"rows_checked", report.rowsChecked}, {"damages", damages}});
}

namespace {

std::optional<double> meanOf(const std::optional<tasting::Estimate>& estimate) {
    return estimate ? std::optional(estimate->mean) : std::nullopt;
}

std::optional<double> sdOf(const std::optional<tasting::Estimate>& estimate) {
    return estimate ? std::optional(estimate->sd) : std::nullopt;
}

/// The history's columns, in order; the one list behind JSON and CSV.
void eachColumn(const HistoryRow& row, auto&& put) {
    for (Dimension d : allDimensions)
        put(std::string(name(d)), meanOf(row.tasted[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_sd", sdOf(row.tasted[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_forecast", meanOf(row.forecast[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_forecast_sd", sdOf(row.forecast[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_expected", meanOf(row.expected[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_expected_sd", sdOf(row.expected[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_offset", meanOf(row.offset[d]));
    for (Dimension d : allDimensions)
        put(std::string(name(d)) + "_offset_sd", sdOf(row.offset[d]));
    put("volume_l", row.volume);
    put("moved_l", row.moved);
    put("mean_age_d", row.meanAge);
    put("gravity_sg", row.measured.gravity);
    put("ph", row.measured.ph);
    put("ta_g_l", row.measured.ta);
    put("temperature_c", row.measured.temperature);
    put("ibu", row.measured.bitterness);
    put("refill_ibu", row.refillBitterness);
    put("mash_c", row.mashTemperature);
}

std::string joined(const auto& list, auto&& word) {
    std::string text;
    for (const auto& each : list)
        text += (text.empty() ? "" : "; ") + word(each);
    return text;
}

/// "Rook TA1 6.5 / 7": cold, then at cellar temperature.
std::string scoreWords(const tasting::Score& score) {
    const auto one = [](const std::optional<double>& value) { return value ? fmt::format("{:g}", *value) : "-"; };
    return fmt::format("{}{}{} {} / {}", score.taster, score.taster.empty() ? "" : " ", score.attribute,
                       one(score.cold), one(score.cellar));
}

/// The columns of words, behind the numbers.
void eachWord(const HistoryRow& row, auto&& put) {
    put("learn_reason", row.learnReason);
    put("at", row.at);
    put("lot", row.lot);
    put("brew", row.brew);
    put("other_vessel", row.other);
    put("faults", joined(row.faults, [](const auto& mark) { return fmt::format("{} {}", mark.fault, mark.severity); }));
    put("scores", joined(row.scores, scoreWords));
    put("round", row.round ? render(seenWords(*row.round)) : std::string());
    put("note", row.note);
}

template <class T> std::optional<double> plain(const std::optional<T>& value) {
    if (!value)
        return {};
    if constexpr (Quantity<T>)
        return raw(*value);
    else
        return *value;
}

Json rowsJson(const std::vector<HistoryRow>& rows) {
    Json list = Json::array();
    for (const auto& row : rows) {
        Json json{{"on", isoDay(row.on)}, {"what", wordOf(row)}};
        eachColumn(row, [&](const std::string& name, const auto& value) {
            if (const auto number = plain(value))
                json[name] = *number;
        });
        if (row.happened)
            json["happened"] = wordOf(*row.happened);
        if (row.kind == HistoryKind::sitting)
            json["learn"] = row.learn;
        eachWord(row, [&](const char* name, const std::string& words) {
            if (!words.empty())
                json[name] = words;
        });
        list.push_back(json);
    }
    return list;
}

Json promiseJson(const PromiseOutcome& promise) {
    Json json{{"made", isoDay(promise.made)}, {"for", isoDay(promise.forDay)}, {"proposal", promise.proposal}};
    for (Dimension d : allDimensions) {
        Json& outcome = json[std::string(name(d))];
        outcome = Json{{"promised", promise.told[d].mean}, {"sd", promise.told[d].sd}};
        if (promise.tasted[d])
            outcome["tasted"] = promise.tasted[d]->mean;
        if (promise.inside[d])
            outcome["inside_80"] = *promise.inside[d];
        if (const auto nearer = promise.nearer(d))
            outcome["nearer_than_no_change"] = *nearer;
    }
    return json;
}

Json lineageJson(const std::vector<LineageLine>& lineage) {
    Json list = Json::array();
    for (const auto& line : lineage)
        list.push_back(
            Json{{"on", isoDay(line.on)}, {"vessel", line.vessel}, {"back", line.back}, {"text", render(line.text)}});
    return list;
}

Json woodJson(const WoodLife& wood) {
    Json json{{"fills_before", wood.fillsBefore}, {"lost_l", wood.lost.l}};
    const auto add = [&](const std::string& name, const Times& times) {
        json[name] = times.count;
        if (times.last)
            json["last_" + name] = isoDay(*times.last);
    };
    add("fills", wood.fills);
    add("refills", wood.refills);
    add("repairs", wood.repairs);
    add("leaks", wood.leaks);
    add("cleanings", wood.cleanings);
    return json;
}

} // namespace

std::string toJson(const HistoryView& history) {
    Json promises = Json::array();
    for (const auto& promise : history.promises)
        promises.push_back(promiseJson(promise));
    Json learned = Json::array();
    for (const auto& line : history.learned)
        learned.push_back(render(line.words));
    return jsonText(Json{{"rows", rowsJson(history.rows)},
                         {"promises", promises},
                         {"record", words(history.record)},
                         {"learned", learned},
                         {"lineage", lineageJson(history.life.lineage)},
                         {"wood", woodJson(history.life.wood)},
                         {"findings", notesJson(history.findings)}});
}

HistoryTable tableOf(const std::vector<HistoryRow>& history) {
    HistoryTable table{{"on", "what"}, 0, {}};
    eachColumn(HistoryRow{}, [&](const std::string& name, const auto&) { table.columns.push_back(name); });
    table.columns.insert(table.columns.end(), {"happened", "learn"});
    table.freeText = table.columns.size();
    eachWord(HistoryRow{}, [&](const std::string& name, const std::string&) { table.columns.push_back(name); });
    for (const auto& row : history) {
        auto& cells = table.rows.emplace_back();
        const auto add = [&](const std::string& words) {
            words.empty() ? cells.emplace_back(std::monostate{}) : cells.emplace_back(words);
        };
        cells.emplace_back(row.on);
        add(std::string(wordOf(row)));
        eachColumn(row, [&](const std::string&, const auto& value) {
            const auto number = plain(value);
            number ? cells.emplace_back(*number) : cells.emplace_back(std::monostate{});
        });
        add(row.happened ? std::string(wordOf(*row.happened)) : "");
        add(row.kind != HistoryKind::sitting ? "" : row.learn ? "yes" : "no");
        eachWord(row, [&](const std::string&, const std::string& words) { add(words); });
    }
    return table;
}

namespace {

std::string csvCellOf(const HistoryTable::Cell& cell, bool freeText) {
    if (const auto* number = std::get_if<double>(&cell))
        return fmt::format("{:.6g}", *number);
    if (const auto* day = std::get_if<Day>(&cell))
        return isoDay(*day);
    const auto* words = std::get_if<std::string>(&cell);
    if (!words)
        return {};
    return freeText ? facts::quotedCell(withoutFormula(*words)) : *words;
}

} // namespace

std::string toCsv(const std::vector<HistoryRow>& history) {
    const HistoryTable table = tableOf(history);
    std::string text = fmt::format("{}\r\n", fmt::join(table.columns, ","));
    for (const auto& row : table.rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            text += (i == 0 ? "" : ",") + csvCellOf(row[i], i >= table.freeText);
        text += "\r\n";
    }
    return text;
}

} // namespace staveline::desk

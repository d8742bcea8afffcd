// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/adopted_note.h"

#include "desk/brew.h"
#include "desk/draw_day.h"
#include "ui/adjust/verdict_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {

using tasting::scores;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Adopted", source);
}

QString proposalName(const desk::PlannedRecipe& planned) {
    if (planned.proposal == facts::ChoiceFact::own)
        return tr("your own setting");
    return planned.proposal == 0 ? tr("leave it alone") : tr("proposal %1").arg(planned.proposal);
}

QString promiseWords(const facts::Forecast& told) {
    QStringList scores;
    for (const Dimension d : allDimensions)
        scores << nameOf(d).toLower() + QLatin1Char(' ') + estimateWords({told.mean[d], told.sd[d]});
    return tr("Promised for the draw of %1: %2.").arg(dayWords(told.nextDraw), scores.join(QStringLiteral(", ")));
}

constexpr double worthSaying = .3; // what is tasted [points]

/// Sittings and titrations of this cycle that the estimate rests on, each once.
std::vector<estimate::Evidence> latestEvidence(const desk::AdviceJob& job) {
    std::vector<estimate::Evidence> all;
    for (const Dimension d : allDimensions)
        for (const estimate::Evidence& known : job.estimates.evidence[d]) {
            const bool repeated = std::any_of(all.begin(), all.end(), [&](const estimate::Evidence& other) {
                return other.kind == known.kind && other.on == known.on;
            });
            if (known.on && !repeated)
                all.push_back(known);
        }
    return all;
}

} // namespace

QString adoptedWords(const desk::Desk& desk, const facts::VesselName& vessel) {
    const auto planned = desk.planned(vessel);
    if (!planned || planned->from != desk::PlannedRecipe::From::choice)
        return {};
    QString words = tr("Adopted: %1").arg(proposalName(*planned));
    if (planned->since)
        words += tr(", since %1").arg(dayWords(*planned->since));
    words += QLatin1Char('.');
    if (const auto choice = desk.lastChoice(vessel); choice && choice->forecast)
        words += QLatin1Char(' ') + promiseWords(*choice->forecast);
    return words;
}

QString sinceAdopted(const Session& session, const desk::AdviceJob& job, const advice::Trial& adopted) {
    const auto choice = session.desk().lastChoice(job.vessel);
    if (!choice || !choice->forecast)
        return {};
    QStringList words;
    bool fresh = false;
    for (const estimate::Evidence& known : latestEvidence(job)) {
        if (!known.on || *known.on <= choice->on)
            continue;
        const bool tasted = known.kind == estimate::Evidence::Kind::sitting;
        words << text(say(tasted ? "ui.adjust.since.tasted" : "ui.adjust.since.measured").with("on", *known.on));
        fresh = true;
    }
    PerDimension<std::optional<double>> now;
    for (const Dimension d : allDimensions)
        now[d] = adopted.next[d].value;
    Scores least{{worthSaying, worthSaying, worthSaying}};
    const auto moved = desk::movedPromises(*choice->forecast, now, least);
    for (const Message& message : moved)
        words << session.words(message);
    if (fresh && moved.empty())
        words << own("ui.adjust.since.nothing");
    return words.join(QLatin1Char(' '));
}

QString whyNotAdopt(const desk::Desk& desk, const std::optional<facts::BrewFact>& brewed) {
    if (desk.readOnly())
        return own("ui.adjust.adopt.read_only");
    if (brewed)
        return text(say("ui.adjust.adopt.brewed").with("brew", brewed->name).with("on", brewed->on));
    return {};
}

} // namespace staveline::ui

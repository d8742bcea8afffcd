// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/adopted_note.h"

#include "desk/brew.h"
#include "desk/draw_day.h"
#include "quantity/constants.h"
#include "ui/present/choice_words.h"
#include "ui/present/score_words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace staveline::ui {

using tasting::scores;

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Adopted", source);
}

QString promiseWords(const facts::Forecast& told) {
    QStringList scores;
    for (const Dimension d : allDimensions)
        scores << inSentence(nameOf(d)) + QLatin1Char(' ') + bandWords(desk::promisedBand(told, d));
    return tr("Promised for the draw of %1: %2.").arg(dayWords(told.nextDraw), scores.join(QStringLiteral(", ")));
}

/// As far as a promise is told [points].
constexpr double asTold = .05;

Message sinceWords(const estimate::Evidence& known) {
    const bool tasted = known.kind == estimate::Evidence::Kind::sitting;
    return say(tasted     ? "ui.adjust.since.tasted"
               : known.ta ? "ui.adjust.since.titrated"
                          : "ui.adjust.since.ph")
        .with("on", *known.on);
}

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

QString adoptedWords(const desk::Desk& desk, const desk::AdviceJob& job) {
    const auto planned = desk.planned(job.vessel);
    if (!planned || planned->from != desk::PlannedRecipe::From::choice)
        return {};
    const bool usual = planned->proposal == facts::ChoiceFact::own && job.input.usual == job.inUse;
    const QString what = usual ? usualName() : planned->proposal == 0 ? tr("no change") : choiceName(planned->proposal);
    QString words =
        planned->since ? tr("Decision of %1: %2.").arg(dayWords(*planned->since), what) : tr("Decision: %1.").arg(what);
    if (const auto choice = desk.lastChoice(job.vessel); choice && choice->forecast)
        words += QLatin1Char(' ') + promiseWords(*choice->forecast);
    return words;
}

QString sinceAdopted(const Session& session, const desk::AdviceJob& job, const advice::Trial& adopted) {
    const auto choice = session.desk().lastChoice(job.vessel);
    if (!choice || !choice->forecast)
        return {};
    PerDimension<std::optional<double>> now;
    bool apart = false;
    for (const Dimension d : allDimensions) {
        now[d] = adopted.next[d].value;
        apart = apart || std::abs(adopted.next[d].value - choice->forecast->mean[d]) > asTold;
    }
    QStringList words;
    // The book keeps no order within a day: what is of the same day came after if the promise is no longer met.
    for (const estimate::Evidence& known : latestEvidence(job))
        if (*known.on > choice->on || (*known.on == choice->on && apart))
            words << text(sinceWords(known));
    const bool fresh = !words.isEmpty();
    constexpr double least = constants::advice::untasted;
    const auto moved = desk::movedPromises(*choice->forecast, now, Scores{{least, least, least}});
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

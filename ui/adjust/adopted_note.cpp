// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/adopted_note.h"

#include "desk/brew.h"
#include "ui/adjust/verdict_words.h"

#include <QCoreApplication>

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

} // namespace

QString adoptedWords(const desk::Desk& desk, const facts::VesselName& vessel) {
    const auto planned = desk.planned(vessel);
    if (!planned || planned->from != desk::PlannedRecipe::From::choice)
        return {};
    QString words = tr("Adopted: %1").arg(proposalName(*planned));
    if (planned->since)
        words += tr(", since %1").arg(dayWords(*planned->since));
    QStringList moves;
    for (const std::string& move : planned->moves)
        moves << qs(move);
    if (!moves.isEmpty())
        words += tr(" (%1)").arg(moves.join(QStringLiteral("; ")));
    words += QLatin1Char('.');
    if (const auto choice = desk.lastChoice(vessel); choice && choice->forecast)
        words += QLatin1Char(' ') + promiseWords(*choice->forecast);
    return words;
}

QString whyNotAdopt(const desk::Desk& desk, const std::optional<facts::BrewFact>& brewed) {
    if (desk.readOnly())
        return own("ui.adjust.adopt.read_only");
    if (brewed)
        return text(say("ui.adjust.adopt.brewed").with("brew", brewed->name).with("on", brewed->on));
    return {};
}

} // namespace staveline::ui

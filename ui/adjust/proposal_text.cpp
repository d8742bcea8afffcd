// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/adjust/proposal_text.h"

#include "advice/on_scale.h"
#include "ui/present/score_words.h"

#include <QCoreApplication>

namespace staveline::ui {
namespace {

QString bandLine(Dimension d, const advice::Band& predicted) {
    const advice::Band band = advice::onScale(predicted);
    const auto points = [](double value) { return qs(show(Points{value})); };
    return QCoreApplication::translate("ProposalText", "%1 at the next draw: %2 (%3 to %4)")
        .arg(nameOf(d), points(band.value), points(band.low), points(band.high));
}

} // namespace

QString proposalText(const advice::Proposal& proposal, const Session& session) {
    QStringList lines{session.words(proposal.title)};
    for (const advice::Move& move : proposal.moves)
        lines << QStringLiteral("- ") + session.words(move.wording);
    for (const Dimension d : allDimensions)
        lines << bandLine(d, proposal.next[d]);
    if (!proposal.why.key.empty())
        lines << session.words(proposal.why);
    for (const auto* list : {&proposal.reasons, &proposal.limits, &proposal.cautions})
        for (const Message& message : *list)
            lines << session.words(message);
    return lines.join(QLatin1Char('\n'));
}

} // namespace staveline::ui

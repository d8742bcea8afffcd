// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/lot_parts.h"

#include "tasting/verdict.h"
#include "ui/present/score_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {

using Weight = MessageLabel::Weight;

namespace {

QString lotTr(const char* words) {
    return QCoreApplication::translate("Lot", words);
}

AnswerPart beerOf(const desk::LotView& lot, const Session& session) {
    AnswerPart part{lotTr("Beer"), session.amount(lot.litres), {}};
    if (lot.litres.l > 0)
        part.lines.push_back({{}, lotTr("%1 old on average").arg(spanWords(lot.meanAge))});
    if (lot.gravity)
        part.lines.push_back(
            {{}, lotTr("gravity %1 on %2").arg(session.amount(*lot.gravity), dayWords(*lot.gravityOn))});
    for (const desk::LotTrait& trait : lot.traits) {
        const QString name = qs(labelOf(trait.trait)), value = session.amount(amountOf(trait.trait, trait.value));
        const QString spread = session.amount(amountOf(trait.trait, trait.sd * tasting::z80));
        part.lines.push_back({{},
                              (trait.measured ? lotTr("%1 %2 ± %3, measured") : lotTr("%1 %2 ± %3, estimated"))
                                  .arg(name, value, spread)});
    }
    return part;
}

AnswerPart originOf(const desk::LotView& lot, const Session& session) {
    AnswerPart part{lotTr("Where it came from"), {}, {}};
    for (const desk::LotPartView& from : lot.parts) {
        const QString name = from.vessel.empty() ? qs(from.added) : qs(from.vessel);
        part.lines.push_back({{}, lotTr("%1 of %2, %3").arg(session.amount(from.litres), name, dayWords(from.on))});
        QStringList generations;
        for (const desk::LotGeneration& one : from.generations)
            if (one.share.of1 > .05)
                generations << lotTr("%1 of %2")
                                   .arg(session.amount(one.share), one.brew.empty() ? dayWords(one.on) : qs(one.brew));
        if (!generations.isEmpty())
            part.lines.push_back({{}, generations.join(QStringLiteral(", "))});
    }
    return part;
}

AnswerPart fillingsOf(const desk::LotView& lot, const Session& session) {
    AnswerPart part{lotTr("Filled"), {}, {}};
    for (const desk::PackageView& filled : lot.packages) {
        const bool kegs = filled.kind == facts::PackageKind::keg;
        part.lines.push_back(
            {{},
             (kegs ? lotTr("%1 of %2: %3 of %4 kegs of %5 left") : lotTr("%1 of %2: %3 of %4 bottles of %5 left"))
                 .arg(qs(filled.name), dayWords(filled.on))
                 .arg(filled.left)
                 .arg(filled.count)
                 .arg(session.amount(filled.size))});
        if (filled.planned && filled.found)
            part.lines.push_back(
                {{},
                 lotTr("%1 planned, %2 found").arg(session.amount(*filled.planned), session.amount(*filled.found))});
        if (filled.fizz)
            part.lines.push_back({{}, own("ui.word.opened." + std::string(wordOf(*filled.fizz)))});
        if (!filled.verdict.empty())
            part.lines.push_back({{}, qs(filled.verdict)});
        if (!filled.overrideReason.empty())
            part.lines.push_back({Weight::warning, lotTr("Against the guard: %1").arg(qs(filled.overrideReason))});
    }
    return part;
}

} // namespace

FinishAnswer answerOf(const desk::LotView& lot, const Session& session) {
    FinishAnswer answer;
    answer.first = {Weight::note, own("ui.lot.nothing_waits")};
    if (!lot.waits.empty())
        answer.first = {Weight::note, sentenceCase(session.words(lot.waits.front().text))};
    AnswerPart later{lotTr("Then"), {}, {}};
    for (std::size_t i = 1; i < lot.waits.size(); ++i)
        later.lines.push_back({{}, sentenceCase(session.words(lot.waits[i].text))});
    answer.parts = {later, beerOf(lot, session), fillingsOf(lot, session), originOf(lot, session)};
    return answer;
}

} // namespace staveline::ui

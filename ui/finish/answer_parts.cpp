// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/finish/answer_parts.h"

#include <QCoreApplication>

#include <algorithm>

namespace staveline::ui {

using finishing::GuardAnswer;
using Weight = MessageLabel::Weight;

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("FinishAnswer", words);
}

/// Takes messages out of a list by the start of their keys, so that none is told twice and none is lost.
class Messages {
public:
    Messages(std::vector<Message> all, const Session& session) : left_(std::move(all)), session_(session) {}

    void take(std::vector<AnswerLine>& into, std::optional<Weight> weight, std::initializer_list<const char*> starts) {
        for (const char* start : starts)
            std::erase_if(left_, [&](const Message& message) {
                if (!message.key.starts_with(start))
                    return false;
                into.push_back({weight, session_.words(message)});
                return true;
            });
    }
    void takeRest(std::vector<AnswerLine>& into, std::optional<Weight> weight) { take(into, weight, {""}); }

private:
    std::vector<Message> left_;
    const Session& session_;
};

Weight weightOf(GuardAnswer answer) {
    switch (answer) {
    case GuardAnswer::clear:
        return Weight::note;
    case GuardAnswer::thin:
    case GuardAnswer::overridden:
        return Weight::warning;
    case GuardAnswer::refused:
        break;
    }
    return Weight::fault;
}

QString sugarNumber(const desk::PackingAnswer& packing, const Session& session) {
    if (packing.sugar.isLiquid())
        return session.amount(packing.priming.liquid);
    return session.amount(Grams{packing.priming.batch.kg * 1000});
}

QString pressureNumber(const finishing::GuardVerdict& verdict, const Session& session) {
    const QString most = session.amount(verdict.pressures.warmest);
    return verdict.limit ? tr("%1 of %2").arg(most, session.amount(*verdict.limit)) : most;
}

} // namespace

FinishAnswer answerOf(const desk::PackingAnswer& packing, const Session& session) {
    Messages words(packing.words, session), cautions(packing.cautions, session);
    FinishAnswer answer;
    AnswerPart guard{tr("Bottle guard"), {}, {}}, sugar{tr("Sugar"), sugarNumber(packing, session), {}},
        pressure{tr("Pressure"), pressureNumber(packing.verdict, session), {}}, fruit{tr("Fruit"), {}, {}},
        keg{tr("Keg"), packing.keg ? session.amount(*packing.keg) : QString(), {}}, filling{tr("Filling"), {}, {}},
        firstBottle{tr("Storage and the first bottle"), {}, {}}, before{tr("Before all"), {}, {}};
    std::vector<AnswerLine> first;
    const Weight weight = weightOf(packing.verdict.answer);
    words.take(first, weight,
               {"finishing.pack.clear", "finishing.pack.thin", "finishing.pack.refused", "finishing.pack.overridden"});
    answer.first = first.empty() ? AnswerLine{weight, {}} : first.front();
    words.take(sugar.lines, {},
               {"finishing.pack.bottles", "finishing.pack.priming", "finishing.pack.liquid_priming",
                "finishing.pack.residual", "finishing.yeast."});
    cautions.take(sugar.lines, Weight::warning, {"caution.prime."});
    words.take(pressure.lines, {}, {"finishing.pack.pressure", "finishing.pack.margin", "finishing.pack.over"});
    words.take(keg.lines, {}, {"finishing.pack.keg"});
    words.take(fruit.lines, {}, {"finishing.pack.fruit"});
    cautions.take(fruit.lines, Weight::warning, {"caution.ready.fruit"});
    words.take(guard.lines, Weight::fault, {"finishing.guard."});
    words.takeRest(guard.lines, {});
    cautions.take(filling.lines, Weight::warning, {"caution.fill.", "caution.ready.co2", "caution.ready.cleaners"});
    cautions.take(firstBottle.lines, Weight::warning, {"caution.keep."});
    cautions.takeRest(before.lines, Weight::warning);
    answer.parts = {guard, before, sugar, pressure, keg, fruit, filling, firstBottle};
    return answer;
}

FinishAnswer answerOf(const desk::BlendAnswer& blend, const Session& session) {
    Messages words(blend.words, session), cautions(blend.cautions, session);
    FinishAnswer answer;
    AnswerPart missing{tr("What is missing"), {}, {}}, pour{tr("Pour"), session.amount(blend.blend.litres), {}},
        bench{tr("Taste first"), {}, {}}, comes{tr("What comes of it"), {}, {}}, ground{tr("What it rests on"), {}, {}},
        before{tr("Before all"), {}, {}};
    answer.first = blend.blend.reached() ? AnswerLine{Weight::note, own("ui.finish.blend.reached")}
                                         : AnswerLine{Weight::warning, own("ui.finish.blend.not_reached")};
    words.take(missing.lines, Weight::warning, {"finishing.missing."});
    words.take(pour.lines, {}, {"finishing.blend.part"});
    cautions.take(pour.lines, Weight::warning, {"caution.ready.co2"});
    words.take(bench.lines, {}, {"finishing.blend.bench"});
    cautions.take(bench.lines, Weight::warning, {"caution.blend.bench"});
    words.take(comes.lines, {}, {"finishing.blend.aimed", "finishing.blend.comes"});
    cautions.take(comes.lines, Weight::warning, {"caution.blend.ferments"});
    words.takeRest(ground.lines, {});
    cautions.takeRest(before.lines, Weight::warning);
    answer.parts = {missing, before, pour, bench, comes, ground};
    return answer;
}

} // namespace staveline::ui

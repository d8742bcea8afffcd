// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/full_answer.h"

#include "quantity/language.h"
#include "quantity/text.h"
#include "tasting/sitting.h"

#include <algorithm>

namespace staveline::desk {

using tasting::Verdict;
using tasting::VerdictKind;

namespace {

using Verdicts = PerDimension<Verdict>;
using Faults = std::vector<tasting::FaultMark>;

Message plain(const std::string& text) {
    return say("desk.plain").with("text", text);
}

/// The sheet's causes begin small and end without a stop.
Message sentence(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return plain(text + ".");
}

/// "acidity and body" of those with this verdict.
Message concerned(const Verdicts& verdicts, VerdictKind kind) {
    std::vector<std::string> names;
    for (const Dimension d : allDimensions)
        if (verdicts[d].kind == kind)
            names.push_back(render(say("sheet.dimension." + std::string(name(d)))));
    constexpr std::array keys = {"desk.answer.none", "desk.answer.one", "desk.answer.two", "desk.answer.three"};
    Message message = say(keys[names.size()]);
    for (std::size_t i = 0; i < names.size(); ++i)
        message.arguments.push_back({std::string(1, static_cast<char>('a' + i)), names[i], {}});
    return message;
}

const Verdict* firstOf(const Verdicts& verdicts, VerdictKind kind) {
    const auto& all = verdicts.values;
    const auto found =
        std::find_if(all.begin(), all.end(), [&](const Verdict& verdict) { return verdict.kind == kind; });
    return found == all.end() ? nullptr : &*found;
}

Message faultTitle(const Faults& faults, const std::string& fault, const std::string& name) {
    for (const tasting::FaultMark& mark : faults)
        if (mark.fault == fault)
            return say(mark.severity >= 3 ? "desk.answer.fault.strong" : "desk.answer.fault.clear").with("fault", name);
    return say("desk.answer.fault").with("fault", name);
}

FullAnswer faultAnswer(const Faults& faults, const Verdict& verdict) {
    const tasting::FaultRule* rule = tasting::builtInSheet().findFault(verdict.fault);
    FullAnswer answer{verdict, faultTitle(faults, verdict.fault, rule ? rule->name : verdict.fault), {}};
    const auto line = [&](const char* head, Message words) {
        answer.lines.push_back({say(std::string("desk.answer.head.") + head), std::move(words)});
    };
    if (!rule) {
        line("do", say("desk.answer.unknown_fault"));
        return answer;
    }
    line("cause", sentence(rule->cause));
    line("do", plain(rule->action));
    line("drawing", say(rule->drawAllowed ? "tasting.draw.allowed" : "tasting.draw.not"));
    line("refill", say(rule->refillAdvice));
    if (verdict.until)
        line("look", say("desk.answer.day").with("on", *verdict.until));
    line("recipe", say("desk.answer.no_recipe"));
    return answer;
}

FullAnswer waitAnswer(const Verdicts& verdicts, const Verdict& verdict) {
    FullAnswer answer{
        verdict, say("desk.answer.wait").with("what", render(concerned(verdicts, VerdictKind::waitUntil))), {}};
    if (verdict.until)
        answer.lines.push_back({say("desk.answer.head.until"), say("desk.answer.day").with("on", *verdict.until)});
    answer.lines.push_back({say("desk.answer.head.why"), verdict.reason});
    answer.lines.push_back({say("desk.answer.head.else"),
                            say(verdict.gravityFalls ? "desk.answer.gravity_falling" : "desk.answer.still_moving")});
    return answer;
}

FullAnswer firstTasteAnswer(const Verdicts& verdicts, const Verdict& verdict) {
    return {verdict,
            say("desk.answer.never").with("what", render(concerned(verdicts, VerdictKind::neverTasted))),
            {{say("desk.answer.head.first"), say("desk.answer.taste_first")},
             {say("desk.answer.head.meanwhile"), say("desk.answer.no_ground")}}};
}

FullAnswer tasteAnswer(const Verdicts& verdicts, const Verdict& verdict) {
    const char* first = verdict.firstOfCycle ? "desk.answer.taste_cycle" : "desk.answer.tasters";
    return {
        verdict,
        say("desk.answer.taste").with("what", render(concerned(verdicts, VerdictKind::tasteAgain))),
        {{say("desk.answer.head.first"), say(first)}, {say("desk.answer.head.meanwhile"), say("desk.answer.draft")}}};
}

FullAnswer holdAnswer(const Verdict& verdict, const vessel::Schedule& dates) {
    return {verdict,
            say("desk.answer.hold"),
            {{say("desk.answer.head.do"), say("desk.answer.hold.do")},
             {say("desk.answer.head.draw"), say("desk.answer.day").with("on", dates.draw)},
             {say("desk.answer.head.sample"), say("desk.answer.day").with("on", dates.nextSample)}}};
}

} // namespace

std::vector<FullAnswer> answersOf(const Verdicts& verdicts, const Faults& faults, const vessel::Schedule& dates) {
    if (const Verdict* fault = firstOf(verdicts, VerdictKind::faultFirst))
        return {faultAnswer(faults, *fault)};
    std::vector<FullAnswer> answers;
    if (const Verdict* wait = firstOf(verdicts, VerdictKind::waitUntil))
        answers.push_back(waitAnswer(verdicts, *wait));
    if (const Verdict* never = firstOf(verdicts, VerdictKind::neverTasted))
        answers.push_back(firstTasteAnswer(verdicts, *never));
    if (const Verdict* again = firstOf(verdicts, VerdictKind::tasteAgain))
        answers.push_back(tasteAnswer(verdicts, *again));
    const auto& all = verdicts.values;
    if (std::all_of(all.begin(), all.end(), [](const Verdict& v) { return v.kind == VerdictKind::hold; }))
        answers.push_back(holdAnswer(all.front(), dates));
    return answers;
}

} // namespace staveline::desk

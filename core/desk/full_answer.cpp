// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/full_answer.h"

#include "quantity/text.h"
#include "tasting/sitting.h"

#include <algorithm>

namespace staveline::desk {

using estimate::Estimates;
using tasting::Verdict;
using tasting::VerdictKind;

namespace {

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
Message concerned(const Estimates& estimates, VerdictKind kind) {
    std::vector<std::string> names;
    for (const Dimension d : allDimensions)
        if (estimates.verdicts[d].kind == kind)
            names.emplace_back(name(d));
    constexpr std::array keys = {"desk.answer.none", "desk.answer.one", "desk.answer.two", "desk.answer.three"};
    Message message = say(keys[names.size()]);
    for (std::size_t i = 0; i < names.size(); ++i)
        message.arguments.push_back({std::string(1, static_cast<char>('a' + i)), names[i], {}});
    return message;
}

const Verdict* firstOf(const Estimates& estimates, VerdictKind kind) {
    const auto& verdicts = estimates.verdicts.values;
    const auto found =
        std::find_if(verdicts.begin(), verdicts.end(), [&](const Verdict& verdict) { return verdict.kind == kind; });
    return found == verdicts.end() ? nullptr : &*found;
}

Message faultTitle(const Estimates& estimates, const std::string& fault, const std::string& name) {
    for (const tasting::FaultMark& mark : estimates.faults)
        if (mark.fault == fault)
            return say(mark.severity >= 3 ? "desk.answer.fault.strong" : "desk.answer.fault.clear").with("fault", name);
    return say("desk.answer.fault").with("fault", name);
}

FullAnswer faultAnswer(const Estimates& estimates, const Verdict& verdict) {
    const tasting::FaultRule* rule = tasting::builtInSheet().findFault(verdict.fault);
    FullAnswer answer{verdict, faultTitle(estimates, verdict.fault, rule ? rule->name : verdict.fault), {}};
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

FullAnswer waitAnswer(const Estimates& estimates, const Verdict& verdict) {
    FullAnswer answer{
        verdict, say("desk.answer.wait").with("what", render(concerned(estimates, VerdictKind::waitUntil))), {}};
    if (verdict.until)
        answer.lines.push_back({say("desk.answer.head.until"), say("desk.answer.day").with("on", *verdict.until)});
    answer.lines.push_back({say("desk.answer.head.why"), verdict.reason});
    answer.lines.push_back({say("desk.answer.head.else"),
                            say(verdict.gravityFalls ? "desk.answer.gravity_falling" : "desk.answer.still_moving")});
    return answer;
}

FullAnswer tasteAnswer(const Estimates& estimates, const Verdict& verdict) {
    FullAnswer answer{
        verdict, say("desk.answer.taste").with("what", render(concerned(estimates, VerdictKind::tasteAgain))), {}};
    const bool acidity = estimates.verdicts[Dimension::acidity].kind == VerdictKind::tasteAgain;
    if (acidity)
        answer.lines.push_back({say("desk.answer.head.first"), say("desk.answer.titrate")});
    answer.lines.push_back(
        {say(acidity ? "desk.answer.head.then" : "desk.answer.head.first"), say("desk.answer.tasters")});
    answer.lines.push_back({say("desk.answer.head.meanwhile"), say("desk.answer.draft")});
    return answer;
}

FullAnswer holdAnswer(const Verdict& verdict, const vessel::Schedule& dates) {
    return {verdict,
            say("desk.answer.hold"),
            {{say("desk.answer.head.do"), say("desk.answer.hold.do")},
             {say("desk.answer.head.draw"), say("desk.answer.day").with("on", dates.draw)},
             {say("desk.answer.head.sample"), say("desk.answer.day").with("on", dates.nextSample)}}};
}

} // namespace

std::vector<FullAnswer> answersOf(const Estimates& estimates, const vessel::Schedule& dates) {
    if (const Verdict* fault = firstOf(estimates, VerdictKind::faultFirst))
        return {faultAnswer(estimates, *fault)};
    std::vector<FullAnswer> answers;
    if (const Verdict* wait = firstOf(estimates, VerdictKind::waitUntil))
        answers.push_back(waitAnswer(estimates, *wait));
    if (const Verdict* again = firstOf(estimates, VerdictKind::tasteAgain))
        answers.push_back(tasteAnswer(estimates, *again));
    const auto& verdicts = estimates.verdicts.values;
    if (std::all_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) { return v.kind == VerdictKind::hold; }))
        answers.push_back(holdAnswer(verdicts.front(), dates));
    return answers;
}

} // namespace staveline::desk

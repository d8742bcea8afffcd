// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/report.h"

#include "desk/desk.h"
#include "facts/facts.h"
#include "quantity/language.h"
#include "quantity/text.h"

namespace staveline::desk {
namespace {

Message finding(const book::Damage& damage) {
    return say("desk.report.finding")
        .with("table", damage.table)
        .with("row", damage.row)
        .with("finding", damage.what.key);
}

void tellCheck(const Desk& desk, std::vector<Message>& lines) {
    const auto report = desk.check();
    if (!report) {
        lines.push_back(say("desk.report.refused").with("finding", report.error().cause.key));
        return;
    }
    lines.push_back(say(report->sound() ? "desk.report.sound" : "desk.report.damaged")
                        .with("rows", report->rowsChecked)
                        .with("count", static_cast<std::int64_t>(report->damages.size())));
    for (const book::Damage& damage : report->damages)
        lines.push_back(finding(damage));
}

} // namespace

std::vector<Message> reportOn(const Machine& machine) {
    return {say("desk.report.program").with("version", machine.program),
            say("desk.report.system").with("system", machine.system),
            say("desk.report.parts").with("parts", machine.parts),
            say("desk.report.language").with("language", std::string(spoken().code))};
}

std::vector<Message> reportOn(const Desk& desk) {
    std::vector<Message> lines;
    if (const auto vessels = desk.vessels())
        lines.push_back(say("desk.report.book")
                            .with("vessels", static_cast<std::int64_t>(vessels->size()))
                            .with("brews", static_cast<std::int64_t>(desk.brews().size())));
    for (const Message& notice : desk.notices())
        lines.push_back(say("desk.report.notice").with("finding", notice.key));
    tellCheck(desk, lines);
    return lines;
}

std::vector<Message> reportOnRefused(const Fault& fault) {
    return {say("desk.report.refused").with("finding", fault.cause.key)};
}

std::string reportText(const std::vector<Message>& lines) {
    std::string text;
    for (const Message& line : lines)
        text += render(line) + "\n";
    return text;
}

} // namespace staveline::desk

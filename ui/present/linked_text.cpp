// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/present/linked_text.h"

#include <algorithm>

namespace staveline::ui {
namespace {

QString link(const Origin& origin, const QString& shown) {
    const QString to = QString::fromLatin1(QUrl::toPercentEncoding(qs(linkOf(origin))));
    return QStringLiteral("<a href=\"%1\">%2</a>").arg(to, shown.toHtmlEscaped());
}

QString htmlOf(const Argument& argument, const DisplayUnits& units) {
    const QString shown = qs(show(argument.value, units));
    return argument.origin ? link(argument.origin, shown) : shown.toHtmlEscaped();
}

const Argument* argumentNamed(const Message& message, std::string_view name) {
    const auto found = std::find_if(message.arguments.begin(), message.arguments.end(),
                                    [&](const Argument& argument) { return argument.name == name; });
    return found == message.arguments.end() ? nullptr : &*found;
}

} // namespace

QString linkedHtml(const Message& message, const DisplayUnits& units) {
    if (message.key.empty())
        return {};
    // As render() does: one pass, so that braces in what the brewer typed are never placeholders.
    std::string_view rest = builtInTexts().find(message.key);
    QString html;
    while (!rest.empty()) {
        const auto open = rest.find('{');
        const auto close = open == std::string_view::npos ? open : rest.find('}', open);
        if (close == std::string_view::npos)
            break;
        html += qs(rest.substr(0, open)).toHtmlEscaped();
        const Argument* argument = argumentNamed(message, rest.substr(open + 1, close - open - 1));
        html += argument ? htmlOf(*argument, units) : qs(rest.substr(open, close - open + 1)).toHtmlEscaped();
        rest.remove_prefix(close + 1);
    }
    return html + qs(rest).toHtmlEscaped();
}

QString wholeLinkHtml(const Message& message, const Origin& origin, const DisplayUnits& units) {
    return message.key.empty() ? QString() : link(origin, text(message, units));
}

bool hasLinks(const Message& message) {
    return std::any_of(message.arguments.begin(), message.arguments.end(),
                       [](const Argument& argument) { return bool(argument.origin); });
}

std::optional<Origin> originOf(const QString& link) {
    return originFrom(toStd(QUrl::fromPercentEncoding(link.toLatin1())));
}

} // namespace staveline::ui

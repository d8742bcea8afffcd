// SPDX-License-Identifier: GPL-3.0-or-later
// Enough of an HTML reader to see that a page is well formed and what it says.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace staveline {

struct HtmlPage {
    std::string wrong; ///< first thing that is not well formed; empty: none
    std::vector<std::string> opened;
    std::vector<std::string> texts; ///< between tags, entities resolved, blank ones left out
};

inline std::string withoutEntities(std::string text, std::string& wrong) {
    constexpr std::array<std::pair<std::string_view, char>, 5> entities{
        {{"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}}};
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto* found = std::find_if(entities.begin(), entities.end(),
                                         [&](const auto& e) { return text.compare(i, e.first.size(), e.first) == 0; });
        if (found != entities.end()) {
            out += found->second;
            i += found->first.size();
            continue;
        }
        if (text[i] == '&')
            wrong = "bare & in: " + text;
        out += text[i++];
    }
    return out;
}

inline HtmlPage readHtml(std::string_view html) {
    HtmlPage page;
    std::vector<std::string> open;
    for (std::size_t at = 0; at < html.size() && page.wrong.empty();) {
        const auto tag = std::min(html.find('<', at), html.size());
        const auto text = std::string(html.substr(at, tag - at));
        if (text.find_first_not_of(" \n") != std::string::npos && (open.empty() || open.back() != "style"))
            page.texts.push_back(withoutEntities(text, page.wrong));
        if (tag == html.size())
            break;
        const auto end = html.find('>', tag);
        if (end == std::string_view::npos) {
            page.wrong = "tag without end";
            break;
        }
        const auto inside = html.substr(tag + 1, end - tag - 1);
        const auto name = std::string(inside.substr(0, inside.find_first_of(" \n")));
        if (std::count(inside.begin(), inside.end(), '"') % 2 != 0)
            page.wrong = "quotes in <" + std::string(inside) + ">";
        if (name.starts_with('/')) {
            if (open.empty() || open.back() != name.substr(1))
                page.wrong = "<" + name + "> closes nothing";
            else
                open.pop_back();
        } else if (name != "!DOCTYPE") {
            page.opened.push_back(name);
            if (name != "meta" && name != "img")
                open.push_back(name);
        }
        at = end + 1;
    }
    if (page.wrong.empty() && !open.empty())
        page.wrong = "<" + open.back() + "> is never closed";
    return page;
}

} // namespace staveline

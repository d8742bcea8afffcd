// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/cpp_text.h"

#include <algorithm>
#include <cctype>
#include <fmt/core.h>
#include <regex>

namespace staveline::layers {
namespace {

class Scanner {
public:
    explicit Scanner(std::string_view source) : source_(source) { out_.code = std::string(source); }

    CppText run() {
        while (at_ < source_.size()) {
            if (starts("//"))
                blankUntil(source_.find('\n', at_));
            else if (starts("/*"))
                blankUntil(endOf("*/", at_ + 2));
            else if (starts("R\"") && !partOfName(at_))
                rawLiteral();
            else if (starts("\""))
                literal();
            else if (starts("'") && !partOfName(at_)) // otherwise a digit separator
                at_ = closing('\'') + 1;
            else
                ++at_;
        }
        return std::move(out_);
    }

private:
    [[nodiscard]] bool starts(std::string_view what) const { return source_.substr(at_).starts_with(what); }
    [[nodiscard]] bool partOfName(std::size_t at) const {
        return at > 0 && (std::isalnum(static_cast<unsigned char>(source_[at - 1])) || source_[at - 1] == '_');
    }
    [[nodiscard]] std::size_t endOf(std::string_view what, std::size_t from) const {
        const auto found = source_.find(what, from);
        return found == std::string_view::npos ? source_.size() : found + what.size();
    }
    /// Position of the closing quote of what starts at at_, or the end.
    [[nodiscard]] std::size_t closing(char quote) const {
        auto i = at_ + 1;
        while (i < source_.size() && source_[i] != quote)
            i += source_[i] == '\\' ? 2 : 1;
        return std::min(i, source_.size());
    }
    void blankUntil(std::size_t end) {
        end = std::min(end, source_.size());
        for (; at_ < end; ++at_)
            if (out_.code[at_] != '\n')
                out_.code[at_] = ' ';
    }
    void keep(std::size_t end, std::string_view text) {
        out_.literals.push_back({at_, end, std::string(text)});
        at_ = end;
    }
    void literal() {
        const auto end = closing('"');
        keep(std::min(end + 1, source_.size()), source_.substr(at_ + 1, end - at_ - 1));
    }
    void rawLiteral() {
        const auto open = source_.find('(', at_);
        if (open == std::string_view::npos)
            return blankUntil(source_.size());
        const auto mark = fmt::format("){}\"", source_.substr(at_ + 2, open - at_ - 2));
        const auto end = endOf(mark, open);
        const auto inside = end - std::min(end, open + 1 + mark.size());
        keep(end, source_.substr(open + 1, inside));
    }

    std::string_view source_;
    std::size_t at_ = 0;
    CppText out_;
};

} // namespace

CppText scanCpp(std::string_view source) {
    return Scanner(source).run();
}

std::vector<Include> includesOf(std::string_view source) {
    static const std::regex directive(R"(^[ \t]*#[ \t]*include[ \t]*([<"])([^>"]+)[>"])", std::regex::multiline);
    const auto code = scanCpp(source).code;
    std::vector<Include> found;
    for (std::sregex_iterator at(code.begin(), code.end(), directive), end; at != end; ++at)
        found.push_back({(*at)[2], (*at)[1] == "<", lineOf(code, static_cast<std::size_t>(at->position(1)))});
    return found;
}

int lineOf(std::string_view text, std::size_t at) {
    return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
}

} // namespace staveline::layers

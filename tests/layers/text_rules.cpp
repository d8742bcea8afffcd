// SPDX-License-Identifier: GPL-3.0-or-later
#include "layers/text_rules.h"

#include "layers/cpp_text.h"

#include <algorithm>
#include <array>
#include <fmt/core.h>
#include <optional>
#include <regex>
#include <utf8proc.h>

namespace staveline::layers {
namespace {

constexpr std::string_view blank = " \t\r\n";

std::size_t skipBlank(std::string_view code, std::size_t at) {
    return std::min(code.find_first_not_of(blank, at), code.size());
}

/// A source with its literals at hand.
struct Source {
    CppText text;

    [[nodiscard]] const Literal* literalAt(std::size_t at) const {
        const auto found = std::find_if(text.literals.begin(), text.literals.end(),
                                        [&](const Literal& literal) { return literal.begin == at; });
        return found == text.literals.end() ? nullptr : &*found;
    }
    /// Position behind the bracket that closes the one at `open`; literals are jumped over.
    [[nodiscard]] std::size_t closing(std::size_t open) const {
        int depth = 0;
        for (auto at = open; at < text.code.size(); ++at) {
            if (const auto* literal = literalAt(at))
                at = literal->end - 1;
            else if (text.code[at] == '(')
                ++depth;
            else if (text.code[at] == ')' && --depth == 0)
                return at + 1;
        }
        return text.code.size();
    }
    [[nodiscard]] std::vector<const Literal*> literalsIn(std::size_t begin, std::size_t end) const {
        std::vector<const Literal*> found;
        for (const auto& literal : text.literals)
            if (literal.begin >= begin && literal.end <= end)
                found.push_back(&literal);
        return found;
    }
};

/// "\\u2026" as the compiler reads it.
std::string unescaped(std::string text) {
    for (auto at = text.find("\\u"); at != text.npos; at = text.find("\\u", at + 1)) {
        const auto code = static_cast<utf8proc_int32_t>(std::stoi(text.substr(at + 2, 4), nullptr, 16));
        std::array<utf8proc_uint8_t, 4> bytes{};
        const auto size = utf8proc_encode_char(code, bytes.data());
        text.replace(at, 6, std::string(bytes.begin(), bytes.begin() + size));
    }
    return text;
}

/// Literals with nothing but blanks between them are one.
std::vector<std::string> joined(const Source& source, const std::vector<const Literal*>& literals) {
    std::vector<std::string> texts;
    std::size_t end = 0;
    for (const auto* literal : literals) {
        const bool follows = !texts.empty() && skipBlank(source.text.code, end) == literal->begin;
        if (follows)
            texts.back() += unescaped(literal->text);
        else
            texts.push_back(unescaped(literal->text));
        end = literal->end;
    }
    return texts;
}

std::vector<std::string> textsIn(const Source& source, std::size_t open) {
    return joined(source, source.literalsIn(open, source.closing(open)));
}

/// Literals directly between the brackets of say(...) that start a key: the first thing there, or the ones behind a
/// '?'.
void readKeys(const Source& source, std::size_t open, std::size_t close, Saying& saying) {
    const std::string_view code = source.text.code;
    bool mayStart = true;
    for (auto at = skipBlank(code, open + 1); at + 1 < close; at = skipBlank(code, at)) {
        if (const auto* literal = source.literalAt(at)) {
            if (mayStart)
                saying.keys.push_back({literal->text, code[skipBlank(code, literal->end)] == '+'});
            at = literal->end;
            mayStart = false;
        } else if (code[at] == '(') {
            at = source.closing(at);
            mayStart = false;
        } else {
            if (code[at] == '?')
                saying.keys.clear();
            mayStart = code[at] == '?' || code[at] == ':';
            ++at;
        }
    }
}

void readNames(const Source& source, std::size_t at, Saying& saying) {
    const std::string_view code = source.text.code;
    for (at = skipBlank(code, at); code.substr(at).starts_with(".with("); at = skipBlank(code, at)) {
        if (const auto* name = source.literalAt(skipBlank(code, at + 6)))
            saying.names.insert(name->text);
        at = source.closing(at + 5);
    }
}

bool isStored(std::string_view code, std::size_t at) {
    const auto before = code.find_last_not_of(blank, at == 0 ? 0 : at - 1);
    return before != std::string_view::npos && (code[before] == '=' || code[before] == '{' || code[before] == ':');
}

std::optional<std::string> firstMissing(const Saying& saying, std::string_view text) {
    for (const auto& name : placeholdersOf(text))
        if (!saying.names.contains(name))
            return name;
    return std::nullopt;
}

bool startsAny(std::string_view prefix, const Templates& templates) {
    const auto at = templates.lower_bound(prefix);
    return at != templates.end() && at->first.starts_with(prefix);
}

/// ".remedy" and "_brew" end a key as they are, a plain word behind a point; anything else ends none.
std::string endingOf(const std::string& literal) {
    static const std::regex written("[._]\\w+"), word("\\w+");
    if (std::regex_match(literal, written))
        return literal;
    return std::regex_match(literal, word) ? '.' + literal : "";
}

/// "advice.note.{}.wait" against "advice.note.funk.wait".
bool fitsPattern(const std::string& pattern, const std::string& key) {
    const auto hole = pattern.find("{}");
    return hole != std::string::npos && hole > 2 && key.starts_with(pattern.substr(0, hole)) &&
           key.ends_with(pattern.substr(pattern.rfind("{}") + 2));
}

bool makesKey(const std::string& start, const std::set<std::string>& endings, const std::string& key) {
    if (start.size() < 3 || start.find('.') == std::string::npos)
        return false;
    if (fitsPattern(start, key) || (start.back() == '.' && key.starts_with(start)))
        return true;
    return key.starts_with(start) && std::any_of(endings.begin(), endings.end(), [&](const std::string& ending) {
               return key.size() >= start.size() + ending.size() && key.ends_with(ending);
           });
}

} // namespace

std::vector<Saying> sayingsOf(std::string_view source) {
    static const std::regex call(R"(\bsay\s*\()");
    const Source scanned{scanCpp(source)};
    const auto& code = scanned.text.code;
    std::vector<Saying> found;
    for (std::sregex_iterator at(code.begin(), code.end(), call), end; at != end; ++at) {
        const auto begin = static_cast<std::size_t>(at->position());
        const auto open = begin + static_cast<std::size_t>(at->length()) - 1;
        const auto close = scanned.closing(open);
        Saying saying;
        readKeys(scanned, open, close, saying);
        readNames(scanned, close, saying);
        saying.stored = isStored(code, begin);
        saying.line = lineOf(code, begin);
        if (!saying.keys.empty())
            found.push_back(std::move(saying));
    }
    return found;
}

std::set<std::string> placeholdersOf(std::string_view text) {
    static const std::regex braces(R"(\{([^{}]*)\})");
    const std::string copy(text);
    std::set<std::string> names;
    for (std::sregex_iterator at(copy.begin(), copy.end(), braces), end; at != end; ++at)
        names.insert((*at)[1]);
    return names;
}

std::vector<std::string> sayingViolations(const TreeFile& file, const Templates& templates) {
    std::vector<std::string> found;
    const auto report = [&](const Saying& saying, const std::string& what) {
        found.push_back(fmt::format("{}:{}: {}", file.path, saying.line, what));
    };
    for (const auto& saying : sayingsOf(file.text))
        for (const auto& key : saying.keys) {
            const auto text = templates.find(key.text);
            if (key.prefix ? !startsAny(key.text, templates) : text == templates.end())
                report(saying, fmt::format("no text for \"{}\"", key.text));
            else if (const auto name = key.prefix || saying.stored ? std::nullopt : firstMissing(saying, text->second))
                report(saying, fmt::format("\"{}\" is not given its {{{}}}", key.text, *name));
        }
    return found;
}

std::vector<std::string> templateViolations(const std::vector<TreeFile>& files) {
    static const std::regex entry(R"((([A-Za-z0-9_]+\.)+[A-Za-z0-9_ ]+(\|1)?)\t[^\t\r]*[^\t\r ])");
    static const std::regex ownKey(R"([^\t\r]+\t[^\t\r]*[^\t\r ])"); // of words that are their own keys
    std::set<std::string> seen;
    std::vector<std::string> found;
    for (const auto& file : files) {
        int number = 0;
        for (std::size_t at = 0; at < file.text.size();) {
            const auto end = std::min(file.text.find('\n', at), file.text.size());
            const auto line = file.text.substr(at, end - at);
            at = end + 1;
            ++number;
            if (line.empty() || line.starts_with('#'))
                continue;
            const auto where = fmt::format("{}:{}: ", file.path, number);
            if (!std::regex_match(line, file.path.ends_with("/words.tsv") ? ownKey : entry))
                found.push_back(where + "is no key, tab, text: " + line);
            else if (std::count(line.begin(), line.end(), '{') != std::count(line.begin(), line.end(), '}') ||
                     placeholdersOf(line).size() > static_cast<std::size_t>(std::count(line.begin(), line.end(), '{')))
                found.push_back(where + "braces do not pair");
            else if (!seen.insert(line.substr(0, line.find('\t'))).second)
                found.push_back(where + "key is given twice");
        }
    }
    return found;
}

std::set<std::string> faultKeys(const std::vector<TreeFile>& sources, const Templates& templates) {
    static const std::regex call(R"(\b(badInput|refuse|fail)\s*\()");
    std::set<std::string> keys;
    for (const auto& [key, text] : templates)
        for (const auto* ending : {".remedy", "_remedy"})
            if (templates.contains(key + ending) || key.ends_with(ending))
                keys.insert(key);
    for (const auto& file : sources) {
        const Source scanned{scanCpp(file.text)};
        const auto& code = scanned.text.code;
        for (std::sregex_iterator at(code.begin(), code.end(), call), end; at != end; ++at) {
            const auto open = static_cast<std::size_t>(at->position() + at->length()) - 1;
            for (const auto* literal : scanned.literalsIn(open, scanned.closing(open)))
                if (templates.contains(literal->text))
                    keys.insert(literal->text);
        }
    }
    return keys;
}

Templates readTemplates(const std::vector<TreeFile>& files) {
    Templates templates;
    for (const auto& file : files)
        for (std::size_t at = 0; at < file.text.size();) {
            const auto end = std::min(file.text.find('\n', at), file.text.size());
            const auto line = file.text.substr(at, end - at);
            at = end + 1;
            if (const auto tab = line.find('\t'); tab != std::string::npos && !line.starts_with('#'))
                templates.emplace(line.substr(0, tab), line.substr(tab + 1));
        }
    return templates;
}

std::vector<std::string> unendedTexts(const Templates& templates, const std::set<std::string>& keys) {
    std::vector<std::string> found;
    for (const auto& key : keys)
        if (const auto& text = templates.find(key)->second;
            std::string_view(".?!").find(text.back()) == std::string::npos)
            found.push_back(fmt::format("{} has no full stop: {}", key, text));
    return found;
}

std::vector<std::string> windowTexts(std::string_view source) {
    static const std::regex call(R"(\b(tr|translate|QT_TRANSLATE_NOOP)\s*\()");
    const Source scanned{scanCpp(source)};
    const auto& code = scanned.text.code;
    std::vector<std::string> texts;
    for (std::sregex_iterator at(code.begin(), code.end(), call), end; at != end; ++at) {
        auto given = textsIn(scanned, static_cast<std::size_t>(at->position() + at->length()) - 1);
        if ((*at)[1] != "tr" && !given.empty())
            given.erase(given.begin()); // where the text stands
        texts.insert(texts.end(), given.begin(), given.end());
    }
    return texts;
}

std::vector<std::string> literalsOf(std::string_view source) {
    const Source scanned{scanCpp(source)};
    return joined(scanned, scanned.literalsIn(0, scanned.text.code.size()));
}

std::vector<std::string> longTexts(std::string_view source) {
    static const std::regex sentence("[a-z]{2,} ");
    auto texts = literalsOf(source);
    std::erase_if(texts, [](const auto& text) { return !std::regex_search(text, sentence); });
    return texts;
}

std::optional<std::string> unclearTerm(const std::string& text) {
    static const std::regex placeholder(R"(\{[^{}]*\})");
    static const std::regex unclear(R"(\b(knots?|nudged?|untasted|kept up|as now|left alone|bands?|openings?)"
                                    R"(|give or take|(its|their|the target|inside|outside) (the )?windows?)\b|^looks$)",
                                    std::regex::icase);
    const std::string words = std::regex_replace(text, placeholder, "");
    std::smatch found;
    return std::regex_search(words, found, unclear) ? std::optional(found.str()) : std::nullopt;
}

std::vector<std::string> unusedKeys(const Templates& templates, const std::set<std::string>& mentioned) {
    std::set<std::string> endings;
    for (const auto& literal : mentioned)
        if (auto ending = endingOf(literal); !ending.empty())
            endings.insert(std::move(ending));
    std::vector<std::string> unused;
    for (const auto& [whole, text] : templates) {
        const auto key = whole.substr(0, whole.find("|1")); // the form for one is asked for with the other
        const bool used =
            mentioned.contains(key) ||
            std::any_of(mentioned.begin(), mentioned.end(), [&](const auto& m) { return makesKey(m, endings, key); });
        if (!used)
            unused.push_back(fmt::format("nothing says \"{}\"", key));
    }
    return unused;
}

} // namespace staveline::layers

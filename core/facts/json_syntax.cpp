// SPDX-License-Identifier: GPL-3.0-or-later
#include "facts/json_syntax.h"

#include "quantity/parse.h"
#include "quantity/words.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <vector>

namespace staveline::facts {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t mostLevels = 32;

struct Level {
    bool list = false;
    std::size_t count = 0; ///< of the values so far
    std::string key;       ///< the latest
    std::set<std::string> keys;
};

std::int64_t lineAt(std::string_view before) {
    return 1 + std::count(before.begin(), before.end(), '\n');
}

/// In characters, as an editor counts.
std::int64_t columnAt(std::string_view before) {
    const auto start = before.rfind('\n') + 1; // none: 0
    return std::count_if(before.begin() + static_cast<std::ptrdiff_t>(start), before.end(),
                         [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
}

/// Walks through a text without keeping it; stops at the first fault.
class Walker : public nlohmann::json_sax<Json> {
public:
    explicit Walker(std::string_view text) : text_(text) {}
    std::optional<Fault> fault;

    bool null() override { return value(); }
    bool boolean(bool) override { return value(); }
    bool number_integer(number_integer_t) override { return value(); }
    bool number_unsigned(number_unsigned_t) override { return value(); }
    bool number_float(number_float_t, const string_t&) override { return value(); }
    bool string(string_t&) override { return value(); }
    bool binary(binary_t&) override { return value(); }
    bool start_object(std::size_t) override { return begin(false); }
    bool start_array(std::size_t) override { return begin(true); }
    bool end_object() override { return end(); }
    bool end_array() override { return end(); }
    bool key(string_t& name) override {
        Level& level = levels_.back();
        level.key = name;
        return level.keys.insert(name).second ||
               stop({FaultKind::input, pointer(), say("desk.key_twice").with("field", excerpt(name)),
                     say("desk.key_twice.remedy")});
    }
    bool parse_error(std::size_t position, const std::string& token,
                     const nlohmann::detail::exception& error) override {
        constexpr int numberOverflow = 406;
        if (error.id == numberOverflow)
            return stop({FaultKind::input, pointer(), say("desk.number_too_large").with("value", excerpt(token)),
                         say("desk.number_too_large.remedy")});
        const auto before = text_.substr(0, position);
        return stop({FaultKind::input, "",
                     say("desk.not_json")
                         .with("line", lineAt(before))
                         .with("column", std::max(std::int64_t{1}, columnAt(before))),
                     say("desk.not_json.remedy")});
    }

private:
    bool stop(Fault found) {
        fault = std::move(found);
        return false;
    }
    bool value() {
        if (!levels_.empty())
            ++levels_.back().count;
        return true;
    }
    bool begin(bool list) {
        levels_.push_back({list, 0, "", {}});
        return true;
    }
    bool end() {
        levels_.pop_back();
        return value();
    }
    [[nodiscard]] std::string pointer() const {
        std::string path;
        for (const Level& level : levels_)
            path += "/" + (level.list ? std::to_string(level.count) : excerpt(level.key));
        return path;
    }

    std::string_view text_;
    std::vector<Level> levels_;
};

} // namespace

bool isTooDeep(std::string_view text) {
    std::size_t levels = 0;
    bool quoted = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '"')
            quoted = !quoted;
        else if (quoted)
            i += c == '\\' ? 1 : 0;
        else if (c == '[' || c == '{')
            ++levels;
        else if ((c == ']' || c == '}') && levels > 0)
            --levels;
        if (levels > mostLevels)
            return true;
    }
    return false;
}

Result<void> checkJson(std::string_view text) {
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos)
        return badInput("", say("desk.empty_file"), say("desk.empty_file.remedy"));
    if (!isUtf8(text))
        return badInput("", say("quantity.not_utf8"), say("quantity.not_utf8.remedy"));
    if (isTooDeep(text))
        return badInput("", say("desk.deep_json"), say("desk.deep_json.remedy"));
    Walker walker(text);
    if (!Json::sax_parse(text, &walker))
        return fail(*walker.fault);
    return {};
}

} // namespace staveline::facts

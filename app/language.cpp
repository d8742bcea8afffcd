// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/language.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdlib>
#include <span>
#include <string_view>

#ifdef STAVELINE_HAS_WINDOW
#include "ui/start.h"
#endif

namespace staveline::app {
namespace {

using Words = std::span<const char* const>;

/// The value of --language; empty: it is not given.
std::string_view asked(Words words) {
    constexpr std::string_view option = "--language";
    for (std::size_t i = 1; i < words.size(); ++i) {
        const std::string_view word = words[i];
        if (word == option && i + 1 < words.size())
            return words[i + 1];
        if (word.starts_with(option) && word.substr(option.size()).starts_with('='))
            return word.substr(option.size() + 1);
    }
    return {};
}

/// The command line without a command, or with "open".
bool opensWindow(Words words) {
    return words.size() < 2 || std::any_of(words.begin() + 1, words.end(),
                                           [](const char* word) { return std::string_view(word) == "open"; });
}

/// By the first of the variables of POSIX that is set.
std::string_view ofMachine() {
    for (const char* name : {"LC_ALL", "LC_MESSAGES", "LANG"})
        if (const char* set = std::getenv(name); set != nullptr && *set != '\0')
            return set;
    return {};
}

class HelpInLanguage : public CLI::Formatter {
public:
    HelpInLanguage() {
        for (const char* word : {"REQUIRED", "OPTIONS", "SUBCOMMAND", "Usage", "Excludes", "Needs"})
            label(word, inLanguage(word));
    }
    std::string make_group(std::string group, bool arePositional,
                           std::vector<const CLI::Option*> options) const override {
        return Formatter::make_group(inLanguage(group), arePositional, std::move(options));
    }
    std::string make_option_desc(const CLI::Option* option) const override {
        return inLanguage(option->get_description());
    }
    std::string make_description(const CLI::App* parser) const override {
        return inLanguage(parser->get_description()) + "\n";
    }
    std::string make_subcommand(const CLI::App* command) const override {
        std::stringstream out;
        CLI::detail::format_help(out, command->get_display_name(true), inLanguage(command->get_description()),
                                 column_width_);
        return out.str();
    }
};

} // namespace

const Language& languageOf(int argc, const char* const* argv) {
    const Words words(argv, static_cast<std::size_t>(argc));
    if (const auto wish = asked(words); !wish.empty())
        return languageFor(wish);
#ifdef STAVELINE_HAS_WINDOW
    if (const auto chosen = ui::chosenLanguage(); opensWindow(words) && !chosen.empty())
        return languageFor(chosen);
#endif
    return languageFor(ofMachine());
}

void tellHelpInLanguage(CLI::App& parser) {
    parser.formatter(std::make_shared<HelpInLanguage>());
}

} // namespace staveline::app

// SPDX-License-Identifier: GPL-3.0-or-later
// How sources and templates of resources/texts fit together.
#pragma once

#include "layers/source_tree.h"

#include <map>
#include <optional>
#include <set>

namespace staveline::layers {

using Templates = std::map<std::string, std::string, std::less<>>;

/// One `say(...)` of a source.
struct Saying {
    struct Key {
        std::string text;
        bool prefix = false; ///< more is added to it
    };
    std::vector<Key> keys;       ///< literals that start a key; two for a choice between them
    std::set<std::string> names; ///< of the .with(...) that follow in the same expression
    bool stored = false;         ///< kept in a variable, which may get more arguments later
    int line = 0;
};
[[nodiscard]] std::vector<Saying> sayingsOf(std::string_view source);

/// Names in braces.
[[nodiscard]] std::set<std::string> placeholdersOf(std::string_view text);

/// Keys without a template and templates that want a name the expression does not give.
[[nodiscard]] std::vector<std::string> sayingViolations(const TreeFile& file, const Templates& templates);

/// The templates by a reader of their own, so that a slip in the program's reader cannot hide one.
[[nodiscard]] Templates readTemplates(const std::vector<TreeFile>& files);

/// Lines that are no comment, no blank and no "key<TAB>text"; keys given twice; braces that do not pair.
[[nodiscard]] std::vector<std::string> templateViolations(const std::vector<TreeFile>& files);

/// Keys that the literals of the program do not make: neither a whole one, nor a start that ends in '.', nor a start
/// and an end (".remedy"), nor a pattern with {}.
[[nodiscard]] std::vector<std::string> unusedKeys(const Templates& templates, const std::set<std::string>& mentioned);

/// Keys of causes and remedies: what stands in the calls that make a fault, what has a remedy, and the remedies.
[[nodiscard]] std::set<std::string> faultKeys(const std::vector<TreeFile>& sources, const Templates& templates);
/// Texts of these keys that do not end as a sentence does.
[[nodiscard]] std::vector<std::string> unendedTexts(const Templates& templates, const std::set<std::string>& keys);

/// The words in tr(...) of a source, as the program looks them up but for line breaks, which stay "\\n".
[[nodiscard]] std::vector<std::string> windowTexts(std::string_view source);
/// Its literals, those that follow each other as one.
[[nodiscard]] std::vector<std::string> literalsOf(std::string_view source);
/// The ones with two words or more.
[[nodiscard]] std::vector<std::string> longTexts(std::string_view source);
/// A term that readers did not understand; placeholders are not read.
[[nodiscard]] std::optional<std::string> unclearTerm(const std::string& text);

} // namespace staveline::layers

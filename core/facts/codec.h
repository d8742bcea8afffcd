// SPDX-License-Identifier: GPL-3.0-or-later
// From facts to JSON, to table rows, and back: all made from the descriptions in fields.h.
#pragma once

#include "book/book.h"
#include "facts/record_file.h"
#include "ingredient/pantry.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace staveline::facts {

/// Names as written against row ids as stored.
struct Names {
    std::map<std::string, book::RowId, std::less<>> vessels, brews;
    std::map<book::RowId, std::string> vesselNames, brewNames;
    void addVessel(book::RowId id, const std::string& name);
    void addBrew(book::RowId id, const std::string& name);
    /// The name in use that a reader cannot tell from this one: quantity/words.h. Empty: none.
    [[nodiscard]] std::string vesselLike(std::string_view name) const;
    [[nodiscard]] std::string brewLike(std::string_view name) const;

private:
    std::map<std::string, std::string, std::less<>> vesselKeys_, brewKeys_; ///< key -> name, perhaps of the past
};

// The built-in ingredients that a recipe names are kept in tables too.
template <> inline constexpr std::string_view tableOf<ingredient::Grain> = "grain";
template <> inline constexpr std::string_view tableOf<ingredient::Yeast> = "yeast";

/// The tables of a cellar book, one per stored kind.
[[nodiscard]] const book::Schema& cellarSchema();

/// Ranges, required fields and allowed words; the first fault found, with its field.
template <class F> [[nodiscard]] Result<void> checkFields(const F& fact);
[[nodiscard]] Result<void> checkPlan(const RefillPlan& plan);
/// Unknown vessel or brew names are faults at their field.
template <class F> [[nodiscard]] Result<std::vector<book::Value>> toRow(const F& fact, const Names& names);
/// Total for rows that toRow made; a damaged nested text gives a default.
template <class F> [[nodiscard]] F fromRow(const book::Row& row, const Names& names);

/// The JSON text of one value without kind, for fingerprints and tests.
[[nodiscard]] std::string recipeJson(const brewing::Recipe& recipe);
[[nodiscard]] std::string targetJson(const tasting::Target& target);

/// Remedy for an unknown name: the one that was meant, else those there are; `known` is not empty.
[[nodiscard]] Message offerName(std::string_view typed, const std::vector<std::string>& known);

} // namespace staveline::facts

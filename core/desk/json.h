// SPDX-License-Identifier: GPL-3.0-or-later
// `record` files: a JSON object or an array of them, each {"kind": ..., fields with their unit in the name}.
#pragma once

#include "desk/desk.h"

#include <string>
#include <string_view>

namespace staveline {

struct HistoryRow;

/// An unknown kind or field, a wrong type or a value out of range is a fault with its JSON pointer.
[[nodiscard]] Result<std::vector<Fact>> parseRecords(std::string_view json);
[[nodiscard]] std::string writeRecords(const std::vector<Fact>& facts);
[[nodiscard]] Result<Setting> parseSetting(std::string_view json, const Setting& base);

/// Answers of the command line's --json.
/// {"name": "text"}, for answers of one text.
[[nodiscard]] std::string toJson(const std::string& name, const std::string& text);
[[nodiscard]] std::string toJson(const std::vector<VesselSummary>& cellar);
[[nodiscard]] std::string toJson(const AdviceJob& job, const Advice& advice);
[[nodiscard]] std::string toJson(const Prediction& prediction);
[[nodiscard]] std::string toJson(const BrewPlan& plan);
[[nodiscard]] std::string toJson(const Fault& fault);
[[nodiscard]] std::string toJson(const book::CheckReport& report);
[[nodiscard]] std::string toJson(const std::vector<HistoryRow>& history);
/// The history as a table, empty cells where nothing was measured (RFC 4180).
[[nodiscard]] std::string toCsv(const std::vector<HistoryRow>& history);

} // namespace staveline

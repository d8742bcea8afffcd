// SPDX-License-Identifier: GPL-3.0-or-later
// What the command line reads and answers as JSON, beside record files.
#pragma once

#include "desk/desk.h"

#include <string>
#include <string_view>

namespace staveline::desk {

struct HistoryRow;

/// A plan file; what it does not name stays as in `base`.
[[nodiscard]] Result<advice::Setting> parseSetting(std::string_view json, const advice::Setting& base);

/// Answers of the command line's --json.
/// {"name": "text"}, for answers of one text.
[[nodiscard]] std::string toJson(const std::string& name, const std::string& text);
[[nodiscard]] std::string toJson(const Recorded& recorded);
[[nodiscard]] std::string toJson(const std::vector<VesselSummary>& cellar);
[[nodiscard]] std::string toJson(const AdviceJob& job, const advice::Advice& advice);
[[nodiscard]] std::string toJson(const advice::Trial& prediction);
[[nodiscard]] std::string toJson(const brewing::BrewPlan& plan);
[[nodiscard]] std::string toJson(const Fault& fault);
[[nodiscard]] std::string toJson(const book::CheckReport& report);
[[nodiscard]] std::string toJson(const HistoryView& history);
/// The history as a table, empty cells where nothing was measured (RFC 4180).
[[nodiscard]] std::string toCsv(const std::vector<HistoryRow>& history);
/// The same table as a spreadsheet (XLSX): the bytes of its file.
[[nodiscard]] Result<std::string> toXlsx(const std::vector<HistoryRow>& history);

} // namespace staveline::desk

// SPDX-License-Identifier: GPL-3.0-or-later
// Inside this room failures are thrown; every public call turns them into faults here. Private to the book.
#pragma once

#include "quantity/fault.h"

#include <SQLiteCpp/Exception.h>
#include <filesystem>
#include <string>
#include <type_traits>
#include <vector>

struct sqlite3;

namespace staveline::book {

/// Thrown inside the room only.
struct Refusal {
    Fault fault;
};

/// The key of what to do about a cause.
[[nodiscard]] std::string remedyOf(std::string_view cause);
/// Cause and its remedy, with the same arguments.
[[nodiscard]] Fault faultNamed(FaultKind kind, const std::string& key, std::vector<Argument> arguments = {});
[[noreturn]] void refuse(const std::string& key, std::vector<Argument> arguments = {});
[[nodiscard]] Argument pathArgument(const std::filesystem::path& path);
/// 102 -> "1.2"
[[nodiscard]] std::string versionText(std::int64_t userVersion);

[[nodiscard]] Fault faultOf(const SQLite::Exception& error);
[[nodiscard]] Fault faultOf(const std::filesystem::filesystem_error& error);
/// Throws SQLite::Exception unless `code` is SQLITE_OK.
void requireOk(sqlite3* database, int code);

template <class T> T unwrap(Result<T> result) {
    if (!result)
        throw Refusal{result.error()};
    if constexpr (!std::is_void_v<T>)
        return std::move(*result);
}

/// Runs `work` and returns what it gives, or the fault of what it throws.
template <class Work> auto guarded(Work&& work) -> Result<std::invoke_result_t<Work>> {
    try {
        if constexpr (std::is_void_v<std::invoke_result_t<Work>>) {
            work();
            return {};
        } else {
            return work();
        }
    } catch (const Refusal& refusal) {
        return fail(refusal.fault);
    } catch (const SQLite::Exception& error) {
        return fail(faultOf(error));
    } catch (const std::filesystem::filesystem_error& error) {
        return fail(faultOf(error));
    }
}

} // namespace staveline::book

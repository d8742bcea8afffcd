// SPDX-License-Identifier: GPL-3.0-or-later
// Failures a user can cause are values: where (a JSON pointer, serving form and file), what, and what to do.
#pragma once

#include "quantity/message.h"

#include <string>
#include <tl/expected.hpp>

namespace staveline {

enum class FaultKind {
    input,           ///< what was typed or sent cannot be used (exit status 2)
    notPossible,     ///< the question has no answer yet (exit status 1)
    storage,         ///< disk, lock or foreign file (exit status 3)
    damaged,         ///< the file is not what was written into it (exit status 3)
    changedElsewhere ///< another program has written since; look again (exit status 3)
};
/// The file's, not the brewer's: trying again may help, another entry does not.
[[nodiscard]] constexpr bool ofStorage(FaultKind kind) {
    return kind == FaultKind::storage || kind == FaultKind::damaged || kind == FaultKind::changedElsewhere;
}

struct Fault {
    FaultKind kind = FaultKind::input;
    std::string path; ///< JSON pointer to the field, e.g. "/mash/1/temperature_c"; empty: the whole
    Message cause;
    Message remedy;

    Fault();
    Fault(FaultKind what, std::string where, Message why, Message help);
    Fault(const Fault& other);
    Fault(Fault&& other) noexcept;
    Fault& operator=(const Fault& other);
    Fault& operator=(Fault&& other) noexcept;
    ~Fault();
    bool operator==(const Fault& other) const;
};

template <class T> using Result = tl::expected<T, Fault>;

[[nodiscard]] tl::unexpected<Fault> fail(Fault fault);
[[nodiscard]] tl::unexpected<Fault> badInput(std::string path, Message cause, Message remedy);
/// The same fault seen from one level up: "/mash" + "/1/minutes".
[[nodiscard]] Fault under(std::string prefix, Fault fault);

} // namespace staveline

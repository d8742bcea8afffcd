// SPDX-License-Identifier: GPL-3.0-or-later
// Appends to the log, each row in the transaction of the edit itself. Private to the book.
#pragma once

#include "book/edit_log.h"

namespace staveline::book {

class LogWriter {
public:
    explicit LogWriter(Connection& connection) : connection_(connection) {}
    /// Gives the edit its id.
    void append(StoredEdit& edit);
    /// Merged typing: the one change ever made to an edit.
    void replace(const StoredEdit& edit);
    /// Gives the step its id.
    void append(StoredStep& step);

private:
    Connection& connection_;
};

} // namespace staveline::book

// SPDX-License-Identifier: GPL-3.0-or-later
// The history of a book: a tree of edits and the log of steps along it. The head of the newest step is where the book
// stands; 0 stands for the empty book before the first edit. Private to the book.
#pragma once

#include "book/health.h"
#include "book/tables.h"

namespace staveline::book {

struct StoredEdit {
    std::int64_t id = 0;
    std::int64_t parent = 0;
    EditLabel label; ///< without a merge key: that lives in the process only
    std::string atUtc;
    std::int64_t schema = 0; ///< user_version of the program that wrote it
    std::string changes;
    bool sound = true;
};
struct StoredStep {
    std::int64_t id = 0;
    std::int64_t edit = 0;
    int way = 0; ///< 1 done or redone, -1 undone, 0 floor: nothing before it can be undone
    std::int64_t head = 0;
    std::string atUtc;
};

class EditLog {
public:
    EditLog(Connection& connection, const Tables& tables, Health& health)
        : connection_(connection), tables_(tables), health_(health) {}

    /// id 0 in a book without steps. A damaged one is reported.
    [[nodiscard]] StoredStep lastStep();
    /// The newest edit that existed when the newest floor was laid; 0: no floor.
    [[nodiscard]] std::int64_t floor();
    /// None when there is no such edit. A damaged one is reported and not sound.
    [[nodiscard]] std::optional<StoredEdit> edit(std::int64_t id);
    /// 0: none.
    [[nodiscard]] std::int64_t newestChild(std::int64_t head, std::int64_t above);
    /// Newest first.
    [[nodiscard]] std::vector<StoredEdit> newest(int count);
    /// Ids count up without a gap and nothing is removed, so the tallies tell whether the newest rows are still there.
    void compareEnds();

private:
    StoredEdit read(SQLite::Statement& at);

    Connection& connection_;
    const Tables& tables_;
    Health& health_;
};

[[nodiscard]] EditInfo infoOf(const StoredEdit& edit, bool applied);
[[nodiscard]] std::string utcText(std::chrono::system_clock::time_point at);

} // namespace staveline::book

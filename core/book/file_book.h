// SPDX-License-Identifier: GPL-3.0-or-later
// The book over one open file. Private to the book.
#pragma once

#include "book/book_file.h"
#include "book/edit_log.h"
#include "book/faults.h"

namespace staveline::book {

class FileBook final : public Book {
public:
    FileBook(std::unique_ptr<BookFile> file, Now now);

    [[nodiscard]] bool readOnly() const override;
    [[nodiscard]] std::vector<Message> notices() const override;
    [[nodiscard]] std::filesystem::path path() const override { return file_->path; }

    [[nodiscard]] Result<std::vector<Row>> rows(const std::string& table) const override;
    [[nodiscard]] Result<std::vector<Row>> rowsWhere(const std::string& table, const std::string& column,
                                                     const Value& value,
                                                     const std::vector<std::string>& orderBy) const override;
    [[nodiscard]] Result<Row> row(const std::string& table, RowId id) const override;
    [[nodiscard]] std::vector<Damage> damages() const override { return file_->health.damages(); }

    Result<std::int64_t> commit(const EditLabel& label, const std::function<Result<void>(Writer&)>& body) override;
    Result<EditInfo> undo() override;
    Result<EditInfo> redo() override;
    [[nodiscard]] std::optional<EditInfo> undoable() const override;
    [[nodiscard]] std::optional<EditInfo> redoable() const override;
    [[nodiscard]] std::vector<EditInfo> edits(int last) const override;

    [[nodiscard]] std::string identity() const override;
    [[nodiscard]] std::int64_t revision() const override { return seen_.step; }
    [[nodiscard]] bool changedElsewhere() const override;
    void reload() override;

    [[nodiscard]] Result<CheckReport> check() const override;
    Result<void> backup(const std::filesystem::path& to) const override;

private:
    /// Where the book stood when this object last looked.
    struct Seen {
        std::int64_t step = 0, head = 0, floor = 0, dataVersion = 0;
    };
    /// The last commit, while typing may still be merged into it.
    struct Typing {
        std::string key;
        std::chrono::system_clock::time_point at;
    };

    template <class Work> auto answer(Work&& work) const;
    [[nodiscard]] Connection& connection() const { return *file_->connection; }
    [[nodiscard]] EditLog log() const { return {connection(), file_->tables, file_->health}; }
    [[nodiscard]] Seen look() const;
    [[nodiscard]] std::optional<StoredEdit> undoableEdit() const;
    [[nodiscard]] std::optional<StoredEdit> redoableEdit() const;
    void requireWritable() const;
    void requireUnmoved() const;
    [[nodiscard]] bool merges(const std::string& key) const;
    StoredStep keep(const EditLabel& label, const std::string& changes);
    StoredStep append(const EditLabel& label, const std::string& changes);
    StoredStep merge(const EditLabel& label, const std::string& changes);
    StoredStep appendStep(std::int64_t edit, int way, std::int64_t head);
    StoredStep travel(const StoredEdit& edit, int way);
    void settle(const StoredStep& step);
    EditInfo go(int way);

    std::unique_ptr<BookFile> file_;
    Now now_;
    Seen seen_;
    std::optional<Typing> typing_;
};

} // namespace staveline::book

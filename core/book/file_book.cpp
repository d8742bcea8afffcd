// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/file_book.h"

#include "book/backup.h"
#include "book/changeset.h"
#include "book/check.h"
#include "book/identity.h"
#include "book/log_writer.h"
#include "book/reader.h"
#include "book/row_writer.h"

#include <algorithm>

namespace staveline::book {

namespace {

constexpr std::chrono::seconds typingPause{2};

} // namespace

FileBook::FileBook(std::unique_ptr<BookFile> file, Now now) : file_(std::move(file)), now_(std::move(now)) {
    seen_ = look();
}

/// The one way out: what is thrown becomes a fault, and a file the library cannot read is damage.
template <class Work> auto FileBook::answer(Work&& work) const {
    auto result = guarded(std::forward<Work>(work));
    if (!result && result.error().kind == FaultKind::damaged)
        file_->health.report({"", 0, result.error().cause});
    return result;
}

FileBook::Seen FileBook::look() const {
    const ReadScope oneState(connection());
    const StoredStep last = log().lastStep();
    return {last.id, last.head, log().floor(), connection().number("PRAGMA data_version")};
}

bool FileBook::readOnly() const {
    return file_->readOnly || !file_->health.sound();
}

std::vector<Message> FileBook::notices() const {
    std::vector<Message> all = file_->notices;
    if (const auto count = static_cast<std::int64_t>(damages().size()); count > 0)
        all.push_back(say("book.notice.damaged").with("count", count));
    return all;
}

Result<std::vector<Row>> FileBook::rows(const std::string& table) const {
    return answer([&] { return Reader(connection(), file_->tables, file_->health).all(table); });
}

Result<std::vector<Row>> FileBook::rowsWhere(const std::string& table, const std::string& column, const Value& value,
                                             const std::vector<std::string>& orderBy) const {
    return answer(
        [&] { return Reader(connection(), file_->tables, file_->health).where(table, column, value, orderBy); });
}

Result<Row> FileBook::row(const std::string& table, RowId id) const {
    return answer([&] { return Reader(connection(), file_->tables, file_->health).one(table, id); });
}

void FileBook::requireWritable() const {
    if (readOnly())
        refuse("book.read_only");
}

void FileBook::requireUnmoved() const {
    if (log().lastStep().id != seen_.step)
        refuse("book.changed_elsewhere");
    requireWritable();
}

Result<std::int64_t> FileBook::commit(const EditLabel& label, const std::function<Result<void>(Writer&)>& body) {
    return answer([&] {
        requireWritable();
        SQLite::Transaction all(connection().database(), SQLite::TransactionBehavior::IMMEDIATE);
        requireUnmoved();
        const Recording recording(connection(), file_->tables);
        RowWriter writer(connection(), file_->tables, file_->health);
        unwrap(body(writer));
        writer.finish();
        if (const std::string changes = recording.changes(); !changes.empty()) {
            const StoredStep step = keep(label, changes);
            requireWritable(); // the body read too, and may have found damage
            all.commit();
            settle(step);
            typing_ = step.way > 0 ? std::optional(Typing{label.mergeKey, now_()}) : std::nullopt;
        }
        return seen_.head;
    });
}

bool FileBook::merges(const std::string& key) const {
    if (!typing_ || key.empty() || typing_->key != key)
        return false;
    const auto pause = now_() - typing_->at;
    return pause >= pause.zero() && pause <= typingPause;
}

StoredStep FileBook::keep(const EditLabel& label, const std::string& changes) {
    return merges(label.mergeKey) ? merge(label, changes) : append(label, changes);
}

StoredStep FileBook::append(const EditLabel& label, const std::string& changes) {
    StoredEdit edit{0, seen_.head, label, utcText(now_()), file_->version, changes};
    LogWriter(connection()).append(edit);
    return appendStep(edit.id, 1, edit.id);
}

StoredStep FileBook::merge(const EditLabel& label, const std::string& changes) {
    auto head = log().edit(seen_.head);
    if (!head || !head->sound)
        refuse("book.damaged", {{"detail", "edit", {}}});
    const std::string both = joined(head->changes, changes);
    if (both.empty()) // typed back to where it began: that is what undo would do
        return appendStep(head->id, -1, head->parent);
    head->label.text = label.text;
    head->changes = both;
    LogWriter(connection()).replace(*head);
    return appendStep(head->id, 1, head->id);
}

StoredStep FileBook::appendStep(std::int64_t edit, int way, std::int64_t head) {
    StoredStep step{0, edit, way, head, utcText(now_())};
    LogWriter(connection()).append(step);
    return step;
}

void FileBook::settle(const StoredStep& step) {
    seen_.step = step.id;
    seen_.head = step.head;
    typing_.reset();
}

std::optional<StoredEdit> FileBook::undoableEdit() const {
    return seen_.head > seen_.floor ? log().edit(seen_.head) : std::nullopt;
}

std::optional<StoredEdit> FileBook::redoableEdit() const {
    const std::int64_t child = log().newestChild(seen_.head, seen_.floor);
    return child == 0 ? std::nullopt : log().edit(child);
}

StoredStep FileBook::travel(const StoredEdit& edit, int way) {
    if (!edit.sound)
        refuse("book.damaged", {{"detail", "edit", {}}});
    apply(connection(), file_->schema, way > 0 ? edit.changes : inverted(edit.changes));
    return appendStep(edit.id, way, way > 0 ? edit.id : edit.parent);
}

EditInfo FileBook::go(int way) {
    requireWritable();
    SQLite::Transaction all(connection().database(), SQLite::TransactionBehavior::IMMEDIATE);
    requireUnmoved();
    const auto edit = way > 0 ? redoableEdit() : undoableEdit();
    if (!edit) {
        const bool atFloor = way < 0 && seen_.floor > 0 && seen_.head > 0;
        const char* key = way > 0 ? "book.nothing_to_redo" : "book.nothing_to_undo";
        throw Refusal{faultNamed(FaultKind::notPossible, atFloor ? "book.undo_floor" : key)};
    }
    const StoredStep step = travel(*edit, way);
    requireWritable();
    all.commit();
    settle(step);
    EditInfo info = infoOf(*edit, way > 0);
    info.rows = touched(edit->changes);
    return info;
}

Result<EditInfo> FileBook::undo() {
    return answer([&] { return go(-1); });
}

Result<EditInfo> FileBook::redo() {
    return answer([&] { return go(1); });
}

std::optional<EditInfo> FileBook::undoable() const {
    const auto edit = answer([&] { return undoableEdit(); });
    return edit && *edit ? std::optional(infoOf(**edit, true)) : std::nullopt;
}

std::optional<EditInfo> FileBook::redoable() const {
    const auto edit = answer([&] { return redoableEdit(); });
    return edit && *edit ? std::optional(infoOf(**edit, false)) : std::nullopt;
}

std::vector<EditInfo> FileBook::edits(int last) const {
    const auto all = answer([&] {
        std::vector<EditInfo> infos;
        std::int64_t onPath = seen_.head;
        for (const StoredEdit& edit : log().newest(last)) {
            infos.push_back(infoOf(edit, edit.id == onPath));
            if (edit.id == onPath)
                onPath = edit.parent;
        }
        return infos;
    });
    return all.value_or(std::vector<EditInfo>());
}

std::string FileBook::identity() const {
    const auto first = answer([&] {
        return connection().text("SELECT coalesce(min(step.at_utc || printf('-%x', edit.digest)), '') FROM step "
                                 "JOIN edit ON edit.id = step.edit WHERE step.id = 1");
    });
    std::string id = first.value_or("");
    std::erase(id, ':');
    return id;
}

bool FileBook::changedElsewhere() const {
    const auto version = answer([&] { return connection().number("PRAGMA data_version"); });
    return version && *version != seen_.dataVersion;
}

/// Another program may also have brought the book to a newer version.
void FileBook::reload() {
    const auto seen = answer([&] {
        const ReadScope oneState(connection());
        const std::int64_t version = connection().number("PRAGMA user_version");
        if (version != file_->version) {
            file_->version = version;
            file_->tables = Tables::read(connection(), file_->schema);
        }
        if (version > userVersion(file_->schema) && !file_->readOnly) {
            file_->readOnly = true;
            file_->notices.push_back(say("book.notice.newer_minor")
                                         .with("version", versionText(version))
                                         .with("known", versionText(userVersion(file_->schema))));
        }
        return look();
    });
    if (seen)
        seen_ = *seen;
    typing_.reset();
}

Result<CheckReport> FileBook::check() const {
    return answer([&] { return checkAll(*file_); });
}

Result<void> FileBook::backup(const std::filesystem::path& to) const {
    return answer([&] { copyBook(*file_, to); });
}

} // namespace staveline::book

// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/folder.h"

#include "desk/whole_file.h"

#include <fstream>
#include <iterator>
#include <system_error>

namespace staveline::desk {
namespace {

namespace fs = std::filesystem;

Fault unwritable(const std::string& key, const fs::path& folder, const fs::path& part = {}) {
    return {FaultKind::storage, "/out", say(key).with("folder", folder.string()),
            say(key + ".remedy").with("part", part.string())};
}
Fault unreadable(const fs::path& path) {
    return {FaultKind::storage, "/from", say("desk.folder_unread").with("folder", path.string()),
            say("desk.folder_unread.remedy")};
}

/// Gone again unless all of it becomes the folder that was asked for: by a new name, or where that folder is there by
/// moving what it holds into it, as someone may stand in it.
class PartFolder {
public:
    explicit PartFolder(fs::path to)
        : to_(std::move(to)), isThere_(fs::is_directory(to_, error_)),
          part_(isThere_ ? to_ / ".part" : fs::path(to_.string() + ".part")) {}
    ~PartFolder() {
        std::error_code ignored;
        if (made_)
            fs::remove_all(part_, ignored);
    }
    PartFolder(const PartFolder&) = delete;
    PartFolder& operator=(const PartFolder&) = delete;

    bool make() { return made_ = fs::create_directory(part_, error_); }
    Result<void> write(const facts::TextFile& file) {
        fs::create_directories((part_ / file.name).parent_path(), error_);
        return writeWhole(part_ / file.name, file.text);
    }
    bool publish() {
        if (isThere_)
            return moveInto();
        fs::rename(part_, to_, error_);
        made_ = made_ && error_;
        return !error_;
    }
    [[nodiscard]] const fs::path& path() const { return part_; }

private:
    bool moveInto() {
        std::vector<fs::path> names;
        for (const auto& each : fs::directory_iterator(part_, error_))
            names.push_back(each.path().filename());
        for (auto name = names.begin(); name != names.end() && !error_; ++name)
            fs::rename(part_ / *name, to_ / *name, error_);
        std::error_code ignored;
        for (auto name = names.begin(); name != names.end() && error_; ++name)
            fs::remove_all(to_ / *name, ignored); // it was empty
        return !error_;
    }

    fs::path to_;
    std::error_code error_;
    bool isThere_;
    fs::path part_;
    bool made_ = false;
};

bool isFree(const fs::path& to) {
    std::error_code error;
    const auto status = fs::symlink_status(to, error);
    return !fs::exists(status) || (fs::is_directory(status) && fs::is_empty(to, error) && !error);
}

Result<std::string> readText(const fs::path& path) {
    std::ifstream in(path, std::ios::binary);
    std::string text(std::istreambuf_iterator<char>(in), {});
    if (in.bad() || !in.is_open())
        return fail(unreadable(path));
    return text;
}

} // namespace

Result<void> writeFolder(const fs::path& given, const std::vector<facts::TextFile>& files) {
    const fs::path to = given.has_filename() ? given : given.parent_path(); // "out/" is "out"
    if (!isFree(to))
        return fail(unwritable("desk.folder_full", to));
    PartFolder part(to);
    if (!part.make())
        return fail(unwritable("desk.folder_unmade", to, part.path()));
    for (const auto& file : files)
        if (auto written = part.write(file); !written) {
            written.error().path = "/out";
            return written;
        }
    return part.publish() ? Result<void>() : fail(unwritable("desk.folder_unmade", to, part.path()));
}

Result<std::vector<facts::TextFile>> readFolder(const fs::path& from, std::string_view ending) {
    std::error_code error;
    std::vector<facts::TextFile> files;
    for (fs::directory_iterator at(from, error), end; !error && at != end; at.increment(error)) {
        if (!at->is_regular_file(error) || at->path().extension() != ending)
            continue;
        auto text = readText(at->path());
        if (!text)
            return fail(text.error());
        files.push_back({at->path().filename().string(), *std::move(text)});
    }
    if (error)
        return fail(unreadable(from));
    return files;
}

Result<std::unique_ptr<Desk>> bookFromFolder(const fs::path& book, const fs::path& folder, const Clock& clock) {
    const auto files = readFolder(folder, ".csv");
    if (!files)
        return fail(files.error());
    if (auto sound = facts::readTables(*files); !sound) // before there is a book
        return fail(sound.error());
    auto desk = Desk::create(book, clock);
    if (!desk)
        return desk;
    auto restored = (*desk)->restore(*files);
    if (restored)
        return desk;
    desk->reset();
    std::error_code ignored;
    fs::remove(book, ignored);
    return fail(restored.error());
}

} // namespace staveline::desk

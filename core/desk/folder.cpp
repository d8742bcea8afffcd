// SPDX-License-Identifier: GPL-3.0-or-later
#include "desk/folder.h"

#include "desk/whole_file.h"

#include <fstream>
#include <iterator>
#include <system_error>

namespace staveline::desk {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Fault> folderFault(std::string key, const fs::path& path) {
    const std::string help = key + ".remedy";
    return fail({FaultKind::storage, "/out", say(key).with("folder", path.string()), say(help)});
}

/// Gone again unless it becomes the folder that was asked for.
class PartFolder {
public:
    explicit PartFolder(fs::path to) : to_(std::move(to)), part_(to_.string() + ".part") {}
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
        fs::rename(part_, to_, error_);
        made_ = made_ && error_;
        return !error_;
    }

private:
    fs::path to_, part_;
    std::error_code error_;
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
        return folderFault("desk.folder_unread", path);
    return text;
}

} // namespace

Result<void> writeFolder(const fs::path& given, const std::vector<facts::TextFile>& files) {
    const fs::path to = given.has_filename() ? given : given.parent_path(); // "out/" is "out"
    if (!isFree(to))
        return folderFault("desk.folder_full", to);
    PartFolder part(to);
    if (!part.make())
        return folderFault("desk.folder_unmade", to);
    for (const auto& file : files)
        if (auto written = part.write(file); !written) {
            written.error().path = "/out";
            return written;
        }
    return part.publish() ? Result<void>() : folderFault("desk.folder_unmade", to);
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
        return folderFault("desk.folder_unread", from);
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

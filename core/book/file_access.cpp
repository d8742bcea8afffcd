// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/file_access.h"

#include "book/faults.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <sys/stat.h>
#include <unistd.h>

namespace staveline::book {

namespace fs = std::filesystem;

namespace {

/// Through a descriptor of its own: only for files no connection of this process has open.
void sync(const fs::path& path) {
    const int descriptor = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    const bool done = descriptor >= 0 && ::fsync(descriptor) == 0;
    const int error = errno;
    if (descriptor >= 0)
        ::close(descriptor);
    if (!done)
        refuse("book.disk_error", {{"detail", std::strerror(error), {}}});
}

[[noreturn]] void refuseName(const fs::path& path, int error) {
    const std::vector<Argument> arguments = {
        pathArgument(path), {"folder", folderOf(path).string(), {}}, {"detail", std::strerror(error), {}}};
    if (error == EEXIST)
        refuse("book.exists", arguments);
    if (error == ENOENT || error == ENOTDIR)
        refuse("book.no_such_folder", arguments);
    refuse("book.cannot_create", arguments);
}

/// 0, or why there is no new file of this name. What is there already, also a link to nowhere, stays as it is.
int makeEmpty(const fs::path& path, mode_t rights) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, rights);
    if (descriptor < 0)
        return errno;
    ::close(descriptor);
    return 0;
}

constexpr mode_t newFile = 0666, onlyMine = 0600, rightsMask = 07777;

/// Of the file that will be replaced; none: there is no such file yet.
std::optional<mode_t> rightsOf(const fs::path& target) {
    struct stat there {};
    if (::lstat(target.c_str(), &there) != 0)
        return std::nullopt;
    if (S_ISLNK(there.st_mode))
        refuse("book.is_link", {pathArgument(target)});
    return there.st_mode & rightsMask;
}

/// The name may be guessed, so what stands there is never ours to use.
fs::path makePart(const fs::path& target, mode_t rights) {
    constexpr int tries = 1000;
    for (int next = 1;; ++next) {
        fs::path part = target.string() + ".part" + std::to_string(::getpid()) + '-' + std::to_string(next);
        const int error = makeEmpty(part, rights);
        if (error == 0)
            return part;
        if (error != EEXIST || next == tries)
            refuseName(target, error);
    }
}

bool writeAll(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno != EINTR)
            return false;
        bytes.remove_prefix(static_cast<std::size_t>(std::max<ssize_t>(written, 0)));
    }
    return true;
}

} // namespace

fs::path existingFile(const fs::path& path) {
    std::error_code ignored;
    const fs::file_status status = fs::status(path, ignored);
    if (!fs::exists(status))
        refuse("book.no_such_file", {pathArgument(path)});
    if (fs::is_directory(status))
        refuse("book.is_folder", {pathArgument(path)});
    if (!fs::is_regular_file(status))
        refuse("book.not_a_file", {pathArgument(path)});
    if (fs::file_size(path) == 0)
        refuse("book.empty_file", {pathArgument(path)});
    return fs::canonical(path);
}

bool canWrite(const fs::path& path) {
    return ::access(path.c_str(), W_OK) == 0;
}

fs::path folderOf(const fs::path& file) {
    return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

NewName::NewName(const fs::path& path) : path_(path) {
    if (const int error = makeEmpty(path, newFile); error != 0)
        refuseName(path, error);
}

NewName::~NewName() {
    std::error_code ignored;
    if (!kept_)
        fs::remove(path_, ignored);
}

PartFile::PartFile(fs::path target) : target_(std::move(target)) {
    const auto rights = rightsOf(target_);
    part_ = makePart(target_, rights ? onlyMine : newFile);
    if (rights && ::chmod(part_.c_str(), *rights) != 0) {
        const int error = errno;
        ::unlink(part_.c_str());
        refuseName(target_, error);
    }
}

PartFile::~PartFile() {
    std::error_code ignored;
    if (!published_)
        fs::remove(part_, ignored);
    fs::remove(part_.string() + "-journal", ignored);
}

void PartFile::write(std::string_view bytes) {
    const int descriptor = ::open(part_.c_str(), O_WRONLY | O_CLOEXEC | O_NOFOLLOW);
    bool done = descriptor >= 0 && writeAll(descriptor, bytes);
    int error = errno;
    if (descriptor >= 0 && ::close(descriptor) != 0 && done) {
        done = false;
        error = errno;
    }
    if (!done)
        refuseName(target_, error);
}

void PartFile::publish() {
    sync(part_);
    fs::rename(part_, target_);
    published_ = true;
    sync(folderOf(target_));
}

} // namespace staveline::book

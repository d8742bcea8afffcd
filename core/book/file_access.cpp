// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/file_access.h"

#include "book/faults.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
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
        refuse("book.disk_error", {{"detail", std::strerror(error), ""}});
}

[[noreturn]] void refuseName(const fs::path& path, int error) {
    const std::vector<Argument> arguments = {
        pathArgument(path), {"folder", folderOf(path).string(), ""}, {"detail", std::strerror(error), ""}};
    if (error == EEXIST)
        refuse("book.exists", arguments);
    if (error == ENOENT || error == ENOTDIR)
        refuse("book.no_such_folder", arguments);
    refuse("book.cannot_create", arguments);
}

void makeEmpty(const fs::path& path) {
    const int descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor < 0)
        refuseName(path, errno);
    ::close(descriptor);
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
    makeEmpty(path);
}

NewName::~NewName() {
    std::error_code ignored;
    if (!kept_)
        fs::remove(path_, ignored);
}

PartFile::PartFile(fs::path target)
    : target_(std::move(target)), part_(target_.string() + ".part" + std::to_string(::getpid())) {
    fs::remove(part_);
    makeEmpty(part_);
}

PartFile::~PartFile() {
    std::error_code ignored;
    fs::remove(part_, ignored);
    fs::remove(part_.string() + "-journal", ignored);
}

void PartFile::publish() {
    sync(part_);
    fs::rename(part_, target_);
    sync(folderOf(target_));
}

} // namespace staveline::book

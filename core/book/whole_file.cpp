// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/whole_file.h"

#include "book/faults.h"
#include "book/file_access.h"
#include "book/identity.h"

#include <sys/stat.h>
#include <unistd.h>

namespace staveline::book {
namespace {

void requireReplaceable(const std::filesystem::path& to) {
    struct stat there {};
    if (::lstat(to.c_str(), &there) != 0)
        return; // a new file, or a folder that the attempt will name
    if (S_ISLNK(there.st_mode))
        refuse("book.is_link", {pathArgument(to)});
    if (S_ISDIR(there.st_mode))
        refuse("book.is_folder", {pathArgument(to)});
    if (!S_ISREG(there.st_mode))
        refuse("book.not_a_file", {pathArgument(to)});
    if (there.st_uid != ::geteuid() || !canWrite(to))
        refuse("book.of_another", {pathArgument(to)});
    if (there.st_size > 0 && readHeader(to).database)
        refuse("book.is_database", {pathArgument(to)});
}

} // namespace

Result<void> writeWhole(const std::filesystem::path& to, std::string_view bytes) {
    return guarded([&] {
        requireReplaceable(to);
        PartFile part(to);
        part.write(bytes);
        part.publish();
    });
}

} // namespace staveline::book

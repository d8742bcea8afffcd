// SPDX-License-Identifier: GPL-3.0-or-later
// Paths, rights and durable files, before and around the library. Private to the book.
#pragma once

#include <filesystem>
#include <string_view>

namespace staveline::book {

/// The file itself, links followed. Refuses with words: no such file, a folder, a device, an empty file.
[[nodiscard]] std::filesystem::path existingFile(const std::filesystem::path& path);
[[nodiscard]] bool canWrite(const std::filesystem::path& path);
/// The folder a file lies in; "." for a bare name.
[[nodiscard]] std::filesystem::path folderOf(const std::filesystem::path& file);

/// Takes a name that no file has yet, and gives it back unless the file is kept.
class NewName {
public:
    explicit NewName(const std::filesystem::path& path);
    ~NewName();
    NewName(const NewName&) = delete;
    NewName& operator=(const NewName&) = delete;
    void keep() { kept_ = true; }

private:
    std::filesystem::path path_;
    bool kept_ = false;
};

/// A file in the making beside its target, empty at first: renamed over it when published, gone otherwise. It takes a
/// name that no file has and the rights of the file it replaces. A link in the target's place is refused.
class PartFile {
public:
    explicit PartFile(std::filesystem::path target);
    ~PartFile();
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return part_; }
    void write(std::string_view bytes);
    /// Syncs the file, renames it, syncs the folder.
    void publish();

private:
    std::filesystem::path target_, part_;
    bool published_ = false;
};

} // namespace staveline::book

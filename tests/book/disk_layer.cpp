// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/disk_layer.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

sqlite3_vfs* disk = nullptr; ///< the real one
sqlite3_vfs front;
DiskLayer* layer = nullptr;

/// In front of the real file, in the same memory.
struct File {
    sqlite3_file base;
    const char* name; ///< the library keeps it until the file is closed
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
    [[nodiscard]] const sqlite3_io_methods* operator->() { return real()->pMethods; }
    int done(int code, DiskCall::Kind kind, sqlite3_int64 at = 0, std::string bytes = "") const {
        if (code == SQLITE_OK && name != nullptr)
            layer->saw({kind, name, static_cast<std::uint64_t>(at), std::move(bytes)});
        return code;
    }
};
File& at(sqlite3_file* file) {
    return *reinterpret_cast<File*>(file);
}

int closeFile(sqlite3_file* file) {
    return at(file)->xClose(at(file).real());
}
int readFile(sqlite3_file* file, void* bytes, int count, sqlite3_int64 offset) {
    return layer->refuses() ? SQLITE_IOERR_READ : at(file)->xRead(at(file).real(), bytes, count, offset);
}
int writeFile(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 offset) {
    if (layer->refuses())
        return SQLITE_FULL;
    return at(file).done(at(file)->xWrite(at(file).real(), bytes, count, offset), DiskCall::wrote, offset,
                         std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(count)));
}
int truncateFile(sqlite3_file* file, sqlite3_int64 size) {
    if (layer->refuses())
        return SQLITE_IOERR_TRUNCATE;
    return at(file).done(at(file)->xTruncate(at(file).real(), size), DiskCall::truncated, size);
}
int syncFile(sqlite3_file* file, int flags) {
    if (layer->refuses())
        return SQLITE_IOERR_FSYNC;
    return at(file).done(at(file)->xSync(at(file).real(), flags), DiskCall::synced);
}
int sizeOfFile(sqlite3_file* file, sqlite3_int64* size) {
    return layer->refuses() ? SQLITE_IOERR_FSTAT : at(file)->xFileSize(at(file).real(), size);
}
int lockFile(sqlite3_file* file, int level) {
    return layer->refuses() ? SQLITE_IOERR_LOCK : at(file)->xLock(at(file).real(), level);
}
int unlockFile(sqlite3_file* file, int level) {
    return at(file)->xUnlock(at(file).real(), level);
}
int checkLock(sqlite3_file* file, int* locked) {
    return at(file)->xCheckReservedLock(at(file).real(), locked);
}
int controlFile(sqlite3_file* file, int what, void* argument) {
    return at(file)->xFileControl(at(file).real(), what, argument);
}
int sectorSize(sqlite3_file* file) {
    return at(file)->xSectorSize(at(file).real());
}
/// Nothing is promised: no safe append, no atomic write.
int characteristics(sqlite3_file*) {
    return 0;
}

const sqlite3_io_methods methods = {1,           closeFile,  readFile,        writeFile,  truncateFile,
                                    syncFile,    sizeOfFile, lockFile,        unlockFile, checkLock,
                                    controlFile, sectorSize, characteristics, nullptr,    nullptr,
                                    nullptr,     nullptr,    nullptr,         nullptr};

int openFile(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* outFlags) {
    file->pMethods = nullptr;
    if (layer->refuses())
        return SQLITE_CANTOPEN;
    at(file).name = name;
    const int code = disk->xOpen(disk, name, at(file).real(), flags, outFlags);
    if (at(file).real()->pMethods != nullptr)
        file->pMethods = &methods;
    return code;
}
int deleteFile(sqlite3_vfs*, const char* name, int syncFolder) {
    if (layer->refuses())
        return SQLITE_IOERR_DELETE;
    const int code = disk->xDelete(disk, name, syncFolder);
    if (code == SQLITE_OK)
        layer->saw({DiskCall::removed, name, static_cast<std::uint64_t>(syncFolder), ""});
    return code;
}

} // namespace

DiskLayer::DiskLayer() {
    layer = this;
    disk = sqlite3_vfs_find(nullptr);
    front = *disk;
    front.zName = "layer";
    front.szOsFile = static_cast<int>(sizeof(File)) + disk->szOsFile;
    front.xOpen = openFile;
    front.xDelete = deleteFile;
    sqlite3_vfs_register(&front, 1);
}

DiskLayer::~DiskLayer() {
    sqlite3_vfs_unregister(&front);
    sqlite3_vfs_register(disk, 1);
}

void FailingDisk::failAt(int n, bool lasting) {
    left_ = n;
    lasting_ = lasting;
    failed_ = false;
}

bool FailingDisk::mend() {
    const bool hit = failed_;
    failAt(0, false);
    return hit;
}

bool FailingDisk::refuses() {
    if (failed_ && lasting_)
        return true;
    if (left_ == 0 || --left_ > 0)
        return false;
    return failed_ = true;
}

} // namespace staveline::book

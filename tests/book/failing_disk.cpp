// SPDX-License-Identifier: GPL-3.0-or-later
#include "book/failing_disk.h"

#include <sqlite3.h>

namespace staveline::book {

namespace {

sqlite3_vfs* disk = nullptr; ///< the real one
int callsLeft = 0;           ///< until the failure; 0: none is due
bool lasts = false, failed = false;

bool fails() {
    if (failed && lasts)
        return true;
    if (callsLeft == 0 || --callsLeft > 0)
        return false;
    return failed = true;
}

/// In front of the real file, in the same memory.
struct Layer {
    sqlite3_file base;
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
    [[nodiscard]] const sqlite3_io_methods* operator->() { return real()->pMethods; }
};
Layer& layer(sqlite3_file* file) {
    return *reinterpret_cast<Layer*>(file);
}

int closeFile(sqlite3_file* file) {
    return layer(file)->xClose(layer(file).real());
}
int readFile(sqlite3_file* file, void* bytes, int count, sqlite3_int64 at) {
    return fails() ? SQLITE_IOERR_READ : layer(file)->xRead(layer(file).real(), bytes, count, at);
}
int writeFile(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 at) {
    return fails() ? SQLITE_FULL : layer(file)->xWrite(layer(file).real(), bytes, count, at);
}
int truncateFile(sqlite3_file* file, sqlite3_int64 size) {
    return fails() ? SQLITE_IOERR_TRUNCATE : layer(file)->xTruncate(layer(file).real(), size);
}
int syncFile(sqlite3_file* file, int flags) {
    return fails() ? SQLITE_IOERR_FSYNC : layer(file)->xSync(layer(file).real(), flags);
}
int sizeOfFile(sqlite3_file* file, sqlite3_int64* size) {
    return fails() ? SQLITE_IOERR_FSTAT : layer(file)->xFileSize(layer(file).real(), size);
}
int lockFile(sqlite3_file* file, int level) {
    return fails() ? SQLITE_IOERR_LOCK : layer(file)->xLock(layer(file).real(), level);
}
int unlockFile(sqlite3_file* file, int level) {
    return layer(file)->xUnlock(layer(file).real(), level);
}
int checkLock(sqlite3_file* file, int* locked) {
    return layer(file)->xCheckReservedLock(layer(file).real(), locked);
}
int controlFile(sqlite3_file* file, int what, void* argument) {
    return layer(file)->xFileControl(layer(file).real(), what, argument);
}
int sectorSize(sqlite3_file* file) {
    return layer(file)->xSectorSize(layer(file).real());
}
int characteristics(sqlite3_file* file) {
    return layer(file)->xDeviceCharacteristics(layer(file).real());
}

const sqlite3_io_methods methods = {1,           closeFile,  readFile,        writeFile,  truncateFile,
                                    syncFile,    sizeOfFile, lockFile,        unlockFile, checkLock,
                                    controlFile, sectorSize, characteristics, nullptr,    nullptr,
                                    nullptr,     nullptr,    nullptr,         nullptr};

int openFile(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* outFlags) {
    file->pMethods = nullptr;
    if (fails())
        return SQLITE_CANTOPEN;
    const int code = disk->xOpen(disk, name, layer(file).real(), flags, outFlags);
    if (layer(file).real()->pMethods != nullptr)
        file->pMethods = &methods;
    return code;
}
int deleteFile(sqlite3_vfs*, const char* name, int syncFolder) {
    return fails() ? SQLITE_IOERR_DELETE : disk->xDelete(disk, name, syncFolder);
}

sqlite3_vfs failing;

} // namespace

FailingDisk::FailingDisk() {
    disk = sqlite3_vfs_find(nullptr);
    failing = *disk;
    failing.zName = "failing";
    failing.szOsFile = static_cast<int>(sizeof(Layer)) + disk->szOsFile;
    failing.xOpen = openFile;
    failing.xDelete = deleteFile;
    sqlite3_vfs_register(&failing, 1);
}

FailingDisk::~FailingDisk() {
    mend();
    sqlite3_vfs_unregister(&failing);
    sqlite3_vfs_register(disk, 1);
}

void FailingDisk::failAt(int n, bool lasting) {
    callsLeft = n;
    lasts = lasting;
    failed = false;
}

bool FailingDisk::mend() {
    const bool hit = failed;
    failAt(0, false);
    return hit;
}

} // namespace staveline::book

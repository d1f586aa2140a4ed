#include "support/faulty_disk.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <iterator>
#include <vector>

namespace samebase::tests {

namespace {

enum class Call : std::uint8_t { read, write, other };

struct Plan {
    std::vector<Call> calls;
    std::int64_t at = 0;
    Fault fault = Fault::error;
    bool lasting = false;
    bool struck = false;
};

Plan plan;
sqlite3_vfs* real_disk = nullptr;

bool applies(Call call, Fault fault) {
    if (fault == Fault::error) return true;
    return fault == Fault::short_read ? call == Call::read : call == Call::write;
}

/// Counts the call; true where it goes wrong.
bool strikes(Call call) {
    plan.calls.push_back(call);
    if (plan.struck && plan.lasting) return true;
    if (std::ssize(plan.calls) != plan.at || !applies(call, plan.fault)) return false;
    plan.struck = true;
    return true;
}

struct File {
    sqlite3_file base;
    sqlite3_file* real;
};

sqlite3_file* real(sqlite3_file* file) {
    return reinterpret_cast<File*>(file)->real;
}

int close(sqlite3_file* file) {
    return real(file)->pMethods->xClose(real(file));
}

int read(sqlite3_file* file, void* to, int amount, sqlite3_int64 offset) {
    if (!strikes(Call::read)) return real(file)->pMethods->xRead(real(file), to, amount, offset);
    if (plan.fault != Fault::short_read) return SQLITE_IOERR_READ;
    const int half = amount / 2;
    const int code = real(file)->pMethods->xRead(real(file), to, half, offset);
    std::memset(static_cast<char*>(to) + half, 0, static_cast<std::size_t>(amount - half));
    return code == SQLITE_OK ? SQLITE_IOERR_SHORT_READ : code;
}

int write(sqlite3_file* file, const void* from, int amount, sqlite3_int64 offset) {
    if (!strikes(Call::write)) return real(file)->pMethods->xWrite(real(file), from, amount, offset);
    if (plan.fault == Fault::full) return SQLITE_FULL;
    if (plan.fault == Fault::torn && amount > 1) real(file)->pMethods->xWrite(real(file), from, amount / 2, offset);
    return SQLITE_IOERR_WRITE;
}

int truncate(sqlite3_file* file, sqlite3_int64 size) {
    return strikes(Call::other) ? SQLITE_IOERR_TRUNCATE : real(file)->pMethods->xTruncate(real(file), size);
}

int sync(sqlite3_file* /*file*/, int /*flags*/) {
    return strikes(Call::other) ? SQLITE_IOERR_FSYNC : SQLITE_OK;
}

int file_size(sqlite3_file* file, sqlite3_int64* size) {
    return strikes(Call::other) ? SQLITE_IOERR_FSTAT : real(file)->pMethods->xFileSize(real(file), size);
}

int lock(sqlite3_file* file, int level) {
    return strikes(Call::other) ? SQLITE_IOERR_LOCK : real(file)->pMethods->xLock(real(file), level);
}

int unlock(sqlite3_file* file, int level) {
    return real(file)->pMethods->xUnlock(real(file), level);
}

int check_reserved(sqlite3_file* file, int* out) {
    return real(file)->pMethods->xCheckReservedLock(real(file), out);
}

int control(sqlite3_file* file, int what, void* argument) {
    return real(file)->pMethods->xFileControl(real(file), what, argument);
}

int sector_size(sqlite3_file* file) {
    return real(file)->pMethods->xSectorSize(real(file));
}

int characteristics(sqlite3_file* file) {
    return real(file)->pMethods->xDeviceCharacteristics(real(file));
}

int shm_map(sqlite3_file* file, int page, int size, int extend, void volatile** out) {
    return strikes(Call::other) ? SQLITE_IOERR_SHMMAP
                                : real(file)->pMethods->xShmMap(real(file), page, size, extend, out);
}

int shm_lock(sqlite3_file* file, int offset, int n, int flags) {
    return real(file)->pMethods->xShmLock(real(file), offset, n, flags);
}

void shm_barrier(sqlite3_file* file) {
    real(file)->pMethods->xShmBarrier(real(file));
}

int shm_unmap(sqlite3_file* file, int remove) {
    return real(file)->pMethods->xShmUnmap(real(file), remove);
}

const sqlite3_io_methods methods{
    2,         close,          read,    write,       truncate,        sync,    file_size, lock,
    unlock,    check_reserved, control, sector_size, characteristics, shm_map, shm_lock,  shm_barrier,
    shm_unmap, nullptr,        nullptr};

int open_file(sqlite3_vfs* /*disk*/, sqlite3_filename name, sqlite3_file* file, int flags, int* out) {
    auto* mine = reinterpret_cast<File*>(file);
    mine->base.pMethods = nullptr;
    if (strikes(Call::other)) return SQLITE_CANTOPEN;
    mine->real = reinterpret_cast<sqlite3_file*>(mine + 1);
    const int code = real_disk->xOpen(real_disk, name, mine->real, flags, out);
    if (code == SQLITE_OK) mine->base.pMethods = &methods;
    return code;
}

int delete_file(sqlite3_vfs* /*disk*/, const char* name, int sync_folder) {
    return strikes(Call::other) ? SQLITE_IOERR_DELETE : real_disk->xDelete(real_disk, name, sync_folder);
}

int access_file(sqlite3_vfs* /*disk*/, const char* name, int flags, int* out) {
    return strikes(Call::other) ? SQLITE_IOERR_ACCESS : real_disk->xAccess(real_disk, name, flags, out);
}

sqlite3_vfs disk;

}  // namespace

FaultyDisk::FaultyDisk() {
    real_disk = sqlite3_vfs_find(nullptr);
    disk = *real_disk;
    disk.zName = "faulty";
    disk.szOsFile = static_cast<int>(sizeof(File)) + real_disk->szOsFile;
    disk.xOpen = open_file;
    disk.xDelete = delete_file;
    disk.xAccess = access_file;
    disk.pNext = nullptr;
    plan = {};
    sqlite3_vfs_register(&disk, 1);
}

FaultyDisk::~FaultyDisk() {
    sqlite3_vfs_unregister(&disk);
    sqlite3_vfs_register(real_disk, 1);
}

void FaultyDisk::arm(std::int64_t at, Fault fault, bool lasting) {
    plan = {{}, at, fault, lasting, false};
}

std::int64_t FaultyDisk::calls() const {
    return std::ssize(plan.calls);
}

bool FaultyDisk::can_strike(std::int64_t at, Fault fault) const {
    return applies(plan.calls.at(static_cast<std::size_t>(at - 1)), fault);
}

bool FaultyDisk::struck() const {
    return plan.struck;
}

}  // namespace samebase::tests

#include "store/detail/database.hpp"

#include <SQLiteCpp/Backup.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string_view>
#include <utility>

#include "store/detail/schema.hpp"
#include "store/store.hpp"

namespace samebase::store::detail {

namespace {

namespace fs = std::filesystem;
using Database = std::unique_ptr<SQLite::Database>;

constexpr std::string_view magic{"SQLite format 3\0", 16};
constexpr std::size_t head_size = 100;
constexpr int busy_milliseconds = 10'000;
/// Up to this size the whole file is looked through whenever it is opened; that takes a few milliseconds.
constexpr std::uintmax_t looked_through = 1'000'000;

const char* const restore_hint =
    "restore a backup: keep this file under another name, then copy the backup to its place";

std::string text(const fs::path& path) {
    return path.string();
}

/// A number of four bytes, the largest first.
std::uint32_t big_endian(std::string_view bytes) {
    std::uint32_t value = 0;
    for (const char byte : bytes.substr(0, 4)) value = value << 8U | static_cast<unsigned char>(byte);
    return value;
}

tl::unexpected<basics::Problems> damaged(const std::string& file, std::string what) {
    return basics::problem(file, "is damaged: " + std::move(what), "a sound kitchen database", restore_hint);
}

basics::Result<void> fitting_version(const std::string& file, std::int64_t version) {
    if (version > layout_version) {
        return basics::problem(file, fmt::format("was written by a newer samebase: its layout is version {}", version),
                               fmt::format("version {} or older", layout_version),
                               "use the newer samebase; nothing was changed");
    }
    if (version < 1) return damaged(file, fmt::format("its layout says version {}", version));
    return {};
}

bool has_log(const fs::path& path) {
    std::error_code error;
    const auto size = fs::file_size(text(path) + "-wal", error);
    return !error && size > 0;
}

/// Whether the file is shorter than the pages that its head counts. SQLite takes what is missing of the last one for
/// zeros. Only where all of its contents are in the file itself.
bool ends_early(const fs::path& path, std::string_view head) {
    constexpr std::uint32_t largest_page = 65536;
    const auto two = big_endian(head.substr(14)) & 0xFFFFU;  // page size, 1 for the largest
    const std::uint64_t page = two == 1 ? largest_page : two;
    const bool counted = big_endian(head.substr(24)) == big_endian(head.substr(92));  // else the count is an old one
    std::error_code error;
    const auto size = fs::file_size(path, error);
    return !error && counted && !has_log(path) && size < page * big_endian(head.substr(28));
}

/// The first bytes of the file, as far as there are any. Read through SQLite's own handle: to open and close the file
/// in any other way would give up every lock that this process has on it, and others would write into what is still in
/// use.
std::string first_bytes(SQLite::Database& db) {
    sqlite3_file* opened = nullptr;
    if (sqlite3_file_control(db.getHandle(), "main", SQLITE_FCNTL_FILE_POINTER, &opened) != SQLITE_OK ||
        opened == nullptr || opened->pMethods == nullptr) {
        throw SQLite::Exception("the file cannot be read", SQLITE_CANTOPEN);
    }
    sqlite3_int64 size = 0;
    if (const int code = opened->pMethods->xFileSize(opened, &size); code != SQLITE_OK)
        throw SQLite::Exception("the file cannot be read", code);
    std::string head(static_cast<std::size_t>(std::min<sqlite3_int64>(size, head_size)), '\0');
    if (head.empty()) return head;
    const int code = opened->pMethods->xRead(opened, head.data(), static_cast<int>(head.size()), 0);
    if (code != SQLITE_OK && code != SQLITE_IOERR_SHORT_READ) throw SQLite::Exception("the file cannot be read", code);
    return head;
}

basics::Result<void> plain_file(const fs::path& path) {
    std::error_code error;
    if (fs::is_directory(path, error)) return basics::problem(text(path), "is a folder", "a kitchen database");
    if (!fs::is_regular_file(path, error)) return basics::problem(text(path), "is no plain file", "a kitchen database");
    return {};
}

/// The file before SQLite looks into it: is it a kitchen database at all, of a version that we know?
basics::Result<void> look(SQLite::Database& db, const fs::path& path) {
    const std::string file = text(path);
    const std::string head = first_bytes(db);
    if (head.size() < head_size) return damaged(file, fmt::format("it has only {} bytes", head.size()));
    if (head.substr(0, magic.size()) != magic) {
        return basics::problem(file, "is no kitchen database", "a kitchen database", restore_hint);
    }
    if (big_endian(std::string_view(head).substr(68)) != static_cast<std::uint32_t>(application)) {
        return basics::problem(file, "is the database of another program", "a kitchen database", restore_hint);
    }
    if (auto fits = fitting_version(file, big_endian(std::string_view(head).substr(60))); !fits) return fits;
    if (ends_early(path, head)) return damaged(file, "it ends early");
    return {};
}

basics::Result<void> sound(SQLite::Database& db, const std::string& file) {
    if (db.execAndGet("PRAGMA application_id").getInt() != application) {
        return basics::problem(file, "is the database of another program", "a kitchen database", restore_hint);
    }
    if (auto fits = fitting_version(file, db.execAndGet("PRAGMA user_version").getInt64()); !fits) return fits;
    std::error_code error;
    const auto size = fs::file_size(file, error);
    if (!error && size <= looked_through) {
        const std::string said = db.execAndGet("PRAGMA quick_check(1)").getString();
        if (said != "ok") return damaged(file, said);
    }
    return {};
}

void configure(SQLite::Database& db) {
    db.exec(
        "PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON; PRAGMA trusted_schema = OFF;"
        "PRAGMA cell_size_check = ON; PRAGMA cache_size = -64000");
}

/// Where a step of the layout meets a table that it does not fit: the file is not of the version that it says.
class OtherLayout : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// Brings a database to the present layout, in one transaction each version.
void migrate(SQLite::Database& db) {
    db.exec("BEGIN IMMEDIATE");
    try {
        const int version = db.execAndGet("PRAGMA user_version").getInt();
        const auto steps = migrations();
        for (auto step = static_cast<std::size_t>(version); step < steps.size(); ++step)
            db.exec(std::string(steps[step]));
        if (version == 0) db.exec(fmt::format("PRAGMA application_id = {}", application));
        db.exec(fmt::format("PRAGMA user_version = {}", steps.size()));
        db.exec("COMMIT");
    } catch (const SQLite::Exception& error) {
        db.tryExec("ROLLBACK");
        if (error.getErrorCode() != SQLITE_ERROR) throw;
        throw OtherLayout(error.what());
    } catch (...) {
        db.tryExec("ROLLBACK");
        throw;
    }
}

/// What `work` returns; a file that is not of the version that it says is told as that.
template <class Work>
std::invoke_result_t<Work> in_its_version(const std::string& file, Work work) {
    try {
        return work();
    } catch (const OtherLayout& error) {
        return damaged(file, fmt::format("it is not of the version that its layout says ({})", error.what()));
    }
}

/// Whether the disk is full. Reading needs a little room too, for the index of the log: where that cannot be made,
/// SQLite speaks of an error of the disk.
bool no_room_beside(const std::string& file) {
    constexpr std::uintmax_t room_for_an_index = 64 * 1024;
    std::error_code error;
    const fs::path folder = fs::path(file).parent_path();
    const auto space = fs::space(folder.empty() ? "." : folder, error);
    return !error && space.available < room_for_an_index;
}

/// A new file appears with all of its layout or not at all: it is made beside and linked into its place. Where somebody
/// else was quicker, theirs is the file.
void create(const fs::path& path) {
    fs::path beside = path;
    beside += fmt::format(".new-{}", ::getpid());
    const auto clear = [&] {
        std::error_code error;
        for (const char* suffix : {"", "-wal", "-shm", "-journal"}) fs::remove(text(beside) + suffix, error);
    };
    clear();
    try {
        {
            SQLite::Database db(text(beside), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, busy_milliseconds);
            db.exec("PRAGMA synchronous = FULL");
            migrate(db);
            db.exec("PRAGMA journal_mode = WAL");
        }
        std::error_code error;
        fs::create_hard_link(beside, path, error);
        if (error && !fs::exists(path)) fs::rename(beside, path);  // a file system without hard links
    } catch (...) {
        clear();
        throw;
    }
    clear();
}

/// A file that nobody can write to: SQLite may leave out its locks. Only where all of its contents are in the file
/// itself.
std::string immutable_name(const fs::path& path) {
    std::string name = "file:";
    for (const char c : text(fs::absolute(path))) {
        const auto byte = static_cast<unsigned char>(c);
        if (std::isalnum(byte) != 0 || c == '/' || c == '.' || c == '-' || c == '_') {
            name += c;
        } else {
            name += fmt::format("%{:02X}", static_cast<unsigned>(byte));
        }
    }
    return name + "?immutable=1";
}

/// What an older version wrote is read from a copy in memory that has the present layout; the file stays as it is.
Database in_present_layout(Database db) {
    if (db->execAndGet("PRAGMA user_version").getInt() == layout_version) return db;
    auto copy = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup backup(*copy, *db);
    if (backup.executeStep(-1) != SQLITE_DONE) throw SQLite::Exception("the copy is not finished", SQLITE_BUSY);
    configure(*copy);
    migrate(*copy);
    return copy;
}

}  // namespace

bool busy(const SQLite::Exception& error) {
    const int code = error.getErrorCode();
    return code == SQLITE_BUSY || code == SQLITE_LOCKED || code == SQLITE_PROTOCOL;
}

basics::Problems explained(const SQLite::Exception& error, const std::string& file) {
    const int code = error.getErrorCode();
    const auto one = [&](std::string found, std::string expected, std::string hint) {
        return basics::Problems{{file, std::move(found), std::move(expected), std::move(hint)}};
    };
    const bool full = (code & 0xFF) == SQLITE_IOERR && no_room_beside(file);
    switch (full ? SQLITE_FULL : code & 0xFF) {
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return one(fmt::format("is damaged: {}", error.what()), "a sound kitchen database", restore_hint);
        case SQLITE_FULL:
            return one("the disk is full", "room to write",
                       "make room, look at 'samebase log', and say it again if it is not there");
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
        case SQLITE_PROTOCOL:
            return one("another command has been writing for a long time", "the file to be free",
                       "wait for it to end, then say it again; nothing was changed");
        case SQLITE_READONLY:
        case SQLITE_PERM:
            return one("cannot be written", "a file and folder that may be written", "look at their permissions");
        case SQLITE_CANTOPEN:
            return one("cannot be opened", "a file and folder that may be read and written",
                       "look at their permissions");
        case SQLITE_CONSTRAINT:
            return one(fmt::format("it does not add up: {}", error.what()), "entries that follow from those before",
                       "nothing was changed");
        default:
            return one(fmt::format("could not be read or written: {}", error.what()), "a disk that works",
                       "look at 'samebase log' for whether the command landed, and say it again if it did not");
    }
}

basics::Result<Database> open_to_write(const fs::path& path) {
    const std::string file = text(path);
    return guarded(file, [&] {
        return in_its_version(file, [&]() -> basics::Result<Database> {
            if (!fs::exists(path)) {
                if (!fs::is_directory(path.parent_path().empty() ? fs::path(".") : path.parent_path())) {
                    return basics::problem(file, "its folder does not exist", "a kitchen's folder");
                }
                create(path);
            }
            if (auto plain = plain_file(path); !plain) return tl::make_unexpected(plain.error());
            auto db = std::make_unique<SQLite::Database>(file, SQLite::OPEN_READWRITE, busy_milliseconds);
            if (auto looked = look(*db, path); !looked) return tl::make_unexpected(looked.error());
            configure(*db);
            if (auto fine = sound(*db, file); !fine) return tl::make_unexpected(fine.error());
            if (db->execAndGet("PRAGMA user_version").getInt() < layout_version) migrate(*db);
            if (db->execAndGet("PRAGMA journal_mode").getString() != "wal") db->exec("PRAGMA journal_mode = WAL");
            db->exec("PRAGMA synchronous = FULL");
            return db;
        });
    });
}

basics::Result<Database> open_to_read(const fs::path& path) {
    const std::string file = text(path);
    return guarded(file, [&] {
        return in_its_version(file, [&]() -> basics::Result<Database> {
            if (!fs::exists(path)) {
                auto db = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
                configure(*db);
                migrate(*db);
                return db;
            }
            if (auto plain = plain_file(path); !plain) return tl::make_unexpected(plain.error());
            try {
                auto db = std::make_unique<SQLite::Database>(file, SQLite::OPEN_READONLY, busy_milliseconds);
                if (auto looked = look(*db, path); !looked) return tl::make_unexpected(looked.error());
                configure(*db);
                if (auto fine = sound(*db, file); !fine) return tl::make_unexpected(fine.error());
                return in_present_layout(std::move(db));
            } catch (const SQLite::Exception& error) {
                const int code = error.getErrorCode();
                if (code != SQLITE_CANTOPEN && code != SQLITE_READONLY) throw;
            }
            if (has_log(path)) {
                return basics::problem(file, "was not closed, and its folder cannot be written",
                                       "a folder that may be written", "run any command once where it may be written");
            }
            auto db =
                std::make_unique<SQLite::Database>(immutable_name(path), SQLite::OPEN_READONLY | SQLite::OPEN_URI);
            configure(*db);
            if (auto fine = sound(*db, file); !fine) return tl::make_unexpected(fine.error());
            return in_present_layout(std::move(db));
        });
    });
}

}  // namespace samebase::store::detail

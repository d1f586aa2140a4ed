// A disk that fails on purpose: a layer beneath SQLite that counts its calls and lets one of them go wrong. It never
// waits for the platters, since the tests end processes and not the machine: without a fault it is a fast disk.
#pragma once

#include <cstdint>

namespace samebase::tests {

enum class Fault : std::uint8_t {
    error,      ///< the call reports an I/O error and does nothing
    full,       ///< a write finds the disk full
    torn,       ///< a write puts down half of what it should, and reports an error
    short_read  ///< a read gives half of what it should, and the rest as zeros
};

/// SQLite's default disk for as long as it lives. One at a time.
class FaultyDisk {
  public:
    FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;
    ~FaultyDisk();

    /// From here on calls are counted from 1, and call `at` goes wrong, if it is one that can go wrong so; with
    /// `lasting`, so does every one after it. 0: none does.
    void arm(std::int64_t at, Fault fault, bool lasting);
    [[nodiscard]] std::int64_t calls() const;
    /// Whether that call, of those since arm(), is one that can go wrong so.
    [[nodiscard]] bool can_strike(std::int64_t at, Fault fault) const;
    /// Something went wrong since arm().
    [[nodiscard]] bool struck() const;
};

}  // namespace samebase::tests

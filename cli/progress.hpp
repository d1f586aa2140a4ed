// What commands that search for long share: Ctrl-C that ends the search with the best so far, and a line that says how
// far it is.
#pragma once

#include <chrono>
#include <string_view>

#include "kitchen/kitchen.hpp"

namespace samebase::cli {

/// While it lives Ctrl-C does not end the program, but the search. One at a time.
class Interruptible {
  public:
    Interruptible();
    Interruptible(const Interruptible&) = delete;
    Interruptible& operator=(const Interruptible&) = delete;
    ~Interruptible();

    [[nodiscard]] static bool interrupted();

  private:
    void (*before_)(int);
};

/// One line on a terminal that is written over, once it has taken half a second.
class Progress {
  public:
    explicit Progress(const kitchen::Kitchen& kitchen);
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    ~Progress();

    /// False where the search is to end.
    bool operator()(std::string_view stage, basics::Money value);

  private:
    const kitchen::Kitchen& kitchen_;
    bool shown_;
    bool drawn_ = false;
    std::chrono::steady_clock::time_point start_;
    std::chrono::steady_clock::time_point last_{};
};

}  // namespace samebase::cli

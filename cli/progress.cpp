#include "progress.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <csignal>
#include <cstdio>

#include "show/words.hpp"

namespace samebase::cli {

namespace {

volatile std::sig_atomic_t stop = 0;

}  // namespace

Interruptible::Interruptible() : before_(std::signal(SIGINT, [](int) { stop = 1; })) {
    stop = 0;
}

Interruptible::~Interruptible() {
    std::signal(SIGINT, before_);
}

bool Interruptible::interrupted() {
    return stop != 0;
}

Progress::Progress(const kitchen::Kitchen& kitchen)
    : kitchen_(kitchen), shown_(isatty(STDERR_FILENO) != 0), start_(std::chrono::steady_clock::now()) {}

Progress::~Progress() {
    if (drawn_) std::fputs("\r\033[K", stderr);
}

bool Progress::operator()(std::string_view stage, basics::Money value) {
    using namespace std::chrono_literals;
    const auto now = std::chrono::steady_clock::now();
    if (shown_ && now - start_ > 500ms && now - last_ > 100ms) {
        last_ = now;
        drawn_ = true;
        const std::string line = fmt::format("\r\033[K{} ... {} so far (Ctrl-C ends it with the best so far)", stage,
                                             show::signed_money(value, kitchen_.household.currency));
        std::fputs(line.c_str(), stderr);
    }
    return !Interruptible::interrupted();
}

}  // namespace samebase::cli

// Commands run in a child process that is killed at random points. Afterwards the kitchen opens, is sound, and holds
// what the command chain holds after some whole number of commands: all that were said to be written, and at most one
// more.
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <thread>

#include "store/workbench.hpp"
#include "support/chain.hpp"
#include "support/faulty_disk.hpp"

using namespace samebase;
using namespace samebase::tests;
using store::Mode;
using store::Store;

namespace {

struct Child {
    pid_t pid = 0;
    int out = -1;
};

Child start(const std::vector<std::string>& arguments) {
    int ends[2] = {-1, -1};
    REQUIRE(::pipe(ends) == 0);
    const pid_t pid = ::fork();
    REQUIRE(pid >= 0);
    if (pid == 0) {
        ::dup2(ends[1], STDOUT_FILENO);
        ::close(ends[0]);
        ::close(ends[1]);
        std::vector<char*> argv{const_cast<char*>(SAMEBASE_STORE_DRIVER)};
        for (const std::string& argument : arguments) argv.push_back(const_cast<char*>(argument.c_str()));
        argv.push_back(nullptr);
        ::execv(argv[0], argv.data());
        ::_exit(127);
    }
    ::close(ends[1]);
    return {pid, ends[0]};
}

/// What it prints up to the end of so many lines.
std::string lines_of(const Child& child, std::int64_t lines) {
    std::string text;
    char letter = 0;
    while (lines > 0 && ::read(child.out, &letter, 1) == 1) {
        text += letter;
        lines -= letter == '\n' ? 1 : 0;
    }
    return text;
}

/// All that it printed besides, once it has ended.
std::string rest_of(const Child& child) {
    std::string text;
    char buffer[4096];
    for (ssize_t n = 0; (n = ::read(child.out, buffer, sizeof buffer)) > 0;)
        text.append(buffer, static_cast<std::size_t>(n));
    ::close(child.out);
    return text;
}

std::vector<stock::CommandNumber> numbers(const std::string& text) {
    std::vector<stock::CommandNumber> list;
    for (std::size_t at = 0, end = 0; (end = text.find('\n', at)) != std::string::npos; at = end + 1) {
        list.push_back(std::stoll(text.substr(at, end - at)));
    }
    return list;
}

}  // namespace

TEST_CASE("killed at random points, a command is written whole or not at all") {
    constexpr int kills = 600;
    constexpr int kills_a_kitchen = 30;
    const FaultyDisk fast;
    Dice dice(2026);
    const Folder reference_folder;
    Store reference = open(reference_folder.file());
    store::Document truth;
    int in_the_middle = 0;
    int nothing_yet = 0;
    auto folder = std::make_unique<Folder>();
    stock::CommandNumber known = 0;
    for (int i = 0; i < kills; ++i) {
        if (i % kills_a_kitchen == 0) {
            folder = std::make_unique<Folder>();
            known = 0;
        }
        const bool synced = i / kills_a_kitchen % 5 == 0;
        const Child child = start({synced ? "chain-synced" : "chain", folder->file().string(), "1000000"});
        // A third of them are killed while they start, the others behind some command, or in the middle of the next.
        std::string said = i % 3 == 0 ? "" : lines_of(child, dice.roll(5) + 1);
        std::this_thread::sleep_for(std::chrono::microseconds(dice.roll(i % 3 == 0 ? 20'000 : 2'500)));
        REQUIRE(::kill(child.pid, SIGKILL) == 0);
        int status = 0;
        REQUIRE(::waitpid(child.pid, &status, 0) == child.pid);
        REQUIRE(WIFSIGNALED(status));
        const auto told = numbers(said + rest_of(child));
        if (!told.empty()) known = told.back();
        nothing_yet += told.empty() ? 1 : 0;

        Store store = open(folder->file());
        expect(store.check());
        const auto revision = expect(store.revision());
        INFO("kill " << i << ", said to be written " << known << ", there " << revision);
        REQUIRE(revision >= known);
        REQUIRE(revision <= known + 1);
        in_the_middle += revision > known ? 1 : 0;
        known = revision;
        if (static_cast<stock::CommandNumber>(truth.commands.size()) < revision) {
            while (expect(reference.revision()) < revision) expect(next_of_chain(reference));
            truth = expect(reference.export_all());
        }
        REQUIRE(expect(store.export_all()) == after(truth, revision));
    }
    CHECK(in_the_middle < kills);
    WARN("kills: " << kills << ", of them before a first command " << nothing_yet << ", between writing and saying so "
                   << in_the_middle);
}

TEST_CASE("two processes at once, a thousand commands each: nothing lost, nothing doubled") {
    const Folder folder;
    const std::vector<Child> children{start({"crowd", folder.file().string(), "1000", "1"}),
                                      start({"crowd", folder.file().string(), "1000", "500001"})};
    std::vector<std::string> said(2);
    std::thread listening([&] { said[0] = rest_of(children[0]); });
    // Meanwhile a third one reads and makes backups.
    int backups = 0;
    for (int i = 0; i < 20; ++i) {
        std::this_thread::sleep_for(std::chrono::milliseconds(20));
        auto store = Store::open(folder.file(), Mode::read);
        if (!store) continue;  // not there yet
        const auto copy = folder.path() / ("backup " + std::to_string(i));
        expect(store->backup(copy));
        Store saved = open(copy, Mode::read);
        expect(saved.check());
        ++backups;
    }
    said[1] = rest_of(children[1]);
    listening.join();
    std::vector<stock::CommandNumber> all;
    for (std::size_t i = 0; i < 2; ++i) {
        int status = 0;
        REQUIRE(::waitpid(children[i].pid, &status, 0) == children[i].pid);
        REQUIRE(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
        const auto mine = numbers(said[i]);
        CHECK(mine.size() == 1000);
        all.insert(all.end(), mine.begin(), mine.end());
    }
    std::sort(all.begin(), all.end());
    std::vector<stock::CommandNumber> expected(2000);
    for (std::size_t i = 0; i < expected.size(); ++i) expected[i] = static_cast<stock::CommandNumber>(i) + 1;
    CHECK(all == expected);
    Store store = open(folder.file());
    CHECK(expect(store.check()).commands == 2000);
    CHECK(backups > 10);
}

// What every command is given: the options before it, the kitchen, and where answers go. The only place where the clock
// is read.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <vector>

#include "basics/day.hpp"
#include "basics/problem.hpp"
#include "kitchen/kitchen.hpp"
#include "show/words.hpp"

namespace samebase::store {
class Store;
}

namespace samebase::cli {

/// Exit statuses, as the help says them.
inline constexpr int answered = 0;
inline constexpr int needs_attention = 1;
inline constexpr int not_understood = 2;
inline constexpr int files_unsound = 3;
inline constexpr int store_failed = 4;

struct Failure {
    int status = not_understood;
    basics::Problems problems;
};

using Outcome = tl::expected<int, Failure>;

[[nodiscard]] tl::unexpected<Failure> failure(int status, basics::Problems problems);

/// One line on standard error where the day is before that of the newest command: stock then lies in the future, and
/// answers are of no use.
void tell_of_future(store::Store& store, basics::Day today);

/// The options before the command.
struct Options {
    std::string kitchen;
    std::string today;
    bool json = false;
};

class Context {
  public:
    /// Says to show how wide the screen is.
    explicit Context(const Options& options);

    [[nodiscard]] bool wants_json() const { return options_->json; }
    [[nodiscard]] tl::expected<basics::Day, Failure> today() const;

    /// The kitchen's folder: --kitchen, SAMEBASE_KITCHEN, or the nearest folder upwards with a kitchen.json.
    [[nodiscard]] tl::expected<std::filesystem::path, Failure> folder() const;
    /// The folder that a new kitchen is to be in: --kitchen, SAMEBASE_KITCHEN, or this one.
    [[nodiscard]] std::filesystem::path new_folder() const;
    /// What is shipped: SAMEBASE_DATA, beside the program, or where it was built.
    [[nodiscard]] static std::filesystem::path data_folder();

    [[nodiscard]] tl::expected<std::shared_ptr<const kitchen::Knowledge>, Failure> knowledge(bool with_kitchen) const;
    [[nodiscard]] tl::expected<kitchen::Household, Failure> household(const kitchen::Knowledge& knowledge) const;
    [[nodiscard]] tl::expected<kitchen::Kitchen, Failure> kitchen() const;

    /// Prints an answer to standard output: the text, or with --json the document.
    void answer(const std::function<std::string(const show::Manner&)>& text,
                const std::function<nlohmann::ordered_json()>& json, show::Manner manner = {}) const;

  private:
    const Options* options_;
};

}  // namespace samebase::cli

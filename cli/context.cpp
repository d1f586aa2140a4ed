#include "context.hpp"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <nlohmann/json.hpp>

#include "documents.hpp"
#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"
#include "output.hpp"
#include "store/store.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

namespace {

std::string from_environment(const char* name) {
    const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): one thread
    return value == nullptr ? "" : value;
}

/// Of a screen that lines are broken for: COLUMNS, else what the terminal says, else the usual.
std::size_t columns() {
    constexpr std::size_t most = 1000;
    const std::string said = from_environment("COLUMNS");
    std::size_t width = 0;
    const auto [end, error] = std::from_chars(said.data(), said.data() + said.size(), width);
    if (error == std::errc{} && end == said.data() + said.size() && width > 0) return std::min(width, most);
    winsize size{};
    if (ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)  // NOLINT(cppcoreguidelines-pro-type-vararg)
        return size.ws_col;
    return show::usual_width;
}

fs::path program_folder() {
    std::error_code error;
    const fs::path program = fs::read_symlink("/proc/self/exe", error);
    return error ? fs::path{} : program.parent_path();
}

/// The local calendar day.
basics::Day local_day() {
    const std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
    std::tm local{};
    localtime_r(&now, &local);
    return basics::Day{std::chrono::year{local.tm_year + 1900} / (local.tm_mon + 1) / local.tm_mday};
}

}  // namespace

Context::Context(const Options& options) : options_(&options) {
    show::set_screen_width(columns());
}

tl::unexpected<Failure> failure(int status, basics::Problems problems) {
    return tl::make_unexpected(Failure{status, std::move(problems)});
}

void tell_of_future(store::Store& store, basics::Day today) {
    const auto newest = store.log(1);
    if (!newest || newest->empty() || newest->front().command.day <= today) return;
    tell(fmt::format("samebase: today is {}, but the newest entry is of {}: look at the clock, or at --today\n",
                     basics::iso(today), basics::iso(newest->front().command.day)));
}

tl::expected<basics::Day, Failure> Context::today() const {
    if (options_->today.empty()) return local_day();
    if (const auto day = basics::read_iso_day(options_->today)) return *day;
    return failure(not_understood,
                   {{"--today", fmt::format("'{}'", options_->today), "a day such as 2026-12-04", std::nullopt}});
}

tl::expected<fs::path, Failure> Context::folder() const {
    fs::path named = options_->kitchen;
    if (named.empty()) named = from_environment("SAMEBASE_KITCHEN");
    std::error_code error;
    if (!named.empty()) {
        if (fs::exists(named / "kitchen.json", error)) return named;
        return failure(files_unsound, {{named.string(), "no kitchen.json in this folder", "the folder of a kitchen",
                                        "samebase new DIR starts one, samebase demo DIR writes the demo kitchen"}});
    }
    for (fs::path here = fs::current_path(error); !here.empty(); here = here.parent_path()) {
        if (fs::exists(here / "kitchen.json", error)) return here;
        if (here == here.root_path()) break;
    }
    return failure(files_unsound,
                   {{"kitchen", "no kitchen.json in this folder or above it", "--kitchen DIR, or SAMEBASE_KITCHEN",
                     "samebase new DIR starts one, samebase demo DIR writes the demo kitchen"}});
}

fs::path Context::new_folder() const {
    if (!options_->kitchen.empty()) return options_->kitchen;
    const std::string named = from_environment("SAMEBASE_KITCHEN");
    std::error_code error;
    return named.empty() ? fs::current_path(error) : fs::path(named);
}

fs::path Context::data_folder() {
    fs::path named = from_environment("SAMEBASE_DATA");
    if (!named.empty()) return named;
    std::error_code error;
    const fs::path installed = program_folder() / ".." / "share" / "samebase";
    if (fs::exists(installed / "catalogue", error)) return installed.lexically_normal();
    return SAMEBASE_BUILT_DATA;
}

tl::expected<std::shared_ptr<const kitchen::Knowledge>, Failure> Context::knowledge(bool with_kitchen) const {
    std::vector<fs::path> folders{data_folder()};
    if (with_kitchen) {
        const auto own = folder();
        if (!own) return tl::make_unexpected(own.error());
        if (const auto settled = settle(*own); !settled) return failure(store_failed, settled.error());
        folders.push_back(*own);
    }
    auto knowledge = exchange::load_knowledge(folders);
    if (!knowledge) return failure(files_unsound, knowledge.error());
    return *knowledge;
}

tl::expected<kitchen::Household, Failure> Context::household(const kitchen::Knowledge& knowledge) const {
    const auto own = folder();
    if (!own) return tl::make_unexpected(own.error());
    auto household = exchange::read_file(*own / "kitchen.json").and_then([&](const std::string& text) {
        return exchange::read_household_text(text, "kitchen.json", knowledge);
    });
    if (!household) return failure(files_unsound, household.error());
    return *household;
}

tl::expected<kitchen::Kitchen, Failure> Context::kitchen() const {
    auto known = knowledge(true);
    if (!known) return tl::make_unexpected(known.error());
    auto house = household(**known);
    if (!house) return tl::make_unexpected(house.error());
    auto store = store::Store::open(store::file_in(*folder()), store::Mode::read);
    if (!store) return failure(store_failed, store.error());
    if (const auto day = today()) tell_of_future(*store, *day);
    auto state = store->read(**known, *house);
    if (!state) return failure(store_failed, state.error());
    const auto day = today();
    if (!day) return tl::make_unexpected(day.error());
    return store::present(*known, std::move(*house), std::move(*state), *day).kitchen;
}

void Context::answer(const std::function<std::string(const show::Manner&)>& text,
                     const std::function<nlohmann::ordered_json()>& json, show::Manner manner) const {
    manner.colour = isatty(STDOUT_FILENO) != 0 && from_environment("NO_COLOR").empty();
    const std::string out = options_->json
                                ? json().dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n"
                                : text(manner);
    if (options_->json) {
        print_document(out);
    } else {
        print(out, manner.colour);
    }
}

}  // namespace samebase::cli

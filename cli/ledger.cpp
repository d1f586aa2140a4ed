#include "ledger.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <iostream>
#include <nlohmann/json.hpp>

#include "documents.hpp"
#include "meaning.hpp"
#include "output.hpp"
#include "show/change.hpp"

namespace samebase::cli {

void add_dry_run(CLI::App& command, How& how) {
    command.add_flag("--dry-run", how.dry_run, "say what it would do, and write nothing");
}

void add_yes(CLI::App& command, How& how) {
    command.add_flag("--yes,-y", how.yes, "ask nothing");
}

tl::unexpected<Failure> nothing_to_write(const How& how, const std::string& option) {
    return failure(not_understood,
                   {{"arguments", fmt::format("{} without {}", how.dry_run ? "--dry-run" : "--yes", option),
                     fmt::format("{}, or neither of them", option), std::nullopt}});
}

tl::expected<basics::Day, Failure> done_day(const std::string& text, basics::Day today, const std::string& where) {
    if (text.empty()) return today;
    auto day = day_meant(text, today, where);
    if (!day || *day <= today) return day;
    return failure(not_understood, {{where, fmt::format("{} has not come yet", basics::iso(*day)),
                                     fmt::format("{} or a day before it", basics::iso(today)), std::nullopt}});
}

bool on_terminal() {
    return isatty(STDIN_FILENO) != 0 && isatty(STDERR_FILENO) != 0;
}

std::optional<std::string> ask(const std::string& question) {
    tell(question + ' ');
    std::string line;
    if (!std::getline(std::cin, line)) return std::nullopt;
    const auto first = line.find_first_not_of(" \t\r");
    if (first == std::string::npos) return "";
    return line.substr(first, line.find_last_not_of(" \t\r") - first + 1);
}

bool agreed(const std::string& question) {
    const auto line = ask(question + " [y/n]");
    return line && !line->empty() && (line->front() == 'y' || line->front() == 'Y');
}

Outcome write_plan(const Context& context, const How& how, const Compute& compute) {
    return carry_out(context, how, compute,
                     [](const kitchen::Kitchen&, const kitchen::Change& change) -> std::optional<std::string> {
                         return fmt::format("{} rows of the plan change. Do it?", change.plan.size());
                     });
}

tl::expected<kitchen::Change, Failure> understood(basics::Result<kitchen::Change> change) {
    if (change) return std::move(*change);
    return failure(not_understood, std::move(change.error()));
}

tl::expected<Opened, Failure> open_kitchen(const Context& context, store::Mode mode) {
    const auto folder = context.folder();
    if (!folder) return tl::make_unexpected(folder.error());
    auto store = store::Store::open(store::file_in(*folder), mode);
    if (!store) return failure(store_failed, store.error());
    auto knowledge = context.knowledge(true);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    auto household = context.household(**knowledge);
    if (!household) return tl::make_unexpected(household.error());
    if (const auto day = context.today()) tell_of_future(*store, *day);
    return Opened{std::move(*knowledge), std::move(*household), std::move(*store)};
}

namespace {

/// Computes a change, and asks for it where that is needed; keeps apart what was not understood from what the store
/// could not do.
class Computing {
  public:
    Computing(const How& how, const Compute& compute, const Question& question)
        : how_(how), compute_(compute), question_(question) {}

    basics::Result<kitchen::Change> operator()(const kitchen::At& at, const store::State& facts) {
        auto change = compute_(at, facts);
        if (!change) {
            failed_ = change.error();
            return tl::make_unexpected(failed_->problems);
        }
        if (declined(at.kitchen, *change)) {
            failed_ = Failure{not_understood, {{change->command, "not agreed to", "yes", "nothing was changed"}}};
            return tl::make_unexpected(failed_->problems);
        }
        return std::move(*change);
    }
    [[nodiscard]] const std::optional<Failure>& failed() const { return failed_; }

  private:
    bool declined(const kitchen::Kitchen& before, const kitchen::Change& change) {
        if (how_.yes || how_.dry_run || !question_ || change.empty() || !on_terminal()) return false;
        const auto question = question_(before, change);
        if (!question || question == agreed_) return false;
        if (!agreed(*question)) return true;
        agreed_ = question;
        return false;
    }

    const How& how_;
    const Compute& compute_;
    const Question& question_;
    std::optional<std::string> agreed_;
    std::optional<Failure> failed_;
};

tl::expected<store::Done, Failure> computed(const Context& context, basics::Day day, Computing& computing) {
    auto opened = open_kitchen(context, store::Mode::read);
    if (!opened) return tl::make_unexpected(opened.error());
    auto state = opened->store.read(*opened->knowledge, opened->household);
    if (!state) return failure(store_failed, state.error());
    store::State facts;
    facts.revision = state->revision;
    facts.facts = state->facts;
    store::Present now = store::present(opened->knowledge, opened->household, std::move(*state), day);
    facts.next_lot = now.next_lot;
    store::Done done{std::move(now.kitchen), {}, {}};
    auto change = computing({done.before, day, facts.next_lot}, facts);
    if (!change) return failure(not_understood, change.error());
    done.change = std::move(*change);
    done.written.entries = done.change.entries;
    return done;
}

/// From the start again, with everything read anew, where another command changed the household in between.
tl::expected<store::Done, Failure> written(const Context& context, basics::Day day, Computing& computing) {
    while (true) {
        auto opened = open_kitchen(context, store::Mode::write);
        if (!opened) return tl::make_unexpected(opened.error());
        auto done =
            store::carry_out(opened->store, opened->knowledge, opened->household, day,
                             [&](const kitchen::At& at, const store::State& facts) { return computing(at, facts); });
        if (!done) return failure(store_failed, done.error());
        if (done->written.outdated) continue;
        if (done->change.documents.empty()) return std::move(*done);
        if (const auto landed = land(*context.folder(), opened->store); !landed)
            return failure(store_failed, landed.error());
        return std::move(*done);
    }
}

}  // namespace

Outcome carry_out(const Context& context, const How& how, const Compute& compute, const Question& question) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    Computing computing(how, compute, question);
    const auto done = how.dry_run ? computed(context, *today, computing) : written(context, *today, computing);
    if (!done) return tl::make_unexpected(computing.failed().value_or(done.error()));
    const show::Changed changed{done->before, done->change, done->written.entries, how.dry_run};
    context.answer([&](const show::Manner&) { return show::text(changed); }, [&] { return show::json(changed); });
    return answered;
}

}  // namespace samebase::cli

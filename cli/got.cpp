// samebase got: things arrive.
#include <fmt/format.h>

#include "bought.hpp"
#include "ledger.hpp"

namespace samebase::cli {

namespace {

struct Arguments {
    std::vector<std::string> what;
    std::vector<std::string> in;
    std::string paid;
    std::vector<std::string> use_by;
    std::vector<std::string> note;
    How how;
};

/// What is the same for all of the line.
struct ForAll {
    std::optional<stock::PlaceId> place;
    std::optional<basics::Day> use_by;
    std::string note;
};

tl::expected<ForAll, Failure> for_all(const Arguments& arguments, const kitchen::At& at) {
    ForAll all;
    if (!arguments.in.empty()) {
        const auto said = place_meant(at.kitchen, joined(arguments.in));
        if (!said) return tl::make_unexpected(said.error());
        all.place = *said;
    }
    if (!arguments.use_by.empty()) {
        const auto day = day_meant(joined(arguments.use_by), at.day, "--use-by");
        if (!day) return tl::make_unexpected(day.error());
        all.use_by = *day;
    }
    auto note = remark(arguments.note, "--note");
    if (!note) return tl::make_unexpected(note.error());
    all.note = std::move(*note);
    return all;
}

tl::expected<kitchen::Change, Failure> compute(const Arguments& arguments, const kitchen::At& at,
                                               const store::State& facts, Answers& answers) {
    const auto all = for_all(arguments, at);
    if (!all) return tl::make_unexpected(all.error());
    const auto things = read_things(at, facts, joined(arguments.what), all->place, Doing::buying, answers);
    if (!things) return tl::make_unexpected(things.error());
    std::vector<kitchen::Got> list;
    std::vector<std::string> notes;
    for (const Wanted& wanted : *things) {
        if (wanted.quantity.all()) {
            return failure(not_understood,
                           {{wanted.said.text, "no amount", "how much, as in '2 kg beef mince'", std::nullopt}});
        }
        auto got = bought(at.kitchen, wanted, all->place, notes);
        if (!got) return tl::make_unexpected(got.error());
        if (!got->use_by) got->use_by = all->use_by;
        got->note = all->note;
        list.push_back(std::move(*got));
    }
    if (const auto shared = share_payment(at.kitchen, arguments.paid, list, notes); !shared)
        return tl::make_unexpected(shared.error());
    auto change = understood(kitchen::got(at, list));
    if (!change) return change;
    change->notes.insert(change->notes.end(), notes.begin(), notes.end());
    return change;
}

Outcome run(const Arguments& arguments, const Context& context) {
    Answers answers;
    return carry_out(context, arguments.how, [&](const kitchen::At& at, const store::State& facts) {
        return compute(arguments, at, facts, answers);
    });
}

}  // namespace

void add_got(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand(
        "got", "things arrived: got 2 kg beef mince @ 9/kg, 3 cabbages @ 4.65, 300 g ham use by 30 dec");
    auto arguments = std::make_shared<Arguments>();
    command->add_option("what", arguments->what,
                        "amounts and names, with commas between things; a price each, '@ 4.65' or '@ 9/kg'");
    command->add_option("--in", arguments->in, "where it goes (else where such things usually are)")
        ->type_name("PLACE");
    command->add_option("--paid", arguments->paid, "for all of it")->type_name("MONEY");
    command->add_option("--use-by", arguments->use_by, "the use-by that is printed on it")->type_name("DAY");
    command->add_option("--note", arguments->note, "a remark")->type_name("WORDS");
    add_dry_run(*command, arguments->how);
    run_with(*command, chosen, arguments, run);
}

}  // namespace samebase::cli

// samebase undo: the last command, shown before it is undone; again for the one before.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "basics/sorted.hpp"
#include "documents.hpp"
#include "ledger.hpp"
#include "show/change.hpp"

namespace samebase::cli {

namespace {

/// What appears and what goes away from one list of rows to the other.
template <class Edit, class Row>
std::vector<Edit> edits(const std::vector<Row>& before, const std::vector<Row>& after) {
    std::vector<Edit> result;
    const auto missing = [&](const std::vector<Row>& from, const std::vector<Row>& in, bool adds) {
        for (const Row& row : from) {
            if (std::find(in.begin(), in.end(), row) == in.end()) result.push_back({adds, row});
        }
    };
    missing(before, after, false);
    missing(after, before, true);
    return result;
}

/// Entries as they are stored, with the lots that they are of: those that are there before or after, else by the whole
/// ledger.
class Entries {
  public:
    Entries(Opened& opened, const store::State& before, const store::State& after) : opened_(opened) {
        for (const auto* state : {&before, &after}) {
            for (const auto& lot : state->lots) lots_[lot.number] = lot;
        }
    }

    basics::Result<std::vector<stock::Entry>> of(const std::vector<store::EntryRow>& rows) {
        std::vector<stock::Entry> result;
        for (const auto& row : rows) {
            if (!lots_.contains(row.lot)) {
                if (auto all = add_all(); !all) return tl::make_unexpected(all.error());
            }
            const auto place = basics::find_sorted<stock::PlaceId>(opened_.household.places, row.place);
            const auto known = lots_.find(row.lot);
            if (!place || known == lots_.end()) continue;
            result.push_back({row.number, row.command, row.kind, row.column, row.day, *place, row.delta, row.reason,
                              row.undoes, known->second});
            stand(result.back().after, row.after);
        }
        return result;
    }

  private:
    basics::Result<void> add_all() {
        const auto document = opened_.store.export_all();
        if (!document) return tl::make_unexpected(document.error());
        for (const auto& row : document->lots) {
            const auto ingredient = opened_.knowledge->catalogue.ingredient(row.ingredient);
            if (!ingredient || lots_.contains(row.number)) continue;
            stock::Lot lot;
            lot.number = row.number;
            lot.ingredient = *ingredient;
            if (row.dish) lot.dish = opened_.knowledge->cookbook.dish(*row.dish);
            lot.arrived = row.arrived;
            lot.amount = {row.dimension, 0};
            lots_[row.number] = lot;
        }
        return {};
    }

    void stand(stock::Lot& lot, const store::Standing& now) const {
        lot.place = basics::find_sorted<stock::PlaceId>(opened_.household.places, now.place).value_or(stock::PlaceId{});
        lot.amount = {lot.amount.dimension(), now.amount};
        lot.rough = now.rough;
        lot.packs = now.packs;
        lot.part_of = now.part_of;
        lot.state = now.state;
        lot.since = now.since;
        lot.opened_on = now.opened_on;
        lot.thaw = now.thaw;
        lot.thawed_on = now.thawed_on;
        lot.printed_use_by = now.printed_use_by;
        lot.use_by = now.use_by;
        lot.best_by = now.best_by;
        lot.paid = now.paid ? std::optional(basics::Money{*now.paid}) : std::nullopt;
        lot.paid_for = now.paid_for;
        lot.note = now.note;
    }

    Opened& opened_;
    std::map<stock::LotNumber, stock::Lot> lots_;
};

/// "undone, of 2026-11-24: got 2 L milk into fridge"; the day only where it is another.
std::string line_of(const char* what, const store::CommandRow& row, basics::Day today) {
    const std::string of_day = row.day == today ? "" : fmt::format(", of {}", basics::iso(row.day));
    return fmt::format("{}{}: {}", what, of_day, row.line);
}

std::string question(const store::CommandRow& row, basics::Day today) {
    return show::with_days(line_of("Undo what was done", row, today), today) + "?";
}

/// What the documents that the command changed become when it is undone. What somebody changed by hand since then
/// stays; where both changed the same, nothing is undone.
tl::expected<std::vector<kitchen::DocumentEdit>, Failure> documents_before(const Context& context, Opened& opened,
                                                                           stock::CommandNumber command) {
    const auto rows = opened.store.documents_of(command);
    if (!rows) return failure(store_failed, rows.error());
    std::vector<kitchen::DocumentEdit> edits;
    for (const auto& row : *rows) {
        const auto now = text_of(*context.folder(), row.path);
        if (!now) return failure(files_unsound, now.error());
        auto before = taken_back(row, *now);
        if (!before) return failure(not_understood, before.error());
        if (row.path == "kitchen.json" && before->has_value()) {
            const auto sound = sound_household(**before, *opened.knowledge);
            if (!sound) return failure(not_understood, sound.error());
        }
        edits.push_back({row.path, *now, std::move(*before)});
    }
    return edits;
}

Outcome tell(const Context& context, Opened& opened, const store::CommandRow& undone, basics::Day today,
             store::State before, std::optional<stock::CommandNumber> written,
             std::vector<kitchen::DocumentEdit> documents) {
    kitchen::Change change;
    change.documents = std::move(documents);
    change.command = "undo";
    change.day = today;
    change.line = line_of(written ? "undone" : "to be undone", undone, today);
    std::vector<stock::Entry> entries;
    if (written && context.wants_json()) {
        const auto after = opened.store.read(*opened.knowledge, opened.household);
        if (!after) return failure(store_failed, after.error());
        const auto rows = opened.store.entries_of(*written);
        if (!rows) return failure(store_failed, rows.error());
        auto read = Entries(opened, before, *after).of(*rows);
        if (!read) return failure(store_failed, read.error());
        entries = std::move(*read);
        change.plan = edits<kitchen::PlanEdit>(before.plan, after->plan);
        change.history = edits<kitchen::HistoryEdit>(before.history, after->history);
        change.list = edits<kitchen::ListEdit>(before.listed, after->listed);
        change.facts = edits<kitchen::FactEdit>(before.facts, after->facts);
    }
    const auto kitchen = store::kitchen_of(opened.knowledge, opened.household, std::move(before));
    const show::Changed changed{kitchen, change, std::move(entries), !written};
    context.answer(
        [&](const show::Manner&) {
            return show::wrapped(show::capitalised(show::with_days(change.line, today)) +
                                 (change.line.ends_with('.') ? "" : ".")) +
                   "\n";
        },
        [&] { return show::json(changed); });
    return answered;
}

Outcome run(const How& how, const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    auto opened = open_kitchen(context, how.dry_run ? store::Mode::read : store::Mode::write);
    if (!opened) return tl::make_unexpected(opened.error());
    std::optional<stock::CommandNumber> agreed_to;
    while (true) {
        const auto last = opened->store.to_undo();
        if (!last) return failure(store_failed, last.error());
        if (!*last)
            return failure(not_understood, {{"undo", "nothing is left to undo", "a command that changed something",
                                             "'samebase log' shows what happened"}});
        auto before = opened->store.read(*opened->knowledge, opened->household);
        if (!before) return failure(store_failed, before.error());
        if (how.dry_run) return tell(context, *opened, **last, *today, std::move(*before), std::nullopt, {});
        if (!how.yes && on_terminal() && agreed_to != (*last)->number) {
            if (!agreed(question(**last, *today))) {
                return failure(not_understood, {{"undo", "not agreed to", "yes", "nothing was changed"}});
            }
            agreed_to = (*last)->number;
        }
        const auto documents = documents_before(context, *opened, (*last)->number);
        if (!documents) return tl::make_unexpected(documents.error());
        const auto written = opened->store.undo((*last)->number, *today, *documents);
        if (!written) return failure(store_failed, written.error());
        if (written->stale) continue;
        if (const auto landed = land(*context.folder(), opened->store); !landed)
            return failure(store_failed, landed.error());
        if (!documents->empty()) {  // what is told is named by the household as it is now
            opened = open_kitchen(context, store::Mode::write);
            if (!opened) return tl::make_unexpected(opened.error());
        }
        return tell(context, *opened, **last, *today, std::move(*before), written->command, *documents);
    }
}

}  // namespace

void add_undo(CLI::App& app, Chosen& chosen) {
    auto* command = app.add_subcommand("undo", "undo the last command, shown before; again for the one before that");
    auto how = std::make_shared<How>();
    add_yes(*command, *how);
    add_dry_run(*command, *how);
    run_with(*command, chosen, how, run);
}

}  // namespace samebase::cli

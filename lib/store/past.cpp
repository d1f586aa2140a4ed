#include "store/past.hpp"

#include <map>
#include <set>
#include <utility>

#include "kitchen/begin.hpp"

namespace samebase::store {

namespace {

/// Reads the rows of one command after another.
class Reading {
  public:
    Reading(const Document& ledger, const kitchen::Knowledge& knowledge) : ledger_(ledger), knowledge_(knowledge) {
        for (const CommandRow& command : ledger.commands) {
            if (!command.undoes) continue;
            passed_over_.insert(*command.undoes);
            passed_over_.insert(command.number);
        }
    }

    kitchen::Past run() {
        for (const CommandRow& command : ledger_.commands) {
            const bool counts = !passed_over_.contains(command.number);
            const std::size_t facts = fact_;
            for (; fact_ < ledger_.facts.size() && ledger_.facts[fact_].command == command.number; ++fact_)
                holds(ledger_.facts[fact_]);
            std::set<std::string> bought;
            for (; entry_ < ledger_.entries.size() && ledger_.entries[entry_].command == command.number; ++entry_) {
                const EntryRow& entry = ledger_.entries[entry_];
                if (!counts || command.name == kitchen::begin_command || command.name == kitchen::import_command)
                    continue;
                read(entry);
                if (entry.kind == stock::Kind::got) bought.insert(lot(entry).ingredient);
            }
            for (std::size_t i = facts; counts && i < fact_; ++i) {
                if (!bought.contains(ledger_.facts[i].ingredient)) said(command.day, ledger_.facts[i]);
            }
        }
        return std::move(past_);
    }

  private:
    [[nodiscard]] const LotRow& lot(const EntryRow& entry) const {
        return ledger_.lots[static_cast<std::size_t>(entry.lot - 1)];
    }

    /// The household's price of a thing as it stands.
    void holds(const FactRow& fact) {
        if (fact.kind != kitchen::Fact::Kind::price) return;
        if (fact.adds) prices_[fact.ingredient] = {fact.amount, fact.minor};
        if (!fact.adds) prices_.erase(fact.ingredient);
    }

    void said(basics::Day day, const FactRow& fact) {
        if (fact.kind != kitchen::Fact::Kind::price || !fact.adds || fact.amount <= 0) return;
        const auto id = knowledge_.catalogue.ingredient(fact.ingredient);
        if (id) past_.prices.push_back({day, *id, fact.amount, {fact.minor}, kitchen::PriceFrom::said});
    }

    void read(const EntryRow& entry) {
        const LotRow& row = lot(entry);
        const auto id = knowledge_.catalogue.ingredient(row.ingredient);
        if (!id) return;
        if (entry.kind == stock::Kind::got && entry.column == stock::Column::in) {
            arrived(entry, *id);
        } else if (entry.column == stock::Column::used || entry.column == stock::Column::tossed) {
            kitchen::Gone gone{entry.day, {}, -entry.delta, entry.reason};
            gone.lot.ingredient = *id;
            if (row.dish) gone.lot.dish = knowledge_.cookbook.dish(*row.dish);
            gone.lot.use_by = entry.after.use_by;
            gone.lot.best_by = entry.after.best_by;
            if (entry.after.paid) gone.lot.paid = basics::Money{*entry.after.paid};
            gone.lot.paid_for = entry.after.paid_for;
            (entry.column == stock::Column::used ? past_.used : past_.tossed).push_back(std::move(gone));
        }
    }

    /// What was paid for one thing became the household's price of it; a share of a payment did not.
    void arrived(const EntryRow& entry, catalogue::IngredientId id) {
        std::optional<basics::Money> paid;
        if (entry.after.paid) paid = basics::Money{*entry.after.paid};
        past_.bought.push_back({entry.day, id, entry.delta, paid});
        if (!paid || entry.after.paid_for <= 0) return;
        const auto price = prices_.find(lot(entry).ingredient);
        const bool own = price != prices_.end() && price->second == std::pair{entry.after.paid_for, paid->minor};
        past_.prices.push_back(
            {entry.day, id, entry.after.paid_for, *paid, own ? kitchen::PriceFrom::paid : kitchen::PriceFrom::share});
    }

    const Document& ledger_;
    const kitchen::Knowledge& knowledge_;
    std::set<stock::CommandNumber> passed_over_;
    std::map<std::string, std::pair<std::int64_t, std::int64_t>> prices_;
    std::size_t fact_ = 0;
    std::size_t entry_ = 0;
    kitchen::Past past_;
};

}  // namespace

kitchen::Past past_of(const Document& ledger, const kitchen::Knowledge& knowledge) {
    return Reading(ledger, knowledge).run();
}

}  // namespace samebase::store

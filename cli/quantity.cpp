// How much of a thing is meant: which of the readings of a number.
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "amounts.hpp"
#include "show/words.hpp"
#include "stock/packs.hpp"

namespace samebase::cli {

namespace {

using catalogue::Ingredient;
using measure::Amount;
using measure::Dimension;

constexpr std::int64_t one = 1000;             // of a pack or a piece
constexpr std::int64_t counted_from = 40'000;  // mg: what is at least so heavy is counted by the piece
constexpr std::int64_t not_counted = 4'000;    // mg: nobody counts what is lighter
constexpr std::int64_t few_packs = 3;          // of small things so many at most are clearly packs,
constexpr std::int64_t many_pieces = 8;        // and so many at least are clearly pieces
constexpr double far_apart = 3;                // two readings

/// What stands for a piece in the catalogue and is a part of what is bought: a slice of a loaf.
constexpr std::array<std::string_view, 19> parts{"cake",   "clove", "cube",   "floret", "leaf",  "nest",  "quarter",
                                                 "rasher", "rib",   "sachet", "sheet",  "slice", "spear", "sprig",
                                                 "square", "stalk", "stem",   "stick",  "tube"};

/// The word for a piece that is only a part; nothing where the piece is a thing of its own.
std::optional<std::string> part_word(const Ingredient& what) {
    for (const auto& [word, weight] : what.piece_mg) {
        const bool is_part = std::find(parts.begin(), parts.end(), word) != parts.end();
        if (is_part && what.conversion.mg_per_piece == weight) return word;
    }
    return std::nullopt;
}

bool ends_like(const std::string& name, const std::string& word) {
    return name.ends_with(word) || name.ends_with(word + "s") || (word == "leaf" && name.ends_with("leaves"));
}

bool is_plural(const std::string& name) {
    return name.ends_with('s') && !name.ends_with("ss") && !name.ends_with("us");
}

/// What one of them weighs as a cook counts it, which may be more than the piece of a recipe: a bunch of celery.
std::optional<std::int64_t> one_mg(const Ingredient& what, const std::string& size = {}) {
    if (const auto sized = what.piece_mg.find(size); !size.empty() && sized != what.piece_mg.end())
        return sized->second;
    if (const auto said = what.piece_mg.find("one"); said != what.piece_mg.end()) return said->second;
    return what.conversion.mg_per_piece;
}

tl::expected<Amount, Failure> own_amount(const Amount& amount, const Ingredient& what, const std::string& text) {
    auto own = catalogue::in_own_dimension(amount, what);
    if (own) return *own;
    for (auto& problem : own.error()) problem.where = text;
    return failure(not_understood, std::move(own.error()));
}

/// So many pieces, each of that weight, in the ingredient's own dimension.
tl::expected<Amount, Failure> of_pieces(std::int64_t count, std::optional<std::int64_t> mg, const Ingredient& what,
                                        const std::string& text) {
    Amount pieces{Dimension::pieces, count};
    if (what.dimension == Dimension::pieces && mg == what.conversion.mg_per_piece) return pieces;
    Ingredient by_name = what;
    by_name.conversion.mg_per_piece = mg;
    if (what.dimension != Dimension::pieces) return own_amount(pieces, by_name, text);
    const auto mass = catalogue::weight(pieces, by_name);
    return own_amount(mass ? Amount(*mass) : pieces, what, text);
}

/// What is in stock of it, in that place or else anywhere.
struct Known {
    std::int64_t amount = 0;
    std::int64_t packs = 0;  ///< in thousandths
    std::int64_t pack = 0;   ///< the largest
    bool loose = false;
};

Known known(const kitchen::Kitchen& kitchen, const Thing& thing, std::optional<stock::PlaceId> place) {
    Known here;
    Known anywhere;
    for (const auto& lot : kitchen.lots) {
        if (lot.ingredient != thing.ingredient || lot.rough || (thing.lot && lot.number != *thing.lot)) continue;
        for (Known* sum : {&anywhere, place == lot.place ? &here : nullptr}) {
            if (sum == nullptr) continue;
            sum->amount += lot.amount.value();
            sum->packs += stock::pack_count(lot);
            sum->pack = std::max(sum->pack, stock::whole_pack(lot));
            sum->loose = sum->loose || lot.packs.empty();
        }
    }
    return here.amount > 0 ? here : anywhere;
}

/// One pack is one piece: a tin, a whole chicken.
bool one_is_a_pack(const Ingredient& what, std::int64_t piece, std::int64_t pack) {
    constexpr double alike = 1.5;
    const double ratio = static_cast<double>(piece) / static_cast<double>(pack);
    if (ratio > alike || ratio < 1 / alike) return false;
    const bool meat = what.thaw == catalogue::Thaw::flat || what.thaw == catalogue::Thaw::block;
    return what.kind != catalogue::Kind::raw || meat || comes_in(what, "can");
}

enum class Reading : std::uint8_t { pieces, packs, either };

/// Of two amounts the one that is clearly nearer to what is known.
Reading nearer(double pieces, double packs, double there) {
    const auto far = [&](double amount) { return std::abs(std::log(amount / there)); };
    const double difference = far(pieces) - far(packs);
    if (std::abs(difference) < std::log(far_apart)) return Reading::either;
    return difference > 0 ? Reading::packs : Reading::pieces;
}

/// What a bare number of a thing is that has both a piece and a pack.
class Number {
  public:
    Number(const Ingredient& what, const Said& said, Doing doing, const Known& known, std::int64_t piece,
           std::int64_t pack)
        : what_(what),
          said_(said),
          doing_(doing),
          known_(known),
          piece_(piece),
          pack_(pack),
          count_(std::get<Amount>(said.amount->amount).value()) {}

    [[nodiscard]] Reading reading() const {
        if (one_is_a_pack(what_, piece_, pack_)) return Reading::packs;
        const auto part = part_word(what_);
        if (part && ends_like(said_.name, *part)) return Reading::pieces;
        if (count_ == 0) return Reading::packs;
        if (doing_ == Doing::eating) return Reading::pieces;
        if (doing_ == Doing::opening) return known_.packs > 0 ? Reading::packs : usual();
        if (known_.packs > 0 && doing_ != Doing::buying) return of_packs_there();
        return usual();
    }

  private:
    /// By what it is: whole things are counted, small ones come in packs unless they are many.
    [[nodiscard]] Reading usual() const {
        if (what_.piece_mg.contains("one")) return Reading::pieces;
        const std::int64_t mg = what_.conversion.mg_per_piece.value_or(counted_from);
        const bool part = part_word(what_).has_value();
        if (!part && mg >= counted_from) return Reading::pieces;
        if (mg < not_counted || count_ <= few_packs * one) return Reading::packs;
        return count_ >= many_pieces * one && !part ? Reading::pieces : Reading::either;
    }

    /// What is there is in packs, and packs are what a cook counts in; "24 sausages" are sausages all the same.
    [[nodiscard]] Reading of_packs_there() const {
        if (usual() == Reading::packs) return Reading::packs;
        if (doing_ == Doing::using_up) return usual();
        if (doing_ == Doing::moving) return count_ <= known_.packs ? Reading::packs : usual();
        const auto times = [&](std::int64_t each) {
            return static_cast<double>(count_) * static_cast<double>(each) / one;
        };
        if (doing_ == Doing::counting) {
            return is_plural(said_.name) ? nearer(times(piece_), times(pack_), static_cast<double>(known_.amount))
                                         : Reading::packs;
        }
        return Reading::either;
    }

    const Ingredient& what_;
    const Said& said_;
    Doing doing_;
    const Known& known_;
    std::int64_t piece_;
    std::int64_t pack_;
    std::int64_t count_;
};

/// "3 packs (1.8 kg)".
std::string packs_told(std::int64_t count, std::int64_t pack, const Ingredient& what) {
    const auto total = measure::scaled({what.dimension, pack}, count, one);
    return fmt::format("{} {} ({})", measure::write_kindly({Dimension::pieces, count}), count == one ? "pack" : "packs",
                       total ? measure::write_kindly(*total) : "");
}

/// The cook is asked which of the two it is, else it is a failure that shows both.
tl::expected<Reading, Failure> asked(const Ingredient& what, const Said& said, std::int64_t count, std::int64_t piece,
                                     std::int64_t pack, Answers* answers) {
    const auto total = measure::scaled({what.dimension, piece}, count, one);
    const auto single = part_word(what).value_or("piece");
    const std::string pieces = fmt::format("{} {}{} ({})", measure::write_kindly({Dimension::pieces, count}), single,
                                           count == one ? "" : "s", total ? measure::write_kindly(*total) : "");
    const std::string packs = packs_told(count, pack, what);
    if (answers != nullptr) {
        const auto chosen = answers->chosen(fmt::format("{}: which is it?", said.text), {pieces, packs});
        if (chosen) return *chosen == 0 ? Reading::pieces : Reading::packs;
    }
    const std::string number = measure::write_kindly({Dimension::pieces, count});
    return failure(not_understood,
                   {{said.text, fmt::format("may be {} or {}", pieces, packs), "one clear amount",
                     fmt::format("say '{} {}s {}' or '{} packs {}'", number, single, said.name, number, said.name)}});
}

/// Containers that are said for one another: what is sold as the one is also called the other.
bool alike(const std::string& said, const Ingredient& what) {
    constexpr std::array<std::array<std::string_view, 6>, 5> groups{
        {{"pack", "packet", "bag", "box", "tray", "carton"},
         {"block", "wedge", "wheel", "log", "piece", "pack"},
         {"bottle", "carton", "jar", "tub", "pouch", "can"},
         {"bunch", "head", "bulb", "each", "bag", ""},
         {"bag", "net", "loose", "punnet", "tub", "pot"}}};
    return std::any_of(groups.begin(), groups.end(), [&](const auto& group) {
        return std::find(group.begin(), group.end(), said) != group.end() &&
               std::any_of(group.begin(), group.end(),
                           [&](std::string_view word) { return !word.empty() && comes_in(what, std::string(word)); });
    });
}

/// Whether a container of that name may be its usual pack; else it is another one, of a size that nobody knows.
bool is_its_pack(const std::string& container, const Ingredient& what, const Known& there) {
    if (!what.pack || comes_in(what, container) || alike(container, what)) return true;
    if (there.pack > 0 && what.pack->name == "each") return true;
    constexpr std::array<std::string_view, 4> any{"pack", "tray", "box", "carton"};
    return what.pack->name != "each" && std::find(any.begin(), any.end(), container) != any.end();
}

tl::unexpected<Failure> no_such_container(const Said& said, const std::string& container, const Ingredient& what) {
    return failure(not_understood,
                   {{said.text, fmt::format("how much a {} of {} is, is not known", container, what.name),
                     fmt::format("its size, as in '2 x 500 g {}'", said.name), std::nullopt}});
}

tl::expected<kitchen::Quantity, Failure> in_packs(const Said& said, const Ingredient& what, std::int64_t count) {
    kitchen::Quantity quantity;
    quantity.packs = count;
    if (!said.total) return quantity;
    auto own = own_amount(*said.total, what, said.text);
    if (!own) return tl::make_unexpected(own.error());
    quantity.amount = *own;
    return quantity;
}

tl::expected<kitchen::Quantity, Failure> exactly(tl::expected<Amount, Failure> amount) {
    if (!amount) return tl::make_unexpected(amount.error());
    kitchen::Quantity quantity;
    quantity.amount = *amount;
    return quantity;
}

}  // namespace

tl::expected<kitchen::Quantity, Failure> quantity_of(const kitchen::Kitchen& kitchen, const Thing& thing,
                                                     const Said& said, std::optional<stock::PlaceId> place, Doing doing,
                                                     Answers* answers) {
    kitchen::Quantity quantity;
    if (!said.amount) return quantity;
    const auto& what = kitchen.catalogue()[thing.ingredient];
    if (const auto* rough = std::get_if<measure::Rough>(&said.amount->amount)) {
        quantity.rough = *rough;
        return quantity;
    }
    const Amount amount = std::get<Amount>(said.amount->amount);
    const std::int64_t count = amount.value();
    const std::string counted = said.counted() == "can" && !what.piece_mg.contains("can") ? "tin" : said.counted();
    const Known there = known(kitchen, thing, place);
    const bool served = what.in_serves && there.packs == 0 && !said.total && !said.each;
    if (!counted.empty() && counted != "serve" && served && is_container(said.counted())) {
        return failure(not_understood,
                       {{said.text, "is counted in serves", fmt::format("'2 serves {}'", said.name), std::nullopt}});
    }
    if (said.each || said.total) return in_packs(said, what, count);
    if (amount.dimension() != Dimension::pieces) return exactly(own_amount(amount, what, said.text));
    const std::int64_t pack = there.pack > 0 ? there.pack : what.pack ? what.pack->amount.value() : 0;
    const auto named = what.piece_mg.find(counted);
    if (named != what.piece_mg.end() && counted != "one") {
        const auto single = of_pieces(one, named->second, what, said.text);
        const bool is_pack = pack > 0 && single && (is_container(counted) || counted == "tin") &&
                             comes_in(what, said.counted()) && one_is_a_pack(what, single->value(), pack);
        if (is_pack) return in_packs(said, what, count);
        return exactly(of_pieces(count, named->second, what, said.text));
    }
    if (is_container(said.counted()) || (what.pack && counted == what.pack->name && counted != "each")) {
        if (!is_its_pack(said.counted(), what, there)) return no_such_container(said, said.counted(), what);
        return in_packs(said, what, count);
    }
    if (!counted.empty() || what.dimension == Dimension::pieces || what.in_serves) {
        return exactly(of_pieces(count, what.conversion.mg_per_piece, what, said.text));
    }
    const auto each = one_mg(what, said.size);
    if (!each) return in_packs(said, what, count);
    const auto piece = of_pieces(one, each, what, said.text);
    if (!piece) return tl::make_unexpected(piece.error());
    auto reading = pack == 0 ? Reading::pieces : Number(what, said, doing, there, piece->value(), pack).reading();
    if (reading == Reading::either) {
        const double times = static_cast<double>(pack) / static_cast<double>(piece->value());
        if (times > far_apart || times < 1 / far_apart) {
            const auto chosen = asked(what, said, count, piece->value(), pack, answers);
            if (!chosen) return tl::make_unexpected(chosen.error());
            reading = *chosen;
        }
    }
    if (reading == Reading::packs) return in_packs(said, what, count);
    return exactly(of_pieces(count, each, what, said.text));
}

}  // namespace samebase::cli

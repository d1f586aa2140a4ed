// Allergens: the union of three published lists. Australia New Zealand Food Standards Code, Schedule 9; Regulation (EU)
// No 1169/2011, Annex II; US FD&C Act s201(qq). What is not known counts as present.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace samebase::catalogue {

enum class Allergen : std::uint8_t {
    gluten,
    wheat,
    crustacean,
    egg,
    fish,
    milk,
    mollusc,
    peanut,
    sesame,
    soy,
    lupin,
    celery,
    mustard,
    sulphites,
    almond,
    brazil_nut,
    cashew,
    hazelnut,
    macadamia,
    pecan,
    pine_nut,
    pistachio,
    walnut
};

inline constexpr std::size_t allergen_count = 23;

[[nodiscard]] std::string_view name(Allergen allergen);  ///< as the documents write it: "brazil-nut"
[[nodiscard]] std::optional<Allergen> read_allergen(std::string_view text);

/// A set of allergens.
class AllergenSet {
  public:
    constexpr AllergenSet() = default;
    [[nodiscard]] static constexpr AllergenSet all() {
        AllergenSet set;
        set.bits_ = (std::uint32_t{1} << allergen_count) - 1;
        return set;
    }
    constexpr void add(Allergen allergen) { bits_ |= std::uint32_t{1} << static_cast<unsigned>(allergen); }
    constexpr void add(AllergenSet other) { bits_ |= other.bits_; }
    [[nodiscard]] constexpr bool has(Allergen allergen) const {
        return (bits_ >> static_cast<unsigned>(allergen) & 1U) != 0;
    }
    [[nodiscard]] constexpr AllergenSet shared_with(AllergenSet other) const {
        AllergenSet set;
        set.bits_ = bits_ & other.bits_;
        return set;
    }
    [[nodiscard]] constexpr AllergenSet without(AllergenSet other) const {
        AllergenSet set;
        set.bits_ = bits_ & ~other.bits_;
        return set;
    }
    [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
    [[nodiscard]] std::vector<Allergen> members() const;
    friend constexpr bool operator==(const AllergenSet&, const AllergenSet&) = default;

  private:
    std::uint32_t bits_ = 0;
};

/// "egg, milk": as the documents write them, in their order.
[[nodiscard]] std::string in_words(AllergenSet set);

}  // namespace samebase::catalogue

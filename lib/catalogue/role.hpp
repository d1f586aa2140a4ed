// What an ingredient does in a dish.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace samebase::catalogue {

enum class Role : std::uint8_t { main, body, starch, binder, sauce, seasoning, topping, side };

inline constexpr std::size_t role_count = 8;
inline constexpr std::array<Role, role_count> all_roles{Role::main,  Role::body,      Role::starch,  Role::binder,
                                                        Role::sauce, Role::seasoning, Role::topping, Role::side};

[[nodiscard]] std::string_view name(Role role);
[[nodiscard]] std::optional<Role> read_role(std::string_view text);

/// A set of roles as bits, bit i for the role of value i.
using RoleSet = std::uint8_t;
inline constexpr RoleSet every_role = 0xFF;
[[nodiscard]] constexpr RoleSet only(Role role) {
    return static_cast<RoleSet>(1U << static_cast<unsigned>(role));
}
[[nodiscard]] constexpr bool has(RoleSet set, Role role) {
    return (set & only(role)) != 0;
}

}  // namespace samebase::catalogue

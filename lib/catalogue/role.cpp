#include "catalogue/role.hpp"

namespace samebase::catalogue {

namespace {

constexpr std::array<std::string_view, role_count> names{"main",  "body",      "starch",  "binder",
                                                         "sauce", "seasoning", "topping", "side"};

}  // namespace

std::string_view name(Role role) {
    return names[static_cast<std::size_t>(role)];
}

std::optional<Role> read_role(std::string_view text) {
    for (const Role role : all_roles) {
        if (name(role) == text) return role;
    }
    return std::nullopt;
}

}  // namespace samebase::catalogue

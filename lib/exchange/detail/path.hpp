// Where a value stands in its document.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace samebase::exchange::detail {

/// The JSON Pointer (RFC 6901) from a document to one of the values in it: "/places/2/kind", "" for the document
/// itself or where it is not in there. Walks over the document, without recursion.
[[nodiscard]] std::string pointer_to(const nlohmann::json& document, const nlohmann::json* value);

}  // namespace samebase::exchange::detail

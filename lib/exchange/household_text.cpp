// How the household's document is laid out, and how two edits of it come together.
#include <algorithm>
#include <set>
#include <string>

#include "exchange/household_edit.hpp"

namespace samebase::exchange {

namespace {

using Json = HouseholdDocument;

constexpr std::size_t widest = 120;

/// On one line: {"id": "gus", "name": "Gus"}.
std::string in_line(const Json& value) {
    std::string out;
    const char* between = "";
    if (value.is_object()) {
        for (const auto& [key, child] : value.items()) {
            out += between + Json(key).dump() + ": " + in_line(child);
            between = ", ";
        }
        return "{" + out + "}";
    }
    if (value.is_array()) {
        for (const Json& child : value) {
            out += between + in_line(child);
            between = ", ";
        }
        return "[" + out + "]";
    }
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

/// A list of objects has each on a line of its own, whatever fits.
bool in_lines(const Json& value) {
    return value.is_array() && value.size() > 1 &&
           std::all_of(value.begin(), value.end(), [](const Json& child) { return child.is_object(); });
}

void lay_out(const Json& value, std::size_t indent, std::size_t used, bool open, std::string& out) {
    const std::string line = in_line(value);
    if (!value.is_structured() || value.empty() || (!open && !in_lines(value) && used + line.size() <= widest)) {
        out += line;
        return;
    }
    const std::string margin(indent + 2, ' ');
    const char* between = "";
    out += value.is_object() ? "{\n" : "[\n";
    for (const auto& [key, child] : value.items()) {
        const std::string head = margin + (value.is_object() ? Json(key).dump() + ": " : "");
        out += between + head;
        lay_out(child, indent + 2, head.size(), false, out);
        between = ",\n";
    }
    out += "\n" + std::string(indent, ' ') + (value.is_object() ? "}" : "]");
}

const Json* at(const Json& object, const std::string& key) {
    const auto found = object.find(key);
    return found == object.end() ? nullptr : &*found;
}

bool same(const Json* a, const Json* b) {
    return a == nullptr || b == nullptr ? a == b : *a == *b;
}

/// A list whose entries have identifiers, as an object by identifier; nothing where it is no such list.
std::optional<Json> by_id(const Json& list) {
    if (!list.is_array()) return std::nullopt;
    Json object = Json::object();
    for (const Json& entry : list) {
        if (!entry.is_object() || !entry.contains("id") || !entry["id"].is_string()) return std::nullopt;
        object[entry["id"].get<std::string>()] = entry;
    }
    return object.size() == list.size() ? std::optional(object) : std::nullopt;
}

std::optional<Json> merged_objects(const Json& base, const Json& mine, const Json& theirs, bool deep);

std::optional<Json> merged_lists(const Json& base, const Json& mine, const Json& theirs) {
    const auto a = by_id(base);
    const auto b = by_id(mine);
    const auto c = by_id(theirs);
    if (!a || !b || !c) return std::nullopt;
    const auto both = merged_objects(*a, *b, *c, false);
    if (!both) return std::nullopt;
    Json list = Json::array();
    for (const Json& entry : *both) list.push_back(entry);
    return list;
}

/// `deep`: lists by identifier are merged entry by entry.
std::optional<Json> merged_objects(const Json& base, const Json& mine, const Json& theirs, bool deep) {
    Json result = Json::object();
    std::set<std::string> seen;
    const auto put = [&](const std::string& key) {
        if (!seen.insert(key).second) return true;
        const Json* was = at(base, key);
        const Json* a = at(mine, key);
        const Json* b = at(theirs, key);
        const Json* value = same(was, a) ? b : a;
        if (!same(was, a) && !same(was, b) && !same(a, b)) {
            const auto list = deep && was && a && b ? merged_lists(*was, *a, *b) : std::nullopt;
            if (list) result[key] = *list;
            return list.has_value();
        }
        if (value != nullptr) result[key] = *value;
        return true;
    };
    for (const Json* side : {&theirs, &mine}) {
        for (const auto& [key, child] : side->items()) {
            if (!put(key)) return std::nullopt;
        }
    }
    return result;
}

}  // namespace

std::string household_text(const Json& document) {
    std::string out;
    lay_out(document, 0, 0, true, out);
    return out + "\n";
}

std::optional<Json> merged(const Json& base, const Json& mine, const Json& theirs) {
    if (!base.is_object() || !mine.is_object() || !theirs.is_object()) return std::nullopt;
    return merged_objects(base, mine, theirs, true);
}

}  // namespace samebase::exchange

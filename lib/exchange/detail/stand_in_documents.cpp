#include <cmath>

#include "basics/exact.hpp"
#include "exchange/detail/documents.hpp"

namespace samebase::exchange::detail {

namespace {

using catalogue::IngredientId;
using graph::Statement;

constexpr double least_ratio = 0.0001;
constexpr double most_ratio = 1000;
constexpr std::int64_t most_minutes = 24 * 60;

catalogue::RoleSet roles(const Element& entry) {
    const auto at = entry.find("role");
    if (!at || at->is_null()) return catalogue::every_role;
    const auto known = names_of<catalogue::Role>(catalogue::role_count);
    catalogue::RoleSet set = 0;
    const auto add = [&](const Element& name) {
        if (const auto role = word(name, catalogue::read_role, known)) set |= catalogue::only(*role);
    };
    if (at->value().is_array()) {
        for (const Element& name : at->list()) add(name);
    } else {
        add(*at);
    }
    return set;
}

std::vector<graph::Part> parts(const Element& entry, const catalogue::Catalogue& catalogue) {
    std::vector<graph::Part> result;
    for (const Element& part : entry.list("use")) {
        if (!part.object({"of", "ratio"})) continue;
        const auto of = ingredient_or_family(part, "of", catalogue);
        const double ratio = part.optional_number("ratio", least_ratio, most_ratio).value_or(1);
        if (of) result.push_back({*of, std::llround(ratio * static_cast<double>(graph::one))});
    }
    return result;
}

/// What a mixture and a reversible statement need beyond what each key says.
void sound(const Element& entry, const Statement& statement) {
    if (statement.parts.size() > 1) {
        const bool single = std::holds_alternative<IngredientId>(statement.replaces) &&
                            std::all_of(statement.parts.begin(), statement.parts.end(), [](const graph::Part& part) {
                                return std::holds_alternative<IngredientId>(part.of);
                            });
        if (!single) entry.wrong("a mixture with a family in it", "a mixture of ingredients, for one ingredient");
        if (statement.both_ways) entry.wrong("a mixture that holds both ways", "both_ways only with one thing to use");
    } else if (!statement.parts.empty() && statement.replaces == statement.parts.front().of) {
        entry.wrong("something that stands in for itself", "another ingredient or family");
    } else if (statement.both_ways && (!statement.note.empty() || statement.adds_minutes > 0)) {
        entry.wrong("both_ways with a note or with minutes", "one stand-in for each way",
                    "a note and a time say how to use one of the two; say the other way in an entry of its own");
    }
}

}  // namespace

std::vector<graph::Statement> read_stand_ins(std::span<const Document> documents, const catalogue::Catalogue& catalogue,
                                             basics::Problems& problems) {
    std::vector<Statement> result;
    for (const Document& document : documents) {
        const Element whole(document.value, document.name, problems);
        if (!whole.object({"stand_ins", "sources"})) continue;
        for (const Element& source : whole.list("sources")) static_cast<void>(source.text());
        static_cast<void>(whole.need("stand_ins"));
        for (const Element& entry : whole.list("stand_ins")) {
            if (!entry.object({"for", "role", "fit", "use", "both_ways", "never", "adds_minutes", "note"})) continue;
            Statement statement;
            const auto replaces = ingredient_or_family(entry, "for", catalogue);
            statement.roles = roles(entry);
            statement.never = entry.boolean("never", false);
            if (!statement.never) {
                const auto fit = entry.need("fit");
                if (fit) statement.fit = fit->number(0.001, 0.999);
            }
            statement.parts = parts(entry, catalogue);
            statement.both_ways = entry.boolean("both_ways", false);
            statement.adds_minutes =
                static_cast<int>(entry.optional_integer("adds_minutes", 1, most_minutes).value_or(0));
            statement.note = entry.optional_text("note").value_or("");
            if (!entry.find("use") || entry.find("use")->value().empty()) {
                entry.wrong("nothing to use", "at least one thing under 'use'");
            }
            if (!replaces || statement.parts.empty()) continue;
            statement.replaces = *replaces;
            sound(entry, statement);
            result.push_back(std::move(statement));
        }
    }
    return result;
}

}  // namespace samebase::exchange::detail

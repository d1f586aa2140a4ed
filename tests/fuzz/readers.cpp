#include "fuzz/readers.hpp"

#include <array>
#include <cstdlib>
#include <iostream>
#include <nlohmann/json.hpp>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"

namespace samebase::fuzz {

namespace {

constexpr std::array<Reader, 7> all{{{"days", read_days, 100},
                                     {"documents", read_documents, 4000},
                                     {"lines", read_lines, 300},
                                     {"recipes", read_recipes, 4000},
                                     {"stock_csv", read_stock_csv, 2000},
                                     {"whole", read_whole, 4000},
                                     {"words", read_words, 200}}};

template <class T>
T sound(basics::Result<T> result) {
    if (!result) must(false, "the demo kitchen cannot be read", basics::to_text(result.error().front()));
    return std::move(*result);
}

nlohmann::json demo_document(const std::string& file) {
    return sound(exchange::parse(sound(exchange::read_file(SAMEBASE_SOURCE_DIR "/data/demo/" + file)), file));
}

}  // namespace

std::span<const Reader> readers() {
    return all;
}

void must(bool holds, std::string_view what, const std::string& shown) {
    if (holds) return;
    std::cerr << "does not hold: " << what << (shown.empty() ? "" : ": ") << shown << '\n';
    std::abort();
}

void must_be_whole(const basics::Problems& problems, bool placed) {
    must(!problems.empty(), "a failure has a problem");
    for (const basics::Problem& problem : problems) {
        must(!problem.found.empty() && !problem.expected.empty(), "a problem is whole", basics::to_text(problem));
        must(!placed || !problem.where.empty(), "a problem has a place", basics::to_text(problem));
        must(problem.hint != std::optional<std::string>(""), "a hint says something");
        static_cast<void>(nlohmann::json(basics::to_text(problem)).dump());  // throws where it is not UTF-8
    }
}

basics::Day today() {
    return *basics::read_iso_day("2026-11-25");
}

const kitchen::Kitchen& demo() {
    static const kitchen::Kitchen kitchen = [] {
        kitchen::Kitchen read;
        const std::filesystem::path folder{SAMEBASE_SOURCE_DIR "/data"};
        read.knowledge = sound(exchange::load_knowledge({&folder, 1}));
        read.household =
            sound(exchange::read_household(demo_document("kitchen.json"), "kitchen.json", *read.knowledge));
        auto stock = sound(exchange::read_stock(demo_document("stock.json"), "stock.json", *read.knowledge,
                                                read.household, basics::days{0}));
        read.lots = std::move(stock.lots);
        read.plan = std::move(stock.plan);
        read.history = std::move(stock.history);
        return read;
    }();
    return kitchen;
}

}  // namespace samebase::fuzz

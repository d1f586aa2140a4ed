// The documents of a kitchen. The first byte chooses which one of a set of small sound documents is replaced; the rest
// is the text in its place.
#include "exchange/detail/documents.hpp"

#include <vector>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/tiny_documents.hpp"
#include "fuzz/readers.hpp"

namespace samebase::fuzz {

namespace {

/// What the first documents say; nothing, and whole problems, where they say nothing sound.
std::shared_ptr<const kitchen::Knowledge> knowledge_of(const std::vector<tests::TinyDocument>& documents) {
    std::vector<exchange::detail::Document> read;
    for (std::size_t i = 0; i < 5; ++i) read.push_back({documents[i].name, documents[i].value});
    const std::span<const exchange::detail::Document> all(read);
    basics::Problems problems;
    auto catalogue = exchange::detail::read_catalogue(all.subspan(0, 1), all.subspan(1, 1), problems);
    if (problems.empty()) {
        auto stand_ins = exchange::detail::read_stand_ins(all.subspan(2, 1), catalogue, problems);
        auto cookbook = exchange::detail::read_cookbook(all.subspan(3, 1), all.subspan(4, 1), catalogue, problems);
        if (problems.empty()) {
            return std::make_shared<kitchen::Knowledge>(std::move(catalogue), std::move(cookbook), std::move(stand_ins),
                                                        graph::Parameters{});
        }
    }
    must_be_whole(problems);
    return nullptr;
}

void must_be_sound(const kitchen::Kitchen& kitchen) {
    const auto broken = kitchen.check();
    must(!broken, "a kitchen that was read is sound", broken.value_or(""));
    for (const auto& lot : kitchen.lots) static_cast<void>(kitchen::price(kitchen, lot, lot.amount.value()));
    for (std::uint32_t i = 0; i < kitchen.cookbook().dishes().size(); ++i) {
        static_cast<void>(kitchen::cost_per_serve(kitchen, cookbook::DishId{i}));
    }
}

}  // namespace

void read_documents(const std::string& text) {
    static const std::vector<tests::TinyDocument> sound = [] { return tests::TinyDocuments().all(); }();
    static const auto known = knowledge_of(sound);
    if (text.empty()) return;
    const std::size_t which = static_cast<unsigned char>(text.front()) % sound.size();
    const std::string document = text.substr(1);
    constexpr std::size_t household_at = 5;
    if (which == household_at) {
        const auto household = exchange::read_household_text(document, "kitchen.json", *known);
        if (!household) must_be_whole(household.error());
    }
    const auto parsed = exchange::parse(document, sound[which].name);
    if (!parsed) return must_be_whole(parsed.error());
    auto documents = sound;
    documents[which].value = *parsed;
    const auto knowledge = which < household_at ? knowledge_of(documents) : known;
    if (!knowledge) return;
    const auto household = exchange::read_household(documents[household_at].value, "kitchen.json", *knowledge);
    if (!household) return must_be_whole(household.error());
    const auto stock =
        exchange::read_stock(documents[household_at + 1].value, "stock.json", *knowledge, *household, basics::days{0});
    if (!stock) return must_be_whole(stock.error());
    must_be_sound({knowledge, *household, stock->lots, stock->plan, {}, stock->history});
}

}  // namespace samebase::fuzz

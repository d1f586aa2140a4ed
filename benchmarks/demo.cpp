#include "benchmarks/demo.hpp"

#include <array>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <utility>

#include "exchange/file.hpp"
#include "exchange/household.hpp"
#include "exchange/knowledge.hpp"

namespace samebase::benchmarks {

namespace {

std::filesystem::path data_folder() {
    return SAMEBASE_SOURCE_DIR "/data";
}

basics::Result<nlohmann::json> document(const std::string& name) {
    return exchange::read_file(data_folder() / "demo" / name).and_then([&](const std::string& text) {
        return exchange::parse(text, name);
    });
}

}  // namespace

basics::Result<std::shared_ptr<const kitchen::Knowledge>> load_knowledge() {
    const std::array folders{data_folder()};
    return exchange::load_knowledge(folders);
}

basics::Result<Demo> load_demo(std::shared_ptr<const kitchen::Knowledge> knowledge) {
    const auto household_document = document("kitchen.json");
    if (!household_document) return tl::make_unexpected(household_document.error());
    const auto stock_document = document("stock.json");
    if (!stock_document) return tl::make_unexpected(stock_document.error());
    const auto today = basics::read_iso_day(stock_document->value("around", ""));
    if (!today) return basics::problem("stock.json, /around", "no day", "the day that the demo is written around");
    auto household = exchange::read_household(*household_document, "kitchen.json", *knowledge);
    if (!household) return tl::make_unexpected(household.error());
    auto stock = exchange::read_stock(*stock_document, "stock.json", *knowledge, *household, basics::days{0});
    if (!stock) return tl::make_unexpected(stock.error());
    Demo demo;
    demo.today = *today;
    demo.kitchen.knowledge = std::move(knowledge);
    demo.kitchen.household = std::move(*household);
    demo.kitchen.lots = std::move(stock->lots);
    demo.kitchen.plan = std::move(stock->plan);
    demo.kitchen.history = std::move(stock->history);
    if (const auto reason = demo.kitchen.check())
        return basics::problem("the demo kitchen", *reason, "a sound kitchen");
    return demo;
}

}  // namespace samebase::benchmarks

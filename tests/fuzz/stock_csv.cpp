// The table of stock.
#include "exchange/stock_csv.hpp"

#include "fuzz/readers.hpp"

namespace samebase::fuzz {

void read_stock_csv(const std::string& text) {
    const auto read = [](const std::string& table) {
        return exchange::read_stock_csv(table, "stock.csv", *demo().knowledge, demo().household, today());
    };
    const auto lots = read(text);
    if (!lots) return must_be_whole(lots.error());
    for (const auto& lot : *lots) {
        const auto broken = stock::check(lot, demo().catalogue());
        must(!broken, "a lot that was read is sound", broken.value_or(""));
    }
    const std::string written = exchange::write_stock_csv(*lots, demo());
    const auto again = read(written);
    must(again && *again == *lots, "what is written is read as it was", written);
}

}  // namespace samebase::fuzz

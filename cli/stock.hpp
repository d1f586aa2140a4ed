// What is in stock, with what is to be used first, for the command of that name and for its sheet.
#pragma once

#include "context.hpp"
#include "show/stock.hpp"

namespace samebase::cli {

/// `place`: words for one place; empty for everywhere.
[[nodiscard]] tl::expected<show::StockAnswer, Failure> stock_answer(const kitchen::Kitchen& kitchen, basics::Day today,
                                                                    const std::string& place);

}  // namespace samebase::cli

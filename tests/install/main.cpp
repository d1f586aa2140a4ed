// Reads an amount as a cook writes it and prints it exactly.
#include <iostream>

#include "measure/written.hpp"

int main(int count, char** arguments) {
    const auto read =
        samebase::measure::read_amount(count > 1 ? arguments[1] : "", samebase::measure::MeasureSet::australian_metric);
    if (!read) {
        std::cout << samebase::basics::to_text(read.error().front()) << '\n';
        return 1;
    }
    if (const auto* amount = std::get_if<samebase::measure::Amount>(&read->amount)) {
        std::cout << samebase::measure::write(*amount) << '\n';
    } else {
        std::cout << samebase::measure::name(std::get<samebase::measure::Rough>(read->amount)) << '\n';
    }
}

// Amounts and ingredient lines as they are written. The first byte chooses the set of measures.
#include "fuzz/readers.hpp"
#include "measure/line.hpp"
#include "measure/measure_set.hpp"
#include "measure/written.hpp"

namespace samebase::fuzz {

void read_lines(const std::string& text) {
    if (text.empty()) return;
    const auto set = measure::measure_sets[static_cast<unsigned char>(text.front()) % measure::measure_sets.size()];
    const std::string line = text.substr(1);
    const auto amount = measure::read_amount(line, set);
    if (!amount) {
        must_be_whole(amount.error(), false);
    } else if (const auto* plain = std::get_if<measure::Amount>(&amount->amount)) {
        must(plain->value() >= 0, "an amount is not below 0");
        const auto again = measure::read_amount(measure::write(*plain), set);
        must(again && again->amount == amount->amount, "an amount is read as it is written", measure::write(*plain));
    }
    const auto read = measure::read_line(line, set);
    if (!read) return must_be_whole(read.error(), false);
    must(!read->name.empty() && read->original == line, "a line has a name, and is kept");
    must(read->amount || (read->unit.empty() && !read->each), "what has no amount has no unit");
    must(read->unit.empty() || measure::find_unit(read->unit)->name == read->unit, "a unit is a known one", read->unit);
}

}  // namespace samebase::fuzz

#include "ask/balance.hpp"

#include <algorithm>

#include "ask/detail/ahead.hpp"
#include "ask/detail/mend.hpp"

namespace samebase::ask {

basics::Result<BalanceAnswer> ask_balance(const kitchen::Kitchen& kitchen, basics::Day today, basics::Span span,
                                          std::size_t most_mends) {
    if (const auto ahead = detail::ends_ahead("balance", span, today); !ahead)
        return tl::make_unexpected(ahead.error());
    span.first = std::max(span.first, today);
    const flow::Balancer balancer(kitchen, {today, span.last});
    const flow::Balance balance = balancer.balance(balancer.planned());
    BalanceAnswer answer{span, balance.totals, flow::ledger(kitchen, balance), flow::findings(kitchen, balance), {}, 0};
    std::erase_if(answer.rows, [&](const flow::LedgerRow& row) { return row.day < span.first; });
    std::erase_if(answer.findings,
                  [&](const flow::Finding& finding) { return finding.day < span.first && span.first > today; });
    answer.mends.resize(answer.findings.size());
    answer.mended = std::min(most_mends, answer.findings.size());
    const detail::Mender mender(kitchen, today, balancer, balance);
    for (std::size_t i = 0; i < answer.mended; ++i) answer.mends[i] = mender.mend(answer.findings[i]);
    return answer;
}

}  // namespace samebase::ask

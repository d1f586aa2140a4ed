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
    BalanceAnswer answer;
    answer.span = span;
    answer.totals = balance.totals;
    answer.rows = flow::ledger(kitchen, balance);
    answer.findings = flow::findings(kitchen, balance);
    std::erase_if(answer.rows, [&](const flow::LedgerRow& row) { return row.day < span.first; });
    std::erase_if(answer.findings,
                  [&](const flow::Finding& finding) { return finding.day < span.first && span.first > today; });
    answer.telling = flow::tell(kitchen, today, answer.findings, most_told);
    answer.looked.assign(answer.findings.size(), false);
    std::fill_n(answer.looked.begin(), std::min(most_mends, answer.findings.size()), true);
    for (const flow::Told& told : answer.telling.told) answer.looked[told.of.front()] = true;
    answer.mends.resize(answer.findings.size());
    const detail::Mender mender(kitchen, today, balancer, balance);
    for (std::size_t i = 0; i < answer.findings.size(); ++i) {
        if (answer.looked[i]) answer.mends[i] = mender.mend(answer.findings[i]);
    }
    return answer;
}

}  // namespace samebase::ask

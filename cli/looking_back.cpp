#include "looking_back.hpp"

#include "store/past.hpp"

namespace samebase::cli {

tl::expected<LookedBack, Failure> look_back(const Context& context) {
    const auto today = context.today();
    if (!today) return tl::make_unexpected(today.error());
    auto opened = open_kitchen(context, store::Mode::read);
    if (!opened) return tl::make_unexpected(opened.error());
    auto state = opened->store.read(*opened->knowledge, opened->household);
    if (!state) return failure(store_failed, state.error());
    const auto ledger = opened->store.export_all();
    if (!ledger) return failure(store_failed, ledger.error());
    return LookedBack{store::present(opened->knowledge, opened->household, std::move(*state), *today).kitchen,
                      store::past_of(*ledger, *opened->knowledge)};
}

}  // namespace samebase::cli

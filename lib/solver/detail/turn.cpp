#include "solver/detail/turn.hpp"

namespace samebase::solver::detail {

std::mutex& one_at_a_time() {
    static std::mutex mutex;
    return mutex;
}

}  // namespace samebase::solver::detail

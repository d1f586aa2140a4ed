#include "output.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <string>
#include <system_error>

#include "context.hpp"
#include "show/terminal.hpp"

namespace samebase::cli {

namespace {

/// Why standard output did not take something; 0: it took all so far.
int failed = 0;

}  // namespace

void print_document(std::string_view text) {
    errno = 0;
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size() && failed == 0) failed = errno;
}

void print(std::string_view text, bool colours) {
    print_document(show::fit_for_terminal(text, colours ? show::Escapes::colours : show::Escapes::none));
}

void tell(std::string_view text) {
    const std::string fit = show::fit_for_terminal(text);
    std::fwrite(fit.data(), 1, fit.size(), stderr);
}

int finished(int status) {
    errno = 0;
    const bool flushed = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
    if (flushed && failed == 0) return status;
    const int reason = failed != 0 ? failed : errno != 0 ? errno : EIO;
    tell(fmt::format(
        "samebase: standard output: not all of the answer could be written: {}; expected a place that takes "
        "it (look at 'samebase log' for what was done)\n",
        std::error_code(reason, std::generic_category()).message()));
    return store_failed;
}

}  // namespace samebase::cli

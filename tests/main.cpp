// Catch2's main, compiled once for all test programs: with one seed, so that a clean checkout gives the same result
// twice. RC_PARAMS (rapidcheck) and SAMEBASE_SEED (our own generators) set others; what failed says how to repeat it.
#define CATCH_CONFIG_RUNNER
#include <catch2/catch.hpp>
#include <cstdlib>
#include <iostream>
#include <string>

namespace {

constexpr const char* usual_seed = "4";

std::string said(const char* name) {
    const char* value = std::getenv(name);  // NOLINT(concurrency-mt-unsafe): before any thread
    return value == nullptr ? "" : value;
}

/// What the environment says, with a seed where it says none.
void set_seeds() {
    const std::string params = said("RC_PARAMS");
    if (params.find("seed=") == std::string::npos) {
        const std::string seeded = params + (params.empty() ? "" : " ") + "seed=" + usual_seed;
        setenv("RC_PARAMS", seeded.c_str(), 1);  // NOLINT(concurrency-mt-unsafe): before any thread
    }
    if (said("SAMEBASE_SEED").empty()) {
        setenv("SAMEBASE_SEED", usual_seed, 1);  // NOLINT(concurrency-mt-unsafe): before any thread
    }
}

}  // namespace

int main(int argc, char** argv) {
    set_seeds();
    Catch::Session session;
    if (const int wrong = session.applyCommandLine(argc, argv); wrong != 0) return wrong;
    // A name that no test has is a failure: a semicolon in a name makes two of it on its way through CMake.
    session.configData().warnings =
        static_cast<Catch::WarnAbout::What>(session.configData().warnings | Catch::WarnAbout::NoTests);
    const int failed = session.run();
    const auto& asked = session.configData();
    if (failed == 0 || asked.listTests || asked.listTestNamesOnly || asked.listReporters) return failed;
    std::cerr << "To repeat it: RC_PARAMS='" << said("RC_PARAMS") << "' SAMEBASE_SEED=" << said("SAMEBASE_SEED");
    for (int i = 0; i < argc; ++i) std::cerr << " '" << argv[i] << "'";
    std::cerr << "\n";
    return failed;
}

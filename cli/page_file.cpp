#include "page_file.hpp"

#include <filesystem>

#include "exchange/file.hpp"

namespace samebase::cli {

namespace fs = std::filesystem;

tl::expected<void, Failure> write_page(const std::string& file, const std::string& text, std::string_view mark) {
    std::error_code error;
    if (fs::exists(file, error)) {
        const auto old = exchange::read_file(file);
        if (!old || old->find(mark) == std::string::npos) {
            return failure(not_understood, {{file, "is there already, and is something else",
                                             "a new file, or one that this command wrote", "choose another name"}});
        }
    }
    if (const auto written = exchange::write_file(file, text); !written) return failure(store_failed, written.error());
    return {};
}

}  // namespace samebase::cli

// HTML, written element by element. Everything that is not our own markup goes through escaped(), here alone.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace samebase::show::detail {

/// Text as the content of an element or of an attribute in quotes, of HTML and of SVG. Control characters,
/// bidirectional controls and broken UTF-8 are U+FFFD, as they are on a terminal.
[[nodiscard]] std::string escaped(std::string_view text);

class Html {
  public:
    using Attributes = std::initializer_list<std::pair<std::string_view, std::string>>;

    /// Starts an element; `tag` and the names of attributes are our own words.
    Html& open(std::string_view tag, Attributes attributes = {});
    /// Starts one that has no content: "meta".
    Html& single(std::string_view tag, Attributes attributes = {});
    Html& text(std::string_view text);
    /// Ends the element that was started last.
    Html& close();
    Html& element(std::string_view tag, std::string_view content, Attributes attributes = {});
    /// Our own markup, as it is.
    Html& own(std::string_view markup);

    /// The whole; every element is ended.
    [[nodiscard]] std::string take() &&;

  private:
    void start(std::string_view tag, Attributes attributes);

    std::string out_;
    std::vector<std::string> started_;
};

}  // namespace samebase::show::detail

#include "show/detail/html.hpp"

#include <array>
#include <cassert>

#include "show/terminal.hpp"

namespace samebase::show::detail {

namespace {

/// Elements after which a line ends, so that a page can be read as text.
constexpr std::array<std::string_view, 24> ends_line{
    "html", "head", "title", "style", "body", "main", "nav",     "article", "section", "h1",  "h2", "h3",
    "p",    "ul",   "ol",    "li",    "tr",   "td",   "caption", "thead",   "tbody",   "svg", "th", "table"};

bool is_block(std::string_view tag) {
    for (const std::string_view one : ends_line) {
        if (one == tag) return true;
    }
    return false;
}

}  // namespace

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : fit_for_terminal(text)) {
        switch (c) {
            case '&':
                out += "&amp;";
                break;
            case '<':
                out += "&lt;";
                break;
            case '>':
                out += "&gt;";
                break;
            case '"':
                out += "&quot;";
                break;
            case '\'':
                out += "&#39;";
                break;
            default:
                out += c;
        }
    }
    return out;
}

void Html::start(std::string_view tag, Attributes attributes) {
    out_ += '<';
    out_ += tag;
    for (const auto& [name, value] : attributes) {
        out_ += ' ';
        out_ += name;
        out_ += "=\"";
        out_ += escaped(value);
        out_ += '"';
    }
    out_ += '>';
}

Html& Html::open(std::string_view tag, Attributes attributes) {
    start(tag, attributes);
    started_.emplace_back(tag);
    return *this;
}

Html& Html::single(std::string_view tag, Attributes attributes) {
    start(tag, attributes);
    out_ += '\n';
    return *this;
}

Html& Html::text(std::string_view text) {
    out_ += escaped(text);
    return *this;
}

Html& Html::close() {
    assert(!started_.empty());
    const std::string tag = std::move(started_.back());
    started_.pop_back();
    out_ += "</" + tag + ">";
    if (is_block(tag)) out_ += '\n';
    return *this;
}

Html& Html::element(std::string_view tag, std::string_view content, Attributes attributes) {
    return open(tag, attributes).text(content).close();
}

Html& Html::own(std::string_view markup) {
    out_ += markup;
    return *this;
}

std::string Html::take() && {
    assert(started_.empty());
    return std::move(out_);
}

}  // namespace samebase::show::detail

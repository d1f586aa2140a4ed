#include "exchange/whole.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <type_traits>

#include "exchange/detail/documents.hpp"
#include "exchange/detail/reading.hpp"
#include "exchange/detail/rows.hpp"
#include "exchange/file.hpp"
#include "stock/entry.hpp"

namespace samebase::exchange {

namespace {

using detail::Element;
using Json = nlohmann::ordered_json;

class Writer {
  public:
    template <class Value>
    void need(const char* key, const Value& value) {
        row[key] = json(value);
    }
    template <class Value>
    void maybe(const char* key, const Value& value) {
        if (value != Value{}) need(key, value);
    }
    Json row = Json::object();

  private:
    static Json json(const std::string& value) { return value; }
    static Json json(std::int64_t value) { return value; }
    static Json json(bool value) { return value; }
    static Json json(basics::Day value) { return basics::iso(value); }
    template <class Value>
    static Json json(const std::optional<Value>& value) {
        return json(*value);
    }
    static Json json(store::Standing value) { return object(value); }
    static Json json(store::SwapRow value) { return object(value); }
    static Json json(std::pair<std::string, std::int64_t> value) { return object(value); }
    template <class Value>
    static Json json(const std::vector<Value>& values) {
        Json list = Json::array();
        for (const Value& value : values) list.push_back(json(value));
        return list;
    }
    template <class Value>
    static Json object(Value& value) {
        Writer inside;
        detail::walk(inside, value);
        return std::move(inside.row);
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    static Json json(Enum value) {
        using samebase::measure::name;
        using samebase::stock::name;
        using samebase::store::name;
        return std::string(name(value));
    }
};

class Reader {
  public:
    explicit Reader(const Element& element) : element_(element) {}

    template <class Value>
    void need(const char* key, Value& value) {
        keys_.emplace_back(key);
        if (const auto at = element_.need(key)) take(*at, value);
    }
    template <class Value>
    void maybe(const char* key, Value& value) {
        keys_.emplace_back(key);
        if (const auto at = element_.find(key)) take(*at, value);
    }
    void end() const {
        for (const auto& [key, member] : element_.members()) {
            if (std::find(keys_.begin(), keys_.end(), key) == keys_.end()) {
                member.wrong(fmt::format("'{}' is not a known key", key),
                             fmt::format("one of: {}", fmt::join(keys_, ", ")));
            }
        }
    }

  private:
    static void take(const Element& at, std::string& value) { value = at.text(); }
    static void take(const Element& at, std::int64_t& value) {
        value = at.integer(std::numeric_limits<std::int64_t>::min(), std::numeric_limits<std::int64_t>::max());
    }
    static void take(const Element& at, bool& value) {
        if (at.value().is_boolean()) {
            value = at.value().get<bool>();
        } else {
            at.wrong(at.shown(), "true or false");
        }
    }
    template <class Value>
    static void take(const Element& at, std::vector<Value>& values) {
        for (const Element& one : at.list()) take(one, values.emplace_back());
    }
    static void take(const Element& at, std::vector<std::string>& values) {
        for (const Element& one : at.list()) plain(one, values.emplace_back(one.text()), "a word");
    }
    static void take(const Element& at, basics::Day& value) { value = detail::day(at); }
    template <class Value>
    static void take(const Element& at, std::optional<Value>& value) {
        take(at, value.emplace());
    }
    static void take(const Element& at, store::Standing& value) { take_object(at, value); }
    static void take(const Element& at, store::SwapRow& value) {
        take_object(at, value);
        if (value.serves < 1) at.wrong(at.shown(), "'serves' above 0");
        plain(at, value.of, "the identifier of an ingredient");
    }
    static void take(const Element& at, std::pair<std::string, std::int64_t>& value) {
        take_object(at, value);
        if (value.second < 0) at.wrong(at.shown(), "'amount' of 0 or more");
        plain(at, value.first, "the identifier of an ingredient");
    }
    /// A word that the file can keep within a text of several.
    static void plain(const Element& at, const std::string& word, const char* expected) {
        if (word.empty() || word.find_first_of(",=/:+") != std::string::npos)
            at.wrong(fmt::format("'{}'", word), expected);
    }
    template <class Value>
    static void take_object(const Element& at, Value& value) {
        if (!at.value().is_object()) {
            at.wrong(at.shown(), "an object");
            return;
        }
        Reader inside(at);
        detail::walk(inside, value);
        inside.end();
    }
    template <class Enum>
    requires std::is_enum_v<Enum>
    static void take(const Element& at, Enum& value) {
        const std::string text = at.text();
        const std::optional<Enum> known = read(std::string_view(text), Enum{});
        if (known) value = *known;
        if (!known && at.value().is_string()) at.wrong(at.shown(), "a word that this document knows");
    }
    static auto read(std::string_view text, stock::Kind /*of*/) { return stock::read_kind(text); }
    static auto read(std::string_view text, stock::Column /*of*/) { return stock::read_column(text); }
    static auto read(std::string_view text, stock::State /*of*/) { return stock::read_state(text); }
    static auto read(std::string_view text, stock::ThawMethod /*of*/) { return stock::read_thaw_method(text); }
    static auto read(std::string_view text, kitchen::Meal /*of*/) { return kitchen::read_meal(text); }
    static auto read(std::string_view text, kitchen::Fact::Kind /*of*/) { return store::read_fact_kind(text); }
    static auto read(std::string_view text, measure::Dimension /*of*/) { return store::read_dimension(text); }
    static auto read(std::string_view text, measure::Rough /*of*/) { return store::read_rough(text); }

    const Element& element_;
    std::vector<std::string> keys_;
};

template <class Row>
void write_rows(std::string& out, const char* key, const std::vector<Row>& rows, bool last) {
    out += fmt::format("    \"{}\": [", key);
    bool first = true;
    for (Row row : rows) {
        Writer writer;
        detail::walk(writer, row);
        out += fmt::format("{}\n      {}", first ? "" : ",", writer.row.dump());
        first = false;
    }
    out += fmt::format("{}]{}\n", rows.empty() ? "" : "\n    ", last ? "" : ",");
}

/// A document within another, its lines two steps in for each level.
std::string indented(const Json& document, std::size_t levels) {
    std::string out;
    for (const char c : document.dump(2)) {
        out += c;
        if (c == '\n') out.append(2 * levels, ' ');
    }
    return out;
}

template <class Row>
void read_rows(const Element& ledger, const char* key, std::vector<Row>& rows, bool without_gap) {
    const auto at = ledger.need(key);
    if (!at) return;
    std::int64_t last = 0;
    for (const Element& element : at->list()) {
        if (!element.value().is_object()) {
            element.wrong(element.shown(), "an object");
            continue;
        }
        Reader reader(element);
        Row row;
        detail::walk(reader, row);
        reader.end();
        if (without_gap ? row.number != last + 1 : row.number <= last) {
            element.wrong(fmt::format("number {} after {}", row.number, last),
                          without_gap ? "numbers from 1 without a gap" : "rising numbers");
        }
        last = row.number;
        rows.push_back(std::move(row));
    }
}

/// "dishes/ours.json": a plain name in a folder that a kitchen may have.
bool fine_path(const std::string& path) {
    const auto slash = path.find('/');
    if (slash == std::string::npos) return false;
    const std::string file = path.substr(slash + 1);
    const auto& folders = own_folders();
    return std::find(folders.begin(), folders.end(), path.substr(0, slash)) != folders.end() &&
           file.find('/') == std::string::npos && file.find('\0') == std::string::npos && file.size() > 5 &&
           file.ends_with(".json");
}

void read_documents(const Element& ledger, std::vector<store::DocumentRow>& rows) {
    if (!ledger.find("documents")) return;
    read_rows(ledger, "documents", rows, true);
    for (const auto& row : rows) {
        if (row.path != "kitchen.json" && !fine_path(row.path))
            ledger.wrong(fmt::format("the path '{}'", row.path), "kitchen.json, or such as dishes/ours.json");
    }
}

}  // namespace

const std::vector<std::string>& own_folders() {
    static const std::vector<std::string> folders{"bases", "catalogue", "dishes", "stand_ins", "words"};
    return folders;
}

std::string write_whole(const Whole& whole) {
    std::string out =
        fmt::format("{{\n  \"samebase\": 1,\n  \"kitchen\": {},\n  \"own\": [", indented(whole.kitchen, 1));
    bool first = true;
    for (const OwnDocument& own : whole.own) {
        const Json entry = {{"path", own.path}, {"document", own.document}};
        out += fmt::format("{}\n    {}", first ? "" : ",", indented(entry, 2));
        first = false;
    }
    out += fmt::format("{}],\n  \"ledger\": {{\n", whole.own.empty() ? "" : "\n  ");
    write_rows(out, "commands", whole.ledger.commands, false);
    write_rows(out, "lots", whole.ledger.lots, false);
    write_rows(out, "entries", whole.ledger.entries, false);
    write_rows(out, "plan", whole.ledger.plan, false);
    write_rows(out, "history", whole.ledger.history, false);
    const bool documents = !whole.ledger.documents.empty();
    const bool list = !whole.ledger.list.empty();
    write_rows(out, "facts", whole.ledger.facts, !documents && !list);
    if (documents) write_rows(out, "documents", whole.ledger.documents, !list);
    if (list) write_rows(out, "list", whole.ledger.list, true);
    return out + "  }\n}\n";
}

basics::Result<Whole> read_whole(const std::string& text, const std::string& name) {
    const auto document = parse(text, name);
    if (!document) return tl::make_unexpected(document.error());
    basics::Problems problems;
    const Element whole(*document, name, problems);
    Whole result;
    if (whole.object({"samebase", "kitchen", "own", "ledger"})) {
        if (const auto at = whole.need("samebase")) detail::version(*at);
        const auto kitchen = whole.need("kitchen");
        if (kitchen && !kitchen->value().is_object()) kitchen->wrong(kitchen->shown(), "an object");
        std::string last;
        for (const Element& own : whole.list("own")) {
            if (!own.object({"path", "document"})) continue;
            const std::string path = own.text("path");
            if (!fine_path(path)) own.wrong(fmt::format("the path '{}'", path), "such as dishes/ours.json");
            if (path <= last)
                own.wrong(fmt::format("the path '{}' after '{}'", path, last), "paths in order, each once");
            last = path;
            static_cast<void>(own.need("document"));
        }
        const auto ledger = whole.need("ledger");
        if (ledger &&
            ledger->object({"commands", "lots", "entries", "plan", "history", "facts", "documents", "list"})) {
            read_rows(*ledger, "commands", result.ledger.commands, true);
            read_rows(*ledger, "lots", result.ledger.lots, false);
            read_rows(*ledger, "entries", result.ledger.entries, true);
            read_rows(*ledger, "plan", result.ledger.plan, true);
            read_rows(*ledger, "history", result.ledger.history, true);
            read_rows(*ledger, "facts", result.ledger.facts, true);
            read_documents(*ledger, result.ledger.documents);
            if (ledger->find("list")) read_rows(*ledger, "list", result.ledger.list, true);
        }
    }
    if (!problems.empty()) return tl::make_unexpected(std::move(problems));
    // Once more for the keys of the household in their order, without the ledger.
    const auto no_ledger = [](int depth, Json::parse_event_t event, Json& parsed) {
        return depth != 1 || event != Json::parse_event_t::key || parsed != "ledger";
    };
    Json ordered = Json::parse(text, no_ledger, false);
    result.kitchen = std::move(ordered["kitchen"]);
    if (ordered.contains("own")) {
        for (Json& own : ordered["own"])
            result.own.push_back({own["path"].get<std::string>(), std::move(own["document"])});
    }
    return result;
}

}  // namespace samebase::exchange

// Files and JSON texts: what cannot be read says where and why, and what is written is the old or the new.
#include "exchange/file.hpp"

#include <unistd.h>

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "exchange/tiny_documents.hpp"

using namespace samebase;
using exchange::parse;
using tests::lines;
using Lines = std::vector<std::string>;

namespace {

Lines said(const std::string& text) {
    const auto result = parse(text, "x.json");
    return result ? Lines{"it reads"} : lines(result.error());
}

Lines files_in(const std::filesystem::path& folder) {
    Lines names;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
        names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

}  // namespace

TEST_CASE("a text that is no JSON says on which line and in which column") {
    CHECK(said("") ==
          Lines{"x.json, line 1, column 1: the document ends too early; expected a JSON document (RFC 8259)"});
    CHECK(said("{\"places\": [\n  {\"id\": \"fri") ==
          Lines{"x.json, line 2, column 14: the document ends too early; expected a JSON document (RFC 8259)"});
    CHECK(said("{\n\"eats\": NaN}") ==
          Lines{"x.json, line 2, column 9: this is not JSON; expected a JSON document (RFC 8259)"});
    CHECK(said("{\"a\": 1}\n{") ==
          Lines{"x.json, line 2, column 1: this is not JSON; expected a JSON document (RFC 8259)"});
    CHECK(said("[1, 2,]") == Lines{"x.json, line 1, column 7: this is not JSON; expected a JSON document (RFC 8259)"});
    CHECK(said("[\"\xC3\x28\"]") ==
          Lines{"x.json, line 1, column 4: this is not JSON; expected a JSON document (RFC 8259)"});
    CHECK(said("[\"cr\xC3\xA8me\", oops]") ==
          Lines{"x.json, line 1, column 11: this is not JSON; expected a JSON document (RFC 8259)"});
    CHECK(said("[1,\n 1e999]") == Lines{"x.json, line 2, column 6: the number that ends here is out of range; expected "
                                        "a JSON document (RFC 8259)"});
    CHECK(said(std::string("[1]\0", 4)) ==
          Lines{"x.json, line 1, column 4: a NUL byte; expected a JSON document (RFC 8259)"});
}

TEST_CASE("a JSON text reads, with a byte order mark or without") {
    const auto plain = parse(R"({"a": [1, -2, 2.5, "x", null, true, {}, []]})", "x.json");
    REQUIRE(plain);
    CHECK(*plain == nlohmann::json::parse(R"({"a": [1, -2, 2.5, "x", null, true, {}, []]})"));
    const auto marked = parse("\xEF\xBB\xBF{\"a\": 1}", "x.json");
    REQUIRE(marked);
    CHECK(marked->at("a") == 1);
    CHECK(*parse("7", "x.json") == 7);
}

TEST_CASE("a key that stands twice in one object is reported, each time") {
    CHECK(said(R"({"places": [{"id": "a", "id": "b"}, {"id": "c"}], "plan": 1, "plan": 2})") ==
          Lines{"x.json, /places/0/id: this key twice in one object; expected keys that occur once",
                "x.json, /plan: this key twice in one object; expected keys that occur once"});
}

TEST_CASE("a text that nests 100,000 levels deep is refused, and 100 levels are not") {
    const Lines too_deep{
        "x.json: more than 100 levels of lists and objects; expected a document that nests a few levels deep"};
    CHECK(said(std::string(100'000, '[')) == too_deep);
    CHECK(said(std::string(100'000, '[') + std::string(100'000, ']')) == too_deep);
    std::string objects;
    for (int i = 0; i < 100'000; ++i) objects += "{\"a\":";
    CHECK(said(objects) == too_deep);
    CHECK(said(std::string(100, '[') + std::string(100, ']')) == Lines{"it reads"});
    CHECK(said(std::string(101, '[') + std::string(101, ']')) == too_deep);
}

TEST_CASE("a file that is absent, a folder, or too large says so") {
    const tests::Folder folder;
    const std::string at = folder.path().string();
    CHECK(lines(exchange::read_file(folder.path() / "no.json").error()) ==
          Lines{at + "/no.json: No such file or directory; expected a file that can be read"});
    CHECK(lines(exchange::read_file(folder.path()).error()) ==
          Lines{at + ": Is a directory; expected a file that can be read"});
    folder.write("large.json", "");
    std::filesystem::resize_file(folder.path() / "large.json", 257ULL << 20U);  // a hole: it takes no room
    CHECK(lines(exchange::read_file(folder.path() / "large.json").error()) ==
          Lines{at + "/large.json: 257 MiB; expected a document of at most 64 MiB"});
}

TEST_CASE("a file is written whole, and nothing else is left beside it") {
    const tests::Folder folder;
    const auto path = folder.path() / "kitchen.json";
    REQUIRE(exchange::write_file(path, "old"));
    std::filesystem::permissions(path, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write);
    const std::string text = std::string(300'000, 'x') + '\0' + "\xC3\xA9";
    REQUIRE(exchange::write_file(path, text));
    CHECK(*exchange::read_file(path) == text);
    CHECK(files_in(folder.path()) == Lines{"kitchen.json"});
    CHECK(std::filesystem::status(path).permissions() ==
          (std::filesystem::perms::owner_read | std::filesystem::perms::owner_write));
}

TEST_CASE("a file that cannot be written leaves what was there") {
    const tests::Folder folder;
    const std::string at = folder.path().string();
    CHECK(
        lines(exchange::write_file(folder.path() / "no" / "kitchen.json", "new").error()) ==
        Lines{at +
              "/no/kitchen.json: No such file or directory; expected a folder that can be written to, with room left"});
    folder.write("kitchen.json/inside", "old");
    CHECK(lines(exchange::write_file(folder.path() / "kitchen.json", "new").error()) ==
          Lines{at + "/kitchen.json: Is a directory; expected a file that can be replaced"});
    CHECK(files_in(folder.path()) == Lines{"kitchen.json"});
    CHECK(*exchange::read_file(folder.path() / "kitchen.json" / "inside") == "old");
}

TEST_CASE("a disk that is full leaves the old file", "[full]") {
    if (!std::filesystem::exists("/dev/full")) return;
    const tests::Folder folder;
    // What is written beside the file goes by its name: a link of that name leads to a device that is always full.
    const auto path = folder.path() / "kitchen.json";
    REQUIRE(exchange::write_file(path, "old"));
    std::filesystem::create_symlink("/dev/full", path.string() + ".new-" + std::to_string(::getpid()));
    CHECK(lines(exchange::write_file(path, "new").error()) ==
          Lines{path.string() + ": No space left on device; expected a folder that can be written to, with room left"});
    CHECK(*exchange::read_file(path) == "old");
    CHECK(files_in(folder.path()) == Lines{"kitchen.json"});
}

TEST_CASE("the documents of a folder come by name, and an absent folder has none") {
    const tests::Folder folder;
    folder.write("b.json", "{}");
    folder.write("a.json", "{}");
    folder.write("notes.txt", "");
    const auto found = exchange::documents_in(folder.path());
    REQUIRE(found);
    CHECK(*found == std::vector{folder.path() / "a.json", folder.path() / "b.json"});
    CHECK(exchange::documents_in(folder.path() / "no")->empty());
    CHECK(lines(exchange::documents_in(folder.path() / "a.json").error()) ==
          Lines{folder.path().string() + "/a.json: Not a directory; expected a folder that can be read"});
}

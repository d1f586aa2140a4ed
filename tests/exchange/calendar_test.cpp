// Calendars, read back by libical.
#include "exchange/calendar.hpp"

#include <libical/ical.h>

#include <catch2/catch.hpp>
#include <memory>
#include <set>
#include <sstream>

using namespace samebase;
using kitchen::DiaryEntry;
using Kind = DiaryEntry::Kind;

namespace {

const basics::Day day = *basics::read_iso_day("2026-11-25");

struct Free {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
};
using Component = std::unique_ptr<icalcomponent, Free>;

struct Event {
    std::string uid;
    std::string summary;
    std::string description;
    int start = 0;  // yyyymmdd
    int end = 0;
    bool alarm = false;

    friend bool operator==(const Event&, const Event&) = default;
};

int number(icaltimetype time) {
    return time.year * 10'000 + time.month * 100 + time.day;
}

std::string given(const char* text) {
    return text == nullptr ? "" : text;
}

std::vector<Event> events_of(const std::string& text) {
    const Component calendar(icalparser_parse_string(text.c_str()));
    REQUIRE(calendar);
    REQUIRE(icalcomponent_count_errors(calendar.get()) == 0);
    REQUIRE(icalrestriction_check(calendar.get()) == 1);
    std::vector<Event> events;
    for (auto* one = icalcomponent_get_first_component(calendar.get(), ICAL_VEVENT_COMPONENT); one != nullptr;
         one = icalcomponent_get_next_component(calendar.get(), ICAL_VEVENT_COMPONENT)) {
        REQUIRE(icalcomponent_get_dtstart(one).is_date == 1);
        events.push_back({given(icalcomponent_get_uid(one)), given(icalcomponent_get_summary(one)),
                          given(icalcomponent_get_description(one)), number(icalcomponent_get_dtstart(one)),
                          number(icalcomponent_get_dtend(one)),
                          icalcomponent_count_components(one, ICAL_VALARM_COMPONENT) == 1});
    }
    return events;
}

}  // namespace

TEST_CASE("a calendar read back has every entry as it was") {
    const std::vector<DiaryEntry> entries{
        {Kind::dinner, day, "", "Dinner: soup", "For Alba.\nWith rice for barley.", false},
        {Kind::dinner, day, "2", "Dinner: stew", "", false},
        {Kind::take_out, basics::Day{std::chrono::year{2026} / 12 / 31}, "", "Take out: mince", "2 packs.", true}};
    const auto events = events_of(exchange::write_calendar(entries, "The Railway House", day));
    const std::vector<Event> expected{
        {"dinner-2026-11-25@the-railway-house.samebase.invalid", "Dinner: soup", "For Alba.\nWith rice for barley.",
         20261125, 20261126, false},
        {"dinner-2026-11-25-2@the-railway-house.samebase.invalid", "Dinner: stew", "", 20261125, 20261126, false},
        {"take-out-2026-12-31@the-railway-house.samebase.invalid", "Take out: mince", "2 packs.", 20261231, 20270101,
         true}};
    CHECK(events == expected);
}

TEST_CASE("signs that iCalendar gives a meaning stay text") {
    const std::vector<std::string> titles{"a, b; c\\d",         "BEGIN:VEVENT",       "a\\nb",
                                          "\"quoted\": x=y",    "<script>1</script>", "END:VCALENDAR\\, \\;",
                                          "\u05de\u05e8\u05e7", "\U0001f35c soup"};
    std::vector<DiaryEntry> entries;
    for (const std::string& title : titles)
        entries.push_back(
            {Kind::dinner, day + basics::days{std::ssize(entries)}, "", title, title + "\n" + title, false});
    const auto events = events_of(exchange::write_calendar(entries, "house", day));
    REQUIRE(events.size() == titles.size());
    for (std::size_t i = 0; i < titles.size(); ++i) {
        CHECK(events[i].summary == titles[i]);
        CHECK(events[i].description == titles[i] + "\n" + titles[i]);
    }
}

TEST_CASE("a long line is folded at 75 octets, never within a character") {
    std::string title;
    for (int i = 0; i < 100; ++i) title += i % 3 == 0 ? "\U0001f35c" : i % 3 == 1 ? "\u00e9" : "soup";
    const std::vector<DiaryEntry> entries{{Kind::dinner, day, "", title, title, false}};
    const std::string text = exchange::write_calendar(entries, "house", day);
    std::istringstream in(text);
    std::size_t folded = 0;
    for (std::string line; std::getline(in, line);) {
        REQUIRE(line.ends_with('\r'));
        CHECK(line.size() - 1 <= 75);
        const auto first = static_cast<unsigned char>(line.starts_with(' ') ? line[1] : line[0]);
        CHECK((first & 0xC0U) != 0x80U);
        folded += line.starts_with(' ') ? 1 : 0;
    }
    CHECK(folded >= 2 * title.size() / 75);
    CHECK(events_of(text).front().summary == title);
}

TEST_CASE("an entry is stamped with midnight of the day on which it was written") {
    // The first ones were stamped 20261125T-1-1-1Z, which libical itself reads as some time.
    const std::vector<DiaryEntry> entries{{Kind::trip, day, "", "trip", "", false}};
    CHECK(exchange::write_calendar(entries, "house", day).find("\r\nDTSTAMP:20261125T000000Z\r\n") !=
          std::string::npos);
}

TEST_CASE("a calendar that is written again has the same identifiers, whatever changed in its entries") {
    const std::vector<DiaryEntry> before{{Kind::lunch, day, "", "soup", "", false},
                                         {Kind::trip, day, "", "trip", "", false}};
    auto after = before;
    after[0].title = "stew";
    const auto first = events_of(exchange::write_calendar(before, "house", day));
    const auto second = events_of(exchange::write_calendar(after, "house", day + basics::days{1}));
    REQUIRE(first.size() == 2);
    REQUIRE(second.size() == 2);
    std::set<std::string> uids;
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(first[i].uid == second[i].uid);
        uids.insert(first[i].uid);
    }
    CHECK(uids.size() == 2);
    CHECK(first[0].summary != second[0].summary);
}

TEST_CASE("a household without a name in Latin letters has a calendar too") {
    const std::vector<DiaryEntry> entries{{Kind::trip, day, "", "trip", "", false}};
    const auto events = events_of(exchange::write_calendar(entries, "\u05d1\u05d9\u05ea", day));
    CHECK(events.front().uid == "trip-2026-11-25@household.samebase.invalid");
    CHECK(events_of(exchange::write_calendar({}, "", day)).empty());
}

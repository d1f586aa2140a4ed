#include "exchange/calendar.hpp"

#include <fmt/format.h>
#include <libical/ical.h>

#include <memory>

namespace samebase::exchange {

namespace {

using kitchen::DiaryEntry;

struct Free {
    void operator()(icalcomponent* component) const { icalcomponent_free(component); }
    void operator()(char* text) const { icalmemory_free_buffer(text); }
};

/// Letters, digits and hyphens of a name, so that calendars of two households do not meet.
std::string slug(std::string_view name) {
    std::string id;
    for (const char c : name) {
        const bool capital = c >= 'A' && c <= 'Z';
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (capital || plain) {
            id += capital ? static_cast<char>(c - 'A' + 'a') : c;
        } else if (!id.empty() && id.back() != '-') {
            id += '-';
        }
    }
    while (!id.empty() && id.back() == '-') id.pop_back();
    return id.empty() ? "household" : id;
}

icaltimetype date(basics::Day day) {
    const std::chrono::year_month_day ymd{day};
    icaltimetype time = icaltime_null_date();
    time.year = static_cast<int>(ymd.year());
    time.month = static_cast<int>(static_cast<unsigned>(ymd.month()));
    time.day = static_cast<int>(static_cast<unsigned>(ymd.day()));
    time.is_date = 1;
    return time;
}

icaltimetype midnight(basics::Day day) {
    icaltimetype time = date(day);
    time.is_date = 0;
    time.hour = time.minute = time.second = 0;
    time.zone = icaltimezone_get_utc_timezone();
    return time;
}

icalcomponent* alarm(const DiaryEntry& entry) {
    constexpr int eight_hours = 8 * 60 * 60;
    icaltriggertype at{};
    at.time = icaltime_null_time();
    at.duration = icaldurationtype_from_int(eight_hours);
    icalcomponent* alarm = icalcomponent_new_valarm();
    icalcomponent_add_property(alarm, icalproperty_new_action(ICAL_ACTION_DISPLAY));
    icalcomponent_add_property(alarm, icalproperty_new_trigger(at));
    icalcomponent_add_property(alarm, icalproperty_new_description(entry.title.c_str()));
    return alarm;
}

icalcomponent* event(const DiaryEntry& entry, const std::string& household, basics::Day stamp) {
    const std::string which = entry.which.empty() ? "" : "-" + entry.which;
    const std::string uid =
        fmt::format("{}-{}{}@{}.samebase.invalid", name(entry.kind), basics::iso(entry.day), which, household);
    icalcomponent* event = icalcomponent_new_vevent();
    icalcomponent_add_property(event, icalproperty_new_uid(uid.c_str()));
    icalcomponent_add_property(event, icalproperty_new_dtstamp(midnight(stamp)));
    icalcomponent_add_property(event, icalproperty_new_dtstart(date(entry.day)));
    icalcomponent_add_property(event, icalproperty_new_dtend(date(entry.day + basics::days{1})));
    icalcomponent_add_property(event, icalproperty_new_summary(entry.title.c_str()));
    if (!entry.note.empty()) icalcomponent_add_property(event, icalproperty_new_description(entry.note.c_str()));
    icalcomponent_add_property(event, icalproperty_new_categories(std::string(name(entry.kind)).c_str()));
    icalcomponent_add_property(event, icalproperty_new_transp(ICAL_TRANSP_TRANSPARENT));
    if (entry.in_the_morning) icalcomponent_add_component(event, alarm(entry));
    return event;
}

}  // namespace

std::string write_calendar(std::span<const DiaryEntry> entries, std::string_view household, basics::Day stamp) {
    const std::unique_ptr<icalcomponent, Free> calendar(icalcomponent_new_vcalendar());
    icalcomponent_add_property(calendar.get(), icalproperty_new_version("2.0"));
    icalcomponent_add_property(calendar.get(), icalproperty_new_prodid(std::string(calendar_product).c_str()));
    icalcomponent_add_property(calendar.get(), icalproperty_new_calscale("GREGORIAN"));
    const std::string id = slug(household);
    for (const DiaryEntry& entry : entries) icalcomponent_add_component(calendar.get(), event(entry, id, stamp));
    const std::unique_ptr<char, Free> text(icalcomponent_as_ical_string_r(calendar.get()));
    return text.get();
}

}  // namespace samebase::exchange

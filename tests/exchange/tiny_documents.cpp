#include "exchange/tiny_documents.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <atomic>
#include <fstream>
#include <stdexcept>

#include "exchange/knowledge.hpp"

namespace samebase::tests {

namespace fs = std::filesystem;

namespace {

constexpr const char* families = R"({"sources": ["common practice"], "families": [
    {"id": "meat", "name": "meat", "parent": null, "siblings": 0.4, "keeps": {"pantry": null, "crisper": null}},
    {"id": "mince", "name": "mince", "parent": "meat", "siblings": 0.85, "cook_to": 75, "thaw": "flat",
     "litres_per_kg": 1.1, "note": "raw",
     "keeps": {"fridge": "2 days use-by", "freezer": "90 days best-by", "thawed": "1 day use-by"}},
    {"id": "larder", "name": "larder", "parent": null, "siblings": null, "keeps": {"pantry": "365 days best-by"}},
    {"id": "leftovers", "name": "leftovers", "parent": null, "siblings": null, "cook_to": 75,
     "keeps": {"fridge": "3 days use-by", "freezer": "60 days best-by", "thawed": "1 day use-by"}}]})";

constexpr const char* ingredients = R"({"ingredients": [
    {"id": "beef-mince", "name": "beef mince", "also": ["minced beef"], "family": "mince", "kind": "raw",
     "counted_in": "g", "pack": {"amount": "500 g", "name": "tray", "price": 750}, "allergens": []},
    {"id": "pork-mince", "name": "pork mince", "family": "mince", "kind": "raw", "counted_in": "g", "allergens": []},
    {"id": "onion", "name": "onion", "family": "larder", "kind": "raw", "counted_in": "g", "piece": 150,
     "pieces": {"slice": 20}, "edible": 0.9, "season": "11-3", "season_north": "5-9", "allergens": [],
     "keeps": {"pantry": "60 days best-by", "opened": "3 days use-by"}, "note": "in the dark", "staple": false,
     "meatless": true, "everyday": true, "only_stand_in": false, "cook_to": 60, "thaw": "from-frozen",
     "litres_per_kg": 2},
    {"id": "bread", "name": "bread", "family": "larder", "kind": "made", "counted_in": "piece", "piece": 40,
     "pieces": {"slice": 40}, "allergens": ["wheat", "gluten"]},
    {"id": "milk", "name": "milk", "family": "larder", "kind": "raw", "counted_in": "mL", "density": 1.03,
     "allergens": ["milk"]},
    {"id": "salt", "name": "salt", "family": "larder", "kind": "raw", "counted_in": "g", "density": 1.2,
     "staple": true, "allergens": []},
    {"id": "cold-mince", "name": "cold cooked mince", "family": "leftovers", "kind": "cooked", "counted_in": "serve",
     "piece": 200, "allergens": []}]})";

constexpr const char* stand_ins = R"({"sources": ["common practice"], "stand_ins": [
    {"for": "beef-mince", "role": ["main", "body"], "fit": 0.9, "both_ways": true,
     "use": [{"of": "pork-mince", "ratio": 1}]},
    {"for": "milk", "role": null, "fit": 0.3, "adds_minutes": 5, "note": "soak it",
     "use": [{"of": "bread", "ratio": 0.4}, {"of": "salt", "ratio": 0.01}]},
    {"for": "onion", "role": "seasoning", "never": true, "use": [{"of": "salt"}]}]})";

constexpr const char* bases = R"({"bases": [
    {"id": "mince-and-onion", "name": "mince and onion", "note": "browned",
     "needs": [{"of": "mince", "role": "main"}, {"of": "onion", "role": "body"}]}]})";

constexpr const char* dishes = R"({"dishes": [
    {"id": "meat-loaf", "name": "meat loaf", "base": "mince-and-onion", "meals": ["dinner"], "kinds": ["loaf", "mince"],
     "serves": 5, "minutes": 75, "hands_on": 20, "gap": 21, "leaves": "cold-mince", "freezes": true,
     "measures": "metric-15",
     "ingredients": [
       {"of": "beef-mince", "amount": "750 g", "role": "main"},
       {"of": "onion", "amount": "1", "role": "body", "prep": "chopped", "scale": [0.5, 2]},
       {"of": "bread", "amount": "2 slices", "role": "binder"},
       {"of": "milk", "amount": "1/4 cup", "role": "binder", "optional": true}],
     "separate": [{"avoids": "gluten", "swap": [{"of": "bread", "use": "onion"}], "note": "in its own tin"}],
     "gives": [{"of": "onion", "amount": "10 g"}],
     "method": ["Mix.", "Bake 50 minutes, to 75 degrees in the centre."]},
    {"id": "mince-on-toast", "name": "mince on toast", "base": "mince-and-onion", "meals": ["dinner", "lunch"],
     "kinds": ["mince", "toast"], "serves": 2, "minutes": 20, "hands_on": 20, "leaves": null,
     "ingredients": [
       {"of": "pork-mince", "amount": "300 g", "role": "main"},
       {"of": "onion", "amount": "half", "role": "body"},
       {"of": "bread", "amount": "4 slices", "role": "starch"},
       {"of": "salt", "amount": "1 pinch", "role": "seasoning"}],
     "method": ["Fry.", "Toast."]},
    {"id": "milk-toast", "name": "milk toast", "base": null, "meals": ["lunch"], "kinds": ["toast"], "serves": 1,
     "minutes": 10,
     "ingredients": [{"of": "bread", "amount": "2", "role": "starch"}, {"of": "milk", "amount": "100 mL", "role": "sauce"}],
     "method": ["Toast.", "Soak."]}]})";

constexpr const char* household = R"({"samebase": 1, "name": "the hut", "currency": "AUD", "hemisphere": "south",
    "measures": "australian-metric",
    "people": [
      {"id": "kim", "name": "Kim", "eats": 1.2, "avoids": ["peanut"], "dislikes": ["milk"],
       "marks": [{"dish": "meat-loaf", "mark": 2}, {"of": "mince", "mark": -1}],
       "roster": [{"mon": ["dinner"], "tue": ["lunch", "dinner"]}, {"sat": ["lunch"]}], "roster_from": "2026-11-02",
       "away": [{"from": "2026-12-24", "to": "2026-12-26", "meals": ["dinner"]}]},
      {"id": "lee", "name": "Lee", "home": {"sun": ["dinner"], "wed": ["dinner"], "thu": [], "fri": ["lunch"]}}],
    "places": [
      {"id": "chest", "name": "chest freezer", "kind": "far-freezer", "litres": 200},
      {"id": "fridge", "name": "fridge", "kind": "fridge", "litres": 90.5},
      {"id": "shelf", "name": "shelf", "kind": "pantry"}],
    "usual_staples": true, "staples": ["onion"], "not_staples": ["salt"],
    "standing_uses": [{"of": "milk", "amount": "500 mL", "days": ["mon", "thu"]}],
    "standing_nights": [{"day": "wed", "kinds": ["loaf", "toast"], "from": "2026-11-04"}],
    "occasions": [{"day": "2026-12-05", "note": "friends", "dish": "meat-loaf", "guests": 2, "guests_avoid": ["milk"]}],
    "prices": [{"of": "milk", "amount": "2 L", "price": 310}],
    "shopping_days": ["fri"], "minutes": {"sun": 90, "sat": 60},
    "worths": {"fussiness": 700, "mark": 25, "minute": 5, "had_lately": 500, "bought_lunch": 1200}})";

constexpr const char* stock = R"({"samebase": 1, "around": "2026-11-25",
    "lots": [
      {"lot": 1, "of": "beef-mince", "place": "chest", "packs": ["510 g", "495 g"], "arrived": "2026-11-01", "paid": 1500},
      {"lot": 2, "of": "onion", "place": "shelf", "amount": "1.2 kg", "arrived": "2026-11-20", "opened_on": "2026-11-21",
       "note": "one is cut"},
      {"lot": 3, "of": "cold-mince", "dish": "meat-loaf", "place": "fridge", "amount": "2 serves",
       "arrived": "2026-11-24", "state": "fresh", "since": "2026-11-24", "use_by": "2026-11-26"},
      {"lot": 4, "of": "pork-mince", "place": "fridge", "amount": "500 g", "arrived": "2026-11-10", "state": "thawed",
       "thaw": "fridge", "thawed_on": "2026-11-25", "since": "2026-11-24"},
      {"lot": 5, "of": "salt", "place": "shelf", "amount": "some", "arrived": "2026-01-01"}],
    "plan": [{"day": "2026-11-26", "meal": "dinner", "dish": "mince-on-toast", "ready_meal": false, "serves": 4, "left": 1}],
    "history": [{"day": "2026-11-23", "dish": "meat-loaf"}, {"day": "2026-11-22", "meal": "lunch", "dish": "milk-toast"}]})";

}  // namespace

Folder::Folder() {
    static std::atomic<int> count{0};
    path_ = fs::temp_directory_path() / fmt::format("samebase-test-{}-{}", ::getpid(), count++);
    fs::create_directories(path_);
}

Folder::~Folder() {
    std::error_code error;
    fs::remove_all(path_, error);
}

void Folder::write(const std::string& name, std::string_view text) const {
    fs::create_directories((path_ / name).parent_path());
    std::ofstream(path_ / name, std::ios::binary) << text;
}

TinyDocuments::TinyDocuments() {
    for (const auto& [name, text] : {std::pair{"catalogue/families.json", families},
                                     {"catalogue/ingredients.json", ingredients},
                                     {"stand_ins/all.json", stand_ins},
                                     {"bases/bases.json", bases},
                                     {"dishes/all.json", dishes},
                                     {"kitchen.json", household},
                                     {"stock.json", stock}}) {
        documents_.push_back({name, nlohmann::json::parse(text)});
    }
}

nlohmann::json& TinyDocuments::operator[](std::string_view name) {
    const auto found =
        std::find_if(documents_.begin(), documents_.end(), [&](const auto& d) { return d.name == name; });
    if (found == documents_.end()) throw std::out_of_range("no such tiny document");
    return found->value;
}

basics::Result<Read> TinyDocuments::read() const {
    const Folder folder;
    for (const TinyDocument& document : documents_) {
        folder.write(document.name, document.value.dump(1, ' ', false, nlohmann::json::error_handler_t::replace));
    }
    const std::vector<fs::path> folders{folder.path()};
    auto knowledge = exchange::load_knowledge(folders);
    if (!knowledge) return tl::make_unexpected(knowledge.error());
    auto home = exchange::read_household(documents_[5].value, documents_[5].name, **knowledge);
    if (!home) return tl::make_unexpected(home.error());
    auto stocked = exchange::read_stock(documents_[6].value, documents_[6].name, **knowledge, *home, basics::days{0});
    if (!stocked) return tl::make_unexpected(stocked.error());
    return Read{std::move(*knowledge), std::move(*home), std::move(*stocked)};
}

std::vector<std::string> TinyDocuments::problems() const {
    const auto result = read();
    return result ? std::vector<std::string>{} : lines(result.error());
}

std::vector<std::string> said(std::string_view document, const std::string& pointer, nlohmann::json value) {
    TinyDocuments tiny;
    tiny[document][nlohmann::json::json_pointer(pointer)] = std::move(value);
    return tiny.problems();
}

std::vector<std::string> without(std::string_view document, const std::string& pointer) {
    TinyDocuments tiny;
    const nlohmann::json::json_pointer at(pointer);
    tiny[document][at.parent_pointer()].erase(at.back());
    return tiny.problems();
}

std::vector<std::string> lines(const basics::Problems& problems) {
    std::vector<std::string> result;
    std::transform(problems.begin(), problems.end(), std::back_inserter(result), basics::to_text);
    return result;
}

}  // namespace samebase::tests

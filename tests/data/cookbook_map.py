#!/usr/bin/python3
"""Draws the map of the cookbook into data/README.md, between two marker comments: how many dinners and lunches each base, family
and season has. With --check nothing is written, and a map that is not up to date is an error.

    cookbook_map.py DATA_FOLDER [--check]
"""
import collections
import json
import pathlib
import re
import sys

BEGIN = "<!-- the map of the cookbook begins: drawn by tests/data/cookbook_map.py -->"
END = "<!-- the map of the cookbook ends -->"
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
COLUMNS = 4
# What a home is most often left with, and the ways to eat it again: the first that fits a dish, by its base or its kinds.
LEFT = {
    "roast beef": ["cold-roast-beef"], "roast lamb": ["cold-roast-lamb"], "roast pork": ["cold-roast-pork", "pulled-pork"],
    "chicken": ["cold-roast-chicken"], "turkey": ["cold-turkey"], "duck": ["cold-roast-duck"], "veal": ["cold-veal-schnitzel"],
    "ham": ["cold-ham-slices"], "fish": ["cold-cooked-fish"], "sausages": ["cold-sausages"],
    "mince sauce": ["leftover-bolognese", "leftover-savoury-mince"], "mashed potato": ["mashed-potato"],
    "boiled potato": ["boiled-potatoes"], "roast potato": ["roast-potatoes"], "rice": ["cooked-rice"],
    "pasta": ["cooked-pasta", "cooked-spaghetti"], "vegetables": ["steamed-vegetables", "roast-vegetables"],
    "bread": ["stale-bread"]}
WAYS = {
    "hash": {"hash"}, "patty": {"mash-patties", "fritters"}, "soup": {"soup"}, "curry": {"curry"}, "pie": {"pie", "leftovers-in-pastry"},
    "sandwich": {"sandwich", "flatbread"}, "toast": {"toast"}, "salad": {"salad", "snack-plate", "main-salad"}, "baked": {"bake"},
    "eggs": {"leftovers-in-eggs", "eggs", "pancakes"}, "rice": {"rice"}, "pasta": {"pasta", "noodles"}, "sauced": set()}
FEWEST_WAYS = 5


def entries(folder, pattern, key):
    found = []
    for path in sorted(folder.glob(pattern)):
        found += json.loads(path.read_text(encoding="utf-8")).get(key, [])
    return found


def months(text):
    """The months of "11-3" or "3-5, 9-11", as numbers; all of them where nothing is said."""
    if text is None:
        return set(range(1, 13))
    found = set()
    for part in text.split(","):
        ends = [int(number) for number in re.findall(r"\d+", part)]
        month, last = ends[0], ends[-1]
        found.add(month)
        while month != last:
            month = month % 12 + 1
            found.add(month)
    return found


def table(heads, rows):
    """A table of so many columns of entries next to each other, read downwards."""
    height = -(-len(rows) // COLUMNS)
    lines = ["| " + " | ".join(heads for _ in range(COLUMNS)) + " |", "|" + " --- | ---: | ---: |" * COLUMNS]
    for row in range(height):
        cells = []
        for column in range(COLUMNS):
            at = column * height + row
            cells.append(rows[at] if at < len(rows) else " |  | ")
        lines.append("| " + " | ".join(cells) + " |")
    return lines


def way_of(dish):
    words = {dish.get("base"), *dish["kinds"]}
    return next((way for way, of in WAYS.items() if of & words), "sauced")


def grid(dishes):
    """How many dishes eat each leftover in each way, and those that are eaten in too few."""
    lines = ["| | " + " | ".join(WAYS) + " |", "| --- |" + " ---: |" * len(WAYS)]
    few = []
    for name, things in LEFT.items():
        found = collections.Counter(
            way_of(dish) for dish in dishes
            if any(line["of"] in things and not line.get("optional") for line in dish["ingredients"]))
        lines.append(f"| {name} | " + " | ".join(str(found[way]) if found[way] else "." for way in WAYS) + " |")
        if len(found) < FEWEST_WAYS:
            few.append(f"{name}: {', '.join(found)}")
    return lines, few


def drawn(folder):
    families = {entry["id"]: entry for entry in entries(folder, "catalogue/families.json", "families")}
    things = {entry["id"]: entry for entry in entries(folder, "catalogue/*.json", "ingredients")}
    bases = entries(folder, "bases/*.json", "bases")
    dishes = entries(folder, "dishes/*.json", "dishes")

    of_base, of_family, of_month = (collections.Counter() for _ in range(3))
    total = collections.Counter()
    for dish in dishes:
        needed = [line for line in dish["ingredients"] if not line.get("optional")]
        mains = set()
        for line in needed:
            if line["role"] == "main":
                family = things[line["of"]]["family"]
                while family is not None:
                    mains.add(family)
                    family = families[family]["parent"]
        plentiful = set(range(1, 13))
        for line in needed:
            plentiful &= months(things[line["of"]].get("season"))
        for meal in dish["meals"]:
            total[meal] += 1
            of_base[dish.get("base"), meal] += 1
            of_family.update((family, meal) for family in mains)
            of_month.update((month, meal) for month in plentiful)

    def row(name, counts, key):
        numbers = [counts[key, meal] for meal in ("dinner", "lunch")]
        return f"{name} | " + " | ".join(str(number) if number else "." for number in numbers)

    lines = [BEGIN,
             f"{total['dinner']} dinners (D) and {total['lunch']} lunches (L); a dish that is both counts in both. A dot is none.", "",
             "By base:", ""]
    lines += table("base | D | L", [row(base["id"], of_base, base["id"]) for base in bases] +
                   ([row("no base", of_base, None)] if of_base[None, "dinner"] + of_base[None, "lunch"] else []))
    def root(name):
        return name if families[name]["parent"] is None else root(families[name]["parent"])

    about = {root(family) for family, _ in of_family}
    lines += ["", "By family, through the ingredients that a dish is about (role `main`). A family counts what is below it; families that no dish",
              "is about, nor about anything that they belong to, are left out:", ""]
    lines += table("family | D | L", [row(name, of_family, name) for name in families if root(name) in about])
    lines += ["", "By month, in the south: dishes all of whose ingredients are plentiful then:", "",
              "| | " + " | ".join(MONTHS) + " |", "| --- |" + " ---: |" * 12]
    for meal, name in (("dinner", "dinners"), ("lunch", "lunches")):
        lines.append(f"| {name} | " + " | ".join(str(of_month[month, meal]) for month in range(1, 13)) + " |")
    ways, few = grid(dishes)
    if few:
        sys.exit(f"eaten again in fewer than {FEWEST_WAYS} ways: " + "; ".join(few))
    lines += ["", "By what a home is most often left with: dishes that eat it again in each way:", ""] + ways
    return "\n".join(lines + [END])


def main():
    folder = pathlib.Path(sys.argv[1])
    readme = folder / "README.md"
    text = readme.read_text(encoding="utf-8")
    if text.count(BEGIN) != 1 or text.count(END) != 1 or text.index(BEGIN) > text.index(END):
        sys.exit(f"{readme}: wanted are two lines, one after the other, once each:\n{BEGIN}\n{END}")
    new = text[:text.index(BEGIN)] + drawn(folder) + text[text.index(END) + len(END):]
    if new == text:
        return
    if "--check" in sys.argv[2:]:
        sys.exit(f"{readme}: the map of the cookbook is not up to date; draw it with: cookbook_map.py {folder}")
    readme.write_text(new, encoding="utf-8")


if __name__ == "__main__":
    main()

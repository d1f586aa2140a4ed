"""Every example in `samebase --help` and in the help of each command runs in a fresh demo kitchen, and does what it says.

    help_test.py PROGRAM DATA_FOLDER

Examples are the lines below "Examples:". What each must print, or change, stands in SAYS: an example that is not there is a failure,
and so is one that is there and no longer in any help. What a description shows behind a colon or in brackets, and what an option
shows in quotes, must be part of one of the examples.
"""

import os
import re
import shlex
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

TODAY = "2026-11-25"  # a Wednesday; the demo kitchen's stock is fresh on it

PAGE = """<html><script type="application/ld+json">{"@type": "Recipe", "name": "Potato bake", "recipeYield": "4 serves",
"totalTime": "PT30M", "recipeIngredient": ["1 kg potatoes", "2 tbsp oil"], "recipeInstructions": ["Bake the potatoes."]}</script></html>"""

# The example, and patterns that its standard output must have, in any order. Status 0 unless a number stands first.
SAYS = {
    "tonight": [r"^Wed 25 Nov\. Dinner: spaghetti bolognese", r"Take out now"],
    "tonight --done": [r"Taken out|Moved|to thaw"],
    "tonight --recipe": [r"^Spaghetti bolognese: 60 minutes", r"\d g +beef mince", r"^ 1\. "],
    "recipe": [r"^Spaghetti bolognese: 60 minutes", r"^ 1\. "],
    "recipe meat loaf --serves 6": [r"^Meat loaf .*for 6 serves", r"kg +beef mince", r"75 degrees"],
    'recipe meat loaf --with "pork mince for beef mince, nothing for carrot"': [r"pork mince \(for beef mince", r"!\d +carrot"],
    "else beef mince": [r"^From beef mince tonight", r"^ +1  "],
    "else soup --day fri": [r"^Of the kind soup on Fri 27 Nov", r"soup"],
    "else beef mince --take 2": [r"^Dinner on Wed 25 Nov: [^.]* instead\s+of\s+spaghetti\s+bolognese"],
    "else beef mince --why-not rissoles": [r"^Rissoles with onion gravy and cabbage"],
    "else lot 12": [r"^From couscous tonight"],
    "week": [r"7 dinners planned", r"^  Tue 1 Dec "],
    "plan": [r"14 dinners planned", r"^  Tue 8 Dec "],
    "plan december": [r"^Tue 1 Dec to Thu 31 Dec: 7 dinners chosen", r"^  Thu 24 "],
    "swap fri meat loaf": [r"^Dinner on Fri 27 Nov: meat loaf with mash and beans instead\s+of"],
    "swap fri sun": [r"^Dinner of Fri 27 Nov and Sun 29 Nov change places"],
    "swap thu leftovers": [r"^Dinner on Thu 26 Nov: leftovers night instead of"],
    'swap wed rissoles --with "lamb mince for beef mince"': [r"^Dinner on Wed 25 Nov: rissoles [^.]* instead\s+of", r"lamb\s+mince"],
    "balance": [1, r"^Up to Sat 5 Dec all meals but \d", r"^Short", r"^Has no plan"],
    "balance december": [1, r"^From Tue 1 Dec to Thu 31 Dec"],
    "balance 2026-12-01..2026-12-14": [1, r"^From Tue 1 Dec to Mon 14 Dec"],
    "clear": [r"^Until Fri 27 Nov: "],
    "clear --until fri --write": [r"Fri 27", r"Planned|planned"],
    "lunches --days 3": [r"lunch"],
    "lunches --days 3 --write": [r"lunch", r"Planned|planned"],
    "thaw": [r"^Take out today: white fish fillets"],
    "thaw sat": [r"^Nothing to take out today\. First lamb shoulder"],
    "thaw --done": [r"white fish fillets"],
    "carry december": [r"^Walk to "],
    "carry december --done": [r"."],
    "got 2 kg beef mince @ 9/kg, 3 cabbages @ 4.65, 300 g ham use by 30 dec":
        [r"beef mince +2 kg ", r"cabbage ", r"ham .*use by Wed 30 Dec"],
    "got 4 x 500 g lamb mince --in shed": [r"4 packs \(2 kg\) lamb mince into chest freezer in the engine shed"],
    "moved 2 packs mince from shed to fridge": [r"^Moved to fridge: 2 packs .* beef mince"],
    "moved lot 2 --to freezer above the fridge": [r"^Moved to freezer above the fridge: "],
    "opened milk": [r"^Opened 1 pack \(3 L\) milk"],
    "out olive oil": [r"^Olive oil is out"],
    "out olive oil --again": [r"^Olive oil is there"],
    "cooked": [r"^Cooked spaghetti bolognese, 4 serves", r"gluten-free pasta"],
    "cooked meat loaf --left 2": [r"^Cooked meat loaf", r"2 serves cold meat loaf"],
    "cooked spaghetti bolognese --used 700 g mince": [r"^Cooked spaghetti bolognese", r"700 g\s+beef\s+mince"],
    "ate 2 bananas, cold roast chicken": [r"^Ate 300 g banana and 2 serves cold roast chicken"],
    "ate all the mixed leaves, lot 81": [r"^Ate \d+ g mixed leaves and 2 serves cold roast chicken"],
    "tossed spinach --because slimy": [r"^Tossed 200 g spinach: slimy"],
    "tossed lot 84": [r"^Tossed 2 serves cooked rice"],
    "tossed --past": [r"^Tossed \d things", r"beef mince .*use by Thu 26 Nov"],
    "count near freezer: 14 mince, 5 white fish, 13.5 lamb mince, some parsley":
        [r"beef mince .* 14 packs", r"white fish fillets .* 5 packs", r"lamb mince .* 13 1/2 packs", r"parsley .* some"],
    "count fridge: 2 L milk, 12 eggs": [r"milk .* 2 L|milk .*\(2 L\)", r"eggs .* 12"],
    "list": [r"^For Sat 28 Nov, about \$", r"^Vegetables: "],
    "list --got": [r"^Got \d+ things"],
    "list add 2 bread, 3 sponges": [r"^On the list: 2 white bread and 3 sponges"],
    "list december": [r"^Today to Thu 31 Dec: about \$"],
    'list --got --prices "milk 4.65"': [r"^Got \d+ things", r"^  milk "],
    "sheet week": [r"^The week from Wed 25 Nov", r"spaghetti bolognese"],
    "sheet week --html week.html": [r"week\.html"],
    "prices milk": [r"^Milk: \$1\.52/L"],
    "lookback": [r"^Sat 26 Sep to ", r"^Not had for a while"],
    "lookback 2026": [r"2026"],
    "lookback lamb": [r"^Lamb: last had on Sat 21 Nov"],
    "household shelves bread, tins, vegetables": [r"^You walk by bread; tins"],
    "export recipe meat loaf": [r"schema\.org", r"meat loaf"],
    "help day": [r"^A day"],
    "completion bash": [r"^_samebase\(\)"],
    'list --got --not "milk, apples"': [r"^Got \d+ things", r"!^  milk ", r"!^  apple "],
    "household": [r"^The depot house", r"Alba: avoids gluten"],
    "household person Gus --avoid gluten --eats 0.5": [r"^Gus eats here now: avoids gluten"],
    'household person Bram --home "mon-fri dinner, sat-sun all"': [r"^Bram .*home Mon-Fri dinner"],
    "household away Tovi 12..14 dec": [r"^Tovi is away Sat 12 Dec to Mon 14 Dec"],
    "household guests 25 dec 2 --avoid egg": [r"^Fri 25 Dec: 2 guests, avoiding egg"],
    "household mark Bram seafood -3": [r"^Bram never has seafood"],
    "household trip wed": [r"^Shopping: every Wed"],
    "household trip sat --every 2 --from 5 dec fresh": [r"^Shopping: Sat every 2 weeks, next Sat 5 Dec, fresh food"],
    "household trip 5 dec bulk": [r"^Shopping: Sat 5 Dec, bulk"],
    "household night thu mince": [r"^Thursday is mince night"],
    "household night thu mince soup": [r"^Thursday is mince and soup in turn"],
    "household minutes tue 45": [r"45 minutes: Tue"],
    "household place barn freezer far-freezer --litres 200": [r"^Barn freezer is a far freezer, 200 L"],
    "household use 750 mL milk --days mon-fri": [r"^750 mL milk goes on Mon-Fri"],
    "household staple plain flour": [r"^Plain flour is a staple"],
    "household price mince 9.50/kg": [r"^Beef mince costs \$9\.50 for 1 kg; it was"],
    "household price milk 4.55 for 2 L": [r"^Milk costs \$4\.55 for 2 L"],
    "household remove person Tovi": [r"^Tovi eats here no longer"],
    "household remove trip sat": [r"^No shopping every Saturday"],
    "household remove night tue": [r"^Tuesday is free"],
    "household edit": [r"The kitchen at home"],
    "household edit dishes": [r"."],
    "stock": [r"fridge", r"milk"],
    "stock fridge": [r"milk", r"!engine shed"],
    "dishes": [r"pizza", r"soup"],
    "dishes pizza": [r"ham and pineapple pizza"],
    "names mince": [r"beef mince \(mince"],
    "undo": [r"^Undone"],
    "log": [r"Began with 88 lots"],
    "log --limit 3": [r"Began with 88 lots"],
    "export kitchen-copy.json": [r"kitchen-copy\.json"],
    "export --stock-csv stock.csv": [r"stock\.csv"],
    "import kitchen-copy.json": [r"."],
    "import --stock-csv stock.csv": [r"88 lots"],
    'import recipe page.html --kind bake --as "oil=olive oil" --role potatoes=main --amount "oil=2 tbsp" --yes': [r"Potato bake"],
    "backup ledger-copy.db": [r"ledger-copy\.db"],
    "check": [r"."],
    "check --data": [r"."],
    "new our-kitchen": [r"is ready in our-kitchen: 0 people"],
    'new our-kitchen --person "Ann avoids gluten, dislikes mushrooms" --person Ben --trip "sat every 2 from 5 dec"':
        [r"2 people, 5 places, shopping Sat every 2\s+weeks"],
    'new our-kitchen --people Ann,Ben --shopping sat,wed --night "tue mince" --minutes 45 --minutes "sat-sun 90"': [r"2 people"],
    'new our-kitchen --place "shed freezer: far-freezer 200 L" --place fridge --place pantry --trip "5 dec bulk"': [r"3 places"],
    "demo demo-kitchen": [r"^The demo kitchen is in demo-kitchen"],
}

# What is asked afterwards, and patterns of its answer.
THEN = {
    "else beef mince --take 2": ("tonight", [r"!Dinner: spaghetti bolognese"]),
    "swap fri sun": ("week", [r"Fri 27 Nov roast beef", r"Sun 29 Nov prosciutto"]),
    "clear --until fri --write": ("week", [r"Wed 25 Nov (?!spaghetti)"]),
    "lunches --days 3 --write": ("log", [r"lunches"]),
    "got 2 kg beef mince @ 9/kg, 3 cabbages @ 4.65, 300 g ham use by 30 dec":
        ("export --stock-csv", [r"beef-mince,.*,1800,", r"cabbage,.*,1395,", r"ham,.*2026-12-30"]),
    "moved lot 2 --to freezer above the fridge": ("stock freezer above the fridge", [r"."]),
    "thaw --done": ("stock fridge", [r"white fish fillets"]),
    "tonight --done": ("stock fridge", [r"white fish fillets"]),
    "carry december --done": ("carry december", [r"!lamb leg"]),
    "list --got": ("list", [r"!Dry, tins"]),
    "household remove trip sat": ("household", [r"!every Sat"]),
    "household remove person Tovi": ("household", [r"!Tovi"]),
    "household edit": ("household", [r"^The kitchen at home"]),
    "tossed --past": ("stock", [r"!cold roast chicken"]),
    "undo": ("log", [r"undid: ate"]),
    "import kitchen-copy.json": ("log", [r"88 lots"]),
    'import recipe page.html --kind bake --as "oil=olive oil" --role potatoes=main --amount "oil=2 tbsp" --yes':
        ("recipe potato bake", [r"1 kg|potato"]),
}

# Something has passed its use-by by then.
ON_ANOTHER_DAY = {"tossed --past": "2026-11-28"}


class World:
    def __init__(self, program, data, folder):
        self.program, self.folder = program, folder
        self.environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        self.environment.update(SAMEBASE_DATA=data, LC_ALL="C.UTF-8", TZ="UTC", COLUMNS="80")
        self.demo = folder / "demo"
        self.run(["demo", str(self.demo)], folder)

    def run(self, words, where, kitchen=None, today=TODAY, **more):
        place = ["--kitchen", str(kitchen)] if kitchen else []
        return subprocess.run([self.program, *place, "--today", today, *words], cwd=where, text=True, capture_output=True, check=False,
                              env={**self.environment, **more}, stdin=subprocess.DEVNULL, timeout=120)

    def fresh(self, name):
        """A folder with a copy of the demo kitchen, and the files that an example reads."""
        where = self.folder / name
        shutil.copytree(self.demo, where / "kitchen")
        return where


def commands(world, path=()):
    """Each command with its help: ('household', 'trip')."""
    text = world.run([*path, "--help"], world.folder).stdout
    yield path, text
    below = re.search(r"^Subcommands:\n(.*?)\n\n", text + "\n\n", re.M | re.S)
    for name in re.findall(r"^  ([a-z]+)(?: |$)", below.group(1) if below else "", re.M):
        yield from commands(world, (*path, name))


def examples_of(text):
    below = re.search(r"^Examples:\n((?:  samebase .*\n?)+)", text, re.M)
    return [line.strip().removeprefix("samebase ") for line in below.group(1).splitlines()] if below else []


def shown_beside(path, text):
    """Examples within descriptions: 'thaw: what do I take out? (thaw sat)'; and values in quotes."""
    for name, description in re.findall(r"^  ([a-z]+) +(\S.*)$", text, re.M):
        found = re.search(rf"[:(] ?({name} [^)]*)\)?$", description)
        yield from [" ".join([*path, found.group(1)])] if found else []
    yield from re.findall(r"(?<!\w)'([^' ][^'\n]*)'", text.split("Examples:")[0])


def prepare(world, example, where):
    """What an example finds when it is typed: a file that another has written, a thing that has run out, food that is past."""
    kitchen = where / "kitchen"
    if "page.html" in example:
        (where / "page.html").write_text(PAGE, encoding="utf-8")
    elif example.startswith("import"):
        world.run(["export", str(where / "kitchen-copy.json")], where, kitchen)
        world.run(["export", "--stock-csv", str(where / "stock.csv")], where, kitchen)
        (kitchen / "kitchen.db").unlink()
        if "stock" not in example:
            shutil.rmtree(kitchen)
    elif example == "out olive oil --again":
        world.run(["out", "olive", "oil"], where, kitchen)
    elif example == "undo":
        world.run(["ate", "2 bananas"], where, kitchen)
    elif example == "household edit":
        editor = where / "editor.sh"
        editor.write_text("#!/bin/sh\nsed -i 's/The depot house/The kitchen at home/I' \"$1\"\n", encoding="utf-8")
    elif example == "household edit dishes":
        editor = where / "editor.sh"
        editor.write_text("#!/bin/sh\ntrue \"$1\"\n", encoding="utf-8")
    if (where / "editor.sh").exists():
        (where / "editor.sh").chmod(0o755)


def wrong_with(world, example, number):
    where = world.fresh(f"e{number}")
    prepare(world, example, where)
    editor = {"VISUAL": str(where / "editor.sh")} if (where / "editor.sh").exists() else {}
    done = world.run(shlex.split(example), where, where / "kitchen", ON_ANOTHER_DAY.get(example, TODAY), **editor)
    says = SAYS[example]
    status = says[0] if says and isinstance(says[0], int) else 0
    if done.returncode != status:
        yield f"status {done.returncode}: {done.stdout[-300:]}{done.stderr[-600:]}"
        return
    yield from unlike(done.stdout, [pattern for pattern in says if not isinstance(pattern, int)])
    if example in THEN:
        command, patterns = THEN[example]
        then = world.run(shlex.split(command), where, where / "kitchen", ON_ANOTHER_DAY.get(example, TODAY))
        yield from unlike(then.stdout, patterns)
    shutil.rmtree(where)


def unlike(text, patterns):
    for pattern in patterns:
        absent = pattern.startswith("!")
        if bool(re.search(pattern.removeprefix("!"), text, re.M)) == absent:
            yield f"{'has' if absent else 'lacks'} {pattern!r}:\n{text[:400]}"


def main():
    program, data = (str(Path(path).resolve()) for path in sys.argv[1:3])
    failures = []
    with tempfile.TemporaryDirectory(prefix="samebase-help-") as folder:
        world = World(program, data, Path(folder))
        helps = dict(commands(world))
        examples = [example for text in helps.values() for example in examples_of(text)]
        failures += [f"{' '.join(path)} --help has no example" for path, text in helps.items() if path and not examples_of(text)]
        failures += [f"samebase {example}: nothing here says what it must do" for example in examples if example not in SAYS]
        failures += [f"samebase {example}: is in no help" for example in SAYS if example not in examples]
        for path, text in helps.items():
            shown = list(shown_beside(path, text))
            failures += [f"{' '.join(path)} --help: '{one}' is in no example" for one in shown if not any(one in e for e in examples)]
        for number, example in enumerate(example for example in examples if example in SAYS):
            failures += [f"samebase {example}: {wrong}" for wrong in wrong_with(world, example, number)]
    for failure in failures:
        print(failure)
    print(f"{len(examples)} examples in the help of {len(helps) - 1} commands, {len(failures)} faults")
    return 1 if failures or not examples else 0


if __name__ == "__main__":
    sys.exit(main())

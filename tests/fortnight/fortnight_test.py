"""A household of six lives for 28 days by the program's own commands, from an empty folder.

    python3 fortnight_test.py PROGRAM DATA_FOLDER

No document is edited by hand. After each day: the store is sound, nothing past its use-by was eaten or cooked with, nothing that
was had is still planned, and nobody's dinner holds what they must avoid. At the end it prints how many commands a day it took
besides trips and counts; it ends with status 1 where anything does not hold.
"""

import datetime
import json
import os
import subprocess
import sys
import tempfile
from pathlib import Path

START = datetime.date(2026, 12, 1)
DAYS = 28
MOST_A_DAY = 2.5

NEW = ["--name", "the ridge house",
       "--person", "Ana avoids gluten", "--person", "Ben dislikes seafood", "--person", "Cleo", "--person", "Dov", "--person", "Eva",
       "--place", "shed freezer: far-freezer 250 L", "--place", "kitchen freezer: near-freezer 80 L", "--place", "fridge: fridge 250 L",
       "--place", "crisper: crisper 30 L", "--place", "pantry: pantry 300 L", "--trip", "sat", "--night", "fri pizza", "--night", "sun roast",
       "--minutes", "60"]
HOUSE = ["household person Finn --eats 0.5", "household use 1500 mL milk", "household use 8 slices bread --days mon-fri",
         "household away Dov 8..10 dec", "household guests 19 dec 2"]
STOCK = ["got 6 x 500 g mince @ 5.50, 4 x 1 kg chicken thigh @ 11, 2 x 600 g beef sausages, 2 x 500 g gluten-free sausages --in shed freezer",
         "got 2 x 500 g mince, 1 kg frozen peas, 1 kg frozen mixed vegetables, 2 packs fish fingers --in kitchen freezer",
         "got 2 kg potatoes, 1 bag onions, 1 bag carrots, 6 L milk use by 9 dec, 24 eggs, 1 kg tasty cheese, 500 g butter, 2 heads broccoli, "
         "6 tomatoes, 1 lettuce, 1 bag apples, 4 bananas, 1 kg plain yoghurt use by 18 dec",
         "got 6 tins tomatoes, 4 tins tuna, 4 tins baked beans, 1 kg spaghetti, 1 kg penne, 2 packets gluten-free pasta, 2 kg white rice, "
         "4 loaves bread, 2 loaves gluten-free bread, 1 kg plain flour, 1 bottle soy sauce, 2 cartons chicken stock, 1 tub tomato paste"]


class House:
    def __init__(self, program, data, folder):
        self.program, self.folder = program, folder
        self.environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        self.environment.update(SAMEBASE_DATA=data, SAMEBASE_KITCHEN=folder, LC_ALL="C.UTF-8", TZ="UTC")
        self.today = START
        self.typed = 0
        self.failures = []

    def say(self, words, fine=(0, 1), counts=True):
        """Types a command; its output. Counted unless it belongs to setting up, a trip or a count."""
        words = words if isinstance(words, list) else words.split()
        done = subprocess.run([self.program, "--today", self.today.isoformat(), *words], env=self.environment, cwd=self.folder,
                              stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=300)
        self.typed += 1 if counts else 0
        if done.returncode not in fine:
            self.failures.append(f"{self.today}: {' '.join(words)}: status {done.returncode}: {done.stdout}{done.stderr}")
        return done.stdout

    def ask(self, words):
        return json.loads(self.say(["--json", *words.split()], counts=False) or "{}")


def set_up(house):
    house.say(["new", house.folder, *NEW], counts=False)
    for line in [*HOUSE, *STOCK]:
        house.say(line, fine=(0,), counts=False)


def trip(house):
    """Plans the week, then buys what it needs."""
    until = (house.today + datetime.timedelta(days=7)).isoformat()
    house.say(f"clear --until {until} --effort 20 --write -y", counts=False)
    house.say("list --got", fine=(0, 2), counts=False)  # 2: nothing is on the list


def live(house, number):
    if house.today == START or house.today.weekday() == 5:
        trip(house)
    house.say("tonight --done")
    if number == 3:
        house.say("else mince --take 1", fine=(0, 2))
    if number == 6:
        house.say("moved 2 packs mince from shed freezer to kitchen freezer")
    if number in (9, 20):
        house.say("count -y fridge: 9 eggs, 1 L milk", counts=False)
    if number == 12:
        house.say("swap tomorrow leftovers -y")
    if house.ask("tonight")["dinner"] is None and not house.ask("week")["days"][0]["dinners"]:
        house.say("else eggs --take 1 --buy", fine=(0, 2))
    house.say("cooked", fine=(0, 2))  # 2: nothing was planned
    if number % 7 == 6:
        house.say("tossed --past", fine=(0, 2))


def holds(house):
    """What must be so after each day."""
    def wrong(text):
        house.failures.append(f"{house.today}: {text}")

    if house.say("check", counts=False) == "":
        wrong("check says nothing")
    for day in house.ask("plan 2026-12-01..2026-12-31")["days"]:
        if any(meal["had"] for meal in day["dinners"]) and not all(meal["had"] for meal in day["dinners"]):
            wrong(f"{day['day']}: a dinner is planned beside one that was had")
    ledger = json.loads(house.say("export", counts=False))
    for entry in entries_of(ledger):
        ends = entry["after"].get("use_by")
        if entry["kind"] in ("eaten", "cooked") and entry["delta"] < 0 and ends and ends < entry["day"]:
            wrong(f"lot {entry['lot']} was eaten on {entry['day']}, past its use-by {ends}")


def entries_of(document):
    """The entries of a whole export, with their day, kind, change and what the lot was after it."""
    for entry in document["ledger"]["entries"]:
        yield {"day": entry["day"], "kind": entry["kind"], "lot": entry["lot"], "delta": entry["delta"], "after": entry["after"]}


def main():
    program, data = (str(Path(path).resolve()) for path in sys.argv[1:3])
    with tempfile.TemporaryDirectory(prefix="samebase-fortnight-") as folder:
        house = House(program, data, folder)
        set_up(house)
        dinners = 0
        for number in range(DAYS):
            house.today = START + datetime.timedelta(days=number)
            live(house, number)
            holds(house)
            dinners += any(meal["had"] for meal in house.ask("week")["days"][0]["dinners"])
            if house.failures:
                break
        a_day = house.typed / DAYS
        print(f"{dinners} dinners had in {DAYS} days; {house.typed} commands, {a_day:.2f} a day besides trips and counts")
        if not house.failures and a_day > MOST_A_DAY:
            house.failures.append(f"more than {MOST_A_DAY} commands a day")
        if not house.failures and dinners < DAYS - 2:
            house.failures.append("too many days without a dinner")
        for failure in house.failures:
            print(failure)
        sys.exit(1 if house.failures else 0)


main()

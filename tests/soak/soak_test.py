"""A household lives for years by the program's own commands, and now and then the power goes.

    python3 soak_test.py PROGRAM DATA_FOLDER [--days N] [--seed N] [--kills-a-day X] [--folder DIR]

Every day has a dinner and something else that happens in a house: a trip, a count that disagrees, a thaw that comes late, people
who are away, something for the bin, an undo. Some commands are killed at any moment, and some run two at a time. After each day:

- `check` finds nothing, and every document is whole;
- nothing that was written is gone or different, and commands, lots, entries and rows of the plan are numbered without a gap;
- a command that said that it is done is in the ledger, and one that was killed is there as a whole or not at all;
- every lot holds what its entries add up to, and never less than nothing;
- nothing was eaten or cooked past its use-by, and no dinner is planned beside one that was had.

Prints the days, commands and kills; a failure is printed with the seed, the day and the command, and ends it with status 1.
"""

import argparse
import datetime
import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

START = datetime.date(2026, 12, 1)
NEW = ["--person", "Ana avoids gluten", "--person", "Ben dislikes seafood", "--person", "Cleo", "--person", "Dov",
       "--place", "shed freezer: far-freezer 250 L", "--place", "kitchen freezer: near-freezer 80 L", "--place", "fridge: fridge 250 L",
       "--place", "crisper: crisper 30 L", "--place", "pantry: pantry 300 L", "--trip", "sat", "--night", "fri pizza"]
BOUGHT = ["2 x 500 g mince", "1 kg chicken thigh", "600 g beef sausages", "1 kg frozen peas", "2 kg potatoes", "1 bag onions", "1 bag carrots",
          "4 L milk", "12 eggs", "500 g tasty cheese", "500 g butter", "1 head broccoli", "6 tomatoes", "1 lettuce", "4 bananas",
          "4 tins tomatoes", "2 tins tuna", "500 g spaghetti", "1 kg white rice", "2 loaves bread", "1 kg plain flour"]
EATEN = ["1 banana", "1 carrot", "100 g tasty cheese", "2 eggs", "1 tomato", "200 mL milk", "1 slice bread"]
COUNTED = ["fridge: {n} eggs", "fridge: {n} L milk", "pantry: {n} tins tomatoes", "crisper: {n} carrots", "kitchen freezer: {n}00 g frozen peas"]
CLUMSY = ["tossed --past", "out olive oil", "opened milk", "moved 1 pack mince from shed freezer to fridge", "moved 1 pack mince to kitchen freezer",
          "thaw --done", "tonight --done", "undo"]


class Failed(Exception):
    pass


def need(condition, text):
    if not condition:
        raise Failed(text)


class House:
    def __init__(self, program, data, folder, seed, kills_a_day):
        self.program, self.folder = program, str(folder)
        self.environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        self.environment.update(SAMEBASE_DATA=data, SAMEBASE_KITCHEN=self.folder, LC_ALL="C.UTF-8", TZ="UTC")
        self.dice = random.Random(seed)
        self.kills_a_day = kills_a_day
        self.today = START
        self.takes = 0.1  # seconds of a usual command
        self.said = self.kills = self.pairs = 0
        self.known = {"commands": [], "lots": [], "entries": [], "plan": [], "history": [], "facts": []}
        self.held = {}
        self.dishes = []

    def start(self, words):
        self.said += 1
        return subprocess.Popen([self.program, "--today", self.today.isoformat(), *words], env=self.environment, cwd=self.folder,
                                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)

    def end(self, process, words, fine=(0, 1, 2)):
        out, err = process.communicate(timeout=300)
        need(process.returncode in fine, f"{' '.join(words)}: status {process.returncode}: {out}{err}")
        return out

    def say(self, words, fine=(0, 1, 2)):
        """What it prints. Status 2 is fine where the household may not have what the words are about."""
        words = words if isinstance(words, list) else words.split()
        return self.end(self.start(words), words, fine)

    def ask(self, words):
        return json.loads(self.say(["--json", *words.split()], fine=(0, 1)))

    def killed(self, words):
        """Says it, and ends it at any moment."""
        process = self.start(words)
        time.sleep(self.takes * self.dice.uniform(0.2, 1.3))
        process.send_signal(signal.SIGKILL)
        process.communicate()
        self.kills += process.returncode == -signal.SIGKILL

    def both(self):
        """Two at once, one of which always changes something: what it says is done is in the ledger, once."""
        self.pairs += 1
        note = f"pair {self.pairs}"
        runs = [(words, self.start(words)) for words in (["got", "1 kg onions", "--note", note], self.something().split())]
        for words, process in runs:
            self.end(process, words)
        done = runs[0][1].returncode == 0
        there = [e for e in self.export()["ledger"]["entries"] if e["kind"] == "got" and e["after"].get("note") == note]
        need(len(there) == done, f"{note}: {'done' if done else 'not done'}, and in the ledger {len(there)} times")

    def export(self):
        return json.loads(self.say("export", fine=(0,)))

    def something(self):
        """Words of a command that changes something; of the household, whose document is kept as a whole, now and then."""
        dice = self.dice
        if dice.random() < 0.1:
            return dice.choice([f"household away {dice.choice(['Ben', 'Cleo', 'Dov'])} +{dice.randrange(9)}",
                                f"household guests +{dice.randrange(1, 9)} {dice.randrange(1, 4)}",
                                f"household minutes {dice.choice(['mon', 'tue', 'wed'])} {dice.randrange(30, 90)}"])
        return dice.choice([lambda: f"got {dice.choice(BOUGHT)}", lambda: f"ate {dice.choice(EATEN)}",
                            lambda: "count -y " + dice.choice(COUNTED).format(n=dice.randrange(1, 9)),
                            lambda: dice.choice(CLUMSY),
                            lambda: f"swap {(self.today + datetime.timedelta(days=dice.randrange(1, 6))).isoformat()} "
                                    f"{dice.choice(self.dishes)} -y"])()


def set_up(house):
    house.say(["new", house.folder, "--name", "the long house", *NEW], fine=(0,))
    house.say("household use 500 mL milk", fine=(0,))
    house.say("got " + ", ".join(BOUGHT), fine=(0,))
    house.dishes = [dish["label"] for dish in house.ask("dishes")["dishes"] if dish["dinner"]]


def live(house):
    dice = house.dice
    if house.today.weekday() == 5:
        house.say("got " + ", ".join(dice.sample(BOUGHT, dice.randrange(4, 12))), fine=(0,))
        house.say("tossed --past")
    house.say(house.something())
    if dice.random() < 0.3:
        house.both()
    started = time.monotonic()
    house.say(f"cooked {dice.choice(house.dishes)}" if dice.random() < 0.7 else "cooked")
    house.takes = time.monotonic() - started
    for _ in range(int(house.kills_a_day + dice.random())):
        house.killed(house.something().split())


def numbered(house, rows, kind):
    """What was known is there as it was, and what is new follows."""
    known = house.known[kind]
    need(rows[:len(known)] == known, f"{kind}: something that was written is gone or different")
    numbers = [row["number"] for row in rows if "number" in row]
    need(numbers == list(range(1, len(numbers) + 1)), f"{kind} are not numbered without a gap")
    new = rows[len(known):]
    house.known[kind] = rows
    return new


def holds(house):
    said = house.say("check", fine=(0, 1))
    need(said, "check says nothing")
    need(json.loads((Path(house.folder) / "kitchen.json").read_text(encoding="utf-8"))["people"], "kitchen.json is not whole")
    ledger = house.export()["ledger"]
    for kind in ("commands", "lots", "plan"):
        numbered(house, ledger[kind], kind)
    for entry in numbered(house, ledger["entries"], "entries"):
        lot, after = entry["lot"], entry["after"]
        house.held[lot] = house.held.get(lot, 0) + entry["delta"]
        need(house.held[lot] >= 0, f"lot {lot} holds less than nothing after entry {entry['number']}")
        need(house.held[lot] == after.get("amount", 0), f"lot {lot} holds {after['amount']}, its entries add up to {house.held[lot]}")
        ends = after.get("use_by")
        if entry["kind"] in ("eaten", "cooked") and entry["delta"] < 0 and ends and not entry.get("undoes"):
            need(ends >= entry["day"], f"lot {lot} was eaten on {entry['day']}, past its use-by {ends}")
    for day in house.ask("week")["days"]:
        had = [meal["had"] for meal in day["dinners"]]
        need(all(had) or not any(had), f"{day['day']}: a dinner is planned beside one that was had")


def main():
    words = argparse.ArgumentParser()
    words.add_argument("program")
    words.add_argument("data")
    words.add_argument("--days", type=int, default=12)
    words.add_argument("--seed", type=int, default=int(os.environ.get("SAMEBASE_SEED", "4")))
    words.add_argument("--kills-a-day", type=float, default=1.0)
    said = words.parse_args()
    with tempfile.TemporaryDirectory(prefix="samebase-soak-") as folder:
        house = House(str(Path(said.program).resolve()), str(Path(said.data).resolve()), folder, said.seed, said.kills_a_day)
        status = 0
        day = 0
        try:
            set_up(house)
            for day in range(said.days):
                house.today = START + datetime.timedelta(days=day)
                live(house)
                holds(house)
        except (Failed, ValueError, KeyError, subprocess.TimeoutExpired) as failure:
            print(f"seed {said.seed}, day {day} ({house.today}): {failure}")
            status = 1
        entries = len(house.known["entries"])
        print(f"{day + 1} days, {house.said} commands, {house.kills} killed, {house.pairs} pairs at once, {entries} entries")
        sys.exit(status)


main()

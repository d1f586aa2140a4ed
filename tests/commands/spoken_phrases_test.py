"""What cooks say, against what it must mean: the rows of spoken_phrases.json, each said to the program.

    python3 spoken_phrases_test.py PROGRAM DATA_FOLDER PHRASES [--show]

A row is right where the thing is the one that is meant, its amount is right within a quarter (pieces weigh what they weigh), and so is
the number of its packs where the row says one; a row that must be asked about is right where the program refuses it as not understood.
At least 98 in 100 must be right, and no other may be taken for another thing, or for more than twice or less than half of
what was meant, without a question. --show prints every row that is not right.
"""

import json
import os
import re
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

TODAY = "2026-11-25"
LEAST_RIGHT = 0.98
NOT_UNDERSTOOD = 2
UNITS = {"kg": 1000, "g": 1, "L": 1000, "mL": 1, "": 1}


def value_of(text):
    number, unit = re.fullmatch(r"([0-9.]+) ?([a-zA-Z]*)", text).groups()
    return float(number) * UNITS[unit]


class Kitchen:
    def __init__(self, program, data, folder):
        self.program = program
        self.env = dict(os.environ, SAMEBASE_DATA=data, SAMEBASE_KITCHEN=str(Path(folder) / "K"), LC_ALL="C.UTF-8", TZ="UTC")
        self.run(["new", str(Path(folder) / "K"), "--people", "Robin"])

    def run(self, words):
        return subprocess.run([self.program, "--today", TODAY, *words], env=self.env, stdin=subprocess.DEVNULL,
                              capture_output=True, text=True, check=False)

    def said(self, command, phrase):
        done = self.run(["--json", command, *phrase.split(), "--dry-run"])
        if done.returncode == NOT_UNDERSTOOD:
            return None
        if done.returncode != 0:
            raise RuntimeError(f"{command} {phrase}: status {done.returncode}: {done.stdout}{done.stderr}")
        return json.loads(done.stdout)

    def known(self, place):
        lots = json.loads(self.run(["--json", "stock"]).stdout)["lots"]
        amounts = {}
        for lot in lots:
            if lot["place"].replace("-", " ") == place:
                amounts[lot["ingredient"]] = amounts.get(lot["ingredient"], 0) + lot["amount"]["value"]
        return amounts


def got(answer):
    """(thing, amount, packs) of what came."""
    return [(e["after"]["ingredient"], e["change"]["value"], e["after"]["packs"]) for e in answer["entries"] if e["column"] == "in"]


def gone(answer):
    amounts = {}
    for e in answer["entries"]:
        if e["column"] in ("used", "tossed"):
            thing = e["after"]["ingredient"]
            amounts[thing] = amounts.get(thing, 0) - e["change"]["value"]
    return [(thing, amount, None) for thing, amount in amounts.items()]


def counted(answer, known):
    result = []
    for row in answer["counted"]:
        thing = row["ingredient"]
        mine = [e for e in answer["entries"] if e["after"]["ingredient"] == thing]
        packs = mine[-1]["after"]["packs"] if mine else None
        result.append((thing, known.get(thing, 0) + sum(e["change"]["value"] for e in mine), packs))
    return result


def judge(row, meant):
    """"right", "asked", "near" or "wrong", and what it was taken for."""
    if meant is None:
        return ("right" if len(row) == 1 else "asked"), "asked"
    told = ", ".join(f"{thing} {amount:g}" + (f" in {packs} packs" if packs else "") for thing, amount, packs in meant)
    if len(row) == 1 or len(meant) != 1 or meant[0][0] != row[1]:
        return "wrong", told
    amount, wanted = meant[0][1], value_of(row[2])
    if amount == wanted == 0:
        return "right", told
    if wanted == 0 or not 0.5 <= amount / wanted <= 2:
        return "wrong", told
    if not 0.75 <= amount / wanted <= 1.25 or (len(row) > 3 and meant[0][2] != row[3]):
        return "near", told
    return "right", told


def heard(kitchen, known, command, phrase):
    answer = kitchen.said(command, phrase)
    if answer is None:
        return None
    if command == "got":
        return got(answer)
    if command == "count":
        return counted(answer, known[phrase.split(":")[0]])
    return gone(answer)


def main(program, data, phrases, show):
    table = json.loads(Path(phrases).read_text(encoding="utf-8"))
    with tempfile.TemporaryDirectory() as folder:
        kitchen = Kitchen(program, data, folder)
        for line in table["stock"]:
            stocked = kitchen.run(["got", *line.split()])
            assert stocked.returncode == 0, stocked.stderr
        known = {place: kitchen.known(place) for place in ("near freezer", "fridge", "crisper", "pantry")}
        rows = [(command, row) for command, said in table["phrases"].items() for row in said]
        with ThreadPoolExecutor(2) as pool:
            results = list(pool.map(lambda r: judge(r[1], heard(kitchen, known, r[0], r[1][0])), rows))
    count = {verdict: sum(1 for v, _ in results if v == verdict) for verdict in ("right", "asked", "near", "wrong")}
    for (command, row), (verdict, told) in zip(rows, results):
        if verdict == "wrong" or (show and verdict != "right"):
            print(f"{verdict}: {command} {row[0]}: {told}; meant: {' '.join(map(str, row[1:])) or 'to be asked'}")
    print(f"{len(rows)} phrases: " + ", ".join(f"{n} {verdict}" for verdict, n in count.items()))
    return 0 if count["wrong"] == 0 and count["right"] >= LEAST_RIGHT * len(rows) else 1


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], sys.argv[3], "--show" in sys.argv))

#!/usr/bin/env python3
"""What a long past costs: whole processes on the demo kitchen with 25 years behind it, against the demo kitchen as it is.

    python3 benchmarks/long_history.py BINARY [RUNS]

The past is made here, the same every time: every day a shop of six things, eaten whole that day, and a dinner: twelve entries a
day, about 110,000 entries and 9,000 dinners, before the demo kitchen's own. Runs on the two kitchens take turns, so that a machine
that slows down slows both; medians are compared.
"""
import datetime
import json
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

TODAY = datetime.date(2026, 11, 25)
YEARS = 25
THINGS = ["carrot", "potato", "onion", "apple", "zucchini", "broccoli"]
GRAMS = 1_000_000


def run(binary, kitchen, *arguments):
    command = [binary, "--kitchen", str(kitchen), "--today", TODAY.isoformat(), *arguments]
    done = subprocess.run(command, capture_output=True, text=True)
    if done.returncode != 0:
        sys.exit(done.stderr)
    return done.stdout


def with_past(document):
    """The export with 25 years before it; its own numbers follow those of the past."""
    own = document["ledger"]
    dishes = sorted({row["dish"] for row in own["history"]})
    past = {"commands": [], "lots": [], "entries": [], "history": []}
    day = TODAY - datetime.timedelta(days=365 * YEARS + YEARS // 4)
    number = 0
    while day < TODAY - datetime.timedelta(days=120):
        number += 1
        text = day.isoformat()
        past["commands"].append({"number": number, "day": text, "name": "got", "line": "a day"})
        for thing in THINGS:
            lot = len(past["lots"]) + 1
            past["lots"].append({"number": lot, "ingredient": thing, "arrived": text, "dimension": "mass"})
            for kind, column, amount in (("got", "in", GRAMS), ("eaten", "used", 0)):
                after = {"place": "pantry", "amount": amount, "state": "fresh", "since": text}
                past["entries"].append({"number": len(past["entries"]) + 1, "command": number, "kind": kind, "column": column, "day": text,
                                        "lot": lot, "place": "pantry", "delta": GRAMS if amount else -GRAMS, "after": after})
        past["history"].append({"number": number, "command": number, "adds": True, "day": text, "meal": "dinner", "dish": dishes[number % len(dishes)]})
        day += datetime.timedelta(days=1)
    shift = {"command": number, "lot": len(past["lots"]), "entry": len(past["entries"]), "history": len(past["history"])}
    for row in own["commands"]:
        row["number"] += shift["command"]
    for row in own["lots"]:
        row["number"] += shift["lot"]
    for row in own["entries"]:
        row["number"] += shift["entry"]
        row["command"] += shift["command"]
        row["lot"] += shift["lot"]
    for row in own["history"]:
        row["number"] += shift["history"]
        row["command"] += shift["command"]
    for row in own["plan"]:
        row["command"] += shift["command"]
    for name, rows in past.items():
        own[name] = rows + own[name]
    return document


def main():
    binary = str(Path(sys.argv[1]).resolve())
    runs = int(sys.argv[2]) if len(sys.argv) > 2 else 15
    with tempfile.TemporaryDirectory() as folder:
        young, old = Path(folder) / "young", Path(folder) / "old"
        subprocess.run([binary, "--today", TODAY.isoformat(), "demo", str(young)], check=True, capture_output=True)
        long_past = Path(folder) / "past.json"
        long_past.write_text(json.dumps(with_past(json.loads(run(binary, young, "export")))), encoding="utf-8")
        run(binary, old, "import", str(long_past))
        counts = json.loads(run(binary, old, "--json", "check"))["counts"]
        print(f"{counts['entries']} entries and {counts['had']} meals against {json.loads(run(binary, young, '--json', 'check'))['counts']['entries']}")
        for words in (["stock"], ["tonight"], ["got", "1 kg rice", "--in", "pantry"]):
            times = {young: [], old: []}
            for _ in range(runs):
                for kitchen in (young, old):
                    begin = time.perf_counter()
                    run(binary, kitchen, *words)
                    times[kitchen].append(time.perf_counter() - begin)
            ratio = statistics.median(times[old]) / statistics.median(times[young])
            print(f"{words[0]}: {ratio:.2f} times as long with the long past (medians of {runs})")


main()

#!/usr/bin/env python3
"""What a full year's plan and a full house cost: whole processes on the demo kitchen with 366 dinners planned, and with ten times
its lots, against the demo kitchen as it is.

    python3 benchmarks/growth.py BINARY [RUNS]

Both are made here, the same every time: the dinners of the demo's plan in turn on every day that has none, and every lot ten times.
Runs take turns, so that a machine that slows down slows all; medians of the processor time are compared.
"""
import datetime
import json
import resource
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

TODAY = datetime.date(2026, 11, 25)
DAYS = 366
TIMES = 10
YEAR_AIM, LOTS_AIM = 2, 5


def run(binary, kitchen, *words):
    done = subprocess.run([binary, "--kitchen", str(kitchen), "--today", TODAY.isoformat(), *words], capture_output=True, text=True)
    if done.returncode not in (0, 1):
        sys.exit(done.stderr)
    return done.stdout


def seconds(binary, kitchen, words):
    def used():
        children = resource.getrusage(resource.RUSAGE_CHILDREN)
        return children.ru_utime + children.ru_stime
    before = used()
    run(binary, kitchen, *words)
    return used() - before


def with_year(document):
    """A dinner on each of 366 days."""
    plan = document["ledger"]["plan"]
    dishes = sorted({row["dish"] for row in plan if row["meal"] == "dinner"})
    there = {row["day"] for row in plan if row["meal"] == "dinner"}
    for i in range(DAYS):
        day = (TODAY + datetime.timedelta(days=i)).isoformat()
        if day not in there:
            plan.append({"number": len(plan) + 1, "command": plan[0]["command"], "adds": True, "day": day, "meal": "dinner",
                         "dish": dishes[i % len(dishes)]})
    return document


def with_lots(document):
    """Every lot ten times, each with the entry that brought it."""
    ledger = document["ledger"]
    lots, entries = list(ledger["lots"]), list(ledger["entries"])
    for _ in range(TIMES - 1):
        first = len(ledger["lots"])
        for lot in lots:
            ledger["lots"].append(dict(lot, number=first + lot["number"]))
        for entry in entries:
            ledger["entries"].append(dict(entry, number=len(ledger["entries"]) + 1, lot=first + entry["lot"]))
    return document


def main():
    binary = str(Path(sys.argv[1]).resolve())
    runs = int(sys.argv[2]) if len(sys.argv) > 2 else 9
    with tempfile.TemporaryDirectory() as folder:
        kitchens = {name: Path(folder) / name for name in ("demo", "year", "lots")}
        run(binary, kitchens["demo"], "demo", str(kitchens["demo"]))
        for name, make in (("year", with_year), ("lots", with_lots)):
            path = Path(folder) / f"{name}.json"
            path.write_text(json.dumps(make(json.loads(run(binary, kitchens["demo"], "export")))), encoding="utf-8")
            run(binary, kitchens[name], "import", str(path))
        commands = {"tonight": ["tonight"], "else": ["else", "beef mince"], "swap": ["swap", "fri", "rissoles", "--dry-run"],
                    "swap, ten months off": ["swap", "2027-09-24", "rissoles", "--dry-run"]}
        for name, words in commands.items():
            times = {kitchen: [] for kitchen in kitchens}
            for _ in range(runs):
                for kitchen, path in kitchens.items():
                    times[kitchen].append(seconds(binary, path, words))
            middle = {kitchen: statistics.median(list_) for kitchen, list_ in times.items()}
            print(f"{name}: {middle['year'] / middle['demo']:.2f} times as long with {DAYS} planned dinners (aim {YEAR_AIM}), "
                  f"{middle['lots'] / middle['demo']:.2f} times with ten times the lots (aim {LOTS_AIM}); medians of {runs}")
        for span in ("2027-01", "2027-10"):
            taken = statistics.median(seconds(binary, kitchens["year"], ["balance", span]) for _ in range(3))
            usual = statistics.median(seconds(binary, kitchens["demo"], ["balance"]) for _ in range(3))
            print(f"balance {span} with {DAYS} planned dinners: {taken / usual:.1f} times the demo's balance ({taken:.1f} s of processor time)")


main()

"""What a cook reads is what a hand can measure: no text answer has an amount such as 12.3 g, 0.8 eggs or 1.1 serves.

    python3 amounts_test.py PROGRAM SOURCE_FOLDER

Asks every question of the demo kitchen on several days, and of the outside kitchens where they are (SAMEBASE_OUTSIDE_DATA, else
../shared/data beside the repository). Commands that are printed to be typed are exact, and left out. Also: `tonight` has at most 24
lines in the demo kitchen on each of 15 days, `balance` tells at most 12 things by themselves, and no line is wider than the screen at
60, 80 and 120 columns.
"""

import os
import re
import subprocess
import sys
import tempfile
from datetime import date, timedelta
from pathlib import Path

DEMO_DAY = date(2026, 11, 25)
MOST_LINES_TONIGHT = 24
MOST_TOLD = 12

# What is asked of each kitchen; `rounded` where no amount is one that somebody weighed or typed.
QUESTIONS = [
    (["tonight"], "rounded"),
    (["tonight", "--all"], "rounded"),
    (["balance"], "rounded"),
    (["balance", "--all"], "weighed"),
    (["else", "beef mince"], "rounded"),
    (["else", "beef mince", "--why"], "rounded"),
    (["else", "chicken thigh", "--all"], "rounded"),
    (["lunches", "--days", "3", "--effort", "5"], "rounded"),
    (["lunches", "--days", "3", "--effort", "5", "--why"], "rounded"),
    (["clear", "--effort", "5"], "rounded"),
    (["clear", "--effort", "5", "--why"], "rounded"),
    (["clear", "--effort", "5", "--all"], "rounded"),
    (["thaw"], "weighed"),
    (["thaw", "--all"], "weighed"),
    (["carry", "december"], "weighed"),
    (["stock"], "weighed"),
    (["log"], "weighed"),
    (["sheet", "week"], "weighed"),
    (["sheet", "week", "--share"], "weighed"),
    (["sheet", "first"], "rounded"),
    (["sheet", "stock"], "weighed"),
    (["sheet", "list"], "rounded"),
    (["sheet", "recipe", "meat", "loaf"], "rounded"),
    (["swap", "sat", "rissoles with onion gravy and cabbage", "--dry-run"], "weighed"),
    (["cooked", "rissoles with onion gravy and cabbage", "--dry-run"], "weighed"),
]

MONEY = re.compile(r"[$€£¥]\d+(\.\d\d)?|\d+\.\d\d (CHF|AUD)")
TYPED = re.compile(r"samebase [^\n]*")
ALLOWED_DECIMAL = re.compile(r"[1-9]\d*\.\d\d? (kg|L)\b|\d+\.\d %|fit \d\.\d\d")
DECIMAL = re.compile(r"\d+\.\d+[^\n]{0,24}")
SMALL = re.compile(r"(?<![\d.])(\d+) (g|mL)\b(?! pack)")


def readable(text):
    """Without what is typed back, and without money."""
    return MONEY.sub("", TYPED.sub("", text))


def faults(text, kind):
    text = readable(text)
    for match in DECIMAL.finditer(ALLOWED_DECIMAL.sub("", text)):
        yield match.group(0)
    if kind != "rounded":
        return
    for match in SMALL.finditer(text):
        size = int(match.group(1))
        step = 1 if size < 10 else 5 if size < 100 else 10
        if size % step != 0:
            yield match.group(0)


class Kitchen:
    def __init__(self, program, folder):
        self.program = program
        self.folder = str(folder)

    def ask(self, day, words, columns=1000):
        env = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE") and k != "COLUMNS"}
        command = [self.program, "--kitchen", self.folder, "--today", str(day), *words]
        done = subprocess.run(command, env={**env, "COLUMNS": str(columns)}, capture_output=True, text=True, check=False)
        if done.returncode > 2:
            raise SystemExit(f"{' '.join(words)} on {day}: exit {done.returncode}: {done.stderr}")
        return done.stdout


def amounts(kitchen, days, name, questions=QUESTIONS):
    for day in days:
        for words, kind in questions:
            for found in faults(kitchen.ask(day, words), kind):
                yield f"{name}, {day}, {' '.join(words)}: '{found}'"


def calm(kitchen):
    for after in range(15):
        day = DEMO_DAY + timedelta(after)
        lines = kitchen.ask(day, ["tonight"], 80).count("\n")
        if lines > MOST_LINES_TONIGHT:
            yield f"tonight on {day} has {lines} lines"
    told = len(re.findall(r"^  \S", kitchen.ask(DEMO_DAY, ["balance"]), re.M))
    if not 1 <= told <= MOST_TOLD:
        yield f"balance tells {told} things by themselves"
    for columns in (60, 80, 120):
        for words, _ in QUESTIONS:
            for line in kitchen.ask(DEMO_DAY, words, columns).splitlines():
                if len(line) > columns and " " in line.strip():
                    yield f"{' '.join(words)} at {columns} columns: {len(line)} characters: {line}"


def outside(source):
    folder = Path(os.environ.get("SAMEBASE_OUTSIDE_DATA") or source.parent / "shared" / "data") / "kitchens"
    return sorted(folder.glob("*.json")) if folder.is_dir() else []


def main():
    program, source = sys.argv[1], Path(sys.argv[2])
    found = []
    with tempfile.TemporaryDirectory() as place:
        demo = Kitchen(program, Path(place) / "demo")
        subprocess.run([program, "--today", str(DEMO_DAY), "demo", demo.folder], check=True, capture_output=True)
        found += amounts(demo, [DEMO_DAY, DEMO_DAY + timedelta(4)], "demo")
        found += calm(demo)
        documents = outside(source)
        if not documents:
            print("no outside kitchens here: only the demo kitchen was read")
        for document in documents:
            other = Kitchen(program, Path(place) / document.stem)
            done = subprocess.run([program, "--kitchen", other.folder, "import", str(document)], capture_output=True, text=True,
                                  check=False)
            if done.returncode > 1:
                found.append(f"{document.name} cannot be imported: {done.stderr.strip()}")
                continue
            # The lines of its log were written when it was lived in.
            questions = [question for question in QUESTIONS if question[0] != ["log"]]
            found += amounts(other, [date(2026, 11, 28)], document.stem, questions)
    for fault in found:
        print(fault)
    print(f"{len(found)} faults" if found else "every amount is one that a hand can measure")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())

#!/usr/bin/python3
"""Runs every mend that `balance` prints, word for word, in a copy of the kitchen, and looks whether it did what it said.

    mends_test.py BINARY

The finding must be gone or smaller, what is spent, tossed and unmet together must be as was said, and a stand-in must be
planned with the amounts that were said. In the demo kitchen, and in kitchens/hill_house.json of the outside data: the folder
that SAMEBASE_OUTSIDE_DATA names, else ../shared/data beside the repository. Where that is absent it is said, and not looked at.
"""
import json
import os
import pathlib
import shlex
import shutil
import subprocess
import sys
import tempfile

BINARY = os.path.abspath(sys.argv[1])
REPOSITORY = pathlib.Path(__file__).resolve().parents[2]


def run(arguments, kitchen, today):
    environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE_KITCHEN")}
    return subprocess.run([BINARY, "--kitchen", kitchen, "--today", today, *arguments], env=environment,
                          stdin=subprocess.DEVNULL, text=True, capture_output=True)


def balance(kitchen, today):
    done = run(["--json", "balance"], kitchen, today)
    if done.returncode not in (0, 1):
        sys.exit(f"balance: {done.stdout}{done.stderr}")
    return json.loads(done.stdout)


def trouble(findings, like):
    """What the finding comes to among these: its price, or for want of room the litres."""
    about_a_meal = like["kind"] in ("short", "not-thawed")
    total = 0
    for f in findings:
        same = f["kind"] == like["kind"] and f["ingredient"] == like["ingredient"]
        same = same and (f["dish"] == like["dish"] if about_a_meal else f["lot"] == like["lot"] and f["place"] == like["place"])
        if same:
            total += f["over_millilitres"] or f["price"]["minor"] or 1
    return total


def planned_stand_in(kitchen, today, mend):
    """What the last plan row of the kitchen puts in place, as amounts in thousandths of grams, millilitres or pieces."""
    document = json.loads(run(["export"], kitchen, today).stdout)
    rows = [row for row in document["ledger"]["plan"] if row["adds"]]
    swaps = rows[-1].get("swaps", [])
    wanted = {use["ingredient"] for use in mend["use"]}
    for swap in swaps:
        if {use["of"] for use in swap["use"]} == wanted:
            return {use["of"]: use["amount"] for use in swap["use"]}
    return {}


def wrong_with(mend, finding, before, after, kitchen, today):
    list_of = []
    was, is_ = trouble(before["findings"], finding), trouble(after["findings"], finding)
    if is_ >= was:
        list_of.append(f"the finding comes to {is_}, and was {was}")
    for use in mend["use"]:
        amount = planned_stand_in(kitchen, today, mend).get(use["ingredient"], 0)
        said = use["amount"]["value"] * 1000
        if abs(amount - said) > 0.001 * said + 2:
            list_of.append(f"{use['ingredient']}: {said / 1000} was said, and {amount / 1000} is planned")
    return list_of


def look_at(name, kitchen, today):
    """Returns how many mends were run, and those that did not do what they said."""
    before = balance(kitchen, today)
    ran, wrong = 0, []
    for finding in before["findings"]:
        mend = finding["mend"]
        if mend is None:
            continue
        ran += 1
        copy = kitchen + "-copy"
        shutil.copytree(kitchen, copy)
        words = shlex.split(mend["command"])
        done = run(words[1:], copy, today)
        if done.returncode not in (0, 1):
            said = [done.stdout + done.stderr]
        else:
            said = wrong_with(mend, finding, before, balance(copy, today), copy, today)
        if said:
            wrong.append(f"{name}: {finding['label']}: {mend['text']}\n    " + "\n    ".join(said))
        shutil.rmtree(copy)
    return ran, wrong


def main():
    ran, wrong = {}, []
    outside = pathlib.Path(os.environ.get("SAMEBASE_OUTSIDE_DATA", REPOSITORY / ".." / "shared" / "data"))
    hill_house = outside / "kitchens" / "hill_house.json"
    with tempfile.TemporaryDirectory() as folder:
        kitchens = [("demo", ["demo"], "2026-11-25")]
        if hill_house.is_file():
            kitchens.append(("hill house", ["import", str(hill_house)], "2026-11-28"))
        else:
            print(f"skipped: there is no {hill_house}")
        for name, how, today in kitchens:
            kitchen = os.path.join(folder, name.replace(" ", "-"))
            done = run([*how, kitchen] if how[0] == "demo" else how, kitchen, today)
            if done.returncode != 0:
                sys.exit(f"{name}: {done.stdout}{done.stderr}")
            ran[name], bad = look_at(name, kitchen, today)
            wrong += bad
    print("\n".join(wrong))
    print(", ".join(f"{name}: {count} mends" for name, count in ran.items()) + f"; {len(wrong)} did not do what they said")
    if wrong or any(count < 5 for count in ran.values()):
        sys.exit(1)


main()

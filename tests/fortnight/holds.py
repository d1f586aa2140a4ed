"""What must hold after each day of a household that lives by the program, judged from its exported ledger and its data folder."""

import csv
import json
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "commands"))
from amounts_test import faults as amount_faults  # noqa: E402


def with_gluten(data):
    """The ingredients that have gluten, by the catalogue's own lists."""
    found = set()
    for path in sorted((Path(data) / "catalogue").glob("*.json")):
        for thing in json.loads(path.read_text(encoding="utf-8")).get("ingredients", []):
            if {"gluten", "wheat"} & set(thing.get("allergens", [])):
                found.add(thing["id"])
    return found


def ledger_identity(ledger, wrong):
    """A lot never goes below nothing, is what its entries add up to, and what leaves a place arrives in another."""
    amounts, moved = {}, {}
    things = {lot["number"]: lot["ingredient"] for lot in ledger["lots"]}
    for entry in ledger["entries"]:
        lot = entry["lot"]
        amounts[lot] = amounts.get(lot, 0) + (entry["delta"] or 0)
        if amounts[lot] < 0:
            wrong(f"lot {lot} goes below nothing on {entry['day']}")
        if isinstance(entry["after"].get("amount"), int) and entry["after"]["amount"] != amounts[lot]:
            wrong(f"lot {lot} is {entry['after']['amount']} after entry {entry['number']}, and its entries add up to {amounts[lot]}")
        if entry["column"] in ("moved-in", "moved-out"):
            key = entry["command"], things[lot]
            moved[key] = moved.get(key, 0) + entry["delta"]
    for (command, thing), left in moved.items():
        if left != 0:
            wrong(f"command {command} moves {thing}, and {left} of it is lost or made of nothing")
    return amounts


def stock_is_its_entries(amounts, table, wrong):
    """What the exported table of stock says is there is what the entries say."""
    said = {}
    for row in csv.DictReader(table.splitlines()):
        words = (row["amount"] + row["packs"]).replace(";", " ").split()
        said[int(row["lot"])] = sum(round(float(word) * 1000) for word in words if word[0].isdigit())
    for number in sorted(set(said) | {number for number, amount in amounts.items() if amount > 0}):
        if said.get(number) != amounts.get(number):
            wrong(f"the table of stock says {said.get(number)} of lot {number}, its entries {amounts.get(number)}")


def nothing_past_was_eaten(ledger, wrong):
    for entry in ledger["entries"]:
        ends = entry["after"].get("use_by")
        if entry["kind"] in ("eaten", "cooked") and entry["delta"] < 0 and ends and ends < entry["day"]:
            wrong(f"lot {entry['lot']} was eaten on {entry['day']}, past its use-by {ends}")


def plan_and_history_agree(plan, today, wrong):
    """What was had is no longer planned beside it, and nothing to come was had."""
    for day in plan["days"]:
        for meals in (day["dinners"], day["lunches"]):
            dishes = [meal["dish"] for meal in meals]
            if len(dishes) != len(set(dishes)):
                wrong(f"{day['day']}: a dish is listed twice: {dishes}")
            if day["day"] > today and any(meal["had"] for meal in meals):
                wrong(f"{day['day']}: had before its day")
        had = [meal["had"] for meal in day["dinners"]]
        if any(had) and not all(had):
            wrong(f"{day['day']}: a dinner is planned beside one that was had")


def free_of_gluten(recipe, who, gluten, wrong):
    """Whoever avoids gluten gets none in this recipe: each line that has it has another in its place in their serve."""
    if who not in recipe["eaters"]:
        return
    apart = [part for part in recipe["apart"] if who in part["for"]]
    theirs = [line for part in apart for line in part["lines"]]
    replaced = {line["in_place_of"] for line in theirs}
    for line in theirs:
        if line["ingredient"] in gluten:
            wrong(f"{recipe['label']}: {who}'s serve holds {line['label']}")
    for line in recipe["lines"]:
        if line["ingredient"] in gluten and not {line["ingredient"], line["in_place_of"]} & replaced:
            wrong(f"{recipe['label']}: {who} would eat {line['label']}")


def serve_apart_left_the_stock(ledger, recipe, wrong):
    """What the serve apart holds was taken from stock by the command that cooked it."""
    lots = {lot["number"]: lot["ingredient"] for lot in ledger["lots"]}
    last = ledger["commands"][-1]["number"]
    taken = {lots[e["lot"]] for e in ledger["entries"] if e["command"] == last and e["kind"] == "cooked" and e["delta"] < 0}
    for part in recipe["apart"]:
        for line in part["lines"]:
            if line["ingredient"] not in taken and line["ingredient"] in lots.values():
                wrong(f"{recipe['label']}: {line['label']} of the serve apart was not taken from stock")


def amounts_of_a_hand(read, wrong):
    """No text has an amount with a decimal below 1 kg or 1 L."""
    for asked, text in read:
        for found in amount_faults(text, "weighed"):
            wrong(f"{asked} says '{found}'")

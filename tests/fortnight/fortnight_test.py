"""A household of six lives for 28 days by the program's own commands, from an empty folder.

    python3 fortnight_test.py PROGRAM DATA_FOLDER

No document is edited by hand. It has a bulk trip and fortnightly ones, counts that disagree, late swaps, a guest day, two people away,
frozen food carried from the far freezer, and lunches every day. After each day: the ledger's identity, nothing eaten past its use-by,
nobody served what they must avoid, plan and history agree, every command that was printed that day can be typed back, and every amount
that was read is one that a hand can measure. At the end it prints how many commands a day it took besides trips and counts; it ends with
status 1 where anything does not hold.
"""

import datetime
import sys
import tempfile
from pathlib import Path

import holds
from house import House

START = datetime.date(2026, 12, 1)
DAYS = 28
MOST_A_DAY = 2.5
WEEK = datetime.timedelta(days=7)
SATURDAY = 5
AVOIDS = "Ana"
LEFTOVERS = "leftovers-night"

NEW = ["--name", "the ridge house",
       "--person", "Ana avoids gluten", "--person", "Ben dislikes seafood", "--person", "Cleo", "--person", "Dov", "--person", "Eva",
       "--place", "shed freezer: far-freezer 250 L", "--place", "kitchen freezer: near-freezer 80 L", "--place", "fridge: fridge 250 L",
       "--place", "crisper: crisper 30 L", "--place", "pantry: pantry 300 L", "--trip", "sat every 2 from 5 dec", "--trip", "1 dec bulk",
       "--night", "fri pizza", "--night", "sun roast", "--minutes", "60"]
HOUSE = ["household person Finn --eats 0.5", "household use 1500 mL milk", "household use 8 slices bread --days mon-fri",
         "household away Dov 8..10 dec", "household away Eva 9..11 dec", "household guests 19 dec 2"]
STOCK = ["got 6 x 500 g mince @ 5.50, 4 x 1 kg chicken thigh @ 11, 4 x 600 g beef sausages, 2 x 500 g gluten-free sausages "
         "--in shed freezer",
         "got 2 x 500 g mince, 1 kg frozen peas, 1 kg frozen mixed vegetables, 2 packs fish fingers --in kitchen freezer",
         "got 2 kg potatoes, 1 bag onions, 1 bag carrots, 6 L milk use by 9 dec, 24 eggs, 1 kg tasty cheese, 500 g butter, 2 heads broccoli, "
         "6 tomatoes, 1 lettuce, 1 bag apples, 4 bananas, 1 kg plain yoghurt use by 18 dec",
         "got 6 tins tomatoes, 4 tins tuna, 4 tins baked beans, 1 kg spaghetti, 1 kg penne, 2 packets gluten-free pasta, 2 kg white rice, "
         "4 loaves bread, 2 loaves gluten-free bread, 1 kg plain flour, 1 bottle soy sauce, 2 cartons chicken stock, 1 tub tomato paste"]
COUNTS = {9: "count -y fridge: 9 eggs, 1 L milk", 20: "count -y fridge: 9 eggs, 1 L milk", 16: "count -y pantry: 3 tins tuna, 500 g penne"}
ODD = {3: "else mince --take 1", 5: "carry 2026-12-06..2026-12-19 --done", 12: "swap tomorrow leftovers -y"}
# What is read besides, two a day in turn.
QUESTIONS = ["balance", "recipe", "stock", "week", "list", "log", "thaw", "else chicken", "plan", "lunches --days 2 --effort 1",
             "clear --effort 1", "household", "swap tomorrow nothing --dry-run", "else eggs --buy"]


def set_up(house):
    house.say(["new", house.folder, *NEW], fine=(0,), counts=False)
    for line in [*HOUSE, *STOCK]:
        house.say(line, fine=(0,), counts=False)


def plan_the_week(house, counts):
    until = (house.today + WEEK).isoformat()
    house.say(f"clear --until {until} --effort 10 --write -y", counts=counts)
    house.say("lunches --days 7 --effort 5 --write -y", counts=counts)


def shop(house):
    house.say("list --got", fine=(0, 2), counts=False)  # 2: nothing is on the list


def live(house, number, gluten):
    """One day; returns the recipe of the dinner that was cooked, if one was."""
    is_trip = number == 0 or (house.today.weekday() == SATURDAY and (house.today - datetime.date(2026, 12, 5)).days % 14 == 0)
    if number == 0 or house.today.weekday() == SATURDAY:
        plan_the_week(house, counts=not is_trip)
    if is_trip:
        shop(house)
    house.say("tonight --done" if is_trip or house.today.weekday() in (1, SATURDAY) else "thaw --done", fine=(0, 1, 2))
    if number in ODD:
        house.say(ODD[number])
    if number in COUNTS:
        house.say(COUNTS[number], counts=False)
    today = house.ask("week")["days"][0]
    if not today["dinners"]:
        house.say("else eggs --take 1 --buy", fine=(0, 2))
        today = house.ask("week")["days"][0]
    for lunch in today["lunches"]:
        if not lunch["ready_meal"]:
            holds.free_of_gluten(house.ask(f"recipe {lunch['dish']} --lunch"), AVOIDS, gluten, house.wrong)
    cooks = today["dinners"] and not today["dinners"][0]["ready_meal"] and today["dinners"][0]["dish"] != LEFTOVERS
    recipe = house.ask("recipe") if cooks else None
    house.say("cooked", fine=(0, 2))  # 2: nothing was planned
    if number % 7 == 6:
        house.say("tossed --past", fine=(0, 2))
    return recipe


def look(house, number):
    for question in (QUESTIONS[2 * number % len(QUESTIONS)], QUESTIONS[(2 * number + 1) % len(QUESTIONS)]):
        house.look(question)


def hold(house, recipe, gluten):
    ledger = house.exported()
    amounts = holds.ledger_identity(ledger, house.wrong)
    holds.stock_is_its_entries(amounts, house.run(["export", "--stock-csv"]).stdout, house.wrong)
    holds.nothing_past_was_eaten(ledger, house.wrong)
    holds.plan_and_history_agree(house.ask("plan 2026-12-01..2026-12-31 --show"), house.today.isoformat(), house.wrong)
    if recipe:
        holds.free_of_gluten(recipe, AVOIDS, gluten, house.wrong)
        if ledger["commands"][-1]["name"] == "cooked":
            holds.serve_apart_left_the_stock(ledger, recipe, house.wrong)
    house.look("check")
    holds.amounts_of_a_hand(house.read, house.wrong)
    house.try_printed()
    house.read.clear()


def main():
    program, data = (str(Path(path).resolve()) for path in sys.argv[1:3])
    gluten = holds.with_gluten(data)
    dinners = lunches = 0
    with tempfile.TemporaryDirectory(prefix="samebase-fortnight-") as folder:
        house = House(program, data, folder, START)
        set_up(house)
        for number in range(DAYS):
            house.today = START + datetime.timedelta(days=number)
            recipe = live(house, number, gluten)
            look(house, number)
            hold(house, recipe, gluten)
            today = house.ask("week")["days"][0]
            dinners += any(meal["had"] for meal in today["dinners"])
            lunches += any(meal["had"] for meal in today["lunches"])
            if house.failures:
                break
        a_day = house.typed / DAYS
        print(f"{dinners} dinners and {lunches} lunches had in {DAYS} days; {house.typed} commands, {a_day:.2f} a day besides trips and "
              f"counts; {house.tried} printed commands typed back")
        if not house.failures and a_day > MOST_A_DAY:
            house.failures.append(f"more than {MOST_A_DAY} commands a day")
        if not house.failures and (dinners < DAYS - 2 or house.tried < DAYS):
            house.failures.append("too few dinners, or too few commands were printed")
    for failure in house.failures:
        print(failure)
    sys.exit(1 if house.failures else 0)


main()

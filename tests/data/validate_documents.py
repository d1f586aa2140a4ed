"""Every shipped document against its JSON Schema, and every schema against documents that it must reject.

    python3 validate_documents.py DATA_FOLDER

Needs the module jsonschema. Prints one line for each failure and ends with status 1 where there is one.
"""

import copy
import json
import re
import sys
from pathlib import Path

from jsonschema import Draft202012Validator

SCHEMAS = ["families", "ingredients", "stand_ins", "bases", "dishes", "kitchen", "stock"]
failures = []


def fail(text):
    failures.append(text)
    print("FAILED:", text)


def shipped(data):
    """(schema, name, document) of every document that has a schema here, the examples of README.md included."""
    for path in sorted((data / "catalogue").glob("*.json")):
        yield ("families" if path.name == "families.json" else "ingredients"), path
    for folder in ("stand_ins", "bases", "dishes"):
        for path in sorted((data / folder).glob("*.json")):
            yield folder, path
    for name in ("kitchen", "stock"):
        if (data / "demo" / f"{name}.json").exists():
            yield name, data / "demo" / f"{name}.json"


def readme_examples(data):
    """The whole documents that README.md shows: indented blocks that start with {"samebase"."""
    text = (data / "README.md").read_text(encoding="utf-8")
    blocks = [re.sub("^    ", "", block, flags=re.M) for block in re.findall(r"(?:^    .*\n)+", text, flags=re.M)]
    for block in blocks:
        if block.startswith('{"samebase"'):
            document = json.loads(block)
            yield ("kitchen" if "places" in document else "stock"), document


def places(value, at=()):
    """The paths of all values in a document."""
    yield at
    children = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, child in children:
        yield from places(child, at + (key,))


def get(document, at):
    for key in at:
        document = document[key]
    return document


def changed(document, at, value):
    if not at:
        return value
    result = copy.deepcopy(document)
    get(result, at[:-1])[at[-1]] = value
    return result


def small(document):
    """The first entries of each list, which are enough to show what a schema rejects; all of a kitchen's."""
    if "samebase" in document:
        return document
    return {key: value[:3] for key, value in document.items()}


# Path in the first document of the schema's kind, and a value that must not stand there.
WRONG = {
    "families": [("families/0/id", "Red Meat"), ("families/0/id", "meat-"), ("families/0/siblings", 1),
                 ("families/0/keeps", {"fridge": "2 days"}), ("families/0/keeps", {"cellar": None}),
                 ("families/0/thaw", "quick"), ("families/0/cook_to", 75.5)],
    "ingredients": [("ingredients/0/kind", "fresh"), ("ingredients/0/counted_in", "kg"), ("ingredients/0/density", 0),
                    ("ingredients/0/allergens", ["nuts"]), ("ingredients/0/allergens", ["egg", "egg"]),
                    ("ingredients/0/season", "13-2"), ("ingredients/0/keeps", {"fridge": "2 days good-by"}),
                    ("ingredients/0/kind", "cooked"), ("ingredients/0/pack", {"amount": "500 g", "name": "tray"}),
                    ("ingredients/0/pack", {"amount": "-1 g", "name": "tray", "price": 1}), ("ingredients/0/name", "")],
    "stand_ins": [("stand_ins/0/role", "meal"), ("stand_ins/0/role", []), ("stand_ins/0/fit", 1),
                  ("stand_ins/0/use", []), ("stand_ins/0/use", [{"of": "salt", "ratio": 0}]),
                  ("stand_ins/0", {"for": "milk", "use": [{"of": "water", "ratio": 1}]})],
    "bases": [("bases/0/needs", []), ("bases/0/needs/0/role", "meat"), ("bases/0/needs/0/of", "Beef")],
    "dishes": [("dishes/0/meals", []), ("dishes/0/meals", ["supper"]), ("dishes/0/kinds", ["stirfry"]),
               ("dishes/0/serves", 0), ("dishes/0/serves", 2.5), ("dishes/0/ingredients", []),
               ("dishes/0/ingredients/0/role", "meat"), ("dishes/0/ingredients/0/scale", [0.5]),
               ("dishes/0/ingredients/0/scale", [2, 0.5]), ("dishes/0/ingredients/0/amount", "-750 g"),
               ("dishes/0/separate", [{"avoids": "nuts", "swap": []}]), ("dishes/0/method", [])],
    "kitchen": [("samebase", 2), ("currency", "dollars"), ("hemisphere", "east"), ("places/0/kind", "frige"),
                ("places/0/litres", -1), ("people/0/avoids", ["nuts"]), ("people/0/eats", 0),
                ("people/0", {"id": "kim", "name": "Kim"}), ("standing_nights/0/day", "friday"),
                ("standing_nights/0/kinds", ["tacos"]), ("shopping_days", ["Sat"]), ("minutes", {"mon": -1})],
    "stock": [("lots/0/lot", 0), ("lots/0/arrived", "24 November"), ("lots/0/arrived", "2026-13-01"),
              ("lots/0/state", "cold"), ("lots/0/packs", []), ("plan/0/meal", "tea"), ("plan/0/serves", 0),
              ("history/0/day", "2026-1-1")],
}


def same_definitions(data):
    """What two answers have in common is described alike: a change of one is a change of the other."""
    both = [json.loads((data / "schema" / f"answer-{name}.schema.json").read_text(encoding="utf-8"))["$defs"]
            for name in ("else", "why-not")]
    for name in sorted(set(both[0]) & set(both[1])):
        if both[0][name] != both[1][name]:
            fail(f"answer-else and answer-why-not describe '{name}' differently")
    if "alternative" not in both[0] or "alternative" not in both[1]:
        fail("answer-else and answer-why-not both describe an alternative")


def main(data):
    same_definitions(data)
    validators = {}
    for name in SCHEMAS:
        schema = json.loads((data / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
        Draft202012Validator.check_schema(schema)
        validators[name] = Draft202012Validator(schema)

    examples = {}
    for name, path in shipped(data):
        document = json.loads(path.read_text(encoding="utf-8"))
        examples.setdefault(name, document)
        for error in validators[name].iter_errors(document):
            fail(f"{path.relative_to(data)}, /{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")
        if name == "ingredients":
            for thing in document["ingredients"]:
                if "allergens" not in thing:
                    fail(f"{path.relative_to(data)}: the allergens of '{thing.get('id')}' are not said")
    count = len(examples)
    for name, document in readme_examples(data):
        examples[name] = document
        for error in validators[name].iter_errors(document):
            fail(f"README.md, the example of {name}, /{'/'.join(map(str, error.absolute_path))}: {error.message[:200]}")

    rejected = 0
    for name in SCHEMAS:
        if name not in examples:
            fail(f"no document to try the schema of {name} on")
            continue
        example = small(examples[name])
        wrong = [(path, changed(example, tuple(int(k) if k.isdigit() else k for k in path.split("/")), value))
                 for path, value in WRONG[name]]
        for at in places(example):
            value = get(example, at)
            shown = "/".join(map(str, at))
            wrong.append((f"{shown} of another type", changed(example, at, 7 if isinstance(value, (dict, list)) else {"odd": 1})))
            if isinstance(value, dict) and at[-1:] != ("pieces",):
                wrong.append((f"an unknown key in {shown}", changed(example, at, {**value, "oddity": 1})))
        for what, document in wrong:
            if validators[name].is_valid(document):
                fail(f"the schema of {name} takes what it should reject: {what}")
            rejected += 1
    print(f"{count} kinds of document, {rejected} wrong documents tried, {len(failures)} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))

"""What goes wrong around the program, and what must hold then: full disks, two writers, kills, hostile names, long plans.

    python3 edges_test.py PROGRAM DATA_FOLDER [NAME ...]

Each check has a fresh folder. Prints a line for each failure, and ends with status 1 where there is one.
"""

import csv
import datetime
import io
import json
import os
import random
import resource
import shutil
import signal
import sqlite3
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from jsonschema import Draft202012Validator

TODAY = "2026-11-25"
# Of processor time: what a cook waits for at most, with room for a slow machine.
PATIENCE = 30


class Failed(Exception):
    pass


def need(condition, text):
    if not condition:
        raise Failed(text)


class World:
    def __init__(self, program, data, folder):
        self.program, self.data, self.folder = program, data, folder
        self.kitchen = folder / "kitchen"

    def env(self):
        kept = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        return dict(kept, SAMEBASE_DATA=str(self.data), LC_ALL="C.UTF-8", TZ="UTC")

    def command(self, *words, kitchen=None, today=TODAY):
        return [self.program, "--kitchen", str(kitchen or self.kitchen), "--today", today, *words]

    def run(self, *words, kitchen=None, today=TODAY, status=0, **more):
        done = subprocess.run(self.command(*words, kitchen=kitchen, today=today), env=self.env(), cwd=self.folder,
                              stdin=subprocess.DEVNULL, capture_output=True, check=False, **more)
        if status is not None:
            need(done.returncode in (status if isinstance(status, tuple) else (status,)),
                 f"{' '.join(map(str, words))}: status {done.returncode}, not {status}: {done.stderr.decode(errors='replace')[:600]}")
        return done

    def demo(self):
        self.run("demo", str(self.kitchen))

    def schema(self, name, document):
        schema = json.loads((self.data / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
        for error in Draft202012Validator(schema).iter_errors(document):
            raise Failed(f"{name}, /{'/'.join(map(str, error.absolute_path))}: {error.message[:300]}")

    def exported(self, kitchen=None):
        return json.loads(self.run("export", kitchen=kitchen).stdout)


def output_that_cannot_be_written(world):
    """A backup by redirection on a full disk is not lost without a word."""
    world.demo()
    commands = [["export"], ["export", "--stock-csv"], ["stock"], ["tonight"], ["log"], ["check"], ["thaw"], ["--help"],
                ["--json", "stock"], ["swap", "fri", "rissoles", "--dry-run"], ["--json", "moo"]]
    for words in commands:
        with open("/dev/full", "wb") as full:
            done = subprocess.run(world.command(*words), env=world.env(), stdin=subprocess.DEVNULL, stdout=full,
                                  stderr=subprocess.PIPE, check=False)
        need(done.returncode == 4, f"{' '.join(words)} > /dev/full: status {done.returncode}")
        need(b"standard output: " in done.stderr, f"{' '.join(words)} > /dev/full says {done.stderr!r}")


def stock_table_after_a_lot_is_used_up(world):
    """What export --stock-csv writes can be read, in any order of rows."""
    world.demo()
    lots = world.exported()["ledger"]["lots"]
    world.run("ate", "lot", str(lots[40]["number"]))
    table = world.run("export", "--stock-csv").stdout.decode()
    rows = list(csv.reader(io.StringIO(table)))
    random.Random(4).shuffle(body := rows[1:])
    for name, lines in (("as written", rows[1:]), ("in another order", body)):
        text = io.StringIO()
        csv.writer(text).writerows([rows[0], *lines])
        (world.folder / "s.csv").write_text(text.getvalue(), encoding="utf-8", newline="")
        second = world.folder / name.replace(" ", "-")
        second.mkdir()
        shutil.copy2(world.kitchen / "kitchen.json", second)
        world.run("import", "--stock-csv", str(world.folder / "s.csv"), kitchen=second)
        again = list(csv.reader(io.StringIO(world.run("export", "--stock-csv", kitchen=second).stdout.decode())))
        need([r[1:] for r in again] == [r[1:] for r in rows], f"the table {name} does not come back")


def formulas_in_the_stock_table(world):
    """No cell of the table is a formula for a spreadsheet, and all read back equal."""
    world.demo()
    notes = ["=cmd|'/C calc'!A0", "+1", "-2+3", "@SUM(1)", "'tis mine", "'=1", "plain"]
    for note in notes:
        world.run("got", "1", "kg", "carrot", f"--note={note}")
    table = world.run("export", "--stock-csv").stdout.decode()
    for row in csv.reader(io.StringIO(table)):
        for cell in row:
            need(cell[:1] not in ("=", "+", "-", "@", "\t", "\r"), f"a spreadsheet computes {cell!r}")
    (world.folder / "s.csv").write_text(table, encoding="utf-8", newline="")
    second = world.folder / "second"
    second.mkdir()
    shutil.copy2(world.kitchen / "kitchen.json", second)
    world.run("import", "--stock-csv", str(world.folder / "s.csv"), kitchen=second)
    # What the ledger says, without the table's own marks.
    entries = world.exported(second)["ledger"]["entries"]
    found = [e["after"]["note"] for e in entries if e["after"].get("note")]
    need([n for n in found if n in notes] == notes, f"the notes come back as {found}")


def recipe(number):
    return {"@context": "https://schema.org", "@type": "Recipe", "name": f"Potato supper number {number}",
            "recipeYield": "4 serves", "totalTime": "PT30M", "recipeIngredient": ["1 kg potatoes", "200 g butter"],
            "recipeInstructions": ["Boil the potatoes until soft.", "Mash with the butter."]}


def recipes_taken_in_at_once(world):
    """Imports that run at the same time lose nothing."""
    world.demo()
    runs = []
    for number in range(8):
        path = world.folder / f"r{number}.json"
        path.write_text(json.dumps(recipe(number)), encoding="utf-8")
        runs.append(subprocess.Popen(world.command("import", "recipe", str(path), "--kind", "bake", "--yes"), env=world.env(),
                                     stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE))
    for run in runs:
        _, err = run.communicate()
        need(run.returncode == 0, f"status {run.returncode}: {err.decode()[:400]}")
    dishes = json.loads((world.kitchen / "dishes" / "imported.json").read_text(encoding="utf-8"))["dishes"]
    need(len(dishes) == 8, f"{len(dishes)} of 8 recipes are there")
    need(sorted(p.name for p in (world.kitchen / "dishes").iterdir()) == ["imported.json"], "files are left over")


def imports_that_are_killed(world):
    """A killed import leaves no kitchen or the whole one, and can be said again."""
    world.demo()
    (world.kitchen / "dishes").mkdir()
    (world.kitchen / "dishes" / "ours.json").write_text('{"dishes": []}\n', encoding="utf-8")
    document = world.folder / "whole.json"
    world.run("export", str(document))
    whole = world.run("export").stdout
    started = time.monotonic()
    world.run("import", str(document), kitchen=world.folder / "first")
    takes = time.monotonic() - started
    killed = 0
    for i in range(24):
        target = world.folder / f"target{i}"
        process = subprocess.Popen(world.command("import", str(document), kitchen=target), env=world.env(),
                                   stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(takes * (0.2 + i / 24))
        process.send_signal(signal.SIGKILL)
        process.wait()
        killed += process.returncode != 0
        if not (target / "kitchen.json").exists():
            world.run("stock", kitchen=target, status=3)
            world.run("import", str(document), kitchen=target)
        need(world.run("export", kitchen=target).stdout == whole, f"another kitchen after a kill ({i})")
        names = sorted(p.name for p in target.iterdir() if not p.name.endswith(("-wal", "-shm")))
        if process.returncode == 0:
            need(names == ["dishes", "kitchen.db", "kitchen.json"], f"left over: {names}")
    need(killed > 0, "no import was killed")
    # As a kill between the moves into place leaves it.
    target = world.folder / "between"
    (target / ".being-imported").mkdir(parents=True)
    shutil.copy2(world.folder / "first" / "kitchen.db", target)
    world.run("stock", kitchen=target, status=3)
    world.run("import", str(document), kitchen=target)
    need(world.run("export", kitchen=target).stdout == whole, "another kitchen than was exported")
    need(not (target / ".being-imported").exists(), "the half import is still there")
    # A database that nobody imported is nobody's to replace.
    kept = world.folder / "kept"
    kept.mkdir()
    shutil.copy2(world.folder / "first" / "kitchen.db", kept)
    world.run("import", str(document), kitchen=kept, status=2)


def writers_that_were_killed(world):
    """What a killed writer has left beside a file goes with the next one."""
    world.demo()
    (world.kitchen / "dishes").mkdir()
    ended = subprocess.Popen(["true"])
    ended.wait()
    left = world.kitchen / "dishes" / f"imported.json.new-{ended.pid}"
    mine = world.kitchen / "dishes" / f"imported.json.new-{os.getpid()}"
    left.write_text("half", encoding="utf-8")
    mine.write_text("of a writer that is still there", encoding="utf-8")
    path = world.folder / "r.json"
    path.write_text(json.dumps(recipe(1)), encoding="utf-8")
    world.run("import", "recipe", str(path), "--kind", "bake", "--yes")
    need(not left.exists(), "the file of a killed writer is still there")
    need(mine.exists(), "the file of a writer that is still there is gone")


def people(kitchen):
    """Who is in kitchen.json, which has to be a whole document."""
    return [p["name"] for p in json.loads((kitchen / "kitchen.json").read_text(encoding="utf-8"))["people"]]


def household_changes_at_once(world):
    """Changes of the household at the same time lose nothing."""
    world.demo()
    before = people(world.kitchen)
    names = [f"Guest{i}" for i in range(8)]
    runs = [subprocess.Popen(world.command("household", "person", name, "--eats", "0.5"), env=world.env(),
                             stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE) for name in names]
    for run in runs:
        _, err = run.communicate()
        need(run.returncode == 0, f"status {run.returncode}: {err.decode()[:400]}")
    need(sorted(people(world.kitchen)) == sorted(before + names), f"those who eat here: {people(world.kitchen)}")
    for name in reversed(names):
        world.run("undo")
    need(sorted(people(world.kitchen)) == sorted(before), "undo does not take back what was changed at once")


def household_changes_that_are_killed(world):
    """A killed change of the household leaves the old document or the new one, with its row in the ledger or without."""
    world.demo()
    started = time.monotonic()
    world.run("household", "person", "First", "--eats", "0.5")
    takes = time.monotonic() - started
    killed = 0
    for i in range(12):
        before, name = people(world.kitchen), f"Guest{i}"
        process = subprocess.Popen(world.command("household", "person", name, "--eats", "0.5"), env=world.env(),
                                   stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(takes * (0.3 + i / 15))
        process.send_signal(signal.SIGKILL)
        process.wait()
        killed += process.returncode != 0
        # The next command sees one or the other, in the document and in the ledger.
        household = world.run("household").stdout.decode()
        after = people(world.kitchen)
        need(after in (before, [*before, name]), f"after a kill those who eat here: {after}")
        need((name + ":" in household) == (name in after), "the household that is shown is another than the document's")
        world.run("check", status=(0, 1))
        logged = name in world.run("log").stdout.decode()
        need(logged == (name in after), f"{name} is {'' if logged else 'not '}in the log, and the document says otherwise")
        if logged:
            world.run("undo")
            need(people(world.kitchen) == before, "undo of what was killed does not bring the old document back")
    need(killed > 0, "no command was killed")
    world.run("household", "minutes", "mon", "50")
    left = [p.name for p in world.kitchen.iterdir() if ".new-" in p.name]
    need(left == [], f"left over: {left}")


def edit(world, script):
    """`household edit` with an editor that runs these lines; $1 is the document."""
    editor = world.folder / "editor"
    editor.write_text(script, encoding="utf-8")
    return subprocess.Popen(world.command("household", "edit"), env=dict(world.env(), VISUAL=f"sh '{editor}'"),
                            stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE)


def edits_of_the_household(world):
    """What others change while the document is in an editor stays; an edit that is killed changes nothing or all."""
    world.demo()
    before = people(world.kitchen)
    open_flag, go = world.folder / "open", world.folder / "go"
    script = f"""touch '{open_flag}'; while ! test -e '{go}'; do sleep 0.01; done; sed -i 's/"name": "Bram"/"name": "Bramwell"/' "$1"\n"""
    process = edit(world, script)
    while not open_flag.exists() and process.poll() is None:
        time.sleep(0.01)
    world.run("household", "person", "Pim", "--eats", "0.5")
    go.touch()
    out, err = process.communicate()
    need(process.returncode == 0, f"status {process.returncode}: {out.decode()}{err.decode()}")
    edited = [name.replace("Bram", "Bramwell") for name in before]
    need(people(world.kitchen) == [*edited, "Pim"], f"after two changes: {people(world.kitchen)}")
    # Killed while the editor is open, and at any time after it.
    killed = 0
    for i in range(6):
        was = people(world.kitchen)
        open_flag.unlink(missing_ok=True)
        process = edit(world, f"""sed -i 's/"name": "Pim/"name": "Pim{i}/' "$1"; touch '{open_flag}'\n""")
        while not open_flag.exists() and process.poll() is None:
            time.sleep(0.002)
        time.sleep(0.02 * i)
        process.send_signal(signal.SIGKILL)
        process.communicate()
        killed += process.returncode != 0
        now = people(world.kitchen)
        need(now in (was, [name.replace("Pim", f"Pim{i}") for name in was]), f"after a kill: {now}")
        world.run("check", status=(0, 1))
    need(killed > 0, "no edit was killed")


HOSTILE = "a\x1b[2J\x1b]0;t\x07\u202eb\u009bc\x7f"


def fine_for_a_terminal(text, where):
    for c in text.decode("utf-8"):
        code = ord(c)
        need(c == "\n" or not (code < 32 or 127 <= code < 160 or 0x202A <= code <= 0x202E or 0x2066 <= code <= 0x2069),
             f"{where} prints {c!r}")


def control_characters(world):
    """Nothing that others may have written moves the cursor or turns a line around."""
    world.demo()
    path = world.kitchen / "kitchen.json"
    document = json.loads(path.read_text(encoding="utf-8"))
    document["name"] = HOSTILE + " house"
    for place in document["places"]:
        place["name"] = f"{place['name']} {HOSTILE}"
    for person in document["people"]:
        person["name"] = f"{person['name']} {HOSTILE}"
    path.write_text(json.dumps(document), encoding="utf-8")
    whole = world.exported()
    for row in whole["ledger"]["commands"]:
        row["line"] += HOSTILE
    (world.folder / "whole.json").write_text(json.dumps(whole), encoding="utf-8")
    other = world.folder / "other"
    fine_for_a_terminal(world.run("import", str(world.folder / "whole.json"), kitchen=other).stdout, "import")
    for words in (["log"], ["stock"], ["tonight"], ["check"], ["swap", "fri", "rissoles", "--dry-run"], ["lunches"], ["balance"],
                  ["got", "1", HOSTILE], ["else", HOSTILE], ["swap", HOSTILE, HOSTILE], ["got", "1", "kg", "carrot", "--in", HOSTILE],
                  ["import", HOSTILE], ["import", "recipe", HOSTILE, "--yes"], ["backup", HOSTILE + "/x"], [HOSTILE],
                  ["stock", "--" + HOSTILE], ["balance", HOSTILE]):
        done = world.run(*words, kitchen=other, status=None)
        fine_for_a_terminal(done.stdout + done.stderr, " ".join(words))
    (other / "dishes").mkdir()
    (other / "dishes" / f"{HOSTILE.replace('/', '')}.json").write_text("{", encoding="utf-8")
    done = world.run("stock", kitchen=other, status=3)
    fine_for_a_terminal(done.stdout + done.stderr, "the name of a document")


def text_that_is_no_text(world):
    """An overlong form is no UTF-8."""
    world.demo()
    for note in (b"\xe0\x80\xaf", b"\xed\xa0\x80", b"\xc0\xaf", b"\xf4\x90\x80\x80"):
        done = subprocess.run([*map(os.fsencode, world.command("got", "1", "kg", "carrot", "--note")), note],
                              env=world.env(), stdin=subprocess.DEVNULL, capture_output=True, check=False)
        need(done.returncode == 2 and b"is not plain text" in done.stderr, f"{note!r}: {done.returncode} {done.stderr!r}")
    table = world.folder / "latin.csv"
    for text, line in ((b"ingredient,place,amount,note\npotato,pantry,1 kg,caf\xe9\n", 2), (b"ingredient,pl\xe4ce\n", 1)):
        table.write_bytes(text)
        world.kitchen.joinpath("kitchen.db").unlink(missing_ok=True)
        err = world.run("import", "--stock-csv", str(table), status=2).stderr.decode()
        need(f"line {line}: a letter that is no UTF-8" in err, err)


def documents_too_large(world):
    """A document over 64 MiB is refused before it is parsed."""
    world.demo()
    path = world.folder / "large.json"
    with open(path, "wb") as file:
        file.truncate(65 * 1024 * 1024 + 1)
    for words in (["import", str(path)], ["import", "recipe", str(path), "--kind", "bake", "--yes"]):
        done = world.run(*words, kitchen=world.folder / "new" if len(words) == 2 else None, status=2)
        need(b"65 MiB; expected a document of at most 64 MiB" in done.stderr, done.stderr.decode())


def databases_that_are_none(world):
    """A FIFO does not hang, and a file of another version than it says is told plainly."""
    world.demo()
    database = world.kitchen / "kitchen.db"
    kept = database.read_bytes()
    database.unlink()
    os.mkfifo(database)
    for words in (["stock"], ["got", "1", "kg", "carrot"]):
        need(b"is no plain file" in world.run(*words, status=4, timeout=60).stderr, "a FIFO is not told")
    database.unlink()
    database.write_bytes(kept)
    connection = sqlite3.connect(database)
    connection.execute("PRAGMA user_version = 1")
    connection.commit()
    connection.close()
    for words in (["stock"], ["got", "1", "kg", "carrot"]):
        err = world.run(*words, status=4).stderr.decode()
        need("is damaged: it is not of the version that its layout says" in err, err)


def full_disk(world):
    """With no byte free, reading says that the disk is full. Needs a file system of its own: the superuser."""
    mount = world.folder / "full"
    mount.mkdir()
    if os.geteuid() != 0 or subprocess.run(["mount", "-t", "tmpfs", "-o", "size=2m", "tmpfs", mount], check=False,
                                           capture_output=True).returncode != 0:
        print("full_disk: no file system of its own can be made here; nothing of it is checked")
        return
    try:
        kitchen = mount / "kitchen"
        world.run("demo", str(kitchen))
        filler = os.open(mount / "filler", os.O_WRONLY | os.O_CREAT)
        try:
            while True:
                os.write(filler, b"x" * 4096)
        except OSError:
            os.close(filler)
        done = world.run("stock", kitchen=kitchen, status=None)
        if done.returncode != 0:
            need(b"the disk is full" in done.stderr, f"{done.returncode}: {done.stderr.decode()}")
        done = world.run("got", "1", "kg", "carrot", kitchen=kitchen, status=4)
        need(b"the disk is full" in done.stderr, done.stderr.decode())
    finally:
        subprocess.run(["umount", mount], check=False)


def days_before_the_newest_entry(world):
    """A wrong clock is told in one line, and the answer stays what it is."""
    world.demo()
    for words in (["stock"], ["log"], ["--json", "stock"], ["got", "1", "kg", "carrot"]):
        done = world.run(*words, today="2026-11-20", status=(0, 1))
        need(done.stderr == b"samebase: today is 2026-11-20, but the newest entry is of 2026-11-25: look at the clock, or at "
                            b"--today\n", f"{words}: {done.stderr!r}")
    need(world.run("stock", status=(0, 1)).stderr == b"", "told on a day that is fine")


def no_serves(world):
    """Nobody cooks nothing: that is what is said, and not that nobody is home."""
    world.demo()
    err = world.run("cooked", "rissoles", "--serves", "0", status=2).stderr.decode()
    need("'0'; expected a number of serves above 0" in err, err)


def answers_follow_their_schemas(world):
    """--json of else --why-not for whatever is an alternative, and of export FILE."""
    world.demo()
    answer = json.loads(world.run("--json", "else", "beef mince").stdout)
    need(len(answer["alternatives"]) > 1, "no alternatives")
    for alternative in answer["alternatives"][:4]:
        world.schema("answer-why-not", json.loads(
            world.run("--json", "else", "beef mince", "--why-not", alternative["dish"]).stdout))
    world.schema("answer-export", json.loads(world.run("--json", "export", str(world.folder / "x.json")).stdout))


def nothing_else_on_standard_output(world):
    """What --json prints is one document, whatever a library has to say."""
    world.demo()
    for words in (["lunches"], ["lunches", "--days", "14"], ["clear"], ["balance", "december"], ["carry", "december"]):
        done = world.run("--json", *words, status=(0, 1))
        json.loads(done.stdout)
        need(done.stderr == b"", f"{' '.join(words)}: {done.stderr!r}")


def plans_of_a_year(world):
    """With every dinner of a year planned, a day two months off is planned in a moment."""
    world.demo()
    whole = world.exported()
    plan = whole["ledger"]["plan"]
    dishes = sorted({row["dish"] for row in plan if row["meal"] == "dinner"})
    there = {row["day"] for row in plan if row["meal"] == "dinner"}
    command = plan[-1]["command"]
    for i in range(366):
        day = (datetime.date.fromisoformat(TODAY) + datetime.timedelta(days=i)).isoformat()
        if day not in there:
            plan.append({"number": len(plan) + 1, "command": command, "adds": True, "day": day, "meal": "dinner",
                         "dish": dishes[i % len(dishes)]})
    (world.folder / "year.json").write_text(json.dumps(whole), encoding="utf-8")
    year = world.folder / "year"
    world.run("import", str(world.folder / "year.json"), kitchen=year)
    for words in (["swap", "2027-01-28", "rissoles", "--dry-run"], ["swap", "2027-01-28", "fish cakes"], ["balance", "2027-01"],
                  ["tonight"], ["else", "beef mince"]):
        before = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime
        done = world.run(*words, kitchen=year, status=None)
        took = resource.getrusage(resource.RUSAGE_CHILDREN).ru_utime - before
        need(done.returncode in (0, 1, 2), f"{' '.join(words)}: {done.stderr.decode()[:300]}")
        need(took < PATIENCE, f"{' '.join(words)} takes {took:.1f} s")


CHECKS = [output_that_cannot_be_written, stock_table_after_a_lot_is_used_up, formulas_in_the_stock_table, recipes_taken_in_at_once,
          imports_that_are_killed, household_changes_at_once, household_changes_that_are_killed, edits_of_the_household, writers_that_were_killed, control_characters, text_that_is_no_text, documents_too_large,
          databases_that_are_none, full_disk, days_before_the_newest_entry, no_serves, answers_follow_their_schemas,
          nothing_else_on_standard_output, plans_of_a_year]


def main(program, data, *names):
    program, data = str(Path(program).resolve()), Path(data).resolve()
    failed = ran = 0
    for check in CHECKS:
        if names and check.__name__ not in names:
            continue
        ran += 1
        folder = Path(tempfile.mkdtemp(prefix="samebase-edges-"))
        try:
            check(World(program, data, folder))
        except (Failed, ValueError, OSError, KeyError, subprocess.TimeoutExpired) as error:
            failed += 1
            print(f"{check.__name__}: {error}", flush=True)
        finally:
            shutil.rmtree(folder, ignore_errors=True)
    print(f"{ran} checks, {failed} failures")
    return 1 if failed or not ran else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

"""`samebase new` as a cook meets it on a terminal: what it asks, what it makes of the answers, and that it always ends.

    terminal_test.py PROGRAM DATA_FOLDER

The program runs behind a pseudo terminal. Nothing is typed before its question is there, and nothing is waited for longer than
PATIENCE: a session that hangs is a failure, and is ended.
"""

import os
import pty
import select
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PATIENCE = 20  # seconds
TODAY = "2026-11-25"


class Hung(Exception):
    pass


class Session:
    def __init__(self, program, data, folder, words):
        environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        environment.update(SAMEBASE_DATA=data, LC_ALL="C.UTF-8", TZ="UTC", TERM="dumb")
        self.text, self.seen, self.status = "", 0, None
        self.pid, self.terminal = pty.fork()
        if self.pid == 0:
            os.chdir(folder)
            os.execve(program, [program, "--today", TODAY, *words], environment)

    def more(self, until):
        """Reads what comes before that time; False at the end."""
        ready, _, _ = select.select([self.terminal], [], [], max(0.0, until - time.monotonic()))
        if not ready:
            raise Hung(f"nothing came after:\n{self.text[-600:]}")
        try:
            data = os.read(self.terminal, 4096)
        except OSError:  # the other side is closed
            return False
        self.text += data.decode("utf-8", "replace").replace("\r\n", "\n")
        return bool(data)

    def wait_for(self, question):
        until = time.monotonic() + PATIENCE
        while (at := self.text.find(question, self.seen)) < 0:
            if not self.more(until):
                raise Hung(f"it ended before it asked '{question}':\n{self.text[-600:]}")
        self.seen = at + len(question)

    def answer(self, question, line):
        self.wait_for(question)
        os.write(self.terminal, (line + "\n").encode())

    def press(self, key):
        os.write(self.terminal, key)

    def end(self):
        """What was printed, once the program has ended by itself."""
        until = time.monotonic() + PATIENCE
        try:
            while self.more(until):
                pass
            while self.status is None:
                pid, status = os.waitpid(self.pid, os.WNOHANG)
                self.status = os.waitstatus_to_exitcode(status) if pid else None
                if self.status is None and time.monotonic() > until:
                    raise Hung("it closed the terminal and did not end")
        finally:
            if self.status is None:
                os.kill(self.pid, signal.SIGKILL)
                os.waitpid(self.pid, 0)
            os.close(self.terminal)
        return self.text


def need(condition, text):
    if not condition:
        raise AssertionError(text)


def run(program, data, folder, *words):
    environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
    environment.update(SAMEBASE_DATA=data, LC_ALL="C.UTF-8", TZ="UTC")
    return subprocess.run([program, "--today", TODAY, *words], cwd=folder, env=environment, stdin=subprocess.DEVNULL, text=True,
                          capture_output=True, check=False, timeout=PATIENCE)


def a_whole_household(program, data, folder):
    """People and what they avoid, places, trips, fixed nights and minutes, with a mistake on the way that is asked again."""
    session = Session(program, data, folder, ["new", "home"])
    for question, line in [
            ("What is this kitchen called?", "The hill house"),
            ("First:", "Ana avoids glooten"), ("'gluten'", ""), ("First:", "Ana avoids gluten"), ("Next", "Ben dislikes mushrooms"),
            ("Next", "Kim eats 0.5"), ("Next", ""),
            ("A freezer in the kitchen", "kitchen freezer 80 L"), ("Another", ""),
            ("A freezer further off", "shed freezer 250 L"), ("Another", ""),
            ("Where else is food kept", ""),
            ("Shopping [sat]:", "sat every 2 from 5 dec"), ("Also", "1 dec bulk"), ("Also", ""),
            ("A night that is always the same", "fri pizza"), ("Another", "tue mince soup"), ("Another", ""),
            ("How many minutes may dinner take", "45"), ("Other days", "sat-sun 90"), ("Other days", "")]:
        if line or question not in ("'gluten'",):
            session.answer(question, line)
        else:
            session.wait_for(question)
    text = session.end()
    need(session.status == 0, f"status {session.status}: {text}")
    need("3 people, 5 places" in text, text)
    said = run(program, data, folder, "--kitchen", "home", "household").stdout
    for words in ("Ana: avoids gluten", "Ben: dislikes mushrooms", "Kim: eats 1/2 of a serve", "kitchen freezer (near freezer, 80 L)",
                  "shed freezer (far freezer, 250 L)", "crisper", "every 2 weeks", "bulk", "Fri pizza", "Tue mince and soup in turn",
                  "Mon-Fri 45, Sat-Sun 90"):
        need(words in said, f"household lacks '{words}':\n{said}")


def several_in_one_answer(program, data, folder):
    """Who lists several things with commas is understood, and not asked for each again: a session that waited for that hung."""
    session = Session(program, data, folder, ["new", "listed"])
    for question, line in [
            ("called?", "Ours"), ("First:", "Ann, Ben avoids gluten, Kim"), ("Next", ""),
            ("A freezer in the kitchen", "small freezer 40 L, drawer freezer 60 L"), ("Another", ""),
            ("A freezer further off", ""), ("Where else", "fridge, pantry 300 L"),
            ("Shopping [sat]:", "sat, 5 dec bulk"), ("Also", ""), ("A night", "fri pizza, sun roast"), ("Another", ""),
            ("How many minutes", "mon-fri 40, sat-sun 90"), ("Other days", "")]:
        session.answer(question, line)
    text = session.end()
    need(session.status == 0 and "3 people, 4 places" in text, f"status {session.status}: {text}")
    said = run(program, data, folder, "--kitchen", "listed", "household").stdout
    for words in ("Ben: avoids gluten", "every Sat", "bulk", "Fri pizza", "Sun roast", "Mon-Fri 40, Sat-Sun 90"):
        need(words in said, f"household lacks '{words}':\n{said}")


def return_alone(program, data, folder):
    """Whoever only presses return has a kitchen that works."""
    session = Session(program, data, folder, ["new", "plain"])
    for question in ("called?", "First:", "A freezer in the kitchen", "Another", "A freezer further off", "Where else", "Shopping", "Also",
                     "A night", "How many minutes", "Other days"):
        session.answer(question, "")
    text = session.end()
    need(session.status == 0, f"status {session.status}: {text}")
    done = run(program, data, folder, "--kitchen", "plain", "got", "2 L milk")
    need(done.returncode == 0, done.stderr)


def what_is_said_is_not_asked(program, data, folder):
    session = Session(program, data, folder, ["new", "said", "--name", "Ours", "--people", "Ann", "--place", "fridge", "--trip", "sat",
                                              "--night", "fri pizza", "--minutes", "45"])
    text = session.end()
    need(session.status == 0 and "?" not in text, f"status {session.status}: {text}")


def end_of_file(program, data, folder):
    """The end of what is typed ends the questions: nothing is asked for ever, even where the last answer was no good."""
    for name, lines in (("at-once", []), ("after-a-mistake", ["Ours", "Ana avoids glooten"])):
        session = Session(program, data, folder, ["new", name])
        session.wait_for("called?")
        for line in lines:
            session.press((line + "\n").encode())
        session.press(b"\x04")
        text = session.end()
        need(session.status in (0, 2), f"status {session.status}: {text}")
        need(text.count("First:") <= 2, f"it asks again and again: {text[-400:]}")


def interrupted(program, data, folder):
    """Control and C in the middle of the questions leaves no kitchen."""
    session = Session(program, data, folder, ["new", "broken-off"])
    session.answer("called?", "Ours")
    session.wait_for("First:")
    session.press(b"\x03")
    session.end()
    need(session.status != 0, "an interrupted session ends as if all was well")
    need(not (Path(folder) / "broken-off" / "kitchen.json").exists(), "an interrupted session has made a kitchen")


def main():
    program, data = (str(Path(path).resolve()) for path in sys.argv[1:3])
    checks = [a_whole_household, several_in_one_answer, return_alone, what_is_said_is_not_asked, end_of_file, interrupted]
    failed = 0
    with tempfile.TemporaryDirectory(prefix="samebase-terminal-") as folder:
        for check in checks:
            try:
                check(program, data, folder)
            except (AssertionError, Hung) as error:
                failed += 1
                print(f"{check.__name__}: {type(error).__name__}: {error}")
    print(f"{len(checks)} sessions, {failed} failed")
    sys.exit(1 if failed else 0)


main()

"""A household that types commands into the program: what it typed, what it read, and a copy to try printed commands in."""

import json
import os
import re
import shlex
import shutil
import subprocess
from pathlib import Path

# What ends a printed command: the bracket or the quote that it stands in, a full stop, a semicolon, a gap, the end of the line.
PRINTED = re.compile(r"""(?P<before>['(]?)samebase (?P<words>(?:"[^"]*"|\\'|(?!  )[^"\n.;]|\.(?=\S))*)""")

ASKED_ANYWAY = ("balance", "tonight", "stock", "clear", "thaw", "thaw --all")
PLACEHOLDER = re.compile(r"\b[A-Z]{3,}\b")  # "swap DAY DISH" is no command


def printed_commands(text):
    """The commands that a text tells its reader to type, as they would be typed into a shell."""
    for match in PRINTED.finditer(text):
        words = match.group("words")
        if match.group("before") == "'":
            words = words.split("'")[0]
        words = words.split(")")[0] if words.count(")") > words.count("(") else words
        if not PLACEHOLDER.search(words):
            yield words.strip().rstrip(":,")


class House:
    def __init__(self, program, data, folder, today):
        self.program, self.data = program, data
        self.folder, self.copy = str(Path(folder) / "house"), str(Path(folder) / "copy")
        os.mkdir(self.folder)
        self.environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}
        self.environment.update(SAMEBASE_DATA=data, LC_ALL="C.UTF-8", TZ="UTC", COLUMNS="1000")
        self.today = today
        self.typed = 0
        self.tried = 0
        self.failures = []
        self.read = []  # the texts of the day, with what was typed for them

    def wrong(self, text):
        self.failures.append(f"{self.today}: {text}")

    def run(self, words, kitchen=None):
        return subprocess.run([self.program, "--kitchen", kitchen or self.folder, "--today", self.today.isoformat(), *words],
                              env=self.environment, cwd=self.folder, stdin=subprocess.DEVNULL, capture_output=True, text=True,
                              check=False, timeout=300)

    def say(self, words, fine=(0, 1), counts=True):
        """Types a command and reads what it says. Counted unless it belongs to setting up, a trip or a count."""
        words = words if isinstance(words, list) else shlex.split(words)
        done = self.run(words)
        self.typed += counts
        if done.returncode not in fine:
            self.wrong(f"{' '.join(words)}: status {done.returncode}: {done.stdout}{done.stderr}")
        self.read.append((" ".join(words), done.stdout + done.stderr))
        return done.stdout

    def look(self, words):
        """Types a question that a test asks, not the household: its text is read too."""
        return self.say(words, fine=(0, 1, 2), counts=False)

    def ask(self, words):
        done = self.run(["--json", *shlex.split(words)])
        if done.returncode > 1:
            self.wrong(f"{words}: status {done.returncode}: {done.stdout}{done.stderr}")
            return {}
        return json.loads(done.stdout)

    def exported(self):
        return json.loads(self.run(["export"]).stdout)["ledger"]

    def try_printed(self):
        """Types back every command that was printed today, each in a fresh copy of the kitchen: but for those that were typed
        today, and the questions of one word that are asked in turn anyway and cost a balance each."""
        typed = {asked for asked, _ in self.read}
        commands = {command: asked for asked, text in self.read for command in printed_commands(text) if command not in typed}
        for command, asked in commands.items():
            if command in ASKED_ANYWAY:
                continue
            try:
                words = shlex.split(command)
            except ValueError as error:
                self.wrong(f"{asked} prints 'samebase {command}', which no shell reads: {error}")
                continue
            if words[:1] in (["clear"], ["lunches"], ["carry"]):
                words += ["--effort", "1"]
            shutil.copytree(self.folder, self.copy)
            done = self.run(words, self.copy)
            shutil.rmtree(self.copy)
            self.tried += 1
            if done.returncode not in (0, 1):
                self.wrong(f"{asked} prints 'samebase {command}', which ends with {done.returncode}: {done.stderr}")

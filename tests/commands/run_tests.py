"""Runs the commands of *.test files and compares what they print.

    python3 run_tests.py PROGRAM DATA_FOLDER TEST_FOLDER [--write] [NAME ...]

Each file has a fresh kitchen of its own in a temporary folder: the demo kitchen of 2026-11-25, or where its first line that is
not a remark says `kitchen empty`, an empty one with one person. Remarks start with `;`. A block:

    test ARGUMENTS                what is given to the program, in words as a shell splits them
    expected standard output
    __ERROR__
    expected standard error       where there is any
    end test -> STATUS            "end test" alone: status 0

After --dry-run the kitchen exports what it exported before, and no file has come or gone.

{dir} in arguments and output stands for the temporary folder, {draft} for the file of an editor, {file NAME} for a file of the test's folder. Besides `test` there are:

    same AS ARGUMENTS             the program's output is the output of the last `keep AS ARGUMENTS`
    keep AS ARGUMENTS
    differs AS ARGUMENTS          it is not
    typed ANSWER / ANSWER ...     the next test runs on a terminal, where this is typed; its standard error holds what is asked
    write NAME                    the lines up to `end write` go into a file in the temporary folder; `editor` is a shell script,
                                  the cook's editor
    copy NAME NAME                copies a file or a folder
    lock NAME / unlock NAME       a folder, and what is in it, can only be read
    damage NAME                   a few bytes in the middle of a file are turned over
    bytes AS NAME                 keeps a file's bytes under a name
    same-bytes AS NAME            the file is as it was kept
    follows SCHEMA NAME           the file is JSON that follows DATA_FOLDER/schema/SCHEMA.schema.json

Every command that does not fail is run once more with --json (in a copy of the kitchen, so that nothing happens twice), and its answer checked
against the JSON Schema of that command in DATA_FOLDER/schema; a failure's problems against answer-problems.

--write puts what was printed in place of what was expected: read it then.
"""

import json
import os
import pty
import re
import shlex
import shutil
import stat
import subprocess
import sys
import tempfile
import termios
from pathlib import Path

from jsonschema import Draft202012Validator

TODAY = "2026-11-25"
CHANGES = {"swap", "got", "moved", "opened", "out", "cooked", "ate", "tossed", "count", "undo"}
NOBODY = 65534


class Failed(Exception):
    pass


def schema_name(arguments):
    """The schema of the command's answer; nothing where it has none."""
    words = [a for a in arguments if not a.startswith("-")]
    options = {"--kitchen", "--today"}
    command = "tonight"
    skip = False
    for word in arguments:
        if skip:
            skip = False
        elif word in options:
            skip = True
        elif not word.startswith("-"):
            command = word
            break
    if command == "import" and "recipe" in words:
        return "answer-import-recipe"
    if command in CHANGES or (command == "import" and "--stock-csv" in words + arguments):
        return "answer-change"
    if command == "household":
        return "answer-change" if len(words) > words.index(command) + 1 else "answer-household"
    if command == "list" and words[words.index("list") + 1 : words.index("list") + 2] in (["add"], ["drop"]):
        return "answer-change"
    writes = {"else": "--take", "clear": "--write", "plan": "--write", "lunches": "--write", "thaw": "--done", "carry": "--done", "list": "--got", "tonight": "--done"}
    if writes.get(command) in arguments:
        return "answer-change"
    if command == "else" and "--why-not" in arguments:
        return "answer-why-not"
    if command == "week":
        return "answer-plan"
    if command in ("new", "demo"):
        return "answer-new"
    if command == "export" and (words[-1] == "export" or ("recipe" in words and "--to" not in arguments)):
        return None  # prints the document itself
    return f"answer-{command}"


class Run:
    def __init__(self, program, data, folder, path, write):
        self.program, self.data, self.folder, self.path, self.write = program, data, folder, path, write
        self.dir = Path(tempfile.mkdtemp(prefix="samebase-"))
        self.kept = {}
        self.failures = []
        self.commands = 0
        self.locked = False
        self.typed = None
        self.dir.chmod(0o755)

    def environment(self):
        unset = ("VISUAL", "COLUMNS", "NO_COLOR")
        env = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE") and k not in unset}
        return dict(env, EDITOR=f"sh '{self.dir}/editor'", SAMEBASE_DATA=str(self.data), SAMEBASE_KITCHEN=str(self.dir / "kitchen"), LC_ALL="C.UTF-8", TZ="UTC")

    def words(self, text):
        text = text.replace("{dir}", str(self.dir))
        text = re.sub(r"\{file ([^}]*)\}", lambda m: str(self.folder / m.group(1)), text)
        return shlex.split(text)

    def call(self, words, *more):
        self.commands += 1
        arguments = [self.program, *([] if "--today" in words else ["--today", TODAY]), *more, *words]
        # The superuser may write everywhere, and would not notice a locked folder.
        other = {"user": NOBODY, "group": NOBODY, "extra_groups": []} if self.locked and os.geteuid() == 0 else {}
        given = {"env": self.environment(), "cwd": self.dir, **other}
        if self.typed is None:
            done = subprocess.run(arguments, stdin=subprocess.DEVNULL, capture_output=True, **given)
            printed = done.stdout, done.stderr
        else:
            done, printed = self.on_terminal(arguments, given)
        out, err = (b.decode("utf-8", "backslashreplace").replace(str(self.dir), "{dir}") for b in printed)
        err = re.sub(r"\S*/samebase-\w{6}/edit\.json", "{draft}", err)
        return out, err, done.returncode

    def on_terminal(self, arguments, given):
        """Types the answers, each with a return, and reads what is asked."""
        master, slave = pty.openpty()
        mode = termios.tcgetattr(slave)
        mode[3] &= ~termios.ECHO
        termios.tcsetattr(slave, termios.TCSANOW, mode)
        with subprocess.Popen(arguments, stdin=slave, stdout=subprocess.PIPE, stderr=slave, **given) as process:
            os.close(slave)
            for answer in self.typed:
                os.write(master, (answer + "\n").encode("utf-8"))
            out, err = process.stdout.read(), b""
            try:
                while part := os.read(master, 4096):
                    err += part
            except OSError:  # how Linux says that nobody is at the other end any more
                pass
        os.close(master)
        # A question ends without a line's end: the answer's is not echoed.
        return process, (out, err.replace(b"\r\n", b"\n"))

    def start(self, kind):
        kitchen = str(self.dir / "kitchen")
        words = ["demo", kitchen] if kind == "demo" else ["new", kitchen, "--name", "the hut", "--people", "Kim"]
        out, err, status = self.call(words)
        if status != 0:
            raise Failed(f"the kitchen could not be made: {out}{err}")

    def before(self, words):
        """Runs with --json and puts everything back as it was."""
        copy = Path(tempfile.mkdtemp(prefix="samebase-copy-"))
        shutil.copytree(self.dir, copy / "dir", symlinks=True, copy_function=shutil.copy2)
        try:
            return self.call(words, "--json")
        finally:
            self.make_writable(self.dir)
            for child in self.dir.iterdir():
                shutil.rmtree(child) if child.is_dir() else child.unlink()
            shutil.copytree(copy / "dir", self.dir, dirs_exist_ok=True, copy_function=shutil.copy2)
            self.make_writable(copy)
            shutil.rmtree(copy)

    @staticmethod
    def make_writable(folder):
        for path in [folder, *folder.rglob("*")]:
            path.chmod(path.stat().st_mode | stat.S_IWUSR)

    def lock(self, name, locked):
        self.locked = locked
        top = self.dir / name
        for path in [top, *top.rglob("*")]:
            mode = path.stat().st_mode
            path.chmod(mode & ~0o222 if locked else mode | stat.S_IWUSR)

    def block(self, lines, at):
        """One directive, from lines[at]; what replaces it, and where the next begins."""
        line = lines[at]
        word, _, rest = line.partition(" ")
        if word == "test":
            end = next((i for i in range(at + 1, len(lines)) if lines[i].startswith("end test")), None)
            if end is None:
                raise Failed(f"no 'end test'")
            words = self.words(rest)
            answer = self.with_json(words)
            before = self.everything() if "--dry-run" in words else None
            out, err, status = self.call(words)
            self.typed = None
            if before is not None and before != self.everything():
                self.failures.append((at + 1, [], ["--dry-run has changed something"]))
            printed = (out + (("" if out.endswith("\n") or not out else "\n") + "__ERROR__\n" + err if err else "")).splitlines()
            shown = [line, *printed, "end test" + (f" -> {status}" if status else "")]
            if shown != lines[at:end + 1]:
                self.failures.append((at + 1, lines[at:end + 1], shown))
            self.validate(answer, words, status, at + 1)
            return shown, end + 1
        if word == "write":
            end = lines.index("end write", at)
            (self.dir / rest).parent.mkdir(parents=True, exist_ok=True)
            (self.dir / rest).write_bytes("\n".join(lines[at + 1:end]).encode("utf-8") + b"\n")
            return lines[at:end + 1], end + 1
        if word in ("keep", "same", "differs"):
            name, _, arguments = rest.partition(" ")
            out, err, status = self.call(self.words(arguments))
            if status != 0:
                raise Failed(f"status {status}: {err}")
            if word == "keep":
                self.kept[name] = out
            elif (self.kept[name] == out) != (word == "same"):
                raise Failed(f"the output is {'not ' if word == 'same' else ''}what was kept as {name}")
        elif word == "copy":
            source, target = (self.dir / n for n in shlex.split(rest))
            shutil.copytree(source, target) if source.is_dir() else shutil.copy2(source, target)
        elif word == "typed":
            self.typed = rest.split(" / ")
        elif word in ("lock", "unlock"):
            self.lock(rest, word == "lock")
        elif word == "damage":
            path = self.dir / rest
            data = bytearray(path.read_bytes())
            for i in range(len(data) // 2, len(data) // 2 + 64):
                data[i] ^= 0xFF
            path.write_bytes(bytes(data))
        elif word == "bytes":
            name, _, file = rest.partition(" ")
            self.kept[name] = (self.dir / file).read_bytes()
        elif word == "same-bytes":
            name, _, file = rest.partition(" ")
            if self.kept[name] != (self.dir / file).read_bytes():
                raise Failed(f"{file} has changed")
        elif word == "follows":
            name, _, file = rest.partition(" ")
            schema = json.loads((self.data / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
            document = json.loads((self.dir / file).read_text(encoding="utf-8"))
            for error in Draft202012Validator(schema).iter_errors(document):
                raise Failed(f"{file}, /{'/'.join(map(str, error.absolute_path))}: {error.message[:300]}")
        elif line and not line.startswith(";") and word != "kitchen":
            raise Failed(f"not understood: {line}")
        return [line], at + 1

    def with_json(self, words):
        return None if "--json" in words or self.locked or self.typed is not None else self.before(words)

    def everything(self):
        """What the kitchen exports, and the names of all files but the database's own."""
        names = sorted(str(p) for p in self.dir.rglob("*") if not p.name.endswith(("-wal", "-shm")))
        return self.call(["export"])[0], names

    def validate(self, result, words, status, line):
        name = schema_name(words) if status in (0, 1) else "answer-problems"
        if result is None or name is None:
            return
        out, _, json_status = result
        try:
            if json_status != status:
                raise Failed(f"status {json_status} with --json, {status} without")
            try:
                document = json.loads(out)
            except ValueError as error:
                raise Failed(f"with --json: {error}: {out[:200]!r}") from error
            schema = json.loads((self.data / "schema" / f"{name}.schema.json").read_text(encoding="utf-8"))
            for error in Draft202012Validator(schema).iter_errors(document):
                raise Failed(f"--json, {name}, /{'/'.join(map(str, error.absolute_path))}: {error.message[:300]}")
        except Failed as failed:
            self.failures.append((line, [], [str(failed)]))

    def all(self):
        lines = self.path.read_text(encoding="utf-8").splitlines()
        kinds = [l.split()[1] for l in lines if l.startswith("kitchen ")]
        self.start(kinds[0] if kinds else "demo")
        result, at = [], 0
        while at < len(lines):
            try:
                shown, at = self.block(lines, at)
            except Failed as error:
                self.failures.append((at + 1, [], [str(error)]))
                shown, at = [lines[at]], at + 1
            result += shown
        if self.write and result != lines:
            self.path.write_text("\n".join(result) + "\n", encoding="utf-8")

    def end(self):
        self.make_writable(self.dir)
        shutil.rmtree(self.dir)


def main(arguments):
    write = "--write" in arguments
    program, data, folder, *names = [a for a in arguments if a != "--write"]
    program, data, folder = str(Path(program).resolve()), Path(data).resolve(), Path(folder).resolve()
    failed = commands = files = 0
    for path in sorted(folder.glob("*.test")):
        if names and path.stem not in names:
            continue
        files += 1
        run = Run(program, data, folder, path, write)
        try:
            run.all()
        except Failed as error:
            run.failures.append((0, [], [str(error)]))
        finally:
            run.end()
        commands += run.commands
        for line, expected, shown in run.failures:
            if write and expected:
                continue
            failed += 1
            print(f"{path.name}, line {line}:")
            for text in expected:
                if text not in shown:
                    print("  -", text)
            for text in shown:
                if text not in expected:
                    print("  +", text)
    print(f"{files} files, {commands} commands, {failed} failures")
    return 1 if failed or not files else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

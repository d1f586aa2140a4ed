"""The manual, the completion and the manual page: what they name exists, and they name all that exists.

    python3 manual_test.py PROGRAM DATA_FOLDER
"""

import os
import re
import subprocess
import sys
from pathlib import Path

MOST_LINES = 46  # two small screens
failures = []


def need(holds, what):
    if not holds:
        failures.append(what)
        print("failed:", what)


def main(program, data):
    env = dict(os.environ, SAMEBASE_DATA=str(data), LC_ALL="C.UTF-8", COLUMNS="80")

    def run(*words, status=0):
        done = subprocess.run([program, *words], env=env, capture_output=True, check=False)
        need(done.returncode == status, f"{words}: status {done.returncode}: {done.stderr.decode()}")
        return done.stdout.decode("utf-8")

    listed = run("--help").split("Subcommands:")[1]
    commands = set(re.findall(r"^  ([a-z]+) ", listed, re.M))
    need(len(commands) > 30, f"commands of --help: {commands}")

    contents = run("help")
    pages = sorted((data / "manual").glob("*.txt"))
    need(len(pages) >= 7, "the manual has pages")
    for page in pages:
        topic = page.stem.split("-", 1)[1]
        text = page.read_text(encoding="utf-8")
        need(re.search(rf"^  {topic} +{re.escape(text.splitlines()[0])}$", contents, re.M), f"help does not list {topic}")
        need(run("help", topic) == text, f"help {topic} prints something else")
        need(len(text.splitlines()) <= MOST_LINES, f"{topic} has {len(text.splitlines())} lines")
        need(all(len(line) <= 80 for line in text.splitlines()), f"{topic} is wider than 80")
        for line in text.splitlines():
            for said in re.findall(r"samebase ([a-z]+)((?: --?[a-z][a-z-]*)*)", line):
                need(said[0] in commands or said[0] in ("does", "shows"), f"{topic}: there is no command '{said[0]}'")
            named = re.search(r"samebase (\w+)[^;:\"]*", line)
            if named and named[1] in commands:
                usage = run("help", named[1])
                for option in re.findall(r"--[a-z]+(?:-[a-z]+)*", named[0]):
                    inner = run(named[1], "recipe", "--help") if named[1] in ("import", "export") else ""
                    for_all = ("--dry-run", "--json", "--with")
                    if named[1] != "household":
                        need(option in usage + inner or option in for_all, f"{topic}: '{named[0]}' has no {option}")
    run("help", "nothing-like-it", status=2)

    for shell in ("bash", "zsh", "fish", "man"):
        text = re.sub(r"\\f[BIR]", " ", run("completion", shell))
        for command in commands:
            need(re.search(rf"\b{command}\b", text), f"{shell}: no {command}")
        need("--markdown" in text.replace("\\-", "-") or "-l markdown" in text, f"{shell}: no --markdown")
    run("completion", "tcsh", status=2)

    script = run("completion", "bash") + "\nCOMP_WORDS=(samebase --kitchen x sh); COMP_CWORD=3; _samebase; echo \"${COMPREPLY[*]}\"\n" \
        "COMP_WORDS=(samebase sheet --mark); COMP_CWORD=2; _samebase; echo \"${COMPREPLY[*]}\"\n"
    shown = subprocess.run(["bash", "-c", script], capture_output=True, text=True, check=False)
    need(shown.stdout == "sheet\n--markdown\n" and shown.stderr == "", f"bash completes to {shown.stdout!r} {shown.stderr!r}")
    page = run("completion", "man")
    need(page.startswith(".TH SAMEBASE 1"), "the manual page has a title")
    need(not re.search(r"^[.'](?!TH|SH|SS|TP|PP)", page, re.M), "a line of the manual page is a request that it is not")
    print(f"{len(pages)} pages, {len(commands)} commands, {len(failures)} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(str(Path(sys.argv[1]).resolve()), Path(sys.argv[2]).resolve()))

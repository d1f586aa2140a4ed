#!/usr/bin/python3
"""Runs the console blocks of README.md with the real binary, in order, in one temporary folder, and compares what they print.

    readme_test.py BINARY README [--write]

With --write the blocks are written anew from what the binary prints: read the result before you keep it.
"""
import os
import re
import subprocess
import sys
import tempfile

BLOCK = re.compile(r"```console\n(.*?)```\n", re.S)


def run(binary, command, folder):
    """The command's standard output, then its standard error, in a shell without the caller's kitchen."""
    environment = {k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE_KITCHEN")}
    environment["PATH"] = os.path.dirname(os.path.abspath(binary)) + os.pathsep + environment["PATH"]
    done = subprocess.run(["sh", "-c", command], cwd=folder, env=environment, stdin=subprocess.DEVNULL, text=True, capture_output=True)
    return done.stdout + done.stderr


def answered(binary, block, folder):
    """The block as the binary fills it."""
    out = ""
    for line in block.splitlines():
        if line.startswith("$ "):
            out += line + "\n" + run(binary, line[2:], folder)
    return out


def main():
    binary, readme = sys.argv[1:3]
    text = open(readme, encoding="utf-8").read()
    blocks = BLOCK.findall(text)
    if not blocks:
        sys.exit("README.md has no console blocks")
    failed = 0
    with tempfile.TemporaryDirectory() as folder:
        for block in blocks:
            now = answered(binary, block, folder)
            if "--write" in sys.argv:
                text = text.replace("```console\n" + block + "```\n", "```console\n" + now + "```\n", 1)
            elif now != block:
                failed += 1
                print("README.md says:\n" + block + "but the binary prints:\n" + now)
            over = [line for line in now.splitlines() if len(line) > 80 and not line.startswith("$ ")]
            if over:
                failed += 1
                print("wider than 80 columns: " + "\n".join(over))
    if "--write" in sys.argv:
        open(readme, "w", encoding="utf-8").write(text)
    print(f"{len(blocks)} blocks, {failed} wrong")
    sys.exit(1 if failed else 0)


main()

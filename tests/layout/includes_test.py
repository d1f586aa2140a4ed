"""Which room includes which, against the table in DEVELOPERS.md; and what stands at the top of the repository.

    python3 includes_test.py REPOSITORY

Prints one line for each offence and ends with status 1 where there is one. Before it looks at the repository it plants a bad line
for every check, in memory, and ends with status 1 where one goes unseen.
"""

import re
import subprocess
import sys
from pathlib import Path

INCLUDE = re.compile(r'^[ \t]*#[ \t]*include[ \t]*(?:"([^"]+)"|<([^>]+)>)', re.MULTILINE)

# Libraries that stay behind certain rooms, by the start of the header's name.
BEHIND = {
    "boost/graph/": ("lib/graph/", "lib/flow/", "lib/ask/lunches"),
    "boost/pending/": ("lib/graph/", "lib/flow/", "lib/ask/lunches"),
    "SQLiteCpp/": ("lib/store/",),
    "sqlite3.h": ("lib/store/",),
    "libical/": ("lib/exchange/",),
    "Cbc": ("lib/solver/",),
    "coin/": ("lib/solver/",),
}

TOP = {"README.md", "DEVELOPERS.md", "CMakeLists.txt", "CMakePresets.json", "LICENSE", "lib", "cli", "data", "tests", "benchmarks"}


def read_table(text):
    """{room: the rooms that it may include} from the table whose head is `room | ... | may include`."""
    table = {}
    inside = False
    for line in text.splitlines():
        cells = [cell.strip() for cell in line.strip().strip("|").split("|")] if line.startswith("|") else []
        if not cells:
            inside = False
        elif cells[0] == "room" and cells[-1] == "may include":
            inside = True
        elif inside and not cells[0].startswith("-"):
            table[cells[0]] = {room.strip() for room in cells[-1].split(",") if room.strip()}
    return table


def read_uses(text):
    """{room: the rooms that it links} from the samebase_room lines of lib/CMakeLists.txt."""
    uses = {}
    for name, rest in re.findall(r"^samebase_room\((\w+)([^)]*)\)", text, re.MULTILINE):
        words = rest.split()
        linked = words[words.index("USES") + 1:] if "USES" in words else []
        ends = [linked.index(word) for word in ("WITH", "PRECOMPILE", "PRECOMPILED") if word in linked]
        uses[name] = set(linked[:min(ends)] if ends else linked)
    return uses


def closure(edges):
    """{node: everything that it reaches}."""
    reached = {}
    for start in edges:
        found = set()
        open_nodes = list(edges[start])
        while open_nodes:
            node = open_nodes.pop()
            if node not in found:
                found.add(node)
                open_nodes.extend(edges.get(node, ()))
        reached[start] = found
    return reached


def room_of(path):
    """lib/flow/detail/supply.cpp: flow; cli/main.cpp: cli."""
    parts = path.split("/")
    return parts[1] if parts[0] == "lib" else parts[0]


def includes_of(files):
    """(file, line number, what is included, whether in quotes) of every include line."""
    for path in sorted(files):
        for match in INCLUDE.finditer(files[path]):
            line = files[path].count("\n", 0, match.start()) + 1
            yield path, line, match.group(1) or match.group(2), match.group(1) is not None


def target_of(path, included, files):
    """The file that a quoted include means; nothing where there is none. A file of cli names its neighbours bare."""
    beside = path.rsplit("/", 1)[0] + "/" + included
    if path.startswith("cli/") and beside in files:
        return beside
    return "lib/" + included if "lib/" + included in files else None


def question_of(path):
    """lib/ask/else.cpp, lib/ask/else_lines.hpp: else; nothing for other files."""
    match = re.fullmatch(r"lib/ask/([a-z]+)(?:_\w+)?\.[ch]pp", path)
    return match.group(1) if match else None


def include_offences(files, table):
    offences = []
    edges = {room: set() for room in table}
    for path, line, included, quoted in includes_of(files):
        where = f"{path}:{line}: "
        room = room_of(path)
        for start, homes in BEHIND.items():
            if included.startswith(start) and not path.startswith(homes):
                offences.append(f"{where}{included} may be included in {', '.join(homes)} only")
        if room not in table:
            offences.append(f"{where}the room {room} is not in the table")
            continue
        if not quoted:
            continue
        target = target_of(path, included, files)
        if target is None:
            offences.append(f"{where}{included} is no file of lib, nor beside it")
            continue
        other = room_of(target)
        edges[room].add(other)
        if other == room:
            ours, theirs = question_of(path), question_of(target)
            if ours and theirs and ours != theirs:
                offences.append(f"{where}the question {ours} includes the question {theirs}")
            continue
        if other not in table[room]:
            offences.append(f"{where}{room} may not include {other}")
        if "/detail/" in target:
            offences.append(f"{where}{included} is for the room {other} alone")
    for room, reached in closure({room: others - {room} for room, others in edges.items()}).items():
        if room in reached:
            offences.append(f"the room {room} includes itself by way of others")
    return offences


def table_offences(table, uses):
    """The table says of each room what its target links, directly or by way of others; cli sees all."""
    offences = []
    expected = closure(uses)
    expected["cli"] = set(uses)
    for room in sorted(expected.keys() | table.keys()):
        if room not in table:
            offences.append(f"DEVELOPERS.md: the room {room} is not in the table")
        elif room not in expected:
            offences.append(f"DEVELOPERS.md: the room {room} of the table is no target of lib/CMakeLists.txt")
        elif table[room] != expected[room]:
            offences.append(f"DEVELOPERS.md: {room} may include {sorted(table[room])}, but its target links {sorted(expected[room])}")
    return offences


def top_offences(paths):
    tops = {path.split("/", 1)[0] for path in paths}
    return [f"{top} does not belong at the top of the repository" for top in sorted(tops) if top not in TOP and not top.startswith(".")]


def unseen(files, table, uses, paths):
    """Plants one offence for each check into a sound repository of two or three files; those that go unseen."""
    missed = []

    def plant(what, offences, words):
        if not any(words in offence for offence in offences):
            missed.append(f"planted and not seen: {what}")

    def planted(path, line, more=None):
        return include_offences({**files, path: files.get(path, "") + "\n" + line + "\n", **(more or {})}, table)

    some = {room: next(path for path in sorted(files) if path.startswith(f"lib/{room}/") and path.endswith(".hpp") and "/detail/" not in path)
            for room in ("basics", "kitchen", "store", "flow")}
    plant("an include that the table does not allow", planted(some["basics"], f'#include "{some["kitchen"][4:]}"'),
          "basics may not include kitchen")
    plant("store in flow", planted(some["flow"], f'  #  include "{some["store"][4:]}"'), "flow may not include store")
    plant("the command line in a room", planted(some["store"], '#include "cli/context.hpp"'), "is no file of lib")
    plant("another room's detail", planted("lib/flow/planted.cpp", '#include "catalogue/detail/planted.hpp"',
                                           {"lib/catalogue/detail/planted.hpp": ""}), "is for the room catalogue alone")
    plant("detail in cli", planted("cli/main.cpp", '#include "catalogue/detail/planted.hpp"', {"lib/catalogue/detail/planted.hpp": ""}),
          "is for the room catalogue alone")
    plant("a cycle", planted(some["basics"], f'#include "{some["kitchen"][4:]}"'), "basics includes itself by way of others")
    plant("a question in a question", planted("lib/ask/tonight_planted.cpp", '#include "ask/else.hpp"'),
          "the question tonight includes the question else")
    plant("Boost.Graph elsewhere", planted("lib/ask/else.cpp", "#include <boost/graph/adjacency_list.hpp>"), "boost/graph/adjacency_list.hpp may")
    plant("SQLite elsewhere", planted("cli/main.cpp", "#include <sqlite3.h>"), "sqlite3.h may")
    plant("libical elsewhere", planted("lib/show/planted.cpp", "#include <libical/ical.h>"), "libical/ical.h may")
    plant("CBC elsewhere", planted("lib/flow/planted.cpp", "#include <Cbc_C_Interface.h>"), "Cbc_C_Interface.h may")
    plant("a room that is not in the table", planted("lib/drawer/odds.cpp", "#include <string>"), "the room drawer is not in the table")
    plant("a table that allows too much", table_offences({**table, "basics": {"kitchen"}}, uses), "basics may include")
    plant("a table that lacks a room", table_offences({k: v for k, v in table.items() if k != "flow"}, uses), "flow is not in the table")
    plant("a file at the top", top_offences([*paths, "notes.txt"]), "notes.txt does not belong")
    if any("lunches" in offence for offence in planted("lib/ask/lunches.cpp", "#include <boost/graph/adjacency_list.hpp>")):
        missed.append("Boost.Graph is refused in lib/ask/lunches.cpp")
    return missed


def tracked(repository):
    """The repository's files; without git or its records, those that stand there, but for the build folder."""
    try:
        listed = subprocess.run(["git", "-c", f"safe.directory={repository}", "-C", str(repository), "ls-files", "-z"],
                                capture_output=True, check=True, text=True).stdout
        return [path for path in listed.split("\0") if path]
    except (OSError, subprocess.CalledProcessError):
        return [path.name for path in repository.iterdir() if path.name != "build"]


def main():
    repository = Path(sys.argv[1]).resolve()
    files = {str(path.relative_to(repository)): path.read_text(encoding="utf-8")
             for folder in ("lib", "cli") for path in (repository / folder).rglob("*.[ch]pp")}
    table = read_table((repository / "DEVELOPERS.md").read_text(encoding="utf-8"))
    uses = read_uses((repository / "lib/CMakeLists.txt").read_text(encoding="utf-8"))
    paths = tracked(repository)
    offences = table_offences(table, uses) + include_offences(files, table) + top_offences(paths) + unseen(files, table, uses, paths)
    for offence in offences:
        print(offence)
    print(f"{len(files)} files, {sum(1 for _ in includes_of(files))} include lines, {len(table)} rooms: {len(offences)} offences")
    return 1 if offences or not files or not table else 0


if __name__ == "__main__":
    sys.exit(main())

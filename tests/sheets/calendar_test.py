"""The calendars of the demo kitchen, read by an independent parser: ical.js, from npm. Part of the long run: it needs the network.

    python3 calendar_test.py PROGRAM DATA_FOLDER

Every event is what the plan says, each UID is there once, and a calendar that is written a day later changes events but doubles none.
"""

import json
import os
import subprocess
import sys
import tempfile
from datetime import date, timedelta
from pathlib import Path

READER = """
import ICAL from 'ical.js';
import { readFileSync } from 'node:fs';
const events = new ICAL.Component(ICAL.parse(readFileSync(process.argv[2], 'utf8'))).getAllSubcomponents('vevent').map((c) => new ICAL.Event(c));
console.log(JSON.stringify(events.map((e) => ({uid: e.uid, summary: e.summary, start: e.startDate.toString(), end: e.endDate.toString(),
  allDay: e.startDate.isDate, alarms: e.component.getAllSubcomponents('valarm').length}))));
"""


def main(program, data):
    with tempfile.TemporaryDirectory(prefix="samebase-calendar-") as folder:
        subprocess.run(["npm", "install", "--silent", "--no-audit", "--no-fund", "--prefix", folder, "ical.js@2"], check=True)
        Path(folder, "reader.mjs").write_text(READER, encoding="utf-8")
        env = dict(os.environ, SAMEBASE_DATA=str(data), SAMEBASE_KITCHEN=f"{folder}/kitchen")

        def run(day, *words):
            return subprocess.run([program, "--today", str(day), *words], env=env, check=True, capture_output=True).stdout

        def read(day, *words):
            run(day, "sheet", *words, "--ics", f"{folder}/it.ics")
            return json.loads(subprocess.run(["node", "reader.mjs", "it.ics"], cwd=folder, check=True, capture_output=True).stdout)

        today = date(2026, 11, 25)
        run(today, "demo", f"{folder}/kitchen")
        failures = 0
        for words in (["week"], ["month", "december"]):
            events = read(today, *words)
            plan = json.loads(run(today, "--json", "plan", "2026-11-25..2026-12-01" if words == ["week"] else "december"))
            dinners = {f"Dinner: {d['label']}" + (" from the freezer" if d["ready_meal"] else "") for row in plan["days"] for d in row["dinners"]}
            uids = [e["uid"] for e in events]
            later = [e["uid"] for e in read(today + timedelta(days=1), *words)]
            for holds, what in (
                (len(set(uids)) == len(uids), "a UID is there twice"),
                ({e["summary"] for e in events if e["uid"].startswith("dinner-")} == dinners, "dinners are not those of the plan"),
                (all(e["allDay"] for e in events), "an event is not all day"),
                (all(date.fromisoformat(e["end"]) - date.fromisoformat(e["start"]) == timedelta(days=1) for e in events), "an event is not of one day"),
                (all((e["alarms"] == 1) == e["uid"].startswith(("take-out-", "carry-")) for e in events), "reminders"),
                ({u for u in later if u.startswith("dinner-")} <= set(uids) | {"dinner-2026-12-02@the-depot-house.samebase.invalid"},
                 "a day later a dinner has another UID"),
            ):
                if not holds:
                    failures += 1
                    print(f"failed: {words}: {what}")
            print(f"{words}: {len(events)} events")
        return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(str(Path(sys.argv[1]).resolve()), Path(sys.argv[2]).resolve()))

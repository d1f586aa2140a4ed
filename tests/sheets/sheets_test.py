"""The HTML of every sheet: sound as a document, and as a browser shows it.

    python3 sheets_test.py PROGRAM DATA_FOLDER [--long] [--pictures FOLDER]

Of the demo kitchen and of one with hostile names: headings in order, tables with heads for rows and columns, no identifier twice, links
that lead somewhere, no script, nothing from outside. In Chromium (where it is installed): no word on the console, no request, no
sideways scrolling on a phone of 360 pixels, dark and light; the week and every month of two years on one page of A4. --pictures keeps what
it looks like. With --long every page is looked at, not a few of each kind, and axe-core, from npm, looks for
what keeps people from reading it.
"""

import json
import os
import re
import subprocess
import sys
import tempfile
from html.parser import HTMLParser
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent))
from chromium import Chromium  # noqa: E402

TODAY = "2026-11-25"
SHEETS = [["week"], ["month"], ["first"], ["lunches"], ["list"], ["stock"], ["recipe", "meat", "loaf"], ["all"]]
MONTHS = ["november", "december", "2027-01", "2027-02", "2027-03", "2027-05"]  # one with four weeks, some with six
VOID = {"meta", "link", "br", "hr", "img"}
HOSTILE = [
    "<script>alert(1)</script><img src=x onerror=alert(1)>",
    "\"quoted\" & 'quoted' </style></article>",
    "\u05de\u05e8\u05e7 \u05e2\u05d5\u05e3 \u0634\u0648\u0631\u0628\u0629 \u202etxt.exe",
    "soup \U0001f35c\U0001f469\u200d\U0001f469\u200d\U0001f467 z\u0300\u0301\u0302\u0303",
    "\x1b[31mred\x1b[0m \x07 \u009b",
    "W" * 300,
    "very long " * 30,
]
# What a browser looks at where time is short: the others are made of the same parts.
FEW = {"demo-week", "demo-month-december", "demo-all", "hostile-week", "hostile-all"}
LONG = "--long" in sys.argv
failures = []


def need(holds, what):
    if not holds:
        failures.append(what)
        print("failed:", what)


class Structure(HTMLParser):
    """What is wrong with a document, as a list."""

    def __init__(self, text):
        super().__init__(convert_charrefs=True)
        self.open, self.wrong, self.ids, self.links, self.headings = [], [], [], [], []
        self.feed(text)
        self.close()
        self.wrong += [f"<{tag}> is not ended" for tag in self.open]
        self.wrong += [f"identifier {one} twice" for one in self.ids if self.ids.count(one) > 1]
        self.wrong += [f"link to {one}" for one in self.links if one[1:] not in self.ids and one != "data:,"]
        if self.headings[:1] != [1] or self.headings.count(1) != 1:
            self.wrong.append(f"headings {self.headings}")
        for before, after in zip(self.headings, self.headings[1:]):
            if after > before + 1:
                self.wrong.append(f"a heading of level {after} after one of {before}")

    def handle_starttag(self, tag, attributes):
        given = dict(attributes)
        if tag in ("script", "iframe", "object", "img", "form") or any(name.startswith("on") or name == "src" for name in given):
            self.wrong.append(f"<{tag} {given}>")
        if "id" in given:
            self.ids.append(given["id"])
        if "href" in given:
            self.links.append(given["href"])
        if "aria-labelledby" in given:
            self.links.append("#" + given["aria-labelledby"])
        if re.fullmatch("h[1-6]", tag):
            self.headings.append(int(tag[1]))
        if tag == "th" and given.get("scope") not in ("row", "col"):
            self.wrong.append("a head of a table without a scope")
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        if not self.open or self.open[-1] != tag:
            self.wrong.append(f"</{tag}> within {self.open}")
        else:
            self.open.pop()


class Kitchen:
    def __init__(self, program, data, folder):
        self.folder = Path(folder)
        self.env = dict({k: v for k, v in os.environ.items() if not k.startswith("SAMEBASE")}, SAMEBASE_DATA=str(data),
                        SAMEBASE_KITCHEN=str(self.folder), LC_ALL="C.UTF-8")
        self.program, self.data = program, Path(data)
        self.run("demo", str(folder))

    def run(self, *words):
        done = subprocess.run([self.program, "--today", TODAY, *words], env=self.env, capture_output=True, check=False)
        need(done.returncode in (0, 1), f"{words}: {done.stderr.decode()}")
        return done.stdout.decode("utf-8")

    def make_hostile(self):
        """Names of the household, places, notes, dishes and ingredients as nobody would write them."""
        path = self.folder / "kitchen.json"
        document = json.loads(path.read_text(encoding="utf-8"))
        document["name"] = HOSTILE[0]
        for i, part in enumerate(document["places"] + document["people"]):
            part["name"] = HOSTILE[i % len(HOSTILE)] + f" {i}"
        document.setdefault("occasions", []).append({"day": "2026-11-28", "note": HOSTILE[0] + HOSTILE[4], "guests": 2})
        path.write_text(json.dumps(document), encoding="utf-8")
        shipped = json.loads((self.data / "dishes" / "mince.json").read_text(encoding="utf-8"))
        model = next(d for d in shipped["dishes"] if d["id"] == "meat-loaf")
        dishes = [dict(model, id=f"hostile-{i}", name=name, method=[name, "Cook it."]) for i, name in enumerate(HOSTILE)]
        (self.folder / "dishes").mkdir(exist_ok=True)
        (self.folder / "dishes" / "own.json").write_text(json.dumps(dict(shipped, dishes=dishes)), encoding="utf-8")
        for i in range(len(HOSTILE)):
            self.run("swap", f"+{i}", f"hostile-{i}", "--yes")

    def page(self, words, name):
        path = self.folder / f"{name}.html"
        self.run("sheet", *words, "--html", str(path))
        return path


def check_structure(path, name):
    for wrong in Structure(path.read_text(encoding="utf-8")).wrong:
        need(False, f"{name}: {wrong}")


def pages_of(pdf):
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))


def boxes_of(pdf):
    """Widths and heights of the pages, in points."""
    return {tuple(round(float(v)) for v in box.split()[2:]) for box in re.findall(rb"/MediaBox\s*\[([^\]]*)\]", pdf)}


def look(browser, path, name, one_page, pictures):
    page = browser.open(path)
    pdf = page.pdf()
    need(boxes_of(pdf) <= {(595, 842), (842, 595), (596, 842), (842, 596)}, f"{name} is not on A4: {boxes_of(pdf)}")
    if one_page:
        need(pages_of(pdf) == 1, f"{name} takes {pages_of(pdf)} pages")
    if "month" in name:
        need(all(wide > high for wide, high in boxes_of(pdf)), f"{name} is not landscape")
    need(not page.complaints(), f"{name}: {page.complaints()}")
    if pictures:
        (pictures / f"{name}.pdf").write_bytes(pdf)
        page.picture(pictures / f"{name}.png", full=True)
    page.close()
    for dark in (False, True):
        page = browser.open(path, 360, 740, dark)
        wide = page.evaluate("document.documentElement.scrollWidth")
        need(wide <= 360, f"{name} is {wide} pixels wide on a phone")
        need(not page.complaints(), f"{name} on a phone: {page.complaints()}")
        need(page.evaluate(LEAST_CONTRAST) >= 4.5, f"{name}: contrast, dark {dark}")
        if pictures:
            page.picture(pictures / f"{name}-{'dark' if dark else 'light'}.png", full=True)
        page.close()


# The least contrast of a text on the ground of the page (WCAG 2.2, relative luminance).
LEAST_CONTRAST = """(() => {
  const part = (v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
  const light = (c) => { const [r, g, b] = c.match(/[\\d.]+/g).map(Number); return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b); };
  const ground = light(getComputedStyle(document.body).backgroundColor);
  let least = 21;
  for (const e of document.querySelectorAll('main *')) {
    if (![...e.childNodes].some((n) => n.nodeType === 3 && n.data.trim())) continue;
    const [a, b] = [light(getComputedStyle(e).color), ground].sort((x, y) => y - x);
    least = Math.min(least, (a + 0.05) / (b + 0.05));
  }
  return least;
})()"""


def axe_source(folder):
    subprocess.run(["npm", "install", "--silent", "--no-audit", "--no-fund", "--prefix", folder, "axe-core@4"], check=True)
    return (Path(folder) / "node_modules" / "axe-core" / "axe.min.js").read_text(encoding="utf-8")


def look_for_barriers(browser, path, name, axe):
    for width, dark in ((1000, False), (1000, True), (360, True)):
        page = browser.open(path, width, 1000, dark)
        page.evaluate(axe)
        found = page.evaluate("axe.run().then((r) => r.violations.map((v) => v.id + ': ' + v.nodes[0].html))")
        need(found == [], f"{name} at {width}: {found}")
        page.close()


def main(arguments):
    program, data = str(Path(arguments[0]).resolve()), Path(arguments[1]).resolve()
    pictures = Path(arguments[arguments.index("--pictures") + 1]) if "--pictures" in arguments else None
    with tempfile.TemporaryDirectory(prefix="samebase-sheets-") as folder:
        paths = {}
        for kind in ("demo", "hostile"):
            kitchen = Kitchen(program, data, Path(folder) / kind)
            if kind == "hostile":
                kitchen.make_hostile()
            for words in SHEETS:
                paths[f"{kind}-{words[0]}"] = kitchen.page(words, words[0])
            if kind == "hostile":
                paths["hostile-dish"] = kitchen.page(["recipe", "hostile-0"], "dish")
                continue
            for month in MONTHS:
                paths[f"demo-month-{month}"] = kitchen.page(["month", month], f"month-{month}")
        for name, path in paths.items():
            check_structure(path, name)
        browser = Chromium()
        if browser.program is None:
            print("Chromium is not installed: nothing was looked at in a browser.")
        else:
            axe = axe_source(folder) if LONG else None
            with browser:
                for name, path in paths.items():
                    if not LONG and not pictures and name not in FEW:
                        continue
                    one_page = name.startswith(("demo-week", "demo-month", "hostile-week"))
                    look(browser, path, name, one_page, pictures)
                    if axe:
                        look_for_barriers(browser, path, name, axe)
        print(f"{len(paths)} pages, {len(failures)} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

"""Debian's Chromium without a window, driven over a pipe in the DevTools protocol: nothing else is needed.

    with Chromium() as browser:
        page = browser.open(path)
        page.evaluate("document.title")

What a page writes to its console, what it asks for beyond itself and what fails is in `page.events`.
"""

import base64
import json
import os
import shutil
import subprocess
import tempfile


class Chromium:
    def __init__(self, program=None):
        self.program = program or shutil.which("chromium")
        self.folder = tempfile.mkdtemp(prefix="samebase-chromium-")
        self.number = 0
        self.events = []

    def __enter__(self):
        there, write = os.pipe()
        read, back = os.pipe()
        # The browser reads from its descriptor 3 and writes to 4.
        script = f'exec "$0" "$@" 3<&{there} 4>&{back}'
        arguments = ["--headless=new", "--no-sandbox", "--disable-gpu", "--remote-debugging-pipe", "--no-first-run",
                     "--disable-background-networking", f"--user-data-dir={self.folder}", "about:blank"]
        self.process = subprocess.Popen(["sh", "-c", script, self.program, *arguments], pass_fds=(there, back),
                                        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(there)
        os.close(back)
        self.write, self.read, self.buffer = write, read, b""
        return self

    def __exit__(self, *_):
        self.send("Browser.close")
        self.process.wait(20)
        os.close(self.write)
        os.close(self.read)
        shutil.rmtree(self.folder, ignore_errors=True)

    def message(self):
        while b"\0" not in self.buffer:
            part = os.read(self.read, 1 << 16)
            if not part:
                raise RuntimeError("Chromium has ended")
            self.buffer += part
        text, _, self.buffer = self.buffer.partition(b"\0")
        return json.loads(text)

    def send(self, method, session=None, **params):
        self.number += 1
        message = {"id": self.number, "method": method, "params": params}
        if session:
            message["sessionId"] = session
        os.write(self.write, json.dumps(message).encode("utf-8") + b"\0")
        while True:
            answer = self.message()
            if answer.get("id") != self.number:
                self.events.append(answer)
            elif "error" in answer:
                raise RuntimeError(f"{method}: {answer['error']}")
            else:
                return answer["result"]

    def open(self, path, width=1000, height=1400, dark=False):
        return Page(self, path, width, height, dark)


class Page:
    def __init__(self, browser, path, width, height, dark):
        self.browser = browser
        browser.events.clear()
        target = browser.send("Target.createTarget", url="about:blank")["targetId"]
        self.target = target
        self.session = browser.send("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network"):
            self.send(f"{domain}.enable")
        self.send("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=width < 600)
        self.send("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": "dark" if dark else "light"}])
        self.url = f"file://{path}"
        self.send("Page.navigate", url=self.url)
        while not any(e.get("method") == "Page.loadEventFired" for e in browser.events):
            browser.events.append(browser.message())
        self.events = browser.events

    def send(self, method, **params):
        return self.browser.send(method, self.session, **params)

    def evaluate(self, expression):
        answer = self.send("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise RuntimeError(answer["exceptionDetails"])
        return answer["result"].get("value")

    def complaints(self):
        """What the console says, exceptions, and requests for anything else than the page."""
        told = []
        for event in self.events:
            method, params = event.get("method"), event.get("params", {})
            if method == "Runtime.consoleAPICalled":
                told.append(f"console: {params['args']}")
            elif method == "Runtime.exceptionThrown":
                told.append(f"exception: {params['exceptionDetails']['text']}")
            elif method == "Log.entryAdded":
                told.append(f"log: {params['entry']['text']}")
            elif method == "Network.requestWillBeSent":
                url = params["request"]["url"]
                if url.split("#")[0] != self.url and not url.startswith("data:"):
                    told.append(f"request: {url}")
        return told

    def picture(self, path, full=False):
        data = self.send("Page.captureScreenshot", captureBeyondViewport=full)["data"]
        with open(path, "wb") as file:
            file.write(base64.b64decode(data))

    def pdf(self):
        return base64.b64decode(self.send("Page.printToPDF", preferCSSPageSize=True, printBackground=False)["data"])

    def close(self):
        self.browser.send("Target.closeTarget", targetId=self.target)

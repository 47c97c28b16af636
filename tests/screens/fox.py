"""A Firefox driven by its own standard protocol (WebDriver BiDi), with no driver in between."""

import contextlib
import itertools
import json
import shutil
import subprocess
import tempfile
import time

import websocket
from served import free_port


def command():
    """Where a Firefox is, or None."""
    return shutil.which("firefox") or shutil.which("firefox-esr")


class Fox:
    """One window.

    Parameters
    ----------
    width, height : int
    """

    def __init__(self, width=1366, height=768):
        self._numbers, self._folder, port = itertools.count(1), tempfile.mkdtemp(), free_port()
        self.requests = []
        typed = [command(), "--headless", "--no-remote", "--profile", self._folder, f"--remote-debugging-port={port}"]
        self._process = subprocess.Popen([*typed, "about:blank"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        end = time.monotonic() + 60
        while True:
            try:
                self._wire = websocket.create_connection(
                    f"ws://127.0.0.1:{port}/session", timeout=60, suppress_origin=True
                )
                break
            except OSError:
                if time.monotonic() > end:
                    raise
                time.sleep(0.3)
        self.send("session.new", capabilities={})
        self.send("session.subscribe", events=["network.beforeRequestSent"])
        self._window = self.send("browsingContext.getTree")["contexts"][0]["context"]
        size = {"width": width, "height": height}
        self.send("browsingContext.setViewport", context=self._window, viewport=size)

    def send(self, method, **params):
        """Ask, and wait for the answer."""
        number = next(self._numbers)
        self._wire.send(json.dumps({"id": number, "method": method, "params": params}))
        while True:
            heard = json.loads(self._wire.recv())
            if heard.get("method") == "network.beforeRequestSent":
                self.requests.append(heard["params"]["request"]["url"])
            if heard.get("id") == number:
                if heard["type"] == "error":
                    raise AssertionError(f"{method}: {heard['message']}")
                return heard["result"]

    def goto(self, address):
        """Open an address."""
        self.send("browsingContext.navigate", context=self._window, url=address, wait="complete")

    def ask(self, words):
        """The value of an expression in the page, as JSON has it."""
        asked = {"expression": f"JSON.stringify({words})", "target": {"context": self._window}, "awaitPromise": True}
        found = self.send("script.evaluate", **asked)
        if found["type"] != "success":
            raise AssertionError(found["exceptionDetails"]["text"])
        return json.loads(found["result"].get("value", "null"))

    def wait(self, words, seconds=60):
        """Until an expression holds in the page."""
        end = time.monotonic() + seconds
        while not self.ask(f"!!({words})"):
            assert time.monotonic() < end, words
            time.sleep(0.1)

    def press(self, *keys):
        """Press and let go."""
        actions = [{"type": kind, "value": key} for key in keys for kind in ("keyDown", "keyUp")]
        keyboard = {"type": "key", "id": "keys", "actions": actions}
        self.send("input.performActions", context=self._window, actions=[keyboard])

    def close(self):
        """Close it."""
        with contextlib.suppress(Exception):
            self.send("browser.close")
            self._wire.close()
        self._process.terminate()
        try:
            self._process.wait(20)
        except subprocess.TimeoutExpired:
            self._process.kill()
            self._process.wait(20)
        shutil.rmtree(self._folder, ignore_errors=True)

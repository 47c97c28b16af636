"""A page in Chromium with neither server nor kernel: its own scripts and styles, its messages heard by a page here.

What a browser test of many looks needs and the way through a server would make slow; that way has tests of its own.
"""

import base64
from pathlib import Path

from dryward import school
from dryward.panels.protocol import PageWidget

#: The four sizes of a desk and a class, and a phone; the projector has its switch on.
SIZES = {
    "laptop": (1366, 768),
    "low": (1280, 720),
    "projector": (1920, 1080),
    "tablet": (1024, 768),
    "phone": (390, 844),
}
#: Smallest lettering at each [px].
LETTERS = {"laptop": 11, "low": 11, "projector": 20, "tablet": 11, "phone": 12}

_HERE = Path(__file__).parent
#: The styles of the site round a page.
_SITE = Path(school.__file__).parent / "share" / "voila" / "templates" / "dryward" / "page.css"
_TRAITS = ("texts", "frame", "live", "grounds", "stills", "desk")
_CHROME = """<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>lesson</title><style>{site}</style>
<style>{css}</style></head><body><header class="top"><a class="name" href="#top">dryward</a><nav aria-label="lessons">
<a href="#before">Back: 4. Temperature through the layers</a> <a href="#after">Next: 6. How fast: perms</a>
<a href="#all">All lessons</a></nav></header>
<main id="inside" class="lesson"><h1>lesson</h1><div id="el"></div></main></body></html>"""
_START = (_HERE / "bare.js").read_text("utf-8")


def _encoded(part):
    if isinstance(part, (bytes, memoryview)):
        return {"base64": base64.b64encode(bytes(part)).decode()}
    if isinstance(part, dict):
        return {key: _encoded(each) for key, each in part.items()}
    if isinstance(part, (list, tuple)):
        return [_encoded(each) for each in part]
    return part


class Bare:
    """A window in which pages are shown one after the other.

    `wider` [em] is put between the letters in a scene: 0.07 makes them an eighth wider, as other fonts are.
    """

    def __init__(self, browser, wider=0.0, **looks):
        self.letters = f".dw-page .dw-tag {{ letter-spacing: {wider}em; }}" if wider else ""
        self.window = browser.new_page(**looks)
        self.errors = []
        self.window.on("pageerror", lambda error: self.errors.append(str(error)))
        self.window.expose_function("toPage", self._hear)
        self.page = None

    def show(self, page, size=(1366, 768)):
        """Show a page in a window of a size."""
        self.window.set_viewport_size({"width": size[0], "height": size[1]})
        self.window.set_content(_CHROME.format(site=_SITE.read_text("utf-8"), css=PageWidget._css + self.letters))
        # Only now: what the page before had still to say is heard before this one begins.
        self.page, self._sent = page, {}
        self.window.evaluate(_START, {"esm": PageWidget._esm, "traits": self._changes()})
        self.settle()

    def settle(self):
        """Wait until every message was answered and drawn."""
        self.window.wait_for_function("() => !window.waiting")
        self.window.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")

    def press(self, *keys):
        """Press keys, one after the other."""
        for key in keys:
            self.window.keyboard.press(key)
            self.settle()

    def _hear(self, content):
        self.page.hear(content)
        return self._changes()

    def _changes(self):
        now = {name: getattr(self.page.widget, name) for name in _TRAITS}
        found = {name: each for name, each in now.items() if self._sent.get(name) != each}
        self._sent.update(found)
        return _encoded(found)


#: What is wrong with what the window shows: words cut off or too small, words over words, what is out of sight.
LOOK = (_HERE / "look.js").read_text("utf-8")
#: What must be in sight at once: the scene, the sentence, what is asked, what is moved or chosen, what came of it.
IN_SIGHT = (".dw-box", ".dw-say", ".dw-card .dw-range", ".dw-card .dw-select", ".dw-open .dw-choice", "[data-key=lay]",
            ".dw-answer:not(:empty)", "[data-key=next]")  # fmt: skip

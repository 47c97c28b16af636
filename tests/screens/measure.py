"""Measure key press to changed pixels: ``python tests/screens/measure.py ADDRESS [LESSON] [PRESSES]``.

ADDRESS is the one ``dryward lessons --no-browser`` prints.  The free page of
every lesson is measured (or of the one whose id is given), each beat in which
a slider is moved, and in the same run the floor: a slider that sends its value
to the kernel and writes the answer as a text, which is all that is left when
nothing is worked out and nothing is drawn.  A Markdown table is printed, each
row beside the floor.
The clock starts in the browser when the key arrives and stops at the first
frame painted after the new picture has been decoded, or the new scene is in
the page.
"""

import contextlib
import re
import shutil
import statistics
import sys

import httpx
import sessions
from opening import through_the_beats, to_the_free_page
from playwright.sync_api import sync_playwright

from dryward.teaching import lessons

START = "00-start.ipynb"
FLOOR = "measured-floor.ipynb"

#: The floor: one anywidget with a slider and a text, and a kernel that gives back what it was sent.
_FLOOR = '''
import anywidget, traitlets

class Floor(anywidget.AnyWidget):
    _esm = """
    function render({ model, el }) {
      const range = Object.assign(document.createElement("input"), { type: "range", min: 0, max: 100, value: 40 });
      const text = document.createElement("p");
      range.dataset.key = "slider-floor";
      text.className = "floor-text";
      range.addEventListener("keydown", (event) => {
        event.preventDefault();
        event.stopPropagation();
        range.value = Number(range.value) + (event.key === "ArrowRight" ? 1 : -1);
        model.set("moved", Number(range.value));
        model.save_changes();
      });
      model.on("change:answer", () => { text.textContent = model.get("answer"); });
      el.append(range, text);
    }
    export default { render };
    """
    moved = traitlets.Int(40).tag(sync=True)
    answer = traitlets.Unicode("").tag(sync=True)

    @traitlets.observe("moved")
    def _answer(self, change):
        self.answer = f"{change['new']} of 100"

Floor()
'''

_SCRIPT = """
async ([at, watched, presses]) => {
  const slider = document.querySelector(at);
  const shown = document.querySelector(watched);
  const what = shown.tagName === 'IMG' ? { attributes: true, attributeFilter: ['src'] }
    : { childList: true, subtree: true, characterData: true };
  const frame = () => new Promise(done => requestAnimationFrame(() => {
    const port = new MessageChannel();  // after this frame is painted
    port.port1.onmessage = () => done(performance.now());
    port.port2.postMessage(0);
  }));
  const rest = (ms) => new Promise(done => setTimeout(done, ms));
  // Away from the nearer end, where a press would change nothing, and back.
  const [low, high, here] = [slider.min, slider.max, slider.value].map(Number);
  const [on, back] = high - here < here - low ? ['ArrowLeft', 'ArrowRight'] : ['ArrowRight', 'ArrowLeft'];
  const took = [];
  slider.focus();
  for (let i = 0; i < presses; i++) {
    const changed = new Promise(done => {
      const watch = new MutationObserver(() => { watch.disconnect(); done(); });
      watch.observe(shown, what);
    });
    const key = (i % 20) < 10 ? on : back;
    const start = performance.now();
    slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await changed;
    if (shown.decode) await shown.decode().catch(() => {});
    took.push(await frame() - start);
    await rest(60 + 7 * (i % 5));
  }
  // A drag: as fast as the screen draws, for two seconds.
  let pictures = 0, last = 0;
  const count = new MutationObserver(() => { pictures += 1; last = performance.now(); });
  count.observe(shown, what);
  const begin = performance.now();
  for (let i = 0; performance.now() - begin < 2000; i++) {
    const key = (i % 60) < 30 ? on : back;
    slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await frame();
  }
  const during = pictures / 2, end = performance.now();
  for (let seen = -1; seen !== pictures;) { seen = pictures; await rest(300); }
  count.disconnect();
  return [took, during, Math.max(0, last - end)];
}
"""


def measure(window, slider, watched, presses):
    """Milliseconds of each press, changes a second on a drag, and lag after it [ms]."""
    return window.evaluate(_SCRIPT, [f"[data-key=slider-{slider}]", watched, presses])


def opened(browser, address):
    """A window with a notebook open, its widget there and at rest."""
    window = browser.new_page(viewport={"width": 1366, "height": 768})
    window.goto(address)
    if FLOOR in address:  # not one of the kit's: nobody runs it but us
        window.click(".jp-CodeCell .cm-content", timeout=90_000)
        while not window.locator(".floor-text").count():
            window.keyboard.press("Control+Enter")
            window.wait_for_timeout(3000)
    window.wait_for_selector(".dw-on-stage, .dw-prediction, .dw-layers, .floor-text", state="attached", timeout=90_000)
    window.wait_for_timeout(1500)
    return window


@contextlib.contextmanager
def floor_notebook(address):
    """The notebook of the floor, beside the lessons of the server, as long as the block lasts."""
    root, token = re.match(r"(http://[^/]+)/.*token=(\w+)", address).groups()
    cell = {"cell_type": "code", "id": "page", "source": _FLOOR, "metadata": {}, "outputs": [], "execution_count": None}
    kernel = {"display_name": "", "language": "python", "name": "python3"}
    body = {"cells": [cell], "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5}
    here = f"{root}/api/contents/{FLOOR}"
    with httpx.Client(headers={"Authorization": f"token {token}"}, timeout=30) as ask:
        ask.put(here, json={"type": "notebook", "format": "json", "content": body}).raise_for_status()
        try:
            yield address.replace(START, FLOOR)
        finally:
            ask.delete(here)


def rows(browser, address, presses, wanted):
    """What was measured: (where, slider, presses [ms], changes a second, lag [ms]); the floor first."""
    with floor_notebook(address) as here:
        window = opened(browser, here)
        yield "floor: a slider and a text", "-", *measure(window, "floor", ".floor-text", presses)
        window.close()
        sessions.end_all(address)
    for lesson in lessons.lessons()[1:]:
        if wanted not in ("", lesson.id):
            continue
        window = opened(browser, address.replace(START, lesson.file))
        beats = []

        def moved(beat, control, window=window, lesson=lesson, beats=beats):
            key = control.get_attribute("data-key")
            if key.startswith("slider-"):
                slider = key.removeprefix("slider-")
                found = measure(window, slider, ".dw-scenes", presses)
                beats.append((f"{lesson.number}. {lesson.title}, beat {beat}", slider, *found))

        through_the_beats(window, with_control=moved)
        yield from beats
        to_the_free_page(window)
        window.wait_for_selector(".dw-picture[src]")
        sliders = window.locator("[data-key^=slider-]")
        if sliders.count():
            names = [each.get_attribute("data-key").removeprefix("slider-") for each in sliders.all()]
            # Of an hourly run the day is what is dragged; the others wait for a new run.
            name = "Day" if "Day" in names else names[0]
            yield f"{lesson.number}. {lesson.title}", name, *measure(window, name, ".dw-picture", presses)
        window.close()
        sessions.end_all(address)


def main(address, wanted="", presses=60):
    chromium = shutil.which("chromium") or shutil.which("google-chrome")
    print("| where | slider | median, ms | times the floor | p95, ms | times the floor | changes a second on a drag"
          " | lag after it, ms |\n|---|---|---|---|---|---|---|---|")  # fmt: skip
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=chromium, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        floor = None
        for where, slider, took, changes, lag in rows(browser, address, int(presses), wanted):
            took = sorted(took)
            middle, high = statistics.median(took), took[int(0.95 * len(took))]
            floor = floor or (middle, high)
            cells = f"{middle:.0f} | {middle / floor[0]:.1f} | {high:.0f} | {high / floor[1]:.1f}"
            print(f"| {where} | {slider} | {cells} | {changes:.0f} | {lag:.0f} |", flush=True)
        browser.close()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

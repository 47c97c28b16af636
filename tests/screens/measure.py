"""Measure key press to changed pixels: ``python tests/screens/measure.py ADDRESS [SLIDER] [PRESSES]``.

ADDRESS is the one ``dryward lessons --no-browser`` prints: with it alone, every
lesson is measured and a Markdown table printed; with a lesson's file name in it
and a SLIDER, that one.
The clock starts in the browser when the key arrives and stops at the first
frame painted after the new picture has been decoded.
"""

import shutil
import statistics
import sys

import sessions
from playwright.sync_api import sync_playwright

from dryward.teaching import lessons

START = "00-start.ipynb"

_SCRIPT = """
async ([name, presses]) => {
  const slider = document.querySelector(`[data-key=slider-${name}]`);
  const picture = document.querySelector('.dw-picture');
  const frame = () => new Promise(done => requestAnimationFrame(() => {
    const port = new MessageChannel();  // after this frame is painted
    port.port1.onmessage = () => done(performance.now());
    port.port2.postMessage(0);
  }));
  const rest = (ms) => new Promise(done => setTimeout(done, ms));
  const took = [];
  slider.focus();
  for (let i = 0; i < presses; i++) {
    const changed = new Promise(done => {
      const watch = new MutationObserver(() => { watch.disconnect(); done(); });
      watch.observe(picture, { attributes: true, attributeFilter: ['src'] });
    });
    const key = (i % 20) < 10 ? 'ArrowRight' : 'ArrowLeft';
    const start = performance.now();
    slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await changed;
    await picture.decode().catch(() => {});
    took.push(await frame() - start);
    await rest(60 + 7 * (i % 5));
  }
  // A drag: as fast as the screen draws, for two seconds.
  let pictures = 0, last = 0;
  const count = new MutationObserver(() => { pictures += 1; last = performance.now(); });
  count.observe(picture, { attributes: true, attributeFilter: ['src'] });
  const begin = performance.now();
  for (let i = 0; performance.now() - begin < 2000; i++) {
    const key = (i % 60) < 30 ? 'ArrowRight' : 'ArrowLeft';
    slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await frame();
  }
  const during = pictures / 2, end = performance.now();
  for (let seen = -1; seen !== pictures;) { seen = pictures; await rest(300); }
  count.disconnect();
  return [took, during, Math.max(0, last - end)];
}
"""


def measure(window, slider, presses):
    """Milliseconds of each press, pictures a second on a drag, and lag after it [ms]."""
    return window.evaluate(_SCRIPT, [slider, presses])


def opened(browser, address):
    """A window with the lesson open, unlocked."""
    window = browser.new_page(viewport={"width": 1366, "height": 768})
    window.goto(address)
    window.wait_for_selector(".dw-picture[src]", timeout=90_000)
    window.wait_for_timeout(1500)
    if window.locator(".dw-locked").count():
        window.click(".dw-prediction input[type=radio] >> nth=0")
        window.wait_for_selector(".dw-page:not(.dw-locked)")
    return window


def row(took, pictures, lag):
    """Median and p95 of the presses [ms], pictures a second on a drag, lag after it [ms]."""
    took = sorted(took)
    return statistics.median(took), took[int(0.95 * len(took))], pictures, lag


def table(browser, address, presses):
    """A Markdown table of all lessons, each by its first slider."""
    yield "| lesson | slider | median, ms | p95, ms | pictures a second on a drag | lag after it, ms |"
    yield "|---|---|---|---|---|---|"
    for lesson in lessons.lessons()[1:]:
        window = opened(browser, address.replace(START, lesson.file))
        sliders = window.locator("[data-key^=slider-]")
        if sliders.count():
            names = [each.get_attribute("data-key").removeprefix("slider-") for each in sliders.all()]
            # Of an hourly run the day is what is dragged; the others wait for a new run.
            name = "Day" if "Day" in names else names[0]
            found = row(*measure(window, name, presses))
            yield f"| {lesson.number}. {lesson.title} | {name} | " + " | ".join(f"{each:.0f}" for each in found) + " |"
        else:
            yield f"| {lesson.number}. {lesson.title} | no slider | - | - | - | - |"
        window.close()
        sessions.end_all(address)


def main(address, slider="", presses=60):
    chromium = shutil.which("chromium") or shutil.which("google-chrome")
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=chromium, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        if slider:
            middle, high, pictures, lag = row(*measure(opened(browser, address), slider, int(presses)))
            print(f"{slider}: {presses} presses, median {middle:.0f} ms, p95 {high:.0f} ms")
            print(f"drag: {pictures:.0f} pictures a second, the last {lag:.0f} ms after the drag")
        else:
            for line in table(browser, address, int(presses)):
                print(line, flush=True)
        browser.close()


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

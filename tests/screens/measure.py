"""Measure key press to changed pixels: ``python tests/screens/measure.py ADDRESS [SLIDER] [PRESSES]``.

ADDRESS is the one `dryward --no-browser` prints, with the lesson's file name.
The clock starts in the browser when the key arrives and stops at the first
frame painted after the new picture has been decoded.
"""

import shutil
import statistics
import sys

from playwright.sync_api import sync_playwright

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
  let pictures = 0;
  const count = new MutationObserver(() => { pictures += 1; });
  count.observe(picture, { attributes: true, attributeFilter: ['src'] });
  const begin = performance.now();
  for (let i = 0; performance.now() - begin < 2000; i++) {
    const key = (i % 60) < 30 ? 'ArrowRight' : 'ArrowLeft';
    slider.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await frame();
  }
  const during = pictures / 2, end = performance.now();
  let lag = 0;
  for (let seen = -1; seen !== pictures;) { seen = pictures; lag = performance.now() - end; await rest(150); }
  count.disconnect();
  return [took, during, lag];
}
"""


def measure(window, slider, presses):
    """Milliseconds of each press, pictures a second on a drag, and lag after it [ms]."""
    return window.evaluate(_SCRIPT, [slider, presses])


def main(address, slider="T_out", presses=60):
    chromium = shutil.which("chromium") or shutil.which("google-chrome")
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=chromium, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        window = browser.new_page(viewport={"width": 1366, "height": 768})
        window.goto(address)
        window.wait_for_selector(".dw-picture[src]", timeout=60_000)
        if window.locator(".dw-range").first.is_disabled():
            window.click(".dw-prediction input[type=radio] >> nth=0")
        window.wait_for_selector(".dw-range:not([disabled])")
        took, pictures, lag = measure(window, slider, int(presses))
        browser.close()
    took.sort()
    middle, high = statistics.median(took), took[int(0.95 * len(took))]
    print(f"{slider}: {len(took)} presses, median {middle:.0f} ms, p95 {high:.0f} ms")
    print(f"drag: {pictures:.0f} pictures a second, the last {lag:.0f} ms after the drag")


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))

"""The moving picture of the front page: a bet in lesson 5, the vapor that runs, and what is so.

Run ``python tests/screens/moving.py``: it plays two beats of the real page in a
real Chromium and writes an animated GIF.
"""

import io
import shutil
import sys
import tempfile
from pathlib import Path

from PIL import Image

HERE = Path(__file__).resolve().parent
TARGET = HERE.parents[1] / "lessons" / "guide" / "pictures" / "where-it-gets-wet.gif"
WIDTH, SIZE = 880, (1180, 640)
#: Of a picture that stands, and between two that move [ms].
STANDS, MOVES = 1600, 180


def frames(bare):
    """(picture, how long it stands) of the story: the bet, the run, the reveal, the line that moves."""
    window = bare.window
    part = window.locator(".dw-page")

    def shot(lasts=MOVES):
        picture = Image.open(io.BytesIO(part.screenshot())).convert("RGB")
        high = round(SIZE[1] * WIDTH / SIZE[0])
        sheet = Image.new("RGB", (WIDTH, high), "#efeee7")
        sheet.paste(picture.resize((WIDTH, round(picture.height * WIDTH / picture.width)), Image.Resampling.LANCZOS))
        return sheet, lasts

    def run(count):
        for _ in range(count):
            window.wait_for_timeout(60)
            yield shot()

    yield shot(STANDS)
    window.locator("[data-scene='1'] .dw-spot", has_text="A").click()
    yield shot(STANDS)
    window.click("[data-key=lay]")
    bare.settle()
    yield from run(26)
    yield shot(STANDS)
    window.click("[data-key=next]")
    bare.settle()
    yield from run(6)
    window.focus(".dw-card .dw-range")
    for key, count in (("ArrowLeft", 12), ("ArrowRight", 24)):
        for _ in range(count):
            bare.press(key)
            yield shot()
    yield shot(STANDS)


def main():
    sys.path[:0] = [str(HERE), str(HERE.parent)]
    from bare import Bare  # stands beside this script
    from chromium import FLAGS
    from lesson_page import first_visit
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as folder, sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
        bare = Bare(chromium)
        bare.show(first_visit("where-it-gets-wet", folder), SIZE)
        made = list(frames(bare))
        chromium.close()
    pictures = [each for each, _ in made]
    # One palette for all: from the first, a middle and the last picture together.
    sample = Image.new("RGB", (WIDTH, 3 * pictures[0].height))
    for place, each in enumerate((pictures[0], pictures[len(pictures) // 2], pictures[-1])):
        sample.paste(each, (0, place * each.height))
    palette = sample.quantize(220, dither=Image.Dither.NONE)
    small = [each.quantize(palette=palette, dither=Image.Dither.NONE) for each in pictures]
    TARGET.parent.mkdir(parents=True, exist_ok=True)
    lasts = [each for _, each in made]
    small[0].save(TARGET, save_all=True, append_images=small[1:], duration=lasts, loop=0, optimize=True)
    print(f"{TARGET.name}: {len(small)} pictures, {TARGET.stat().st_size / 1e6:.2f} MB")


if __name__ == "__main__":
    main()

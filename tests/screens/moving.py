"""The moving picture of the front page, made from the real lesson in a real Chromium.

Run ``python tests/screens/moving.py``: it opens lesson 5 through the launcher,
goes past its beats, moves the sliders by key, and writes an animated GIF.
"""

import io
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from PIL import Image

TARGET = Path(__file__).resolve().parents[2] / "lessons" / "guide" / "pictures" / "where-it-gets-wet.gif"
WIDTH = 880
#: Control, key and how often: what the picture tells.
STORY = (
    ("RH_in", "ArrowRight", 24, 2),
    ("Outer", "first", 1, 1),
    ("RH_in", "ArrowLeft", 24, 2),
    ("T_out", "ArrowLeft", 24, 2),
)


def frames(window):
    """The sheet after each press of a key."""
    part = window.locator(".dw-work").first

    def shot():
        picture = Image.open(io.BytesIO(part.screenshot())).convert("RGB")
        return picture.resize((WIDTH, round(picture.height * WIDTH / picture.width)), Image.Resampling.LANCZOS)

    made = [shot()] * 4
    for name, key, times, every in STORY:
        kind = "choice" if key == "first" else "slider"
        control = window.locator(f"[data-key={kind}-{name}]")
        control.focus()
        if key == "first":
            control.select_option(index=0)
            window.wait_for_timeout(400)
            made += [shot()] * 6
            continue
        for press in range(times):
            window.keyboard.press(key)
            if press % every == every - 1:
                window.wait_for_timeout(150)
                made.append(shot())
        made += [made[-1]] * 5
    return made


def main():
    from chromium import FLAGS, LAPTOP, _address  # stand beside this script
    from opening import to_the_free_page
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as folder:
        log = Path(folder) / "log"
        typed = [
            sys.executable,
            "-m",
            "dryward",
            "lessons",
            "--no-browser",
            "--folder",
            f"{folder}/lessons",
            "--port",
            "8770",
        ]
        with log.open("w") as out:
            server = subprocess.Popen(typed, stdout=out, stderr=out, env={**os.environ, "HOME": folder})
        try:
            address = _address(server, log).replace("00-start.ipynb", "05-where-it-gets-wet.ipynb")
            with sync_playwright() as play:
                chromium = play.chromium.launch(executable_path=shutil.which("chromium"), args=FLAGS)
                window = chromium.new_page(viewport={**LAPTOP, "height": 1000})
                window.goto(address)
                to_the_free_page(window, 1)
                window.wait_for_timeout(1500)
                made = frames(window)
                chromium.close()
        finally:
            server.terminate()
    # One palette for all: from the first, a middle and the last picture together.
    sample = Image.new("RGB", (made[0].width, 3 * made[0].height))
    for place, each in enumerate((made[0], made[len(made) // 2], made[-1])):
        sample.paste(each, (0, place * each.height))
    palette = sample.quantize(200, dither=Image.Dither.NONE)
    small = [each.quantize(palette=palette, dither=Image.Dither.NONE) for each in made]
    TARGET.parent.mkdir(parents=True, exist_ok=True)
    small[0].save(TARGET, save_all=True, append_images=small[1:], duration=160, loop=0, optimize=True)
    print(f"{TARGET.name}: {len(small)} pictures, {TARGET.stat().st_size / 1e6:.2f} MB")


if __name__ == "__main__":
    main()

"""The teaching roof built by clicks and keys in a real Chromium: saved, reopened, compared, printed."""

import io

import pytest
from bare import Bare
from lesson_page import open_page
from opening import to_the_free_page

from dryward.building import preset

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def desk(lab, browser):
    """Lesson 17 with its prediction made."""
    window = browser.new_page(viewport={"width": 1366, "height": 768}, accept_downloads=True)
    window.errors, window.asked = [], []
    window.on("pageerror", lambda error: window.errors.append(str(error)))
    window.on("dialog", lambda dialog: (window.asked.append(dialog.type), dialog.accept()))
    window.goto(lab("17-your-roof.ipynb"))
    to_the_free_page(window)
    window.wait_for_selector("[data-key=slider-RH_in]:not([disabled])")
    yield window
    window.close()


def key(window, name):
    return window.locator(f'[data-key="{name}"]')


def typed(window, name, words):
    box = key(window, name)
    box.fill(words)
    box.press("Tab")


def chosen(window, name, value):
    key(window, name).select_option(value)


def names(window):
    return [
        each.input_value()
        for each in window.locator('.dw-desk-table input[data-key^="layer:"][data-key$=":name"]').all()
    ]


def until_rows(window, count):
    window.wait_for_function(
        "n => document.querySelectorAll('.dw-desk-table input[data-key$=\":name\"]').length === n", arg=count
    )


def test_the_teaching_roof_by_hand(desk, tmp_path):
    # Another roof to start from, its layers cleared away but one.
    chosen(desk, "preset", "wood-frame-wall")
    desk.wait_for_function("document.querySelector('[data-key=name]').value === 'my-wood-frame-wall.toml'")
    for left in range(len(names(desk)) - 1, 0, -1):
        key(desk, "layer:1:remove").click()
        until_rows(desk, left)
    target = preset("vented-vault")
    # Each layer found by search and added outside the one before; the first in place of what was left.
    for k, layer in enumerate(target.layers):
        substance = layer.substance
        id = substance.id if hasattr(substance, "id") else substance.origin.id
        typed(desk, "search", substance.name)
        press = key(desk, f"{'add' if k else 'replace'}:{id}")
        press.wait_for(timeout=10_000)
        press.click()
        until_rows(desk, k + 1)
        typed(desk, f"layer:{k}:name", layer.name)
        if layer.thickness:
            typed(desk, f"layer:{k}:thickness", f"{layer.thickness * 1000!r} mm")
    assert names(desk) == [each.name for each in target.layers]
    assert desk.get_by_text("There are changes that are not saved.").is_visible()
    typed(desk, "set:years", "1")
    typed(desk, "name", "by-hand")
    key(desk, "save").click()
    desk.get_by_text("by-hand.toml: saved.").wait_for()
    # Reopened after another roof was begun.
    chosen(desk, "preset", "vented-vault-closed")
    desk.wait_for_function("document.querySelector('[data-key=name]').value === 'my-vented-vault-closed.toml'")
    chosen(desk, "open", "by-hand.toml")
    desk.get_by_text("by-hand.toml: saved.").wait_for()
    assert names(desk) == [each.name for each in target.layers]
    # Checked, compared, printed.
    key(desk, "check:run").click()
    desk.locator('section[aria-label="Checks, side by side"] .dw-verdict').wait_for(
        timeout=240_000
    )  # the first run on a machine compiles
    key(desk, "print:pdf").click()
    link = key(desk, "print:save-pdf")
    desk.get_by_text("by-hand.pdf stands in your folder.").or_(desk.locator(".dw-desk .dw-trouble")).first.wait_for(
        timeout=60_000
    )
    assert desk.locator(".dw-desk .dw-trouble").all_inner_texts() == []
    with desk.expect_download() as waiting:
        link.click()
    content = waiting.value.path().read_bytes()
    _look(content, tmp_path)
    key(desk, "fold-compare").click()
    chosen(desk, "compare", "preset:vented-vault-closed")
    desk.locator("details .dw-verdict", has_text="over the year").wait_for(timeout=60_000)
    assert desk.errors == []


def _look(content, folder):
    """The pages of the PDF as pictures: two at most, gray, neither empty nor cut at the edge."""
    import shutil
    import subprocess

    import numpy as np
    from PIL import Image
    from pypdf import PdfReader

    assert len(PdfReader(io.BytesIO(content)).pages) <= 2
    if not shutil.which("pdftoppm"):
        pytest.skip("pdftoppm is not on this machine")
    (folder / "page.pdf").write_bytes(content)
    subprocess.run(["pdftoppm", "-r", "60", "-png", folder / "page.pdf", folder / "page"], check=True)
    for each in sorted(folder.glob("page*.png")):
        dots = np.asarray(Image.open(each).convert("RGB")).astype(int)
        assert np.abs(dots - dots.mean(axis=2, keepdims=True)).max() < 3, "gray only"
        assert 0.02 < (dots.mean(axis=2) < 200).mean() < 0.5
        margin = 15
        assert dots[:, :margin].min() > 240
        assert dots[:, -margin:].min() > 240


@pytest.mark.parametrize("kept", [False, True])
def test_a_press_is_no_less_a_click_when_the_page_is_built_anew_before_it_ends(browser, tmp_path, monkeypatch, kept):
    """Who types in a field and goes straight on to a button: the field is taken in while the button is down.

    Also where a part of the window keeps the release to itself.
    """
    monkeypatch.chdir(tmp_path)
    bare = Bare(browser)
    bare.show(open_page("your-roof", tmp_path))
    if kept:
        bare.window.evaluate("document.addEventListener('pointerup', (event) => event.stopPropagation(), true)")
    key(bare.window, "name").fill("pressed")
    save = key(bare.window, "save")
    save.scroll_into_view_if_needed()
    box = save.bounding_box()
    bare.window.mouse.move(box["x"] + 5, box["y"] + 5)
    bare.window.mouse.down()
    bare.settle()
    bare.window.mouse.up()
    bare.window.wait_for_timeout(50)
    bare.settle()
    assert bare.window.get_by_text("pressed.toml: saved.").is_visible()
    assert (tmp_path / "pressed.toml").is_file()
    bare.window.close()


def test_nothing_of_the_bench_is_cut(desk):
    for width, mode in ((1366, "us"), (820, "us"), (1366, "projector")):
        desk.set_viewport_size({"width": width, "height": 768})
        if mode == "projector":
            key(desk, "projector").click()
        desk.wait_for_timeout(500)
        cut = desk.evaluate(
            "[...document.querySelectorAll('.dw-desk :is(label, button, h3, h4, p, summary)')]"
            ".filter(e => e.clientWidth > 0 && e.scrollWidth > e.clientWidth + 1)"
            ".filter(e => getComputedStyle(e).display !== 'inline')"
            ".map(e => e.textContent.slice(0, 40))"
        )
        assert cut == [], (width, mode)
        tight = desk.locator(".dw-tight").first.evaluate(
            "e => new Set([...e.children].map(b => Math.round(b.getBoundingClientRect().top))).size"
        )
        # On a tablet they take two lines, so that nobody has to scroll sideways for them.
        assert tight == (2 if width == 820 else 1), "lines of the buttons of a row"
        wide = desk.locator(".dw-desk-scroll").first.evaluate("e => e.scrollWidth - e.clientWidth")
        assert mode == "projector" or wide <= 1, "the table of layers scrolls sideways"
    key(desk, "projector").click()
    desk.set_viewport_size({"width": 1366, "height": 768})


def test_closing_the_tab_with_unsaved_work_asks(desk):
    typed(desk, "set:years", "2")
    desk.wait_for_timeout(500)
    desk.asked.clear()
    desk.reload(wait_until="commit")
    assert "beforeunload" in desk.asked

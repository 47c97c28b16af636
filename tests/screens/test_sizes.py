"""At every size of screen the picture, the control in use and the sentence are in sight together, and can be read.

The free pages, without a server (`bare`); that a served page fits is told in `test_pages.py`, and one in Lab in
`test_lab.py`.
"""

import os

import pytest
from bare import Bare
from lesson_page import open_page

import made_up
from dryward.pictures import style
from dryward.pictures.drawing import DPI, Drawing
from dryward.teaching import lessons

pytestmark = pytest.mark.browser

USUAL = ("read-the-air", "which-way-vapor-goes", "where-it-gets-wet", "the-film-that-changes")
LESSONS = [id if id in USUAL else pytest.param(id, marks=pytest.mark.slow) for id in lessons.pages()]

#: Width, height, and the least size of letters [px] on a page and in a picture.
DESKS = ((1366, 768), (1280, 720), (1024, 768))
PROJECTOR, PHONE = (1920, 1080), (390, 844)
LEAST = {**dict.fromkeys(DESKS, 11.0), PROJECTOR: 20.0, PHONE: 12.0}
#: The smallest letters of a picture, as it is drawn [px].
DRAWN = {
    size: look.small * DPI / 72
    for size, look in (*((desk, style.NORMAL) for desk in DESKS), (PROJECTOR, style.PROJECTOR), (PHONE, style.NARROW))
}

#: What is wrong on the page as it stands, each in a few words.
FAULTS = """
([least, drawn, sharp]) => {
  const wrong = [];
  const named = (e) => `${e.className || e.tagName} "${e.textContent.trim().slice(0, 30)}"`;
  const box = (e) => e.getBoundingClientRect();
  const all = (at) => [...document.querySelectorAll(at)]
    .filter(e => box(e).width > 2 && getComputedStyle(e).visibility === 'visible');
  if (document.scrollingElement.scrollWidth > innerWidth) wrong.push('scrolls sideways');
  const work = [...all('.dw-layers'), ...all('.dw-sentence'), ...all('.dw-control')];
  for (const e of work) {
    const b = box(e);
    const over = Math.max(-b.left, -b.top, b.right - innerWidth, b.bottom - innerHeight);
    if (over > 0.5) wrong.push(`out of sight by ${Math.round(over)}: ${named(e)}`);
  }
  for (const kind of ['.dw-layers', '.dw-sentence']) if (!all(kind).length) wrong.push(`no ${kind}`);
  for (const slider of all('.dw-range')) {
    const share = box(slider).width / box(slider.closest('.dw-control')).width;
    const wide = box(slider.closest('.dw-control')).width / box(slider.closest('.dw-board')).width;
    const phone = document.querySelector('.dw-narrow');
    if (share < 0.55 || (phone && wide < 0.95)) wrong.push(`short: ${slider.dataset.key}`);
  }
  for (const image of all('.dw-ground')) {
    const letters = drawn * box(image).width / (image.naturalWidth / sharp);
    if (letters < least - 0.1) wrong.push(`letters of the picture: ${letters.toFixed(1)}`);
  }
  const walk = document.createTreeWalker(document.querySelector('.dw-page'), NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !e.checkVisibility() || box(e).width < 2) continue;
    const size = parseFloat(getComputedStyle(e).fontSize);
    if (size < least) wrong.push(`${size.toFixed(1)} px: ${named(e)}`);
  }
  for (const e of all('.dw-page *')) {
    // What is typed runs on in its field, and a wide table scrolls in its own frame.
    if (e.closest('.dw-status, .dw-strip, .dw-one .dw-label, .dw-desk-scroll, input') || !e.clientWidth) continue;
    if (getComputedStyle(e).display === 'inline') continue;
    if (e.scrollWidth > e.clientWidth + 1) wrong.push(`cut: ${named(e)}`);
  }
  // The parts stand beside and below each other.
  const beside = '.dw-question, .dw-switches, .dw-prediction, .dw-readout, .dw-dock > .dw-select, .dw-action';
  const parts = [...work, ...all(beside)];
  parts.forEach((one, index) => parts.slice(index + 1).forEach((other) => {
    const a = box(one), b = box(other);
    const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
    const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    if (wide > 1 && high > 1) wrong.push(`${named(one)} over ${named(other)} by ${Math.round(Math.min(wide, high))}`);
  }));
  return wrong;
}
"""


@pytest.fixture(scope="module")
def bare(browser):
    """One window for all lessons."""
    found = Bare(browser)
    yield found
    found.window.close()


def opened(bare, folder, id):
    """The lesson in a window of a laptop, as who made the bet comes back to it."""
    bare.show(open_page(id, folder), DESKS[0])
    bare.window.wait_for_selector(".dw-picture[src]")


def turned(window, size):
    """The window at a size, with what it wants of the page: other pictures, or the projector."""
    window.set_viewport_size(dict(zip(("width", "height"), size, strict=True)))
    window.evaluate("scrollTo(0, 0)")
    window.wait_for_function(f"() => Boolean(document.querySelector('.dw-narrow')) === {str(size == PHONE).lower()}")
    if (window.locator(".dw-projector").count() > 0) != (size == PROJECTOR):
        window.click("[data-key=projector]")
        window.wait_for_selector(".dw-projector" if size == PROJECTOR else ".dw-page:not(.dw-projector)")
    kind = 2 * Drawing.narrow_size[0] if size == PHONE else Drawing.projector_size[0] if size == PROJECTOR else 0
    window.wait_for_function(
        "width => [...document.querySelectorAll('.dw-ground')]"
        ".every(e => e.complete && (e.naturalWidth === width || !width))"
        " && document.querySelector('.dw-sentence').textContent && !document.querySelector('.dw-busy')",
        arg=kind,
    )
    window.evaluate("scrollTo(0, 0)")


def faults(window, size):
    """What is wrong at a size, for each control that can be in use."""
    turned(window, size)
    asked = [LEAST[size], DRAWN[size], 2 if size == PHONE else 1]
    found = window.evaluate(FAULTS, asked)
    choice = window.locator("[data-key=in-use]")
    if choice.count():
        for value in choice.locator("option").evaluate_all("all => all.map(each => each.value)"):
            choice.select_option(value)
            found += [f"{value}: {each}" for each in window.evaluate(FAULTS, asked)]
    return found


def noted(window, name):
    """A picture of the screen, in the folder that DRYWARD_SCREENSHOTS names."""
    if folder := os.environ.get("DRYWARD_SCREENSHOTS"):
        window.screenshot(path=f"{folder}/{name}.png")


@pytest.mark.parametrize("id", LESSONS)
def test_in_sight_together(bare, tmp_path, id):
    opened(bare, tmp_path, id)
    wrong = {}
    for size in (*DESKS, PHONE, PROJECTOR):
        wrong[size] = faults(bare.window, size)
        noted(bare.window, f"{id}-{size[0]}x{size[1]}")
    assert {size: each for size, each in wrong.items() if each} == {}


@pytest.mark.parametrize("id", LESSONS)
def test_in_sight_together_in_a_longer_language(bare, tmp_path, id):
    wrong = {}
    with made_up.spoken():
        opened(bare, tmp_path, id)
        for size in (DESKS[1], PHONE):
            wrong[size] = faults(bare.window, size)
            noted(bare.window, f"{id}-{size[0]}x{size[1]}-longer")
    assert {size: each for size, each in wrong.items() if each} == {}


#: Of all text in sight: how strongly it stands out from what is behind it, where that is under 4.5 to 1.
FAINT = """
() => {
  const numbers = (text) => (text.match(/[\\d.]+/g) || []).map(Number);
  const light = (rgb) => rgb.slice(0, 3).map(c => c / 255)
    .map(c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)
    .reduce((sum, c, k) => sum + c * [0.2126, 0.7152, 0.0722][k], 0);
  const behind = (e) => {
    for (; e; e = e.parentElement) {
      const found = numbers(getComputedStyle(e).backgroundColor);
      if (found.length === 3 || found[3] > 0) return found;
    }
    return [255, 255, 255];
  };
  const faint = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.data.trim() || !e.checkVisibility({ visibilityProperty: true })) continue;
    const [one, other] = [light(numbers(getComputedStyle(e).color)), light(behind(e))];
    const contrast = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    if (contrast < 4.5) faint.push(`${contrast.toFixed(1)}: ${e.className || e.tagName} ${e.textContent.slice(0, 30)}`);
  }
  return faint;
}
"""

#: What looks different although it means different: by name, each look as one text.
LOOKS = """
() => {
  const all = (at) => [...document.querySelectorAll(at)];
  const style = (e, pseudo) => getComputedStyle(e, pseudo);
  const fill = (e) => style(e).backgroundImage + style(e).backgroundColor;
  const strip = all('.dw-strip.dw-has-strip')[0];
  const span = (state) => {
    const made = document.createElement('span');
    made.className = `dw-span dw-is-${state}`;
    strip.append(made);
    const found = fill(made);
    made.remove();
    return found;
  };
  const sentence = document.querySelector('.dw-sentence');
  const border = (state) => {
    const before = sentence.className;
    sentence.className = `dw-sentence dw-is-${state}`;
    const found = style(sentence).borderLeftStyle + style(sentence).borderLeftWidth;
    sentence.className = before;
    return found;
  };
  const pressed = (on) => fill(all(`.dw-switches [aria-pressed="${on}"]`)[0]);
  const slider = all('.dw-range')[0];
  const thumb = () => style(slider).getPropertyValue('--blue') + style(slider).opacity;
  const free = thumb();
  slider.disabled = true;
  const shut = thumb();
  slider.disabled = false;
  slider.focus();
  const ring = style(slider);
  return {
    strips: ['dry', 'damp', 'wet', 'not-known-yet'].map(span),
    sentences: ['dry', 'damp', 'wet'].map(border),
    buttons: [pressed(true), pressed(false)],
    sliders: [free, shut],
    ring: [ring.outlineColor, style(document.querySelector('.dw-page')).backgroundColor],
    ringWidth: parseFloat(ring.outlineWidth),
    frame: style(all('.dw-layers')[0]).boxShadow + style(all('.dw-layers')[0]).borderTopStyle,
  };
}
"""

#: Themes of a system; a contrast theme is light or dark.
THEMES = {
    "dark": {"color_scheme": "dark"},
    "contrast": {"forced_colors": "active"},
    "dark contrast": {"forced_colors": "active", "color_scheme": "dark"},
}


@pytest.mark.parametrize("theme", THEMES)
def test_a_theme_keeps_every_distinction(browser, tmp_path, theme):
    bare = Bare(browser, **THEMES[theme])
    opened(bare, tmp_path, "where-it-gets-wet")
    noted(bare.window, f"theme-{theme}")
    looks = bare.window.evaluate(LOOKS)
    assert looks.pop("ringWidth") >= 2
    assert looks.pop("frame") != "nonenone"
    for name, each in looks.items():
        assert len(set(each)) == len(each), (name, each)
    assert bare.window.evaluate(FAINT) == []
    bare.window.close()


@pytest.mark.parametrize(("system", "lab"), [("light", "false"), ("dark", "true")])
def test_lab_says_which_of_its_themes_it_wears(browser, tmp_path, system, lab):
    """A dark Lab on a light system, and a light one on a dark system."""
    bare = Bare(browser, color_scheme=system)
    opened(bare, tmp_path, "where-it-gets-wet")
    paper = "getComputedStyle(document.querySelector('.dw-page')).backgroundColor"
    before = bare.window.evaluate(paper)
    bare.window.evaluate("lab => document.body.setAttribute('data-jp-theme-light', lab)", lab)
    assert bare.window.evaluate(paper) != before
    bare.window.evaluate("document.body.setAttribute('data-jp-theme-light', 'true')")
    light = bare.window.evaluate(paper)
    assert (light == before) is (system == "light")
    bare.window.close()

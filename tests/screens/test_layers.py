"""A picture of two layers in the browser: together they are the whole, and never of two looks.

The script of the sheet runs in an empty page with a model of its own; what it
is sent comes from real pages, so that no server is needed.
"""

import base64
import io
import json

import fox
import numpy as np
import pytest
from lesson_page import first_visit
from PIL import Image

from dryward import panels
from dryward.panels import protocol
from dryward.panels.learner import Settings
from dryward.panels.protocol import PageWidget
from dryward.teaching import lessons
from dryward.teaching.progress import Progress

pytestmark = pytest.mark.browser

_STAGE = """
async ({ esm, texts }) => {
  // Which ground was the newest when each layer was made, and what is not yet released.
  window.pairs = {}; window.held = new Set(); window.newest = '';
  const make = URL.createObjectURL, release = URL.revokeObjectURL;
  URL.createObjectURL = (blob) => {
    const made = make.call(URL, blob);
    window.held.add(made);
    if (blob.type === 'image/webp') window.newest = made;
    if (blob.type === 'image/png') window.pairs[made] = window.newest;
    return made;
  };
  URL.revokeObjectURL = (address) => { window.held.delete(address); release.call(URL, address); };
  // A picture loaded apart takes `late` ms longer.
  window.late = 0;
  const Real = window.Image;
  const place = Object.getOwnPropertyDescriptor(HTMLImageElement.prototype, 'src');
  window.Image = function () {
    const image = new Real(), late = window.late;
    const set = (address) => place.set.call(image, address);
    Object.defineProperty(image, 'src', { get: () => place.get.call(image),
      set: (address) => late ? setTimeout(set, late, address) : set(address) });
    return image;
  };
  const heard = {}, state = { desk: {}, texts };
  let text = '';
  const view = (words) => new DataView(Uint8Array.from(atob(words), (each) => each.charCodeAt(0)).buffer);
  window.model = {
    get: (name) => state[name], set() {}, save_changes() {}, send() {},
    on(name, act) { (heard[name] = heard[name] || []).push(act); },
    off(name, act) { heard[name] = heard[name].filter((each) => each !== act); },
    take(message, frame) {
      const { live, grounds } = message;
      state.live = { ...live, pictures: live.pictures.map(view) };
      if (grounds.join() !== text) state.grounds = grounds.map(view);
      text = grounds.join();
      if (frame) { state.frame = message.frame; (heard['change:frame'] || []).forEach((act) => act()); }
      (heard['change:live'] || []).forEach((act) => act());
    },
  };
  // `make` of the page itself is not for this module.
  const module = await import(make.call(URL, new Blob([esm], { type: 'text/javascript' })));
  window.open_view = () => {
    const el = document.createElement('div');
    document.body.append(el);
    return module.default.render({ model: window.model, el });
  };
  // What stands on the screen in each frame: a ground with the layer of another is wrong.
  window.wrong = []; window.looks = new Set(); window.frames = 0;
  const look = () => {
    for (const each of document.querySelectorAll('.dw-layers')) {
      const [ground, moving] = each.children;
      if (!ground.src && !moving.src) continue;
      window.frames += 1;
      window.looks.add(ground.src);
      if (window.pairs[moving.src] !== ground.src) window.wrong.push([ground.src, moving.src]);
      if (!ground.complete || !ground.naturalWidth) window.wrong.push('a ground that is not there yet');
    }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
  return true;
}
"""
_STEADY = """
() => [...document.querySelectorAll('.dw-layers img')].every((each) => each.complete && each.naturalWidth)
  && document.querySelector('.dw-picture') && window.pairs[document.querySelector('.dw-picture').src] === window.newest
"""


def message(page):
    """What the kernel sends, with bytes as text."""
    live = {**page.widget.live, "pictures": [_text(each) for each in page.widget.live["pictures"]]}
    return {"frame": page.widget.frame, "live": live, "grounds": [_text(each) for each in page.widget.grounds]}


def _text(data):
    return base64.b64encode(data).decode()


@pytest.fixture
def opened(tmp_path):
    def opened(id, **settings):
        kept = Settings(Progress(tmp_path))
        for name, value in {"instructor": True, **settings}.items():
            kept[name] = value
        kept.predicted(id, lessons.lesson(id).prediction.right)  # who comes back, to the free page
        return panels.page(id, "us", kept)

    return opened


@pytest.fixture
def stage(browser):
    """An empty window with the script of the sheet and its style."""
    window = browser.new_page(viewport={"width": 1366, "height": 768})
    window.set_content(f"<!doctype html><style>{PageWidget._css}</style><body></body>")
    window.evaluate(_STAGE, {"esm": PageWidget._esm, "texts": protocol.texts()})
    yield window
    window.close()


def take(window, page, frame=False):
    window.evaluate("([message, frame]) => window.model.take(message, frame)", [message(page), frame])


def settled(window):
    window.wait_for_function(_STEADY, timeout=20_000)


_BOX = "document.querySelectorAll('.dw-layers')[{}].getBoundingClientRect().toJSON()"


def cropped(shot, box):
    """The pixels of a picture on the screen, which stands on whole pixels."""
    left, top, width, height = (round(box[each]) for each in ("left", "top", "width", "height"))
    screen = np.asarray(Image.open(io.BytesIO(shot)).convert("RGB")).astype(int)
    return screen[top : top + height, left : left + width]


def seen(window, number=0):
    """The pixels of a picture on the screen."""
    window.evaluate(f"document.querySelectorAll('.dw-layers')[{number}].scrollIntoView()")
    return cropped(window.screenshot(), window.evaluate(_BOX.format(number)))


def whole(page):
    return np.asarray(Image.open(io.BytesIO(page.picture)).convert("RGB")).astype(int)


@pytest.mark.parametrize(
    ("id", "name", "values"),
    [
        ("where-it-gets-wet", "T_out", (20, 100, 0)),
        ("july", "T_out", (85, 150, 60)),
        ("open-out-tight-in", "T_out", (20, 0, 50)),
        ("vent-space", "Gap", (1.5, 0.5, 2)),
    ],
)
def test_what_is_seen_is_the_whole_picture(opened, stage, id, name, values):
    page = opened(id)
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    for value in values:
        page.controls[name].value = value
        take(stage, page)
        settled(stage)
        assert np.abs(seen(stage) - whole(page)).max() <= 1
    assert stage.evaluate("window.wrong") == []


def test_a_picture_that_is_saved_is_the_whole_picture(opened, stage):
    page = opened("where-it-gets-wet")
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    settled(stage)
    stage.click(".dw-picture", button="right")
    saved = stage.evaluate("document.querySelector('.dw-picture').src")
    kind, data = saved.split(",")
    assert kind == "data:image/png;base64"
    kept = np.asarray(Image.open(io.BytesIO(base64.b64decode(data))).convert("RGB")).astype(int)
    assert np.array_equal(kept, whole(page))
    page.controls["T_out"].value = 0
    take(stage, page)
    settled(stage)
    assert np.abs(seen(stage) - whole(page)).max() <= 1


def test_units_and_projector_bring_their_own_ground(opened, stage):
    page = opened("where-it-gets-wet")
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    for change in ({"kind": "system", "value": "si"}, {"kind": "projector", "value": True}):
        page.hear(change)
        take(stage, page, frame=True)
        settled(stage)
        stage.set_viewport_size({"width": 1366, "height": 1500})
        width = stage.evaluate("document.querySelector('.dw-ground').naturalWidth")
        assert width == page.live_pictures()[0].width
        boxes = stage.evaluate(
            "[...document.querySelectorAll('.dw-layers, .dw-layers img')].map(e => e.getBoundingClientRect().toJSON())"
        )
        assert all(each == boxes[0] for each in boxes)
    assert stage.evaluate("window.wrong") == []


def test_no_ground_is_seen_with_the_layer_of_another(opened, stage):
    page = opened("where-it-gets-wet")
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    settled(stage)
    messages = []
    for value in (60, 100, 99, 60, 20, -20, -19, 20, 60, 100):
        page.controls["T_out"].put(value)
        page.refresh()
        messages.append(message(page))
    stage.evaluate(
        """async (messages) => {
          for (let i = 0; i < 60; i++) {
            window.late = [0, 40, 5][i % 3];
            window.model.take(messages[i % messages.length]);
            await new Promise((done) => setTimeout(done, [0, 12, 30, 3][i % 4]));
          }
        }""",
        messages,
    )
    stage.wait_for_timeout(300)
    settled(stage)
    assert stage.evaluate("window.wrong") == []
    assert stage.evaluate("window.looks.size") > 3
    assert stage.evaluate("window.frames") > 20
    assert np.abs(seen(stage) - whole(page)).max() <= 1


def test_the_newest_wins_over_one_that_loads_slowly(opened, stage):
    page = opened("where-it-gets-wet")
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    settled(stage)
    for late, value in ((500, 100), (500, 99), (0, -20), (0, -19)):
        stage.evaluate(f"window.late = {late}")
        page.controls["T_out"].value = value
        take(stage, page)
    settled(stage)
    stage.wait_for_timeout(800)
    assert stage.evaluate(_STEADY)
    assert np.abs(seen(stage) - whole(page)).max() <= 1
    assert stage.evaluate("window.wrong") == []


def test_a_second_view_shows_the_same_and_what_is_gone_is_released(opened, stage):
    page = opened("where-it-gets-wet")
    take(stage, page, frame=True)
    stage.evaluate("void (window.ends = [window.open_view()])")
    settled(stage)
    for value in (100, 60, 61, 62, -20):
        page.controls["T_out"].value = value
        take(stage, page)
    settled(stage)
    stage.evaluate("void window.ends.push(window.open_view())")
    stage.wait_for_function("[...document.querySelectorAll('.dw-layers img')].every(e => e.naturalWidth)")
    assert np.array_equal(seen(stage, 0), seen(stage, 1))
    assert stage.evaluate("window.held.size") == 4
    # A view that goes while a picture still loads releases that one too.
    stage.evaluate("window.late = 200")
    page.controls["T_out"].value = 100
    take(stage, page)
    stage.evaluate("window.ends.forEach((end) => end())")
    stage.wait_for_timeout(500)
    assert stage.evaluate("window.held.size") == 0


def test_nothing_before_the_bet_and_printed_both_layers(stage, tmp_path, monkeypatch):
    monkeypatch.setattr(lessons.module("july", "page").PAGE, "play", None)  # a page with its prediction above it
    page = first_visit("july", tmp_path)
    take(stage, page, frame=True)
    stage.evaluate("void window.open_view()")
    drawn = "[...document.querySelectorAll('.dw-layers img')].filter(e => e.naturalWidth).length"
    assert (stage.evaluate(drawn), page.widget.grounds) == (0, [])
    page.hear({"kind": "predict", "choice": 0})
    take(stage, page, frame=True)
    settled(stage)
    assert stage.evaluate(drawn) == 2
    filters = "[...document.querySelectorAll('.dw-layers img')].map(e => getComputedStyle(e).filter)"
    assert stage.evaluate(filters) == ["none"] * 2
    stage.emulate_media(media="print")
    assert stage.evaluate(filters) == ["grayscale(1)"] * 2
    gray = seen(stage)
    assert np.ptp(gray, axis=2).max() <= 1
    drawn = whole(page) @ (0.2126, 0.7152, 0.0722)
    assert np.abs(gray[..., 0] - drawn).max() <= 4
    stage.emulate_media(media="screen")


def test_firefox_shows_ground_and_layer_together(opened):
    if fox.command() is None:
        pytest.skip("no Firefox found: install it to run this")
    page = opened("where-it-gets-wet")
    messages = [message(page)]
    for value in (100, 99, 20, -20, 20):
        page.controls["T_out"].value = value
        messages.append(message(page))
    window = fox.Fox()
    try:
        window.goto("about:blank")
        window.ask("(document.head.append(document.createElement('style')), null)")
        window.ask(f"(document.querySelector('style').textContent = {json.dumps(PageWidget._css)}, null)")
        window.ask(f"(({_STAGE})({json.dumps(PageWidget._esm)}).then(() => window.ready = true), null)")
        window.wait("window.ready")
        window.ask(f"(window.model.take({json.dumps(messages[0])}, true), window.open_view(), null)")
        for each in messages[1:] * 4:
            window.ask(f"(window.model.take({json.dumps(each)}), null)")
        window.wait(f"({_STEADY})()")
        assert window.ask("window.wrong") == []
        assert window.ask("window.looks.size") > 2
        shot = window.send("browsingContext.captureScreenshot", context=window._window)["data"]
        shown = cropped(base64.b64decode(shot), window.ask(_BOX.format(0)))
        drawn = whole(page)[: shown.shape[0]]
        assert shown.shape[0] > 300
        assert np.abs(shown - drawn).max() <= 1
    finally:
        window.close()

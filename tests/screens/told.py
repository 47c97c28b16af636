"""All texts of a page at both ends and the middle of each control, for tests that read them."""

from lesson_page import on_the_way
from matplotlib.text import Text

#: What of a message to the browser is no text of the reader's: ids, keys and looks.
NO_TEXT = {
    "name", "id", "key", "kind", "class", "type", "file", "mark", "answer", "system", "spans", "state", "fold",
    "accept", "retype", "at", "points", "axes", "side", "look", "glyph", "control",
}  # fmt: skip
#: Of the desk, what the learner types.
TYPED = "desk.value"
#: Of the sum, step by step.
SUMS = ("live.words", "live.formula", "live.result")


def texts(part, key):
    """(what it is, the text) of all that a reader sees in what goes to the browser."""
    if isinstance(part, str):
        yield key, part
    elif isinstance(part, dict):
        for name, inside in part.items():
            if name not in NO_TEXT:
                yield from texts(inside, f"{key.partition('.')[0]}.{name}")
    elif isinstance(part, (list, tuple)):
        for inside in part:
            yield from texts(inside, key)


def _drawn(page):
    for picture, view in zip(page.live_pictures(), page.result.views, strict=True):
        figure = picture._for(view).figure
        yield from (("drawn", each.get_text()) for each in figure.findobj(Text) if each.get_visible())


def _now(page):
    yield from texts({key: each for key, each in page.widget.live.items() if key not in ("values", "pictures")}, "live")
    yield from texts(page.widget.desk, "desk")
    if not page.covered:
        yield from _drawn(page)


def everywhere(page):
    """Every text of a page once, as (what it is, the text): beat by beat, then with the sums open, at each control's
    ends and middle.
    """
    found = {}
    for _ in on_the_way(page):
        found |= dict.fromkeys(texts(page.widget.frame, "frame")) | dict.fromkeys(_now(page))
    page.hear({"kind": "fold", "key": "arithmetic", "open": True})
    found |= dict.fromkeys(texts(page.widget.frame, "frame")) | dict.fromkeys(_now(page))
    for control in page.controls.values():
        middle = () if control.options else (control.rounded(control.at(0.5)),)
        for value in control.options or (control.min, *middle, control.max):
            control.value = value
            assert page.trouble == ""
            found |= dict.fromkeys(_now(page))
        control.value = control.start
    return [each for each in found if each[1].strip()]

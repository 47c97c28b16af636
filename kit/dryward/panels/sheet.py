"""The sheet: the one widget a page is shown with.

Why one widget and not a box of many: a move of a slider is then one message
to the kernel and one back, the picture, the numbers and the words change
together, and sliders, choices and folds are the browser's own, which a
keyboard and a screen reader know.  Nothing is fetched: scripts and styles
travel with the widget.
"""

from importlib.resources import files

import anywidget
import traitlets

_STATIC = files("dryward.panels") / "static"
_SCRIPTS = ("parts.js", "controls.js", "folds.js", "bench.js", "sheet.js")

#: What stands in the place of a page when no kernel runs.
STANDING = "A lesson page of dryward: run this cell to see its picture and move its sliders."


def _text(name):
    return _STATIC.joinpath(name).read_text("utf-8")


class Sheet(anywidget.AnyWidget):
    """What the browser shows of a page.

    Attributes
    ----------
    frame : dict
        What rarely changes: words, units, locks.  A new one builds the page anew.
    live : dict
        What a slider changes: what moves in the pictures, numbers, sentence, strips.
    grounds : list of bytes
        What stands in each picture, under what moves; sent with `live`, and only when it is another.
    bench : dict
        Sections with fields, tables and buttons, for a page that has them.
    moves : dict
        From the browser: the values of all controls, with a serial number.
    """

    _esm = "\n".join(_text(name) for name in _SCRIPTS)
    _css = _text("sheet.css")

    frame = traitlets.Dict().tag(sync=True)
    live = traitlets.Dict().tag(sync=True)
    grounds = traitlets.List().tag(sync=True)
    bench = traitlets.Dict().tag(sync=True)
    moves = traitlets.Dict().tag(sync=True, echo_update=False)

    def __repr__(self):
        return STANDING

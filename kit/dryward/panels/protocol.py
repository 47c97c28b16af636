"""What a page and its browser say to each other: one widget, one table of messages, one version.

From the browser comes what the reader does (`MESSAGES`), checked here before a
page hears it.  To the browser goes what the widget holds: `Frame` when words,
units or locks change, `Live` and the grounds of the pictures with every move,
`Desk` for the sections of a page that is worked on.

Why one widget and not a box of many: a move of a slider is then one message
to the kernel and one back, the picture, the numbers and the words change
together, and sliders, choices and folds are the browser's own, which a
keyboard and a screen reader know.  Nothing is fetched: scripts and styles
travel with the widget.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from importlib.resources import files
from types import NoneType
from typing import Any, TypedDict

import anywidget
import traitlets

from dryward import language
from dryward.checks import PlainError
from dryward.language import message
from dryward.pictures import scenery
from dryward.units.table import signs

#: A message of another version comes from a page that an older or newer kit has drawn.
VERSION = 1

#: Kind -> its fields and what each may hold.  A page answers with the method ``_on_<kind>``.
MESSAGES: dict[str, dict[str, tuple[type, ...]]] = {
    "opened": {},  # the page stands on the screen
    "seen": {},  # the index came into view again
    "moved": {"serial": (int,), "system": (str,), "values": (dict,)},  # controls by name, in the shown unit
    "typed": {"name": (str,), "text": (str, NoneType)},  # into a slider's field; None takes it back
    "action": {"name": (str,)},  # a button beside the controls
    "desk": {"key": (str,), "value": (str, int, float, bool, NoneType)},  # a field or button of a section
    "predict": {"choice": (int, NoneType)},  # None: once more
    "beat": {"number": (int,)},  # to a beat of the stage, or past the last one
    "bet": {"choice": (int,)},  # the open bet of the beat
    "reveal": {},
    "hands": {"choice": (int,), "by": (int,)},
    "answer": {"number": (int,), "choice": (int,)},
    "new_questions": {},
    "still": {"belief": (str,), "holds": (bool,)},  # do you still say so
    "set_out": {"belief": (str,)},  # the picture as the words that deny it say
    "fold": {"key": (str,), "open": (bool,)},
    "system": {"value": (str,)},
    "projector": {"value": (bool,)},
    "narrow": {"value": (bool,)},  # the page has a place as wide as a phone, or no more
    "instructor": {"value": (bool,)},
}

#: What the browser says by itself: the facts that it puts in, by the name of each text.
TEXTS: dict[str, tuple[str, ...]] = {
    "switches": (),
    "us": (),
    "us-title": (),
    "si": (),
    "si-title": (),
    "projector": (),
    "projector-title": (),
    "instructor": (),
    "instructor-title": (),
    "prediction": (),
    "hand-fewer": ("choice",),
    "hand-more": ("choice",),
    "marked-right": ("choice",),
    "reveal-key": (),
    "hide-key": (),
    "guess-locked": ("needs",),
    "guess": ("needs",),
    "you-predicted": (),
    "what-is-right": (),
    "hide": (),
    "bet-right": (),
    "bet-not-right": (),
    "again": (),
    "checks": (),
    "new-numbers": (),
    "right": (),
    "not-right": (),
    "asked": ("number", "question"),
    "still": (),
    "still-hint": (),
    "still-waits": (),
    "still-yes": (),
    "still-no": (),
    "still-back": (),
    "on": (),
    "on-named": ("lesson",),
    "titled": ("title",),
    "controls": (),
    "in-use": (),
    "arithmetic": (),
    "lesson": ("number", "title"),
    "takeaway": (),
    "cautions": (),
    "covered": (),
    "typed": ("label",),
    "amount": ("number", "unit"),
    "below-zero": ("number",),
    "play": (),
    "pause": (),
    "play-one": ("label",),
    "so-many-of": ("done", "total"),
    "beat-of": ("at", "count"),
    "next-beat": (),
    "beat-before": (),
    "to-the-bench": (),
    "to-the-beats": (),
    "lay-bet": (),
    "your-bet": ("choice",),
    "show-it": (),
    "next-bet": (),
    "hands-up": (),
    "keys-bet": (),
    "keys-move": (),
    "hold-vapor": (),
    "read-aloud": (),
    "film": (),
    "film-play": (),
    "film-stop": (),
    "film-at": (),
    "film-hint": (),
    "film-two": ("month", "first", "one", "second", "two"),
}


def texts() -> dict[str, str]:
    """What the browser says by itself, with ``{name}`` for a fact; the decimal mark; the language's name.

    And the signs of units that have a blank in them, at which no line is to end.
    """
    found = {
        name: message(f"panels.js-{name}", **{fact: f"{{{fact}}}" for fact in facts}) for name, facts in TEXTS.items()
    }
    parted = "\n".join(sign for sign in signs() if " " in sign)
    return {**found, "decimal-mark": message("units.decimal-mark"), "language": language.name(), "parted-signs": parted}


@dataclass(frozen=True)
class Message:
    """What the reader did, in the shape that `MESSAGES` asks for."""

    kind: str
    fields: Mapping[str, Any]


class Malformed(PlainError):
    """A message that no page of this version sends."""

    def __init__(self, why: str = "panels.not-of-the-browser") -> None:
        super().__init__(message(why))


def read(content: object) -> Message:
    """The message in what came from the browser.

    Raises
    ------
    Malformed
        For what the table does not have.
    """
    if not isinstance(content, Mapping):
        raise Malformed
    if content.get("version", VERSION) != VERSION:
        raise Malformed("panels.of-another-version")
    kind = content.get("kind")
    fields = MESSAGES.get(kind) if isinstance(kind, str) else None
    # `type` and not isinstance: to Python True is a number.
    if fields is None or not all(type(content.get(name)) in kinds for name, kinds in fields.items()):
        raise Malformed
    return Message(str(kind), {name: content.get(name) for name in fields})


def place(number: int, things: Sequence[object]) -> int:
    """A number that must count one of some things, from 0.

    Raises
    ------
    Malformed
        For a number beyond them.
    """
    if not 0 <= number < len(things):
        raise Malformed
    return number


class Frame(TypedDict):
    """What rarely changes; a new one builds the page on the screen anew."""

    number: int
    title: str
    question: str
    care: str
    needs: str
    system: str
    projector: bool
    narrow: bool
    type_size: int
    instructor: bool
    locked: bool
    reveal: bool
    prediction: dict[str, Any]
    controls: list[dict[str, Any]]
    actions: list[dict[str, str]]
    pictures: list[dict[str, int]]
    readouts: list[dict[str, str]]
    has_arithmetic: bool
    folds: list[dict[str, Any]]
    questions: list[dict[str, Any]]
    still_waits: bool  # whether they are asked for later
    still: list[dict[str, Any]]  # beliefs of the lesson, once the questions are answered right
    on: dict[str, Any]  # the next lesson by pathway, then
    unkept: str
    takeaway: str
    cautions: list[dict[str, str]]
    stage: dict[str, Any] | None  # the beat that is on; see `stage.Stage.frame`


class Live(TypedDict):
    """What a move changes."""

    seen: int  # serial of the newest move that was heard
    values: dict[str, float | str]
    errors: dict[str, str]
    retype: str  # the slider whose field takes the number as it was understood
    strips: dict[str, dict[str, Any]]
    drawn: int  # counts the drawings; pictures of an old count are not put on the screen again
    pictures: list[bytes]
    alts: list[str]
    readouts: list[dict[str, str]]
    sentence: str
    given: str  # what the page holds fixed
    state: str
    trouble: str
    steps: list[dict[str, str]]
    busy: bool
    stage: dict[str, Any] | None  # what is so on the stage; see `stage.Stage.live`


class Desk(TypedDict, total=False):
    """The sections of a page that is worked on; see `desk.parts`."""

    sections: list[dict[str, Any]]
    unsaved: bool  # the browser asks before it closes


_STATIC = files("dryward.panels") / "static"
_SCRIPTS = ("parts.js", "controls.js", "desk.js", "checks.js", "stage.js", "film.js", "page.js")


def _text(name: str) -> str:
    return _STATIC.joinpath(name).read_text("utf-8")


def _colors() -> str:
    """One color a quantity on the stage, as in the pictures."""
    return ".dw-page {" + "".join(f"{name}:{color};" for name, color in scenery.colors().items()) + "}"


class PageWidget(anywidget.AnyWidget):
    """What the browser shows of a page; each trait is one half of a talk.

    `texts` is what it says by itself; `grounds` are what stands in each picture, under what moves, and `stills`
    in each scene of the stage: sent with `live`, and only when it is another.  `moves` comes from the browser.
    """

    _esm = "\n".join([f"const VERSION = {VERSION};", *(_text(name) for name in _SCRIPTS)])
    _css = "\n".join([_text("page.css"), _text("stage.css"), _colors()])

    texts = traitlets.Dict().tag(sync=True)
    frame = traitlets.Dict().tag(sync=True)
    live = traitlets.Dict().tag(sync=True)
    grounds: traitlets.List[bytes] = traitlets.List().tag(sync=True)
    stills: traitlets.List[dict[str, Any]] = traitlets.List().tag(sync=True)
    desk = traitlets.Dict().tag(sync=True)
    moves = traitlets.Dict().tag(sync=True, echo_update=False)

    def __repr__(self) -> str:
        return message("panels.standing")

"""Logger files on the desk: what was guessed, put right by the reader; the model over the same hours."""

from __future__ import annotations

import re
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from dryward import building
from dryward.building.job import Job, Tightness
from dryward.checks import BadFile
from dryward.language import called, message
from dryward.panels.desk import parts
from dryward.panels.desk.layers import Troubles
from dryward.panels.desk.parts import Part
from dryward.physics import hourly
from dryward.physics.hourly import Hours
from dryward.report import setting
from dryward.weather import Air, loggers

if TYPE_CHECKING:
    from dryward.building import Assembly
    from dryward.weather.loggers import Guess, Readings

#: Largest logger file [bytes].
LIMIT = 20_000_000
#: Letters of the title of a column.
_TITLE = 40
#: Between cells: the sign, and what it is called.
_DELIMITERS = ((",", "comma"), (";", "semicolon"), ("\t", "tab"), ("|", "upright-line"))
_ORDERS = ("ymd", "mdy", "dmy")


class File:
    """One logger file, what was guessed of its form, and its readings."""

    def __init__(self, name: str, content: bytes, path: Path) -> None:
        self.name, self._content = name, content
        self.guess = loggers.guess(path)
        self.readings = loggers.read(path, self.guess)

    @classmethod
    def sample(cls, name: str) -> File:
        """A file of the kit's own making."""
        with loggers.sample(name) as path:
            return cls(name, Path(path).read_bytes(), path)

    @classmethod
    def of(cls, content: bytes, name: str) -> File:
        """Bytes that the reader brought."""
        # Of a path only the end, and of that only what any computer takes in a file name.
        last = re.split(r"[/\\]", name)[-1]
        name = re.sub(r"[^\w .()+-]+", "-", last)[-60:].strip(" .") or "file.csv"
        with _temporary(bytes(content), name) as path:
            return cls(name, bytes(content), path)

    def change(self, guess: Guess) -> None:
        """Read it again with another guess; when that fails the old one stays."""
        with _temporary(self._content, self.name) as path:
            readings = loggers.read(path, guess)
        self.guess, self.readings = guess, readings

    def again(self, **known: str) -> None:
        """Guess anew with something known, such as the delimiter; when that fails the old guess stays."""
        with _temporary(self._content, self.name) as path:
            guess = loggers.guess(path, **known)
            readings = loggers.read(path, guess)
        self.guess, self.readings = guess, readings


@contextmanager
def _temporary(content: bytes, name: str) -> Iterator[Path]:
    """The bytes as a file for a moment: the reader of files reads files."""
    with ExitStack() as kept:
        try:
            path = Path(kept.enter_context(tempfile.TemporaryDirectory(prefix="dryward-")), name)
            path.write_bytes(content)
        except OSError as error:
            raise BadFile(message("panels.file-not-kept", name=name, why=error.strerror)) from None
        yield path


def edited(file: File, what: str, value: Any) -> None:
    """Put one part of the guess right; what cannot be is a `PlainError`, and the file stays as it was.

    `what` is "delimiter", "decimal", "header_lines", "date_order", "clock", or
    "column:N:quantity", "column:N:unit", "column:N:place".
    """
    if what == "delimiter":
        file.again(delimiter=value)
    elif what.startswith("column:"):
        _, number, part = what.split(":")
        file.change(file.guess.column(int(number), **{part: value}))
    elif what == "header_lines":
        try:
            count = int(str(value))
        except ValueError:
            raise BadFile(message("panels.lines-above-whole", given=str(value)[:20])) from None
        file.change(file.guess.change(header_lines=count))
    else:
        file.change(file.guess.change(**{what: value}))


def guess_section(file: File, troubles: Troubles) -> Part:
    """What was assumed about the file, each part changeable."""
    guess = file.guess
    rows = []
    for column in guess.columns:
        key = f"guess:column:{column.number}"
        units = loggers.UNITS.get(column.quantity)
        rows.append(
            [
                message("panels.column-title", number=column.number, title=column.header or message("panels.no-title"))[
                    :_TITLE
                ],
                parts.select(
                    f"{key}:quantity",
                    message("panels.column-holds"),
                    [(q, called(q)) for q in loggers.QUANTITIES],
                    column.quantity,
                    bare=True,
                ),
                parts.select(
                    f"{key}:unit",
                    message("panels.column-unit"),
                    [(each, loggers.unit_as_read(each)) for each in units],
                    column.unit,
                    bare=True,
                )
                if units
                else "",
                parts.select(
                    f"{key}:place",
                    message("panels.column-place"),
                    [("", message("panels.place-not-said")), *((p, loggers.place_name(p)) for p in loggers.PLACES)],
                    column.place,
                    bare=True,
                )
                if units
                else "",
            ]
        )
    wrong = [words for key, words in troubles.items() if key.startswith("guess:")]
    return parts.section(
        "guess",
        message("panels.guess"),
        *(parts.text(words, "dw-trouble", alert=True) for words in wrong),
        parts.row(
            parts.select(
                "guess:delimiter",
                message("panels.between-cells"),
                [(sign, message(f"panels.cells-{name}")) for sign, name in _DELIMITERS],
                guess.delimiter,
            ),
            parts.select(
                "guess:decimal",
                message("panels.decimal-sign"),
                ((".", message("panels.decimal-point")), (",", message("panels.decimal-comma"))),
                guess.decimal,
            ),
            parts.field("guess:header_lines", message("panels.lines-above"), guess.header_lines, size=4),
            parts.select(
                "guess:date_order",
                message("panels.dates"),
                [(each, message(f"panels.dates-{each}")) for each in _ORDERS],
                guess.date_order,
            ),
            parts.select("guess:clock", message("panels.clock"), [(c, called(c)) for c in loggers.CLOCKS], guess.clock),
        ),
        parts.table(
            (
                message("panels.head-column"),
                message("panels.head-holds"),
                message("panels.head-unit"),
                message("panels.head-place"),
            ),
            rows,
        ),
        parts.items(file.readings.notes) if file.readings.notes else None,
        fold="open",
    )  # fmt: skip


def modelled(
    readings: Readings, roof: Assembly, start: float = 0.8, ach50: float | None = None
) -> tuple[Hours, NDArray[np.datetime64]]:
    """The hours of the readings run through the model, and when they were.

    The readings need records of indoors and outdoors, the roof a wooden "outer
    layer" or "sheathing".  All layers start at a relative humidity [-].  With
    `ach50`, the air changes of the house at 50 Pa [1/h], a leak is counted, in a
    house of usual size with a fifth of its leaks in the roof.
    """
    outdoors, room = loggers.driving(readings)
    flow = None
    if ach50 is not None:
        tightness = Tightness(ach50)
        leak = setting.leak(Job(roof, tightness=tightness))
        assert leak is not None  # its tightness is known
        flow = hourly.leak_flow(leak, outdoors, room.at(outdoors)[0], height=tightness.height)
    run = hourly.simulate(roof, outdoors, room, hours=outdoors.hours, initial=Air(10.0, start), leak=flow)
    shared = loggers.shared_clock(readings["indoors"], readings["outdoors"])[0]
    return run, shared.time[: run.time.size]


def cold_face(run: Hours) -> tuple[str, str]:
    """The layer that a logger in the cavity sits at, and at which of its faces."""
    for name in ("outer layer", "sheathing", "insulation"):
        try:
            layer = run.assembly.layer(name)
        except LookupError:
            continue
        if isinstance(layer.substance, building.Material):
            return name, "outer" if name == "insulation" else "inner"
    raise BadFile(message("panels.no-outer-layer", roof=called(run.assembly.name)))


def days(time: NDArray[np.datetime64], origin: np.datetime64) -> NDArray[np.float64]:
    """Times as days since an origin."""
    return (time - origin) / np.timedelta64(86400, "s")

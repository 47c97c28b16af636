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
from dryward.panels.desk import parts
from dryward.panels.desk.layers import Troubles
from dryward.panels.desk.parts import Part
from dryward.report import setting
from dryward.weather import Air, loggers

if TYPE_CHECKING:
    from dryward.building import Assembly
    from dryward.physics.hourly import Hours
    from dryward.weather.loggers import Guess, Readings

#: Largest logger file [bytes].
LIMIT = 20_000_000
_DELIMITERS = ((",", "comma"), (";", "semicolon"), ("\t", "tab"), ("|", "upright line"))
_ORDERS = (("ymd", "year, month, day"), ("mdy", "month, day, year"), ("dmy", "day, month, year"))


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
            raise BadFile(f"{name}: it cannot be kept while it is read ({error.strerror}).") from None
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
            raise BadFile(
                f'The lines above the first reading must be a whole number, not "{str(value)[:20]}".'
            ) from None
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
                f"{column.number}. {column.header or 'no title'}"[:40],
                parts.select(
                    f"{key}:quantity", "holds", [(q, q) for q in loggers.QUANTITIES], column.quantity, bare=True
                ),
                parts.select(f"{key}:unit", "unit", [(u, u) for u in units], column.unit, bare=True) if units else "",
                parts.select(
                    f"{key}:place",
                    "place",
                    [("", "not said"), *((p, p) for p in loggers.PLACES)],
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
        "What the kit assumed about this file; change what is wrong",
        *(parts.text(words, "dw-trouble", alert=True) for words in wrong),
        parts.row(
            parts.select("guess:delimiter", "Between cells", _DELIMITERS, guess.delimiter),
            parts.select("guess:decimal", "Decimal sign", ((".", "point"), (",", "comma")), guess.decimal),
            parts.field("guess:header_lines", "Lines above the readings", guess.header_lines, size=4),
            parts.select("guess:date_order", "Dates", _ORDERS, guess.date_order),
            parts.select("guess:clock", "Clock", [(c, c) for c in loggers.CLOCKS], guess.clock),
        ),
        parts.table(("Column", "Holds", "Unit", "Place"), rows),
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
    from dryward.physics import hourly

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
    raise BadFile(f"The roof {run.assembly.name} has no outer layer that a logger could sit at.")


def days(time: NDArray[np.datetime64], origin: np.datetime64) -> NDArray[np.float64]:
    """Times as days since an origin."""
    return (time - origin) / np.timedelta64(86400, "s")

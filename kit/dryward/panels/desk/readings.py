"""Logger files on the desk: what was guessed, put right by the reader; the model over the same hours."""

import re
import tempfile
from contextlib import ExitStack, contextmanager
from pathlib import Path

import numpy as np

from dryward import building
from dryward.building.job import Job, Tightness
from dryward.checks import BadFile
from dryward.panels.desk import parts
from dryward.report import setting
from dryward.weather import Air, loggers

#: Largest logger file [bytes].
LIMIT = 20_000_000
_DELIMITERS = ((",", "comma"), (";", "semicolon"), ("\t", "tab"), ("|", "upright line"))
_ORDERS = (("ymd", "year, month, day"), ("mdy", "month, day, year"), ("dmy", "day, month, year"))
_UNUSED = "not used"


class File:
    """One logger file, its guess and its readings.

    Attributes
    ----------
    name : str
    guess : Guess
    readings : Readings
    """

    def __init__(self, name):
        self.name, self.path, self._kept = name, None, None
        self.guess = self.readings = None

    @classmethod
    def sample(cls, name):
        """A file of the kit's own making."""
        made = cls(name)
        with loggers.sample(name) as path:
            made._look(path)
        return made

    @classmethod
    def of(cls, content, name):
        """Bytes that the reader brought."""
        # Of a path only the end, and of that only what any computer takes in a file name.
        last = re.split(r"[/\\]", name)[-1]
        made = cls(re.sub(r"[^\w .()+-]+", "-", last)[-60:].strip(" .") or "file.csv")
        # The reader of files reads files: so the bytes become one for a moment.
        made._kept = bytes(content)
        with made._as_path() as path:
            made._look(path)
        return made

    def _as_path(self):
        return _temporary(self._kept, self.name)

    def _look(self, path, guess=None):
        self._kept = self._kept if self._kept is not None else Path(path).read_bytes()
        self.guess = guess or loggers.guess(path)
        self.readings = loggers.read(path, self.guess)

    def change(self, guess):
        """Read it again with another guess; when that fails the old one stays."""
        with self._as_path() as path:
            readings = loggers.read(path, guess)
        self.guess, self.readings = guess, readings

    def again(self, **known):
        """Guess anew with something known, such as the delimiter."""
        with self._as_path() as path:
            guess = loggers.guess(path, **known)
            readings = loggers.read(path, guess)
        self.guess, self.readings = guess, readings


@contextmanager
def _temporary(content, name):
    with ExitStack() as kept:
        try:
            path = Path(kept.enter_context(tempfile.TemporaryDirectory(prefix="dryward-")), name)
            path.write_bytes(content)
        except OSError as error:
            raise BadFile(f"{name}: it cannot be kept while it is read ({error.strerror}).") from None
        yield path


def edited(file, what, value):
    """Put one part of the guess right.

    Parameters
    ----------
    file : File
    what : str
        "delimiter", "decimal", "header_lines", "date_order", "clock", or
        "column:N:quantity", "column:N:unit", "column:N:place".
    value : str

    Raises
    ------
    BadFile, OutOfRange, UnknownName
        With one sentence; the file stays as it was.
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


def guess_section(file, troubles):
    """What was assumed about the file, each part changeable.

    Parameters
    ----------
    file : File
    troubles : dict

    Returns
    -------
    dict
    """
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


def modelled(readings, roof, start=0.8, ach50=None):
    """The hours of the readings run through the model.

    Parameters
    ----------
    readings : Readings
        With records of indoors and outdoors.
    roof : Assembly
        With a layer called "outer layer" or "sheathing" of wood.
    start : float
        Relative humidity of all layers at the start [-].
    ach50 : float, optional
        Air changes of the house at 50 Pa [1/h]; then a leak is counted, in a
        house of usual size with a fifth of its leaks in the roof.

    Returns
    -------
    Hours, array of n
        The run, and its hours as datetime64.
    """
    from dryward.physics import hourly

    outdoors, room = loggers.driving(readings)
    flow = None
    if ach50 is not None:
        job = Job(roof, tightness=Tightness(ach50))
        flow = hourly.leak_flow(setting.leak(job), outdoors, room.at(outdoors)[0], height=job.tightness.height)
    run = hourly.simulate(roof, outdoors, room, hours=outdoors.hours, initial=Air(10.0, start), leak=flow)
    shared = loggers.shared_clock(readings["indoors"], readings["outdoors"])[0]
    return run, shared.time[: run.time.size]


def cold_face(run):
    """The layer whose inner face a logger in the cavity sits at."""
    for name in ("outer layer", "sheathing", "insulation"):
        try:
            layer = run.assembly.layer(name)
        except LookupError:
            continue
        if isinstance(layer.substance, building.Material):
            return name, "outer" if name == "insulation" else "inner"
    raise BadFile(f"The roof {run.assembly.name} has no outer layer that a logger could sit at.")


def days(time, origin):
    """Times as days since an origin."""
    return (time - origin) / np.timedelta64(86400, "s")

"""What a result and a roof offer at a prompt: a picture, a table, and both of them in a notebook.

The rooms that compute neither draw nor print.  They only mark what can be shown; the rooms
above, which know how, are looked up by name when a person asks.
"""

from __future__ import annotations

import base64
from html import escape
from importlib import import_module
from types import ModuleType
from typing import TYPE_CHECKING, Literal, overload

from dryward.checks import PlainError
from dryward.language import message

if TYPE_CHECKING:
    import pandas
    from matplotlib.figure import Figure

#: Who draws a result, and who writes its table.
_PICTURES, _TABLES = "dryward.pictures.exhibits", "dryward.report.tables"


#: Most letters of the line that stands for a result.
_LONGEST = 160


def one_line(kind: str, words: str) -> str:
    """How a result is named at a prompt: its kind and what counts, in one line."""
    line = f"{kind}({' '.join(words.split())})"
    return line if len(line) <= _LONGEST else f"{line[: _LONGEST - 2]}…)"


class NotInstalled(PlainError, ImportError):
    """A library that this needs is not installed."""


def library(name: str, needs: str | None = None) -> ModuleType:
    """A module that needs a library, or one sentence that names the library where it is missing."""
    try:
        return import_module(name)
    except ModuleNotFoundError as trouble:
        missing = (trouble.name or "").partition(".")[0]
        if missing != (needs or name):
            raise
        raise NotInstalled(message("exhibit.needs", library=missing)) from None


class Exhibit:
    """A result, or a thing that is built, which can be drawn and written as a table."""

    def plot(self, unit_system: Literal["us", "si"] = "us") -> Figure:
        """A Matplotlib figure of it, in US or SI units; a notebook shows it, ``savefig`` writes it to a file."""
        figure: Figure = library(_PICTURES, "matplotlib").figure(self, unit_system)
        return figure

    @overload
    def to_table(self, form: Literal["text"] = "text", unit_system: Literal["us", "si"] = "us") -> str: ...

    @overload
    def to_table(self, form: Literal["pandas"], unit_system: Literal["us", "si"] = "us") -> pandas.DataFrame: ...

    def to_table(
        self, form: Literal["text", "pandas"] = "text", unit_system: Literal["us", "si"] = "us"
    ) -> str | pandas.DataFrame:
        """Its main numbers: as text to print, or as a table of pandas with the unit in the head of each column."""
        tables = import_module(_TABLES)
        if form == "pandas":
            library("pandas")
        found: str | pandas.DataFrame = tables.table(self, form, unit_system)
        return found

    def _repr_html_(self) -> str:
        """A notebook's view: the picture where Matplotlib is installed, and the table."""
        shown = import_module(_TABLES).html(self, "us")
        try:
            pictures = library(_PICTURES, "matplotlib")
        except NotInstalled:
            return f"<p>{escape(repr(self))}</p>{shown}"
        picture, words = pictures.png(self, "us")
        data = base64.b64encode(picture).decode("ascii")
        return f'<p>{escape(repr(self))}</p><img alt="{escape(words)}" src="data:image/png;base64,{data}">{shown}'

"""The main numbers of each kind of result, as a table: text, HTML, or pandas."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial, singledispatch
from html import escape
from typing import TYPE_CHECKING, cast

import numpy as np

from dryward import units
from dryward.building import AirSpace, Assembly
from dryward.checks import OutOfRange, UnknownName
from dryward.exhibit import library
from dryward.language import called, message
from dryward.physics.drying import Drying
from dryward.physics.hourly import Hours
from dryward.physics.limits import Range
from dryward.physics.monthly import Months
from dryward.physics.steady import Profile, Sweep
from dryward.report.check import worded
from dryward.verdict import Verdict, states_of_sweep, words

if TYPE_CHECKING:
    import pandas

#: How a table can be had.
FORMS = ("text", "pandas")
#: Rows of a sweep that are printed; a table of pandas has all.
_MOST = 24


@dataclass(frozen=True)
class Column:
    """One column: what it is of, its values in SI or in words, and the quantity of `units.SHOWN` (empty for words)."""

    id: str
    values: Sequence[object]
    quantity: str = ""
    #: Its head, where that is not said by the id in ``report.table-...``.
    own: str = ""

    @property
    def head(self) -> str:
        """What stands over it."""
        return self.own or message(f"report.table-{self.id}")

    def cells(self, unit_system: str) -> list[str]:
        """The values as they are read; nothing where there is none."""
        return [self._cell(value, unit_system) for value in self.values]

    def _cell(self, value: object, unit_system: str) -> str:
        if value is None or (isinstance(value, float) and math.isnan(value)):
            return "-"
        if self.quantity and isinstance(value, (int, float)):
            if math.isinf(value):
                return message("report.no-limit")
            return units.show(value, self.quantity, unit_system)
        if isinstance(value, str):
            return units.read_in(value, unit_system)
        return units.written(value, ".4g") if isinstance(value, float) else str(value)

    def numbers(self, unit_system: str) -> tuple[str, list[object]]:
        """Head with its unit, and plain values, for a table that is computed with."""
        if not self.quantity:
            return self.head, [
                units.read_in(each, unit_system) if isinstance(each, str) else each for each in self.values
            ]
        unit = units.shown_unit(self.quantity, unit_system)
        shown: list[object] = [
            math.nan if value is None else units.from_si(cast(float, value), unit.name) for value in self.values
        ]
        return f"{self.head} [{unit.symbol}]", shown


def table(result: object, form: str = "text", unit_system: str = "us") -> str | pandas.DataFrame:
    """The table of a result: text to print, or a DataFrame of pandas."""
    if form not in FORMS:
        raise UnknownName("form of a table", form, FORMS)
    if unit_system not in units.SHOWN:
        raise UnknownName("unit system", unit_system, units.SHOWN)
    found = columns(result)
    if form == "pandas":
        return library("pandas").DataFrame(dict(column.numbers(unit_system) for column in found))
    return _text(found, unit_system)


def html(result: object, unit_system: str = "us") -> str:
    """The table of a result for a notebook."""
    found = columns(result)
    heads = "".join(f"<th>{escape(column.head)}</th>" for column in found)
    rows = zip(*(column.cells(unit_system) for column in found), strict=True)
    body = "".join(f"<tr>{''.join(f'<td>{escape(cell)}</td>' for cell in row)}</tr>" for row in rows)
    return f"<table><thead><tr>{heads}</tr></thead><tbody>{body}</tbody></table>"


def _text(found: Sequence[Column], unit_system: str) -> str:
    """Words stand left, numbers right, two spaces between columns."""
    cells = [[column.head, *column.cells(unit_system)] for column in found]
    more = len(cells[0]) - 1 - _MOST
    cells = [each[: _MOST + 1] for each in cells]
    widths = [max(map(len, each)) for each in cells]
    numeric = [bool(column.values) and not isinstance(column.values[0], str) for column in found]
    lines = [
        "  ".join(f"{cell:>{wide}}" if right else f"{cell:<{wide}}" for cell, wide, right in zip(
            row, widths, numeric, strict=True)).rstrip()
        for row in zip(*cells, strict=True)
    ]  # fmt: skip
    return "\n".join([*lines, *([message("report.rows-more", count=more)] if more > 0 else [])])


@singledispatch
def columns(result: object) -> list[Column]:
    """The columns of a result, by its kind."""
    raise OutOfRange(message("report.no-table-of", given=repr(str(result)[:40])))


@columns.register
def _(assembly: Assembly) -> list[Column]:
    layers = assembly.layers
    return [
        Column("layer-from-inside", [called(layer.name) for layer in layers]),
        Column("made-of", [called(layer.substance.name) for layer in layers]),
        Column("thickness", [layer.thickness for layer in layers], "length"),
        Column("thermal-resistance", [None if layer.is_membrane else layer.thermal_resistance for layer in layers],
            "thermal resistance",
        ),
        Column("permeance-at-50",
            [None if isinstance(layer.substance, AirSpace) else layer.permeance for layer in layers], "permeance",
        ),
    ]  # fmt: skip


@columns.register
def _(state: Profile) -> list[Column]:
    # The faces of the layers and the two airs; a plane inside a layer only where it is wet.
    rates = {plane.node: plane.rate for plane in state.wet_planes}
    last = len(state.depth) - 1
    nodes = [
        node
        for node in range(last + 1)
        if node in (0, last) or node in rates or state.place[node - 1] != state.place[node]
    ]
    return [
        Column("place", [_place(state, node, last) for node in nodes]),
        Column("depth", [float(state.depth[node]) for node in nodes], "length"),
        Column("temperature", [float(state.temperature[node]) for node in nodes], "temperature"),
        Column("vapor-pressure", [float(state.vapor_pressure[node]) for node in nodes], "pressure"),
        Column("saturation", [float(state.saturation_vapor_pressure[node]) for node in nodes], "pressure"),
        Column("humidity", [float(state.relative_humidity[node]) for node in nodes], "relative humidity"),
        Column("water-gained", [rates.get(node) for node in nodes], "vapor flux"),
    ]


def _place(state: Profile, node: int, last: int) -> str:
    if node in (0, last):
        return called("outdoor air" if node else "room air")
    inner, outer = state.between(node)
    return (
        message("report.inside-layer", layer=called(inner)) if inner == outer else f"{called(inner)} | {called(outer)}"
    )


@columns.register
def _(cases: Sweep) -> list[Column]:
    def flat(values: np.ndarray) -> list[float]:
        return [float(value) for value in np.ravel(values)]

    return [
        Column("case", list(range(1, cases.gain.size + 1))),
        Column("state", [worded(str(state)) for state in np.ravel(states_of_sweep(cases))]),
        Column("water-gained", flat(cases.gain), "vapor flux"),
        Column("highest-humidity", flat(cases.highest_relative_humidity), "relative humidity"),
        Column("at-a-depth-of", flat(cases.highest_depth), "length"),
        Column("vapor-in", flat(cases.vapor_flux_in), "vapor flux"),
        Column("vapor-out", flat(cases.vapor_flux_out), "vapor flux"),
    ]


@columns.register
def _(states: Range) -> list[Column]:
    return [
        Column("", [float(v) for v in states.values], states.quantity, called(states.variable.replace("_", " "))),
        Column("state", [worded(str(state)) for state in states.states]),
    ]


@columns.register
def _(drying: Drying) -> list[Column]:
    return [
        Column("way", [message(f"report.way-of-{way}") for way in ("inward", "outward", "both")]),
        Column("drying", [drying.inward, drying.outward, drying.total], "vapor flux"),
    ]


@columns.register
def _(months: Months) -> list[Column]:
    def sums(values: np.ndarray) -> list[float]:
        return [float(value) for value in np.reshape(values, (12, -1)).sum(axis=1)]

    return [
        Column("month", [words.month(month) for month in months.month]),
        Column("condensed", sums(months.condensed), "area density"),
        Column("evaporated", sums(months.evaporated), "area density"),
        Column("held-at-its-end", sums(months.held), "area density"),
    ]


@columns.register
def _(hours: Hours) -> list[Column]:
    layers = [hours.layer(name) for name in hours.layer_names]
    return [
        Column("layer-from-inside", [called(layer.name) for layer in layers]),
        Column("coldest", [float(layer.temperature.min()) for layer in layers], "temperature"),
        Column("warmest", [float(layer.temperature.max()) for layer in layers], "temperature"),
        Column("highest-humidity", [float(layer.highest_relative_humidity.max()) for layer in layers],
            "relative humidity",
        ),
        Column("most-moisture-mass", [_mass_percent(layer.moisture_content.max()) for layer in layers]),
        Column("at-the-end-mass", [_mass_percent(layer.moisture_content[-1]) for layer in layers]),
        Column("most-free-water", [float(layer.condensed.max()) for layer in layers], "area density"),
    ]  # fmt: skip


def _mass_percent(value: float) -> float | None:
    return round(float(value), 1) if math.isfinite(value) else None


@columns.register
def _(verdict: Verdict) -> list[Column]:
    found = verdict.findings
    return [
        Column("state", [worded(each.state) for each in found]),
        Column("what-was-found", [units.InBoth.of(partial(words.told, each, verdict.method)) for each in found]),
        Column("how-long", [words.lasted(each, verdict.method) for each in found]),
        Column("limit-of", [words.limit_of(each) for each in found]),
        Column("caution", [each.criterion.caution for each in found]),
        Column("damage", [each.criterion.damage for each in found]),
        Column("unit", [each.criterion.unit for each in found]),
        Column("source", [each.criterion.source for each in found]),
    ]

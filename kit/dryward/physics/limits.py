"""The state along a slider: where the assembly is dry, damp or wet, with all else as it is."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from itertools import groupby
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.building import Assembly
from dryward.checks import Floats, Numeric, OutOfRange, UnknownName
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, listing, message
from dryward.physics import steady
from dryward.physics.airleak import Leak
from dryward.physics.hourly import AirFlow, batch, varied
from dryward.physics.nodes import nodes_of
from dryward.units import written
from dryward.verdict import DRY, of_year, states_of_sweep
from dryward.weather import Air, HourlyWeather
from dryward.weather.indoor import Room

#: The quantity of a variable, by how its name ends.
_QUANTITIES = {
    "temperature": "temperature",
    "relative humidity": "relative humidity",
    "permeance": "permeance",
    "thermal resistance": "thermal resistance",
    "thickness": "length",
}


def quantity_of(variable: str) -> str:
    """The quantity of a variable, as in `units.SHOWN`, by how its name ends; empty for a factor or a share."""
    spoken = variable.replace("_", " ")
    return next((quantity for end, quantity in _QUANTITIES.items() if spoken.endswith(end)), "")


@dataclass(frozen=True)
class Range(Exhibit):
    """The state at each of some values of one variable.

    Attributes
    ----------
    variable : str
    values : ndarray, SI
        As they were asked, in their order.
    states : ndarray of str
        "dry", "damp", "wet" or "not known yet" at each.
    """

    variable: str
    values: Floats
    states: NDArray[np.object_]

    def __repr__(self) -> str:
        runs = []
        for state, pairs in groupby(zip(self.states, self.values, strict=True), key=lambda pair: pair[0]):
            values = [value for _, value in pairs]
            ends = {"first": written(values[0], ".4g"), "last": written(values[-1], ".4g")}
            runs.append(message("physics.run-of-states", state=called(state), **ends, alone=len(values) == 1))
        return one_line("Range", message("physics.range-line", variable=self.variable, runs=listing(runs)))

    @property
    def quantity(self) -> str:
        """The quantity of what was varied, as in `quantity_of`."""
        return quantity_of(self.variable)

    def __iter__(self) -> Iterator[str]:
        return iter(self.states)

    def __len__(self) -> int:
        return len(self.states)

    @property
    def holds(self) -> NDArray[np.bool_]:
        """Where it is dry: an array of booleans."""
        return self.states == DRY

    @property
    def spans(self) -> tuple[tuple[float, float], ...]:
        """Stretches ((first value, last value), ...) where it is dry."""
        edges = np.flatnonzero(np.diff(np.concatenate(([0], self.holds.astype(int), [0]))))
        return tuple(
            (float(self.values[a]), float(self.values[b - 1])) for a, b in zip(edges[::2], edges[1::2], strict=True)
        )


def dry_range(
    assembly: Assembly,
    indoor: Room,
    outdoor: Air,
    variable: str,
    values: ArrayLike,
    *,
    weather: HourlyWeather | None = None,
    leak: Leak | AirFlow | None = None,
    found: Callable[[int, str], object] | None = None,
    workers: int | None = None,
    **options: Any,
) -> Range:
    """The state along one variable.

    Parameters
    ----------
    assembly : Assembly
    indoor : Air or a rule of `weather.indoor`
        One air for the steady state.
    outdoor : Air
        Of the steady state; not used where `weather` is given.
    variable : str
        A keyword of `steady.sweep`, such as ``"indoor_relative_humidity"`` or
        ``"inner_membrane_permeance"``; with `weather` one of
        `hourly.variables`.
    values : array
        [SI], any the variable may take.
    weather : HourlyWeather, optional
        Then the hourly year is judged, otherwise one steady state, which
        counts no leak.
    leak : airleak.Leak or AirFlow, optional
        As in `hourly.simulate`; only with `weather`.
    found : function, optional
        Called with (place, state) as each year ends, not in order; when it
        returns False, the rest is dropped and `hourly.Stopped` raised.
    workers : int, optional
        Years at a time, 1 or more [-]; otherwise one for each core.
    **options
        Other keywords of `hourly.simulate`; only with `weather`.  Where
        `years` is not given, the year is run until it repeats, at most five.

    Returns
    -------
    Range

    Raises
    ------
    UnknownName
        For an unknown variable.
    OutOfRange
        For a value out of range, or a room that follows a rule without weather.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.weather import Air
    >>> vault = building.preset("vented-vault-osb")
    >>> states = dry_range(vault, Air(21.0, 0.4), Air(-7.0, 0.8), "indoor_relative_humidity", [0.15, 0.6]).states
    >>> states.tolist()
    ['dry', 'wet']
    """
    if weather is None:
        if not isinstance(indoor, Air):
            raise OutOfRange(message("physics.no-steady-room"))
        return dry_ranges(assembly, indoor, outdoor, {variable: values})[variable]
    asked = np.atleast_1d(np.asarray(values, dtype=float))
    options = {**options, "leak": leak}
    if "years" not in options and "hours" not in options:
        options |= UNTIL_IT_REPEATS
    cases = []
    for value in asked:
        built, room, rest = varied(assembly, indoor, options, variable, float(value))
        cases.append((built, weather, room, rest))
    states = batch(cases, lambda run: of_year(run).state, found, workers)
    return Range(variable, asked, np.array(states, dtype=object))


#: How many years are run where nothing else is said.
UNTIL_IT_REPEATS = {"years": 5, "until_it_repeats": True}


def dry_ranges(
    assembly: Assembly, indoor: Air, outdoor: Air, variables: Mapping[str, ArrayLike | Mapping[str, ArrayLike]]
) -> dict[str, Range]:
    """The steady state along several variables in one go, each varied alone.

    A keyword of `steady.sweep` -> its values; or a label -> keywords -> values,
    for a choice that changes several at once.
    """
    blocks = []
    for label, values in variables.items():
        block = values if isinstance(values, Mapping) else {label: values}
        blocks.append((label, {name: np.atleast_1d(np.asarray(v, dtype=float)) for name, v in block.items()}))
    known = steady.variables(assembly)
    now: dict[str, Numeric] = {}
    for name in (name for _, block in blocks for name in block):
        if name not in known:
            raise UnknownName("thing to vary", name, known)
        now[name] = _now(assembly, indoor, outdoor, *known[name])
    # One stacked sweep: a row for every value of every variable, all others
    # as they are now.  A layer that depends on humidity cannot be one of
    # "as now" by a number, so its rows run in a sweep of their own.
    nodes = nodes_of(assembly)
    dependent = {(nodes.names[each.place], "permeance") for each in nodes.humidity_dependent}
    alone = [b for b in blocks if any(known[name] in dependent for name in b[1])]
    found: dict[str, Range] = {}
    for group in [[b for b in blocks if b not in alone], *[[b] for b in alone]]:
        if not group:
            continue
        names = [name for name in now if any(name in block for _, block in group)]
        sizes = [len(next(iter(block.values()))) for _, block in group]
        columns: dict[str, Any] = {name: np.full(sum(sizes), now[name]) for name in names}
        row = 0
        for (_, block), size in zip(group, sizes, strict=True):
            for name, values in block.items():
                columns[name][row : row + size] = values
            row += size
        states = states_of_sweep(steady.sweep(assembly, indoor, outdoor, **columns))
        row = 0
        for (label, block), size in zip(group, sizes, strict=True):
            found[label] = Range(label, next(iter(block.values())), states[row : row + size])
            row += size
    return found


def _now(assembly: Assembly, indoor: Air, outdoor: Air, layer: str | None, what: str) -> Numeric:
    """The present value of what can be varied: of a layer, or of an air."""
    if layer is not None:
        return getattr(assembly.layer(layer), what)
    side, _, quantity = what.partition("_")
    return getattr(indoor if side == "indoor" else outdoor, quantity)

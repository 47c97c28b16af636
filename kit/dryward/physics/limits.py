"""Where along a slider the assembly stays dry, with all else as it is."""

from dataclasses import dataclass

import numpy as np

from dryward.checks import UnknownName
from dryward.physics.sweep import sweep


@dataclass(frozen=True)
class Range:
    """Where along one variable a criterion holds.

    Attributes
    ----------
    variable : str
    values : ndarray, SI
        As they were asked, in their order.
    holds : ndarray of bool
    """

    variable: str
    values: np.ndarray
    holds: np.ndarray

    @property
    def spans(self):
        """Stretches ((first value, last value), ...) where it holds."""
        edges = np.flatnonzero(np.diff(np.concatenate(([0], self.holds.astype(int), [0]))))
        return tuple(
            (float(self.values[a]), float(self.values[b - 1])) for a, b in zip(edges[::2], edges[1::2], strict=True)
        )

    @property
    def everywhere(self):
        """Whether it holds at every value."""
        return bool(self.holds.all())

    @property
    def nowhere(self):
        """Whether it holds at none."""
        return not self.holds.any()


def stays_dry(summary):
    """No plane gains water.

    Parameters
    ----------
    summary : Sweep

    Returns
    -------
    ndarray of bool
        In the shape of the sweep.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> stays_dry(SimpleNamespace(wet_planes=np.array([0, 2]))).tolist()
    [True, False]
    """
    return summary.wet_planes == 0


def below_humidity(limit):
    """No plane above a relative humidity: a criterion to hand over.

    Parameters
    ----------
    limit : float
        Relative humidity [-], 0 to 1.

    Returns
    -------
    callable
        Of a Sweep, giving booleans in its shape.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> below_humidity(0.8)(SimpleNamespace(highest_relative_humidity=np.array([0.7, 0.9]))).tolist()
    [True, False]
    """

    def holds(summary):
        return summary.highest_relative_humidity <= limit

    return holds


#: Criteria that have a name.
CRITERIA = {"stays dry": stays_dry, "below 80 %": below_humidity(0.8), "below 90 %": below_humidity(0.9)}


def safe_range(assembly, indoor, outdoor, variable, values, criterion="stays dry"):
    """Where along one variable the criterion holds.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : Air
        One state of air each.
    variable : str
        A keyword of `steady.sweep`, such as ``"indoor_relative_humidity"`` or
        ``"inner_membrane_permeance"``.
    values : array
        [SI], as in `steady.sweep`.
    criterion : str or callable
        A name of `CRITERIA`, or a function of a Sweep giving booleans.

    Returns
    -------
    Range

    Raises
    ------
    UnknownName
        For an unknown variable or criterion.
    OutOfRange
        For a value out of range.

    Notes
    -----
    Steady state; the word "safe" in the name means "within the criterion",
    not that a roof may be built so.

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016)])
    >>> found = safe_range(wall, Air(20, 0.3), Air(10, 0.8), "indoor_relative_humidity", [0.2, 0.9])
    >>> found.holds.tolist()
    [True, False]
    """
    return safe_ranges(assembly, indoor, outdoor, {variable: values}, criterion)[variable]


def safe_ranges(assembly, indoor, outdoor, variables, criterion="stays dry"):
    """The same for several variables in one go, each varied alone.

    Parameters
    ----------
    assembly, indoor, outdoor
        As in `safe_range`.
    variables : dict
        Keyword of `steady.sweep` -> values in SI; or a label -> dict of
        keywords -> values, for a choice that changes several at once.
    criterion : str or callable
        As in `safe_range`.

    Returns
    -------
    dict
        Keyword or label -> Range.

    Raises
    ------
    UnknownName, OutOfRange
        As in `safe_range`.

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016)])
    >>> found = safe_ranges(wall, Air(20, 0.3), Air(10, 0.8), {"outdoor_temperature": [-40, 15]})
    >>> found["outdoor_temperature"].holds.tolist()
    [False, True]
    """
    judge = criterion if callable(criterion) else _named(criterion)
    now = _now(assembly, indoor, outdoor)
    blocks = []
    for label, values in variables.items():
        block = values if isinstance(values, dict) else {label: values}
        blocks.append((label, {name: np.atleast_1d(np.asarray(v, dtype=float)) for name, v in block.items()}))
    varied = {name for _, block in blocks for name in block}
    # One stacked sweep: a row for every value of every variable, all others
    # as they are now.  A layer that answers to humidity cannot be one of
    # "as now" by a number, so its rows run in a sweep of their own.
    alone = [b for b in blocks if any(_answers(assembly, name) for name in b[1])]
    found = {}
    for group in [[b for b in blocks if b not in alone], *[[b] for b in alone]]:
        if not group:
            continue
        names = [name for name in varied if any(name in block for _, block in group)]
        sizes = [len(next(iter(block.values()))) for _, block in group]
        columns = {name: np.full(sum(sizes), now(name)) for name in names}
        row = 0
        for (_, block), size in zip(group, sizes, strict=True):
            for name, values in block.items():
                columns[name][row : row + size] = values
            row += size
        holds = np.asarray(judge(sweep(assembly, indoor, outdoor, **columns)))
        row = 0
        for (label, block), size in zip(group, sizes, strict=True):
            found[label] = Range(label, next(iter(block.values())), holds[row : row + size])
            row += size
    return found


def _named(criterion):
    if criterion not in CRITERIA:
        raise UnknownName("criterion", criterion, CRITERIA)
    return CRITERIA[criterion]


def _find(assembly, name):
    from dryward.physics.sweep import variables

    known = variables(assembly)
    if name not in known:
        raise UnknownName("thing to vary", name, known)
    return known[name]


def _answers(assembly, name):
    layer, what = _find(assembly, name)
    if layer is None or what != "permeance":
        return False
    from dryward.physics.ladder import ladder

    steps = ladder(assembly)
    return any(steps.names[a.place] == layer for a in steps.answering)


def _now(assembly, indoor, outdoor):
    """The present value of a variable."""

    def value(name):
        layer, what = _find(assembly, name)
        if layer is None:
            side, _, quantity = what.partition("_")
            return getattr(indoor if side == "indoor" else outdoor, quantity)
        return getattr(assembly.layer(layer), what)

    return value

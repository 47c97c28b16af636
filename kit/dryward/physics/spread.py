"""How far the answer may lie off: the same year with many draws of what is uncertain.

Each property that has a range is drawn anew for every run, all of them at
once; the runs together make a band.  The range of a property is the one its
material carries, else one of `USUAL`, which are assumptions.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

import numpy as np

from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Material, VariableMembrane
from dryward.building.substances import HIGHEST
from dryward.checks import Floats, Numeric, OutOfRange, UnknownName, of_kind, within
from dryward.language import called, message
from dryward.physics.airleak import LONG_SHARE, LONG_SHARES, Leak
from dryward.physics.hourly.air_paths import AirFlow
from dryward.physics.hourly.result import Hours
from dryward.physics.hourly.simulate import batch
from dryward.physics.hourly.vary import Options, changed
from dryward.units import written
from dryward.weather import HourlyWeather
from dryward.weather.indoor import Room

#: Factors by which a property may be off where nothing better is known: assumptions.
USUAL: dict[str, tuple[float, float]] = {
    "conductivity": (0.9, 1.1), "permeance": (0.67, 1.5), "sorption": (0.85, 1.15), "leak": (0.5, 2.0),
    "long share": (LONG_SHARES[0] / LONG_SHARE, LONG_SHARES[1] / LONG_SHARE),
}  # fmt: skip
#: Humidity at which the range of a sorption is given [-].
_SORPTION_AT = 0.8


@dataclass(frozen=True)
class Uncertain:
    """One thing that is not known well."""

    layer: str  # empty for the leak
    what: str  # the last: the part of a leak that seeps
    low: float  # factors on the value in hand [-], above 0 to 1000; drawn evenly on a log scale
    high: float  # factors on the value in hand [-], above 0 to 1000; drawn evenly on a log scale

    def __post_init__(self) -> None:
        if self.what not in USUAL:
            raise UnknownName("uncertain property", self.what, USUAL)
        what = called(self.what)
        low = within(message("physics.least-factor", what=what), self.low, 0.0, 1000.0, above=True)
        high = within(message("physics.largest-factor", what=what), self.high, 0.0, 1000.0, above=True)
        if high < low:
            spread = {"low": written(low, ".4g"), "high": written(high, ".4g")}
            raise OutOfRange(message("physics.factors-fall", what=what, **spread))
        object.__setattr__(self, "low", low)
        object.__setattr__(self, "high", high)


@dataclass(frozen=True, eq=False)
class Band:
    """The same quantity from many draws."""

    quantiles: tuple  # [-], 0 to 1
    levels: Floats = field(repr=False)  # the quantity at each of them
    draws: Floats = field(repr=False)  # the quantity in each run
    factors: Floats = field(repr=False)  # what each run was given [-]
    uncertain: tuple[Uncertain, ...]


def uncertain(assembly: Assembly, leak: Leak | AirFlow | None = None) -> tuple[Uncertain, ...]:
    """What is not known well in an assembly.

    The range a library row carries is used where it holds the value in hand;
    elsewhere the factors of `USUAL`, which are assumptions.
    """
    found: list[Uncertain] = []
    for layer in assembly.layers:
        substance = layer.substance
        if isinstance(substance, AirSpace):
            continue
        ranges = substance.ranges if isinstance(substance, Material) else substance.origin.ranges
        spans = {name: (low, high) for name, low, high in ranges}
        if not isinstance(substance, Material):
            level = layer.permeance  # at 50 %; of a curve all points move together
            if level > 0:
                found.append(Uncertain(layer.name, "permeance", *_factors(spans, "permeance", level)))
            continue
        found.append(
            Uncertain(layer.name, "conductivity", *_factors(spans, "conductivity", substance.conductivity_at(0)))
        )
        level = substance.permeability_at(0.5)
        if level > 0:
            low, high = _factors(spans, "vapor_permeability", level, "permeance")
            found.append(Uncertain(layer.name, "permeance", max(low, 0.01), high))
        if substance.sorption:
            held = substance.water_content(_SORPTION_AT)
            found.append(Uncertain(layer.name, "sorption", *_factors(spans, "sorption", held)))
    if leak is not None:
        found.append(Uncertain("", "leak", *USUAL["leak"]))
        if leak.long_share:
            low, high = USUAL["long share"]
            found.append(Uncertain("", "long share", low, min(high, 1.0 / leak.long_share)))
    return tuple(found)


def _factors(
    spans: Mapping[str, tuple[float, float]], name: str, value: float, usual: str | None = None
) -> tuple[float, float]:
    low, high = spans.get(name, (0.0, 0.0))
    if value > 0 and low <= value <= high and high > 0:
        return max(low / value, 0.05), min(high / value, 20.0)
    return USUAL[usual or name]


def factors(things: Sequence[Uncertain], draws: int = 200, seed: int = 1) -> Floats:
    """A Latin hypercube of factors: every stretch of every range is met equally often.

    A shuffle of equal stretches for each thing: a statistics library would
    cost a second and 60 MB of memory for these two lines.
    """
    count = int(within("Draws", draws, 2, 10_000))
    random = np.random.default_rng(seed)
    share = np.column_stack([(random.permutation(count) + random.random(count)) / count for _ in things])
    low, high = (np.log([getattr(each, side) for each in things]) for side in ("low", "high"))
    return np.exp(low + share * (high - low))


def drawn(
    assembly: Assembly, options: Options, things: Sequence[Uncertain], values: Floats
) -> tuple[Assembly, Options]:
    """An assembly and options with one draw put in."""
    for thing, factor in zip(things, values, strict=True):
        factor = float(factor)
        if thing.what in ("leak", "long share"):
            options = {**options, "leak": _other_leak(options["leak"], thing.what, factor)}
            continue
        layer = assembly.layer(thing.layer)
        if layer.is_membrane:
            assembly = assembly.replace(thing.layer, _scaled(layer.membrane, factor))
            continue
        level = layer.permeance * factor if thing.what == "permeance" else factor
        assembly = changed(assembly, thing.layer, thing.what, level)
    return assembly, options


def _other_leak(leak: Leak | AirFlow, what: str, factor: float) -> Leak | AirFlow:
    """A leak so many times as large, or of which so many times as much seeps."""
    if what == "long share":
        assert leak.long_share is not None, "only a leak has a part that seeps"
        return replace(leak, long_share=min(leak.long_share * factor, 1.0))
    size = "rate" if isinstance(leak, AirFlow) else "coefficient"
    return replace(leak, **{size: getattr(leak, size) * factor})


def _scaled(
    membrane: FixedMembrane | VariableMembrane | LaminateMembrane, factor: float
) -> FixedMembrane | VariableMembrane | LaminateMembrane:
    """A membrane that lets through so many times as much, its curve as steep as before."""

    def level(permeance: float) -> float:
        return min(permeance * factor, HIGHEST)

    if isinstance(membrane, FixedMembrane):
        return FixedMembrane(level(membrane.level), membrane.origin)
    if isinstance(membrane, LaminateMembrane):
        sensitive = _curve_at(membrane.sensitive, level)
        return LaminateMembrane(sensitive, level(membrane.backing.level), membrane.turned, membrane.origin)
    return _curve_at(membrane, level)


def _curve_at(membrane: VariableMembrane, level: Callable[[float], float]) -> VariableMembrane:
    humidity, levels = zip(*membrane.points, strict=True)
    return VariableMembrane(humidity, [level(each) for each in levels], membrane.origin)


def spread(
    assembly: Assembly,
    weather: HourlyWeather,
    indoor: Room,
    measure: Callable[[Hours], Numeric],
    *,
    draws: int = 200,
    seed: int = 1,
    things: Sequence[Uncertain] | None = None,
    quantiles: Sequence[float] = (0.05, 0.25, 0.5, 0.75, 0.95),
    found: Callable[[int, Numeric], object] | None = None,
    workers: int | None = None,
    **options: Any,
) -> Band:
    """The same quantity for many draws of the uncertain inputs, as a band.

    The band says how far the inputs carry; it knows nothing of a wrong
    detail, a wet start or other weather.
    """
    levels = tuple(float(q) for q in np.atleast_1d(within("Quantile", list(quantiles), 0.0, 1.0)))
    leak = options.get("leak")
    if leak is not None:
        of_kind("The leak", leak, (AirFlow, Leak), "an air leak or an air flow")
    things = uncertain(assembly, leak) if things is None else tuple(things)
    if not things:
        raise OutOfRange(message("physics.nothing-uncertain", name=called(assembly.name)))
    sample = factors(things, draws, seed)
    cases = []
    for row in sample:
        built, rest = drawn(assembly, options, things, row)
        cases.append((built, weather, indoor, rest))
    results = np.array(batch(cases, measure, found, workers))
    return Band(levels, np.quantile(results, levels, axis=0), results, sample, things)

"""An air leak: how much air goes through it, and how much water that brings.

For the hourly engine: ``leak.airflow(pressure) / leak.area`` is the flow
through each square meter of the assembly [m3/s], ``moving_air.density`` turns
it into kilograms, and `outward_pressure` gives the pressure for a whole year
of temperatures at once.  Vapor then goes by humidity ratio, which no cooling
of the air can change.
"""

from dataclasses import dataclass
from typing import Self

import numpy as np

from dryward import air
from dryward.air import MASS_RATIO, STANDARD_PRESSURE
from dryward.checks import Numeric, plain, single, within
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density, orifice_flow, stack_pressure, viscosity
from dryward.units import HOUR, KELVIN, quantity
from dryward.weather import Air

__all__ = ["Leak", "Brought", "brought", "natural_airflow", "outward_pressure", "orifice_flow", "stack_pressure"]
__all__ += ["slot_flow", "LayerFlow", "layer_flow", "permeance_with_gaps"]


#: Pressure of a blower-door test [Pa].
TEST_PRESSURE = 50.0
#: Density of air at 20 degC and standard pressure, on which openings are rated [kg/m3].
RATED_DENSITY = float(density(20.0 + KELVIN))


def outward_pressure(
    height: Numeric, indoor_temperature: Numeric, outdoor_temperature: Numeric, suction: Numeric = 0.0
) -> Numeric:
    """Pressure on the assembly from indoors: stack at a height above the neutral level, and what else pulls outward."""
    pull = within("Suction", suction, -100.0, 100.0, "Pa")
    return stack_pressure(height, indoor_temperature, outdoor_temperature) + pull


def natural_airflow(ach50: Numeric, volume: float, divisor: float = 20.0) -> Numeric:
    """Mean leak of a house in a season [m3/s], by the rule of thumb.

    Source: Common practice: air changes at 50 Pa over 20, with 12 to 30 by climate,
    height and shelter.
    """
    changes = within("Air changes at 50 Pa", ach50, 0.0, 50.0, "1/h")
    volume = within("Volume of the house", volume, 0.0, 1e5, "m3", above=True)
    return changes * volume / HOUR / within("Divisor", divisor, 10.0, 35.0)


#: The part of the small leaks of a house that seeps through its insulation [-], and how far it may lie off: an
#: assumption, see `Leak`.
LONG_SHARE, LONG_SHARES = 0.1, (0.03, 0.3)


@dataclass(frozen=True)
class Leak:
    """A leak that follows the power law: flow = coefficient times pressure^exponent.

    Parameters
    ----------
    coefficient : float
        Flow at 1 Pa [m3/s], 0 to 100.
    exponent : float
        [-], 0.5 (a wide hole) to 1 (fine cracks).
    area : float
        Of the assembly that it is spread over [m2], above 0 to 1e5.
    long_share : float
        The part of the leak that seeps through open layers, cools on its way
        and leaves water; the rest goes straight through and stays warm [-], 0 to 1.
    area_share : float
        The part of the area that it is spread over: 1 for the sum of many
        small leaks, little for a can light or a chase [-], 0.01 to 1.

    Raises
    ------
    OutOfRange
        For a share, a flow or an area that cannot be.

    Notes
    -----
    The long share of a house's small leaks is an assumption, `LONG_SHARE`:
    it is chosen so that a roof sealed with care takes in about the published
    water of a winter (see the check "long share" in `evidence.airleak`).

    References
    ----------
    The power law of blower-door testing; an exponent of 0.65 where none is
    measured, as a public library of building standards has it.

    Examples
    --------
    >>> leak = Leak.from_blower_door(3.0, 566.3, 0.2, area=55.74)
    >>> round(leak.airflow(4.0) * 1000, 1)  # L/s
    18.3
    """

    coefficient: float
    exponent: float = 0.65
    area: float = 1.0
    long_share: float = LONG_SHARE
    area_share: float = 1.0

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "coefficient", single("Leakage coefficient", self.coefficient, 0.0, 100.0, "m3/s"))
        put(self, "exponent", single("Leakage exponent", self.exponent, 0.5, 1.0))
        put(self, "area", single("Area of the leaky assembly", self.area, 0.0, 1e5, "m2", above=True))
        put(self, "long_share", single("Long share of the leak", self.long_share, 0.0, 1.0, "%"))
        put(self, "area_share", single("Share of the area with the leak", self.area_share, 0.01, 1.0, "%"))

    @classmethod
    def from_blower_door(
        cls,
        ach50: float | str,
        volume: float | str,
        share: float | str = 1.0,
        exponent: float = 0.65,
        area: float | str = 1.0,
        long_share: float = LONG_SHARE,
        area_share: float = 1.0,
    ) -> Self:
        """The share of a house's leak that lies in one assembly."""
        changes = single("Air changes at 50 Pa", quantity(ach50, "air changes at 50 Pa"), 0.0, 50.0, "1/h")
        volume = single("Volume of the house", quantity(volume, "volume"), 0.0, 1e5, "m3", above=True)
        share = single("Share of the leak", quantity(share, "share"), 0.0, 1.0, "%")
        exponent = single("Leakage exponent", exponent, 0.5, 1.0)
        at_one = share * changes * volume / HOUR / TEST_PRESSURE**exponent
        return cls(at_one, exponent, quantity(area, "area"), long_share, area_share)

    @classmethod
    def from_area(
        cls,
        leakage_area: float,
        reference: float = 4.0,
        discharge: float = 1.0,
        exponent: float = 0.65,
        area: float = 1.0,
    ) -> Self:
        """The leak of an effective leakage area: the inverse of `leakage_area`."""
        size = single("Leakage area", leakage_area, 0.0, 10.0, "m2")
        reference = single("Reference pressure", reference, 0.0, 100.0, "Pa", above=True)
        flow = orifice_flow(reference, size, discharge, RATED_DENSITY)
        exponent = single("Leakage exponent", exponent, 0.5, 1.0)
        return cls(flow / reference**exponent, exponent, area)

    def airflow(self, pressure: Numeric) -> Numeric:
        """Air through the leak; it has the sign of the pressure."""
        push = within("Pressure", pressure, -1000.0, 1000.0, "Pa")
        flow = np.sign(push) * self.coefficient * np.abs(push) ** self.exponent
        return plain(flow)

    def leakage_area(self, reference: float = 4.0, discharge: float = 1.0) -> float:
        """The sharp-edged hole that would leak as much at one pressure [m2].

        The effective leakage area: at 4 Pa with a discharge coefficient of 1; the equivalent one: at 10 Pa with 0.611.
        Source: ASTM E779 and CGSB 149.10 give the two references (from memory).
        """
        reference = within("Reference pressure", reference, 0.0, 100.0, "Pa", above=True)
        return self.airflow(reference) / orifice_flow(reference, 1.0, discharge, RATED_DENSITY)

    def changes_at_50(self, volume: float) -> float:
        """Air changes of a house of this volume at 50 Pa [1/h]."""
        volume = within("Volume of the house", volume, 0.0, 1e5, "m3", above=True)
        return self.airflow(TEST_PRESSURE) * HOUR / volume

    def moisture(self, pressure: Numeric, indoor: Air, plane_temperature: Numeric) -> "Brought":
        """Vapor that the leak brings to each square meter of the assembly, and what its seeping part leaves there."""
        outward = np.maximum(self.airflow(pressure), 0.0) / (self.area * self.area_share)
        return brought(plain(outward), indoor, plane_temperature, self.long_share)


@dataclass(frozen=True)
class Brought:
    """Water that leaking air brings: what `brought` gives."""

    carried: Numeric  # all vapor in the air [kg/s]
    #: What it can no longer carry at the temperature of the plane [kg/s]: the most that could stay if all cooled.
    excess: Numeric
    stays: Numeric  # what does stay: the excess of the part that seeps [kg/s]


def brought(flow: Numeric, indoor: Air, plane_temperature: Numeric, long_share: float = 1.0) -> Brought:
    """Vapor that leaking room air carries past a cold plane, and what stays behind.

    `long_share` of the air seeps, comes to the temperature of the plane and
    leaves saturated; the rest goes by warm and leaves nothing.  Mass of dry
    air times the difference of humidity ratio: no cooling of the air can
    change either.  That the plane is warmed by the air is left out.
    """
    flow = within("Leaking air", flow, 0.0, 1000.0, "m3/s")
    share = within("Long share of the leak", long_share, 0.0, 1.0, "%")
    dry = flow * density(indoor.temperature + KELVIN, air.STANDARD_PRESSURE - indoor.vapor_pressure)
    inside = air.humidity_ratio(indoor.vapor_pressure)
    held = air.humidity_ratio(air.saturation_vapor_pressure(plane_temperature))
    excess = dry * np.maximum(inside - held, 0.0)
    return Brought(plain(dry * inside), plain(excess), plain(share * excess))


def slot_flow(pressure: Numeric, width: Numeric, depth: Numeric, length: Numeric, kelvin: float = 293.15) -> Numeric:
    """Air that a pressure drives through a long narrow slot, such as the joint between two boards.

    Parameters
    ----------
    pressure : float or array
        Across it [Pa].
    width, depth, length : float or array
        How wide it is open, how deep the air goes through it, and how long it runs [m].
    kelvin : float
        Temperature of the air in it [K].

    Notes
    -----
    Flow between two flat plates that is slow enough to be smooth: as long as
    the width times the speed is less than about a hundredth m2/s.  It goes
    with the cube of the width and, unlike that of a hole, straight with the
    pressure.

    References
    ----------
    Plane Poiseuille flow, as taught in fluid mechanics (from memory).

    Examples
    --------
    By hand: 1 Pa, 0.4 mm wide, 20 mm deep, 10 m long, air of 18.1e-6 Pa s: 6.4e-10 / (12 * 18.1e-6 * 0.02).

    >>> round(1000 * slot_flow(1.0, 0.4e-3, 0.02, 10.0), 3)  # L/s
    0.147
    """
    push = within("Pressure", pressure, -1000.0, 1000.0, "Pa")
    wide = within("Slot width", width, 0.0, 0.01, "m")
    deep = within("Slot depth", depth, 0.0, 1.0, "m", above=True)
    long = within("Slot length", length, 0.0, 1e5, "m")
    return plain(push * wide**3 * long / (12.0 * viscosity(kelvin) * deep))


@dataclass(frozen=True)
class LayerFlow:
    """Heat and vapor through a layer: what `layer_flow` gives."""

    heat: Numeric  # outward, with the heat that the air carries above 0 degC [W/m2]
    vapor: Numeric  # outward, with the vapor that the air carries [kg/(s m2)]


def layer_flow(
    air_flow: Numeric,
    conductance: Numeric,
    permeance: Numeric,
    inner: tuple[float, float],
    outer: tuple[float, float],
    pressure: float = STANDARD_PRESSURE,
) -> LayerFlow:
    """Heat and vapor through a layer that air moves through; `inner`, `outer`: temperature and vapor pressure there.

    Steady state, closed form: with P = c m / conductance the heat is
    c m (T1 + (T1 - T2)/(e^P - 1)), and the vapor likewise, with the mass
    ratio over the pressure in place of c.  The humidity ratio is taken as
    proportional to the vapor pressure.  Without air it is plain conduction
    and diffusion.

    Source: ÖNORM B 8110-2:2020, as quoted in course notes.
    """
    flow = within("Air through the layer", air_flow, -1.0, 1.0, "kg/(s m2)")
    conductance = within("Thermal conductance", conductance, 0.0, 1e6, "W/(m2 K)", above=True)
    permeance = within("Vapor permeance", permeance, 0.0, 1.0, "kg/(s m2 Pa)", above=True)
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    warm, cold = (within("Temperature", side[0], -100.0, 200.0, "degC") for side in (inner, outer))
    moist, dry = (within("Vapor pressure", side[1], 0.0, total, "Pa") for side in (inner, outer))
    heat = _carried_and_conducted(AIR_SPECIFIC_HEAT * flow, conductance, warm, cold)
    vapor = _carried_and_conducted(MASS_RATIO / total * flow, permeance, moist, dry)
    return LayerFlow(heat, vapor)


def _carried_and_conducted(carried: Numeric, conductance: Numeric, inner: Numeric, outer: Numeric) -> Numeric:
    ratio = carried / conductance
    # P/(e^P - 1) is 1 - P/2 near zero, where the fraction itself is 0/0.
    small = np.abs(ratio) < 1e-9
    safe = np.where(small, 1.0, ratio)
    with np.errstate(over="ignore"):  # a flow that carries all: e^P is inf, the share 0
        share = np.where(small, 1.0 - ratio / 2.0, safe / np.expm1(safe))
    flux = carried * inner + conductance * share * (inner - outer)
    return plain(flux)


def permeance_with_gaps(film: Numeric, beside: Numeric, gap_share: Numeric) -> Numeric:
    """Permeance of a film with gaps in a part of its area, together with the layers in line with it.

    Diffusion only: areas count.  Air through the same gaps is another
    matter, and usually the larger one.
    """
    film = within("Permeance of the film", film, 0.0, 1.0, "kg/(s m2 Pa)")
    open_way = within("Permeance in line with the film", beside, 0.0, 1.0, "kg/(s m2 Pa)", above=True)
    share = within("Share of gaps", gap_share, 0.0, 1.0, "%")
    return share * open_way + (1.0 - share) * film * open_way / (film + open_way)

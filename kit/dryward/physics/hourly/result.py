"""What a run gives back."""

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from dryward.building import Assembly
from dryward.checks import Floats, Ints, OutOfRange, UnknownName, seal, within
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, message
from dryward.physics import mold
from dryward.units import HOUR, written
from dryward.verdict import Verdict, of_year, words
from dryward.weather import DAYS


def over_cells(values: Floats, weights: Floats) -> Floats:
    """Sum over cells, in an order that does not hang on where the arrays lie in memory, as that of a library does."""
    return np.einsum("...i,i->...", values, weights)


@dataclass(frozen=True)
class LayerHours:
    """One layer through the hours.

    Attributes
    ----------
    name : str
    temperature, relative_humidity, water_content : ndarray (hours)
        Means over the layer [degC], [-], [kg/m3].
    moisture_content : ndarray (hours)
        Mass of water by mass of dry material [%].
    condensed : ndarray (hours)
        Water above what the material binds [kg/m2].
    highest_relative_humidity : ndarray (hours)
        Of its wettest cell [-].
    """

    name: str
    temperature: Floats = field(repr=False)
    relative_humidity: Floats = field(repr=False)
    water_content: Floats = field(repr=False)
    moisture_content: Floats = field(repr=False)
    condensed: Floats = field(repr=False)
    highest_relative_humidity: Floats = field(repr=False)


@dataclass(frozen=True)
class MonthlyBudget:
    """Water through the faces in each month of a run, and what stays."""

    month: Ints  # 1 to 12, starting with January of the first year
    from_room: Floats  # through the inner face, positive outward [kg/m2]
    to_outdoors: Floats  # through the outer face
    leaked: Floats  # what an air leak brings less what it takes outdoors
    vented: Floats  # carried off by vent air
    seeped: Floats  # of what is leaked the part that the layers keep: the rest goes straight to the vent space
    ran_off: Floats
    held: Floats  # water in all layers at the month's end

    @property
    def in_and_out(self) -> tuple[Floats, Floats]:
        """Water that comes to the layers and that leaves them, both positive [kg/m2] (months).

        What a leak brings straight to the vent space and its air takes out
        again wets nothing on its way and is in neither.
        """
        straight = self.leaked - self.seeped
        gained = np.array([self.from_room, self.seeped, -self.to_outdoors, straight - self.vented, -self.ran_off])
        return np.maximum(gained, 0.0).sum(axis=0), np.maximum(-gained, 0.0).sum(axis=0)


@dataclass(frozen=True, eq=False)
class Hours(Exhibit):
    """A run of `hourly.simulate`: arrays by hour (rows) and cell (columns).

    Attributes
    ----------
    assembly : Assembly
    time : ndarray (hours)
        End of each hour since the start [h].
    depth, width : ndarray (cells)
        Middle of each cell from the room-side face, and its width [m].
    cell_layer : ndarray (cells)
        Place of its layer in the assembly; -1 for a plane of air between two membranes.
    temperature : ndarray (hours, cells)
        At the end of each hour [degC].
    relative_humidity : ndarray (hours, cells)
        [-]; 1 where there is free water.
    water_content : ndarray (hours, cells)
        Bound in the material, at most what it can bind [kg/m3].
    free_water : ndarray (hours, cells)
        Beyond that, as drops or frost at a face or between fibers [kg/m2].
    ran_off : ndarray (years, cells)
        What ran off in each year begun, by the cell it came from [kg/m2].
    vapor_flux_in, vapor_flux_out : ndarray (hours)
        Water through the inner and the outer face, mean of the hour, positive
        outward [kg/(s m2)]; air flow through the body of all layers counts here.
    leak_in, leak_out : ndarray (hours)
        Water that a leak brings from the room, and takes outdoors [kg/(s m2)].
    leak_left : ndarray (hours)
        Water that its seeping part leaves in the layers; below zero where it
        takes some along [kg/(s m2)].
    vent_out : ndarray (hours)
        Water that vent air carries off [kg/(s m2)].
    runoff : ndarray (hours)
        Water that runs off or drips [kg/(s m2)].
    heat_flux_in, heat_flux_out : ndarray (hours)
        Through the inner and outer face, latent heat with it [W/m2].
    leak_heat_in, leak_heat_out : ndarray (hours)
        The same that a leak brings and takes [W/m2].
    vent_flow : ndarray (hours)
        Air through the vent space over the area of the roof [kg/(s m2)].
    surface_temperature : ndarray (hours)
        Of the outer surface [degC].
    initial_water : ndarray (cells)
        At the start [kg/m3].
    most_bound : ndarray (cells)
        What the material can bind [kg/m3].
    balance_error : float
        |water in - out - run off - stored| over all that went through [-].
    heat_balance_error : float
        The same for heat [-].
    steps, iterations, halvings : int
        Of the march.
    end : tuple
        Moisture potential and heat at the end, to go on from.
    leaking : bool
        Whether a leak or another air flow was counted.
    start_humidity : float or None
        Relative humidity of all layers at the start [-]; None where they started otherwise.
    """

    assembly: Assembly
    time: Floats = field(repr=False)
    depth: Floats = field(repr=False)
    width: Floats = field(repr=False)
    cell_layer: Ints = field(repr=False)
    temperature: Floats = field(repr=False)
    relative_humidity: Floats = field(repr=False)
    water_content: Floats = field(repr=False)
    free_water: Floats = field(repr=False)
    ran_off: Floats = field(repr=False)
    vapor_flux_in: Floats = field(repr=False)
    vapor_flux_out: Floats = field(repr=False)
    leak_in: Floats = field(repr=False)
    leak_out: Floats = field(repr=False)
    leak_left: Floats = field(repr=False)
    vent_out: Floats = field(repr=False)
    runoff: Floats = field(repr=False)
    heat_flux_in: Floats = field(repr=False)
    heat_flux_out: Floats = field(repr=False)
    leak_heat_in: Floats = field(repr=False)
    leak_heat_out: Floats = field(repr=False)
    vent_flow: Floats = field(repr=False)
    surface_temperature: Floats = field(repr=False)
    initial_water: Floats = field(repr=False)
    most_bound: Floats = field(repr=False)
    balance_error: float
    heat_balance_error: float
    steps: int
    iterations: int
    halvings: int
    end: tuple[Floats, Floats, Floats, Floats] = field(repr=False)
    leaking: bool = False
    start_humidity: float | None = None

    def __post_init__(self) -> None:
        seal(self)

    def __repr__(self) -> str:
        facts = {
            "name": called(self.assembly.name),
            "hours": written(self.time.size, "d", "h"),
            "leaking": self.leaking,
            "state": called(self.verdict.state),
            "wet": words.how_wet(self.verdict, "us"),
        }
        return one_line("Hours", message("physics.hours-line", **facts))

    @cached_property
    def verdict(self) -> Verdict:
        """What it means: dry, damp or wet, see `verdict.of_year`."""
        return of_year(self)

    @cached_property
    def water(self) -> Floats:
        """Water in all layers at the end of each hour, bound and free [kg/m2] (hours)."""
        return over_cells(self.water_content, self.width) + self.condensed

    @cached_property
    def condensed(self) -> Floats:
        """Water above what the materials bind, in all layers [kg/m2] (hours)."""
        return self.free_water.sum(axis=1)

    def _cells(self, name: str) -> Ints:
        place = self.assembly.index(name)
        cells = np.flatnonzero(self.cell_layer == place)
        if not cells.size:
            raise UnknownName("layer with a thickness", name, self.layer_names)
        return cells

    @cached_property
    def layer_names(self) -> tuple[str, ...]:
        """The layers with a thickness, from inside."""
        return tuple(each.name for place, each in enumerate(self.assembly.layers) if (self.cell_layer == place).any())

    def layer(self, name: str) -> LayerHours:
        """One layer: its means, its moisture content in mass %, its free water."""
        cells = self._cells(name)
        share = self.width[cells] / self.width[cells].sum()
        water = over_cells(self.water_content[:, cells], share)
        dry = getattr(self.assembly.layer(name).substance, "density", np.nan)
        free = self.free_water[:, cells].sum(axis=1)
        humidity = self.relative_humidity[:, cells]
        return LayerHours(
            name,
            over_cells(self.temperature[:, cells], share),
            over_cells(humidity, share),
            water,
            100.0 * water / dry,
            free,
            humidity.max(axis=1),
        )

    def face(self, name: str, side: str = "inner") -> tuple[Floats, Floats]:
        """Temperature and relative humidity of the cell at a face of a layer."""
        if side not in ("inner", "outer"):
            raise UnknownName("face", side, ("inner", "outer"))
        cell = self._cells(name)[0 if side == "inner" else -1]
        return self.temperature[:, cell], self.relative_humidity[:, cell]

    def mold_index(self, name: str, sensitivity: str, side: str = "inner") -> Floats:
        """Mold index at a face of a layer through the hours; see `physics.mold`."""
        return mold.index(*self.face(name, side), sensitivity)

    def hours_above(
        self, name: str, relative_humidity: float, temperature: float | None = None, side: str | None = None
    ) -> int:
        """Hours in which a layer is humid, and warm, at the same time."""
        limit = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
        if side:
            warmth, humidity = self.face(name, side)
        else:
            found = self.layer(name)
            warmth, humidity = found.temperature, found.highest_relative_humidity
        count = humidity >= limit
        if temperature is not None:
            count &= warmth >= within("Temperature", temperature, -60.0, 95.0, "degC")
        return int(count.sum())

    def monthly(self) -> MonthlyBudget:
        """The water budget, month by month."""
        year = 24 * int(DAYS.sum())
        if self.time.size < year:
            raise OutOfRange(message("physics.needs-a-year", hours=str(self.time.size), year=str(year)))
        years = self.time.size // year
        ends = np.concatenate([[0], np.cumsum(np.tile(DAYS * 24, years))])

        def sums(flux: Floats) -> Floats:
            return HOUR * np.add.reduceat(flux[: ends[-1]], ends[:-1])

        return MonthlyBudget(
            np.tile(np.arange(1, 13), years),
            sums(self.vapor_flux_in),
            sums(self.vapor_flux_out),
            sums(self.leak_in - self.leak_out),
            sums(self.vent_out),
            sums(self.leak_left),
            sums(self.runoff),
            self.water[ends[1:] - 1],
        )

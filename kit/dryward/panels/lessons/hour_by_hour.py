"""Hour by hour: two years of the sheathing, day by day, with storage, sun, sky and a leak."""

from dataclasses import dataclass, replace

import numpy as np

from dryward import building, weather
from dryward.panels.controls import Choice, Scale, Slider
from dryward.panels.filling import Filling
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.panels.standard import standard
from dryward.pictures.year import MONTH_NAMES, Year, YearState
from dryward.teaching.arithmetic import Step
from dryward.units import HOUR, to_si
from dryward.weather import Air

ROOM_TEMPERATURE = to_si(70.0, "degF")
YEARS, HOURS = 2, 8760
#: Wood moisture at which mold and decay are talked of [mass %]: published landmarks.
BANDS = ((16.0, "mold can start"), (20.0, "caution"), (28.0, "decay"))
#: Every layer starts in balance with this air.
START = Air(20.0, 0.65)
#: A house of 566 m3 whose vault of 56 m2 has a fifth of its leaks; the roof faces north.
VOLUME, AREA, SHARE, NORTH = to_si(20000.0, "ft3"), to_si(600.0, "ft2"), 0.2, 0.0
EVERY = 6  # hours between points of the picture
#: Days over the caution line in a year from which it is called too long; our own choice.
TOO_LONG = 30

PLACE = Choice(
    "Place", "Climate", tuple((id, id.replace("-", " ").capitalize()) for id in weather.demos()), start="cold"
)
_DAYS = Scale(1, YEARS * 365, 440, 5)
DAY = Slider("Day", "Day of the run", "number", _DAYS, _DAYS, play=40)
#: At 3 this roof is soaked whatever else is chosen.
TIGHTNESS = standard("ACH50").starting(1.0, 1.0)


@dataclass(frozen=True)
class State:
    """One run, and the day the cursor stands on."""

    run: object
    moisture: np.ndarray
    budget: object
    day: float

    @property
    def full(self):
        """Moisture at which the pores of the sheathing are full [mass %]; what the run adds above drips off."""
        wood = self.run.assembly.layer("outer layer").substance
        return 100 * wood.sorption[-1][1] / wood.density


def roof():
    """The OSB roof with the variable film: the sheathing is wood, and it can be watched."""
    return building.preset("vented-vault-osb").replace("inner membrane", building.membrane("teaching-variable"))


def simulated(place, humidity, ach50):
    """Two years of that roof.

    Parameters
    ----------
    place : str
        An invented place.
    humidity : float
        Of the room [-].
    ach50 : float
        Air changes at 50 Pa [1/s].

    Returns
    -------
    Hours
    """
    from dryward.physics import hourly
    from dryward.physics.airleak import Leak
    from dryward.physics.ventspace import VentSpace

    built = roof()
    gap = built.layer("vent space").thickness
    return hourly.simulate(
        built,
        weather.demo(place),
        Air(ROOM_TEMPERATURE, humidity),
        years=YEARS,
        initial=START,
        vent=VentSpace(gap, to_si(16.0, "ft"), built.slope, 0.01, 0.01),
        leak=Leak.from_blower_door(ach50 * HOUR, VOLUME, SHARE, area=AREA),
        surface=hourly.Surface(azimuth=NORTH),
    )


def comes_home(run):
    """Whether the last year ends no wetter than it began, and stays under the caution line."""
    return _home(run.layer("outer layer").moisture_content[-HOURS:])


def _home(last):
    return _no_wetter(last) and last.max() < BANDS[1][0]


def _no_wetter(last):
    return last[-1] <= last[0] + 1.0


class HourByHour(Page):
    """A year of wood moisture, playable."""

    id = "hour-by-hour"
    handles = (PLACE, "RH_in", TIGHTNESS, DAY)
    draws = Year
    slow = True

    def preview(self, at):
        """The run that is kept, with the cursor moved; nothing while another is needed."""
        kept = self._runs.get(self._key(at))
        return None if kept is None else replace(kept, day=at.Day)

    def compute(self, at):
        """The run, kept for the next move of the day."""
        key = self._key(at)
        if key not in self._runs:
            run = simulated(*key)
            moisture = run.layer("outer layer").moisture_content
            if len(self._runs) > 8:
                self._runs.pop(next(iter(self._runs)))
            self._runs[key] = State(run, moisture, run.monthly(), at.Day)
        return replace(self._runs[key], day=at.Day)

    def __init__(self, *args, **keys):
        self._runs, self._filled = {}, None
        self.filling = Filling(self)
        super().__init__(*args, **keys)

    def _key(self, at):
        return at.Place, at.RH_in, at.ACH50

    def views(self, state):
        """The curve with its lines, and the water of each month."""
        budget = state.budget
        comes = np.maximum(budget.from_room, 0) + np.maximum(budget.leaked, 0) + np.maximum(-budget.to_outdoors, 0)
        leaves = np.maximum(-budget.from_room, 0) + np.maximum(budget.to_outdoors, 0) + np.maximum(budget.vented, 0)
        days = state.run.time[::EVERY] / 24
        # The run has no drip: what the pores cannot take is drawn, and said, as full.
        planes = (("sheathing", np.minimum(state.moisture[::EVERY], state.full)),)
        return YearState(days, planes, BANDS, comes, leaves, 0, state.day)

    def numbers(self, state):
        """Today, the peak and its month, days over the line, and what the year changes."""
        last = state.moisture[-HOURS:]
        peak = int(np.argmax(last))
        month = MONTH_NAMES[min(int(peak / HOURS * 12), 11)]
        now = float(np.interp(state.day * 24, state.run.time, state.moisture))
        change = float(last[-1] - last[0])
        over = float((last > BANDS[1][0]).sum()) / 24
        return [
            Readout("today", "Moisture that day", now, text=_percent(now, state.full), note=_date(state.day)),
            Readout(
                "peak",
                "Second year, peak",
                float(last.max()),
                text=_percent(last.max(), state.full),
                note=f"in {month}" if last.max() < state.full else "full, and it drips",
            ),
            Readout("over", "Days over 20 %", over, text=f"{over:.0f} days", note="of the second year"),
            Readout(
                "change",
                "Change over the year",
                change,
                text=_over_the_year(last, state.full),
                note=_note(last),
            ),
            Readout(
                "balance",
                "Water balance closes to",
                state.run.balance_error,
                text=_share(state.run.balance_error),
            ),
        ]

    def says(self, state):
        """When it is wettest and for how long, and whether it dries again."""
        last = state.moisture[-HOURS:]
        month = MONTH_NAMES[min(int(np.argmax(last) / HOURS * 12), 11)]
        if last.max() >= state.full:
            return (
                f"The pores of the sheathing fill up, {state.full:.0f} % of its dry weight, and the rest "
                f"drips: free water, far above what wood can bind. {_judged(last, soaked=True)}"
            )
        driest = MONTH_NAMES[min(int(np.argmin(last) / HOURS * 12), 11)]
        return (
            f"The sheathing is wettest in {month}, {last.max():.0f} %, and driest in {driest}, {last.min():.0f} %. "
            f"{_judged(last)}{_soaked(last.max())}"
        )

    def strips(self, at, state):
        """Filled while the page is in use; a move of a control drops the rest."""
        key = self._key(at)
        if key != self._filled:
            self._filled = key
            self.filling.start(self.work(at), "comes home below 20 %")
        return dict(self.filling.shown)

    def work(self, at):
        """For each strip, what holds at one place along it."""
        return {
            "RH_in": lambda value: comes_home(simulated(at.Place, value, at.ACH50)),
            "ACH50": lambda value: comes_home(simulated(at.Place, at.RH_in, value)),
        }

    def steps(self, state):
        """What one percent of moisture weighs, and what the peak holds."""
        layer = state.run.assembly.layer("outer layer")
        dry = layer.substance.density * layer.thickness
        last = state.moisture[-HOURS:]
        rise = float(last.max() - last.min())
        show = self.show
        return [
            Step(
                "The dry sheathing: density times thickness.",
                f"{show(layer.substance.density, 'density')} × {show(layer.thickness, 'length')}",
                f"{dry:.2f} kg/m²",
            ),
            Step("One percent of that.", f"{dry:.2f} kg/m² × 0.01", show(dry * 0.01, "area density")),
            Step(
                "From the driest day to the wettest of the second year.",
                f"{rise:.1f} × {show(dry * 0.01, 'area density')}",
                show(rise * dry * 0.01, "area density"),
            ),
        ]


def _date(day):
    year, rest = divmod(min(day, YEARS * 365) - 1, 365)
    return f"{MONTH_NAMES[min(int(rest / 365 * 12), 11)]}, year {int(year) + 1}"


def _judged(last, soaked=False):
    """What a year of moisture means, in a sentence: how wet, how long, and whether the years climb."""
    line = BANDS[1][0]
    if not _no_wetter(last):
        return "It does not come home: the year ends wetter than it began."
    if _home(last):
        return f"It stays below {line:.0f} % all year: it comes home."
    if last.min() >= line:
        return f"It is over {line:.0f} % all year: too wet."
    if soaked:
        return "Each summer it dries out, but every winter it is soaked."
    days = max(1, round(float((last > line).sum()) / 24))
    long = "too wet for too long" if days > TOO_LONG else "look closer"
    return f"It dries each summer, but it is over {line:.0f} % for {days} day{'s' * (days > 1)} a year: {long}."


def _over_the_year(last, full):
    if last.max() < full:
        return _signed(float(last[-1] - last[0]))
    if last.min() >= full:
        return "stays full"
    return "full, then dries" if _no_wetter(last) else "ends wetter"


def _note(last):
    if not _no_wetter(last):
        return "it does not come home"
    if _home(last):
        return "it comes home"
    return "dries by summer" if last.min() < BANDS[1][0] else "too wet all year"


def _signed(change):
    return f"{change:+.1f} %" if abs(change) >= 0.05 else "0.0 %"


def _percent(moisture, full):
    return f"{moisture:.1f} %" if moisture < full else f"over {full:.0f} %"


def _soaked(most):
    # What wood can bind ends near 28 %; all above it is liquid in its pores.
    return " Wood binds about 28 %: the rest is free water in its pores." if most > 40 else ""


def _share(error):
    return "rounding" if error < 1e-9 else f"{error:.0e} of the flow"


PAGE = HourByHour

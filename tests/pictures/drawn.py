"""Every kind of picture with two states that differ, and where its words stand."""

from itertools import combinations
from types import SimpleNamespace

import numpy as np

from dryward import air, building, units, weather
from dryward.course.clear_night.scene import NightPicture, NightUnderSky
from dryward.course.how_fast_perms.scene import LayersInRow, Pipe
from dryward.course.inside_the_film.scene import FilmInLayers, Inside
from dryward.course.july.scene import Reversal, SummerRoof
from dryward.course.open_out_tight_in.scene import BalanceMap, GainMap
from dryward.course.read_the_air.scene import AirsOnCurve, Curve
from dryward.course.temperature_through_layers.scene import Ladder, from_profile
from dryward.course.the_film_that_changes.scene import Film, FilmBetweenFaces, FilmSides, LaminateFaces, Sandwich
from dryward.course.the_hole_and_the_ceiling.scene import Buckets, TwoPaths
from dryward.course.vent_space.scene import Channel, VentAir
from dryward.course.which_way_vapor_goes.scene import AirsBesideCeiling, Rooms
from dryward.course.winter_house.scene import HouseWater, Tank
from dryward.course.your_readings.scene import LoggerTraces, Trace, Traces
from dryward.physics import steady
from dryward.pictures.section import SectionAndProfile, SteadyRoof
from dryward.pictures.year import MoistureYear, MonthBars, MonthlyWater, TwoYearGraphs, TwoYears, YearGraph

SI = units.to_si
COLD = weather.Air(SI(20, "degF"), 0.8)
ROOM = weather.Air(SI(70, "degF"), 0.4)
ARCTIC = weather.Air(SI(-20, "degF"), 0.7)
HOT = weather.Air(SI(85, "degF"), 0.75)
COOL = weather.Air(SI(75, "degF"), 0.5)
DAMP = weather.Air(SI(70, "degF"), 0.6)


def board(name, r_value, perm, inches, density, category=""):
    """A layer of that R and perm."""
    thick = SI(inches, "in")
    conductivity = thick / SI(r_value, "R")
    made = building.Material(name, name, density, 1000, conductivity, SI(perm, "perm") * thick, category=category)
    return building.Layer(made, thick, name)


def sheet(name, perm):
    """A membrane of that perm."""
    return building.Layer(building.FixedMembrane(SI(perm, "perm"), building.Origin(name=name)))


def gap(name, inches, vented=False):
    """A layer of air."""
    return building.Layer(building.AirSpace(SI(1, "R"), SI(80, "perm"), vented), SI(inches, "in"), name)


def roof(inner=1.0, outer=1.5):
    """A vented vault with a board outside its insulation."""
    return building.Assembly(
        "roof",
        [
            board("gypsum board", 0.45, 5.96, 0.5, 640),
            gap("service cavity", 1.5),
            sheet("inner membrane", inner),
            board("fibrous insulation", 44, 10, 12, 40),
            board("OSB sheathing", 0.6, outer, 0.4375, 640),
            gap("vent space", 1.5, vented=True),
            board("roof covering", 0.1, 0.1, 0.5, 2000, "coverings"),
        ],
        interior_film=SI(0.61, "R"),
    )


def crowded():
    """Many thin layers in a small thickness, with long names."""
    return building.Assembly(
        "wall",
        [
            board("painted gypsum wallboard, two coats", 0.45, 6, 0.5, 640),
            sheet("humidity-variable membrane", 1),
            board("insulation", 5, 100, 1.5, 30),
            sheet("sheet behind the studs", 5),
            board("rigid foam, closed cells", 5, 1, 1, 30),
            sheet("water-resistive barrier", 20),
            board("fiberboard", 1, 20, 0.5, 250),
            sheet("another sheet", 20),
            gap("air", 0.75),
            board("cladding", 0.5, 5, 0.75, 500, "cladding"),
        ],
    )


def profile_state(assembly, indoor=ROOM, outdoor=COLD, **changes):
    """A section or graph of that assembly."""
    drying = SimpleNamespace(inward=5e-3 / 86400, outward=9e-3 / 86400)
    return SteadyRoof(assembly, steady.profile(assembly, indoor, outdoor), indoor, outdoor, drying, **changes)


def house(fresh, made=10 / 86400, edge=0.38, glass=0.62):
    """Water in balance in a house at 70 degF and 20 degF, 80 % outside."""
    flows = np.linspace(SI(15, "cfm"), SI(150, "cfm"), 40)
    outside = float(air.vapor_density(COLD.temperature, COLD.vapor_pressure))
    most = float(air.vapor_density(ROOM.temperature, air.saturation_vapor_pressure(ROOM.temperature)))

    def humidity(production, flow):
        return np.minimum((outside + production / flow) / most, 1.0)

    curves = tuple((kg / 86400, humidity(kg / 86400, flows)) for kg in (5, 10, 15))
    inside = float(humidity(made, fresh))
    return HouseWater(made, outside * fresh, inside * most * fresh, inside, fresh, edge, glass, curves, flows)


def pipe(*perms, pressure=654.0):
    """Sheets in a row."""
    permeances = tuple(SI(p, "perm") for p in perms)
    names = ("paint", "gypsum board", "membrane", "fiberboard")[: len(perms)]
    return LayersInRow(names, permeances, pressure, pressure / sum(1 / p for p in permeances))


def balance(inner, outer, indoor=ROOM, outdoor=COLD):
    """A map of two permeances with a cold plane between them."""
    inside, outside = (np.geomspace(SI(0.05, "perm"), SI(100, "perm"), 40) for _ in range(2))
    full = air.saturation_vapor_pressure(outdoor.temperature + 0.7)

    def gain(a, b):
        return (indoor.vapor_pressure - full) * a - (full - outdoor.vapor_pressure) * b

    grid = np.maximum(gain(inside[None, :], outside[:, None]), 0.0)
    here = SI(inner, "perm"), SI(outer, "perm")
    return GainMap(inside, outside, grid, *here, max(gain(*here), 0.0))


def film(inside, outside, months=True):
    """The teaching curve between two faces."""
    made = building.VariableMembrane((0.3, 0.8), (SI(0.5, "perm"), SI(13, "perm")))
    humidity = np.linspace(0, 1, 101)
    humid, dry = (
        tuple(made.at_mean(rh) for rh in year)
        for year in (
            (0.27, 0.28, 0.35, 0.45, 0.6, 0.7, 0.8, 0.8, 0.65, 0.5, 0.36, 0.3),
            (0.3, 0.3, 0.31, 0.32, 0.33, 0.35, 0.37, 0.38, 0.35, 0.33, 0.31, 0.3),
        )
    )
    here = humidity, made.at_mean(humidity), inside, outside, made.permeance(inside, outside)
    return FilmBetweenFaces(*here, humid, dry, 0) if months else FilmBetweenFaces(*here)


def july(inner, indoor, outdoor):
    """The roof in summer."""
    made = roof(inner)
    return SummerRoof(made, steady.profile(made, indoor, outdoor), indoor, outdoor)


def ladder(outdoor, layer, against):
    """Temperatures through the roof."""
    return from_profile(roof(), steady.profile(roof(), ROOM, outdoor), layer, against)


def buckets(inner, carried=29.0, top=4.5, bottom=-1.5):
    """A winter with a hole, at some inner layer."""
    inside = np.geomspace(SI(0.05, "perm"), SI(100, "perm"), 60)
    here = SI(inner, "perm")
    paint = SI(5.96, "perm")

    def through(sheet):
        return 654 * 3.0 * 150 * 86400 / (1 / sheet + 1 / paint)

    return TwoPaths(carried, 0.1 * carried, through(here), inside, through(inside), here, top, bottom)


def channel(gap, speed, month=0, wet=1.0):
    """A vent space over a leaky or a tight ceiling."""
    along = np.linspace(0, 4.9, 40)
    humidity = 1 - 0.2 * np.exp(-along / (20 * gap * abs(speed) * 40))
    power = tuple(
        (g / 86.4e6) * 26.7 * gap * abs(speed) / 0.1 for g in (37, 40, 70, 120, 200, 260, 300, 280, 200, 110, 60, 40)
    )
    leak = tuple(wet * g / 86.4e6 for g in (128, 110, 80, 40, 10, 0, 0, 0, 5, 30, 70, 110))
    vapor = tuple(g / 86.4e6 for g in (4, 4, 3, 2, 1, 0, 0, 0, 0.5, 1, 2, 3))
    return VentAir(along, humidity, gap, speed, power, vapor, leak, month)


def night(cooling, frost):
    """A night with a covering that falls below the air."""
    hours = np.linspace(1, 14, 14)
    outside = -4 - 3 * np.sin(np.pi * (hours - 1) / 26)
    return NightUnderSky(hours, outside - cooling * np.sin(np.pi * hours / 15), outside, np.full(14, -8.5), frost)


def months(most, left=0.0, limit=None):
    """Winter wetting and summer drying."""
    order = (10, 11, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9)
    shape = np.array([0.3, 0.9, 1.0, 0.7, 0.1, 0, 0, 0, 0, 0, 0, 0])
    out = np.array([0, 0, 0, 0, 0, 0.8, 1.2, 0.9 - left, 0.1, 0, 0, 0])
    held = np.maximum(np.cumsum(shape - out), 0)
    return MonthlyWater(order, tuple(most * shape), tuple(most * out), tuple(most * held), limit)


BANDS = ((20.0, "watch"), (28.0, "too wet"))


def year(peak, day=None, years=1, planes=1, warm=False):
    """Hours of wood moisture with a peak in March."""
    days = np.arange(1, 8760 * years + 1) / 24
    base = 12 + (peak - 12) * (0.5 - 0.5 * np.cos(2 * np.pi * (days - 250) / 365.25)) ** 2
    noise = 0.05 * np.sin(2 * np.pi * days * 3.7)
    names = ("sheathing", "rafter, outer edge", "fiberboard")[:planes]
    lines = tuple((name, base * (1 - 0.15 * k) + noise) for k, name in enumerate(names))
    count = 12 * years
    brought = 0.02 * peak * (1.1 + np.cos(np.arange(count) * np.pi / 6))
    return MoistureYear(days, lines, BANDS, brought, brought[::-1] * 0.9, 0, day, base - 10 if warm else None)


def traces(view, shift=0.0):
    """Six weeks of an invented logger."""
    days = np.arange(0, 42, 1 / 24)
    daily = np.sin(2 * np.pi * days)
    if view == "readings":
        upper = (Trace("room", days, 21 + 0.5 * daily), Trace("cavity", days, 2 + shift + 6 * daily + 0.1 * days),
                 Trace("outdoors", days, -3 + 5 * daily + 0.1 * days))  # fmt: skip
        lower = tuple(Trace(t.name, days, 0.5 + 0.2 * k + 0.05 * daily) for k, t in enumerate(upper))
        return LoggerTraces(view, upper, lower, "January 10")
    if view == "vapor":
        upper = tuple(
            Trace(n, days, p + shift + 60 * daily) for n, p in (("room", 1000), ("cavity", 420), ("outdoors", 350))
        )
        return LoggerTraces(view, upper, (), "January 10")
    upper = (
        Trace("measured", days, 14 + shift + 0.05 * days + 0.2 * daily),
        Trace("modeled", days, 13.5 + 0.06 * days),
    )
    return LoggerTraces(view, upper)


def inside(now, cold=-17.8, humidity=0.5):
    """The film from the room face to half way through the insulation."""
    share = np.linspace(0, 0.5, 60)
    temperature = 21.1 - share * (21.1 - cold)
    damp = np.minimum(humidity * air.saturation_vapor_pressure(21.1) / air.saturation_vapor_pressure(temperature), 1)
    made = building.VariableMembrane((0.3, 0.8), (SI(0.5, "perm"), SI(13, "perm")))
    return FilmInLayers(share, temperature, damp, made.at_mean(0.6 * damp), now)


def cases():
    """Name -> (class, states); the first two states differ."""
    dry, wet, many = profile_state(roof(outer=50)), profile_state(roof(3), DAMP), profile_state(crowded())
    pipes = [profile_state(roof(m, o), against="resistance") for m, o in ((1, 50), (3, 0.5))]
    return {
        "section and profile": (SectionAndProfile, (dry, wet, many)),
        "section and profile on resistance": (SectionAndProfile, tuple(pipes)),
        "curve": (Curve, (AirsOnCurve(ROOM, COLD), AirsOnCurve(HOT, DAMP), AirsOnCurve(DAMP, DAMP))),
        "tank": (Tank, (house(SI(45, "cfm")), house(SI(90, "cfm")), house(SI(15, "cfm"), 20 / 86400))),
        "rooms": (
            Rooms,
            (
                AirsBesideCeiling(ROOM, COLD),
                AirsBesideCeiling(COOL, HOT),
                AirsBesideCeiling(ROOM, ROOM),
            ),
        ),
        "ladder by depth": (
            Ladder,
            (ladder(COLD, "OSB sheathing", "depth"), ladder(ARCTIC, "fibrous insulation", "depth")),
        ),
        "ladder by R": (Ladder, tuple(ladder(COLD, n, "resistance") for n in ("OSB sheathing", "service cavity"))),
        "pipe": (Pipe, (pipe(40, 7, 0.5), pipe(40, 7, 5), pipe(100, 100, 100, 100, pressure=3000))),
        "map": (BalanceMap, (balance(1, 1.5), balance(0.1, 50), balance(5, 20, outdoor=ARCTIC))),
        "film": (Film, (film(0.41, 0.14), film(0.75, 0.86), film(0.2, 0.1))),
        "film sides": (
            FilmSides,
            (film(0.41, 0.14), LaminateFaces((0.75, 0.6, 0.25), (0.75, 0.4, 0.25), 8.8e-11, 4.7e-11)),
        ),
        "film without months": (Film, (film(0.41, 0.14, False), film(0.75, 0.86, False))),
        "sandwich": (
            Sandwich,
            (
                LaminateFaces((0.75, 0.6, 0.25), (0.75, 0.4, 0.25), SI(1.54, "perm"), SI(0.83, "perm")),
                LaminateFaces((0.5, 0.2, 0), (0.5, 0.1, 0), SI(0.67, "perm"), SI(0.40, "perm")),
            ),
        ),
        "buckets": (Buckets, (buckets(5.96), buckets(0.2), buckets(50, 800.0, 9.0, 1.0))),
        "channel": (Channel, (channel(0.038, 0.1), channel(0.1, -0.4, 6), channel(0.0127, 0.05, None, 0.2))),
        "night": (NightPicture, (night(9, 0.21), night(1, 0.0), night(14, 0.9))),
        "months": (MonthBars, (months(0.12), months(0.9, 0.6, 0.5), months(0.0))),
        "year": (YearGraph, (year(24.0, 120.0), year(33.0, 200.0, warm=True), year(18.0), year(30.0, 700.0, 3, 3))),
        "readings": (Traces, (traces("readings"), traces("readings", 3.0))),
        "vapor traces": (Traces, (traces("vapor"), traces("vapor", 200.0))),
        "model traces": (Traces, (traces("model"), traces("model", 2.0))),
        "inside": (Inside, (inside(0.11), inside(0.33), inside(0.41, 5.0, 0.4))),
        "compare": (
            TwoYearGraphs,
            (
                TwoYears(("foam-free vault", "foam above the deck"), (year(22), year(16))),
                TwoYears(("foam-free vault", "foam above the deck"), (year(30), year(16))),
            ),
        ),
        "reversal": (Reversal, (july(0.06, COOL, HOT), july(3, COOL, HOT), july(1, ROOM, COLD))),
    }


CASES = cases()


def words(picture):
    """Each text that is drawn, with its box on the screen."""
    renderer = picture.canvas.get_renderer()
    found = [(t.get_text(), t.get_window_extent(renderer)) for t in picture.figure.texts if t.get_text()]
    for ax in picture.figure.axes:
        found += [(t.get_text(), t.get_window_extent(renderer)) for t in ax.texts if t.get_text() and t.get_visible()]
        if not ax.axison:
            continue
        for axis in (ax.xaxis, ax.yaxis):
            if not axis.get_visible():
                continue
            low, high = sorted(axis.get_view_interval())
            slack = 1e-9 * (high - low)
            for tick in axis.get_major_ticks():
                label = tick.label1
                if label.get_visible() and label.get_text() and low - slack <= tick.get_loc() <= high + slack:
                    found.append((label.get_text(), label.get_window_extent(renderer)))
    return found


def cut(picture):
    """Words that stick out of the figure."""
    whole = picture.figure.bbox
    return [
        text
        for text, box in words(picture)
        if box.x0 < -0.5 or box.y0 < -0.5 or box.x1 > whole.x1 + 0.5 or box.y1 > whole.y1 + 0.5
    ]


def overlapping(picture):
    """Pairs of words that stand on each other."""
    found = []
    for (one, a), (other, b) in combinations(words(picture), 2):
        wide = min(a.x1, b.x1) - max(a.x0, b.x0)
        high = min(a.y1, b.y1) - max(a.y0, b.y0)
        # Boxes hold the room above small letters: a px of it may be shared.
        if wide > 0.5 and high > 1.5:
            found.append((one, other))
    return found

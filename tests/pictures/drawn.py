"""Every kind of picture with two states that differ, and where its words stand."""

from itertools import combinations
from types import SimpleNamespace

import numpy as np

from dryward import air, building, units, weather
from dryward.physics import steady
from dryward.pictures.balance_map import BalanceMap, MapState
from dryward.pictures.curve import Curve, CurveState
from dryward.pictures.film import Film, FilmState
from dryward.pictures.ladder import Ladder, from_profile
from dryward.pictures.pipe import Pipe, PipeState
from dryward.pictures.profile import ProfileGraph, ProfileState, SectionAndProfile
from dryward.pictures.reversal import Reversal, ReversalState
from dryward.pictures.rooms import Rooms, RoomsState
from dryward.pictures.section import Section
from dryward.pictures.tank import Tank, TankState

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
    return ProfileState(assembly, steady.profile(assembly, indoor, outdoor), indoor, outdoor, drying, **changes)


def house(fresh, made=10 / 86400, limit=0.38):
    """Water in balance in a house at 70 degF and 20 degF, 80 % outside."""
    flows = np.linspace(SI(15, "cfm"), SI(150, "cfm"), 40)
    outside = float(air.vapor_density(COLD.temperature, COLD.vapor_pressure))
    most = float(air.vapor_density(ROOM.temperature, air.saturation_vapor_pressure(ROOM.temperature)))

    def humidity(production, flow):
        return np.minimum((outside + production / flow) / most, 1.0)

    curves = tuple((kg / 86400, humidity(kg / 86400, flows)) for kg in (5, 10, 15))
    inside = float(humidity(made, fresh))
    return TankState(made, outside * fresh, inside * most * fresh, inside, fresh, limit, curves, flows)


def pipe(*perms, pressure=654.0):
    """Sheets in a row."""
    permeances = tuple(SI(p, "perm") for p in perms)
    names = ("paint", "gypsum board", "membrane", "fiberboard")[: len(perms)]
    return PipeState(names, permeances, pressure, pressure / sum(1 / p for p in permeances))


def balance(inner, outer, indoor=ROOM, outdoor=COLD):
    """A map of two permeances with a cold plane between them."""
    inside, outside = (np.geomspace(SI(0.05, "perm"), SI(100, "perm"), 40) for _ in range(2))
    full = air.saturation_vapor_pressure(outdoor.temperature + 0.7)

    def gain(a, b):
        return (indoor.vapor_pressure - full) * a - (full - outdoor.vapor_pressure) * b

    grid = np.maximum(gain(inside[None, :], outside[:, None]), 0.0)
    here = SI(inner, "perm"), SI(outer, "perm")
    return MapState(inside, outside, grid, *here, max(gain(*here), 0.0))


def film(inside, outside, months=True):
    """The teaching curve between two faces."""
    made = building.VariableMembrane((0.3, 0.8), (SI(0.5, "perm"), SI(13, "perm")))
    humidity = np.linspace(0, 1, 101)
    year = tuple(made.at_mean(rh) for rh in (0.27, 0.28, 0.35, 0.45, 0.6, 0.7, 0.8, 0.8, 0.65, 0.5, 0.36, 0.3))
    return FilmState(humidity, made.at_mean(humidity), inside, outside, made.permeance(inside, outside),
                     year if months else (), 0 if months else None)  # fmt: skip


def july(inner, indoor, outdoor):
    """The roof in summer."""
    made = roof(inner)
    return ReversalState(made, steady.profile(made, indoor, outdoor), indoor, outdoor)


def ladder(outdoor, layer, against):
    """Temperatures through the roof."""
    return from_profile(roof(), steady.profile(roof(), ROOM, outdoor), layer, against)


def cases():
    """Name -> (class, states); the first two states differ."""
    dry, wet, many = profile_state(roof(outer=50)), profile_state(roof(3), DAMP), profile_state(crowded())
    pipes = [profile_state(roof(m, o), against="resistance") for m, o in ((1, 50), (3, 0.5))]
    return {
        "section": (Section, (dry, wet, many)),
        "profile": (ProfileGraph, (dry, wet, many)),
        "profile on resistance": (ProfileGraph, tuple(pipes)),
        "section and profile": (SectionAndProfile, (dry, wet, many)),
        "curve": (Curve, (CurveState(ROOM, COLD), CurveState(HOT, DAMP), CurveState(DAMP, DAMP))),
        "tank": (Tank, (house(SI(45, "cfm")), house(SI(90, "cfm")), house(SI(15, "cfm"), 20 / 86400))),
        "rooms": (
            Rooms,
            (RoomsState(ROOM, COLD), RoomsState(COOL, HOT, ("room", "crawl space")), RoomsState(ROOM, ROOM)),
        ),
        "ladder by depth": (
            Ladder,
            (ladder(COLD, "OSB sheathing", "depth"), ladder(ARCTIC, "fibrous insulation", "depth")),
        ),
        "ladder by R": (Ladder, tuple(ladder(COLD, n, "resistance") for n in ("OSB sheathing", "service cavity"))),
        "pipe": (Pipe, (pipe(40, 7, 0.5), pipe(40, 7, 5), pipe(100, 100, 100, 100, pressure=3000))),
        "map": (BalanceMap, (balance(1, 1.5), balance(0.1, 50), balance(5, 20, outdoor=ARCTIC))),
        "film": (Film, (film(0.41, 0.14), film(0.75, 0.86), film(0.2, 0.1))),
        "film without months": (Film, (film(0.41, 0.14, False), film(0.75, 0.86, False))),
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

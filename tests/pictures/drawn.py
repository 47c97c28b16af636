"""Every kind of picture with two states that differ, and where its words stand."""

from itertools import combinations
from types import SimpleNamespace

from dryward import building, units, weather
from dryward.physics import steady
from dryward.pictures.profile import ProfileGraph, ProfileState, SectionAndProfile
from dryward.pictures.section import Section

SI = units.to_si
COLD = weather.Air(SI(20, "degF"), 0.8)
ROOM = weather.Air(SI(70, "degF"), 0.4)
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


def cases():
    """Name -> (class, states); the first two states differ."""
    dry, wet, many = profile_state(roof(outer=50)), profile_state(roof(3), DAMP), profile_state(crowded())
    pipes = [profile_state(roof(m, o), against="resistance") for m, o in ((1, 50), (3, 0.5))]
    return {
        "section": (Section, (dry, wet, many)),
        "profile": (ProfileGraph, (dry, wet, many)),
        "profile on resistance": (ProfileGraph, tuple(pipes)),
        "section and profile": (SectionAndProfile, (dry, wet, many)),
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

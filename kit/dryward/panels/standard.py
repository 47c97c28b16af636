"""The controls all lessons share: names, ranges, starts and steps.

A lesson takes one by its name and may give it another start:
``standard("M_in").starting(3.0)``.  One decade of a log slider has 25 notches.
"""

from dryward.checks import UnknownName
from dryward.panels.controls import Choice, Scale, Slider

_DECADE = 25


def _same(left, right, start, step, unit=""):
    scale = Scale(left, right, start, step, unit)
    return {"us": scale, "si": scale}


def _permeance(name, words, start_us, start_si):
    return Slider(
        name,
        words,
        "permeance",
        Scale(0.05, 100, start_us, _DECADE),
        Scale(70, 0.035, start_si, _DECADE),
        log=True,
    )


def _resistance(name, words, highest_us, highest_si, start_us, start_si, step_us=0.5):
    scales = Scale(0, highest_us, start_us, step_us), Scale(0, highest_si, start_si, 0.1)
    return Slider(name, words, "thermal resistance", *scales)


_SLIDERS = (
    # climate
    Slider("T_out", "Outdoor temperature", "temperature", Scale(-20, 100, 20, 1), Scale(-29, 38, -7, 0.5)),
    Slider("RH_out", "Outdoor humidity", "relative humidity", **_same(30, 100, 80, 1)),
    Slider(
        "Sky",
        "Sky colder than the air by",
        "temperature difference",
        Scale(0, 45, 36, 1),
        Scale(0, 25, 20, 1),
        said="Difference between air and sky",
    ),
    Slider(
        "Wind",
        "Wind: 3 calm, 8 breeze, 20 windy",
        "thermal transmittance",
        **_same(3, 25, 8, 1, "W/(m2 K)"),
        said="Heat exchange with the air",
    ),
    # room air
    Slider("T_in", "Indoor temperature", "temperature", Scale(60, 80, 70, 1), Scale(15, 27, 21, 0.5)),
    Slider("RH_in", "Indoor humidity", "relative humidity", **_same(15, 70, 40, 1)),
    Slider("T", "Temperature", "temperature", Scale(0, 100, 70, 1), Scale(-18, 38, 21, 0.5)),
    Slider("RH", "Relative humidity", "relative humidity", **_same(5, 100, 40, 1)),
    Slider("Water", "Water made in the house", "mass flow", Scale(10, 40, 21, 1), Scale(5, 20, 10, 0.5)),
    Slider("Fresh_air", "Fresh air", "air flow", Scale(15, 150, 45, 5), Scale(25, 255, 75, 5)),
    # assembly
    _permeance("M_in", "Inner membrane", 1, 3.5),
    _permeance("M_out", "Outer layer", 50, 0.07),
    _resistance("R_ins", "Insulation", 60, 10.5, 44, 7.7, 1),
    _resistance("R_out", "Insulation outside the cavity", 30, 5.3, 0, 0),
    _resistance("R_in", "Insulation inside the membrane", 30, 5.3, 5.5, 1.0),
    _resistance("R_cover", "Insulation under the covering", 4, 0.7, 0, 0),
    Slider("Framing", "Framing share", "relative humidity", **_same(0, 35, 25, 1)),
    Slider("Window", "Window, coldest part", "thermal resistance", Scale(1, 8, 3, 0.5), Scale(0.2, 1.4, 0.5, 0.1)),
    Slider("Gap_share", "Share of the membrane missing", "relative humidity", **_same(0, 20, 0, 0.5)),
    Slider(
        "dp_vapor",
        "Vapor pressure difference",
        "pressure",
        Scale(0, 0.9, 0.19, 0.01),
        Scale(0, 3000, 650, 10),
    ),
    Slider(
        "M_dry",
        "Membrane when dry",
        "permeance",
        Scale(0.1, 2, 0.5, _DECADE),
        Scale(35, 1.75, 7, _DECADE),
        log=True,
    ),
    Slider(
        "M_wet",
        "Membrane when humid",
        "permeance",
        Scale(3, 30, 13, _DECADE),
        Scale(1.2, 0.12, 0.27, _DECADE),
        log=True,
    ),
    Slider(
        "M_back",
        "Backing sheet",
        "permeance",
        Scale(0.5, 10, 2, _DECADE),
        Scale(7, 0.35, 1.75, _DECADE),
        log=True,
    ),
    Slider("RH_left", "Humidity at the inside face", "relative humidity", **_same(0, 100, 75, 1)),
    Slider("RH_right", "Humidity at the outside face", "relative humidity", **_same(0, 100, 25, 1)),
    Slider(
        "Hole",
        "Hole in the ceiling",
        "area",
        Scale(0.01, 4, 1, _DECADE, "in2"),
        Scale(0.06, 26, 6.5, _DECADE, "cm2"),
        log=True,
    ),
    Slider("dP", "Air pressure across it", "pressure", **_same(0.5, 6, 1, 0.1, "Pa")),
    Slider("Days", "Days of winter", "time", **_same(30, 210, 150, 10)),
    Slider("Area", "Ceiling area", "area", Scale(32, 2000, 32, _DECADE), Scale(3, 186, 3, _DECADE), log=True),
    Slider("ACH50", "Air changes at 50 Pa", "air change", **_same(0.3, 10, 3, 0.1)),
    Slider("Share", "Share of leaks in the roof", "relative humidity", **_same(0, 60, 20, 5)),
    Slider("Gap", "Vent gap", "length", Scale(0.5, 4, 1.5, 0.25), Scale(12, 100, 38, 1)),
    Slider("Air", "Air speed in the gap", "speed", Scale(10, 100, 20, 5), Scale(0.05, 0.5, 0.1, 0.05)),
    Slider("Rafter", "Rafter length", "length", Scale(6, 30, 16, 1, "ft"), Scale(2, 9, 5, 0.5, "m")),
    Slider(
        "Warming",
        "Vent air warmed by",
        "temperature difference",
        Scale(0, 5, 0, 0.5),
        Scale(0, 3, 0, 0.1),
        said="Warming of the vent air",
    ),
    Slider("Suction", "Suction the vent adds at the ceiling", "pressure", **_same(0, 4, 0, 0.5, "Pa")),
    Slider("Emissivity", "Emissivity of the covering", "number", **_same(0.1, 0.95, 0.9, 0.05)),
    Slider("Start", "Wood moisture at the start", "relative humidity", **_same(8, 30, 12, 1)),
    Slider("Years", "Years", "number", **_same(1, 5, 2, 1)),
)

_CHOICES = (
    Choice(
        "Film",
        "Inner membrane",
        (("variable", "humidity-variable"), ("fixed", "fixed"), ("direction-dependent", "direction-dependent")),
    ),
)

STANDARD = {each.name: each for each in (*_SLIDERS, *_CHOICES)}


def standard(name):
    """The shared control of that name.

    Parameters
    ----------
    name : str

    Returns
    -------
    Slider or Choice

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> standard("RH_in").us.start
    40
    """
    try:
        return STANDARD[name]
    except KeyError:
        raise UnknownName("control", name, STANDARD) from None

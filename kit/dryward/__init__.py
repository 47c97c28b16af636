"""Moist air, roof and wall assemblies, and lessons that show why they stay dry.

The rooms, from the ground up (a room uses only the rooms below it):

==============  =============================================================
units, checks   US and SI at the edge; range checks and their plain sentences
air             moist air: one state, saturation, dew point, humidity ratio
building        what is built: materials, membranes, layers, assemblies, codes
weather         what is around it: months, hours, the air indoors
verdict         what it means: dry, damp or wet, by limits with their sources
physics         what happens: steady, twelve months, hour by hour, leaks, mold
pictures        what is drawn
teaching        what is asked: lessons, questions, progress
report          what is printed
evidence        every published check, computed again
api             what is typed at a prompt: a roof, its state, its year
panels          what is touched: sliders and pages
cli             what is typed in a shell
==============  =============================================================

What a user types stands here too, under its own name, and is loaded when it
is first asked for: ``import dryward as dw``, then ``dw.roof("vented-vault")``.
``dryward api`` lists the names.

Everything inside is SI: degrees Celsius, Pa, m, s, kg, W; relative humidity
0 to 1; permeance in kg/(s m2 Pa).  Layers run from inside to outside and a
flux is positive outward.
"""

import difflib
from importlib import import_module
from typing import Any

from dryward.language import message

__version__ = "0.1.0"

#: Where each public name is at home, by the module's name without ``dryward.``.
PUBLIC = {
    "api": ("roof", "membrane", "profile", "sweep", "drying_rates", "dry_range", "months", "year"),
    "building": (
        "Material", "FixedMembrane", "VariableMembrane", "LaminateMembrane", "AirSpace", "Layer", "Framing", "Assembly",
        "material", "air_space", "preset", "presets", "load", "save",
    ),
    "building.job": ("Vent",),
    "weather": ("Air", "MonthlyClimate", "HourlyWeather", "read_epw", "demo", "demos", "indoor"),
    "verdict": ("Criterion", "Finding", "Verdict"),
    "physics.steady": ("Profile", "Sweep"),
    "physics.drying": ("Drying",),
    "physics.monthly": ("Months",),
    "physics.hourly": ("Hours",),
    "physics.limits": ("Range",),
    "physics.ventspace": ("VentSpace",),
    "physics.airleak": ("Leak",),
    "panels": ("page",),
    "checks": ("PlainError",),
}  # fmt: skip
#: Modules that are reached by their last name.
_MODULES = {
    name.rpartition(".")[2]: name
    for name in (
        "air", "units", "building", "weather", "verdict", "physics", "evidence", "report", "panels", "physics.steady",
        "physics.drying", "physics.monthly", "physics.hourly", "physics.ventspace", "physics.airleak", "physics.sky",
        "physics.mold", "physics.limits",
    )
}  # fmt: skip
_HOME = {name: home for home, names in PUBLIC.items() for name in names}


def __getattr__(name: str) -> Any:
    if name in _HOME:
        return getattr(import_module(f"{__name__}.{_HOME[name]}"), name)
    if name in _MODULES:
        return import_module(f"{__name__}.{_MODULES[name]}")
    if name.startswith("__"):  # Python asks for many by itself
        raise AttributeError(name)
    near = difflib.get_close_matches(name, __dir__(), n=1)
    raise AttributeError(message("api.no-such-name", name=name, near="".join(near), found=bool(near)))


def __dir__() -> list[str]:
    return sorted({"__version__", *_HOME, *_MODULES})

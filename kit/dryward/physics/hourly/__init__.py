"""Hour by hour: heat and moisture in an assembly through a year.

``simulate`` is the way in and ``Hours`` what comes out.  ``Surface`` says how
sun, sky and wind meet the outer face, ``AirFlow`` how air goes through.
``batch`` runs any cases on all cores, ``varied`` changes one thing of a case.
The parts: ``grid`` cuts layers into cells, ``tables`` turns property curves
into rows, ``surfaces`` prepares sun and sky, ``air_paths`` the air that moves,
``case`` gathers all of it as arrays (``layout``), ``march`` steps through the
hours (and holds the equations), ``balances`` solves each step.  Nothing
compiled is loaded before the first run.
"""

from dryward.physics.hourly.air_paths import AirFlow, leak_flow
from dryward.physics.hourly.result import Hours, LayerHours, MonthlyBudget
from dryward.physics.hourly.simulate import Stopped, batch, getting_ready, simulate, warm_up
from dryward.physics.hourly.surfaces import Surface
from dryward.physics.hourly.vary import variables, varied

__all__ = [
    "simulate",
    "Hours",
    "LayerHours",
    "MonthlyBudget",
    "Surface",
    "AirFlow",
    "leak_flow",
    "Stopped",
    "batch",
    "variables",
    "varied",
    "getting_ready",
    "warm_up",
]

"""How the numbers of a case lie in memory: the named tuples of arrays that the compiled march takes.

Cells are counted 1 to the last; 0 and one more are the airs on the two sides.
Face i lies between the cells i and i + 1, so face 0 is the room's.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]


class Constants(NamedTuple):
    """Plain numbers of a case."""

    step: float  # longest time step [s]
    shortest: float  # shortest one [s]
    tolerance: float  # largest change of the last pass, of the moisture potential [-]
    emittance: float  # of the outer surface, 0 without one
    r_in: float  # thermal resistance of the inner film
    z_in: float  # vapor resistance of the inner film
    z_out: float  # vapor resistance of the outer film
    air_vapor: float  # vapor in a kilogram of dry air, by vapor pressure [kg/(kg Pa)]
    latent: float  # heat of evaporation at 0 degC [J/kg]
    c_water: float  # specific heats [J/(kg K)]
    c_vapor: float
    c_air: float
    suction: float  # density of water x gas constant of vapor
    stefan: float  # Stefan and Boltzmann's constant
    zero_c: float  # 0 degC in kelvin
    coldest: float  # first row of the saturation table [degC]
    per_kelvin: float  # rows of that table in a kelvin
    per_humidity: float  # rows of a material's table from dry to saturated
    free: float  # water by which free water grows as the potential goes from 1 to 2 [kg/m3]
    face_keeps: float  # free water that stays at a face [kg/m2]
    vent_film: float  # from both faces of the vent space to its air [W/(m2 K)]
    vent_vapor: float  # the same for vapor [kg/(s m2 Pa)]
    warmer_first: float  # first column of the table of vent air [K], and from one to the next
    warmer_step: float


class Cells(NamedTuple):
    """What every cell is (cells + 2)."""

    material: Ints  # row of its table in `Curves.material`
    width: Floats
    capacity: Floats  # heat storage of the dry layer [J/(m3 K)]
    bound: Floats  # water that the material binds; more is free [kg/m3]
    full: Floats  # free saturation: what the layer can hold at most [kg/m3]
    rise: Floats  # slope of the last piece of its sorption curve [kg/m3]
    beside: Ints  # the cell behind the face that it lies at: 0 for none, -1 where it lies at no face


class Faces(NamedTuple):
    """What stands at every face (cells + 1)."""

    r: Floats  # thermal resistance there
    z: Floats  # vapor resistance of fixed membranes
    liquid: Ints  # how liquid water passes: NO_LIQUID, ONE_MATERIAL or CONTACT
    membrane: Ints  # row of a variable membrane in `Curves.membrane`, -1 for none
    z_before: Floats  # fixed vapor resistance on the room's side of the variable membrane
    z_behind: Floats
    air: Ints  # how seeping air passes: NO_AIR, TOUCHING or HOLES


class Curves(NamedTuple):
    """Tables to look up in."""

    material: Floats  # (materials, rows, 10), see `tables`
    saturation: Floats  # (rows, 3)
    membrane: Floats  # (membranes, points, 2)
    vent_flow: Floats  # (wind, warmth) [kg/(s m2)]


class Paths(NamedTuple):
    """Where air goes through."""

    vent_cell: int  # the vent space; 0 for none
    runs: Ints  # (runs, 2) first and last cell of each run of open cells
    joints: bool  # whether the air passes tight layers by their joints: a leak


class State(NamedTuple):
    """What is known of every cell at an hour's end (cells + 2); changed in place, so that a run can go on."""

    temperature: Floats
    potential: Floats  # moisture potential [-]: relative humidity up to 1, free water beyond
    water: Floats  # [kg/m3]
    heat: Floats  # [J/m3]
    along: Floats  # place of each face's membrane along its curve (cells + 1)


class Scratch(NamedTuple):
    """Arrays to work in."""

    work: Floats  # (WORK_ROWS, cells + 2)
    edge: Floats  # (EDGES,)
    membrane: Floats  # (MEMBRANE_ROWS, cells + 1)
    counts: Ints  # (COUNTS,)


class Output(NamedTuple):
    """What is kept of every hour (hours, cells)."""

    temperature: Floats
    humidity: Floats
    water: Floats  # bound [kg/m3]
    free: Floats  # free [kg/m2]
    ran_off: Floats  # (years, cells) [kg/m2]
    given: Floats  # (hours, GIVEN)


def scratch(cells: int) -> Scratch:
    """Empty arrays for the march to work in."""
    return Scratch(
        np.zeros((WORK_ROWS, cells + 2)),
        np.zeros(EDGES),
        np.zeros((MEMBRANE_ROWS, cells + 1)),
        np.zeros(COUNTS, np.int64),
    )


# Columns of the hourly series.
T_IN, P_IN, T_OUT, P_OUT, FILM, SUN, SKY, SEEP, STRAIGHT, WIND = range(10)
COLUMNS = 10
# Columns of what an hour gives back.
(
    G_IN, G_OUT, G_LEAK_IN, G_LEAK_OUT, G_LEFT, G_VENT, G_OFF, Q_IN, Q_OUT, Q_LEAK_IN, Q_LEAK_OUT, Q_OTHER, VENT_FLOW,
    T_SURFACE,
) = range(14)  # fmt: skip
GIVEN = 14
# How liquid water passes a face: not at all, within one material, between two that touch.
NO_LIQUID, ONE_MATERIAL, CONTACT = 0, 1, 2
# How seeping air passes a face: not at all (by joints), within open layers that touch, or by holes in a membrane.
NO_AIR, TOUCHING, HOLES = 0, 1, 2
# Rows of the work array, one number for each cell: the iterate; vapor
# pressure and its slopes; half resistances to heat and to vapor (Z: vapor
# alone, X: with the liquid that evaporates at a face); liquid conductivity,
# its integral, and the logarithm of humidity; water.
(
    T_NOW, U_NOW, P, P_U, P_T, R, R_U, Z, Z_U, X, X_U, X_T, K, K_U, PSI, PSI_U, LOG, W_NOW, W_U,
) = range(19)  # fmt: skip
# The linear system: what is missing of water and heat (M0, M1), its slopes by
# u and T of the cell (D), of the one before (L) and of the one behind (N);
# what is left of it on the way (E); and its solution, the steps of u and T.
(
    M0, M1, D00, D01, D10, D11, L00, L01, L10, L11, N00, N01, N10, N11, E00, E01, E10, E11, STEP_U, STEP_T,
) = range(19, 39)  # fmt: skip
WORK_ROWS = 39
# What the first and the last face pass on: flux, and its slopes by u and T of the cell inside.
IN_G, IN_GU, IN_GT, IN_Q, IN_QU, IN_QT, OUT_G, OUT_GU, OUT_GT, OUT_Q, OUT_QU, OUT_QT = range(12)
EDGES = 12
# Slopes at a variable membrane, to move it along its curve once the step is known.
BY_RH, BY_RISE, OFF, BY_WARMTH, PER_PRESSURE, WEIGHT, SPAN = range(7)
MEMBRANE_ROWS = 7
# What the march counts; where and when a failure was.
STEPS_DONE, PASSES, HALVINGS, FAILED_HOUR = range(4)
COUNTS = 4

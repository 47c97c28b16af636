"""One layer with air moving through it, and a film with gaps in it."""

from dataclasses import dataclass

import numpy as np

from dryward.air import MASS_RATIO, STANDARD_PRESSURE
from dryward.checks import within
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT
from dryward.physics.shape import plain


@dataclass(frozen=True)
class LayerFlow:
    """Heat and vapor through a layer: what `layer_flow` gives.

    Attributes
    ----------
    heat : float or array
        Outward, with the heat that the air carries above 0 degC [W/m2].
    vapor : float or array
        Outward, with the vapor that the air carries [kg/(s m2)].
    """

    heat: float
    vapor: float


def layer_flow(air_flow, conductance, permeance, inner, outer, pressure=STANDARD_PRESSURE):
    """Heat and vapor through a layer that air moves through.

    Parameters
    ----------
    air_flow : float or array
        Dry air, outward [kg/(s m2)], -1 to 1.
    conductance : float or array
        Thermal conductance of the layer [W/(m2 K)], above 0 to 1e6.
    permeance : float or array
        Vapor permeance of the layer [kg/(s m2 Pa)], above 0 to 1.
    inner, outer : tuple
        (temperature [degC], vapor pressure [Pa]) at the two faces.
    pressure : float
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    LayerFlow

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Steady state, closed form: with P = c m / conductance the heat is
    c m (T1 + (T1 - T2)/(e^P - 1)), and the vapor likewise, with the mass
    ratio over the pressure in place of c.  The humidity ratio is taken as
    proportional to the vapor pressure.  Without air it is plain conduction
    and diffusion.

    References
    ----------
    ÖNORM B 8110-2:2020, as quoted in course notes.

    Examples
    --------
    >>> flow = layer_flow(1e-4, 0.175, 1e-9, (20.0, 1168.476), (-5.0, 320.945))
    >>> round(flow.heat, 3)
    5.249
    """
    flow = within("Air through the layer", air_flow, -1.0, 1.0, "kg/(s m²)")
    conductance = within("Thermal conductance", conductance, 0.0, 1e6, "W/(m² K)", above=True)
    permeance = within("Vapor permeance", permeance, 0.0, 1.0, "kg/(s m² Pa)", above=True)
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    warm, cold = (within("Temperature", side[0], -100.0, 200.0, "°C") for side in (inner, outer))
    moist, dry = (within("Vapor pressure", side[1], 0.0, total, "Pa") for side in (inner, outer))
    heat = _carried_and_conducted(AIR_SPECIFIC_HEAT * flow, conductance, warm, cold)
    vapor = _carried_and_conducted(MASS_RATIO / total * flow, permeance, moist, dry)
    return LayerFlow(heat, vapor)


def _carried_and_conducted(carried, conductance, inner, outer):
    ratio = carried / conductance
    # P/(e^P - 1) is 1 - P/2 near zero, where the fraction itself is 0/0.
    small = np.abs(ratio) < 1e-9
    safe = np.where(small, 1.0, ratio)
    with np.errstate(over="ignore"):  # a flow that carries all: e^P is inf, the share 0
        share = np.where(small, 1.0 - ratio / 2.0, safe / np.expm1(safe))
    flux = carried * inner + conductance * share * (inner - outer)
    return plain(flux)


def permeance_with_gaps(film, beside, gap_share):
    """Permeance of a film with gaps, together with the layers in line with it.

    Parameters
    ----------
    film : float or array
        Permeance of the whole film [kg/(s m2 Pa)], 0 to 1.
    beside : float or array
        Of all that stands in line with it, gap or not [kg/(s m2 Pa)], above 0 to 1.
    gap_share : float or array
        Part of the area without film [-], 0 to 1.

    Returns
    -------
    float or array
        By area, broadcast shape [kg/(s m2 Pa)].

    Raises
    ------
    OutOfRange
        Outside a range.

    Notes
    -----
    Diffusion only: areas count.  Air through the same gaps is another
    matter, and usually the larger one.

    Examples
    --------
    >>> round(permeance_with_gaps(0.1e-10, 5.96e-10, 0.1) * 1e10, 2)  # from 5.96: still 88.5 % less
    0.68
    """
    film = within("Permeance of the film", film, 0.0, 1.0, "kg/(s m² Pa)")
    open_way = within("Permeance in line with the film", beside, 0.0, 1.0, "kg/(s m² Pa)", above=True)
    share = within("Share of gaps", gap_share, 0.0, 1.0, "%")
    return share * open_way + (1.0 - share) * film * open_way / (film + open_way)

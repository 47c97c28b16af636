"""Real moist air, by a library: what the short formulas are held to."""

from dataclasses import dataclass

import numpy as np

from dryward.air.vapor import STANDARD_PRESSURE
from dryward.checks import Floats, together, within
from dryward.units import KELVIN


@dataclass(frozen=True)
class MoistAir:
    """Real moist air: what `moist_air` gives, each in the shape of its input.

    Attributes
    ----------
    humidity_ratio : float or array [kg/kg of dry air]
    enthalpy : float or array [J/kg of dry air]
    specific_volume : float or array [m3/kg of dry air]
    wet_bulb : float or array [degC]
    dew_point : float or array [degC]
    """

    humidity_ratio: float | Floats
    enthalpy: float | Floats
    specific_volume: float | Floats
    wet_bulb: float | Floats
    dew_point: float | Floats


def moist_air(
    temperature: float | Floats, relative_humidity: float | Floats, pressure: float | Floats = STANDARD_PRESSURE
) -> MoistAir:
    """Real moist air by CoolProp: the reference the short formulas are held to.

    Parameters
    ----------
    temperature : float or array
        Air temperature [degC], -60 to 100.
    relative_humidity : float or array
        Relative humidity [-], 0 to 1.
    pressure : float or array
        Air pressure [Pa], 10 000 to 200 000.

    Returns
    -------
    MoistAir

    Raises
    ------
    OutOfRange
        For air hotter, colder, moister or thinner than that.

    Notes
    -----
    CoolProp is imported when this is first called: it costs more than a
    second and 70 MB, which no lesson should pay at its start.

    References
    ----------
    ASHRAE research project 1485, as implemented in CoolProp's humid air.

    Examples
    --------
    >>> round(moist_air(25.0, 1.0).humidity_ratio, 5)
    0.02017
    """
    kelvin = within("Temperature", temperature, -60.0, 100.0, "degC") + KELVIN
    share = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    total = within("Air pressure", pressure, 1e4, 2e5, "Pa")
    together(temperature=kelvin, relative_humidity=share, air_pressure=total)
    from CoolProp.HumidAirProp import HAPropsSI

    kelvin, share, total = np.broadcast_arrays(kelvin, share, total)

    def ask(what: str) -> float | Floats:
        flat = np.array(
            [
                HAPropsSI(what, "T", t, "R", r, "P", p)
                for t, r, p in zip(kelvin.flat, share.flat, total.flat, strict=True)
            ]
        )
        return float(flat[0]) if kelvin.ndim == 0 else flat.reshape(kelvin.shape)

    return MoistAir(ask("W"), ask("H"), ask("V"), ask("B") - KELVIN, ask("D") - KELVIN)

"""Saturation formulas of other sources than the kit's own.

A number that was published with one of them is checked with it, so that the
tolerance measures the method and not the formula.  The kit itself uses only
the one equation in `dryward.air`.
"""

import numpy as np


def iso_13788(temperature):
    """Saturation pressure as ISO 13788 writes it.

    Parameters
    ----------
    temperature : float or array
        [degC], -50 to 60; the branch over ice below 0.

    Returns
    -------
    float or array
        [Pa].

    References
    ----------
    ISO 13788, the two formulas with 610.5 Pa; read in documents that quote
    them (DIN 4108-3:2024, equations C.15 and C.16).

    Examples
    --------
    >>> round(iso_13788(20.0))
    2337
    """
    t = np.asarray(temperature, dtype=float)
    water, ice = 17.269 * t / (237.3 + t), 21.875 * t / (265.5 + t)
    found = 610.5 * np.exp(np.where(t < 0, ice, water))
    return float(found) if np.ndim(temperature) == 0 else found


def power_form(temperature):
    """Saturation pressure by the power form of older editions of DIN 4108-3.

    Parameters
    ----------
    temperature : float or array
        [degC], -20 to 30; the branch over ice below 0.

    Returns
    -------
    float or array
        [Pa].

    References
    ----------
    DIN 4108-3 before 2014; read in a textbook summary that quotes it.

    Examples
    --------
    >>> round(power_form(20.0))
    2338
    """
    t = np.asarray(temperature, dtype=float) / 100
    found = np.where(t < 0, 4.689 * (1.486 + t) ** 12.3, 288.68 * (1.098 + t) ** 8.02)
    return float(found) if np.ndim(temperature) == 0 else found


def magnus_over_water(temperature):
    """Saturation pressure by the Magnus form with Sonntag's numbers, over water only.

    Parameters
    ----------
    temperature : float or array
        [degC], -45 to 60.

    Returns
    -------
    float or array
        [Pa]; over supercooled water below 0 degC, so up to half as much
        again as over ice.

    References
    ----------
    The widespread coefficients 610.94 Pa, 17.625 and 243.04 degC; from memory.

    Examples
    --------
    >>> round(magnus_over_water(-10.0) / iso_13788(-10.0), 2)
    1.11
    """
    t = np.asarray(temperature, dtype=float)
    found = 610.94 * np.exp(17.625 * t / (243.04 + t))
    return float(found) if np.ndim(temperature) == 0 else found

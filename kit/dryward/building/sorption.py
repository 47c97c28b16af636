"""Water that wood holds: the Hailwood-Horrobin curve, generated once here.

All wood rows of the library get their sorption points from this one
function, so that no wood curve can drift away from another.
"""

from dryward.checks import within

# Wood Handbook coefficients, temperature in degC: each row c0 + c1 T + c2 T2.
_W = (349.0, 1.29, 0.0135)
_K = (0.805, 0.000736, -0.00000273)
_K1 = (6.27, -0.00938, -0.000303)
_K2 = (1.91, 0.0407, -0.000293)

#: Humidities at which the library tabulates a wood curve [-].
POINTS = (0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.85, 0.9, 0.95, 0.98, 0.99)


def wood_moisture(relative_humidity, temperature=20.0):
    """Moisture content of wood in balance with air.

    Parameters
    ----------
    relative_humidity : float or array
        Any shape [-], 0 to 1.
    temperature : float or array, optional
        Of the wood [degC], -10 to 130.

    Returns
    -------
    float or array
        Mass of water per mass of dry wood [-].

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    One curve for all species; a species differs from it by 1 to 2 points of
    moisture content, and wood that is drying holds more than wood that is
    wetting.

    References
    ----------
    USDA Forest Products Laboratory, Wood Handbook (2010), chapter 4, equation
    of Table 4-2 (Hailwood and Horrobin); read in public files that quote it.

    Examples
    --------
    >>> round(float(wood_moisture(0.65, 20.0)) * 100, 2)
    12.0
    """
    h = within("Relative humidity", relative_humidity, 0.0, 1.0, "%")
    t = within("Wood temperature", temperature, -10.0, 130.0, "°C")
    w, k, k1, k2 = (a + b * t + c * t * t for a, b, c in (_W, _K, _K1, _K2))
    kh = k * h
    bound = (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2)
    return 18.0 / w * (kh / (1 - kh) + bound)


def humidity_of_wood(moisture, temperature=20.0):
    """Relative humidity of air in balance with wood: the inverse of `wood_moisture`.

    Parameters
    ----------
    moisture : float
        Mass of water per mass of dry wood [-], 0 to 0.25.
    temperature : float, optional
        Of the wood [degC], -10 to 130.

    Returns
    -------
    float
        [-].

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    Above a quarter the wood is near fiber saturation and its moisture says
    little about the humidity.

    Examples
    --------
    >>> round(humidity_of_wood(0.16, 20.0), 4)
    0.7989
    """
    wanted = within("Moisture content of wood", moisture, 0.0, 0.25, "%")
    low, high = 0.0, 1.0
    for _ in range(60):  # halvings; the curve rises all the way
        middle = 0.5 * (low + high)
        if wood_moisture(middle, temperature) < wanted:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def wood_points(density, free_saturation, share=1.0, temperature=20.0):
    """Sorption points of a wood product.

    Parameters
    ----------
    density : float
        Dry [kg/m3], above 0 to 1500.
    free_saturation : float
        Water content with the pores full by capillary action [kg/m3], above
        that at 99 % and at most 1500.
    share : float, optional
        Water held next to solid wood at the same humidity [-], 0.3 to 1.2;
        pressed panels hold less.
    temperature : float, optional
        [degC], -10 to 130.

    Returns
    -------
    ((relative humidity, water content [kg/m3]), ...)

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Notes
    -----
    Below 99 % the curve is bound water; the step from there to the free
    saturation at 100 % is water in the cell hollows.

    Examples
    --------
    >>> round(wood_points(450.0, 600.0)[5][1], 1)
    41.7
    """
    within("Density", density, 0.0, 1500.0, "kg/m³", above=True)
    within("Share of the wood curve", share, 0.3, 1.2)
    held = tuple((rh, round(float(wood_moisture(rh, temperature)) * share * density, 4)) for rh in POINTS)
    within("Free saturation", free_saturation, held[-1][1], 1500.0, "kg/m³", above=True)
    return (*held, (1.0, float(free_saturation)))


#: Humidity up to which a material that does not soak up binds its water [-]: the openings between fibers are wider
#: than a hundredth of a millimeter, and water in those is in balance with 99.99 % and more (Kelvin equation).
NEARLY_FULL = 0.9995


def unsoaked(points):
    """The curve of a material that takes up no liquid, with its last step as late as it is.

    Parameters
    ----------
    points : ((relative humidity [-], water content [kg/m3]), ...)
        At least three, the last one the free saturation at 1.0.

    Returns
    -------
    ((relative humidity, water content [kg/m3]), ...)
        The curve goes on as it was up to `NEARLY_FULL`; from there it rises
        to the free saturation.

    Notes
    -----
    A straight line from the last measured point to the free saturation would
    let vapor fill a fleece that no water runs into.

    Examples
    --------
    >>> unsoaked(((0.95, 7.0), (0.98, 10.0), (1.0, 300.0)))[-2:]
    ((0.9995, 11.95), (1.0, 300.0))
    """
    (before, less), (last, held), full = points[-3:]
    most = min(held + (held - less) / (last - before) * (NEARLY_FULL - last), full[1])
    return (*points[:-1], (NEARLY_FULL, round(most, 4)), full) if held < most < full[1] else points

"""Net free area: the vent arithmetic of the building codes.

A code minimum is not physics: it says nothing of the weather, the leak in
the ceiling or the length of the rafter.
"""

import math
from dataclasses import dataclass

from dryward.building import codes
from dryward.checks import within


@dataclass(frozen=True)
class NetFreeArea:
    """What an area of roof needs: what `net_free_area` gives.

    Attributes
    ----------
    total : float
        Net free area [m2].
    upper, lower : float
        High, near the ridge, and low, at the eave [m2].
    upper_per_length, lower_per_length : float
        The same on each length of ridge and of eave [m2/m]; nan without a length.
    """

    total: float
    upper: float
    lower: float
    upper_per_length: float
    lower_per_length: float


def net_free_area(area, ratio=None, upper_share=0.5, eave_length=None, ridge_length=None):
    """Net free vent area that a ratio asks for, and its split high and low.

    Parameters
    ----------
    area : float
        Vented area [m2], above 0 to 1e6.
    ratio : float, optional
        Area of roof for one of opening [-], 1 to 2000; otherwise that of the
        newest code row where its conditions hold.
    upper_share : float
        Part that stands high [-], 0 to 1; the code rows say how much for the
        smaller openings.
    eave_length, ridge_length : float, optional
        Lengths over which the openings run [m], above 0 to 10 000.

    Returns
    -------
    NetFreeArea

    Raises
    ------
    OutOfRange
        Outside a range.

    References
    ----------
    IRC R806.2, 2012 and later, as quoted in secondary sources; as adopted
    locally.

    Examples
    --------
    >>> need = net_free_area(55.74)  # 600 ft2
    >>> round(need.total / 0.0254**2)
    288
    """
    area = within("Vented area", area, 0.0, 1e6, "m²", above=True)
    ratio = 1.0 / codes.required("vent-area-reduced") if ratio is None else within("Vent ratio", ratio, 1.0, 2000.0)
    share = within("Share of the openings that is high", upper_share, 0.0, 1.0, "%")
    total = area / ratio
    upper, lower = total * share, total * (1.0 - share)
    return NetFreeArea(total, upper, lower, _per(upper, "ridge", ridge_length), _per(lower, "eave", eave_length))


def _per(area, where, length):
    if length is None:
        return math.nan
    return area / within(f"Length of the {where}", length, 0.0, 1e4, "m", above=True)


def ratio_provided(area, upper, lower):
    """The ratio that openings give, and the part of them that stands high.

    Parameters
    ----------
    area : float
        Vented area [m2], above 0 to 1e6.
    upper, lower : float
        Net free area high and low [m2], 0 to 1e4.

    Returns
    -------
    tuple of float
        Area of roof for one of opening [-] (inf without openings), and the
        share of the openings that is high [-] (nan without openings).

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> ratio_provided(60.0, 0.1, 0.1)
    (300.0, 0.5)
    """
    area = within("Vented area", area, 0.0, 1e6, "m²", above=True)
    upper = within("Upper net free area", upper, 0.0, 1e4, "m²")
    lower = within("Lower net free area", lower, 0.0, 1e4, "m²")
    total = upper + lower
    return (area / total, upper / total) if total > 0 else (math.inf, math.nan)


def clear_area(gap, bay_width, spacing):
    """Open area of a gap between rafters on each length of eave.

    Parameters
    ----------
    gap : float
        Height of the gap [m], 0 to 1.
    bay_width : float
        Clear width between rafters [m], 0 to the spacing.
    spacing : float
        Rafters on center [m], above 0 to 5.

    Returns
    -------
    float
        Before screens and louvers [m2/m].

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> round(clear_area(0.0381, 0.3683, 0.4064) * 0.3048 / 0.0254**2, 1)  # in2/ft
    16.3
    """
    gap = within("Height of the gap", gap, 0.0, 1.0, "m")
    spacing = within("Spacing of the rafters", spacing, 0.0, 5.0, "m", above=True)
    return gap * within("Clear width between rafters", bay_width, 0.0, spacing, "m") / spacing

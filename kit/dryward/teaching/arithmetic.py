"""The hand calculation: steps that can be redone with a pocket calculator."""

from dataclasses import dataclass

from dryward import units
from dryward.checks import OutOfRange


@dataclass(frozen=True)
class Step:
    """One line of a hand calculation.

    Attributes
    ----------
    words : str
        What is worked out, in one short sentence.
    formula : str
        The sum with the numbers in it; empty where a table is read.
    result : str
        The number with its unit.

    Examples
    --------
    >>> Step("Half of it.", "40 % / 2", "20 %").line
    'Half of it. 40 % / 2 = 20 %'
    """

    words: str
    formula: str
    result: str

    @property
    def line(self):
        """The step on one line."""
        sum_ = f"{self.formula} = {self.result}" if self.formula else self.result
        return f"{self.words} {sum_}"


def vapor_pressure(name, saturation, share, unit_system="us"):
    """Vapor pressure as a share of the saturation pressure.

    Parameters
    ----------
    name : str
        Of the air, such as "the room".
    saturation : float
        Saturation pressure at its temperature [Pa].
    share : float
        Relative humidity [-].
    unit_system : {"us", "si"}

    Returns
    -------
    Step

    Examples
    --------
    >>> vapor_pressure("the room", 2505.0, 0.4, "si").result
    '1002 Pa'
    """
    full = units.show(saturation, "pressure", unit_system)
    part = units.show(saturation * share, "pressure", unit_system)
    return Step(
        f"Vapor pressure of {name}: its RH times the saturation pressure.", f"{share * 100:.0f} % × {full}", part
    )


def plane_temperature(name, inside, outside, r_inside, r_total, unit_system="us"):
    """Temperature of a plane by its share of R, counted from the room.

    Parameters
    ----------
    name : str
        Of the plane.
    inside, outside : float
        Air temperatures [degC].
    r_inside, r_total : float
        Between room air and the plane, and in all [m2 K/W].
    unit_system : {"us", "si"}

    Returns
    -------
    Step

    Raises
    ------
    OutOfRange
        When there is no R in all.

    Examples
    --------
    >>> plane_temperature("the sheathing", 20.0, 0.0, 3.0, 4.0, "si").result
    '5.0 °C'
    """
    if not r_total > 0:
        raise OutOfRange(f"R in all is {r_total:.6g} m² K/W; it must be above 0 m² K/W.")

    def t(value):
        return units.show(value, "temperature", unit_system)

    before, whole = (units.show(each, "thermal resistance", unit_system) for each in (r_inside, r_total))
    found = inside - (inside - outside) * r_inside / r_total
    return Step(
        f"Temperature of {name}: go down by its share of the R.",
        f"{t(inside)} − ({t(inside)} − {t(outside)}) × {before} / {whole}",
        t(found),
    )


def series(permeances, unit_system="us"):
    """Layers in a row: turn each over, add, turn back.

    Parameters
    ----------
    permeances : sequence of float
        [kg/(s m2 Pa)], above 0.
    unit_system : {"us", "si"}
        The sum is done in perms in both; sd values simply add in SI.

    Returns
    -------
    Step

    Raises
    ------
    OutOfRange
        For an empty row or a layer that lets nothing through.

    Examples
    --------
    >>> from dryward.units import to_si
    >>> series([to_si(1, "perm"), to_si(1, "perm")]).result
    '0.5 perm'
    """
    if not permeances or any(not each > 0 for each in permeances):
        raise OutOfRange("Layers in a row need at least one layer, each with a permeance above 0.")
    total = 1.0 / sum(1.0 / each for each in permeances)
    result = units.show(total, "permeance", unit_system)
    if unit_system == "si":
        sum_ = " + ".join(units.show(each, "permeance", "si") for each in permeances)
        return Step("Layers in a row: their sd values add.", sum_, result)
    parts = " + ".join(f"1/{units.from_si(each, 'perm'):.3g}" for each in permeances)
    return Step("Layers in a row: turn each perm over, add, and turn the sum over.", f"1 / ({parts})", result)


def flow(name, push, permeance, unit_system="us"):
    """Vapor that passes: push times permeance.

    Parameters
    ----------
    name : str
        What is worked out.
    push : float
        Difference of vapor pressure [Pa].
    permeance : float
        [kg/(s m2 Pa)].
    unit_system : {"us", "si"}

    Returns
    -------
    Step

    Examples
    --------
    >>> from dryward.units import to_si
    >>> flow("Vapor through 1 perm", 654.0, to_si(1, "perm")).result
    '4.64 gr/ft² day'
    """
    through = units.show(permeance, "permeance", unit_system)
    day = "24 h" if unit_system == "us" else "86 400 s"
    if unit_system == "si":
        through = f"{units.from_si(permeance, 'ng/(s m2 Pa)'):.3g} ng/(s m² Pa)"
    return Step(
        f"{name}: push times permeance, for one day.",
        f"{units.show(push, 'pressure', unit_system)} × {through} × {day}",
        units.show(push * permeance, "vapor flux", unit_system),
    )

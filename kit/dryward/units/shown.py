"""How numbers are shown to people: the unit of each quantity, and its digits."""

from fractions import Fraction

from dryward.checks import UnknownName
from dryward.units.table import UNITS, WATER_DENSITY, from_si, to_si

#: The unit each quantity is shown in, by unit system.
SHOWN = {
    "us": {
        "temperature": "degF",
        "temperature difference": "degF difference",
        "relative humidity": "%",
        "length": "in",
        "area": "ft2",
        "volume": "ft3",
        "mass": "lb",
        "density": "lb/ft3",
        "area density": "gr/ft2",
        "pressure": "inHg",
        "humidity ratio": "gr/lb",
        "permeance": "perm",
        "permeability": "perm in",
        "thermal resistance": "R",
        "thermal transmittance": "Btu/(h ft2 F)",
        "conductivity": "R per in",
        "specific heat": "Btu/(lb F)",
        "enthalpy": "Btu/lb",
        "specific volume": "ft3/lb",
        "heat flux": "Btu/(h ft2)",
        "vapor flux": "gr/ft2/day",
        "mass flow": "pint/day",
        "air flow": "cfm",
        "speed": "ft/min",
        "air change": "1/h",
        "time": "day",
    },
    "si": {
        "temperature": "degC",
        "temperature difference": "K",
        "relative humidity": "%",
        "length": "mm",
        "area": "m2",
        "volume": "m3",
        "mass": "kg",
        "density": "kg/m3",
        "area density": "g/m2",
        "pressure": "Pa",
        "humidity ratio": "g/kg",
        "permeance": "sd m",
        "permeability": "ng/(s m Pa)",
        "thermal resistance": "m2 K/W",
        "thermal transmittance": "W/(m2 K)",
        "conductivity": "W/(m K)",
        "specific heat": "J/(kg K)",
        "enthalpy": "kJ/kg",
        "specific volume": "m3/kg",
        "heat flux": "W/m2",
        "vapor flux": "g/m2/day",
        "mass flow": "kg/day",
        "air flow": "m3/h",
        "speed": "m/s",
        "air change": "1/h",
        "time": "day",
    },
}


def shown_unit(quantity, system):
    """The unit in which a quantity is shown in a unit system.

    Parameters
    ----------
    quantity : str
        Such as ``"temperature"`` (the keys of `SHOWN`).
    system : {"us", "si"}

    Returns
    -------
    Unit

    Raises
    ------
    UnknownName
        For an unknown system or quantity.

    Examples
    --------
    >>> shown_unit("vapor flux", "us").symbol
    'gr/ft² day'
    """
    if system not in SHOWN:
        raise UnknownName("unit system", system, SHOWN)
    if quantity not in SHOWN[system]:
        raise UnknownName("quantity", quantity, SHOWN[system])
    return UNITS[SHOWN[system][quantity]]


#: Digits behind the point that are worth showing, by unit; others get three
#: significant figures.
_DIGITS = {"degF": 1, "degC": 1, "%": 0, "Pa": 0, "inHg": 3, "in": 1, "mm": 0, "gr/lb": 1, "g/kg": 1, "R": 1}


def show(value, quantity, system, digits=None):
    """A number of SI as it is shown: with its unit, in a unit system.

    Parameters
    ----------
    value : float
        In SI.
    quantity : str
        One of the quantities of `SHOWN`.
    system : {"us", "si"}
    digits : int, optional
        Digits behind the point, where the usual ones do not fit.

    Returns
    -------
    str

    Raises
    ------
    UnknownName
        For an unknown system or quantity.

    Examples
    --------
    >>> show(7.0, "temperature", "us")
    '44.6 °F'
    >>> show(2.0833e-8, "vapor flux", "si")
    '1.8 g/m² day'
    >>> show(7.75, "thermal resistance", "us")
    'R-44.0'
    """
    this = shown_unit(quantity, system)
    number = from_si(value, this.name)
    if digits is None:
        digits = _DIGITS.get(this.name)
    if digits is not None:
        text = f"{number:.{digits}f}"
    elif 1e-9 <= abs(number) < 1e-3:  # written out: nobody on a roof reads a power of ten
        text = f"{float(f'{number:.2g}'):.12f}".rstrip("0")
    elif number == 0 or not 1e-3 <= abs(number) < 1e5:
        text = f"{number:.3g}"
    else:
        # Three figures, but never a tail of zeros that claims more than is known.
        text = f"{number:.{max(0, 2 - int(f'{abs(number):.2e}'.split('e')[1]))}f}"
        text = text.rstrip("0").rstrip(".") if "." in text else text
    if float(text) == 0:
        text = text.lstrip("-")
    if this.name == "R":  # as the trade writes it
        return f"R-{text}"
    return f"{text} {this.symbol}".replace(" %", " %").strip()


#: Said once wherever amounts of water are printed.
GRAIN_OF_WATER = "gr is a grain of water: 7000 gr = 1 lb, 1 gr = 0.065 g."


def liquid(mass, area=None):
    """Water that runs off a roof, as a bucket holds it.

    Parameters
    ----------
    mass : float
        [kg/m2]
    area : float, optional
        Of the roof [m2]; otherwise that of 100 square feet.

    Returns
    -------
    str

    Examples
    --------
    >>> liquid(0.05, 56.0), liquid(0.01)
    ('5.9 pints (2.8 L) from 603 ft² (56 m²)', '3.1 fl oz (0.093 L) from 100 ft² (9.3 m²)')
    """
    area = to_si(100.0, "ft2") if area is None else area
    volume = mass * area / WATER_DENSITY
    pints = from_si(volume, "pint")
    american = f"{_two(pints)} pints" if pints >= 1 else f"{_two(16 * pints)} fl oz"
    liters = f"{_two(volume * 1000)} L"
    return f"{american} ({liters}) from {from_si(area, 'ft2'):.0f} ft² ({_two(area)} m²)"


def opening(per_length, system=None):
    """Free area of vent openings for a length of eave or ridge.

    Parameters
    ----------
    per_length : float
        [m2/m]
    system : {"us", "si"}, optional
        Otherwise in both.

    Returns
    -------
    str

    Examples
    --------
    >>> opening(0.022)
    '10.4 in² per foot (220 cm² per meter)'
    """
    american = f"{_three(from_si(per_length * to_si(1.0, 'ft'), 'in2'))} in² per foot"
    metric = f"{_three(from_si(per_length, 'cm2'))} cm² per meter"
    return {"us": american, "si": metric}.get(system, f"{american} ({metric})")


def _three(number):
    return f"{number:.0f}" if number >= 100 else f"{number:.3g}"


#: How far a thickness may lie from a sixteenth of an inch and still be called one [in].
_NEAR = 0.005


def thickness(length, system):
    """A thickness as a builder says it: inches in sixteenths where they fit.

    Parameters
    ----------
    length : float
        [m]
    system : {"us", "si"}

    Returns
    -------
    str

    Examples
    --------
    >>> thickness(0.0111125, "us"), thickness(0.0381, "us"), thickness(0.3048, "us"), thickness(0.02, "us")
    ('7/16 in.', '1-1/2 in.', '12 in.', '0.79 in.')
    """
    if system != "us":
        return show(length, "length", system, None if length >= 0.001 else 2)
    inches = from_si(length, "in")
    near = Fraction(round(inches * 16), 16)
    if not near or abs(inches - near) > _NEAR:
        return f"{inches:.2f} in." if inches >= 0.1 else f"{inches:.2g} in."
    whole, part = divmod(near, 1)
    return f"{'-'.join(str(each) for each in (whole, part) if each)} in."


def _two(number):
    return f"{float(f'{number:.2g}'):g}"

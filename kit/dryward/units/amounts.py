"""Water as the trade can picture it: fluid ounces a day on a roof, buckets a winter, points of wood, hours of a fan.

What comes in is SI; what goes out is a text in the reader's unit system, of two
significant figures, whose numbers stay on one line with their units (the
blanks there, in the examples too, are no-break spaces).  Which
way the water goes is not told here: a flux counts by its size.
"""

from dryward.language import message
from dryward.units.table import (
    DAY,
    FOOT,
    HOUR,
    WATER_DENSITY,
    from_si,
    kept_together,
    number,
    show_in,
    to_si,
    with_unit,
)
from dryward.units.table import thickness as of_thickness

#: The roof that a flux is told on, by unit system [m2].
ROOF = {"us": 1000 * FOOT**2, "si": 100.0}
#: A bucket, by unit system [m3]: the common pail of each.
BUCKET = {"us": 5 * to_si(1.0, "gallon"), "si": to_si(10.0, "L")}
#: Days of a winter.  The kit's own: about December to April of a cold place; the weather of the flux on all of them.
WINTER = 150
#: What a bath fan carries, by unit system [m3/s]: common practice, no source; the two are within 3 % of each other.
FAN = {"us": to_si(80.0, "cfm"), "si": to_si(140.0, "m3/h")}
#: Less than so much of the smallest unit is told as less than it: nobody can picture it.
_LEAST = 0.1


def water(volume: float, unit_system: str, figures: int = 2) -> str:
    """A volume of water [m3] in the measure that makes a number one can picture.

    With more `figures` where it is divided by another amount on the screen.
    In US units fluid ounces below two pints, then pints, and gallons from one on.

    Examples
    --------
    By hand: 29.6 mL are one fluid ounce, 32 of them two pints, 8 pints a gallon of 3.785 L.

    >>> print(*(water(each * 1e-3, "us") for each in (0.0296, 0.946, 1.42, 37.85)))
    1 fl oz 32 fl oz 3 pints 10 gallons
    >>> water(0.0296e-3, "si"), water(1.42e-3, "si"), water(1.42e-3, "si", 3)
    ('30\\xa0mL', '1.4\\xa0L', '1.42\\xa0L')
    """
    if unit_system == "us":
        ounces = from_si(volume, "fl oz")
        # By what is shown: 32.2 ounces read as 32, 127.8 as a gallon.
        if ounces > 127.5:
            return _counted("gallons", from_si(volume, "gallon"), figures)
        if ounces > 32.5:
            return _counted("pints", from_si(volume, "pint"), figures)
        return _at_least(ounces, "fl oz", figures)
    if volume < 0.995e-3:
        return _at_least(volume * 1e6, "mL", figures)
    return kept_together(with_unit(_rounded(volume * 1000, figures), "L"))


def ounces(volume: float, unit_system: str) -> str:
    """The same always in fluid ounces, or in mL: for amounts that stand side by side.

    Examples
    --------
    By hand: 1.42 L are 48 times 29.6 mL.

    >>> ounces(1.42e-3, "us"), ounces(1.42e-3, "si")
    ('48\xa0fl\xa0oz', '1400\xa0mL')
    """
    return _at_least(from_si(volume, "fl oz"), "fl oz") if unit_system == "us" else _at_least(volume * 1e6, "mL")


def of_a_roof(mass_per_area: float, unit_system: str) -> float:
    """Water on each part of a face [kg/m2] as the volume on the whole roof that fluxes are told on [m3].

    Examples
    --------
    By hand: 1 kg/m2 on 100 m2 are 100 kg, 0.1 m3 of water.

    >>> of_a_roof(1.0, "si")
    0.1
    """
    return mass_per_area * ROOF[unit_system] / WATER_DENSITY


def whole_roof(mass_per_area: float, unit_system: str, figures: int = 2) -> str:
    """The same in words.

    Examples
    --------
    By hand: 20 g/m2 on 92.9 m2 are 1.858 L, and a pint is 0.4732 L.

    >>> whole_roof(0.02, "us"), whole_roof(0.02, "si")
    ('3.9\\xa0pints', '2\\xa0L')
    """
    return water(of_a_roof(mass_per_area, unit_system), unit_system, figures)


def a_day(flux: float, unit_system: str) -> float:
    """A flux of water or vapor [kg/(s m2)] as its volume in a day on that roof [m3], by its size."""
    return of_a_roof(abs(flux) * DAY, unit_system)


def on_a_roof(flux: float, unit_system: str) -> str:
    """A flux of water or vapor [kg/(s m2)] as what it brings in a day on 1000 ft2 of roof, in SI on 100 m2.

    Examples
    --------
    By hand: 20 g/m2 a day on 92.9 m2 are 1.858 L, and a pint is 0.4732 L: 3.9 pints.

    >>> print(on_a_roof(20e-3 / DAY, "us"), on_a_roof(20e-3 / DAY, "si"), sep=", ")
    3.9 pints a day on 1000 ft² of roof, 2 L a day on 100 m² of roof
    """
    return message("units.on-a-roof", water=water(a_day(flux, unit_system), unit_system), area=roof_area(unit_system))


def buckets(flux: float, unit_system: str) -> float:
    """The same flux [kg/(s m2)] as buckets on that roof in a winter [-]."""
    return a_day(flux, unit_system) * WINTER / BUCKET[unit_system]


def a_winter(flux: float, unit_system: str) -> str:
    """A flux [kg/(s m2)] as what it brings on that roof in a winter of 150 such days, in buckets from half of one on.

    Examples
    --------
    By hand: 20 g/m2 a day are 3 kg/m2 in 150 days; on 92.9 m2 278.7 L, and a bucket of 5 gallons holds 18.93 L: 14.7.

    >>> print(a_winter(20e-3 / DAY, "us"))
    15 buckets of 5 gallons on 1000 ft² of roof in a winter of 150 such days
    >>> print(a_winter(0.02e-3 / DAY, "si"))
    300 mL on 100 m² of roof in a winter of 150 such days
    """
    amount = in_buckets(a_day(flux, unit_system) * WINTER, unit_system)
    return message("units.in-a-winter", water=amount, area=roof_area(unit_system), days=WINTER)


def in_buckets(volume: float, unit_system: str) -> str:
    """A volume of water [m3] in buckets, from half of one on.

    >>> print(in_buckets(0.0379, "us"), in_buckets(0.003, "si"), sep=", ")
    2 buckets of 5 gallons, 3 L
    """
    many = volume / BUCKET[unit_system]
    if many < 0.5:
        return water(volume, unit_system)
    text = _two(many)
    return message("units.buckets", number=text, one=text == _two(1.0), size=water(BUCKET[unit_system], unit_system))


def wood_points(mass_per_area: float, thickness: float, density: float) -> float:
    """Water [kg/m2] spread through wood [m, kg/m3 dry] as points of its moisture [mass % of dry wood].

    Examples
    --------
    By hand: 12 mm of 600 kg/m3 are 7.2 kg/m2 of dry wood; 0.36 kg/m2 of water are 5 % of it.

    >>> round(wood_points(0.36, 0.012, 600.0), 6)
    5.0
    """
    return 100.0 * mass_per_area / (thickness * density)


def in_wood(mass_per_area: float, thickness: float, density: float, unit_system: str) -> str:
    """The same as a text that names the thickness.

    Examples
    --------
    By hand: 7/16 in. are 11.11 mm, of 600 kg/m3 6.67 kg/m2; 0.5 kg/m2 of water are 7.5 % of it.

    >>> print(in_wood(0.5, 0.0111125, 600.0, "us"))
    7.5 points of wood moisture in 7/16 in. of wood
    >>> print(in_wood(0.072, 0.012, 600.0, "si"))
    1 point of wood moisture in 12 mm of wood
    """
    text = _two(wood_points(mass_per_area, thickness, density))
    wood = of_thickness(thickness, unit_system)
    return kept_together(message("units.in-wood", number=text, one=text == _two(1.0), wood=wood))


def fan_hours(mass: float, indoor_vapor_density: float, outdoor_vapor_density: float, unit_system: str) -> str:
    """Water [kg] as the time that a bath fan needs to carry it out.

    Each volume of indoor air that leaves takes the difference of the two vapor densities [kg/m3] along.

    Examples
    --------
    By hand: 80 cfm are 135.9 m3 an hour, which take 5 g/m3 each: 0.68 kg; a pint of 0.473 kg needs 0.696 h, 42 minutes.

    >>> print(fan_hours(0.473, 7.4e-3, 2.4e-3, "us"))
    42 minutes of a bath fan at 80 cfm
    >>> print(fan_hours(7.0, 7.4e-3, 2.4e-3, "si"))
    10 hours of a bath fan at 140 m³/h
    >>> print(fan_hours(0.473, 7.4e-3, 9e-3, "us"))
    more than a bath fan at 80 cfm ever carries off, since the air outdoors has as much vapor
    """
    flow, difference = FAN[unit_system], indoor_vapor_density - outdoor_vapor_density
    fan = kept_together(show_in(flow, "cfm" if unit_system == "us" else "m3/h", 0))
    if difference <= 0:
        return message("units.fan-carries-none", fan=fan)
    seconds = mass / (flow * difference)
    unit, length = next(each for each in _TIMES if seconds >= _FROM * each[1] or each == _TIMES[-1])
    text = _two(seconds / length)
    return message(f"units.fan-{unit}", number=text, one=text == _two(1.0), fan=fan)


#: How a time is told, the longest first; each from so many of it on.
_TIMES = (("days", DAY), ("hours", HOUR), ("minutes", 60.0))
_FROM = 1.5


def _counted(what: str, value: float, figures: int) -> str:
    """Pints or gallons: one or many."""
    text = _rounded(value, figures)
    return message(f"units.so-many-{what}", number=text, one=text == _two(1.0))


def _at_least(value: float, unit: str, figures: int = 2) -> str:
    """An amount of the smallest measure, which ends somewhere."""
    if 0 < value < _LEAST:
        return message("units.less-than", amount=kept_together(with_unit(number(_LEAST), unit)))
    return kept_together(with_unit(_rounded(value, figures), unit))


def roof_area(unit_system: str) -> str:
    """How large that roof is, in words.

    >>> roof_area("us"), roof_area("si")
    ('1000\\xa0ft²', '100\\xa0m²')
    """
    area = show_in(ROOF[unit_system], "ft2" if unit_system == "us" else "m2", 0)
    return kept_together(area)


def _two(value: float) -> str:
    return _rounded(value, 2)


def _rounded(value: float, figures: int) -> str:
    return number(value, figures=figures, rounded=True)

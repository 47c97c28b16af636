"""Kinds about air: its dew point, and which way vapor goes."""

from dryward.teaching.questions import roof
from dryward.units import from_si


def dew_point(draw):
    """The dew point of room air."""
    warm = draw.pick(70, range(65, 76))
    rh = draw.pick(40, range(25, 65, 5))
    draw.note(temperature=warm, rh=rh)
    found = from_si(roof.air(warm, rh).dew_point, "degF")
    say = draw.say
    draw.because(
        f"Find the saturation pressure at {say(warm, 'degF')}, take {rh} % of it, and look where that is saturation: "
        f"{say(found, 'degF')}."
    )
    return draw.number(
        f"What is the dew point of air at {say(warm, 'degF')} and {rh} %?",
        found,
        "degF",
        1.0,
        (warm * rh / 100, "temperature-times-rh"),
        (warm - (100 - rh) / 5, "rule-of-fifths"),
        (warm, "dew-point-is-air-temperature"),
    )


#: Least difference of vapor pressure that is worth a question [Pa].
LEAST_PUSH = 60


def direction(draw):
    """Which way vapor pushes, where RH or temperature points the other way."""
    trap = draw.pick("rh", ("rh", "rh", "temperature"))
    inside, outside = draw.pick((70, 20), (None,)) or (
        draw.random.randrange(64, 80, 2),
        draw.random.randrange(-10, 98, 4),
    )
    rh_in, rh_out = draw.pick((35, 90), (None,)) or (
        draw.random.randrange(20, 70, 5),
        draw.random.randrange(30, 100, 5),
    )
    first, second = roof.air(inside, rh_in).vapor_pressure, roof.air(outside, rh_out).vapor_pressure
    out = first > second
    if draw.seed is not None and out != draw.coin:
        return None
    by_rh, by_temperature = rh_in > rh_out, inside > outside
    if abs(first - second) < LEAST_PUSH or abs(rh_in - rh_out) < 5 or abs(inside - outside) < 4:
        return None
    if (by_rh if trap == "rh" else by_temperature) == out:
        return None
    draw.note(inside=inside, rh_in=rh_in, outside=outside, rh_out=rh_out)
    say = draw.say
    words = {True: "Out", False: "In"}
    belief, rule = {
        "rh": ("rh-drives-vapor", "from high RH to low"),
        "temperature": ("warm-to-cold", "from warm to cold"),
    }[trap]
    draw.because(f"Vapor pressure is {say(first, 'Pa')} inside and {say(second, 'Pa')} outside.")
    return draw.words(
        f"Inside it is {say(inside, 'degF')} and {rh_in} %. Outside it is {say(outside, 'degF')} and {rh_out} %. "
        "Which way does vapor push?",
        f"{words[out]}, from high vapor pressure to low.",
        (f"{words[not out]}, {rule}.", belief),
        ("Neither way. RH and temperature cancel out.", "rh-alone"),
        must=True,
    )

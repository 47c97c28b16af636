"""A forever-January, a forever-July, and which way a wet start dries."""

from dryward import verdict
from dryward.building import Material
from dryward.physics import drying, steady
from dryward.report.check import CAN, Check, Number
from dryward.verdict import DRY, NEVER, words

_LIMITS = "A month that never ends: no storage, no air leak, no sun, no rain. What is dry here still needs air sealing."
_METHOD = "ISO 13788:2012 steady diffusion (read in secondary sources)"


def winter(setting):
    """How wet would it get if the coldest month never ended?"""
    return _season(setting, "winter", "the coldest month", setting.winter_room, setting.winter)


def summer(setting):
    """How wet would it get if the warmest month never ended?"""
    return _season(setting, "summer", "the warmest month", setting.summer_room, setting.summer)


def _season(setting, id, month, room, outdoor):
    state = steady.profile(setting.job.assembly, room, outdoor)
    judged = verdict.of_steady(state)
    node = state.wettest
    numbers = (
        Number("Outdoor air", outdoor.temperature, "temperature"),
        Number("Outdoor humidity", outdoor.relative_humidity, "relative humidity"),
        Number("Room air", room.temperature, "temperature"),
        Number("Room humidity", room.relative_humidity, "relative humidity"),
        Number("Highest humidity", float(state.relative_humidity[node]), "relative humidity"),
        Number("Water gained", state.gain, "vapor flux"),
    )
    why = change = ""
    if judged.state != DRY:
        outward = room.vapor_pressure > outdoor.vapor_pressure
        why = (
            "More vapor arrives at that cold face than its outer side lets through."
            if state.wet_planes
            else "It is cold there for the vapor that comes: near a limit, with no water yet."
        )
        change = (
            "Make the room side tighter to vapor, hold the room drier, or open the layers outside that face."
            if outward
            else "Make the outer side tighter to vapor, or open the layers on the room side of that face."
        )
    return Check(
        id,
        f"How wet would it get if {month} never ended?",
        judged.state,
        f"{words.capital(words.account(judged))}.",
        why,
        change,
        limits=_LIMITS,
        numbers=numbers,
        source=_METHOD,
        verdict=judged,
        data=state,
    )


def wet_layer(assembly, state):
    """The layer whose wet start is asked for: the outermost wood inside any vent space, else what is wettest.

    Parameters
    ----------
    assembly : Assembly
    state : Profile
        Of the coldest month.

    Returns
    -------
    str
        Name of the layer; empty where there is no solid one.
    """
    solid = [layer for layer in assembly.inner_layers if isinstance(layer.substance, Material)]
    wood = [layer.name for layer in solid if layer.substance.wood]
    if wood:
        return wood[-1]
    names = [layer.name for layer in solid]
    found = [name for name in reversed(state.between(state.wettest)) if name in names]
    return (found or names[-1:] or [""])[0]


def wet_start(setting, layer):
    """Which way does a wet layer dry in winter, and in summer?"""
    assembly = setting.job.assembly
    cold = drying.rates(assembly, layer, setting.winter_room, setting.winter)
    warm = drying.rates(assembly, layer, setting.summer_room, setting.summer)
    numbers = (
        Number("Winter, inward", cold.inward, "vapor flux"),
        Number("Winter, outward", cold.outward, "vapor flux"),
        Number("Summer, inward", warm.inward, "vapor flux"),
        Number("Summer, outward", warm.outward, "vapor flux"),
    )
    best = max(cold.total, warm.total)
    can = best > 0
    ways = _way(cold), _way(warm)
    seasons = f"{ways[0]} in winter and {ways[1]} in summer" if ways[0] != ways[1] else f"{ways[0]}, winter and summer"
    what = f"When the {layer} is wet it {seasons}."
    change = "" if can else "Open one side to vapor: the room side, or the outer side."
    return Check(
        "wet-start",
        f"When the {layer} is wet, does it dry?",
        CAN if can else NEVER,
        what,
        "Water leaves toward the side with the lower vapor pressure and the more open layers.",
        change,
        limits="Rates of a wet layer at steady temperatures; they fall as it dries.",
        numbers=numbers,
        source="Diffusion through the layers on each side",
        data=(cold, warm),
    )


def _way(rates):
    """What a wet layer does in a season, in words."""
    if not rates.total > 0:
        return "takes in more than it gives off" if rates.total < 0 else "dries neither way"
    into, out = max(rates.inward, 0.0), max(rates.outward, 0.0)
    if out > 4 * into:
        return "dries mostly outward"
    return "dries mostly inward" if into > 4 * out else "dries both ways"

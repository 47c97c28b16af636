"""A forever-January, a forever-July, and which way a wet start dries."""

from dryward.building import Material
from dryward.physics import drying, steady
from dryward.report.findings import NO, YES, Finding, Number

_LIMITS = (
    "A forever-month: no storage, no air leak, no sun, no rain. "
    "A fail means look closer; a pass still needs air sealing."
)
_METHOD = "ISO 13788:2012 steady diffusion (read in secondary sources)"


def winter(setting):
    """Does anything get wet if the coldest month never ends?"""
    return _season(setting, "winter", "the coldest month", setting.winter_room, setting.winter)


def summer(setting):
    """Does anything get wet if the warmest month never ends?"""
    return _season(setting, "summer", "the warmest month", setting.summer_room, setting.summer)


def _season(setting, id, words, room, outdoor):
    state = steady.profile(setting.job.assembly, room, outdoor)
    question = f"Does anything get wet if {words} never ends?"
    rung = state.wettest
    numbers = [
        Number("Outdoor air", outdoor.temperature, "temperature"),
        Number("Outdoor humidity", outdoor.relative_humidity, "relative humidity"),
        Number("Room air", room.temperature, "temperature"),
        Number("Room humidity", room.relative_humidity, "relative humidity"),
        Number("Highest humidity", float(state.relative_humidity[rung]), "relative humidity"),
        Number("Water gained", state.gain, "vapor flux"),
    ]
    where = _between(*state.between(rung))
    if not state.wet_planes:
        share = state.relative_humidity[rung] * 100
        what = f"Nothing gets wet in {words}; the highest humidity is {share:.0f} %, {where}."
        return Finding(id, question, NO, True, what, limits=_LIMITS, numbers=tuple(numbers), source=_METHOD, data=state)
    plane = state.wet_planes[0]
    what = f"Vapor turns to water {_between(plane.inner_layer, plane.outer_layer)} in {words}."
    why = "More vapor arrives at that cold face than its outer side lets through."
    outward = room.vapor_pressure > outdoor.vapor_pressure
    change = (
        "Make the room side tighter to vapor, hold the room drier, or open the layers outside that face."
        if outward
        else "Make the outer side tighter to vapor, or open the layers on the room side of that face."
    )
    return Finding(id, question, YES, False, what, why, change, _LIMITS, tuple(numbers), _METHOD, state)


def _between(inner, outer):
    return f"inside the {inner}" if inner == outer else f"between the {inner} and the {outer}"


def watched(assembly, state):
    """The faces whose wetting matters: all wood, or else the wettest cold face.

    Parameters
    ----------
    assembly : Assembly
    state : Profile
        Of the coldest month.

    Returns
    -------
    tuple of (str, str)
        Layer and the side of it ("inner" or "outer").
    """
    solid = [layer for layer in assembly.inner_layers if isinstance(layer.substance, Material)]
    wood = [(layer.name, "inner") for layer in solid if layer.substance.wood]
    if wood:
        return tuple(wood)
    inner, outer = state.between(state.wettest)
    for name, side in ((outer, "inner"), (inner, "outer")):
        if any(layer.name == name for layer in solid):
            return ((name, side),)
    return ((solid[-1].name, "outer"),) if solid else ()


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
    good = best > 0
    ways = _way(cold), _way(warm)
    seasons = f"{ways[0]} in winter and {ways[1]} in summer" if ways[0] != ways[1] else f"{ways[0]}, winter and summer"
    what = f"When the {layer} is wet it {seasons}."
    change = "" if good else "Open one side to vapor: the room side, or the outer side."
    return Finding(
        "wet-start",
        f"Can the {layer} dry once it is wet?",
        YES if good else NO,
        good,
        what,
        "Water leaves toward the side with the lower vapor pressure and the more open layers.",
        change,
        "Rates of a wet layer at steady temperatures; they fall as it dries.",
        numbers,
        "Diffusion through the layers on each side",
        (cold, warm),
    )


def _way(rates):
    """What a wet layer does in a season, in words."""
    if not rates.total > 0:
        return "takes in more than it gives off" if rates.total < 0 else "dries neither way"
    into, out = max(rates.inward, 0.0), max(rates.outward, 0.0)
    if out > 4 * into:
        return "dries mostly outward"
    return "dries mostly inward" if into > 4 * out else "dries both ways"

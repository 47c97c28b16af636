"""Where water gathers, in the words that several lessons share."""

from dryward.verdict import DRY
from dryward.verdict.words import how_wet


def worst(profile):
    """The wet plane that gains most, or None where no water gathers."""
    return max(profile.wet_planes, key=lambda plane: plane.rate, default=None)


def between(inner, outer):
    """The place of a plane by the layers on both sides of it."""
    return f"inside the {inner}" if inner == outer else f"between {inner} and {outer}"


def where(profile):
    """The place of the worst wet plane."""
    wet = worst(profile)
    return between(wet.inner_layer, wet.outer_layer) if wet else "no water gathers"


def gathers(page, profile):
    """What gathers at the worst plane, with its own rate, and what gathers elsewhere; for a profile that gains."""
    wet = worst(profile)
    said = f"{page.show(wet.rate, 'vapor flux')} gather {where(profile)}"
    rest = profile.gain - wet.rate
    return f"{said}, and {page.show(rest, 'vapor flux')} elsewhere" if rest > 0.01 * wet.rate else said


def settles(page, verdict):
    """Where a roof in which no water gathers would settle, and what that means."""
    tail = "" if verdict.state == DRY else ", and mold can grow" if verdict.worst.what == "face-humidity" else ""
    return f"{how_wet(verdict, page.unit_system)}{tail}"

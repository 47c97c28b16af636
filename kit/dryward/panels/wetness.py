"""Where water gathers, or how damp it is where none does, in the words that several lessons share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dryward.verdict import DAMP
from dryward.verdict.words import amount, dampest, how_wet

if TYPE_CHECKING:
    from dryward.panels.page import Page
    from dryward.physics.steady import Profile, WetPlane
    from dryward.verdict import Verdict


def worst(profile: Profile) -> WetPlane | None:
    """The wet plane that gains most, or None where no water gathers."""
    return max(profile.wet_planes, key=lambda plane: plane.rate, default=None)


def between(inner: str, outer: str) -> str:
    """The place of a plane by the layers on both sides of it."""
    return f"inside the {inner}" if inner == outer else f"between {inner} and {outer}"


def where(profile: Profile) -> str:
    """The place of the worst wet plane."""
    wet = worst(profile)
    return between(wet.inner_layer, wet.outer_layer) if wet else "no water gathers"


def _most(profile: Profile) -> float:
    """What gathers at the worst plane [kg/(s m2)]; nothing where there is none."""
    wet = worst(profile)
    return wet.rate if wet else 0.0


def elsewhere(profile: Profile) -> float:
    """What gathers at other planes than the worst [kg/(s m2)]; nothing where it is a hundredth of it or less."""
    most = _most(profile)
    rest = profile.gain - most
    return rest if most > 0.0 and rest > 0.01 * most else 0.0


def gathers(page: Page, profile: Profile, verdict: Verdict) -> str:
    """What gathers at the worst plane, with its own rate, and what gathers elsewhere; for a profile that gains."""
    said = f"{page.show(_most(profile), 'vapor flux')} gather {where(profile)}"
    rest = elsewhere(profile)
    said = f"{said}, and {page.show(rest, 'vapor flux')} elsewhere" if rest else said
    if verdict.state != DAMP:
        return said
    found = verdict.worst
    more = "" if found is None or found.what == "steady-gain" else f", but {how_wet(verdict, page.unit_system)}"
    return f"{said}, too little to count{more}"


def settles(page: Page, verdict: Verdict) -> str:
    """Where a roof in which no water gathers would settle, and why that counts or does not."""
    found = verdict.worst
    if found is None or found.what != "face-humidity":
        return how_wet(verdict, page.unit_system)
    return dampest(found, _humid(found.value))


def _humid(value: float) -> str:
    """A relative humidity in words; what is not full is not said to be."""
    return "just under 100 %" if 0.995 <= value < 1.0 else f"{value * 100:.0f} %"


def note(page: Page, profile: Profile, verdict: Verdict) -> str:
    """The line under the water gained: where it gathers, and how much of it there; otherwise how damp it is."""
    if elsewhere(profile):
        return f"{page.show(_most(profile), 'vapor flux')} of it {where(profile)}"
    return where(profile) if profile.wet_planes else none(page, verdict)


def none(page: Page, verdict: Verdict) -> str:
    """That no water gathers, and how damp it is all the same: the wood, or else the dampest face."""
    found = verdict.finding("wood-moisture") or verdict.finding("face-humidity")
    if found is None:
        return "no water gathers"
    if found.what == "face-humidity":
        return f"no water gathers; dampest face {_humid(found.value)}"
    shown = amount(found.value, found.criterion.unit, page.unit_system, named=False)
    return f"no water gathers; wood would settle at {shown} moisture"

"""Where water gathers, or how damp it is where none does, in the words that several lessons share."""

from __future__ import annotations

from typing import TYPE_CHECKING

from dryward import units
from dryward.language import called, message
from dryward.panels.readouts import Readout
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
    if inner == outer:
        return message("panels.inside-layer", layer=called(inner))
    return message("panels.between-layers", inner=called(inner), outer=called(outer))


def where(profile: Profile) -> str:
    """The place of the worst wet plane."""
    wet = worst(profile)
    return between(wet.inner_layer, wet.outer_layer) if wet else message("panels.no-water-gathers")


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
    rest, facts = elsewhere(profile), {"amount": page.show(_most(profile), "vapor flux"), "place": where(profile)}
    if rest:
        said = message("panels.gather-elsewhere-too", rest=page.show(rest, "vapor flux"), **facts)
    else:
        said = message("panels.gather", **facts)
    if verdict.state != DAMP:
        return said
    found = verdict.worst
    if found is None or found.what == "steady-gain":
        return message("panels.too-little", gathers=said)
    return message("panels.too-little-but", gathers=said, found=how_wet(verdict, page.unit_system))


def settles(page: Page, verdict: Verdict) -> str:
    """Where a roof in which no water gathers would settle, and why that counts or does not."""
    found = verdict.worst
    if found is None or found.what != "face-humidity":
        return how_wet(verdict, page.unit_system)
    return dampest(found, _humid(found.value))


def _humid(value: float) -> str:
    """A relative humidity in words; what is not full is not said to be."""
    shown = units.show(value, "relative humidity", "si")
    return message("panels.just-under", amount=shown) if 0.995 <= value < 1.0 else shown


def gained(page: Page, label: str, profile: Profile, verdict: Verdict) -> Readout:
    """The water gained, and under it where that gathers or how damp it is."""
    return Readout("gain", label, profile.gain, "vapor flux", note=_note(page, profile, verdict))


def _note(page: Page, profile: Profile, verdict: Verdict) -> str:
    """Where water gathers, and how much of it there; otherwise how damp it is."""
    if elsewhere(profile):
        return message("panels.of-it", amount=page.show(_most(profile), "vapor flux"), place=where(profile))
    return where(profile) if profile.wet_planes else none(page, verdict)


def none(page: Page, verdict: Verdict) -> str:
    """That no water gathers, and how damp it is all the same: the wood, or else the dampest face."""
    found = verdict.finding("wood-moisture") or verdict.finding("face-humidity")
    if found is None:
        return message("panels.no-water-gathers")
    if found.what == "face-humidity":
        return message("panels.no-water-dampest-face", humidity=_humid(found.value))
    shown = amount(found.value, found.criterion.unit, page.unit_system, named=False)
    return message("panels.no-water-wood", amount=shown)

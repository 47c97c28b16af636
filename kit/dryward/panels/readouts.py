"""What a lesson gives back to its page: numbers, strips under the controls, and where water gathers."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING, Any

from dryward import units
from dryward.checks import begun
from dryward.language import called, joined, message
from dryward.panels.controls import ChoiceControl, Control, SliderControl
from dryward.verdict import DAMP, DRY, STATES, UNKNOWN
from dryward.verdict.words import amount, dampest, how_wet

if TYPE_CHECKING:
    from dryward.physics.steady import Profile, WetPlane
    from dryward.verdict import Verdict


@dataclass(frozen=True)
class Readout:
    """One number under the picture, at most five a page.

    `words` stand over it, the same for every state; `value` is in SI, None
    where there is none; `quantity` is one of `units`, empty for a bare number.
    `text` is shown instead of the number, `note` in a second line, where with
    `both` the other unit system stands.  A hidden one is in ``page.readouts``
    but not on the page.
    """

    name: str
    words: str
    value: float | None
    quantity: str = ""
    text: str = ""
    note: str = ""
    both: bool = False
    digits: int | None = None
    hidden: bool = False

    def shown(self, system: str) -> dict[str, str]:
        """The two lines of it, in a unit system."""
        return {"name": self.name, "value": self._value(system), "also": self._also(system)}

    def _value(self, system: str) -> str:
        if self.text:
            return self.text
        if self.value is None:
            return message("panels.no-number")
        if not self.quantity:
            return units.number(self.value, self.digits, rounded=True)
        return units.show(self.value, self.quantity, system, self.digits)

    def _also(self, system: str) -> str:
        if self.note or not self.both or self.value is None:
            return self.note
        return units.show(self.value, self.quantity, "si" if system == "us" else "us")


@dataclass(frozen=True)
class Strip:
    """The state along a control, all else as it is now.

    `states` are of `verdict.STATES`, or "not known yet": at the places of a
    slider from left to right, or for each option of a choice.  `places` say
    where along the slider [-], rising from 0 to 1; otherwise they are even.
    """

    states: tuple[str, ...]
    places: tuple[float, ...] = ()

    @property
    def holds(self) -> tuple[bool, ...]:
        """Where it is dry."""
        return tuple(each == DRY for each in self.states)

    @property
    def even(self) -> tuple[float, ...]:
        """The places, given or even."""
        return self.places or _even(len(self.states))

    def with_handle(self, control: Control, state: str) -> Strip:
        """The same strip with the page's own state under the handle."""
        if isinstance(control, SliderControl):
            here = min(max(control.fraction(control.value), 0.0), 1.0)
            places, states = self.even, self.states
            before, behind = bisect_left(places, here - 1e-6), bisect_right(places, here + 1e-6)
            return Strip((*states[:before], state, *states[behind:]), (*places[:before], here, *places[behind:]))
        place = control.options.index(control.value)
        return Strip((*self.states[:place], state, *self.states[place + 1 :]))

    def shown(self, control: Control) -> dict[str, Any]:
        """Stretches ``[from, to, state]`` along a slider, and words, for the browser."""
        if isinstance(control, ChoiceControl):
            return {"spans": [], "words": _of_options(control, self.states)}
        assert isinstance(control, SliderControl)  # there is no third kind
        places, runs = self.even, _runs(self.states)
        edges = [0.0, *(0.5 * (places[first - 1] + places[first]) for _, first, _ in runs[1:]), 1.0]
        spans = [[a, b, state] for (state, *_), a, b in zip(runs, edges, edges[1:], strict=False)]
        return {"spans": spans, "words": _of_slider(control, self.states, places, runs)}


@cache
def _even(count: int) -> tuple[float, ...]:
    """Even places from 0 to 1."""
    return tuple(k / (count - 1) for k in range(count))


def _of_options(control: ChoiceControl, states: Sequence[str]) -> str:
    """Each state that occurs, with the options that have it."""
    said = []
    for state in (*STATES, UNKNOWN):
        names = [control.label(id) for id, each in zip(control.options, states, strict=True) if each == state]
        if names:
            if len(names) == len(states):
                return message("panels.every-option", state=message("verdict.head", state=state))
            options = joined(
                "panels.option-after-option", [message("panels.option-with-state", option=each) for each in names]
            )
            said.append(message("panels.some-options", state=message("verdict.head", state=state), options=options))
    return joined("panels.state-after-state", said)


def _of_slider(
    control: SliderControl, states: Sequence[str], places: Sequence[float], runs: list[tuple[str, int, int]]
) -> str:
    """Where each stretch lies, in the numbers of the slider."""
    done = len(states) - states.count(UNKNOWN)
    if done < len(states):
        return message("panels.not-known-yet", done=done, count=len(states))
    if len(runs) == 1:
        return message("panels.every-setting", state=message("verdict.head", state=runs[0][0]))
    rising, said = control.scale.left < control.scale.right, []
    ends = [(control.at(places[first]), control.at(places[last])) for _, first, last in runs]
    printed = [(control.say(low), control.say(high)) for low, high in ends]
    # Where two neighbors print the same number, it is told of the one that has it: True, and the other lies beyond.
    later = [
        here[0] == last[1] and (control.rounded(first) - first) * (1 if rising else -1) >= -1e-9
        for last, here, (first, _) in zip(printed, printed[1:], ends[1:], strict=False)
    ]
    for k, ((state, *_), (low, high)) in enumerate(zip(runs, printed, strict=True)):
        after_low = k > 0 and low == printed[k - 1][1] and not later[k - 1]
        before_high = k + 1 < len(runs) and later[k]
        last = k + 1 == len(runs)
        how = _stretch(k == 0, last, after_low, before_high, low == high, rising)
        if last and control.unit:
            low = message("panels.js-amount", number=low, unit=control.unit)
        said.append(message("panels.stretch", how=how, state=message("verdict.state", state=state), low=low, high=high))
    return begun(joined("panels.stretch-after-stretch", said))


def _stretch(first: bool, last: bool, after_low: bool, before_high: bool, same: bool, rising: bool) -> str:
    """How a stretch is told: it may begin just after its low number, end just before its high one, or be one number."""
    before, behind = ("below", "above") if rising else ("above", "below")
    if first:
        return before if before_high else "up-to" if rising else "at-least"
    if last:
        return f"behind-{behind}" if after_low else "from-on" if rising else "on-to"
    if same:
        return f"just-{behind}" if after_low else f"just-{before}" if before_high else "at"
    if after_low:
        return "between" if before_high else f"{behind}-to"
    return f"to-just-{before}" if before_high else "from-to"


def _runs(states: Sequence[str]) -> list[tuple[str, int, int]]:
    """(state, first place, last place) of each stretch of one state."""
    runs, first = [], 0
    for place in range(1, len(states) + 1):
        if place == len(states) or states[place] != states[first]:
            runs.append((states[first], first, place - 1))
            first = place
    return runs


def worst_plane(profile: Profile) -> WetPlane | None:
    """The wet plane that gains most, or None where no water gathers."""
    return max(profile.wet_planes, key=lambda plane: plane.rate, default=None)


def between_layers(inner: str, outer: str) -> str:
    """The place of a plane by the layers on both sides of it."""
    if inner == outer:
        return message("panels.inside-layer", layer=called(inner))
    return message("panels.between-layers", inner=called(inner), outer=called(outer))


def worst_place(profile: Profile) -> str:
    """The place of the worst wet plane."""
    wet = worst_plane(profile)
    return between_layers(wet.inner_layer, wet.outer_layer) if wet else message("panels.no-water-gathers")


def _most(profile: Profile) -> float:
    """What gathers at the worst plane [kg/(s m2)]; nothing where there is none."""
    wet = worst_plane(profile)
    return wet.rate if wet else 0.0


def gathered_elsewhere(profile: Profile) -> float:
    """What gathers at other planes than the worst [kg/(s m2)]; nothing where it is a hundredth of it or less."""
    most = _most(profile)
    rest = profile.gain - most
    return rest if most > 0.0 and rest > 0.01 * most else 0.0


def gathers(profile: Profile, verdict: Verdict, unit_system: str) -> str:
    """What gathers at the worst plane, with its own rate, and what gathers elsewhere; for a profile that gains."""
    rest, most = gathered_elsewhere(profile), units.show(_most(profile), "vapor flux", unit_system)
    facts = {"amount": most, "place": worst_place(profile)}
    if rest:
        said = message("panels.gather-elsewhere-too", rest=units.show(rest, "vapor flux", unit_system), **facts)
    else:
        said = message("panels.gather", **facts)
    if verdict.state != DAMP:
        return said
    found = verdict.worst
    if found is None or found.what == "steady-gain":
        return message("panels.too-little", gathers=said)
    return message("panels.too-little-but", gathers=said, found=how_wet(verdict, unit_system))


def settles(verdict: Verdict, unit_system: str) -> str:
    """Where a roof in which no water gathers would settle, and why that counts or does not."""
    found = verdict.worst
    if found is None or found.what != "face-humidity":
        return how_wet(verdict, unit_system)
    return dampest(found, _humid(found.value))


def water(profile: Profile, verdict: Verdict, unit_system: str) -> str:
    """What gathers, or where the roof would settle when nothing does."""
    if profile.wet_planes:
        return gathers(profile, verdict, unit_system)
    return settles(verdict, unit_system)


def _humid(value: float) -> str:
    """A relative humidity in words; what is not full is not said to be."""
    shown = units.show(value, "relative humidity", "si")
    return message("panels.just-under", amount=shown) if 0.995 <= value < 1.0 else shown


def gained(label: str, profile: Profile, verdict: Verdict, unit_system: str) -> Readout:
    """The water gained, and under it where that gathers or how damp it is."""
    note = _gain_note(profile, verdict, unit_system)
    return Readout("gain", label, profile.gain, "vapor flux", note=note)


def _gain_note(profile: Profile, verdict: Verdict, unit_system: str) -> str:
    """Where water gathers, and how much of it there; otherwise how damp it is."""
    if gathered_elsewhere(profile):
        most = units.show(_most(profile), "vapor flux", unit_system)
        return message("panels.of-it", amount=most, place=worst_place(profile))
    return worst_place(profile) if profile.wet_planes else no_water(verdict, unit_system)


def no_water(verdict: Verdict, unit_system: str) -> str:
    """That no water gathers, and how damp it is all the same: the wood, or else the dampest face."""
    found = verdict.finding("wood-moisture") or verdict.finding("face-humidity")
    if found is None:
        return message("panels.no-water-gathers")
    if found.what == "face-humidity":
        return message("panels.no-water-dampest-face", humidity=_humid(found.value))
    shown = amount(found.value, found.criterion.unit, unit_system, named=False)
    return message("panels.no-water-wood", amount=shown)

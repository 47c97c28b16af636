"""Controls: a slider with a typed number and a unit, or a choice; and those that all lessons share.

A `Slider` or a `Choice` says what a control is; a lesson declares them, or
takes one of `STANDARD` by its name and may give it another start:
``standard("M_in").starting(3.0)``.  The page makes a `SliderControl` or a
`ChoiceControl` of each, which holds the value: in SI inside, in the shown unit
at the edge.  Both unit systems of a slider have their own round ends, start
and step.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from dryward import language, units
from dryward.checks import NotUnderstood, OutOfRange, UnknownName, within
from dryward.language import message

#: Places along a slider at which a strip is judged.
PLACES = 41


@dataclass(frozen=True)
class Scale:
    """The ends, start and step of a slider in one unit system.

    `left` and `right` are the values at the two ends, `start` where the slider
    stands when the lesson opens, all in `unit`; `right` may be the smaller one.
    `step` is what one arrow key moves, in `unit`; on a log slider, notches a
    decade.  `unit` is a key of `units.UNITS`; otherwise the usual one of the
    quantity.
    """

    left: float
    right: float
    start: float
    step: float
    unit: str = ""


@dataclass(frozen=True)
class Slider:
    """What a slider is: its quantity (``"number"`` for a bare one), and its scale in both unit systems.

    `name` is the same in all lessons, such as ``"T_out"``; `words`, a text or the
    id of a message, stand beside it, and `said` is what a sentence about its number calls it where they do
    not fit.  With `log` equal moves are equal factors.  `play` adds a play
    button, that many milliseconds a notch.
    """

    name: str
    words: str
    quantity: str
    us: Scale
    si: Scale
    log: bool = False
    play: int = 0
    said: str = ""

    def starting(self, us: float, si: float | None = None) -> Slider:
        """The same slider with another start, in the shown units; without one in SI units the US one is converted."""
        if si is None:
            si = self._converted(us)
        return replace(self, us=replace(self.us, start=us), si=replace(self.si, start=si))

    def _converted(self, value: float) -> float:
        if self.quantity == "number":
            return value
        there = units.from_si(units.to_si(value, self.unit("us").name), self.unit("si").name)
        return float(f"{there:.3g}")

    def scale(self, system: str) -> Scale:
        """The scale it is shown with."""
        return self.us if system == "us" else self.si

    def unit(self, system: str) -> units.Unit:
        """The unit it is shown in."""
        scale = self.scale(system)
        return units.unit(scale.unit) if scale.unit else units.shown_unit(self.quantity, system)

    def control(self, system: str, si: float | None = None) -> SliderControl:
        """The control of it, at its start or at a value of SI."""
        return SliderControl(self, system, si)


@dataclass(frozen=True)
class Choice:
    """What a choice is.

    `options` are ``(id, words)``, or ``(id, words, words in SI units)``, words
    being texts or ids of messages; `start` is the id it opens with, otherwise the first.
    """

    name: str
    words: str
    options: tuple[tuple[str, ...], ...]
    start: str = ""

    def starting(self, id: str) -> Choice:
        """The same choice that opens with another option."""
        return replace(self, start=id)

    def control(self, system: str, si: str | None = None) -> ChoiceControl:
        """The control of it, at its start or at an option."""
        return ChoiceControl(self, system, si)


class Control:
    """What every control of a page has: a value that may be set by hand.

    `options` are the ids of a choice, and empty for a slider; `start` is where
    it opens, in the shown unit.
    """

    name: str
    system: str
    options: tuple[str, ...] = ()
    start: Any
    #: Both ends, in the shown unit; the first and the last option of a choice.
    min: Any
    max: Any
    #: Called after the value was set by hand.
    moved: Callable[[], object] | None = None
    _value: Any = None

    @property
    def words(self) -> str:
        """What stands beside it."""
        raise NotImplementedError

    @property
    def value(self) -> Any:
        """A number in the shown unit, or the id of an option; setting it checks it and moves the page."""
        return self._value

    @value.setter
    def value(self, value: float | str) -> None:
        self.put(value)
        if self.moved:
            self.moved()

    @property
    def si(self) -> Any:
        """The value in SI; a choice gives the id of its option."""
        raise NotImplementedError

    def put(self, value: Any) -> None:
        """Set the value and tell nobody; OutOfRange or UnknownName for what it cannot have."""
        raise NotImplementedError

    def put_si(self, value: Any) -> None:
        """Set a value of SI and tell nobody."""
        raise NotImplementedError

    def along(self, count: int = PLACES) -> list[Any]:
        """Values in SI at even places along a slider, left to right; or all options."""
        raise NotImplementedError

    def frame(self) -> dict[str, Any]:
        """What the browser needs to build it."""
        raise NotImplementedError


class SliderControl(Control):
    """A slider in one unit system, with its value.

    `min` and `max` are the ends in the shown unit, the smaller one first;
    `unit` is how the unit is written.
    """

    def __init__(self, slider: Slider, system: str, si: float | None = None) -> None:
        self.slider, self.system = slider, system
        self.name = slider.name
        self.scale = slider.scale(system)
        bare = slider.quantity == "number"
        self._unit = None if bare and not self.scale.unit else slider.unit(system)
        self.unit = self._unit.symbol if self._unit else ""
        self.min, self.max = sorted((float(self.scale.left), float(self.scale.right)))
        step = self.scale.step
        #: Digits behind the point that a step moves.
        self.digits = 0 if slider.log else next(d for d in range(7) if abs(step * 10**d - round(step * 10**d)) < 1e-6)
        self._along: dict[int, list[float]] = {}
        self.start = self._value = float(self.scale.start)
        if si is not None:
            # Round ends of the two systems differ a little: stay on the slider.
            self._value = min(self.max, max(self.min, self.shown(si)))

    @property
    def words(self) -> str:
        """What stands beside it."""
        return language.told(self.slider.words, system=self.system)

    @property
    def _said(self) -> str:
        return language.told(self.slider.said or self.slider.words)

    def shown(self, si: float) -> float:
        """A value of SI in the shown unit."""
        return units.from_si(si, self._unit.name) if self._unit else float(si)

    @property
    def si(self) -> float:
        """The value in SI (relative humidity 0 to 1)."""
        return units.to_si(self._value, self._unit.name) if self._unit else self._value

    def put(self, value: object) -> None:
        """Set the value in the shown unit and tell nobody; OutOfRange beyond the ends."""
        self._value = self._on_slider(value)

    def put_si(self, value: float) -> None:
        """Set a value of SI and tell nobody."""
        self.put(self.shown(value))

    def _on_slider(self, value: Any) -> float:
        try:
            number = float(value)
        except (TypeError, ValueError, OverflowError):
            raise OutOfRange(message("panels.must-be-a-number", what=self._said, given=repr(str(value)[:40]))) from None
        part = 100.0 if self._unit and self._unit.name == "%" else 1.0  # `within` shows fractions as percent
        within(self._said, number / part, self.min / part, self.max / part, self._unit.name if self._unit else "")
        return number

    def read(self, text: str) -> float:
        """A typed number in the shown unit; it may have a unit of either system, or none.

        NotUnderstood and OutOfRange say in one sentence how to write it, or
        the allowed range.
        """
        text = str(text).strip()
        try:
            value = self._read(text)
        except OutOfRange:  # beyond all numbers: refused with this slider's own range
            value = -math.inf if text.startswith("-") else math.inf
        # What is typed in another unit may miss an end by the last digit.
        for end in (self.min, self.max):
            if math.isclose(value, end, rel_tol=1e-3):
                value = end
        return self._on_slider(value)

    def _read(self, text: str) -> float:
        quantity = self.slider.quantity
        if self._unit:
            try:
                return units.from_si(units.quantity(text, quantity, self._unit.name), self._unit.name)
            except UnknownName:
                pass  # a quantity that is only typed in the shown unit
        bare = text
        for tail in (self.unit, self._unit.name if self._unit else ""):
            if tail and bare.lower().endswith(tail.lower()):
                bare = bare[: -len(tail)].strip()
                break
        try:
            return units.quantity(bare, "length", "m")  # a bare number, fractions and decimal comma included
        except NotUnderstood:
            raise NotUnderstood(self._said[:1].lower() + self._said[1:], text, [self._example()]) from None

    def _example(self) -> str:
        """The value as it may be typed."""
        number = language.typed(units.number(self._value, figures=4))
        return units.with_unit(number, self._unit.name) if self._unit else number

    @property
    def notches(self) -> int:
        """How many steps of an arrow key lead from end to end."""
        left, right, step = self.scale.left, self.scale.right, self.scale.step
        if self.slider.log:
            return max(1, round(abs(math.log10(right / left)) * step))
        return max(1, round(abs(right - left) / step))

    def fraction(self, value: float) -> float:
        """Where a value (shown unit) stands along the slider, 0 to 1."""
        left, right = self.scale.left, self.scale.right
        if self.slider.log:
            return math.log(value / left) / math.log(right / left)
        return (value - left) / (right - left)

    def at(self, fraction: float) -> float:
        """The value (shown unit) at a place along the slider, 0 to 1."""
        left, right = self.scale.left, self.scale.right
        return left * (right / left) ** fraction if self.slider.log else left + (right - left) * fraction

    def along(self, count: int = PLACES) -> list[float]:
        """Values in SI at even places along the slider, left to right."""
        if count not in self._along:  # every move asks, and they stay where they are
            shown = [self.at(k / (count - 1)) for k in range(count)]
            self._along[count] = [units.to_si(each, self._unit.name) if self._unit else each for each in shown]
        return list(self._along[count])

    def say(self, value: float) -> str:
        """A value (shown unit) with as many digits as the slider moves by."""
        if self.slider.log:
            return units.number(value, figures=2 if value < 1 else 3, rounded=True)
        return units.number(value, self.digits)

    def rounded(self, value: float) -> float:
        """A value (shown unit) as `say` rounds it."""
        return float(f"{value:.{2 if value < 1 else 3}g}") if self.slider.log else round(value, self.digits)

    def frame(self) -> dict[str, Any]:
        """What the browser needs to build it."""
        return {
            "kind": "slider",
            "name": self.name,
            "label": self.words,
            "unit": self.unit,
            "left": float(self.scale.left),
            "right": float(self.scale.right),
            "log": self.slider.log,
            "notches": self.notches,
            "start": self.start,
            "digits": self.digits,
            "play": self.slider.play,
            "value": self._value,
        }


class ChoiceControl(Control):
    """A choice, with its value: the id of an option.  `min` and `max` are the first and the last."""

    unit = ""

    def __init__(self, choice: Choice, system: str, si: str | None = None) -> None:
        self.choice, self.system = choice, system
        self.name = choice.name
        self.options = tuple(option[0] for option in choice.options)
        self.min, self.max = self.options[0], self.options[-1]
        self.start = choice.start or self.options[0]
        self.put(si or self.start)

    @property
    def words(self) -> str:
        """What stands beside it."""
        return language.told(self.choice.words)

    @property
    def si(self) -> str:
        """Id of the option."""
        return self._value

    def put(self, value: object) -> None:
        """Choose an option and tell nobody; UnknownName for one that does not exist."""
        if value not in self.options:
            raise UnknownName(message("panels.choice-of", what=self.words.lower()), str(value), self.options)
        self._value = value

    def put_si(self, value: str) -> None:
        """The same: an option has no unit."""
        self.put(value)

    def along(self, count: int = 0) -> list[str]:
        """All options, whatever the count."""
        return list(self.options)

    def label(self, id: str = "") -> str:
        """The words of an option, or of the one chosen."""
        option = next(each for each in self.choice.options if each[0] == (id or self._value))
        return language.told(option[2] if self.system == "si" and len(option) > 2 else option[1])

    def frame(self) -> dict[str, Any]:
        """What the browser needs to build it."""
        options = [{"id": id, "words": self.label(id)} for id in self.options]
        return {"kind": "choice", "name": self.name, "label": self.words, "options": options, "value": self._value}


# --- the controls all lessons share ------------------------------------------------

#: Notches of a decade of a log slider.
_DECADE = 25


def _alike(name: str, words: str, quantity: str, scale: Scale, said: str = "") -> Slider:
    """A slider with one scale in both unit systems."""
    return Slider(name, words, quantity, scale, scale, said=said)


def _permeance(name: str, words: str, start_us: float, start_si: float) -> Slider:
    return Slider(
        name,
        words,
        "permeance",
        Scale(0.05, 100, start_us, _DECADE),
        Scale(70, 0.035, start_si, _DECADE),
        log=True,
    )


def _resistance(
    name: str,
    words: str,
    highest_us: float,
    highest_si: float,
    start_us: float,
    start_si: float,
    step_us: float = 0.5,
) -> Slider:
    scales = Scale(0, highest_us, start_us, step_us), Scale(0, highest_si, start_si, 0.1)
    return Slider(name, words, "thermal resistance", *scales)


_SLIDERS = (
    # climate
    Slider("T_out", "panels.slider-t-out", "temperature", Scale(-20, 100, 20, 1), Scale(-29, 38, -7, 0.5)),
    _alike("RH_out", "panels.slider-rh-out", "relative humidity", Scale(30, 100, 80, 1)),
    Slider(
        "Sky",
        "panels.slider-sky",
        "temperature difference",
        Scale(0, 45, 36, 1),
        Scale(0, 25, 20, 1),
        said="panels.said-sky",
    ),
    Slider(
        "Wind",
        "panels.slider-wind",
        "thermal transmittance",
        Scale(0.53, 4.4, 1.41, 0.01),
        Scale(3, 25, 8, 1),
        said="panels.said-wind",
    ),
    # room air
    Slider("T_in", "panels.slider-t-in", "temperature", Scale(60, 80, 70, 1), Scale(15, 27, 21, 0.5)),
    _alike("RH_in", "panels.slider-rh-in", "relative humidity", Scale(15, 70, 40, 1)),
    Slider("T", "panels.slider-t", "temperature", Scale(0, 100, 70, 1), Scale(-18, 38, 21, 0.5)),
    _alike("RH", "panels.slider-rh", "relative humidity", Scale(5, 100, 40, 1)),
    Slider("Water", "panels.slider-water", "mass flow", Scale(10, 40, 21, 1), Scale(5, 20, 10, 0.5)),
    Slider("Fresh_air", "panels.slider-fresh-air", "air flow", Scale(15, 150, 45, 5), Scale(25, 255, 75, 5)),
    # assembly
    _permeance("M_in", "panels.slider-m-in", 1, 3.5),
    _permeance("M_out", "panels.slider-m-out", 50, 0.07),
    _resistance("R_ins", "panels.slider-r-ins", 60, 10.5, 44, 7.7, 1),
    _resistance("R_out", "panels.slider-r-out", 30, 5.3, 0, 0),
    _resistance("R_in", "panels.slider-r-in", 30, 5.3, 5.5, 1.0),
    _alike("Gap_share", "panels.slider-gap-share", "relative humidity", Scale(0, 20, 0, 0.5)),
    Slider(
        "dp_vapor",
        "panels.slider-dp-vapor",
        "pressure",
        Scale(0, 0.9, 0.19, 0.01),
        Scale(0, 3000, 650, 10),
    ),
    Slider(
        "Hole",
        "panels.slider-hole",
        "area",
        Scale(0.01, 4, 1, _DECADE, "in2"),
        Scale(0.06, 26, 6.5, _DECADE, "cm2"),
        log=True,
    ),
    _alike("dP", "panels.slider-dp", "pressure", Scale(0.5, 6, 1, 0.1, "Pa")),
    _alike("ACH50", "panels.slider-ach50", "air change", Scale(0.3, 10, 3, 0.1)),
    Slider("Gap", "panels.slider-gap", "length", Scale(0.5, 4, 1.5, 0.25), Scale(12, 100, 38, 1)),
    Slider("Air", "panels.slider-air", "speed", Scale(10, 100, 20, 5), Scale(0.05, 0.5, 0.1, 0.05)),
)

#: By name.
STANDARD = {each.name: each for each in _SLIDERS}


def standard(name: str) -> Slider:
    """The shared slider of that name; UnknownName when there is none.

    Examples
    --------
    >>> standard("RH_in").us.start
    40
    """
    try:
        return STANDARD[name]
    except KeyError:
        raise UnknownName("control", name, STANDARD) from None

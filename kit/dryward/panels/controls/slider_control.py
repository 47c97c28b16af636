"""A slider of a page, with its value."""

import math

from dryward import units
from dryward.checks import NotUnderstood, OutOfRange, UnknownName, within
from dryward.panels.controls.control import Control


class SliderControl(Control):
    """A slider in one unit system, with its value.

    Attributes
    ----------
    value : float
        In the shown unit; setting it checks the range and moves the page.
    si : float
        The value in SI (relative humidity 0 to 1).
    min, max : float
        The ends in the shown unit, the smaller one first.
    unit : str
        How the unit is written.
    """

    options = ()

    def __init__(self, slider, system, si=None):
        self.slider, self.system = slider, system
        self.name, self.words = slider.name, slider.words
        self._said = slider.said or slider.words
        self.scale = getattr(slider, system)
        bare = slider.quantity == "number"
        self._unit = None if bare and not self.scale.unit else slider.unit(system)
        self.unit = self._unit.symbol if self._unit else ""
        self.min, self.max = sorted((float(self.scale.left), float(self.scale.right)))
        self._value = float(self.scale.start)
        if si is not None:
            # Round ends of the two systems differ a little: stay on the slider.
            self._value = min(self.max, max(self.min, self.shown(si)))

    def shown(self, si):
        """A value of SI in the shown unit."""
        return units.from_si(si, self._unit.name) if self._unit else float(si)

    def put(self, value):
        """Set the value in the shown unit and tell nobody.

        Raises
        ------
        OutOfRange
            Beyond the ends of the slider.
        """
        self._value = self._on_slider(value)

    def _on_slider(self, value):
        try:
            number = float(value)
        except (TypeError, ValueError):
            raise OutOfRange(f"{self._said} must be a number, not {str(value)[:40]!r}.") from None
        part = 100.0 if self.unit == "%" else 1.0  # `within` shows fractions as percent
        within(self._said, number / part, self.min / part, self.max / part, self.unit)
        return number

    @property
    def si(self):
        """In SI."""
        return units.to_si(self._value, self._unit.name) if self._unit else self._value

    def read(self, text):
        """A typed number in the shown unit.

        Parameters
        ----------
        text : str
            With a unit of either system, or bare in the shown unit.

        Returns
        -------
        float

        Raises
        ------
        NotUnderstood, OutOfRange
            One sentence that says how to write it, or the allowed range.
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

    def _read(self, text):
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
            raise NotUnderstood(
                self._said[:1].lower() + self._said[1:], text, f'"{self._value:.4g} {self.unit}"'.replace(' "', '"')
            ) from None

    @property
    def notches(self):
        """How many steps of an arrow key lead from end to end."""
        left, right, step = self.scale.left, self.scale.right, self.scale.step
        if self.slider.log:
            return max(1, round(abs(math.log10(right / left)) * step))
        return max(1, round(abs(right - left) / step))

    def fraction(self, value):
        """Where a value (shown unit) stands along the slider, 0 to 1."""
        left, right = self.scale.left, self.scale.right
        if self.slider.log:
            return math.log(value / left) / math.log(right / left)
        return (value - left) / (right - left)

    def along(self, count=41):
        """Values in SI at even places along the slider, left to right."""
        left, right = self.scale.left, self.scale.right
        places = [i / (count - 1) for i in range(count)]
        if self.slider.log:
            shown = [left * (right / left) ** place for place in places]
        else:
            shown = [left + (right - left) * place for place in places]
        return [units.to_si(each, self._unit.name) if self._unit else each for each in shown]

    def say(self, value):
        """A value (shown unit) with as many digits as the slider moves by."""
        if self.slider.log:
            return f"{float(f'{value:.{2 if value < 1 else 3}g}'):g}"
        text = f"{value:.{self.digits}f}"
        return text.lstrip("-") if float(text) == 0 else text

    @property
    def digits(self):
        """Digits behind the point that a step moves."""
        step = self.scale.step
        return 0 if self.slider.log else next(d for d in range(7) if abs(step * 10**d - round(step * 10**d)) < 1e-6)

    def frame(self):
        """What the sheet needs to build it."""
        return {
            "kind": "slider",
            "name": self.name,
            "label": self.words,
            "unit": self.unit,
            "left": float(self.scale.left),
            "right": float(self.scale.right),
            "log": self.slider.log,
            "notches": self.notches,
            "digits": self.digits,
            "play": self.slider.play,
            "value": self._value,
        }

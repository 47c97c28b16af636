"""What a lesson gives back to its page: readouts, strips, steps."""

from dataclasses import dataclass

from dryward import units


@dataclass(frozen=True)
class Readout:
    """One number under the picture, at most five a page.

    Parameters
    ----------
    name : str
        Key in ``page.readouts``.
    words : str
        What stands over it; the same for every state.
    value : float or None
        In SI; None where there is none.
    quantity : str
        One of `units`; empty for a bare number.
    text : str
        Shown instead of the number, where words say it better.
    note : str
        A second line under it.
    both : bool
        Whether the other unit system stands in the second line.
    digits : int, optional
    hidden : bool
        In ``page.readouts`` but not on the page.
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

    def shown(self, system):
        """The two lines of it, in a unit system."""
        return {"name": self.name, "value": self._value(system), "also": self._also(system)}

    def _value(self, system):
        if self.text:
            return self.text
        if self.value is None:
            return "none"
        if not self.quantity:
            return f"{self.value:.3g}" if self.digits is None else f"{self.value:.{self.digits}f}"
        return units.show(self.value, self.quantity, system, self.digits)

    def _also(self, system):
        if self.note or not self.both or self.value is None:
            return self.note
        return units.show(self.value, self.quantity, "si" if system == "us" else "us")


@dataclass(frozen=True)
class Strip:
    """Where along a control the criterion holds, all else as it is now.

    Parameters
    ----------
    holds : sequence of bool
        At even places along the slider, left to right (`SliderControl.along`),
        or for each option of a choice.
    good : str
        What it means where it holds, such as ``"no water"``.
    """

    holds: tuple
    good: str = "no water"

    def shown(self, control):
        """Hatched stretches and words for the sheet."""
        holds = [bool(each) for each in self.holds]
        if control.options:
            names = [control.label(id) for id, fits in zip(control.options, holds, strict=True) if fits]
            words = f"{self.good} with: {'; '.join(names)}" if names else f"{self.good} with none of them"
            return {"fails": [], "words": f"{words[0].upper()}{words[1:]}"}
        return {"fails": _stretches(holds), "words": self._words(control, holds)}

    def _words(self, control, holds):
        start = f"{self.good[0].upper()}{self.good[1:]}"
        if all(holds):
            return f"{start} at any setting"
        if not any(holds):
            bad = self.good.removeprefix("no ")
            return f"{bad[0].upper()}{bad[1:]} at every setting" if bad != self.good else f"At no setting: {self.good}"
        last, rising = len(holds) - 1, control.scale.left < control.scale.right
        parts = []
        for first, final in _runs(holds):
            low, high = (control.say(_at(control, place / last)) for place in (first, final))
            if first == 0:
                parts.append(f"up to {high}" if rising else f"at least {high}")
            elif final == last:
                parts.append(f"at least {low}" if rising else f"up to {low}")
            else:
                parts.append(f"{low} to {high}")
        return f"{start}: {', '.join(parts)} {control.unit}".strip()


def _at(control, place):
    left, right = control.scale.left, control.scale.right
    return left * (right / left) ** place if control.slider.log else left + (right - left) * place


def _runs(holds):
    """First and last place of each run of True."""
    runs, first = [], None
    for place, fits in enumerate([*holds, False]):
        if fits and first is None:
            first = place
        elif not fits and first is not None:
            runs.append((first, place - 1))
            first = None
    return runs


def _stretches(holds):
    """Fractions along the slider where it does not hold; edges half way between places."""
    last = len(holds) - 1
    return [
        [max(0.0, (first - 0.5) / last), min(1.0, (final + 0.5) / last)]
        for first, final in _runs([not fits for fits in holds])
    ]

"""What a lesson gives back to its page: readouts, strips, steps."""

from dataclasses import dataclass

from dryward import units
from dryward.verdict import DRY, STATES, UNKNOWN
from dryward.verdict.words import capital


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
    """The state along a control, all else as it is now.

    Parameters
    ----------
    states : sequence of str
        Of `verdict.STATES`, or "not known yet": at the places of a slider
        from left to right, or for each option of a choice.
    places : sequence of float, optional
        Where along the slider [-], rising from 0 to 1; otherwise even.
    """

    states: tuple
    places: tuple = ()

    @property
    def holds(self):
        """Where it is dry."""
        return tuple(each == DRY for each in self.states)

    def shown(self, control):
        """Stretches and words for the sheet."""
        if control.options:
            return {"spans": [], "words": _of_options(control, self.states)}
        places = self.places or tuple(k / (len(self.states) - 1) for k in range(len(self.states)))
        runs = _runs(self.states)
        edges = [0.0, *(0.5 * (places[first - 1] + places[first]) for _, first, _ in runs[1:]), 1.0]
        spans = [[a, b, state] for (state, *_), a, b in zip(runs, edges, edges[1:], strict=False)]
        return {"spans": spans, "words": _of_slider(control, self.states, places, runs)}


def _of_options(control, states):
    """Each state that occurs, with the options that have it."""
    said = []
    for state in (*STATES, UNKNOWN):
        names = [control.label(id) for id, each in zip(control.options, states, strict=True) if each == state]
        if names:
            every = len(names) == len(states)
            said.append(f"{capital(state)} with {'every one of them' if every else '; '.join(names)}")
    return ". ".join(said)


def _of_slider(control, states, places, runs):
    """Where each stretch lies, in the numbers of the slider."""
    done = sum(each != UNKNOWN for each in states)
    if done < len(states):
        return f"Not known yet: {done} of {len(states)} worked out"
    if len(runs) == 1:
        return f"{capital(runs[0][0])} at every setting"
    rising, said = control.scale.left < control.scale.right, []
    before, behind = ("below", "above") if rising else ("above", "below")
    ends = [tuple(_at(control, places[place]) for place in run[1:]) for run in runs]
    printed = [tuple(control.say(each) for each in pair) for pair in ends]
    # Where two neighbors print the same number, it is told of the one that has it: True, and the other lies beyond.
    later = [
        here[0] == last[1] and (float(here[0]) - first) * (1 if rising else -1) >= -1e-9
        for last, here, (first, _) in zip(printed, printed[1:], ends[1:], strict=False)
    ]
    for k, ((state, *_), (low, high)) in enumerate(zip(runs, printed, strict=True)):
        after_low = k > 0 and low == printed[k - 1][1] and not later[k - 1]
        before_high = k + 1 < len(runs) and later[k]
        here = f"{low} {control.unit}".strip()
        if k == 0:
            span = f"{before} {high}" if before_high else f"up to {high}" if rising else f"at least {high}"
        elif k + 1 == len(runs):
            span = f"{behind} {here}" if after_low else f"from {here} on" if rising else f"up to {here}"
        elif low == high:
            span = f"just {behind} {low}" if after_low else f"just {before} {low}" if before_high else low
        elif after_low and before_high:
            span = f"between {low} and {high}"
        else:
            start = f"{behind} {low}" if after_low else low
            span = f"{start} to {f'just {before} ' if before_high else ''}{high}"
        said.append(f"{state} {span}")
    return capital(", ".join(said))


def _at(control, place):
    left, right = control.scale.left, control.scale.right
    return left * (right / left) ** place if control.slider.log else left + (right - left) * place


def _runs(states):
    """(state, first place, last place) of each stretch of one state."""
    runs, first = [], 0
    for place in range(1, len(states) + 1):
        if place == len(states) or states[place] != states[first]:
            runs.append((states[first], first, place - 1))
            first = place
    return runs

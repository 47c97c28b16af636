"""What a slider is: its quantity, and its ends, start and step in both unit systems."""

from dataclasses import dataclass, replace

from dryward import units
from dryward.panels.controls.slider_control import SliderControl


@dataclass(frozen=True)
class Scale:
    """The ends, start and step of a slider in one unit system.

    Parameters
    ----------
    left, right : float
        Values at the two ends, in `unit`; `right` may be the smaller one.
    start : float
        Where the slider stands when the lesson opens, in `unit`.
    step : float
        What one arrow key moves, in `unit`; on a log slider, notches a decade.
    unit : str, optional
        A key of `units.UNITS`; otherwise the usual one of the quantity.

    Examples
    --------
    >>> Scale(-20, 100, 20, 1).start
    20
    """

    left: float
    right: float
    start: float
    step: float
    unit: str = ""


@dataclass(frozen=True)
class Slider:
    """What a slider is.

    Parameters
    ----------
    name : str
        The same in all lessons, such as ``"T_out"``.
    words : str
        What stands beside it.
    quantity : str
        One of the quantities of `units`, or ``"number"`` for a bare one.
    us, si : Scale
    log : bool
        Whether equal moves are equal factors.
    play : int
        Milliseconds a notch for a play button; 0 for none.
    said : str
        What a sentence about its number calls it, where `words` do not fit.

    Examples
    --------
    >>> Slider("dP", "Pressure", "number", Scale(0.5, 6, 1, 0.1), Scale(0.5, 6, 1, 0.1)).log
    False
    """

    name: str
    words: str
    quantity: str
    us: Scale
    si: Scale
    log: bool = False
    play: int = 0
    said: str = ""

    def starting(self, us, si=None):
        """The same slider with another start, in the shown units.

        Without a start in SI units the US one is converted.
        """
        if si is None:
            si = self._converted(us)
        return replace(self, us=replace(self.us, start=us), si=replace(self.si, start=si))

    def _converted(self, value):
        if self.quantity == "number":
            return value
        there = units.from_si(units.to_si(value, self.unit("us").name), self.unit("si").name)
        return float(f"{there:.3g}")

    def unit(self, system):
        """The unit it is shown in."""
        scale = getattr(self, system)
        return units.unit(scale.unit) if scale.unit else units.shown_unit(self.quantity, system)

    def control(self, system, si=None):
        """The control of it, at its start or at a value of SI."""
        return SliderControl(self, system, si)

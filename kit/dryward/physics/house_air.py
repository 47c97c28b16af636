"""Air through a whole house: what comes in low and goes out high, and the neutral level between.

Warm air is lighter than the cold air outside, so the push on the walls grows
with height: inward at the floor, outward at the ridge.  It is nothing at the
neutral level, which stands where as much comes in as goes out; a fan that
blows out moves it up.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from dryward.checks import single, within
from dryward.physics.moving_air import stack_pressure

#: Where a house leaks: height [m] and its part of the leaks of the whole house [-].
Places = Sequence[tuple[float, float]]
#: Halvings of a push between its ends [-]; the last step is far below what any gauge shows.
_HALVINGS = 70
#: The push at the floor is looked for within this of nothing [Pa].
_HARDEST = 1e4


@dataclass(frozen=True)
class HouseAir:
    """A house in balance: pushes [Pa] and flows [m3/s] at each of its places, outward positive; its fan [m3/s].

    `neutral` is the height of the neutral level [m], which may lie over the
    ridge or under the floor; infinite where no stack pushes.
    """

    pushes: tuple[float, ...]
    flows: tuple[float, ...]
    fan: float
    neutral: float

    @property
    def fresh_air(self) -> float:
        """Outdoor air that comes in [m3/s]."""
        return -sum(flow for flow in self.flows if flow < 0)


def balanced(
    coefficient: float, places: Places, warm: float, cold: float, fan: float = 0.0, exponent: float = 0.65
) -> HouseAir:
    """A house whose fan blows out so much air.

    Parameters
    ----------
    coefficient : float
        Flow of the whole house's leaks at 1 Pa [m3/s], above 0 to 100.
    places : sequence of (float, float)
        Height [m] and part of the leaks [-] of each place.
    warm, cold : float
        Air indoors and outdoors [degC].
    fan : float
        Blown out by it [m3/s], 0 to 10.
    exponent : float
        Of the leaks [-], 0.5 to 1.

    Notes
    -----
    The power law of blower-door testing at each place.  Volumes are balanced,
    not masses: the tenth by which the densities of the two airs differ is
    left out.

    Examples
    --------
    Two holes alike, at the floor and at 4 m: the neutral level is half way up, and the push of 2 m is at both.

    >>> house = balanced(0.04, ((0.0, 0.5), (4.0, 0.5)), 21.0, -7.0)
    >>> round(house.neutral, 3), [round(push, 2) for push in house.pushes]
    (2.0, [-2.48, 2.48])
    """
    fan = single("Fan", fan, 0.0, 10.0, "m3/s")
    pushed = _Pushed(coefficient, places, warm, cold, exponent)
    floor = _where(lambda push: sum(pushed.flows(push)) + fan)
    return pushed.at(floor, fan)


def with_fresh_air(
    coefficient: float, places: Places, warm: float, cold: float, fresh_air: float, exponent: float = 0.65
) -> HouseAir:
    """The same house with the fan that makes so much outdoor air come in [m3/s]; without one where its leaks do.

    Where even without a fan more would come in, its leaks are closed in step until it is so much.
    """
    fresh_air = single("Fresh air", fresh_air, 0.0, 10.0, "m3/s", above=True)
    alone = balanced(coefficient, places, warm, cold, 0.0, exponent).fresh_air
    if fresh_air <= alone * (1 + 1e-9):
        return balanced(coefficient * fresh_air / alone, places, warm, cold, 0.0, exponent)
    pushed = _Pushed(coefficient, places, warm, cold, exponent)
    # The harder the floor is pulled at, the more comes in: from the natural push down.
    floor = _where(lambda push: fresh_air - _inward(pushed.flows(push)))
    return pushed.at(floor, max(0.0, -sum(pushed.flows(floor))))


def at_push(
    coefficient: float,
    places: Places,
    warm: float,
    cold: float,
    push: float,
    height: float,
    exponent: float = 0.65,
) -> HouseAir:
    """The same house with the fan that makes so much push at a height [Pa, m]; where `fan` is below 0 it blows in."""
    pushed = _Pushed(coefficient, places, warm, cold, exponent)
    floor = single("Pressure", push, -1000.0, 1000.0, "Pa") - pushed.slope * height
    return pushed.at(floor, -sum(pushed.flows(floor)))


class _Pushed:
    """The leaks of a house at any push at its floor."""

    def __init__(self, coefficient: float, places: Places, warm: float, cold: float, exponent: float) -> None:
        self.coefficient = single("Leakage coefficient", coefficient, 0.0, 100.0, "m3/s", above=True)
        self.exponent = single("Leakage exponent", exponent, 0.5, 1.0)
        self.parts = [single("Share of the leak", part, 0.0, 1.0, "%") for _, part in places]
        self.heights = [single("Height", height, -1000.0, 1000.0, "m") for height, _ in places]
        within("Share of the leak", sum(self.parts), 0.0, 1.0 + 1e-9, above=True)
        #: Push that a meter of height adds [Pa].
        self.slope = float(stack_pressure(1.0, warm, cold))

    def flows(self, floor: float) -> list[float]:
        """Through each place, outward positive [m3/s]."""
        found = []
        for height, part in zip(self.heights, self.parts, strict=True):
            push = floor + self.slope * height
            flow = self.coefficient * part * abs(push) ** self.exponent
            found.append(flow if push > 0 else -flow)
        return found

    def at(self, floor: float, fan: float) -> HouseAir:
        """The house at that push."""
        pushes = tuple(floor + self.slope * height for height in self.heights)
        neutral = -floor / self.slope if abs(self.slope) > 1e-9 else float("inf")
        return HouseAir(pushes, tuple(self.flows(floor)), fan, neutral)


def _inward(flows: Sequence[float]) -> float:
    return -sum(flow for flow in flows if flow < 0)


def _where(rising: Callable[[float], float]) -> float:
    """The push at the floor at which a sum that rises with it is nothing."""
    low, high = -_HARDEST, _HARDEST
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        if rising(middle) < 0:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)

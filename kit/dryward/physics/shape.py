"""The shapes of results: one number in, one number out; and arrays that stay as they were handed out."""

from collections.abc import Callable
from typing import Any, Protocol, TypeAlias

import numpy as np
from numpy.typing import NDArray

from dryward.weather import Air

Floats: TypeAlias = NDArray[np.float64]
Ints: TypeAlias = NDArray[np.int64]
#: One number or an array of them, by what was given; typed as NumPy types the results of its own functions.
Numeric: TypeAlias = Any


class RoomRule(Protocol):
    """A rule of `weather.indoor`: the air of the room by the weather."""

    def at(self, weather: Any) -> tuple[Numeric, Numeric]:  # of months or of hours: each rule takes both
        """Temperature [degC] and vapor pressure [Pa] of the room."""


Room: TypeAlias = Air | RoomRule
#: Temperature [degC] -> saturation pressure [Pa].
Saturation: TypeAlias = Callable[[Floats], Floats]
#: Side of a layer: 0 or "inner" toward the room, 1 or "outer" away from it.
Side: TypeAlias = int | str


def plain(value: Numeric) -> Numeric:
    """A float where there is only one number, otherwise the array."""
    return float(value) if np.ndim(value) == 0 else value


def seal(result: object) -> None:
    """Make the arrays of a frozen result as unchangeable as the rest of it."""
    for value in vars(result).values():
        if isinstance(value, np.ndarray):
            value.flags.writeable = False

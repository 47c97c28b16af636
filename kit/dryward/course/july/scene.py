"""July: the same section and graph, with the vapor arrow turned inward."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.patches import Polygon

from dryward import language
from dryward.pictures.drawing import arrow, sentences
from dryward.pictures.section import SectionAndProfile, SteadyRoof

message = language.beside(__file__)

#: A vapor arrow of full width stands for this flow [kg/(s m2)]: 12 g/m2 day.
_FULL = 0.012 / 86400


@dataclass(frozen=True)
class SummerRoof(SteadyRoof):
    """A section and a graph whose drive may point either way."""

    #: Words for a sun-wet layer, or an empty string.
    sun: str = ""


class Reversal(SectionAndProfile):
    """Section and graph, with an arrow for the vapor that really goes in and out."""

    def signature(self, state: SteadyRoof) -> Any:
        return super().signature(state), "flow"

    def draw_static(self, state: SteadyRoof) -> None:
        self.section.extra = (("vapor pressure", message("vapor-flow"), "arrow"),)
        super().draw_static(state)
        shape: dict[str, Any] = {
            "closed": True,
            "facecolor": self.color("vapor pressure"),
            "edgecolor": self.background,
        }
        self.flow = [self.moving(self.put(Polygon(np.zeros((3, 2)), **shape))) for _ in range(2)]

    def draw_moving(self, state: SteadyRoof) -> None:
        super().draw_moving(state)
        part, profile = self.section, state.profile
        high = part.roof - part.floor
        # What enters from outdoors, drawn at the right; what reaches the room, at the left.
        ends = ((part.outside, part.right), (part.left, part.inside))
        for shape, flux, (a, b) in zip(self.flow, (profile.vapor_flux_out, profile.vapor_flux_in), ends, strict=True):
            # No wider than leaves a shaft behind the head.
            wide = min(0.45 * high, 0.6 * (b - a)) * min(abs(flux) / _FULL, 1.0)
            shape.set_visible(wide > 0.8)
            start, end = (a + 2, b - 2) if flux > 0 else (b - 2, a + 2)
            shape.set_xy(arrow(start, part.floor + 0.66 * high, end, max(wide, 2.5), max(1.5 * wide, 10)))

    def alt(self, state: SteadyRoof) -> str:
        profile = state.profile
        sun = state.sun if isinstance(state, SummerRoof) else ""
        outside = self.show(abs(profile.vapor_flux_out), "vapor flux")
        room = self.show(abs(profile.vapor_flux_in), "vapor flux")
        out, leave = profile.vapor_flux_out > 0, profile.vapor_flux_in > 0
        ways = message("alt-ways", outside=outside, out=out, room=room, leave=leave)
        return sentences(sun, super().alt(state), ways)

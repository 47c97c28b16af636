"""How fast: perms in a row, and what a gap in one of them costs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace

import numpy as np

from dryward import units
from dryward.building import codes
from dryward.course.how_fast_perms.scene import LayersInRow, Pipe
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.physics.airleak import permeance_with_gaps
from dryward.teaching.words import Step
from dryward.units import to_si

#: What stands before the film, gap or not: gypsum board and paint, 40 and 7 perm in a row.
PAINTED_DRYWALL = to_si(1 / (1 / 40 + 1 / 7), "perm")
NAMES = ("painted drywall", "film", "outer sheet")


@dataclass(frozen=True)
class State:
    """Three sheets in a row under a push."""

    film: float
    inner: float
    outer: float
    push: float
    gap: float

    @property
    def permeances(self):
        """Of the three, from the room; the film as its gaps leave it [kg/(s m2 Pa)]."""
        return PAINTED_DRYWALL, 1 / (1 / self.inner - 1 / PAINTED_DRYWALL), self.outer

    @property
    def cut(self):
        """What drywall and film with gaps cut off, against drywall alone [-]."""
        return 1 - self.inner / PAINTED_DRYWALL

    @property
    def together(self):
        """Of all in a row [kg/(s m2 Pa)]."""
        return 1 / sum(1 / each for each in self.permeances)


class HowFastPerms(Page):
    """A pipe with three valves."""

    id = "how-fast-perms"
    handles = (
        "dp_vapor",
        replace(standard("M_in"), words="Film"),
        replace(standard("M_out"), words="Outer sheet"),
        replace(standard("Gap_share"), words="Share of the film missing"),
    )
    draws = Pipe

    def compute(self, at: SimpleNamespace) -> State:
        """The permeances in a row; the film with its gaps."""
        inner = float(permeance_with_gaps(at.M_in, PAINTED_DRYWALL, at.Gap_share))
        return State(at.M_in, inner, at.M_out, at.dp_vapor, at.Gap_share)

    def views(self, state):
        """Painted drywall, film, outer sheet."""
        return LayersInRow(NAMES, state.permeances, state.push, state.together * state.push)

    def numbers(self, state: State) -> list[Readout]:
        """Together, the flow, the class of the film, which one rules, what a gap costs."""
        drops = np.array([1 / each for each in state.permeances])
        rules = int(np.argmax(drops))
        share = drops[rules] / drops.sum()
        kind = codes.retarder_class(state.film)
        return [
            Readout("together", "All three in a row", state.together, "permeance", both=True),
            Readout("flow", "Vapor that passes", state.together * state.push, "vapor flux", both=True),
            Readout(
                "rules", "What rules", float(share), text=NAMES[rules], note=f"{share * 100:.0f} % of the resistance"
            ),
            Readout(
                "class", "The film's class", state.film, "permeance",
                text=f"Class {kind}" if kind != "none" else "no class",
                note="by dry-cup perms; see local code",
            ),
            Readout(
                "cut", "Film and gaps cut", state.cut, "relative humidity", note="off what drywall lets through"
            ),
        ]  # fmt: skip

    def says(self, state: State) -> str:
        """The tightest rules; a gap costs its share, not the whole."""
        flow = self.show(state.together * state.push, "vapor flux")
        if state.gap > 0.0:
            return (
                f"With {state.gap * 100:.3g} % of it missing the film cuts {state.cut * 100:.0f} % of the vapor: {flow}"
                " passes. For air the gap would be a hole."
            )
        whole = self.show(state.together, "permeance")
        return f"In a row the three act like one sheet of {whole}, tighter than the tightest alone: {flow} passes."

    def steps(self, state: State) -> list[Step]:
        """Resistances add; flow is permeance times push."""
        unit = "perm" if self.unit_system == "us" else "ng/(s m2 Pa)"
        word, plain = units.unit(unit).symbol, hand.plain
        numbers = [units.from_si(each, unit) for each in state.permeances]
        lines = []
        film, inner = units.from_si(state.film, unit), units.from_si(state.inner, unit)
        if state.gap > 0:
            lines.append(
                Step(
                    "Drywall and film: where the film is, both in a row; where it is missing, the drywall alone.",
                    f"{1 - state.gap:.4g} / (1/{plain(numbers[0])} + 1/{plain(film)}) "
                    f"+ {state.gap:.4g} × {plain(numbers[0])}",
                    f"{plain(inner)} {word}",
                )
            )
        row = f"1/{plain(inner)}" if lines else f"1/{plain(numbers[0])} + 1/{plain(film)}"
        return [
            *lines,
            Step(
                "All in a row: one over the sum of one over each.",
                f"1 / ({row} + 1/{plain(numbers[2])})",
                f"{plain(units.from_si(state.together, unit))} {word}",
            ),
            hand.flow("Flow: permeance times push.", state.push, 0.0, state.together, self.unit_system),
        ]


PAGE = HowFastPerms

"""How fast: perms in a row, and what a gap in one of them costs."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace

import numpy as np

from dryward import language, units
from dryward.building import codes
from dryward.course.how_fast_perms.beats import PLAY
from dryward.course.how_fast_perms.scene import LayersInRow, Pipe
from dryward.course.how_fast_perms.shelf import SHELF
from dryward.panels import hand
from dryward.panels.controls import Choice, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.physics.airleak import permeance_with_gaps
from dryward.teaching.words import Step
from dryward.units import to_si

message = language.beside(__file__)

#: What stands before the film, gap or not: gypsum board and paint, 40 and 7 perm in a row.
PAINTED_DRYWALL = to_si(1 / (1 / 40 + 1 / 7), "perm")
NAMES = ("how_fast_perms.painted-drywall", "how_fast_perms.film", "how_fast_perms.outer-layer")
OUTER = Choice(
    "Outer",
    "how_fast_perms.outer-layer-choice",
    (
        ("one-perm", "how_fast_perms.one-perm-us", "how_fast_perms.one-perm-si"),
        ("open-sheet", "how_fast_perms.open-sheet-us", "how_fast_perms.open-sheet-si"),
        ("plywood-dry", "how_fast_perms.plywood-dry-us", "how_fast_perms.plywood-dry-si"),
        ("plywood-wet", "how_fast_perms.plywood-wet-us", "how_fast_perms.plywood-wet-si"),
        ("osb-dry", "how_fast_perms.osb-dry-us", "how_fast_perms.osb-dry-si"),
        ("osb-wet", "how_fast_perms.osb-wet-us", "how_fast_perms.osb-wet-si"),
        ("felt-dry", "how_fast_perms.felt-dry-us", "how_fast_perms.felt-dry-si"),
        ("felt-wet", "how_fast_perms.felt-wet-us", "how_fast_perms.felt-wet-si"),
        ("synthetic", "how_fast_perms.synthetic-us", "how_fast_perms.synthetic-si"),
        ("self-adhered", "how_fast_perms.self-adhered-us", "how_fast_perms.self-adhered-si"),
    ),
)


@dataclass(frozen=True)
class SheetsInRow:
    """Three sheets in a row under a push."""

    film: float
    inner: float
    outer: float
    push: float
    gap: float
    #: What the outer layer is, by its place on the shelf.
    thing: str

    @property
    def permeances(self) -> tuple[float, float, float]:
        """Of the three, from the room; the film as its gaps leave it [kg/(s m2 Pa)]."""
        return PAINTED_DRYWALL, 1 / (1 / self.inner - 1 / PAINTED_DRYWALL), self.outer

    @property
    def cut(self) -> float:
        """What the film holds back, gaps and all, of what drywall and outer layer would let pass without it [-]."""
        return 1 - self.together / self._bare

    @property
    def _bare(self) -> float:
        """Of drywall and outer layer in a row [kg/(s m2 Pa)]."""
        return 1 / (1 / PAINTED_DRYWALL + 1 / self.outer)

    @property
    def without_film(self) -> float:
        """What would pass with no film [kg/(s m2)]."""
        return self._bare * self.push

    @property
    def flow(self) -> float:
        """That passes them all [kg/(s m2)]."""
        return self.together * self.push

    @property
    def together(self) -> float:
        """Of all in a row [kg/(s m2 Pa)]."""
        return 1 / sum(1 / each for each in self.permeances)


class HowFastPerms(Page):
    """A pipe with three valves."""

    id = "how-fast-perms"
    handles = (
        "dp_vapor",
        replace(standard("M_in"), words="how_fast_perms.film-slider"),
        OUTER,
        replace(standard("Gap_share"), words="how_fast_perms.gap-slider"),
    )
    draws = Pipe
    play = PLAY

    def compute(self, at: SimpleNamespace) -> SheetsInRow:
        """The permeances in a row; the film with its gaps."""
        inner = float(permeance_with_gaps(at.M_in, PAINTED_DRYWALL, at.Gap_share))
        return SheetsInRow(at.M_in, inner, SHELF[at.Outer].permeance, at.dp_vapor, at.Gap_share, at.Outer)

    def views(self, state: SheetsInRow) -> LayersInRow:
        """Painted drywall, film, outer layer."""
        return LayersInRow(tuple(language.told(each) for each in NAMES), state.permeances, state.push, state.flow)

    def given(self, state: SheetsInRow) -> str:
        """What no control moves."""
        return message("given", drywall=self.held(PAINTED_DRYWALL, "permeance"))

    def numbers(self, state: SheetsInRow) -> list[Readout]:
        """Together, the flow, the class of the film, which one rules, what a gap costs."""
        drops = np.array([1 / each for each in state.permeances])
        share = float(drops.max() / drops.sum())
        rules = [language.told(name) for name, drop in zip(NAMES, drops, strict=True) if drop > 0.99 * drops.max()]
        kind = codes.retarder_class(state.film)
        return [
            Readout("together", message("together"), state.together, "permeance", both=True),
            Readout("flow", message("flow"), state.flow, "vapor flux", both=True),
            Readout(
                "rules", message("rules"), share, text=language.joined("how_fast_perms.and-rules", rules),
                note=message("rules-note", share=self.show(share, "relative humidity"), alone=len(rules) == 1)
            ),
            Readout(
                "class", message("class"), state.film, "permeance",
                text=message("class-said", kind=kind),
                note=message("class-note"),
            ),
            Readout(
                "cut", message("cut"), state.cut, "relative humidity", note=message("cut-note")
            ),
        ]  # fmt: skip

    def says(self, state: SheetsInRow) -> str:
        """The tightest rules; a gap costs its share, not the whole."""
        flow = self.show(state.flow, "vapor flux")
        if state.gap > 0.0:
            return message(
                "with-a-gap",
                gap=units.written(state.gap * 100, ".3g"),
                cut=self.show(state.cut, "relative humidity"),
                flow=flow,
                bare=self.show(state.without_film, "vapor flux"),
            )
        whole = self.show(state.together, "permeance")
        return message("in-a-row", whole=whole, flow=flow)

    def steps(self, state: SheetsInRow) -> list[Step]:
        """Resistances add; flow is permeance times push."""
        unit = "perm" if self.unit_system == "us" else "ng/(s m2 Pa)"
        word, plain = units.unit(unit).symbol, hand.plain
        numbers = [units.from_si(each, unit) for each in state.permeances]
        lines = []
        film, inner = units.from_si(state.film, unit), units.from_si(state.inner, unit)
        if state.gap > 0:
            lines.append(
                Step(
                    message("step-gap"),
                    f"{1 - state.gap:.4g} / (1/{plain(numbers[0])} + 1/{plain(film)}) "
                    f"+ {state.gap:.4g} × {plain(numbers[0])}",
                    f"{plain(inner)} {word}",
                )
            )
        row = f"1/{plain(inner)}" if lines else f"1/{plain(numbers[0])} + 1/{plain(film)}"
        return [
            *lines,
            Step(
                message("step-row"),
                f"1 / ({row} + 1/{plain(numbers[2])})",
                f"{plain(units.from_si(state.together, unit))} {word}",
            ),
            hand.flow(message("step-flow"), state.push, 0.0, state.together, self.unit_system),
        ]


PAGE = HowFastPerms

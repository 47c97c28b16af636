"""A film of two sheets, both ways round: the humidity inside it, and what it lets through."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from matplotlib.patches import Rectangle

from dryward.pictures.drawing import ceiling, sentences
from dryward.pictures.film import Film
from dryward.pictures.live import LivePicture
from dryward.pictures.section import draw_layer

_TOPS = {"us": (1.0, 2.0, 4.0, 8.0, 16.0, 40.0), "si": (2e-10, 5e-10, 1e-9, 2e-9, 5e-9, 2e-8)}


@dataclass(frozen=True)
class LaminateFaces:
    """Humidities at the room face, between the sheets and at the far face; and the permeance."""

    #: With the sensitive sheet to the room [-].
    facing: tuple[Any, ...]
    #: With the backing to the room [-].
    flipped: tuple[Any, ...]
    #: [kg/(s m2 Pa)].
    permeance: float
    permeance_flipped: float
    #: The state that the page gives what is drawn; empty where it gives none.
    verdict: str = field(default="", kw_only=True)


class Sandwich(LivePicture):
    """Two sandwiches with their humidity line, and a bar for each."""

    size = (860, 380)
    projector_size = (1180, 600)

    def _bar(self, permeance):
        # An equivalent air layer falls as a film opens, so SI bars are in ng/(s m2 Pa).
        return self.shown(permeance, "permeance") if self.unit_system == "us" else permeance * 1e12

    def signature(self, state: LaminateFaces) -> Any:
        return self._top(state)

    def _top(self, state):
        most = max(state.permeance, state.permeance_flipped)
        if self.unit_system == "us":
            return ceiling(self.shown(most, "permeance"), _TOPS["us"])
        return ceiling(most, _TOPS["si"])

    def draw_static(self, state: LaminateFaces) -> None:
        one, other, bars = self.columns(0.385, 0.385, 0.23, gap=1.2)
        names = (("sensitive", "backing"), ("backing", "sensitive"))
        titles = ("sensitive sheet to room", "flipped over")
        self.sheets = [
            self._sheet(box, title, pair) for box, title, pair in zip((one, other), titles, names, strict=True)
        ]
        unit = "perm" if self.unit_system == "us" else "ng/(s m² Pa)"
        ax = self.graph(bars, "", unit, "y")
        ax.set_xlim(-0.6, 1.6)
        ax.set_xticks([0, 1], ["to room", "flipped"] if not self.projector else ["as is", "flip"])
        top = self._top(state)
        ax.set_ylim(0, top if self.unit_system == "us" else top * 1e12)
        color = self.color("permeance")
        shape: dict[str, Any] = {"facecolor": color, "edgecolor": self.background}
        self.bars = [
            self.moving(ax.add_patch(Rectangle((x - 0.33, 0), 0.66, 0, hatch=h, **shape)))
            for x, h in ((0, ""), (1, "///"))
        ]  # fmt: skip

    def _sheet(self, box, title, names):
        box = self.title(box, title)
        left, bottom, right, top = box
        ax = self.graph((left, bottom + 1.2 * self.line, right, top), "", "RH, %", "y")
        ax.set_ylim(0, 100)
        ax.set_xlim(-0.25, 2.25)
        ax.set_xticks([])
        place = ax.get_position()
        x0, wide = self.width * place.x0, self.width * place.width
        floor, roof = self.height * place.y0, self.height * place.y1
        for index, name in enumerate(names):
            a, b = x0 + (index + 0.25) / 2.5 * wide, x0 + (index + 1.25) / 2.5 * wide
            draw_layer(self, "fibrous" if name == "sensitive" else "board", a, b, floor, roof)
            self.words(
                (a + b) / 2, floor - 1.2 * self.line, self.fitted(name, b - a, small=True), small=True, ha="center"
            )
        self.words(x0, bottom + 0.4 * self.line, "room", small=True, color=self.quiet)
        self.words(x0 + wide, bottom + 0.4 * self.line, "far side", small=True, color=self.quiet, ha="right")
        line = self.moving(ax.plot([], [], **self.stroke("relative humidity"))[0])
        return line, self.dot(ax, "relative humidity", "o", 0.9)

    def draw_moving(self, state: LaminateFaces) -> None:
        for (line, dots), humidities in zip(self.sheets, (state.facing, state.flipped), strict=True):
            near, middle, far = (100 * h for h in humidities)
            line.set_data([-0.25, 0, 1, 2, 2.25], [near, near, middle, far, far])
            dots.set_data([0, 1, 2], [near, middle, far])
        for bar, permeance in zip(self.bars, (state.permeance, state.permeance_flipped), strict=True):
            bar.set_height(self._bar(permeance))

    def alt(self, state: LaminateFaces) -> str:
        parts = []
        for words, humidities, permeance in (
            ("With the sensitive sheet to the room", state.facing, state.permeance),
            ("Flipped over", state.flipped, state.permeance_flipped),
        ):
            near, middle, far = (self.show(h, "relative humidity") for h in humidities)
            parts.append(
                f"{words}, the humidity goes from {near} at the room face over {middle} between the sheets to "
                f"{far} at the far face, and the film has {self.show(permeance, 'permeance')}."
            )
        return sentences("A film of two sheets, both ways round.", *parts)


class FilmSides(Film, Sandwich):
    """A film between its faces, or both ways round when its two faces differ.

    Draws a `FilmBetweenFaces` as `Film` does, and a `LaminateFaces` as `Sandwich` does.
    """

    size = Film.size
    projector_size = Film.projector_size

    def _kind(self, state: Any) -> type[Film] | type[Sandwich]:
        return Sandwich if isinstance(state, LaminateFaces) else Film

    def signature(self, state: Any) -> Any:
        kind = self._kind(state)
        return kind.__name__, kind.signature(self, state)

    def draw_static(self, state: Any) -> None:
        self._kind(state).draw_static(self, state)

    def draw_moving(self, state: Any) -> None:
        self._kind(state).draw_moving(self, state)

    def alt(self, state: Any) -> str:
        return self._kind(state).alt(self, state)

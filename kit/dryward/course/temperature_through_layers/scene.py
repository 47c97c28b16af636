"""Temperature through the layers, against inches or against R.

Against thermal resistance the line is straight: the temperature drops where
the R is, not where the inches are.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from matplotlib.lines import Line2D

from dryward import language
from dryward.pictures import style
from dryward.pictures.drawing import Judged, LivePicture, ceiling, sentences, stairs

if TYPE_CHECKING:
    from dryward.building import Assembly
    from dryward.physics.steady import Profile

message = language.beside(__file__)

#: Right ends of the axes: thickness [m] and resistance [m2 K/W].
_THICK = (0.1524, 0.2032, 0.254, 0.3556, 0.508, 0.762, 1.27, 4.0)
_RESIST = (2.0, 4.0, 6.0, 8.0, 12.0, 18.0, 30.0)


@dataclass(frozen=True)
class LayerTemperatures(Judged):
    """Temperatures and layers on one of two axes."""

    #: The planes from room air to outdoor air: depth [m] or thermal resistance from room air [m2 K/W], the same
    #: planes in both.
    by_depth: tuple[tuple[float, float], ...]
    by_resistance: tuple[tuple[float, float], ...]
    #: What lies between each plane and the next.
    names: tuple[str, ...]
    #: The plane that is pointed at.
    plane: int = 0
    against: str = "depth"

    @property
    def points(self) -> tuple[tuple[float, float], ...]:
        """The planes on the axis that is shown."""
        return self.by_depth if self.against == "depth" else self.by_resistance


def from_profile(assembly: Assembly, profile: Profile, layer: str, against: str = "depth") -> LayerTemperatures:
    """The state of a steady profile, pointing at the inside face of a layer."""
    nodes = [0, *(profile.face(each.name, 0) for each in assembly.inner_layers)]
    nodes += [profile.face(assembly.inner_layers[-1].name, 1), len(profile.depth) - 1]
    names = ("film", *(each.name for each in assembly.inner_layers), "film")
    kept = [k for k in range(len(names)) if names[k] == "film" or profile.thermal_resistance[nodes[k + 1]]
            > profile.thermal_resistance[nodes[k]]]  # fmt: skip
    temperature = profile.temperature[nodes].tolist()
    depth, resistance = profile.depth[nodes].tolist(), profile.thermal_resistance[nodes].tolist()
    return LayerTemperatures(
        tuple(zip(depth, temperature, strict=True)),
        tuple(zip(resistance, temperature, strict=True)),
        tuple(name if k in kept else "" for k, name in enumerate(names)),
        1 + [each.name for each in assembly.inner_layers].index(layer),
        against,
    )


class Ladder(LivePicture[LayerTemperatures]):
    """Temperature over depth, or over thermal resistance."""

    size = (860, 400)
    narrow_size = (366, 380)

    def _axis(self, state: LayerTemperatures) -> tuple[str, float]:
        quantity = "length" if state.against == "depth" else "thermal resistance"
        steps = _THICK if state.against == "depth" else _RESIST
        return quantity, ceiling(state.points[-1][0], steps)

    def signature(self, state: LayerTemperatures) -> Any:
        limits = self._limits([t for _, t in state.points])
        # Rows for names: one for each thin layer of the fuller side, in any state.
        return state.against, self._axis(state)[1], limits, len(state.names), self._count(state)

    def _count(self, state: LayerTemperatures) -> int:
        most = self._axis(state)[1] * 1.1
        scale = (0.78 if self.narrow else 0.9) * self.width / most
        x = [place * scale for place, _ in state.points]
        return self._stairs(state, np.array(x))[2]

    def _limits(self, temperatures: list[float]) -> tuple[float, float]:
        step, zero = (20 / 1.8, -160 / 9) if self.unit_system == "us" else (10.0, 0.0)
        low = np.floor((min(temperatures) - zero) / step) * step + zero
        high = np.ceil((max(temperatures) - zero + 0.5) / step) * step + zero
        return float(low), float(high)

    def draw_static(self, state: LayerTemperatures) -> None:
        quantity, most = self._axis(state)
        (box,) = self.columns(1)
        foot = self.key([("temperature", None), ("here", message("key-here"))], box[0], box[3], box[2])
        if state.against == "depth":
            label = message("axis-depth", unit=self.symbol(quantity))
        elif self.unit_system == "si":
            label = message("axis-resistance-unit", unit=self.symbol(quantity))
        else:
            label = message("axis-resistance")
        degrees = message("axis-temperature", unit=self.symbol("temperature"))
        # Room between the words and the axes for the names of the layers.
        self.rows = self.signature(state)[-1]
        head = (self.rows + 0.4) * 1.1 * self.line
        self.words(box[0] + 2, foot - 2 - self.line, degrees)
        self.ax = ax = self.graph((box[0], box[1], box[2], foot - 2 - self.line - head), label)
        self.far = float(self.shown(most, quantity))
        margin = 0.05 * self.far
        ax.set_xlim(-margin, self.far + margin)
        ax.set_ylim(*(float(self.shown(t, "temperature")) for t in self.signature(state)[2]))
        edge: dict[str, Any] = {"color": self.pencil, "linewidth": 1.0 * self.type.thick}
        self.edges = [self.moving(ax.axvline(0, **edge)) for _ in range(len(state.names) + 1)]
        leader: dict[str, Any] = {"color": style.INK, "linewidth": 0.8 * self.type.thick}
        self.leaders = [self.moving(self.put(Line2D([], [], **leader))) for _ in state.names]
        self.tags = [self.moving(self.words(0, 0, "", small=True)) for _ in state.names]
        pointer = self.stroke("here", linestyle=(0, (2, 2)), linewidth=1.3 * self.type.thick)
        self.pointer = self.moving(ax.plot([], [], **pointer)[0])
        self.curve = self.moving(ax.plot([], [], **self.stroke("temperature"))[0])
        self.planes = self.dot(ax, "temperature", "o", 0.6)
        self.here = self.dot(ax, "here", style.look("here").marker, 1.2)

    def draw_moving(self, state: LayerTemperatures) -> None:
        quantity, _ = self._axis(state)
        x = np.array([self.shown(place, quantity) for place, _ in state.points], dtype=float)
        y = np.array([self.shown(t, "temperature") for _, t in state.points])
        drawn = x.copy()
        if state.against == "depth":
            drawn[[0, -1]] += 0.02 * self.far * np.array([-1, 1])
        low, high = self.ax.get_xlim()
        self.curve.set_data([low, *drawn, high], [y[0], *y, y[-1]])
        self.planes.set_data(drawn[1:-1], y[1:-1])
        for edge, place in zip(self.edges, x, strict=True):
            edge.set_xdata([place, place])
        self._name(state, self._across(drawn, low, high))
        spot, warm = drawn[state.plane], y[state.plane]
        self.here.set_data([spot], [warm])
        self.pointer.set_data([low, spot, spot], [warm, warm, self.ax.get_ylim()[0]])

    def _across(self, x, low, high):
        """Places of the axis on the sheet [px]."""
        place = self.ax.get_position()
        return self.width * (place.x0 + place.width * (np.asarray(x) - low) / (high - low))

    def _stairs(self, state, x):
        """Row of each name; those that fit over their layer have row 0."""
        thin, rows = [], {}
        for index, (name, a, b) in enumerate(zip(state.names, x[:-1], x[1:], strict=True)):
            wide = self.extent(language.called(name), small=True) if name else 0.0
            if name and b - a > wide + 6:
                rows[index] = 0
            elif name and name != "film":
                thin.append((index, (a + b) / 2, wide))
        high, near, count = stairs(thin, (x[0] + x[-1]) / 2)
        return {**rows, **high}, near, count

    def _name(self, state, x):
        rows, near, _ = self._stairs(state, x)
        top = self.height * self.ax.get_position().y1
        for index, (tag, leader, name) in enumerate(zip(self.tags, self.leaders, state.names, strict=True)):
            tag.set_visible(index in rows)
            leader.set_visible(rows.get(index, 0) > 0)
            if index not in rows:
                continue
            middle, row = (x[index] + x[index + 1]) / 2, min(rows[index], self.rows - 1)
            y = top + 0.35 * self.line + row * 1.1 * self.line
            shift, side = (0, "center") if row == 0 else (5, "left") if index in near else (-5, "right")
            tag.set(text=language.called(name), x=middle + shift, y=y, horizontalalignment=side)
            leader.set_data([middle, middle], [top + 1, y + 0.62 * self.line])

    def alt(self, state: LayerTemperatures) -> str:
        warm, cold = (self.show(state.points[place][1], "temperature") for place in (0, -1))
        place, temperature = state.points[state.plane]
        quantity = self._axis(state)[0]
        names = [language.called(name) for name in state.names if name]
        layers = language.joined("temperature_through_layers.alt-layers", names)
        return sentences(
            message("alt-graph", against=state.against, warm=warm, cold=cold, layers=layers),
            message(
                "alt-plane",
                place=self.show(place, quantity),
                temperature=self.show(temperature, "temperature"),
            ),
        )

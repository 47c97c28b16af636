"""Two airs on the saturation curve: how much water each has, and its dew point."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from matplotlib.patches import Rectangle

from dryward import air, language
from dryward.pictures.drawing import Box, Entry, LivePicture, ceiling, sentences
from dryward.weather import Air

message = language.beside(__file__)

#: What the two airs are called.
NAMES = ("A", "B")
#: Left end of the temperature axis [degC], 0 degF, and the right ends, 80 and 100 degF.
_COLDEST = -160 / 9
_WARMEST = (80 / 1.8 - 160 / 9, 100 / 1.8 - 160 / 9, 60.0)
#: Tops of the bars of water, in the unit shown.
_MOST = {"us": (80, 160, 320, 1200), "si": (12, 24, 48, 180)}


@dataclass(frozen=True)
class AirsOnCurve:
    """Two airs."""

    first: Air
    second: Air


class Curve(LivePicture[AirsOnCurve]):
    """Vapor pressure over temperature, and a bar of water for each air."""

    size = (860, 400)
    looks = ("vapor pressure", "room air")

    def _airs(self, state: AirsOnCurve) -> tuple[Air, Air]:
        return state.first, state.second

    def _ratios(self, state: AirsOnCurve) -> list[float]:
        return [float(air.humidity_ratio(each.vapor_pressure)) for each in self._airs(state)]

    def _most(self, state: AirsOnCurve) -> float:
        return ceiling(self.shown(max(self._ratios(state)), "humidity ratio"), _MOST[self.unit_system])

    def signature(self, state: AirsOnCurve) -> tuple[float, float]:
        warmest = max(state.first.temperature, state.second.temperature)
        return ceiling(warmest, _WARMEST), self._most(state)

    def draw_static(self, state: AirsOnCurve) -> None:
        warmest, most = self.signature(state)
        left, right = self.columns(0.7, 0.3, rows=(0.64, 0.36))
        first, second = (message("key-air", name=name) for name in NAMES)
        entries: list[Entry] = [("saturation", None), ("vapor pressure", first, "o"), ("room air", second, "s"),
                   ("dew point", message("key-dew-point"))]  # fmt: skip
        foot = self.key(entries, left[0], left[3], left[2])
        self.ax = ax = self.graph(
            (left[0], left[1], left[2], foot - 2),
            message("axis-temperature", unit=self.symbol("temperature")),
            message("axis-vapor-pressure", unit=self.symbol("pressure")),
        )
        low, high = (float(self.shown(t, "temperature")) for t in (_COLDEST, warmest))
        ax.set_xlim(low, high)
        over = np.linspace(_COLDEST, warmest, 200)
        limit = self.shown(air.saturation_vapor_pressure(over), "pressure")
        ax.set_ylim(0, 1.03 * limit[-1])
        ax.plot(self.shown(over, "temperature"), limit, **self.stroke("saturation"))
        # Beyond the curve there is no vapor, only water.
        ax.fill_between(self.shown(over, "temperature"), limit, 10 * limit[-1], facecolor="none", edgecolor=self.faint,
                        hatch="//", linewidth=0)  # fmt: skip
        self.dew = [self.moving(ax.plot([], [], **self.stroke("dew point"))[0]) for _ in NAMES]
        self.drops = [self.dot(ax, "dew point", "v", 0.9) for _ in NAMES]
        self.dots = [self.dot(ax, q, m, 1.05) for q, m in zip(self.looks, ("o", "s"), strict=True)]
        self._bars(right, most)

    def _bars(self, box: Box, most: float) -> None:
        ax = self.graph(box, message("axis-water"), message("axis-of-dry-air", unit=self.symbol("humidity ratio")), "y")
        ax.set_xlim(-0.6, 1.6)
        ax.set_ylim(0, most)
        ax.set_xticks([0, 1], NAMES)
        self.bars = []
        for place, (quantity, hatch) in enumerate(zip(self.looks, ("", "///"), strict=True)):
            color = self.color(quantity)
            bar = Rectangle((place - 0.32, 0), 0.64, 0, facecolor=color, edgecolor=self.background, hatch=hatch)
            self.bars.append(self.patch(ax, bar))

    def draw_moving(self, state: AirsOnCurve) -> None:
        for number, each in enumerate(self._airs(state)):
            x, y = self.shown(each.temperature, "temperature"), self.shown(each.vapor_pressure, "pressure")
            self.dots[number].set_data([x], [y])
            seen = each.vapor_pressure > 0 and each.dew_point > _COLDEST
            for artist in (self.dew[number], self.drops[number]):
                artist.set_visible(seen)
            if seen:
                dew = self.shown(each.dew_point, "temperature")
                self.dew[number].set_data([dew, x], [y, y])
                self.drops[number].set_data([dew], [y])
        for bar, ratio in zip(self.bars, self._ratios(state), strict=True):
            bar.set_height(self.shown(ratio, "humidity ratio"))

    def alt(self, state: AirsOnCurve) -> str:
        parts = []
        for name, each in zip(NAMES, self._airs(state), strict=True):
            dew = self.show(each.dew_point, "temperature") if each.vapor_pressure > 0 else message("alt-no-dew-point")
            parts.append(
                message(
                    "alt-air",
                    name=name,
                    temperature=self.show(each.temperature, "temperature"),
                    humidity=self.show(each.relative_humidity, "relative humidity"),
                    pressure=self.show(each.vapor_pressure, "pressure"),
                    dew_point=dew,
                )
            )
        one, other = self._ratios(state)
        names = NAMES if one >= other else NAMES[::-1]
        more = message("alt-same-water") if one == other else message("alt-more-water", more=names[0], less=names[1])
        return sentences(message("alt-graph"), *parts, more)

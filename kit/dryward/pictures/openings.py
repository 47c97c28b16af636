"""The open area of a vented roof: what is asked for and what is there, at eave and ridge."""

from dataclasses import dataclass

from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle

from dryward import units
from dryward.pictures import style
from dryward.pictures.live import LivePicture
from dryward.pictures.strokes import ceiling, sentences

#: Tops of the bars, in the unit shown.
_MOST = (50, 100, 200, 500, 1000, 2000, 5000, 20_000, 100_000)


@dataclass(frozen=True)
class OpeningsState:
    """Net free area [m2].

    Attributes
    ----------
    eave_needed, eave_there : float
    ridge_needed, ridge_there : float
    """

    eave_needed: float
    eave_there: float
    ridge_needed: float
    ridge_there: float


class Openings(LivePicture):
    """A roof with its two openings, and a pair of bars for each."""

    size = (620, 360)
    projector_size = (1120, 600)

    @property
    def unit(self):
        """Openings are told in square inches, not in square feet."""
        return "in2" if self.unit_system == "us" else "cm2"

    def _area(self, value):
        return units.from_si(value, self.unit)

    def _all(self, state):
        return state.eave_needed, state.eave_there, state.ridge_needed, state.ridge_there

    def signature(self, state):
        return ceiling(self._area(max(self._all(state))), _MOST)

    def draw_static(self, state):
        left, right = self.columns(0.46, 0.54)
        self._roof(left)
        entries = [("limit", "asked for"), ("air flow", "there", "arrow")]
        foot = self.key(entries, right[0], right[3], right[2])
        label = f"net free area, {units.unit(self.unit).symbol}"
        ax = self.graph((right[0], right[1], right[2], foot - 2), "", label, "y")
        ax.set_xlim(-0.6, 1.6)
        ax.set_xticks([0, 1], ["eave", "ridge"])
        ax.set_ylim(0, self.signature(state))
        color = self.color("air flow")
        self.bars = [self.moving(ax.add_patch(Rectangle((x - 0.3, 0), 0.6, 0, facecolor=color))) for x in (0, 1)]
        self.marks = [
            self.moving(ax.plot([], [], **self.stroke("limit", linewidth=3 * self.type.thick))[0]) for _ in (0, 1)
        ]

    def _roof(self, box):
        left, bottom, right, top = box
        left, right = left + 6, right - 6
        wide, gap, eave = right - left, 0.55 * self.line, bottom + 0.28 * (top - bottom)
        ridge = min(top - 1.8 * self.line, eave + 0.52 * wide)
        wall = {"color": style.INK, "linewidth": 2.2 * self.type.thick}
        # One slope: the ceiling below, the covering above, the gap between, open at both ends.
        self.put(Line2D([left + 0.12 * wide, right], [eave, ridge - gap], **wall))
        self.put(Line2D([left + 0.06 * wide, right - 0.1 * wide], [eave + 2 * gap, ridge + gap], **wall))
        self.put(Line2D([left + 0.16 * wide] * 2, [bottom, eave], **wall))
        color = self.color("air flow")
        slope = (ridge - gap - eave) / (0.88 * wide)
        for share in (0.12, 0.42, 0.72):
            x = left + share * wide
            y = eave + slope * (x - left - 0.12 * wide) + 1.1 * gap
            long = 0.16 * wide
            tip = (x + long, y + slope * long)
            head = [
                (tip[0], tip[1]),
                (tip[0] - 0.7 * gap, tip[1] + 0.1 * gap),
                (tip[0] - 0.3 * gap, tip[1] - 0.7 * gap),
            ]
            self.put(
                Line2D([x, tip[0] - 0.4 * gap], [y, tip[1] - 0.3 * gap], color=color, linewidth=2.4 * self.type.thick)
            )
            self.put(Polygon(head, closed=True, facecolor=color, edgecolor=color))
        self.words(left, eave - 1.5 * self.line, "eave", small=True)
        self.words(right, ridge + 0.7 * self.line, "ridge", small=True, ha="right")

    def draw_moving(self, state):
        pairs = ((state.eave_needed, state.eave_there), (state.ridge_needed, state.ridge_there))
        for x, (bar, mark, (needed, there)) in enumerate(zip(self.bars, self.marks, pairs, strict=True)):
            bar.set_height(self._area(there))
            mark.set_data([x - 0.42, x + 0.42], [self._area(needed)] * 2)

    def alt(self, state):
        symbol = units.unit(self.unit).symbol
        needed_low, there_low, needed_high, there_high = (f"{self._area(a):.0f} {symbol}" for a in self._all(state))
        short = [
            name
            for name, needed, there in (
                ("the eave", state.eave_needed, state.eave_there), ("the ridge", state.ridge_needed, state.ridge_there)
            )
            if there < needed
        ]  # fmt: skip
        return sentences(
            f"A vented roof. At the eave {needed_low} of net free area are asked for and {there_low} are there; "
            f"at the ridge {needed_high} are asked for and {there_high} are there.",
            f"Too little at {' and '.join(short)}." if short else "Both have enough.",
        )

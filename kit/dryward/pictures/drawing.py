"""What a picture is drawn with, and how it follows a slider: drawn once, then only what moves.

Everything that stands still (words, frames, hatches) is drawn once per size,
unit system and signature, and kept as pixels.  A new state restores those
pixels and draws the few artists that move, which costs a tenth of a whole
drawing.  Changing numbers belong beside the picture, as text of the page:
letters are the dear part of a drawing.

For a page the two are also to be had apart: the ground, packed once, and a
layer that is clear but for the pixels that differ from it, which is packed and
unpacked in half the time of the whole.
"""

import io
import struct
import zlib
from collections import OrderedDict
from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from typing import Any, Generic, Literal, TypeAlias, TypeVar

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.axis import Axis
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.lines import Line2D
from matplotlib.patches import Patch, Polygon, Rectangle
from matplotlib.text import Text as FigureText
from matplotlib.ticker import FuncFormatter, MaxNLocator, NullFormatter, ScalarFormatter
from matplotlib.transforms import Affine2D
from numpy.typing import ArrayLike, NDArray
from PIL import Image

from dryward import units
from dryward.checks import Floats
from dryward.language import figures, message
from dryward.pictures import style
from dryward.units import written


class _Drawn(Figure):
    """A figure that a notebook shows by itself, whether or not pyplot was loaded."""

    def _repr_png_(self) -> bytes:
        out = io.BytesIO()
        self.savefig(out, format="png")
        return out.getvalue()


#: A number, or an array of them.
Numbers: TypeAlias = float | Floats
#: Left, bottom, right, top [px].
Box: TypeAlias = tuple[float, float, float, float]
#: Of a key: quantity, words (its label where None), and a marker where the sample is that point, "arrow" or "bar".
Entry: TypeAlias = tuple[str, str | None] | tuple[str, str | None, str]
#: Which lines of a grid a graph has.
Grid: TypeAlias = Literal["both", "x", "y", ""]
Made = TypeVar("Made", bound=Artist)

#: Pixels per inch at scale 1, so that 9 pt are 12 px of a page.
DPI = 96


class _Ticks(ScalarFormatter):
    """Numbers along an axis, with the reader's decimal mark; the minus sign is the printer's already."""

    def __call__(self, x: float, pos: int | None = None) -> str:
        return figures(super().__call__(x, pos))


class Drawing:
    """A figure with its sizes and the words that all pictures use."""

    #: Width and height [px].
    size: tuple[int, int] = (860, 400)
    #: At the right of the controls on a screen of 1920 x 1080, with the sentence under it.
    projector_size: tuple[int, int] = (1440, 690)
    #: Across a phone, with a slider and the sentence under it; parts that stand side by side stand one a row.
    narrow_size: tuple[int, int] = (366, 420)

    def __init__(
        self,
        unit_system: str = "us",
        projector: bool = False,
        paper: bool = False,
        size: tuple[int, int] | None = None,
        scale: float = 1.0,
        narrow: bool = False,
    ) -> None:
        self.unit_system, self.paper, self.narrow = unit_system, paper, narrow
        self.projector = projector and not narrow
        usual = self.narrow_size if narrow else self.projector_size if self.projector else self.size
        self.width, self.height = size or usual
        self.type = (
            style.NARROW if narrow else style.PROJECTOR if self.projector else style.PRINTED if paper else style.NORMAL
        )
        self.background = "#ffffff" if paper else style.PAPER
        self.pencil = "#8c8c8c" if paper else style.PENCIL
        self.faint = "#dddddd" if paper else style.FAINT
        self.quiet = "#555555" if paper else style.QUIET
        self.figure = _Drawn((self.width / DPI, self.height / DPI), dpi=DPI * scale, facecolor=self.background)
        self.canvas = FigureCanvasAgg(self.figure)
        #: px from the lower left corner to the screen, at any resolution.
        self.px = Affine2D().scale(1 / DPI) + self.figure.dpi_scale_trans
        self.scale = scale
        self._widths: dict[tuple[str, bool, str], float] = {}

    def color(self, quantity: str) -> str:
        """Of a quantity, gray on paper."""
        this = style.look(quantity)
        return this.gray if self.paper else this.color

    def stroke(self, quantity: str, **changes: Any) -> dict[str, Any]:
        """Keywords of a line of a quantity."""
        this = style.look(quantity)
        keys = {"color": self.color(quantity), "linestyle": this.line, "linewidth": this.width * self.type.thick}
        return {**keys, "solid_capstyle": "round", **changes}

    def shown(self, value: Numbers, quantity: str) -> Any:
        """A number or an array of SI in the unit it is shown in."""
        return units.from_si(value, units.shown_unit(quantity, self.unit_system).name)

    def symbol(self, quantity: str) -> str:
        """The unit a quantity is shown in."""
        return units.shown_unit(quantity, self.unit_system).symbol

    def show(self, value: float, quantity: str, digits: int | None = None) -> str:
        """A number of SI with its unit, in words."""
        return units.show(value, quantity, self.unit_system, digits)

    @property
    def line(self) -> float:
        """Height of a line of words [px]."""
        return self.type.words * DPI / 72 * 1.32

    def font(self, small: bool = False, weight: str = "normal") -> FontProperties:
        """The type of words."""
        return FontProperties(family=style.FAMILY, size=self.type.small if small else self.type.words, weight=weight)

    def extent(self, words: str, small: bool = False, weight: str = "normal") -> float:
        """Width of words [px]."""
        asked = words, small, weight
        if asked not in self._widths:
            renderer = self.canvas.get_renderer()
            wide = renderer.get_text_width_height_descent(words, self.font(small, weight), False)[0]
            self._widths[asked] = wide / self.scale
        return self._widths[asked]

    def fitted(self, words: str, room: float, small: bool = False) -> str:
        """The words, cut to a width [px] if they must be."""
        if self.extent(words, small) <= room:
            return words
        while words and self.extent(words + "…", small) > room:
            words = words[:-1]
        return words.rstrip() + "…" if words else ""

    def folded(self, words: str, room: float, small: bool = False, most: int = 2) -> list[str]:
        """The words in lines of a width [px], broken between words, and cut only where they need more lines."""
        lines = [""]
        for word in words.split(" "):
            longer = f"{lines[-1]} {word}".lstrip()
            if not lines[-1] or len(lines) == most or self.extent(longer, small) <= room:
                lines[-1] = longer
            else:
                lines.append(word)
        return [self.fitted(each, room, small) for each in lines]

    def words(
        self,
        x: float,
        y: float,
        text: str,
        small: bool = False,
        weight: str = "normal",
        color: str = style.INK,
        **keys: Any,
    ) -> FigureText:
        """Words at a place [px]; left and on the base line unless told."""
        return self.figure.text(
            x, y, text, transform=self.px, color=color, fontproperties=self.font(small, weight), **keys
        )

    def place(self, box: Box) -> Axes:
        """Axes in a box of px (left, bottom, right, top), without frame or ticks."""
        left, bottom, right, top = box
        ax = self.figure.add_axes(
            (left / self.width, bottom / self.height, (right - left) / self.width, (top - bottom) / self.height)
        )
        ax.set_facecolor("none")
        return ax

    def columns(self, *shares: float, gap: float = 1.0, rows: Sequence[float] = ()) -> list[Box]:
        """Boxes of px side by side, by their shares of the width.

        On a narrow screen they stand one a row, by `rows`, their shares of the height.
        """
        edge, space = 0.5 * self.type.words, gap * self.type.words
        if self.narrow:
            return self._stacked(rows or shares)
        room = self.width - 2 * edge - space * (len(shares) - 1)
        boxes, left = [], edge
        for share in shares:
            right = left + room * share / sum(shares)
            boxes.append((left, edge * 0.6, right, self.height - edge))
            left = right + space
        return boxes

    def _stacked(self, shares: Sequence[float]) -> list[Box]:
        """Boxes of px one below the other, by their shares of the height."""
        space, top = 0.6 * self.type.words, self.height - 2.0
        room = top - 2.0 - space * (len(shares) - 1)
        boxes = []
        for share in shares:
            bottom = top - room * share / sum(shares)
            boxes.append((3.0, bottom, self.width - 3.0, top))
            top = bottom - space
        return boxes

    def title(self, box: Box, words: str) -> Box:
        """Words over a box, in two lines where they need them; gives the box that is left."""
        left, bottom, right, top = box
        for line in self.folded(words, (right - left) / 1.12):  # bold is wider
            top -= self.line
            self.words(left + 2, top, line, weight="bold")
        return left, bottom, right, top - 0.35 * self.line

    def put(self, artist: Made) -> Made:
        """An artist in px on the figure; gives it back."""
        artist.set_transform(self.px)
        self.figure.add_artist(artist)
        return artist

    def logarithmic(self, axis: Axis, low: float, high: float) -> None:
        """A log scale with plain numbers on one axis of a graph."""
        ax = axis.axes
        (ax.set_xscale if axis is ax.xaxis else ax.set_yscale)("log")
        (ax.set_xlim if axis is ax.xaxis else ax.set_ylim)(low, high)
        axis.set_major_formatter(FuncFormatter(lambda value, _: written(value, "g")))
        axis.set_minor_formatter(NullFormatter())

    def graph(
        self,
        box: Box,
        xlabel: str = "",
        ylabel: str = "",
        grid: Grid = "both",
        digits: str = "00000",
    ) -> Axes:
        """Axes of a graph in a box of px that also holds its numbers and labels.

        The y label stands upright over the axis, where it is read without
        turning the head.
        """
        left, bottom, right, top = box
        line = self.line
        a, b = left + self.extent(digits, small=True) + 10, right - 0.7 * line
        middle = (a + b) / 2
        across = self.folded(xlabel, 2 * min(middle - left, right - middle)) if xlabel else []
        upward = self.folded(ylabel, right - left) if ylabel else []
        inner = (
            a,
            bottom + (1.25 + 1.1 * len(across)) * line,
            b,
            top - (0.75 + len(upward) if upward else 0.6) * line,
        )
        ax = self.place(inner)
        for side in ("top", "right"):
            ax.spines[side].set_visible(False)
        for side in ("left", "bottom"):
            ax.spines[side].set(color=style.INK, linewidth=1.0 * self.type.thick)
        ax.tick_params(
            length=3 * self.type.thick,
            width=0.8 * self.type.thick,
            color=style.INK,
            labelcolor=style.INK,
            pad=2 * self.type.thick,
        )
        ax.tick_params(labelsize=self.type.small, labelfontfamily=style.FAMILY[0])
        if grid:
            ax.grid(axis=grid, color=self.faint, linewidth=0.8 * self.type.thick)
            ax.set_axisbelow(True)
        wide = (inner[2] - inner[0]) / (1.7 * self.extent("0000", small=True))
        high = (inner[3] - inner[1]) / (1.7 * line)
        for axis, room in ((ax.xaxis, wide), (ax.yaxis, high)):
            axis.set_major_formatter(_Ticks())
            axis.set_major_locator(MaxNLocator(max(2, int(room)), steps=[1, 2, 2.5, 5, 10]))
        for row, words in enumerate(reversed(across)):
            self.words(middle, bottom + (0.35 + 1.1 * row) * line, words, ha="center")
        for row, words in enumerate(upward):
            self.words(left + 2, top - (1 + row) * line, words)
        return ax

    def key(self, entries: Sequence[Entry], left: float, top: float, right: float) -> float:
        """A key: samples with words, in as many rows as it takes; gives its lower edge [px]."""
        places, rows = self._set([words or style.label(quantity) for quantity, words, *_ in entries], left, right)
        for (quantity, _, *marker), (lines, x, row) in zip(entries, places, strict=True):
            y = self._told(lines, x, top - row * self.line, 3.0)
            self._sample(quantity, x, y + 0.34 * self.line, 2.2 * self.type.words, *marker)
        return top - rows * self.line

    def line_key(
        self, looks: Sequence[dict[str, Any]], names: Sequence[str], left: float, top: float, right: float
    ) -> float:
        """A key of lines that differ by more than their quantity, by keywords; gives its edge [px]."""
        places, rows = self._set(names, left, right)
        for look, (lines, x, row) in zip(looks, places, strict=True):
            y = self._told(lines, x, top - row * self.line, 3.0)
            self.put(Line2D([x, x + 2.4 * self.type.words], [y + 0.34 * self.line] * 2, **look))
        return top - rows * self.line

    def key_height(self, entries: Sequence[Entry], left: float, right: float) -> float:
        """Height a key will take [px]."""
        return (
            self._set([words or style.label(quantity) for quantity, words, *_ in entries], left, right)[1] * self.line
        )

    def _told(self, lines: Sequence[str], x: float, y: float, indent: float) -> float:
        """The words of an entry, right of its sample; gives the height of the first line [px]."""
        for number, line in enumerate(lines):
            self.words(x + indent * self.type.words, y + (0.1 - number) * self.line, line, small=True)
        return y

    def _set(self, names: Sequence[str], left: float, right: float) -> tuple[list[tuple[list[str], float, int]], int]:
        """The lines of each entry of a key, its x [px] and its first row, from 1; and how many rows there are."""
        x, row, found = left, 1, []
        sample = 3.0 * self.type.words
        for name in names:
            wide = sample + self.extent(name, small=True)
            if x > left and x + wide > right:
                x, row = left, row + 1
            lines = self.folded(name, right - x - sample, small=True)
            found.append((lines, x, row))
            row += len(lines) - 1
            x += wide + 1.2 * self.type.words
        return found, row

    def _sample(self, quantity: str, x: float, y: float, long: float, marker: str = "") -> None:
        this, color = style.look(quantity), self.color(quantity)
        high = 0.42 * self.line
        made: Artist
        if this.shape == "patch":
            made = Rectangle((x, y - high), long, 2 * high, facecolor="none", edgecolor=color, hatch=this.hatch)
        elif marker == "bar":
            place = (x + 0.3 * long, y - 1.4 * high)
            made = Rectangle(place, 0.4 * long, 2.8 * high, facecolor=color, edgecolor="none")
        elif this.shape == "arrow" or marker == "arrow":
            made = Polygon(arrow(x, y, x + long, high * 1.1), closed=True, facecolor=color, edgecolor="none")
        elif this.shape == "line" and marker:
            spots: dict[str, Any] = {"marker": marker, "markevery": [1], "markersize": self.type.words * 0.6}
            made = Line2D([x, x + long / 2, x + long], [y] * 3, **spots, **self.stroke(quantity))
        elif this.shape == "mark" or marker:
            size = self.type.words * 0.75
            made = Line2D(
                [x + long / 2], [y], marker=marker or this.marker, color=color, markersize=size, linestyle="none"
            )
        elif this.shape == "edge":
            made = Line2D([x + long / 2] * 2, [y - high, y + high], **self.stroke(quantity))
        else:
            made = Line2D([x, x + long], [y, y], **self.stroke(quantity))
        made.set_transform(self.px)
        self.figure.add_artist(made)


def sentences(*parts: str) -> str:
    """Sentences as one text; a unit that ends in a dot needs no second one.

    Examples
    --------
    >>> sentences("It is 2 in..", "", "It is dry.")
    'It is 2 in. It is dry.'
    """
    return " ".join(part.replace("..", ".") for part in parts if part)


def arrow(start: float, y: float, end: float, width: float, head: float | None = None) -> Floats:
    """Corners of a level arrow from `start` to `end`, as wide as `width`."""
    head = 1.6 * width if head is None else head
    along = min(abs(end - start), 0.9 * head)
    neck = end - np.sign(end - start) * along
    half = width / 2
    return np.array(
        [(start, y - half), (neck, y - half), (neck, y - head / 2), (end, y),
         (neck, y + head / 2), (neck, y + half), (start, y + half)]
    )  # fmt: skip


def thinned(x: ArrayLike, y: ArrayLike, columns: int) -> tuple[Floats, Floats]:
    """A long line as its lowest and highest value per pixel column, in order; a short one as it is.

    Examples
    --------
    >>> x, y = thinned(np.arange(10.0), np.array([0, 9, 1, 2, 1, 0, 1, 2, 8, 1.0]), 2)
    >>> y
    array([0., 9., 0., 8.])
    """
    x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    if len(x) <= 2 * columns:
        return x, y
    each = -(-len(x) // columns)
    rows = -(-len(x) // each)
    padded = np.full(rows * each, np.nan)
    padded[: len(y)] = y
    table = padded.reshape(rows, each)
    start = np.arange(rows) * each
    # A column without any number keeps its first point, so that a gap stays one.
    low = start + np.where(np.isnan(table), np.inf, table).argmin(axis=1)
    high = start + np.where(np.isnan(table), -np.inf, table).argmax(axis=1)
    kept = np.unique(np.concatenate([low, high]))
    return x[kept], y[kept]


def ceiling(value: float, steps: Sequence[float]) -> float:
    """The first step that is not below the value, for axes that seldom change.

    Examples
    --------
    >>> ceiling(2600, (1500, 3000, 6000))
    3000
    """
    for step in steps:
        if value <= step:
            return step
    return steps[-1]


def stairs(
    items: Sequence[tuple[int, float, float]], middle: float, gap: float = 24.0, most: int = 5
) -> tuple[dict[int, int], set[int], int]:
    """Rows for names that have leaders: two staircases, one from each side.

    The names left of the middle start at their leader and run right, the
    others end at theirs; each stands higher than its neighbor nearer to the
    middle, so that no leader crosses a name of its own side.  Two names
    share a row only where both fit whole.

    `items` are (key, x, width) from left to right [px].  Given are the row of
    each key, from 1 upward; the keys whose names run right; and how many rows
    are taken, row 0 with them.  More than `most` names on a side get none.

    Examples
    --------
    >>> rows, near, count = stairs([("a", 10, 30), ("b", 20, 30), ("z", 90, 20)], 50)
    >>> rows, sorted(near), count
    ({'b': 1, 'a': 2, 'z': 2}, ['a', 'b'], 3)
    """
    at, wide = {key: x for key, x, _ in items}, {key: width for key, _, width in items}
    near = [key for key, x, _ in items if x <= middle][:most]
    far = [key for key, x, _ in items if x > middle][::-1][:most]
    left, row, rows = set(near), 1, {}
    while near or far:
        if near and far and wide[near[-1]] + wide[far[-1]] + gap > at[far[-1]] - at[near[-1]]:
            rows[(near if len(near) >= len(far) else far).pop()] = row
        else:
            for group in (near, far):
                if group:
                    rows[group.pop()] = row
        row += 1
    return rows, left, row


def apart(places: Sequence[float], room: float) -> list[float]:
    """Heights for names beside their lines, which rise: each at its own, pushed up and down where closer than `room`.

    Examples
    --------
    >>> apart([10.0, 14.0, 40.0], 8.0)
    [8.0, 16.0, 40.0]
    """
    groups: list[list[float]] = []  # of names that stand shoulder to shoulder: (where they would be, how many)
    for place in places:
        wanted = [place]
        while groups and _middle(wanted) - _middle(groups[-1]) < room * (len(wanted) + len(groups[-1])) / 2:
            wanted = groups.pop() + wanted
        groups.append(wanted)
    return [
        _middle(wanted) + room * (number - (len(wanted) - 1) / 2) for wanted in groups for number in range(len(wanted))
    ]


def _middle(places: Sequence[float]) -> float:
    return sum(places) / len(places)


def month_letters(first: int = 0, count: int = 12) -> list[str]:
    """First letters of months under an axis, from the first one, 0 to 11.

    Examples
    --------
    >>> "".join(month_letters(6))
    'JASONDJFMAMJ'
    """
    return [message("pictures.month-letter", number=(first + k) % 12 + 1) for k in range(count)]


def percent(value: float, digits: int | None = None) -> str:
    """A number of percent as it is shown; whole where it is, otherwise with one digit behind the point.

    Examples
    --------
    >>> percent(28.0), percent(16.5), percent(14.0, 1)
    ('28 %', '16.5 %', '14.0 %')
    """
    if digits is None:
        digits = 0 if float(value).is_integer() else 1
    return units.show(value / 100, "relative humidity", "si", digits)


def letters_every(picture: Drawing, ax: Axes, count: int) -> int:
    """1 where the letters of months have room on an axis, otherwise 3: a letter a quarter."""
    pitch = picture.width * ax.get_position().width / count
    return 1 if pitch > 1.3 * picture.extent("M", small=True) else 3


Shape = TypeVar("Shape", bound=Patch)
#: What a picture is drawn of.
State = TypeVar("State")

#: What moves is drawn over all that stands.
_ABOVE = 100
#: A field of color that moves, over all that stands and under the other artists that move.
UNDER = 99


def _as_numbers(pixels: Any) -> NDArray[np.uint32]:
    """Each pixel as one number, height x width x 1; compared so four times as fast."""
    return np.asarray(memoryview(pixels)).view(np.uint32)


class LivePicture(Drawing, Generic[State]):
    """Base of all pictures.

    Subclasses write `draw_static` (everything, moving artists too, each
    passed through `moving`), `draw_moving` (new data into those artists),
    `alt`, and, where the standing part depends on the state, `signature`.
    """

    _movers: list[Artist]  # those of the picture that was begun last
    _drawn: Hashable = None
    _still: Any = None  # pixels, of a kind the canvas keeps to itself
    _ground: bytes | None = None

    # --- what a subclass says -------------------------------------------

    def signature(self, state: State) -> Hashable:
        """What the standing part depends on; hashable."""
        return ()

    def draw_static(self, state: State) -> None:
        """Draw all that stands, and make the artists that move."""
        raise NotImplementedError

    def draw_moving(self, state: State) -> None:
        """Put the state into the artists that move."""
        raise NotImplementedError

    def alt(self, state: State) -> str:
        """What the picture shows now, in words."""
        raise NotImplementedError

    # --- drawing ----------------------------------------------------------

    def render(self, state: State) -> bytes:
        """The picture of a state, as lossless WebP."""
        self.paint(state)
        return self._packed()

    def layers(self, state: State) -> tuple[bytes, bytes]:
        """The picture of a state in two parts of one size, the second to be laid over the first.

        The ground is all that stands, as lossless WebP: the same object while it stands.  The rest is a PNG: the
        picture where it is another than the ground, clear elsewhere.
        """
        self._stand(state)
        self.canvas.restore_region(self._still)
        if self._ground is None:
            self._ground = self._packed()
        self._move(state)
        # Not drawn on a clear canvas, where edges that lie over each other come out a little different:
        # these pixels are the whole picture's own.
        bare, drawn = _as_numbers(self._still), _as_numbers(self.canvas.buffer_rgba())
        moving = drawn * (drawn != bare)
        return self._ground, png(moving.view(np.uint8))

    def paint(self, state: State) -> None:
        """Draw a state into the canvas: the kept pixels, and over them what moves."""
        self._stand(state)
        self.canvas.restore_region(self._still)
        self._move(state)

    def _stand(self, state: State) -> None:
        """Draw all that stands, unless it is kept."""
        signature = self.signature(state)
        if self._still is None or signature != self._drawn:
            self._begin(state)
            self.canvas.draw()
            self._still, self._drawn = self.canvas.copy_from_bbox(self.figure.bbox), signature

    def _move(self, state: State) -> None:
        """Draw what moves over what is in the canvas."""
        self.draw_moving(state)
        renderer = self.canvas.get_renderer()
        for artist in self._movers:
            if artist.get_visible():
                artist.draw(renderer)

    def _packed(self) -> bytes:
        """The canvas as a lossless WebP."""
        sheet = Image.frombuffer("RGBA", self.canvas.get_width_height(), self.canvas.buffer_rgba(), "raw", "RGBA", 0, 1)
        out = io.BytesIO()
        sheet.save(out, "WEBP", lossless=True, quality=0, method=0)
        return out.getvalue()

    def redraw(self, state: State) -> None:
        """Draw a state whole, nothing kept; for paper and for proof."""
        self._begin(state)
        self._still = None
        self.draw_moving(state)
        for artist in self._movers:
            artist.set_animated(False)
        self.canvas.draw()

    def forget(self) -> None:
        """Drop the kept pixels, so that the next picture is drawn whole."""
        self._still = None

    def pixels(self) -> NDArray[np.uint8]:
        """A copy of the canvas, height x width x RGBA."""
        return np.array(self.canvas.buffer_rgba())

    def _begin(self, state: State) -> None:
        self.figure.clear()
        self._movers, self._ground = [], None
        self.draw_static(state)

    def moving(self, artist: Made) -> Made:
        """Mark an artist as one that moves, and give it back."""
        artist.set_animated(True)
        artist.set_zorder(_ABOVE + len(self._movers))
        self._movers.append(artist)
        return artist

    def patch(self, ax: Axes, made: Shape) -> Shape:
        """A filled shape on a graph that moves; gives it back."""
        ax.add_patch(made)
        return self.moving(made)

    def dot(self, ax: Axes, quantity: str, marker: str = "o", size: float = 0.85, **keys: Any) -> Line2D:
        """A point on a graph that moves."""
        color = self.color(quantity)
        keys = {"markeredgecolor": self.background, "markeredgewidth": 1.2 * self.type.thick, "clip_on": False, **keys}
        made = ax.plot([], [], linestyle="none", marker=marker, color=color, markersize=size * self.type.words, **keys)
        return self.moving(made[0])


#: Pictures in the cache at most: each holds some 4 MB.
CACHED = 5


@dataclass(frozen=True, kw_only=True)
class Judged:
    """Base of what is drawn on a page that judges."""

    #: The state that the page gives it; empty where it gives none.
    verdict: str = ""


def described(picture: LivePicture[State], state: State) -> str:
    """What a picture shows, in words, and the state that the page gives it."""
    said = picture.alt(state)
    given = state.verdict if isinstance(state, Judged) else ""
    return message("pictures.verdict", said=said, state=message("verdict.state", state=given)) if given else said


class PictureCache(Generic[State]):
    """Draws states of one kind, each with a picture whose standing part fits already, if there is one."""

    def __init__(
        self, kind: type[LivePicture[State]], unit_system: str = "us", projector: bool = False, narrow: bool = False
    ) -> None:
        # A phone has two or three of its own pixels to one of the page.
        self._make = lambda: kind(unit_system, projector, scale=2.0 if narrow else 1.0, narrow=narrow)
        self._first = self._make()
        self._drawn: OrderedDict[Hashable, LivePicture[State]] = OrderedDict()
        self._last: tuple[State, LivePicture[State]] | None = None
        self.width, self.height = self._first.width, self._first.height

    def _for(self, state: State) -> LivePicture[State]:
        if self._last is not None and self._last[0] is state:  # its layers were asked for, and now its words
            return self._last[1]
        look = self._first.signature(state)
        picture = self._drawn.pop(look, None)
        if picture is None:
            if not self._drawn:
                picture = self._first
            elif len(self._drawn) < CACHED:
                picture = self._make()
            else:
                picture = self._drawn.popitem(last=False)[1]
        self._drawn[look] = picture
        self._last = state, picture
        return picture

    def render(self, state: State) -> bytes:
        """The picture of a state, as of `LivePicture.render`."""
        return self._for(state).render(state)

    def layers(self, state: State) -> tuple[bytes, bytes]:
        """The picture in two parts, as of `LivePicture.layers`."""
        return self._for(state).layers(state)

    def alt(self, state: State) -> str:
        """What the picture shows, as of `LivePicture.alt`; after `render` or `layers`."""
        return described(self._for(state), state)


_BEGIN = b"\x89PNG\r\n\x1a\n"
#: Eight bits a channel, RGBA; deflate; filter of each row in its first byte; not interlaced.
_FORM = (8, 6, 0, 0, 0)
#: Zlib's quickest level.
_QUICK = 1


def png(pixels: NDArray[np.uint8]) -> bytes:
    """A picture (height x width x RGBA, colors not multiplied by the opacity) as a PNG, nothing lost.

    References
    ----------
    Portable Network Graphics (PNG) Specification, W3C, second edition 2003,
    clauses 5.2, 5.3, 11.2 and 9.2 (filter type 0, none); from memory.

    Examples
    --------
    >>> import numpy as np
    >>> png(np.zeros((2, 3, 4), np.uint8))[1:4]
    b'PNG'
    """
    pixels = np.asarray(pixels)
    height, width, _ = pixels.shape
    rows = np.zeros((height, 1 + 4 * width), np.uint8)
    rows[:, 1:] = pixels.reshape(height, -1)
    head = struct.pack(">II5B", width, height, *_FORM)
    return _BEGIN + _chunk(b"IHDR", head) + _chunk(b"IDAT", zlib.compress(rows.data, _QUICK)) + _chunk(b"IEND", b"")


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

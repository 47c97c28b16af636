"""The sheet a picture is drawn on: sizes, type, words, keys and graphs."""

import io

from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.lines import Line2D
from matplotlib.patches import Polygon, Rectangle
from matplotlib.ticker import FuncFormatter, MaxNLocator, NullFormatter
from matplotlib.transforms import Affine2D

from dryward import units
from dryward.pictures import style
from dryward.pictures.strokes import arrow


class _Drawn(Figure):
    """A figure that a notebook shows by itself, whether or not pyplot was loaded."""

    def _repr_png_(self):
        out = io.BytesIO()
        self.savefig(out, format="png")
        return out.getvalue()


#: Pixels per inch at scale 1, so that 20 pt are 20 pt on a screen.
DPI = 96


class Sheet:
    """A figure with its sizes and the words that all pictures use.

    Parameters
    ----------
    unit_system : {"us", "si"}
    projector : bool
        Letters of 20 pt and thick lines, on a larger sheet.
    paper : bool
        Gray, for black-and-white print.
    size : (int, int), optional
        Width and height [px]; otherwise the usual size of the picture.
    scale : float
        Device pixels per px.
    """

    size = (860, 400)
    projector_size = (1180, 620)

    def __init__(self, unit_system="us", projector=False, paper=False, size=None, scale=1.0):
        self.unit_system, self.projector, self.paper = unit_system, projector, paper
        self.width, self.height = size or (self.projector_size if projector else self.size)
        self.type = style.PROJECTOR if projector else style.PRINTED if paper else style.NORMAL
        self.background = "#ffffff" if paper else style.PAPER
        self.pencil = "#8c8c8c" if paper else style.PENCIL
        self.faint = "#dddddd" if paper else style.FAINT
        self.quiet = "#555555" if paper else style.QUIET
        self.figure = _Drawn((self.width / DPI, self.height / DPI), dpi=DPI * scale, facecolor=self.background)
        self.canvas = FigureCanvasAgg(self.figure)
        #: px from the lower left corner to the screen, at any resolution.
        self.px = Affine2D().scale(1 / DPI) + self.figure.dpi_scale_trans
        self.scale = scale
        self._widths = {}

    def color(self, quantity):
        """Of a quantity, gray on paper."""
        this = style.look(quantity)
        return this.gray if self.paper else this.color

    def stroke(self, quantity, **changes):
        """Keywords of a line of a quantity."""
        this = style.look(quantity)
        keys = {"color": self.color(quantity), "linestyle": this.line, "linewidth": this.width * self.type.thick}
        return {**keys, "solid_capstyle": "round", **changes}

    def shown(self, value, quantity):
        """A number or an array of SI in the unit it is shown in."""
        return units.from_si(value, units.shown_unit(quantity, self.unit_system).name)

    def symbol(self, quantity):
        """The unit a quantity is shown in."""
        return units.shown_unit(quantity, self.unit_system).symbol

    def show(self, value, quantity, digits=None):
        """A number of SI with its unit, in words."""
        return units.show(value, quantity, self.unit_system, digits)

    @property
    def line(self):
        """Height of a line of words [px]."""
        return self.type.words * DPI / 72 * 1.32

    def font(self, small=False, weight="normal"):
        """The type of words."""
        return FontProperties(family=style.FAMILY, size=self.type.small if small else self.type.words, weight=weight)

    def extent(self, words, small=False, weight="normal"):
        """Width of words [px]."""
        asked = words, small, weight
        if asked not in self._widths:
            renderer = self.canvas.get_renderer()
            wide = renderer.get_text_width_height_descent(words, self.font(small, weight), False)[0]
            self._widths[asked] = wide / self.scale
        return self._widths[asked]

    def fitted(self, words, room, small=False):
        """The words, cut to a width [px] if they must be."""
        if self.extent(words, small) <= room:
            return words
        while words and self.extent(words + "…", small) > room:
            words = words[:-1]
        return words.rstrip() + "…" if words else ""

    def words(self, x, y, text, small=False, weight="normal", color=style.INK, **keys):
        """Words at a place [px]; left and on the base line unless told."""
        return self.figure.text(
            x, y, text, transform=self.px, color=color, fontproperties=self.font(small, weight), **keys
        )

    def place(self, box):
        """Axes in a box of px (left, bottom, right, top), without frame or ticks."""
        left, bottom, right, top = box
        ax = self.figure.add_axes(
            (left / self.width, bottom / self.height, (right - left) / self.width, (top - bottom) / self.height)
        )
        ax.set_facecolor("none")
        return ax

    def columns(self, *shares, gap=1.0):
        """Boxes of px side by side, by their shares of the width."""
        edge, space = 0.5 * self.type.words, gap * self.type.words
        room = self.width - 2 * edge - space * (len(shares) - 1)
        boxes, left = [], edge
        for share in shares:
            right = left + room * share / sum(shares)
            boxes.append((left, edge * 0.6, right, self.height - edge))
            left = right + space
        return boxes

    def title(self, box, words):
        """A line of words over a box; gives the box that is left."""
        left, bottom, right, top = box
        self.words(left + 2, top - self.line, self.fitted(words, right - left), weight="bold")
        return left, bottom, right, top - 1.35 * self.line

    def put(self, artist):
        """An artist in px on the figure; gives it back."""
        artist.set_transform(self.px)
        self.figure.add_artist(artist)
        return artist

    def logarithmic(self, axis, low, high):
        """A log scale with plain numbers on one axis of a graph."""
        ax = axis.axes
        (ax.set_xscale if axis is ax.xaxis else ax.set_yscale)("log")
        (ax.set_xlim if axis is ax.xaxis else ax.set_ylim)(low, high)
        axis.set_major_formatter(FuncFormatter(lambda value, _: f"{value:g}"))
        axis.set_minor_formatter(NullFormatter())

    def graph(self, box, xlabel="", ylabel="", grid="both", digits="00000"):
        """Axes of a graph in a box of px that also holds its numbers and labels.

        The y label stands upright over the axis, where it is read without
        turning the head.
        """
        left, bottom, right, top = box
        line = self.line
        inner = (
            left + self.extent(digits, small=True) + 10,
            bottom + (2.35 if xlabel else 1.25) * line,
            right - 0.7 * line,
            top - (1.75 if ylabel else 0.6) * line,
        )
        ax = self.place(inner)
        for side in ("top", "right"):
            ax.spines[side].set_visible(False)
        for side in ("left", "bottom"):
            ax.spines[side].set(color=style.INK, linewidth=1.0 * self.type.thick)
        ax.tick_params(
            length=3 * self.type.thick, width=0.8 * self.type.thick, color=style.INK, labelcolor=style.INK, pad=2
        )
        ax.tick_params(labelsize=self.type.small, labelfontfamily=style.FAMILY[0])
        if grid:
            ax.grid(axis=grid, color=self.faint, linewidth=0.8 * self.type.thick)
            ax.set_axisbelow(True)
        across = (inner[2] - inner[0]) / (1.7 * self.extent("0000", small=True))
        upward = (inner[3] - inner[1]) / (1.7 * line)
        for axis, room in ((ax.xaxis, across), (ax.yaxis, upward)):
            axis.set_major_locator(MaxNLocator(max(2, int(room)), steps=[1, 2, 2.5, 5, 10]))
        if xlabel:
            middle = (inner[0] + inner[2]) / 2
            xlabel = self.fitted(xlabel, 2 * min(middle - left, right - middle))
            self.words(middle, bottom + 0.35 * line, xlabel, ha="center")
        if ylabel:
            self.words(left + 2, top - line, self.fitted(ylabel, right - left), weight="normal")
        return ax

    def key(self, entries, left, top, right):
        """A key: samples with words, in as many rows as it takes.

        Parameters
        ----------
        entries : sequence of (quantity, words or None) or (quantity, words, marker)
            With a marker the sample is that point (or ``"arrow"``) instead.
        left, top, right : float
            Room for it [px].

        Returns
        -------
        float
            The lower edge [px].
        """
        for (quantity, words, *marker), x, row in self._set(entries, left, right):
            y = top - row * self.line
            self._sample(quantity, x, y + 0.34 * self.line, 2.2 * self.type.words, *marker)
            self.words(x + 3.0 * self.type.words, y + 0.1 * self.line, words, small=True)
        return top - row * self.line

    def line_key(self, looks, names, left, top, right):
        """A key of lines that differ by more than their quantity.

        Parameters
        ----------
        looks : sequence of dict
            Keywords of each line.
        names : sequence of str
        left, top, right : float
            Room for it [px].

        Returns
        -------
        float
            The lower edge [px].
        """
        x, y = left, top - self.line
        for look, name in zip(looks, names, strict=True):
            wide = 3.0 * self.type.words + self.extent(name, small=True)
            if x > left and x + wide > right:
                x, y = left, y - self.line
            self.put(Line2D([x, x + 2.4 * self.type.words], [y + 0.34 * self.line] * 2, **look))
            fitted = self.fitted(name, right - x - 3.0 * self.type.words, small=True)
            self.words(x + 3.0 * self.type.words, y + 0.1 * self.line, fitted, small=True)
            x += wide + 1.2 * self.type.words
        return y

    def key_height(self, entries, left, right):
        """Height a key will take [px]."""
        return self._set(entries, left, right)[-1][-1] * self.line

    def _set(self, entries, left, right):
        """Each entry of a key with its place: x [px] and row, from 1."""
        x, row, found = left, 1, []
        for quantity, words, *marker in entries:
            words = words or style.look(quantity).label
            wide = 3.0 * self.type.words + self.extent(words, small=True)
            if x > left and x + wide > right:
                x, row = left, row + 1
            found.append(((quantity, words, *marker), x, row))
            x += wide + 1.2 * self.type.words
        return found

    def _sample(self, quantity, x, y, long, marker=""):
        this, color = style.look(quantity), self.color(quantity)
        high = 0.42 * self.line
        if this.shape == "patch":
            made = Rectangle((x, y - high), long, 2 * high, facecolor="none", edgecolor=color, hatch=this.hatch)
        elif this.shape == "arrow" or marker == "arrow":
            made = Polygon(arrow(x, y, x + long, high * 1.1), closed=True, facecolor=color, edgecolor="none")
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

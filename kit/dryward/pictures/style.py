"""How a quantity looks: one color, one line and one label each, in every picture.

The colors are members of two open sets made for color-blind readers (Okabe
and Ito 2008; Petroff 2021), kept only where they reach 3 : 1 against the
paper.  Two quantities of one picture never differ by color alone: the line,
the hatch or the mark differs too, and on black-and-white paper they are all
that is left.
"""

from dataclasses import dataclass

from dryward.language import message

#: Warm white, like a drawing sheet.
PAPER = "#fffdf8"
#: Words, frames and saturation: almost black.
INK = "#1c1c1c"
#: Pencil: what is built, drawn behind the quantities.
PENCIL = "#b9b1a3"
#: Grid lines of a graph.
FAINT = "#e9e3d8"
#: A second word that may stand back a little (still 4.5 : 1).
QUIET = "#5f5a52"
#: The families of type, first found wins; the first comes with matplotlib.
FAMILY = ("DejaVu Sans",)


@dataclass(frozen=True)
class Look:
    """How one quantity is drawn."""

    #: On the screen.
    color: str
    #: A matplotlib line style.
    line: str | tuple[int, tuple[float, ...]] = "-"
    #: Of a line [pt], at normal size.
    width: float = 2.2
    #: For filled shapes.
    hatch: str = ""
    #: For single points.
    marker: str = ""
    #: On black-and-white paper.
    gray: str = "#000000"
    #: What the key shows: line, patch, mark, arrow or edge (an upright line).
    shape: str = "line"


#: One look per quantity, for all pictures.
LOOKS = {
    "temperature": Look("#d55e00", "-", 2.4, gray="#606060"),
    "vapor pressure": Look("#0072b2", "-", 2.6, gray="#101010"),
    "saturation": Look("#000000", (0, (5, 2.2)), 1.8, gray="#000000"),
    "relative humidity": Look("#832db6", (0, (7, 1.6)), 2.2, gray="#404040"),
    "dew point": Look("#cc79a7", (0, (3.4, 1.3, 1, 1.3)), 2.6, gray="#707070"),
    "wet": Look("#1845fb", "-", 2.4, "xxx", "o", gray="#000000", shape="mark"),
    "drying": Look("#009e73", "-", 2.0, "///", gray="#808080", shape="arrow"),
    "air flow": Look("#717581", "-", 2.2, "", gray="#707070"),
    "heat": Look("#d55e00", (0, (2, 1)), 2.2, gray="#606060", shape="arrow"),
    "moisture content": Look("#a96b59", "-", 2.4, gray="#202020"),
    "frost": Look("#3f90da", "-", 2.0, "xx", "D", gray="#909090", shape="patch"),
    "limit": Look("#bd1f01", (0, (1.2, 1.4)), 2.2, gray="#000000"),
    "permeance": Look("#656364", "-", 2.4, gray="#505050"),
    "outdoor air": Look("#3f90da", (0, (3, 1.5)), 2.2, gray="#808080"),
    "room air": Look("#e42536", (0, (8, 2)), 2.2, gray="#404040"),
    "cavity air": Look("#000000", "-", 2.0, gray="#000000"),
    "here": Look("#000000", "-", 1.6, "", "P", gray="#000000", shape="mark"),
}


def look(quantity: str) -> Look:
    """The look of a quantity.

    Examples
    --------
    >>> look("temperature").color
    '#d55e00'
    """
    return LOOKS[quantity]


def label(quantity: str) -> str:
    """What a quantity is called in a key.

    Examples
    --------
    >>> label("wet")
    'water collects'
    """
    return message(f"pictures.label-{quantity.replace(' ', '-')}")


@dataclass(frozen=True)
class Type:
    """Sizes of letters [pt], and what lines are multiplied by."""

    words: float
    small: float
    thick: float


#: At a desk, on a projector (20 px of 1080), on a phone (12 px), on paper.
NORMAL = Type(10.0, 9.0, 1.0)
PROJECTOR = Type(15.75, 15.0, 1.7)
NARROW = Type(9.0, 9.0, 1.0)
PRINTED = Type(9.0, 8.0, 0.8)

"""How a layer is drawn: a pencil pattern per kind, as on a site drawing of our own.

Five kinds are told apart without color: fibers as loose waves, boards as a
slanted grain, closed foam as pebbles, air as nothing but a few drifting
strokes, coverings as lapped scales, and membranes as one strong line.
"""

import numpy as np
from matplotlib.collections import LineCollection
from matplotlib.patches import Rectangle

from dryward.building import AirSpace
from dryward.pictures import style

#: Lighter than this [kg/m3] a material insulates; heavier, it is a board.
_LIGHT = 130.0


def kind(assembly, layer):
    """What a layer is drawn as.

    Parameters
    ----------
    assembly : Assembly
    layer : Layer
        One of its layers.

    Returns
    -------
    str
        membrane, air, vent, fibrous, foam, covering or board.
    """
    if layer.is_membrane:
        return "membrane"
    if isinstance(layer.substance, AirSpace):
        return "vent" if layer.vented else "air"
    words = f"{layer.substance.id} {layer.substance.category} {layer.name}".lower()
    if "foam" in layer.substance.category or "fibrous" in layer.substance.category:
        return "foam" if "foam" in layer.substance.category else "fibrous"
    outermost = assembly.layers[-1] is layer and len(assembly.layers) > 1
    if any(word in words for word in ("covering", "metal", "shingle", "tile", "cladding", "siding")) or (
        outermost and any(other.vented for other in assembly.layers)
    ):
        return "covering"
    if layer.substance.density < _LIGHT:
        # Closed cells let little vapor through: less than a tenth of air.
        return "foam" if layer.substance.permeability_at(0.5) < 2e-11 else "fibrous"
    return "board"


def pattern(what, left, right, bottom, top, line):
    """Pencil strokes of a kind in a box of px.

    Parameters
    ----------
    what : str
        A kind of `kind`.
    left, right, bottom, top : float
        The box [px].
    line : float
        Height of a line of words [px], the measure of the pattern.

    Returns
    -------
    list of array (n, 2)
        Strokes [px], none outside the box.
    """
    draw = {"fibrous": _waves, "foam": _pebbles, "board": _grain, "covering": _scales, "air": _drift, "vent": _drift}
    strokes = draw[what](left, right, bottom, top, line) if what in draw else []
    return [s for s in (_inside(stroke, left, right, bottom, top) for stroke in strokes) if len(s) > 1]


def _inside(stroke, left, right, bottom, top):
    x, y = stroke[:, 0], stroke[:, 1]
    return stroke[(x >= left) & (x <= right) & (y >= bottom) & (y <= top)]


def _waves(left, right, bottom, top, line):
    x = np.linspace(left, right, max(8, int((right - left) / 2)))
    strokes = []
    for row, base in enumerate(np.arange(bottom + 0.4 * line, top, 0.95 * line)):
        phase = 1.9 * row
        y = base + 0.22 * line * np.sin(2 * np.pi * (x - left) / (2.3 * line) + phase)
        y += 0.10 * line * np.sin(2 * np.pi * (x - left) / (0.87 * line) + 2.3 * phase)
        strokes.append(np.column_stack([x, y]))
    return strokes


def _grain(left, right, bottom, top, line):
    # Short slanted strokes, a few px apart, in one direction.
    rise, wide = 0.55 * line, right - left
    step = np.linspace(0, 1, 24)
    return [
        np.column_stack([left + wide * step, base + rise * step])
        for base in np.arange(bottom - rise, top, 0.42 * line)
    ]  # fmt: skip


def _pebbles(left, right, bottom, top, line):
    turn = np.linspace(0, 2 * np.pi, 14)
    radius, pitch = 0.17 * line, 0.66 * line
    strokes = []
    for row, y in enumerate(np.arange(bottom + 0.4 * line, top - radius, pitch)):
        for x in np.arange(left + radius + 2 + (row % 2) * pitch / 2, right - radius - 1, pitch):
            strokes.append(np.column_stack([x + radius * np.cos(turn), y + radius * np.sin(turn)]))
    return strokes


def _scales(left, right, bottom, top, line):
    wide, strokes = right - left, []
    for base in np.arange(bottom, top, 1.1 * line):
        strokes.append(np.array([(left, base), (right, base + 0.9 * line), (left + 0.15 * wide, base + 1.02 * line)]))
    return strokes


def _drift(left, right, bottom, top, line):
    # A few strokes along the space: air that stands or wanders.
    step = np.linspace(0, 1, 30)
    strokes = []
    for column, base in enumerate(np.arange(bottom + 0.8 * line, top - 1.2 * line, 2.6 * line)):
        middle = left + (right - left) * (0.36 + 0.28 * (column % 2))
        bend = 0.12 * (right - left) * np.sin(2 * np.pi * step)
        strokes.append(np.column_stack([middle + bend, base + 1.2 * line * step]))
    return strokes


def draw(picture, what, left, right, bottom, top):
    """Draw one layer into a picture, box in px, membranes as a line at `left`.

    Parameters
    ----------
    picture : LivePicture
    what : str
        A kind of `kind`.
    left, right, bottom, top : float
        The box [px].
    """
    # Below all axes, so that a graph may stand on layers.
    figure, thick = picture.figure, picture.type.thick
    if what == "membrane":
        strokes = [np.array([(left, bottom), (left, top)])]
        figure.add_artist(
            LineCollection(strokes, colors=style.INK, linewidths=2.6 * thick, transform=picture.px, zorder=-1)
        )
        return
    strokes = pattern(what, left, right, bottom, top, picture.line)
    figure.add_artist(
        LineCollection(strokes, colors=picture.pencil, linewidths=0.9 * thick, transform=picture.px, zorder=-3)
    )
    edge = "none" if what in ("air", "vent") else style.INK
    figure.add_artist(
        Rectangle(
            (left, bottom), right - left, top - bottom,
            facecolor="none", edgecolor=edge, linewidth=0.9 * thick, transform=picture.px, zorder=-2,
        )
    )  # fmt: skip

"""A picture that follows a slider: drawn once, then only what moves.

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
from pathlib import Path

import matplotlib
import numpy as np
from PIL import Image

from dryward.pictures.drawing import Drawing

#: What moves is drawn over all that stands.
_ABOVE = 100
#: A field of color that moves, over all that stands and under the other artists that move.
UNDER = 99


def _as_numbers(pixels):
    """Each pixel as one number, height x width x 1; compared so four times as fast."""
    return np.asarray(memoryview(pixels)).view(np.uint32)


class LivePicture(Drawing):
    """Base of all pictures.

    Subclasses write `draw_static` (everything, moving artists too, each
    passed through `moving`), `draw_moving` (new data into those artists),
    `alt`, and, where the standing part depends on the state, `signature`.

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

    def __init__(self, unit_system="us", projector=False, paper=False, size=None, scale=1.0):
        super().__init__(unit_system, projector, paper, size, scale)
        self._movers, self._drawn, self._still, self._ground = [], None, None, None

    # --- what a subclass says -------------------------------------------

    def signature(self, state):
        """What the standing part depends on; hashable."""
        return ()

    def draw_static(self, state):
        """Draw all that stands, and make the artists that move."""
        raise NotImplementedError

    def draw_moving(self, state):
        """Put the state into the artists that move."""
        raise NotImplementedError

    def alt(self, state):
        """What the picture shows now, in words."""
        raise NotImplementedError

    # --- drawing ----------------------------------------------------------

    def render(self, state):
        """The picture of a state.

        Parameters
        ----------
        state : object
            What the subclass draws.

        Returns
        -------
        bytes
            Lossless WebP.
        """
        self.paint(state)
        return self._packed()

    def layers(self, state):
        """The picture of a state in two parts of one size, the second to be laid over the first.

        Parameters
        ----------
        state : object
            What the subclass draws.

        Returns
        -------
        ground : bytes
            All that stands, lossless WebP; the same object while it stands.
        moving : bytes
            What moves, PNG: the picture where it is another than the ground, clear elsewhere.
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

    def paint(self, state):
        """Draw a state into the canvas: the kept pixels, and over them what moves."""
        self._stand(state)
        self.canvas.restore_region(self._still)
        self._move(state)

    def _stand(self, state):
        """Draw all that stands, unless it is kept."""
        signature = self.signature(state)
        if self._still is None or signature != self._drawn:
            self._begin(state)
            self.canvas.draw()
            self._still, self._drawn = self.canvas.copy_from_bbox(self.figure.bbox), signature

    def _move(self, state):
        """Draw what moves over what is in the canvas."""
        self.draw_moving(state)
        renderer = self.canvas.get_renderer()
        for artist in self._movers:
            if artist.get_visible():
                artist.draw(renderer)

    def _packed(self):
        """The canvas as a lossless WebP."""
        sheet = Image.frombuffer("RGBA", self.canvas.get_width_height(), self.canvas.buffer_rgba(), "raw", "RGBA", 0, 1)
        out = io.BytesIO()
        sheet.save(out, "WEBP", lossless=True, quality=0, method=0)
        return out.getvalue()

    def redraw(self, state):
        """Draw a state whole, nothing kept; for paper and for proof."""
        self._begin(state)
        self._still = None
        self.draw_moving(state)
        for artist in self._movers:
            artist.set_animated(False)
        self.canvas.draw()

    def forget(self):
        """Drop the kept pixels, so that the next picture is drawn whole."""
        self._still = None

    def pixels(self):
        """A copy of the canvas, height x width x RGBA."""
        return np.array(self.canvas.buffer_rgba())

    def _begin(self, state):
        self.figure.clear()
        self._movers, self._ground = [], None
        self.draw_static(state)

    def moving(self, artist):
        """Mark an artist as one that moves, and give it back."""
        artist.set_animated(True)
        artist.set_zorder(_ABOVE + len(self._movers))
        self._movers.append(artist)
        return artist

    def dot(self, ax, quantity, marker="o", size=0.85, **keys):
        """A point on a graph that moves."""
        color = self.color(quantity)
        keys = {"markeredgecolor": self.background, "markeredgewidth": 1.2 * self.type.thick, "clip_on": False, **keys}
        made = ax.plot([], [], linestyle="none", marker=marker, color=color, markersize=size * self.type.words, **keys)
        return self.moving(made[0])


#: Pictures in the cache at most: each holds some 4 MB.
CACHED = 5


def described(picture, state):
    """What a picture shows, in words, and the state that the page gives it.

    Parameters
    ----------
    picture : LivePicture
    state : object
        What it draws.

    Returns
    -------
    str
    """
    said = picture.alt(state)
    given = getattr(state, "verdict", "")
    return f"{said} Verdict: {given}." if given else said


class PictureCache:
    """Draws states of one kind, each with a picture whose standing part fits already, if there is one.

    Parameters
    ----------
    kind : type
        A `LivePicture`.
    unit_system : {"us", "si"}
    projector : bool
    """

    def __init__(self, kind, unit_system="us", projector=False):
        self._make = lambda: kind(unit_system, projector)
        self._first = self._make()
        self._drawn = OrderedDict()
        self.width, self.height = self._first.width, self._first.height

    def _for(self, state):
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
        return picture

    def render(self, state):
        """The picture of a state, as of `LivePicture.render`."""
        return self._for(state).render(state)

    def layers(self, state):
        """The picture in two parts, as of `LivePicture.layers`."""
        return self._for(state).layers(state)

    def alt(self, state):
        """What the picture shows, as of `LivePicture.alt`; after `render` or `layers`."""
        return described(self._for(state), state)


_BEGIN = b"\x89PNG\r\n\x1a\n"
#: Eight bits a channel, RGBA; deflate; filter of each row in its first byte; not interlaced.
_FORM = (8, 6, 0, 0, 0)
#: Zlib's quickest level.
_QUICK = 1


def png(pixels):
    """A picture as a PNG, nothing lost.

    Parameters
    ----------
    pixels : array (height, width, 4)
        Red, green, blue and opacity, 0 to 255; the colors not multiplied by
        the opacity.

    Returns
    -------
    bytes

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
    return _BEGIN + _chunk(b"IHDR", head) + _chunk(b"IDAT", zlib.compress(rows, _QUICK)) + _chunk(b"IEND", b"")


def _chunk(kind, data):
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def font_files():
    """The two faces of the letters in the pictures, for a document that must match them.

    Returns
    -------
    dict
        "" and "B" to the path of a font file that matplotlib carries.
    """
    folder = Path(matplotlib.get_data_path(), "fonts", "ttf")
    return {"": folder / "DejaVuSans.ttf", "B": folder / "DejaVuSans-Bold.ttf"}


def static(picture, state, form="png", dpi=192):
    """One state of a picture as a file.

    Parameters
    ----------
    picture : LivePicture
        Made with ``paper=True`` for black-and-white print.
    state : object
        What that picture draws.
    form : {"png", "svg"}
    dpi : float
        Pixels per inch of a PNG [1/in], 72 to 600.

    Returns
    -------
    bytes
        The same bytes for the same state.
    """
    out = io.BytesIO()
    picture.redraw(state)
    try:
        # Words stay words in an SVG, and the ids in it are the same each time.
        with matplotlib.rc_context({"svg.fonttype": "none", "svg.hashsalt": "dryward"}):
            if form == "svg":
                picture.figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
                return out.getvalue()
            picture.figure.savefig(out, format="png", dpi=dpi, metadata={"Software": None})
    finally:
        picture.forget()
    if not picture.paper:
        return out.getvalue()
    gray = io.BytesIO()
    Image.open(out).convert("L").save(gray, "PNG", dpi=(dpi, dpi), optimize=True)
    return gray.getvalue()

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
from collections.abc import Hashable
from pathlib import Path
from typing import Any, Generic, TypeVar

import matplotlib
import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.lines import Line2D
from matplotlib.patches import Patch
from numpy.typing import NDArray
from PIL import Image

from dryward.language import message
from dryward.pictures.drawing import Drawing
from dryward.verdict.words import adjective

Made = TypeVar("Made", bound=Artist)
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


def described(picture: LivePicture[State], state: State) -> str:
    """What a picture shows, in words, and the state that the page gives it."""
    said = picture.alt(state)
    given = getattr(state, "verdict", "")
    return message("pictures.verdict", said=said, state=adjective(given)) if given else said


class PictureCache(Generic[State]):
    """Draws states of one kind, each with a picture whose standing part fits already, if there is one."""

    def __init__(self, kind: type[LivePicture[State]], unit_system: str = "us", projector: bool = False) -> None:
        self._make = lambda: kind(unit_system, projector)
        self._first = self._make()
        self._drawn: OrderedDict[Hashable, LivePicture[State]] = OrderedDict()
        self.width, self.height = self._first.width, self._first.height

    def _for(self, state: State) -> LivePicture[State]:
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
    return (
        _BEGIN + _chunk(b"IHDR", head) + _chunk(b"IDAT", zlib.compress(rows.tobytes(), _QUICK)) + _chunk(b"IEND", b"")
    )


def _chunk(kind: bytes, data: bytes) -> bytes:
    return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))


def font_files() -> dict[str, Path]:
    """The two faces of the letters in the pictures ("" and "B"), for a document that must match them."""
    folder = Path(matplotlib.get_data_path(), "fonts", "ttf")
    return {"": folder / "DejaVuSans.ttf", "B": folder / "DejaVuSans-Bold.ttf"}


def static(picture: LivePicture[State], state: State, form: str = "png", dpi: float = 192) -> bytes:
    """One state of a picture as a PNG (dpi 72 to 600) or SVG file: the same bytes for the same state."""
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

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

import numpy as np
from PIL import Image

from dryward.pictures.png import png
from dryward.pictures.sheet import Sheet

#: What moves is drawn over all that stands.
_ABOVE = 100
#: A field of color that moves, over all that stands and under the other artists that move.
UNDER = 99


def _as_numbers(pixels):
    """Each pixel as one number, height x width x 1; compared so four times as fast."""
    return np.asarray(memoryview(pixels)).view(np.uint32)


class LivePicture(Sheet):
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

"""A picture that follows a slider: drawn once, then only what moves.

Everything that stands still (words, frames, hatches) is drawn once per size,
unit system and signature, and kept as pixels.  A new state restores those
pixels and draws the few artists that move, which costs a tenth of a whole
drawing.  Changing numbers belong beside the picture, as text of the page:
letters are the dear part of a drawing.
"""

import io

import numpy as np
from PIL import Image

from dryward.pictures.sheet import Sheet

#: What moves is drawn over all that stands.
_ABOVE = 100
#: A field of color that moves, over all that stands and under the other artists that move.
UNDER = 99


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
        self._movers, self._drawn, self._still = [], None, None

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
        sheet = Image.frombuffer("RGBA", self.canvas.get_width_height(), self.canvas.buffer_rgba(), "raw", "RGBA", 0, 1)
        out = io.BytesIO()
        sheet.save(out, "WEBP", lossless=True, quality=0, method=0)
        return out.getvalue()

    def paint(self, state):
        """Draw a state into the canvas: the kept pixels, and over them what moves."""
        signature = self.signature(state)
        if self._still is None or signature != self._drawn:
            self._begin(state)
            self.canvas.draw()
            self._still, self._drawn = self.canvas.copy_from_bbox(self.figure.bbox), signature
        self.canvas.restore_region(self._still)
        self.draw_moving(state)
        renderer = self.canvas.get_renderer()
        for artist in self._movers:
            if artist.get_visible():
                artist.draw(renderer)

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
        self._movers = []
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

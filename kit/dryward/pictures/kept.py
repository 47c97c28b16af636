"""A few drawn pictures of one kind, so that an axis that changes back is not drawn again.

A move over the end of an axis costs a whole drawing, ten times a usual one.
A slider that goes to and fro over it would pay each time; a picture for each
of the last few looks of the standing part pays once.
"""

from collections import OrderedDict

#: Pictures kept at most: each holds some 4 MB.
KEPT = 5


def told(picture, state):
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


class Kept:
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
            elif len(self._drawn) < KEPT:
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
        return told(self._for(state), state)

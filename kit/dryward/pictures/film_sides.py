"""A film between its faces, or both ways round when its two faces differ."""

from dryward.pictures.film import Film
from dryward.pictures.sandwich import Sandwich, SandwichState


class FilmSides(Film, Sandwich):
    """Draws a `FilmState` as `Film` does, and a `SandwichState` as `Sandwich` does."""

    size = Film.size
    projector_size = Film.projector_size

    def _kind(self, state):
        return Sandwich if isinstance(state, SandwichState) else Film

    def signature(self, state):
        kind = self._kind(state)
        return kind.__name__, kind.signature(self, state)

    def draw_static(self, state):
        self._kind(state).draw_static(self, state)

    def draw_moving(self, state):
        self._kind(state).draw_moving(self, state)

    def alt(self, state):
        return self._kind(state).alt(self, state)

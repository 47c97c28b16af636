"""Strips that fill in the background, where the state at each place of a slider needs an hourly run."""

import asyncio
import threading
from collections.abc import Callable, Mapping
from typing import Any

from dryward.panels.page import Page
from dryward.panels.readouts import Strip
from dryward.verdict import UNKNOWN

#: For each control, what gives the state at one place along it; and the same where it need not be worked out.
Work = Mapping[str, Callable[[Any], str]]
Known = Mapping[str, Callable[[Any], str | None]]


class Filling:
    """Fills the strips of a page whose places each need an hourly run.

    The runs go on in another thread while the page can be used; each result
    shows at once, and a move of any control drops what is left.
    """

    def __init__(self, page: Page, places: int = 11) -> None:
        self.page, self.places = page, places
        self._turn = 0
        self._thread: threading.Thread | None = None
        #: What the strips show now, by control name.
        self.shown: dict[str, dict[str, Any]] = {}

    def along(self, name: str) -> list[Any]:
        """The places along a slider, left to right [SI], or the options of a choice."""
        return self.page.along(name, self.places)

    def drop(self) -> None:
        """Forget what is still to be found."""
        self._turn += 1

    def start(self, work: Work, known: Known | None = None) -> None:
        """Fill the strips of these controls; what is `known` already shows at once."""
        self.drop()
        self.shown = {}
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            return  # nobody is looking: `now` does it for who asks
        turn = self._turn
        along = {name: self.along(name) for name in work}
        found: dict[str, dict[int, str]] = {name: {} for name in work}
        for name, state in (known or {}).items():
            found[name] = {k: told for k, at in enumerate(along[name]) if (told := state(at)) is not None}
        known_at = {name: frozenset(places) for name, places in found.items()}
        most = max((len(each) for each in along.values()), default=0)
        for name in work:
            self._show(name, found[name])

        def tell(name: str, place: int, state: str) -> None:
            if turn == self._turn:
                found[name][place] = state
                self._show(name, found[name])
                self.page.send_live()

        def go() -> None:
            for place in range(most):
                for name, judged in work.items():
                    places = along[name]
                    if place >= len(places) or place in known_at[name]:
                        continue
                    if turn != self._turn:
                        return
                    try:
                        answer = judged(places[place])
                    except Exception:  # a run that fails leaves its place open
                        continue
                    if loop.is_closed():
                        return  # the page is gone
                    loop.call_soon_threadsafe(tell, name, place, answer)

        self._thread = threading.Thread(target=go, daemon=True, name="strips")
        self._thread.start()

    def now(self, work: Work) -> dict[str, Strip]:
        """The same at once, all of it: control name -> Strip."""
        return {name: Strip(tuple(judged(at) for at in self.along(name))) for name, judged in work.items()}

    def _show(self, name: str, found: Mapping[int, str]) -> None:
        strip = Strip(tuple(found.get(k, UNKNOWN) for k in range(len(self.along(name)))))
        self.shown[name] = self.page.put_strip(name, strip)

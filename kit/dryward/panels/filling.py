"""Strips of slow lessons: filled in the background, dropped when a control moves.

A strip under a slider of an hourly lesson needs a run for each of its places.
They run on other threads while the page can be used; each result shows at
once, and a move of any control drops what is left.
"""

import asyncio
import threading

from dryward.panels.readouts import Strip
from dryward.verdict import UNKNOWN


class Filling:
    """Fills the strips of one page.

    Parameters
    ----------
    page : Page
    places : int
        Along each slider.
    """

    def __init__(self, page, places=11):
        self.page, self.places = page, places
        self._turn, self._thread = 0, None
        #: What the strips show now, by control name.
        self.shown = {}

    def along(self, name):
        """The places along a slider, left to right [SI], or the options of a choice."""
        return self.page.along(name, self.places)

    def drop(self):
        """Forget what is still to be found."""
        self._turn += 1

    def start(self, work):
        """Fill strips from nothing.

        Parameters
        ----------
        work : dict
            Control name -> function of one place along it, giving its state.
        """
        self.drop()
        self.shown = {}
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            return  # nobody is looking: `now` does it for who asks
        turn = self._turn
        found = {name: {} for name in work}
        along = {name: self.along(name) for name in work}
        most = max((len(each) for each in along.values()), default=0)
        for name in work:
            self._show(name, found[name])

        def tell(name, place, state):
            if turn == self._turn:
                found[name][place] = state
                self._show(name, found[name])
                self.page.send()

        def go():
            for place in range(most):
                for name, judged in work.items():
                    places = along[name]
                    if place >= len(places):
                        continue
                    if turn != self._turn:
                        return
                    try:
                        answer = judged(places[place])
                    except Exception:  # a run that fails leaves its place open
                        continue
                    loop.call_soon_threadsafe(tell, name, place, answer)

        self._thread = threading.Thread(target=go, daemon=True, name="strips")
        self._thread.start()

    def now(self, work):
        """The same at once, all of it.

        Parameters
        ----------
        work : dict
            As in `start`.

        Returns
        -------
        dict
            Control name -> Strip.
        """
        return {name: Strip(tuple(judged(at) for at in self.along(name))) for name, judged in work.items()}

    def _show(self, name, found):
        count = len(self.along(name))
        strip = Strip(tuple(found.get(k, UNKNOWN) for k in range(count)))
        self.shown[name] = self.page.put_strip(name, strip)

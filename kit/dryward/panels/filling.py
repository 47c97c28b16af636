"""Strips of slow lessons: filled in the background, dropped when a control moves.

A strip under a slider of an hourly lesson needs a run for each of its places.
They run on other threads while the page can be used; each result shows at
once, and a move of any control drops what is left.
"""

import asyncio
import threading

from dryward.panels.readouts import Strip


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
        control = self.page.controls[name]
        return list(control.options) if control.options else list(control.along(self.places))

    def drop(self):
        """Forget what is still to be found."""
        self._turn += 1

    def start(self, work, good):
        """Fill strips from nothing.

        Parameters
        ----------
        work : dict
            Control name -> function of one place along it, giving bool.
        good : str
            As in `Strip`.
        """
        self.drop()
        self.shown = {}
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            return  # nobody is looking: `now` does it for who asks
        turn = self._turn
        found = {name: {} for name in work}
        for name in work:
            self._show(name, found[name], good)

        def tell(name, place, holds):
            if turn == self._turn:
                found[name][place] = holds
                self._show(name, found[name], good)
                self.page.send()

        def go():
            for place in range(self.places):
                for name, holds in work.items():
                    places = along[name]
                    if place >= len(places):
                        continue
                    if turn != self._turn:
                        return
                    try:
                        answer = bool(holds(places[place]))
                    except Exception:  # a run that fails leaves its place open
                        continue
                    loop.call_soon_threadsafe(tell, name, place, answer)

        along = {name: self.along(name) for name in work}
        self._thread = threading.Thread(target=go, daemon=True, name="strips")
        self._thread.start()

    def now(self, work, good):
        """The same at once, all of it.

        Parameters
        ----------
        work, good
            As in `start`.

        Returns
        -------
        dict
            Control name -> Strip.
        """
        return {name: Strip(tuple(bool(holds(at)) for at in self.along(name)), good) for name, holds in work.items()}

    def _show(self, name, found, good):
        control = self.page.controls[name]
        count = len(self.along(name))
        if len(found) == count:
            shown = Strip(tuple(found[k] for k in range(count)), good).shown(control)
        else:
            # What is not known yet stays open: only places that fail are hatched.
            holds = tuple(found.get(k, True) for k in range(count))
            shown = {"fails": Strip(holds, good).shown(control)["fails"], "words": f"working: {len(found)} of {count}"}
        self.shown[name] = shown
        self.page.put_strip(name, shown)

"""Long work of the bench: done in the background, shown as it goes on, ended on request."""

import asyncio
import threading

from dryward.checks import PlainError
from dryward.panels.bench import parts

#: Of the whole, the part that is shown as one step.
_STEP = 1 / 12


class Background:
    """One piece of work at a time.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    name : str
        What is worked out, as a sentence begins with it.

    Attributes
    ----------
    running : bool
    done, total : int
        How far it is.
    trouble : str
        Why the last work came to nothing.
    """

    def __init__(self, show, name):
        self.show, self.name = show, name
        self.running, self.done, self.total, self.trouble = False, 0, 1, ""
        self._run, self._stop = 0, False

    def start(self, work, ended):
        """Do some work; in the background where a browser waits.

        What goes on already is dropped.

        Parameters
        ----------
        work : function
            Takes a function of (parts done, parts in all) that says False
            when it shall end, and gives what was found.
        ended : function
            Called with what was found, unless the work failed, was stopped or
            was dropped.
        """
        self._run += 1
        self._stop, self.trouble, self.running, self.done, self.total = False, "", True, 0, 100
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._work(self._run, work, ended, lambda call, *what: call(*what))
            return

        def tell(call, *what):
            if not loop.is_closed():  # the page may be gone by then
                loop.call_soon_threadsafe(call, *what)

        todo = (self._run, work, ended, tell)
        threading.Thread(target=self._work, args=todo, daemon=True, name=self.name).start()

    def stop(self):
        """End the work that goes on."""
        self._stop = True

    def drop(self):
        """End it, and forget it at once."""
        self._run += 1
        self.running, self.trouble = False, ""

    def _work(self, run, work, ended, tell):
        def progress(done, total):
            tell(self._progress, run, done, total)
            return run == self._run and not self._stop

        found, trouble = None, ""
        try:
            found = work(progress)
        except PlainError as error:
            trouble = str(error)
        except Exception as error:  # a learner never sees a traceback
            kind = type(error).__name__
            trouble = f"{self.name} could not be worked out ({kind}). Change a layer and try again."
        tell(self._ended, run, found, trouble, ended)

    def _progress(self, run, done, total):
        if run != self._run:
            return
        if total != self.total or done < self.done or done - self.done >= total * _STEP:
            self.done, self.total = done, total
            self.show()

    def _ended(self, run, found, trouble, ended):
        if run != self._run:
            return
        self.running, self.trouble = False, trouble
        if not trouble:
            ended(found)
        self.show()

    def parts(self, stop):
        """The button that ends it and how far it is, while it goes on.

        Parameters
        ----------
        stop : str
            Key of the button.

        Returns
        -------
        list of dict
        """
        if not self.running:
            return []
        found = [parts.button(stop, "Stop"), parts.progress("Percent worked out", self.done, self.total)]
        if self.done == 0:
            found.append(parts.text("Getting ready; the first run on a machine takes some seconds."))
        return found

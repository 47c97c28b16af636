"""All checks of the roof on the bench: run in the background, shown as they stand."""

import asyncio
import threading

from dryward.checks import PlainError
from dryward.panels.bench import parts
from dryward.report import review
from dryward.report.sheet import amount

#: Draws of the uncertain inputs.
DRAWS = 24


class Checking:
    """One run of all checks.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    """

    def __init__(self, show):
        self.show = show
        self.job, self.review, self.trouble = None, None, ""
        self.running, self.done, self.total = False, 0, 1
        self._stop = False

    def run(self, job, spread=0):
        """Check a job; in the background where a browser waits.

        Parameters
        ----------
        job : Job
        spread : int, optional
            Draws of the uncertain inputs for the hourly years.
        """
        if self.running:
            return
        self._stop, self.trouble, self.running, self.done, self.total = False, "", True, 0, job.years * 8760
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._work(job, spread, lambda call, *what: call(*what))
            return
        threading.Thread(
            target=self._work, args=(job, spread, loop.call_soon_threadsafe), daemon=True, name="checks"
        ).start()

    def stop(self):
        """End a run that is going on."""
        self._stop = True

    def _work(self, job, spread, tell):
        def progress(done, total):
            tell(self._progress, done, total)
            return not self._stop

        try:
            found, trouble = review(job, progress=progress, spread=spread), ""
        except PlainError as error:
            found, trouble = None, str(error)
        except Exception as error:  # a learner never sees a traceback
            found, trouble = (
                None,
                f"The checks could not be worked out ({type(error).__name__}). Change a layer and try again.",
            )
        tell(self._ended, job, found, trouble)

    def _progress(self, done, total):
        if total != self.total or done < self.done or done - self.done >= total / 12:
            self.done, self.total = done, total
            self.show()

    def _ended(self, job, found, trouble):
        self.running, self.trouble = False, trouble
        if found is not None:
            self.job, self.review = job, found
        self.show()

    def section(self, job, system):
        """The findings, with their limits beside them.

        Parameters
        ----------
        job : Job
            As it is now; findings of an older one say so.
        system : {"us", "si"}

        Returns
        -------
        dict
        """
        head = parts.row(
            parts.button("check:run", "Run all checks", disabled=self.running),
            parts.button(
                "check:spread",
                "Run with uncertain inputs",
                disabled=self.running,
                title=f"{DRAWS} draws of the layers' properties: half a minute or more",
            ),
            parts.button("check:stop", "Stop") if self.running else None,
            parts.progress("Hours worked out", self.done, self.total) if self.running else None,
        )
        if self.running and self.done == 0:
            head["parts"].append(parts.text("Getting ready; the first run on a machine takes some seconds."))
        inside = [head]
        if self.trouble:
            inside.append(parts.text(self.trouble, "dw-trouble", alert=True))
        if self.review is not None:
            if self.job != job:
                inside.append(parts.text("The roof has changed since these checks: run them again.", "dw-trouble"))
            inside.append(parts.text(self.review.verdict, "dw-verdict"))
            inside.append(parts.row(*(_finding(each, system) for each in self.review.findings), style="dw-columns"))
            inside += [parts.text(note, "dw-hint") for note in self.review.notes]
        inside.append(
            parts.text(
                "A band shows how far the layers' usual ranges carry a number. The steady checks always have one; "
                "the hourly years get theirs with uncertain inputs.",
                "dw-hint",
            )
        )
        return parts.section("checks", "Checks, side by side", *inside)


def _finding(each, system):
    numbers = "; ".join(f"{number.label}: {amount(number, system)}" for number in each.numbers)
    small = " — ".join(part for part in (numbers, each.limits, each.source) if part)
    change = f"First: {each.change}" if each.change else ""
    return parts.finding(
        f"{each.question} {each.answer.capitalize()}.", each.good, (each.what, each.why, change, each.matters), small
    )

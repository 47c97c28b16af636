"""All checks of the roof on the bench: run in the background, shown as they stand."""

from dryward.panels.bench import parts
from dryward.panels.bench.background import Background
from dryward.report import review
from dryward.report.document import LEGEND, amount, designs, mark
from dryward.units import GRAIN_OF_WATER

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
        self.job, self.review = None, None
        self.task = Background(show, "The checks")

    def run(self, job, spread=0):
        """Check a job, unless one is being checked.

        Parameters
        ----------
        job : Job
        spread : int, optional
            Draws of the uncertain inputs for the hourly years.
        """
        if not self.task.running:
            self.task.start(
                lambda progress: review(job, progress=progress, spread=spread),
                lambda found: self._take(job, found),
            )

    def _take(self, job, found):
        self.job, self.review = job, found

    def stop(self):
        """End a run that is going on."""
        self.task.stop()

    def section(self, job, system):
        """The checks, with their limits beside them.

        Parameters
        ----------
        job : Job
            As it is now; checks of an older one say so.
        system : {"us", "si"}

        Returns
        -------
        dict
        """
        head = parts.row(
            parts.button("check:run", "Run all checks", disabled=self.task.running),
            parts.button(
                "check:spread",
                "Run with uncertain inputs",
                disabled=self.task.running,
                title=f"{DRAWS} draws of the layers' properties: half a minute or more",
            ),
            *self.task.parts("check:stop"),
        )
        inside = [head]
        if self.task.trouble:
            inside.append(parts.text(self.task.trouble, "dw-trouble", alert=True))
        if self.review is not None:
            if self.job != job:
                inside.append(parts.text("The roof has changed since these checks: run them again.", "dw-trouble"))
            inside.append(parts.text(self.review.headline, "dw-verdict"))
            inside.append(parts.text(self.review.limits, "dw-hint"))
            inside.append(parts.text(LEGEND, "dw-hint"))
            inside.append(parts.row(*(_check(each, system) for each in self.review.checks), style="dw-columns"))
            inside += [
                parts.text(words, "dw-hint") for words in (*designs(self.review), *self.review.notes, GRAIN_OF_WATER)
            ]
        inside.append(
            parts.text(
                "A band shows how far the layers' usual ranges carry a number. The steady checks always have one; "
                "the hourly years get theirs with uncertain inputs.",
                "dw-hint",
            )
        )
        return parts.section("checks", "Checks, side by side", *inside)


def _check(each, system):
    numbers = "; ".join(f"{number.label}: {amount(number, system)}" for number in each.numbers)
    small = " — ".join(part for part in (numbers, each.limits, each.source) if part)
    change = f"First: {each.change}" if each.change else ""
    lines = (each.what, *each.lines, each.why, change, each.matters)
    return parts.check_card(f"{each.asked} {each.said}.", each.answer, mark(each), lines, small)

"""Two roofs, or one roof in two climates, side by side."""

import dataclasses

from dryward import building, weather
from dryward.building.job import Place, load_job
from dryward.checks import PlainError
from dryward.panels.bench import parts
from dryward.panels.bench.background import Background
from dryward.pictures.year import TwoYearGraphs, TwoYears
from dryward.report import review
from dryward.report.document import amount, moisture_year
from dryward.verdict import words


def choices(work):
    """What the roof on the bench can be compared with.

    Parameters
    ----------
    work : Work

    Returns
    -------
    list of (id, words)
    """
    found = [("", "choose one")]
    if work.saved is not None:
        found.append(("saved", "this roof as it was saved"))
    found += [(f"preset:{id}", building.preset(id).name) for id in building.presets()]
    found += [(f"place:{id}", f"this roof in a {id.replace('-', ' ')} climate") for id in weather.demos()]
    return found + [(f"file:{name}", f"your file {name}") for name in work.files()]


def other(work, id):
    """The job that an id stands for.

    Parameters
    ----------
    work : Work
    id : str

    Returns
    -------
    Job

    Raises
    ------
    BadFile, UnknownName
        For a file that cannot be read or a place that is not known.
    """
    kind, _, name = id.partition(":")
    if kind == "saved" and work.saved is not None:
        return work.saved
    if kind == "preset":
        return dataclasses.replace(work.job, assembly=building.preset(name))
    if kind == "place":
        return dataclasses.replace(work.job, place=Place("demo", name, zone=""))
    return load_job(work.path(name))[0]


class Comparing:
    """The second roof and both sets of findings.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    """

    def __init__(self, show):
        self.id, self.pair, self.jobs, self._missing = "", None, None, ""
        self.task = Background(show, "The comparison")

    @property
    def trouble(self):
        """Why there is nothing to compare with, or why the comparison came to nothing."""
        return self._missing or self.task.trouble

    def choose(self, work, id, known=None):
        """Check both; what is being compared already is dropped.

        Parameters
        ----------
        work : Work
        id : str
            As `choices` gives them.
        known : Review, optional
            Of the roof on the bench, where it was checked as it stands now.
        """
        self.task.drop()
        self.id, self._missing, self.pair = id, "", None
        if not id:
            return
        try:
            jobs = (work.job, other(work, id))
        except PlainError as error:
            self._missing = str(error)
            return
        self.task.start(
            lambda progress: (
                known or review(jobs[0], progress, with_trials=False),
                review(jobs[1], progress, with_trials=False),
            ),
            lambda found: self._take(jobs, found),
        )

    def _take(self, jobs, found):
        self.jobs, self.pair = jobs, found

    def stop(self):
        """End a comparison that is going on."""
        self.task.stop()

    def section(self, work, system, projector):
        """Both side by side, the difference in words first.

        Parameters
        ----------
        work : Work
        system : {"us", "si"}
        projector : bool

        Returns
        -------
        dict
        """
        chosen = parts.select("compare", "Compare with", choices(work), self.id)
        old = self.pair is not None and self.jobs[0] != work.job
        again = parts.button("compare:again", "Compare again") if self.id and (old or self.trouble) else None
        inside = [parts.row(chosen, again, *self.task.parts("compare:stop"))]
        if self.trouble:
            inside.append(parts.text(self.trouble, "dw-trouble", alert=True))
        if self.pair:
            if old:
                inside.append(parts.text("The roof has changed since this comparison.", "dw-trouble"))
            names = self._names()
            inside.append(parts.text(difference(self.pair, names), "dw-verdict"))
            inside.append(parts.table(("", *names), [*_places(self.pair, system), *_checks(self.pair, system)]))
            state = self._state(names)
            if state is not None:
                picture = TwoYearGraphs(system, projector)
                inside.append(parts.picture(picture.render(state), picture.alt(state)))
        return parts.section("compare", "Two roofs or two climates", *inside, fold="shut")

    def _names(self):
        first, second = self.jobs
        places = tuple((job.place.id or "typed means").replace("-", " ") for job in self.jobs)
        names = places if first.assembly == second.assembly else tuple(job.assembly.name for job in self.jobs)
        designs = first.design, second.design
        # What tells them apart; with one name for both nobody knows which is meant.
        return next((pair for pair in (names, designs) if pair[0] != pair[1]), ("now", "the other"))

    def _state(self, names):
        years = [moisture_year(each) if each.hourly else None for each in self.pair]
        if None in years or years[0].days[-1] != years[1].days[-1]:
            return None
        # One plane each, the wettest wood, on the same axes.
        return TwoYears(names, tuple(dataclasses.replace(each, planes=each.planes[:1]) for each in years))


def _places(pair, system):
    """A row for each place and limit that either verdict names: the worst of it in both."""
    found = [{(each.what, each.place.layer): each for each in reversed(one.verdict.findings)} for one in pair]
    for key in dict.fromkeys(key for one in found for key in reversed(one)):
        each = found[0].get(key) or found[1][key]
        row = [words.heading(each)]
        for one, judged in zip(found, pair, strict=True):
            here = one.get(key)
            row.append(
                f"{words.word(here.state)}. {words.shown(here, system)}{words.when(here, judged.verdict.method)}"
                if here
                else "nothing found"
            )
        yield row


def _checks(pair, system):
    """A row for each check of either roof."""
    for id in dict.fromkeys(each.id for one in pair for each in one.checks):
        both = [one.check(id) for one in pair]
        yield [next(each for each in both if each).question, *(_said(each, system) for each in both)]


def _said(check, system):
    if check is None:
        return "—"
    few = check.numbers[-2:] if check.id in ("winter", "summer") else check.numbers[:2]
    numbers = "; ".join(f"{each.label}: {amount(each, system)}" for each in few)
    return f"{check.said}. {numbers}"


def difference(pair, names):
    """What differs between two reviews, in one or two sentences.

    Parameters
    ----------
    pair : (Review, Review)
    names : (str, str)

    Returns
    -------
    str
    """
    first, second = (each.state for each in pair)
    how = "hour by hour" if all(each.hourly for each in pair) else "by the checks that were run"
    start = (
        f"{words.capital(how)} both are {first}."
        if first == second
        else f"{words.capital(how)} {names[0]} is {first}, and {names[1]} is {second}."
    )
    return " ".join(
        [
            start,
            *(f"{words.capital(name)}: {words.account(each.verdict)}." for name, each in zip(names, pair, strict=True)),
        ]
    )

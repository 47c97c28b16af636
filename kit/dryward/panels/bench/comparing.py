"""Two roofs, or one roof in two climates, side by side."""

import dataclasses

from dryward import building, weather
from dryward.building import job_files
from dryward.building.job import Place
from dryward.checks import PlainError
from dryward.panels.bench import parts
from dryward.panels.bench.background import Background
from dryward.pictures.compare import Compare, CompareState
from dryward.report import review, year_picture
from dryward.report.sheet import amount
from dryward.weather.hourly import YEAR


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
    return job_files.load(work.path(name))[0]


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
            lambda progress: (known or review(jobs[0], progress), review(jobs[1], progress)),
            jobs[0].years * YEAR,
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
            rows = [_row(each, self.pair[1].finding(each.id), system) for each in self.pair[0].findings]
            inside.append(parts.table(("", *names), rows))
            state = self._state(names)
            if state is not None:
                picture = Compare(system, projector)
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
        years = [year_picture.state(each) if each.finding("years").data else None for each in self.pair]
        if None in years or years[0].days[-1] != years[1].days[-1]:
            return None
        # One plane each, the wettest wood, on the same axes.
        return CompareState(names, tuple(dataclasses.replace(each, planes=each.planes[:1]) for each in years))


def _row(first, second, system):
    def said(each):
        if each is None:
            return "—"
        numbers = "; ".join(f"{n.label}: {amount(n, system)}" for n in each.numbers[:2] if each.id != "winter")
        if each.id == "winter":
            numbers = "; ".join(f"{n.label}: {amount(n, system)}" for n in each.numbers[-2:])
        return f"{each.answer.capitalize()}. {numbers}"

    return [first.question, said(first), said(second)]


#: How each outcome of a review is said of one roof, and of both.
_OUTCOMES = {
    "dries": ("dries over the year", "dry over the year"),
    "too wet on the way": (
        "dries over the year but gets too wet on the way",
        "dry over the year but get too wet on the way",
    ),
    "does not dry": ("does not dry over the year", "fail to dry over the year"),
}


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
    said = [_OUTCOMES[each.outcome] for each in pair]
    if said[0] != said[1]:
        start = f"By these checks {names[0]} {said[0][0]}, and {names[1]} {said[1][0]}."
    else:
        start = f"By these checks both {said[0][1]}."
    peaks = [_peak(each) for each in pair]
    if None not in peaks and peaks[0][0] == peaks[1][0]:
        label, (first, second) = peaks[0][0], (peaks[0][1], peaks[1][1])
        more = names[0] if first > second else names[1]
        start += f" {label}: {first:.3g} against {second:.3g}, higher in {more}."
    return start


def _peak(review):
    found = review.finding("peak")
    if found is None or not found.numbers or found.numbers[0].quantity:
        return None
    return f"{found.numbers[0].label}, {found.numbers[0].unit}", found.numbers[0].value

"""All checks of one job, in the order a builder asks them."""

import dataclasses

from dryward.building import layer_order
from dryward.building.job import Job
from dryward.checks import within
from dryward.language import message
from dryward.report import code_checks, moisture_checks, trials
from dryward.report.check import Check, Edition, Progress, Review, one_after_another
from dryward.report.setting import setting
from dryward.verdict import Decides, Verdict

#: What each part of a review takes of the whole, about [%].
_PARTS = {"years": 10, "leak": 5, "inputs": 45, "designs": 10, "limit": 20, "wet start": 10}


def review(
    job: Job,
    progress: Progress | None = None,
    hourly: bool = True,
    spread: int = 0,
    edition: Edition = None,
    with_trials: bool = True,
) -> Review:
    """Check a roof in every way the kit can.

    The hourly years take some seconds and load more; `hourly` leaves them out.
    With trials they are run also with each uncertain input at both ends of its
    range, in the other design years and at other room humidities: what
    decides, and the limit for the rooms.  `spread` draws of the uncertain
    inputs (2 to 1000; 0 for none) give the hourly years their bands; the
    steady checks always have theirs.  `edition` is one of `codes.EDITIONS`,
    otherwise the newest that was read.  `progress` is told of the hourly runs.

    Examples
    --------
    >>> from dryward.building import preset
    >>> from dryward.building.job import Job
    >>> review(Job(preset("vented-vault-osb")), hourly=False).check("winter").answer
    'wet'
    """
    if spread:
        spread = int(within("Draws", spread, 2, 1000))
    here = setting(job)
    runs = hourly and here.hours is not None
    cold, warm = moisture_checks.winter(here), moisture_checks.summer(here)
    plain = [
        trials.twelve_months_with_bands(moisture_checks.twelve_months(here), here),
        trials.season_with_bands(cold, job.assembly, here.winter_room, here.winter),
        trials.season_with_bands(warm, job.assembly, here.summer_room, here.summer),
    ]
    found: list[Check] = []
    designs: tuple[tuple[str, Verdict], ...] = ()
    limit = leaky = None
    tell = _Progress(progress)
    if runs:
        years = moisture_checks.years(here, tell.part("years"))
        leaky = trials.assumed_leak(here, tell.part("leak"))
        if with_trials:
            # Whatever is told beyond the verdict counts a leak: the tested one, or the assumed one.
            there, found_there = trials.with_leak(here), leaky or years.facts
            ends = trials.deciding(there, found_there, tell.part("inputs"))
            years = _deciding(years, ends, leaky)
            designs = trials.designs(there, found_there, tell.part("designs"))
            limit = trials.humidity_limit(there, tell.part("limit"))
        if spread:
            years = trials.years_with_bands(
                years, here, moisture_checks.options(here), spread, tell.part("spread", start=0)
            )
        found = [years]
    found += plain
    layer = moisture_checks.wet_layer(job.assembly, cold.data)
    if layer:
        start = moisture_checks.wet_start(here, layer)
        found.append(moisture_checks.with_drying_time(start, here, layer, tell.part("wet start")) if runs else start)
    vents = code_checks.vents(here, edition)
    found += [vents] if vents else []
    found += code_checks.code_rows(here, edition)
    notes = here.notes if hourly else (*here.notes, message("report.years-left-out"))
    return Review(job, tuple(found), (*layer_order.warnings(job.assembly), *notes), designs, limit, leaky, edition)


def _deciding(years: Check, ends: tuple[Decides, ...], leaky: Verdict | None) -> Check:
    """The hourly check with what decides; where no leak was tested that is one of the inputs."""
    if leaky is None:
        first, said = ends[0] if ends else None, trials.what_decides(ends, years.facts)
    else:
        first, there = (trials.untested(years.facts, leaky, each) for each in (years.facts, leaky))
        said = one_after_another(trials.what_decides((there,), leaky), trials.what_decides(ends, leaky, leak=True))
    return dataclasses.replace(years, verdict=years.facts.deciding(first) if first else years.facts, matters=said)


class _Progress:
    """Tells how far the whole is, from how far each part is."""

    def __init__(self, progress: Progress | None) -> None:
        self.progress = progress

    def part(self, name: str, start: int | None = None) -> Progress | None:
        """A function of (done, in all) for one part; None where nobody listens."""
        progress = self.progress
        if progress is None:
            return None
        names = list(_PARTS)
        before = sum(_PARTS[each] for each in names[: names.index(name)]) if start is None else start
        size = _PARTS.get(name, 100)

        def tell(done: int, total: int) -> bool | None:
            return progress(round(before + size * min(done / max(total, 1), 1.0)), 100)

        return tell

"""All checks of one job, in the order a builder asks them."""

from dryward.building import order
from dryward.checks import within
from dryward.report import drying_time, rule_checks, steady_checks, uncertain, year_checks
from dryward.report.findings import Review
from dryward.report.setting import setting

#: Said where the hourly years were left out.
STEADY_ALONE = "The hourly years were left out: wood moisture and mold were not checked."


def review(job, progress=None, hourly=True, spread=0, edition=None):
    """Check a roof in every way the kit can.

    Parameters
    ----------
    job : Job
    progress : function, optional
        Called with (hours done, hours in all) during the hourly runs; when it
        returns False they end.
    hourly : bool, optional
        Whether to run the hourly years, which load more and take longer.
    spread : int, optional
        Draws of the uncertain inputs for the bands of the hourly years, 2 to
        1000; 0 leaves them out.  The steady checks always have theirs.
    edition : str or int, optional
        Of the codes, one of `codes.EDITIONS`; otherwise the newest that was
        read.

    Returns
    -------
    Review

    Raises
    ------
    OutOfRange
        For a number of draws out of range.
    UnknownName, BadFile
        For a place that is not known or a weather file that cannot be read.
    NotConverged
        When a method finds no answer; the sentence says where.
    Stopped
        When the progress function ended the run.

    Examples
    --------
    >>> from dryward.building import preset
    >>> from dryward.building.job import Job
    >>> review(Job(preset("vented-vault")), hourly=False).finding("winter").answer
    'no'
    """
    if spread:
        spread = int(within("Draws", spread, 2, 1000))
    here = setting(job)
    cold = steady_checks.winter(here)
    faces = steady_checks.watched(job.assembly, cold.data)
    found = [
        uncertain.season(cold, job.assembly, here.winter_room, here.winter),
        uncertain.season(steady_checks.summer(here), job.assembly, here.summer_room, here.summer),
        uncertain.twelve_months(year_checks.twelve_months(here), here),
    ]
    runs = hourly and here.hours is not None
    if hourly:
        found += year_checks.years_findings(here, faces, progress, spread)
    for layer, _ in faces[-1:]:
        start = steady_checks.wet_start(here, layer)
        found.append(drying_time.added(start, here, layer, progress) if runs else start)
    vents = rule_checks.vents(here, edition)
    found += [vents] if vents else []
    found += rule_checks.code_rows(here, edition)
    notes = here.notes if hourly else (*here.notes, STEADY_ALONE)
    return Review(job, tuple(found), (*order.warnings(job.assembly), *notes))

"""All checks of one job, in the order a builder asks them."""

from dryward.report import rule_checks, steady_checks, year_checks
from dryward.report.findings import Review
from dryward.report.setting import setting


def review(job, progress=None, hourly=True):
    """Check a roof in every way the kit can.

    Parameters
    ----------
    job : Job
    progress : function, optional
        Called with (hours done, hours in all) during the hourly run; when it
        returns False the run ends.
    hourly : bool, optional
        Whether to run the hourly years, which load more and take longer.

    Returns
    -------
    Review

    Raises
    ------
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
    here = setting(job)
    cold = steady_checks.winter(here)
    faces = steady_checks.watched(job.assembly, cold.data)
    found = [cold, steady_checks.summer(here), year_checks.twelve_months(here)]
    if hourly:
        found += year_checks.years_findings(here, faces, progress)
    found += [steady_checks.wet_start(here, layer) for layer, _ in faces[-1:]]
    vents = rule_checks.vents(here)
    found += [vents] if vents else []
    found += rule_checks.code_rows(here)
    return Review(job, tuple(found), here.notes)
